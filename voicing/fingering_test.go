package voicing_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// handShapes generates voicings of shapes by chance on instruments by chance:
// frets near to one another, so that many lie under a barre, or too far apart.
func handShapes(minStrings, maxStrings int) gopter.Gen {
	return gopter.CombineGens(instruments(minStrings, maxStrings, 14),
		gen.IntRange(1, 9), gen.OneConstOf(1, 2, 3, 4, 8), gen.SliceOfN(fretboard.MaxStrings, gen.IntRange(0, 99)),
	).Map(func(v []any) voicing.Voicing {
		g := v[0].(fretboard.Instrument)
		low := min(fretboard.Fret(v[1].(int)), g.Reach())
		frets := min(fretboard.Fret(v[2].(int)), g.Reach()-low+1)
		shape := voicing.NewShape(g.Tuning.Strings())
		for i, n := range v[3].([]int)[:g.Tuning.Strings()] {
			s := fretboard.StringNumber(i + 1)
			switch {
			case n < 12:
			case n < 24:
				shape = shape.With(s, 0)
			default:
				shape = shape.With(s, low+fretboard.Fret(n)%frets)
			}
		}
		if shape.Sounding() == 0 {
			shape = shape.With(1, 0)
		}
		made, err := voicing.New(g, mustChord("C"), shape)
		if err != nil {
			panic(err)
		}
		return made
	})
}

// printed lists fingerings, sorted.
func printed[F fmt.Stringer](all []F) []string {
	var texts []string
	for _, f := range all {
		texts = append(texts, f.String())
	}
	slices.Sort(texts)
	return texts
}

func TestFingeringsAreAllThatTheRulesAllow(t *testing.T) {
	agrees := func(v voicing.Voicing) bool {
		want, got := printed(everyGrip(v)), printed(v.Fingerings())
		if diff := cmp.Diff(want, got); diff != "" {
			t.Logf("%s on %+v (-want +got):\n%s", v.Shape(), v.Instrument(), diff)
			return false
		}
		return true
	}
	p := seeded(3000)
	p.Property("Fingerings lists each way of giving every fretted string a finger that keeps the rules, once",
		prop.ForAll(agrees, handShapes(1, 7)))
	p.TestingRun(t)
}

func TestFingeringIsTheCheapest(t *testing.T) {
	p := seeded(2000)
	p.Property("Fingering is the cheapest, the first of Fingerings, and what Cost prices; where there is none it is an error",
		prop.ForAll(func(v voicing.Voicing) bool {
			all := everyGrip(v)
			got, err := v.Fingering()
			if len(all) == 0 {
				return got == voicing.Fingering{} && err != nil && len(v.Fingerings()) == 0
			}
			best := slices.MinFunc(all, grip.compare)
			if err != nil || got.String() != best.String() || got != v.Fingerings()[0] || ofFingers(v.Cost()) != best.cost() {
				t.Logf("%s on %+v: %s, %v, %+v; want %s, %+v", v.Shape(), v.Instrument(), got, err, v.Cost(), best, best.cost())
				return false
			}
			return true
		}, handShapes(1, 7)))
	p.Property("each of Fingerings costs what the words of Cost say, and costs never fall along them", prop.ForAll(
		func(v voicing.Voicing) bool {
			price := map[string]voicing.Cost{}
			for _, g := range everyGrip(v) {
				price[g.String()] = g.cost()
			}
			last := 0
			for _, f := range v.Fingerings() {
				cost := f.Cost()
				if cost != price[f.String()] || cost.Total() < last {
					return false
				}
				last = cost.Total()
			}
			return true
		}, handShapes(1, 7)))
	p.TestingRun(t)
}

// TestPressesSayWhatFingersStop holds the two views of a fingering against
// each other.
func TestPressesSayWhatFingersStop(t *testing.T) {
	p := seeded(500)
	p.Property("a press lies from the thickest to the thinnest string that its finger stops, the index finger first", prop.ForAll(
		func(v voicing.Voicing) bool {
			for _, f := range v.Fingerings() {
				g := grip{v, map[fretboard.StringNumber]voicing.Finger{}}
				for s := range v.Shape().Strings() + 2 {
					if by := f.Finger(s); by > 0 {
						g.finger[s] = by
					}
				}
				var want []voicing.Press
				for _, by := range g.used() {
					crossed := g.crossed(by)
					want = append(want, voicing.Press{Finger: by, Fret: g.fret(crossed[0]),
						Thick: crossed[0], Thin: crossed[len(crossed)-1]})
				}
				if !slices.Equal(f.Presses(), want) || f.String() != g.String() {
					t.Logf("%s: %s, %v; want %v", v.Shape(), f, f.Presses(), want)
					return false
				}
			}
			return true
		}, handShapes(1, 7)))
	p.TestingRun(t)
	f, err := mustVoicing(t, fretboard.Instrument{}, "F", "133211").Fingering()
	if err != nil {
		t.Fatal(err)
	}
	f.Presses()[0].Fret = 9
	if f.Presses()[0].Fret != 1 {
		t.Error("a caller's change of Presses changes the fingering")
	}
	if barres := []bool{f.Presses()[0].Barre(), f.Presses()[1].Barre()}; !barres[0] || barres[1] {
		t.Errorf("barres of %s: %v", f, barres)
	}
}

func ExampleVoicing_Fingering() {
	chord, _ := voicing.ParseChord("F")
	shape, _ := voicing.ParseShape("133211")
	v, _ := voicing.New(fretboard.Instrument{}, chord, shape)
	f, err := v.Fingering()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f)
	for _, p := range f.Presses() {
		fmt.Println(p.Finger, "finger, fret", p.Fret, "strings", p.Thick, "to", p.Thin)
	}
	// Output:
	// 134211
	// index finger, fret 1 strings 6 to 1
	// middle finger, fret 2 strings 3 to 3
	// ring finger, fret 3 strings 5 to 5
	// little finger, fret 3 strings 4 to 4
}
