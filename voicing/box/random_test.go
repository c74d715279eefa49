package box_test

import (
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// properties returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func properties(runs int) *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(16)
	parameters.MinSuccessfulTests = runs
	return gopter.NewProperties(parameters)
}

// pool holds voicings by chance, made once, since finding takes its time.
var pool = sync.OnceValue(func() []voicing.Voicing {
	r := newOracle(16)
	all := make([]voicing.Voicing, 300)
	for i := range all {
		all[i] = r.voicing()
	}
	return all
})

// voicings generates the voicings of the pool.
func voicings() gopter.Gen {
	return gen.IntRange(0, len(pool())-1).Map(func(i int) voicing.Voicing { return pool()[i] })
}

// An oracle makes voicings by chance.
type oracle struct{ *rand.Rand }

func newOracle(seed uint64) oracle { return oracle{rand.New(rand.NewPCG(seed, 0))} }

func (r oracle) pick(choices ...string) string { return choices[r.IntN(len(choices))] }

// instrument makes one with any number of strings, every other time a common
// one.
func (r oracle) instrument() fretboard.Instrument {
	tuning := r.pick(fretboard.TuningNames()...)
	if r.IntN(2) == 0 {
		names := make([]string, 1+r.IntN(fretboard.MaxStrings))
		for i := range names {
			names[i] = r.pick("C", "Db", "D#", "E", "F", "G", "Ab", "B") + r.pick("2", "3", "4")
		}
		tuning = strings.Join(names, " ")
	}
	frets := fretboard.Fret(1 + r.IntN(int(fretboard.MaxFrets)))
	return fretboard.Instrument{
		Tuning: fretboard.MustParseTuning(tuning), Frets: frets,
		Capo: fretboard.Fret(max(0, r.IntN(8)-4)) % frets, Hand: fretboard.Hand(r.IntN(3)),
	}
}

func (r oracle) chord() voicing.Chord {
	return chord(r.pick("C", "Db", "D", "Eb", "E", "F#", "G", "Ab", "A", "Bb", "B") +
		r.pick("", "", "m", "7", "m7", "maj7", "sus4", "5", "6/9", "m7b5", "13", "(#11)", "7alt", "m(maj7)add11no5") +
		r.pick("", "", "/E", "/Bb"))
}

// voicing makes one that Find finds or, where it finds none and every third
// time, one of a shape by chance, which is seldom playable.
func (r oracle) voicing() voicing.Voicing {
	g, c := r.instrument(), r.chord()
	if r.IntN(3) > 0 {
		var found []voicing.Voicing
		for v := range voicing.Find(g, c, voicing.Options{}) {
			if found = append(found, v); len(found) == 8 {
				break
			}
		}
		if len(found) > 0 {
			return found[r.IntN(len(found))]
		}
	}
	return r.shaped(g, c)
}

// shaped makes a voicing of a shape by chance, with frets near to one another
// or anywhere on the neck.
func (r oracle) shaped(g fretboard.Instrument, c voicing.Chord) voicing.Voicing {
	low := fretboard.Fret(r.IntN(int(g.Reach()))) + 1
	most := []fretboard.Fret{g.Reach(), min(g.Reach(), low+4), min(g.Reach(), low+1)}[r.IntN(3)]
	shape := voicing.NewShape(g.Tuning.Strings())
	for s := shape.Strings(); s >= 1; s-- {
		switch r.IntN(5) {
		case 0:
		case 1:
			shape = shape.With(s, 0)
		default:
			shape = shape.With(s, low+fretboard.Fret(r.IntN(int(most-low)+1)))
		}
	}
	if shape.Sounding() == 0 {
		shape = shape.With(1, low)
	}
	v, err := voicing.New(g, c, shape)
	if err != nil {
		panic(err)
	}
	return v
}

func chord(text string) voicing.Chord {
	c, err := voicing.ParseChord(text)
	if err != nil {
		panic(err)
	}
	return c
}

// held returns the voicing of an entry such as C=x32010, which must be good.
func held(t testing.TB, g fretboard.Instrument, entry string) voicing.Voicing {
	t.Helper()
	name, text, _ := strings.Cut(entry, "=")
	shape, err := voicing.ParseShape(text)
	if err != nil {
		t.Fatal(err)
	}
	v, err := voicing.New(g, chord(name), shape)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func tuned(tuning string) fretboard.Instrument {
	return fretboard.Instrument{Tuning: fretboard.MustParseTuning(tuning)}
}
