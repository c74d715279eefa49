package voicing_test

import (
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
