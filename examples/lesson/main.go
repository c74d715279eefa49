// Lesson carries a picking figure over a song and prints the sheet.
//
//	go run ./examples/lesson
//	go run ./examples/lesson -chords "Am | G | Dm | E" -figure "5 3 2 1 2 3" -meter 6/8 -tempo 66
//
// Without flags it plays a song of its own. With -chords alone it plays those
// chords with a figure of its own that suits the instrument and the meter; with
// -figure alone, its own song with that figure. -h lists the flags.
//
// -spelling says how notes are named in the chords that come in and on the sheet
// that goes out. Tunings are in scientific pitch notation, which is English, and
// so is JSON whatever the spelling.
//
// What cannot be played is shown on standard error, with carets under the
// offending place and what to write instead; the exit code is then 2, and
// nothing is written, neither to standard output nor to a file.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
