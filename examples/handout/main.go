// Handout turns a folder of songs into a folder of sheets to print.
//
//	go run ./examples/handout -from songs -to sheets
//	go run ./examples/handout -from songs -to sheets -paper letter -size 24 -landscape
//
// Every song becomes two pages for a browser: the sheet, which prints page by
// page on the paper asked for, and the part in words for a screen reader or a
// braille display. index.html lists all songs with both. The pages load nothing
// from elsewhere, so that the folder can be copied, mailed or put on a server as
// it is. -h lists the flags.
//
// # Songs
//
// A song is a text file in UTF-8 whose name ends in .txt, of at most 64 KiB.
// Other files are left alone and named at the end, those whose names begin with
// a full stop and folders without a word. A song has lines of four kinds:
//
//	key: text      what is played, or a setting; one of the keys below
//	more chords    goes on after "chords:", up to the next key; a new line is a bar line
//	# remark       not read; # is a remark only where it begins a line
//	               an empty line, not read either
//
// Keys may be written large or small and stand in any order, each once. Only
// the chords must be there.
//
//	title     text; the file's name if it is missing
//	chords    bars between |: "Am | F=xx3211 | C G/B:1 | E7@2"
//	figure    slots of a picking figure, several with ; between: "5 3 2 1 2 3"
//	meter     4/4, 6/8, ...
//	tempo     10 to 400 beats a minute
//	tuning    standard, drop D, ukulele, ... or notes: "E2 A2 D3 G3 B3 E4"
//	capo      fret; 0 is none
//	hand      right, left or turned
//	strokes   toward-next, economy, alternate, rest-stroke or jig
//	fit       contour, bass or shift
//	change    restart or carry
//	fill      again or ring
//	spelling  english, german or mixed, of the chords and the drawn sheet
//	turn      yes or no: the figures in turn, one a chord
//	once      yes or no: play once, rather than loop
//
// A key that is missing means what the flag of that name means in the program
// lesson, and the texts are the same.
//
// # Errors, interrupts, old files
//
// A song that cannot be read or played is shown on standard error with its file
// and line, carets under the place and what to write instead. The others are
// drawn all the same, and the index lists those; the exit code is then 2. On an
// interrupt the song in work is left out, finished pages stay, an index of
// before stays as it was, and the exit code is 130. No file is ever half
// written.
//
// Pages are named after their songs: letters and digits stay, all else becomes a
// hyphen. A page from a run before is written anew. A file that handout did not
// write is neither written over nor removed; where one is in the way, nothing is
// written at all. Pages of songs that are gone are not removed either.
//
// A run that takes more than a second says on standard error how far it is.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, release := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, release) // a second interrupt ends it at once
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}
