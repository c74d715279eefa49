// Shapes finds, names and strings together the shapes of chords.
//
//	go run ./examples/shapes -chord Bbmaj7 -tuning DADGAD
//	go run ./examples/shapes -name x02210
//	go run ./examples/shapes -path "Am | F | C G/B | E7" -figure "5 3 2 1 2 3"
//	go run ./examples/shapes -capo "Bb Eb F Gm"
//
// Exactly one of these four is asked for: the shapes of a chord, the names of a
// shape, the shapes for a song and what each change asks of the fingers, or the
// fret for the capo. -h lists the other flags and what each serves; one that
// does not serve what is asked for is refused rather than passed over.
//
// Chords are named as their shapes are, without the capo; -behind sets one. What
// cannot be done is shown on standard error, with carets under the offending
// place and what to write instead; the exit code is then 2, and nothing is
// written, neither to standard output nor to a file.
//
// # JSON
//
// With -format json the answer is one object that holds all the text says.
// Every field is always there, no list is null, numbers are whole, and names are
// English whatever -spelling says. Strings count from 1, the
// thinnest; frets from the capo; efforts and costs are in points, of which one
// is what a player would pay to stay a millimetre nearer the nut.
//
// Every answer begins with
//
//	version  1
//	asked    "chord", "name", "path" or "capo"
//	tuning   the open strings, the highest string number first
//	capo     its fret, 0 where there is none
//	hand     "right", "left" (restrung) or "turned" (not restrung)
//	limits   list: the flags that narrow what may be held or weigh it, with their values
//
// A shape:
//
//	chord    the symbol; empty where what sounds is no chord
//	shape    such as "x02210"
//	fingers  1 to 4 on each string, 0 open, x muted: "x02310"; empty where it cannot be held
//	start    string: where a figure starts; reason: "root", "slash bass" or "bass"
//	hold     "easy", "moderate", "hard" or "impossible"
//	effort   what holding it asks
//	cost     what the ranking goes by, weighed for beginners where that is asked for
//	hand     list: what it asks of the hand, or first why no hand holds it
//	sound    list: what is not as it might be in its sound
//	words    list of sentences that can be read aloud
//
// A chord's answer goes on with chord; words, the chord in words; bass, the note
// after the slash or empty; tones, a list of {degree, note, need, why}, need
// being "essential", "optional" or "either", and why empty where it is essential;
// more, false where the list is known to be all; shapes, a list, the best first.
//
// A name's answer goes on with shape; key, or empty; sounds, what sounds, in
// words; notes, a list of pitches, the lowest first; names, a list of {chord,
// words, confidence, missing, added}, the best first, confidence being
// "certain", "likely", "possible" or "remote"; shapes, the shape as held for the
// first name, or empty where there is none.
//
// A path's answer goes on with chart, in which every chord has its shape; aim,
// "total" or "worst"; loop; figure, or empty; cost, of the whole path; shapes, a
// list of those that differ in chord, shape or fingers; order, the number in
// shapes, from 1, of each chord as it is played, 0 for N.C., one for as long as
// it is held; changes, a list of those that differ; hardest, the number in
// changes, from 1, of the one with the highest changeCost, 0 where there is none.
// A change:
//
//	from, to    numbers in shapes
//	bar         as played, where it comes first; times: how often it comes
//	changeCost  what the fingers do on the way
//	withShapes  the same with what the two shapes ask: what -aim worst keeps low
//	first       the string plucked first, 0 without a figure
//	stopped     the finger on that string, or empty
//	fingers     list of {finger, act, tenths, spare, says}: act is "stays", "slides",
//	            "moves", "sets down" or "lifts"; tenths of a millimetre that it goes, or
//	            the hand with it; spare: the plucks that pass before it is needed, -1 for
//	            all of them or without a figure
//	remarks     list: what helps
//
// A capo's answer goes on with chords, those of the song as they sound, each
// once; aim; loop; more, whether further frets are left out; capos, a list, the best first,
// of {capo, cost, hand, shapes, sounding}: hand is a list of what it asks, shapes
// a list of those that differ, and sounding holds what each of them sounds.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
