package changes_test

import (
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// seeded returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func seeded(runs int) *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(16)
	parameters.MinSuccessfulTests = runs
	return gopter.NewProperties(parameters)
}

// song reads steps separated by spaces, a shape after an equals sign.
func song(t testing.TB, text string) []changes.Step {
	t.Helper()
	var steps []changes.Step
	for _, field := range strings.Fields(text) {
		symbol, frets, named := strings.Cut(field, "=")
		step := changes.Step{Chord: chord(t, symbol)}
		if named {
			step.Shape = shape(t, frets)
		}
		steps = append(steps, step)
	}
	return steps
}

func chord(t testing.TB, text string) voicing.Chord {
	t.Helper()
	c, err := voicing.ParseChord(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func chords(t testing.TB, text string) []voicing.Chord {
	t.Helper()
	var all []voicing.Chord
	for _, field := range strings.Fields(text) {
		all = append(all, chord(t, field))
	}
	return all
}

func shape(t testing.TB, text string) voicing.Shape {
	t.Helper()
	sh, err := voicing.ParseShape(text)
	if err != nil {
		t.Fatal(err)
	}
	return sh
}

// easiest returns the easiest path, which must exist.
func easiest(t testing.TB, g fretboard.Instrument, steps []changes.Step, o changes.Options) changes.Path {
	t.Helper()
	p, err := changes.Easiest(g, steps, o)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// held prints the shapes of a path, a dash for a rest.
func held(p changes.Path) string {
	var all []string
	for _, g := range p.Grips {
		if g == (changes.Grip{}) {
			all = append(all, "-")
			continue
		}
		all = append(all, g.Voicing.Shape().String())
	}
	return strings.Join(all, " ")
}

func worst(p changes.Path) int {
	if p.Worst < 0 {
		return 0
	}
	return p.Changes[p.Worst].Effort
}

// smalls generates instruments on which every path can be tried: three strings,
// some re-entrant, and a few frets.
func smalls() gopter.Gen {
	return gopter.CombineGens(
		gen.OneConstOf("G3 B3 E4", "D3 G3 B3", "G4 C4 E4", "A4 D4 A3"), gen.IntRange(4, 7), gen.Float64Range(300, 900),
		gen.IntRange(0, 2),
	).Map(func(v []any) fretboard.Instrument {
		return fretboard.Instrument{Tuning: fretboard.MustParseTuning(v[0].(string)), Frets: fretboard.Fret(v[1].(int)),
			Scale: fretboard.Millimetres(v[2].(float64)), Capo: fretboard.Fret(v[3].(int))}
	})
}

// songs generates steps for three strings: triads, here and there a rest or a
// shape, and the same chord twice running.
func songs(least, most int) gopter.Gen {
	texts := gen.OneConstOf("C", "Am", "F", "G", "Dm", "Em", "D", "A", "E", "E5", "Bb", "C", "Am", "N.C.", "C=x1x", "Am=210",
		"G=003", "E=100", "D=232")
	return gen.IntRange(least, most).FlatMap(func(n any) gopter.Gen { return gen.SliceOfN(n.(int), texts) }, nil).
		Map(func(all []string) string { return strings.Join(all, " ") })
}
