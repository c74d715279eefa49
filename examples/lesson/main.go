// Lesson carries a picking figure over a song and writes the part, to read, to
// hear or for other programs.
//
//	go run ./examples/lesson
//	go run ./examples/lesson -chords "Am | G | Dm | E" -figure "5 3 2 1 2 3" -meter 6/8 -tempo 66
//	go run ./examples/lesson -format svg -paper letter -size 24 -o sheet.svg
//	go run ./examples/lesson -format wav -countin 1 -click beats -repeat 4 -silent-bars 4+2 -o round.wav
//
// Without flags it plays a song of its own. With -chords alone it plays those
// chords with a figure of its own that suits the instrument and the meter; with
// -figure alone, its own song with that figure. -h lists the flags.
//
// The formats are
//
//	text      the sheet for a terminal
//	json      the part for programs, as weft.example/picking/json documents it
//	svg       the sheet drawn, its pages one below the other; a browser prints it page by page
//	words     the part as prose for a screen reader or a braille display
//	html      the same as a page with headings
//	musicxml  a MusicXML 4.0 score
//	mxl       the same, compressed
//	midi      a Standard MIDI File
//	wav       the sound in 16 bits, 48 kHz, stereo
//
// All go to standard output, or with -o to a file, which is written whole or,
// when an interrupt comes, not at all. Some flags serve some formats only, as -h
// tells; one that does not serve the format asked for is refused rather than
// passed over. A sound that takes more than a second to make says on standard
// error how far it is.
//
// -spelling says how notes are named in the chords that come in and on the sheet
// that goes out. Tunings are in scientific pitch notation, which is English, and
// so is whatever the spelling all but the two sheets.
//
// What cannot be played is shown on standard error, with carets under the
// offending place and what to write instead; the exit code is then 2, and
// nothing is written, neither to standard output nor to a file.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
