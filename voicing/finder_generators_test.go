package voicing_test

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// seeded returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func seeded(runs int) *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(16)
	parameters.MinSuccessfulTests = runs
	return gopter.NewProperties(parameters)
}

// instruments generates instruments with so many strings and frets, re-entrant
// ones too: every other time a common guitar, cut to its thinnest strings.
func instruments(minStrings, maxStrings int, maxFrets fretboard.Fret) gopter.Gen {
	return gopter.CombineGens(
		gen.IntRange(minStrings, maxStrings),
		gen.SliceOfN(fretboard.MaxStrings, gen.IntRange(36, 72)),
		gen.Bool(), gen.IntRange(2, int(maxFrets)), gen.IntRange(0, 3),
		gen.Float64Range(300, 900), gen.IntRange(0, 2),
	).Map(func(v []any) fretboard.Instrument {
		text, common := "", []string{"E2", "A2", "D3", "G3", "B3", "E4"}
		n := v[0].(int)
		for i, key := range v[1].([]int)[:n] {
			name := fretboard.Pitch(key).Spell(plain(key)).String()
			if v[2].(bool) && n <= len(common) {
				name = common[len(common)-n+i]
			}
			text += name + " "
		}
		frets := fretboard.Fret(v[3].(int))
		return fretboard.Instrument{
			Tuning: fretboard.MustParseTuning(text),
			Frets:  frets, Capo: min(fretboard.Fret(v[4].(int)), frets-1),
			Scale: fretboard.Millimetres(v[5].(float64)), Hand: fretboard.Hand(v[6].(int)),
		}
	})
}

// plain names a key by a natural or a sharp.
func plain(key int) fretboard.Note {
	for letter := fretboard.B; ; letter-- {
		n := fretboard.Note{Letter: letter}
		if over := (key - int(n.Class()) + 12) % 12; over < 2 {
			n.Accidental = int8(over)
			return n
		}
	}
}

// songChords generates chords of songbooks on every root that has at most one
// accidental, half of them over one of those as bass.
func songChords() gopter.Gen {
	roots := gen.OneConstOf("C", "C#", "Db", "D", "Eb", "E", "F", "F#", "Gb", "G", "Ab", "A", "Bb", "B")
	suffixes := gen.OneConstOf("", "", "m", "m", "7", "m7", "maj7", "6", "m6", "sus4", "sus2", "5", "dim", "aug", "m7b5",
		"dim7", "9", "m9", "add9", "7sus4", "11", "13", "7b9", "7#9", "maj13", "7alt", "6/9", "add4", "7#11", "no3")
	return gopter.CombineGens(roots, suffixes, roots, gen.Bool()).Map(func(v []any) voicing.Chord {
		text := v[0].(string) + v[1].(string)
		if v[3].(bool) {
			text += "/" + v[2].(string)
		}
		return mustChord(text)
	})
}

// A question is what Find is asked.
type question struct {
	g fretboard.Instrument
	c voicing.Chord
	o voicing.Options
}

// questions generates instruments with chords and options that can be met on
// them, each option wanted once in two to four.
func questions(minStrings, maxStrings int, maxFrets fretboard.Fret) gopter.Gen {
	return gopter.CombineGens(instruments(minStrings, maxStrings, maxFrets), songChords(), gen.Int64()).Map(func(v []any) question {
		q := question{g: v[0].(fretboard.Instrument), c: v[1].(voicing.Chord)}
		r := rand.New(rand.NewPCG(uint64(v[2].(int64)), 1))
		reach := int(q.g.Reach())
		if r.IntN(3) == 0 {
			q.o.Low = fretboard.Fret(r.IntN(reach + 1))
			q.o.High = q.o.Low + fretboard.Fret(r.IntN(reach-int(q.o.Low)+1))
		}
		if r.IntN(3) == 0 {
			q.o.Span = fretboard.Millimetres(1 + 149*r.Float64())
		}
		if r.IntN(2) == 0 {
			q.o.Fingers = r.IntN(5)
		}
		if r.IntN(3) == 0 {
			q.o.Sounding = q.o.Sounding.With(1 + fretboard.StringNumber(r.IntN(int(q.g.Tuning.Strings()))))
		}
		q.o.Closed, q.o.BassLow = r.IntN(4) == 0, r.IntN(3) == 0
		q.o.Weights = weights(r)
		return q
	})
}

// weights makes some: none, those of a beginner, any, or none of what only
// the ear minds.
func weights(r *rand.Rand) voicing.Weights {
	switch r.IntN(4) {
	case 0:
		return voicing.Weights{}
	case 1:
		return voicing.Beginner()
	case 2:
		return voicing.Weights{Muddy: -100, Doubled: -100, Low: -100, Clash: -100, Missing: -100, Open: -100}
	}
	var w voicing.Weights
	terms := reflect.ValueOf(&w).Elem()
	for i := range terms.NumField() {
		terms.Field(i).SetInt(int64(r.IntN(1101) - 100))
	}
	return w
}

func mustShape(t testing.TB, text string) voicing.Shape {
	t.Helper()
	sh, err := voicing.ParseShape(text)
	if err != nil {
		t.Fatal(err)
	}
	return sh
}

func mustVoicing(t testing.TB, g fretboard.Instrument, chord, shape string) voicing.Voicing {
	t.Helper()
	v, err := voicing.New(g, mustChord(chord), mustShape(t, shape))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// tuned returns the usual instrument of a tuning.
func tuned(t testing.TB, tuning string) fretboard.Instrument {
	t.Helper()
	parsed, err := fretboard.ParseTuning(tuning)
	if err != nil {
		t.Fatal(err)
	}
	return fretboard.Instrument{Tuning: parsed}
}
