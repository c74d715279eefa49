package changes_test

import (
	"fmt"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

func ExampleEasiest() {
	var steps []changes.Step
	for _, symbol := range []string{"Am", "C", "E"} {
		chord, err := voicing.ParseChord(symbol)
		if err != nil {
			fmt.Println(err)
			return
		}
		steps = append(steps, changes.Step{Chord: chord})
	}
	steps[1].Plucked = []fretboard.StringNumber{5, 3, 2, 1, 2, 3}
	path, err := changes.Easiest(fretboard.Instrument{}, steps, changes.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range path.Grips {
		fmt.Println(g.Voicing.Chord(), g.Voicing.Shape(), "fingers", g.Fingering)
	}
	for _, m := range path.Changes[0].Fingers {
		fmt.Println(m)
	}
	for _, remark := range path.Changes[0].Remarks() {
		fmt.Println("-", remark)
	}
	// Output:
	// Am x02210 fingers x02310
	// C x32010 fingers x32010
	// E 022100 fingers 023100
	// index stays on string 2, fret 1
	// middle stays on string 4, fret 2
	// ring moves 35.8 mm, from string 3, fret 2 to string 5, fret 3
	// - index and middle stay down
	// - string 5 is plucked first, stopped by ring
}

// A shape of the caller's own is kept; the others fall in with it.
func ExampleEasiest_fixedShape() {
	c, _ := voicing.ParseChord("C")
	am, _ := voicing.ParseChord("Am")
	barre, _ := voicing.ParseShape("577555")
	path, err := changes.Easiest(fretboard.Instrument{}, []changes.Step{{Chord: am, Shape: barre}, {Chord: c}, {Chord: am, Shape: barre}},
		changes.Options{Voicing: voicing.Options{Closed: true}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(path.Grips[0].Voicing.Shape(), path.Grips[2].Voicing.Shape())
	wrong, _ := voicing.ParseShape("x13579")
	_, err = changes.Easiest(fretboard.Instrument{}, []changes.Step{{Chord: c}, {Chord: am, Shape: wrong}}, changes.Options{})
	var impossible *fretboard.ImpossibleError
	if located, ok := err.(*fretboard.ImpossibleError); ok {
		impossible = located
	}
	fmt.Println(impossible.Caret())
	// Output:
	// 577555 577555
	// C | Am=x13579
	//        ^^^^^^
}

func ExampleCapos() {
	var song []voicing.Chord
	for _, symbol := range []string{"Ab", "Db", "Eb", "Fm"} {
		chord, _ := voicing.ParseChord(symbol)
		song = append(song, chord)
	}
	ways, err := changes.Capos(fretboard.Instrument{}, song, changes.Options{Loop: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(ways[0])
	for i, g := range ways[0].Path.Grips {
		fmt.Println(ways[0].Chords[i], g.Voicing.Shape(), "sounds", ways[0].Sounding[i])
	}
	// Output:
	// capo 1: G C D Em (sounds Ab Db Eb Fm)
	// G 320003 sounds Ab
	// C x32010 sounds Db
	// D xx0232 sounds Eb
	// Em 022000 sounds Fm
}
