package fretboard_test

import (
	"errors"
	"fmt"

	"weft.example/fretboard"
)

func ExampleParseTuning() {
	tuning, err := fretboard.ParseTuning("drop D")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(tuning)
	fmt.Println("string 6:", tuning.Open(6))

	tuning, err = fretboard.ParseTuning("G4 C4 E4 A4")
	fmt.Println(tuning.Name(), err)
	// Output:
	// D2 A2 D3 G3 B3 E4
	// string 6: D2
	// ukulele <nil>
}

func ExampleInstrument_Pitch() {
	guitar := fretboard.Instrument{Capo: 2} // six strings in standard tuning
	p := guitar.Pitch(5, 3)
	fmt.Printf("MIDI key %d, %.1f Hz\n", p, p.Hertz())
	// Output: MIDI key 50, 146.8 Hz
}

func ExamplePitch_Spell() {
	p := fretboard.Pitch(59)
	for _, text := range []string{"B", "Cb"} {
		note, _ := fretboard.ParseNote(text)
		fmt.Println(p.Spell(note))
	}
	// Output:
	// B3
	// Cb4
}

func ExamplePlace_Caret() {
	_, err := fretboard.ParseTuning("E2 A2 D3 H3 B3 E4")
	var syntax *fretboard.SyntaxError
	if errors.As(err, &syntax) {
		fmt.Println(syntax.Reason)
		fmt.Println(syntax.Caret())
	}
	// Output:
	// not a note with an octave
	// E2 A2 D3 H3 B3 E4
	//          ^^
}

func ExampleLowestFirst() {
	ukulele := fretboard.Instrument{Tuning: fretboard.MustParseTuning("ukulele")}
	open := func(s fretboard.StringNumber) fretboard.Pitch { return ukulele.Pitch(s, 0) }
	// Re-entrant: string 4, the uppermost, is not the lowest.
	fmt.Println(fretboard.LowestFirst(ukulele.Tuning.All(), open))
	// Output: [3 2 4 1]
}
