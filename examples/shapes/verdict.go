package main

import (
	"fmt"
	"slices"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// What a player is told of a shape stands in this file: first one word for how
// hard it is to hold, then in clauses what makes it so, and then what is not as
// it might be in its sound. The numbers are those of [voicing.Cost]; from where
// on one is worth a word is this program's own judgement.

// The most effort of a shape that is easy and of one that is moderate. Between
// these stand, in the order of first books (common practice): the open chords
// from Em to G; C7, B7 and the small barre of 577555; Bm and the F of 133211.
const (
	easyEffort     = 170
	moderateEffort = 215
)

func holdWord(effort int) string {
	switch {
	case effort <= easyEffort:
		return "easy"
	case effort <= moderateEffort:
		return "moderate"
	}
	return "hard"
}

// From here on a term of a cost is worth a word.
const (
	longReach  fretboard.Millimetres = 75 // four frets at the nut are 97 mm
	wideSplay                        = 60 // points: fingers that lie far from how they rest
	wideSpread                       = 65 // points: five string gaps between the fingers
	farFret    fretboard.Fret        = 7  // from the nut or capo
	muddy                            = 24 // points: a minor third at the bottom
	crowd                            = 3  // fingers in one fret
	doubled                          = 28 // points: two strings on one pitch
)

// handWords says what a shape asks of the hand, and what makes it hard.
func handWords(v voicing.Voicing, f voicing.Fingering, c voicing.Cost) []string {
	presses := f.Presses()
	if len(presses) == 0 {
		return []string{"no finger, every string that sounds is open"}
	}
	words := []string{counted(len(presses), "finger")}
	for _, p := range presses {
		if p.Barre() {
			words = append(words, fmt.Sprintf("the %s finger lies across %s", p.Finger, across(p)))
		}
	}
	low, high := presses[0].Fret, presses[len(presses)-1].Fret
	words = append(words, reachWords(v.Instrument(), low, high)...)
	words = append(words, splayWords(presses, c)...)
	if c.Spread >= wideSpread {
		words = append(words, "fingers reach round strings between them")
	}
	if low >= farFret {
		words = append(words, fmt.Sprintf("the hand goes up to fret %d", low))
	}
	return words
}

// reachWords speaks of frets that lie far apart, counted from the capo.
func reachWords(g fretboard.Instrument, low, high fretboard.Fret) []string {
	reach := fretboard.Span(g.Scale, g.Capo+low, g.Capo+high)
	if reach < longReach {
		return nil
	}
	return []string{fmt.Sprintf("a long reach: frets %d and %d lie %.0f mm apart", low, high, reach)}
}

// unheldWords says why no hand holds a shape, and how far it would reach where
// that is not the reason.
func unheldWords(v voicing.Voicing, reason string) []string {
	words := []string{reason}
	if strings.HasSuffix(reason, "further than hands reach") {
		return words
	}
	low, high := fretboard.MaxFrets, fretboard.Fret(0)
	for s := range v.Sounding().Thinnest() {
		if f, _ := v.Shape().Fret(s); f > 0 {
			low, high = min(low, f), max(high, f)
		}
	}
	return append(words, reachWords(v.Instrument(), low, high)...)
}

func across(p voicing.Press) string {
	if p.Thick == p.Thin+1 {
		return fmt.Sprintf("strings %d and %d", p.Thick, p.Thin)
	}
	return fmt.Sprintf("strings %d to %d", p.Thick, p.Thin)
}

// splayWords speaks of fingers that lie unlike how they rest: crowd of them in
// one fret on neighbouring strings, or far apart.
func splayWords(presses []voicing.Press, c voicing.Cost) []string {
	row := 1
	for i := 1; i < len(presses); i++ {
		if presses[i].Fret != presses[i-1].Fret || presses[i].Thick != presses[i-1].Thin-1 {
			row = 0
		}
		if row++; row == crowd {
			return []string{fmt.Sprintf("fingers crowd into fret %d", presses[i].Fret)}
		}
	}
	if c.Splay >= wideSplay {
		return []string{"fingers stand apart along the neck"}
	}
	return nil
}

// soundWords says what is not as it might be in the sound of a voicing.
func soundWords(v voicing.Voicing, c voicing.Cost) []string {
	words := slices.DeleteFunc(append([]string{}, v.Remarks()...), ofTheHand)
	for _, tone := range v.Chord().Tones() {
		if tone.Need == voicing.Optional && sounds(v, tone.Note) == 0 {
			words = append(words, "without "+toneWords(tone))
		}
	}
	words = append(words, muteWords(v)...)
	if c.Thin > 0 {
		words = append(words, "only "+counted(v.Sounding().Len(), "string")+" sounding")
	}
	if c.Doubled >= doubled {
		words = append(words, doubleWords(v)...)
	}
	for _, term := range []struct {
		heard bool
		word  string
	}{
		{c.Clash > 0, "the third and the eleventh grate"},
		{c.Muddy >= muddy, "close notes at the bottom sound muddy"},
	} {
		if term.heard {
			words = append(words, term.word)
		}
	}
	return words
}

// ofTheHand reports whether a remark on a voicing is about its reach, of which
// the clauses about the hand speak.
func ofTheHand(remark string) bool { return strings.HasSuffix(remark, "further than most hands reach") }

// sounds counts the strings of v that sound n, without the capo.
func sounds(v voicing.Voicing, n fretboard.Note) (strings int) {
	for s := range v.Sounding().Thinnest() {
		f, _ := v.Shape().Fret(s)
		if v.Instrument().Tuning.Open(s).Pitch().Up(f).Class() == n.Class() {
			strings++
		}
	}
	return strings
}

// muteWords names the strings that are muted between sounding ones.
func muteWords(v voicing.Voicing) []string {
	sounding := v.Sounding()
	var muted []int
	for s := sounding.Nth(sounding.Len()-1) - 1; s > sounding.Nth(0); s-- {
		if !sounding.Has(s) {
			muted = append(muted, int(s))
		}
	}
	if muted == nil {
		return nil
	}
	return []string{list("string", muted) + " muted between sounding ones"}
}

// doubleWords names the strings that sound one pitch, or else the sevenths and
// the like that more than one string sounds.
func doubleWords(v voicing.Voicing) (words []string) {
	at := map[fretboard.Pitch][]int{}
	for _, s := range fretboard.LowestFirst(v.Sounding(), v.Pitch) {
		p := v.Pitch(s)
		if at[p] = append(at[p], int(s)); len(at[p]) == 2 {
			words = append(words, list("string", at[p])+" sound one pitch")
		}
	}
	if words != nil {
		return words
	}
	for _, tone := range v.Chord().Tones() {
		if n := sounds(v, tone.Note); n > 1 && tone.Degree != 1 && tone.Degree != 3 && tone.Degree != 5 {
			words = append(words, toneWords(tone)+", sounds on "+counted(n, "string"))
		}
	}
	return words
}

// degrees names the degrees of a chord.
var degrees = [...]string{1: "root", 2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth", 7: "seventh",
	9: "ninth", 11: "eleventh", 13: "thirteenth"}

func toneWords(t voicing.Tone) string { return t.Note.String() + ", the " + degrees[t.Degree] }
