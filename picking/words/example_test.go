package words_test

import (
	"fmt"
	"os"

	"weft.example/picking"
	"weft.example/picking/words"
)

func ExampleEncode() {
	song := picking.MustParseProgression("Am=x02210 | Am=x02210")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1")}
	part, err := picking.Arrange(song, figures, picking.Setting{Title: "Slow Walk", Tempo: 60})
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := words.Encode(os.Stdout, part, words.Options{}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// Slow Walk
	//
	// About this part
	//
	// Time
	// Meter: 4 over 4.
	// Tempo: 60 beats a minute.
	// A beat is a quarter note.
	// A bar is counted in 4.
	//
	// Instrument
	// 6 strings.
	// Tuning: standard.
	// String 6 open: E, octave 2.
	// String 5 open: A, octave 2.
	// String 4 open: D, octave 3.
	// String 3 open: G, octave 3.
	// String 2 open: B, octave 3.
	// String 1 open: E, octave 4.
	// No capo.
	// Hand: right handed.
	//
	// Figure and strokes
	// Down is toward the floor and string 1. Up is toward string 6.
	// On means toward string 1. Back means toward string 6.
	// Strokes: each goes toward the next string.
	// Fit: contour. On each chord the figure keeps its way on and back over the strings.
	// A note rings until its string is plucked again or let go.
	// Hold means that nothing is plucked and the strings ring on.
	// Turnaround means that the pick goes back the way it came.
	//
	// Form
	// 2 bars.
	// Form: a loop. The end leads back to bar 1.
	// The last stroke goes toward string 5, the first string of the loop.
	// Between strokes the pick moves 12 string spacings.
	// That is 130 millimetres.
	// The way round the loop counts too.
	//
	// Chords
	//
	// A minor
	// String 6 muted.
	// String 5 open: start here.
	// String 4, fret 2, middle finger.
	// String 3, fret 2, ring finger.
	// String 2, fret 1, index finger.
	// String 1 open.
	// Start on string 5. It carries the root, A.
	// First played in bar 1.
	// The figure here: start on string 5. 2 strings on. 1 string on. 1 string on.
	//
	// Bars
	//
	// Bar 1
	// Chord A minor.
	// Beat 1: string 5, open, down, turnaround.
	// Beat 2: string 3, fret 2, down.
	// Beat 3: string 2, fret 1, down.
	// Beat 4: string 1, open, up, turnaround.
	//
	// Bar 2
	// As bar 1.
}

func ExampleFigure() {
	for _, sentence := range words.Figure(picking.MustParseFigure("1/8: 5 3 4 1 - 2u")) {
		fmt.Println(sentence)
	}
	// Output:
	// 6 slots.
	// A slot is an eighth note.
	// The root is on string 5.
	// Start on the root.
	// 2 strings on.
	// 1 string back.
	// Over to string 1.
	// Let it ring for 1 slot.
	// 1 string back, with an up stroke.
	// Then from the start again.
}
