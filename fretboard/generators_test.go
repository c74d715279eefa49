package fretboard_test

import (
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"

	"weft.example/fretboard"
)

// properties returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func properties() *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(16)
	parameters.MinSuccessfulTests = 500
	return gopter.NewProperties(parameters)
}

func check(t *testing.T, p *gopter.Properties) {
	t.Helper()
	p.TestingRun(t)
}

// notes generates every note with at most four accidentals.
func notes() gopter.Gen {
	return gopter.CombineGens(gen.IntRange(0, 6), gen.IntRange(-4, 4)).Map(func(v []any) fretboard.Note {
		return fretboard.Note{Letter: fretboard.Letter(v[0].(int)), Accidental: int8(v[1].(int))}
	})
}

// pitchNames generates spelled pitches in the MIDI range.
func pitchNames() gopter.Gen {
	return gopter.CombineGens(notes(), gen.IntRange(-1, 9)).Map(func(v []any) fretboard.PitchName {
		return fretboard.PitchName{Note: v[0].(fretboard.Note), Octave: int8(v[1].(int))}
	}).SuchThat(func(n fretboard.PitchName) bool {
		return n.Pitch() >= fretboard.MinPitch && n.Pitch() <= fretboard.MaxPitch
	})
}

// openStrings generates 1 to 12 spelled pitches.
func openStrings() gopter.Gen {
	return gen.IntRange(1, fretboard.MaxStrings).FlatMap(func(n any) gopter.Gen {
		return gen.SliceOfN(n.(int), pitchNames())
	}, nil)
}

// parsed returns the result of a parser on text that must be good.
func parsed[T any](t *testing.T, parse func(string) (T, error), text string) T {
	t.Helper()
	v, err := parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
