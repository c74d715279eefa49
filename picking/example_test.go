package picking_test

import (
	"errors"
	"fmt"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

func ExampleArrange() {
	song, err := picking.ParseProgression("Am | D=xx0232")
	if err != nil {
		fmt.Println(err)
		return
	}
	figure, err := picking.ParseFigure("5 3 2 1 2 3")
	if err != nil {
		fmt.Println(err)
		return
	}
	part, err := picking.Arrange(song, picking.Figures{figure}, picking.Setting{Meter: picking.SixEight})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, p := range part.Picks() {
		if i%6 == 0 {
			fmt.Println(part.Bars[i/6].Chords[0].Chord)
		}
		fmt.Printf("  string %d fret %d %-4s %s (%s)\n", p.String, p.Fret, p.Note, p.Stroke, p.Why)
	}
	// Output:
	// Am
	//   string 5 fret 0 A2   down (turnaround)
	//   string 3 fret 2 A3   down (toward the next string)
	//   string 2 fret 1 C4   down (toward the next string)
	//   string 1 fret 0 E4   up (turnaround)
	//   string 2 fret 1 C4   up (toward the next string)
	//   string 3 fret 2 A3   up (toward the next string)
	// D
	//   string 4 fret 0 D3   down (turnaround)
	//   string 3 fret 2 A3   down (toward the next string)
	//   string 2 fret 3 D4   down (toward the next string)
	//   string 1 fret 2 F#4  up (turnaround)
	//   string 2 fret 3 D4   up (toward the next string)
	//   string 3 fret 2 A3   up (loop)
}

// A figure with five levels does not fit on four strings: each loss is told.
func ExampleFigure_Fit() {
	chord, _ := voicing.ParseChord("D")
	shape, _ := voicing.ParseShape("xx0232")
	held, err := voicing.New(fretboard.Instrument{}, chord, shape)
	if err != nil {
		fmt.Println(err)
		return
	}
	fit := picking.MustParseFigure("6 4 3 2 1 2 3 4").Fit(held, picking.Contour)
	fmt.Println(fit.Strings)
	for _, loss := range fit.Losses {
		fmt.Printf("from event %d to event %d: %s, not %s\n", loss.From, loss.To, loss.Got, loss.Want)
	}
	fmt.Printf("similarity %.3f\n", fit.CSIM)
	// Output:
	// [4 4 3 2 1 2 3 4]
	// from event 1 to event 2: same, not up
	// from event 8 to event 1: same, not down
	// similarity 0.929
}

// The strokes of any list of strings, without a song: a roll over three
// strings, round and round.
func ExampleChooseStrokes() {
	roll := []picking.Strike{{String: 3}, {String: 2}, {String: 1}}
	fmt.Println(picking.ChooseStrokes(roll, picking.TowardNext, fretboard.RightHanded, true))
	// Output: [down down up]
}

func ExampleCross() {
	fmt.Println(picking.Cross(fretboard.RightHanded, 3, picking.DownStroke, 2, picking.UpStroke))
	fmt.Println(picking.Cross(fretboard.RightHanded, 3, picking.UpStroke, 2, picking.DownStroke))
	// Output:
	// outside 1
	// inside 1
}

func ExampleCSIM() {
	fmt.Println(picking.CSIM([]int{0, 2, 3, 1}, []int{3, 1, 0, 2}))
	fmt.Println(picking.CSIM([]int{1, 0, 4, 3, 2}, []int{3, 0, 4, 2, 1}))
	// Output:
	// 0
	// 0.8
}

func ExampleParseFigure() {
	figure, err := picking.ParseFigure("1/8 root 5: 5d - 3 2 1 .")
	fmt.Println(figure, err)
	fmt.Println("root on string", figure.Root())
	// Output:
	// 1/8 root 5: 5d - 3 2 1 . <nil>
	// root on string 5
}

// Errors say where they lie and how to mend them.
func ExampleParseProgression() {
	_, err := picking.ParseProgression("Am | G=32000q | Dm")
	var malformed *fretboard.SyntaxError
	if errors.As(err, &malformed) {
		fmt.Println(malformed.Caret())
		fmt.Println(malformed.Reason)
	}
	// Output:
	// Am | G=32000q | Dm
	//             ^
	// neither a fret nor x
}

func ExampleParseCountWords() {
	fmt.Println(picking.ParseCountWords("beats"))
	_, err := picking.ParseCountWords("ones")
	fmt.Println(err)
	// Output:
	// beats <nil>
	// count, byte 0: "ones": no such count; choose one of auto, beats, units, eighths, sixteenths
}
