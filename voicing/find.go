package voicing

import (
	"iter"
	"math"

	"weft.example/fretboard"
)

// Find searches the fretboard of g for the shapes that sound chord, and yields
// their voicings by rising [Cost], weighed by the options; of two that cost the
// same, first the one with the lower fret on the thickest string on which they
// differ, a muted string counting as above every fret. It yields every shape
// that
//   - sounds only tones of the chord, and all that it needs (see [Need]) with
//     the slash bass; a slash bass that is no tone of the chord sounds on one
//     string only;
//   - spans at most 105 mm from its lowest to its highest fret held, open
//     strings apart: frets 1 to 4 of a guitar or a baritone, 5 to 9, 12 to 18;
//   - four fingers can hold: it has a [Fingering];
//   - keeps to the [Options], which may widen the span.
//
// Where no shape sounds all that the chord needs, it yields those that sound
// at least the root, the third or what is suspended in its place, and the
// sixth or seventh; [Voicing.Remarks] then says what they lack. It yields
// nothing where [Best] gives an error.
//
// The root, or the slash bass, is wanted lowest; but only a slash bass is on a
// re-entrant tuning and on an instrument with no string below G3.
//
// The first eight voicings are found as fast as one. Taking more finds all of
// them, on more than seven strings only from the 129th on: they may be millions
// there. The time grows with the shapes that cost no more than the last one
// taken; where many strings sound in unison, these can be very many.
func Find(g fretboard.Instrument, chord Chord, o Options) iter.Seq[Voicing] {
	return func(yield func(Voicing) bool) {
		s, err := newSearch(g, chord, o)
		if err != nil {
			return
		}
		shapes, taken := s.first(few), 0
		for i, most := range s.stages() {
			if i > 0 {
				shapes = s.cheapest(most)
			}
			if !s.yield(shapes[taken:], yield) || len(shapes) < most {
				return
			}
			taken = most
		}
	}
}

const (
	few  = 8
	many = 128
)

// stages lists how many shapes are found at a time: to find many takes longer
// than to find all on few strings.
func (s *search) stages() []int {
	if s.strings <= 7 {
		return []int{few, math.MaxInt}
	}
	return []int{few, many, math.MaxInt}
}

// yield hands the voicings of shapes on until it is told to stop.
func (s *search) yield(shapes []found, yield func(Voicing) bool) bool {
	for _, found := range shapes {
		if !yield(s.voicing(found)) {
			return false
		}
	}
	return true
}

// Best returns the first voicing of [Find]. The error is an
// [fretboard.ImpossibleError] if the chord is N.C., if the instrument or the
// options cannot be, or if no playable shape within them sounds the chord.
func Best(g fretboard.Instrument, chord Chord, o Options) (Voicing, error) {
	s, err := newSearch(g, chord, o)
	if err != nil {
		return Voicing{}, err
	}
	best := s.first(1)
	if len(best) == 0 {
		return Voicing{}, unplayable(chord, "no playable shape sounds it on "+countStrings(s.strings),
			"name the shape: "+chord.String()+"=... with a fret, 0 or x for each string, the thickest first")
	}
	return s.voicing(best[0]), nil
}

func countStrings(n int) string {
	if n == 1 {
		return "1 string"
	}
	return digits(n) + " strings"
}

func unplayable(chord Chord, reason, mend string) error {
	text := chord.String()
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "chord", Source: text, Length: len(text),
		Reason: reason, Mend: mend}}
}
