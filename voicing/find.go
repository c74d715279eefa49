package voicing

import (
	"fmt"
	"iter"
	"math"

	"weft.example/fretboard"
)

// Find searches the fretboard of g for the shapes that sound chord, and yields
// their voicings by rising [Cost]; of two that cost the same, first the one
// with the lower fret on the thickest string on which they differ, a muted
// string counting as above every fret. It yields every shape that
//   - sounds only tones of the chord, and all that it needs (see [Need]) with
//     the slash bass; a slash bass that is no tone of the chord sounds on one
//     string only;
//   - spans at most 105 mm from its lowest to its highest fret held, open
//     strings apart: frets 1 to 4 of a guitar or a baritone, 5 to 9, 12 to 18;
//   - needs at most four fingers, where the index finger may lie across
//     neighbouring strings at the lowest fret if none of them, and no string
//     on the floor's side of them, is open.
//
// Where no shape sounds all that the chord needs, it yields those that sound
// at least the root, the third or what is suspended in its place, and the
// sixth or seventh; [Voicing.Remarks] then says what they lack. It yields
// nothing where [Best] gives an error.
//
// The root, or the slash bass, is wanted lowest; but only a slash bass is on a
// re-entrant tuning and on an instrument with no string below G3.
//
// The first eight voicings are found as fast as one; taking more finds all.
func Find(g fretboard.Instrument, chord Chord) iter.Seq[Voicing] {
	return func(yield func(Voicing) bool) {
		s, err := newSearch(g, chord)
		if err != nil {
			return
		}
		if _, ok := s.best(); !ok {
			return
		}
		const first = 8
		taken := 0
		for _, most := range [...]int{first, math.MaxInt} {
			shapes := s.cheapest(most)
			for _, found := range shapes[taken:] {
				if !yield(s.voicing(found)) {
					return
				}
			}
			taken = len(shapes)
		}
	}
}

// Best returns the first voicing of [Find]. The error is an
// [fretboard.ImpossibleError] if the chord is N.C., if the instrument cannot
// be, or if no playable shape sounds the chord on it.
func Best(g fretboard.Instrument, chord Chord) (Voicing, error) {
	s, err := newSearch(g, chord)
	if err != nil {
		return Voicing{}, err
	}
	found, ok := s.best()
	if !ok {
		return Voicing{}, unplayable(chord, fmt.Sprintf("no playable shape sounds it on %s", countStrings(s.strings)),
			fmt.Sprintf("name the shape: %s=... with a fret, 0 or x for each string, the thickest first", chord))
	}
	return s.voicing(found), nil
}

func countStrings(n int) string {
	if n == 1 {
		return "1 string"
	}
	return fmt.Sprintf("%d strings", n)
}

func unplayable(chord Chord, reason, mend string) error {
	text := chord.String()
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "chord", Source: text, Length: len(text),
		Reason: reason, Mend: mend}}
}

// character lists what a voicing of c must sound where it cannot sound all of
// its needs: the root, the third or what is suspended in its place, and the
// sixth or seventh. It returns the needs themselves where no such tone is
// essential, since too little would be left.
func character(c Chord) []ClassSet {
	var core []ClassSet
	third := false
	tones := c.Tones()
	for _, tone := range tones {
		third = third || tone.Degree == 3
	}
	stands := false
	for _, tone := range tones {
		if tone.Need != Essential {
			continue
		}
		inPlace := tone.Degree == 3 || !third && (tone.Degree == 2 || tone.Degree == 4)
		stands = stands || inPlace
		if inPlace || tone.Degree == 1 || tone.Degree == 6 || tone.Degree == 7 {
			core = append(core, ClassSet(0).With(tone.Note.Class()))
		}
	}
	if !stands {
		return needs(c)
	}
	return core
}
