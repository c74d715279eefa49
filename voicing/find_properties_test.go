package voicing_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// some returns the first voicings of Find, at most n.
func some(g fretboard.Instrument, chord voicing.Chord, n int) []voicing.Voicing {
	return answers(question{g: g, c: chord}, n)
}

// answers is some under options.
func answers(q question, n int) []voicing.Voicing {
	var found []voicing.Voicing
	for v := range voicing.Find(q.g, q.c, q.o) {
		if found = append(found, v); len(found) == n {
			break
		}
	}
	return found
}

// wholeShapes returns the shapes of Find that sound all that the chord needs,
// up to the given fret.
func wholeShapes(g fretboard.Instrument, chord voicing.Chord, highest fretboard.Fret) map[string]bool {
	whole := map[string]bool{}
	for v := range voicing.Find(g, chord, voicing.Options{}) {
		fits := true
		for s := range v.Sounding().Thinnest() {
			f, _ := v.Shape().Fret(s)
			fits = fits && f <= highest
		}
		if fits && soundsAllItNeeds(v) {
			whole[v.Shape().String()] = true
		}
	}
	return whole
}

func TestFindProperties(t *testing.T) {
	p := seeded(150)
	p.Property("what is found sounds only the chord, all it needs or its character, within the options and reach of the fingers", prop.ForAll(
		func(q question) bool {
			return !slices.ContainsFunc(answers(q, 40), func(v voicing.Voicing) bool {
				return !soundsOnlyItsTones(v) || !keepsTo(v, q.o) || !fingersSuffice(v, q.o.Fingers) ||
					!soundsAllItNeeds(v) && (!soundsItsCharacter(v) || len(v.Remarks()) == 0)
			})
		}, questions(1, 8, 22)))
	p.Property("weighed costs never fall along the list, and no shape comes twice", prop.ForAll(
		func(q question) bool {
			seen := map[voicing.Shape]bool{}
			last := 0
			for _, v := range answers(q, 100) {
				cost := v.Cost().Weighed(q.o.Weights)
				if seen[v.Shape()] || cost < last {
					return false
				}
				seen[v.Shape()], last = true, cost
			}
			return true
		}, questions(1, 8, 22)))
	p.Property("Best is the first of Find, and New makes the same voicings of their shapes", prop.ForAll(
		func(q question) bool {
			found := answers(q, 12)
			best, err := voicing.Best(q.g, q.c, q.o)
			if len(found) == 0 {
				return err != nil && best == voicing.Voicing{}
			}
			return err == nil && best == found[0] && !slices.ContainsFunc(found, func(v voicing.Voicing) bool {
				again, err := voicing.New(q.g, q.c, v.Shape())
				return err != nil || again != v
			})
		}, questions(1, 8, 22)))
	p.Property("the same question has the same answer, and taking more does not change what came first", prop.ForAll(
		func(q question) bool {
			few, many := answers(q, 5), answers(q, 60)
			return slices.Equal(few, many[:len(few)])
		}, questions(1, 7, 22)))
	p.TestingRun(t)
}

// TestFindMoved moves the question and knows how the answer moves.
func TestFindMoved(t *testing.T) {
	p := seeded(60)
	p.Property("a capo one fret higher loses no shape that still fits the neck, since frets only come closer", prop.ForAll(
		func(g fretboard.Instrument, chord voicing.Chord) bool {
			up := g
			up.Capo++
			if up.Capo >= g.Frets {
				return true
			}
			above := wholeShapes(up, chord, fretboard.MaxFrets)
			for shape := range wholeShapes(g, chord, up.Reach()) {
				if !above[shape] {
					return false
				}
			}
			return true
		}, instruments(1, 6, 9), songChords()))
	p.Property("a chord a semitone higher on strings a semitone higher has the same shapes", prop.ForAll(
		func(g fretboard.Instrument, chord voicing.Chord) bool {
			up := g
			up.Tuning = raised(g.Tuning)
			high := chord.Transpose(fretboard.Interval{Letters: 1, Semitones: 1})
			a, b := fmt.Sprint(wholeShapes(g, chord, fretboard.MaxFrets)), fmt.Sprint(wholeShapes(up, high, fretboard.MaxFrets))
			return a == b
		}, instruments(1, 6, 9), songChords()))
	p.TestingRun(t)
}

// raised tunes every string a semitone higher.
func raised(t fretboard.Tuning) fretboard.Tuning {
	text := ""
	for s := t.Strings(); s >= 1; s-- {
		key := t.Open(s).Pitch() + 1
		text += key.Spell(plain(int(key))).String() + " "
	}
	return fretboard.MustParseTuning(text)
}

func ExampleFind() {
	chord, _ := voicing.ParseChord("F")
	for v := range voicing.Find(fretboard.Instrument{}, chord, voicing.Options{}) {
		fmt.Println(v.Shape(), v.Cost().Total())
		if v.Cost().Barre == 0 {
			break // the first without a barre
		}
	}
	// Output:
	// 133211 320
	// xx3211 351
	// 10321x 435
}

func ExampleBest() {
	ukulele, _ := fretboard.ParseTuning("ukulele")
	for _, symbol := range []string{"C", "Am", "F", "G7", "C13"} {
		chord, _ := voicing.ParseChord(symbol)
		v, err := voicing.Best(fretboard.Instrument{Tuning: ukulele}, chord, voicing.Options{})
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(symbol, v.Shape(), v.Start().String, v.Remarks())
	}
	// Output:
	// C 0003 3 []
	// Am 2000 4 []
	// F 2010 2 []
	// G7 0212 4 []
	// C13 2001 3 []
}
