package voicing_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// This file holds the finder against plain enumeration: every string muted or
// at every fret, each shape judged by a rule written as the documentation of
// Find says it, with nothing pruned.

// everyShape yields every shape of g that sounds at least one string.
func everyShape(g fretboard.Instrument, yield func(voicing.Shape)) {
	var choose func(s fretboard.StringNumber, sh voicing.Shape)
	choose = func(s fretboard.StringNumber, sh voicing.Shape) {
		if s == 0 {
			if sh.Sounding() != 0 {
				yield(sh)
			}
			return
		}
		choose(s-1, sh)
		for f := fretboard.Fret(0); f <= g.Reach(); f++ {
			choose(s-1, sh.With(s, f))
		}
	}
	choose(g.Tuning.Strings(), voicing.NewShape(g.Tuning.Strings()))
}

// listed returns the shapes that Find must yield, in its order.
func listed(t testing.TB, g fretboard.Instrument, chord voicing.Chord, o voicing.Options) []string {
	t.Helper()
	g, err := g.Normal()
	if err != nil {
		t.Fatal(err)
	}
	var whole, partial []voicing.Voicing
	everyShape(g, func(sh voicing.Shape) {
		v, err := voicing.New(g, chord, sh)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case !soundsOnlyItsTones(v) || !keepsTo(v, o) || !fingersSuffice(v, o.Fingers):
		case soundsAllItNeeds(v):
			whole = append(whole, v)
		case soundsItsCharacter(v):
			partial = append(partial, v)
		}
	})
	if whole == nil {
		whole = partial
	}
	slices.SortFunc(whole, func(a, b voicing.Voicing) int {
		return cmp.Or(a.Cost().Weighed(o.Weights)-b.Cost().Weighed(o.Weights), slices.Compare(fretsOf(a), fretsOf(b)))
	})
	var shapes []string
	for _, v := range whole {
		shapes = append(shapes, v.Shape().String())
	}
	return shapes
}

// fretsOf lists the frets of v from the thickest string, 99 for muted.
func fretsOf(v voicing.Voicing) []int {
	var frets []int
	for s := v.Shape().Strings(); s >= 1; s-- {
		f, sounds := v.Shape().Fret(s)
		if !sounds {
			f = 99
		}
		frets = append(frets, int(f))
	}
	return frets
}

// counts tells how many strings of v sound each pitch class, without the capo.
func counts(v voicing.Voicing) map[fretboard.PitchClass]int {
	n := map[fretboard.PitchClass]int{}
	for s := range v.Sounding().Thinnest() {
		n[(v.Pitch(s)-fretboard.Pitch(v.Instrument().Capo)).Class()]++
	}
	return n
}

func soundsOnlyItsTones(v voicing.Voicing) bool {
	tones := map[fretboard.PitchClass]bool{}
	for _, tone := range v.Chord().Tones() {
		tones[tone.Note.Class()] = true
	}
	bass, slash := v.Chord().Bass()
	for class, n := range counts(v) {
		if isBass := slash && class == bass.Class(); !tones[class] && (!isBass || n > 1) {
			return false
		}
	}
	return true
}

func soundsAllItNeeds(v voicing.Voicing) bool {
	n := counts(v)
	degrees := map[int]int{} // how many tones that may replace each other sound
	for _, tone := range v.Chord().Tones() {
		if tone.Need == voicing.Essential && n[tone.Note.Class()] == 0 {
			return false
		}
		degrees[tone.Degree] += n[tone.Note.Class()]
	}
	for _, tone := range v.Chord().Tones() {
		if tone.Need == voicing.Either && degrees[tone.Degree] == 0 {
			return false
		}
	}
	bass, slash := v.Chord().Bass()
	return !slash || n[bass.Class()] > 0
}

func soundsItsCharacter(v voicing.Voicing) bool {
	n := counts(v)
	essential := map[int]bool{}
	hasThird := false
	for _, tone := range v.Chord().Tones() {
		hasThird = hasThird || tone.Degree == 3
		if tone.Need == voicing.Essential {
			essential[tone.Degree] = true
		}
	}
	core := []int{1, 3, 6, 7}
	if !hasThird {
		core = []int{1, 2, 4, 6, 7}
	}
	if !essential[3] && (hasThird || !essential[2] && !essential[4]) {
		return false // nothing would tell it from a bare fifth
	}
	for _, tone := range v.Chord().Tones() {
		if tone.Need == voicing.Essential && slices.Contains(core, tone.Degree) && n[tone.Note.Class()] == 0 {
			return false
		}
	}
	return true
}

// held lists the strings of v that are fretted, with their frets.
func held(v voicing.Voicing) map[fretboard.StringNumber]fretboard.Fret {
	frets := map[fretboard.StringNumber]fretboard.Fret{}
	for s := range v.Sounding().Thinnest() {
		if f, _ := v.Shape().Fret(s); f > 0 {
			frets[s] = f
		}
	}
	return frets
}

func ends(frets map[fretboard.StringNumber]fretboard.Fret) (low, high fretboard.Fret) {
	low = fretboard.MaxFrets
	for _, f := range frets {
		low, high = min(low, f), max(high, f)
	}
	return low, high
}

// keepsTo reports whether v keeps to o, fingers apart.
func keepsTo(v voicing.Voicing, o voicing.Options) bool {
	for s := v.Shape().Strings(); s >= 1; s-- {
		f, sounds := v.Shape().Fret(s)
		switch {
		case sounds && f == 0 && o.Closed, !sounds && o.Sounding.Has(s), f > 0 && f < o.Low, o.High > 0 && f > o.High:
			return false
		}
	}
	return (!o.BassLow || bassIsLowest(v)) && withinReach(v, o.Span)
}

// bassIsLowest: no string sounds below the slash bass or else the root, on any
// instrument.
func bassIsLowest(v voicing.Voicing) bool {
	bass, _ := v.Chord().Bass()
	lowest := v.Pitch(v.Bass()) - fretboard.Pitch(v.Instrument().Capo)
	return lowest.Class() == bass.Class()
}

// withinReach holds v to a span, 0 for the usual one; lengths are rounded to
// tenths of a millimetre.
func withinReach(v voicing.Voicing, span fretboard.Millimetres) bool {
	frets := held(v)
	if len(frets) == 0 {
		return true
	}
	low, high := ends(frets)
	if span == 0 {
		span = 105
	}
	return place(v, high)-place(v, low) <= int(math.Round(float64(span*10)))
}

// fingersSuffice reports whether so many fingers can hold v, 0 for four.
func fingersSuffice(v voicing.Voicing, fingers int) bool {
	if fingers == 0 {
		fingers = 4
	}
	return slices.ContainsFunc(everyGrip(v), func(g grip) bool { return len(g.used()) <= fingers })
}

func TestFindIsPlainEnumeration(t *testing.T) {
	agrees := func(q question) bool {
		want := listed(t, q.g, q.c, q.o)
		got := asked(q.g, q.c, q.o, 0)
		if !slices.Equal(got, want) {
			t.Logf("%s on %v with %+v: found %d shapes, %v ...; plain enumeration %d, %v ...",
				q.c, q.g, q.o, len(got), got[:min(6, len(got))], len(want), want[:min(6, len(want))])
			return false
		}
		best, err := voicing.Best(q.g, q.c, q.o)
		return (err != nil) == (len(want) == 0) && (err != nil || best.Shape().String() == want[0])
	}
	usual := func(q question) bool {
		q.o = voicing.Options{}
		return agrees(q)
	}
	p := seeded(300)
	p.Property("on up to four strings, Find yields what plain enumeration lists, in its order",
		prop.ForAll(usual, questions(1, 4, 9)))
	p.Property("also what keeps to options, in the order of their weights",
		prop.ForAll(agrees, questions(1, 4, 9)))
	p.TestingRun(t)
	p = seeded(30)
	p.Property("on five and six strings too",
		prop.ForAll(usual, questions(5, 6, 5)))
	p.Property("with options there",
		prop.ForAll(agrees, questions(5, 6, 5)))
	p.TestingRun(t)
}

// TestKnownTuningsArePlainEnumeration goes where barres, stretches and open
// strings meet, and where one string answers for two things asked at once: the
// bass Gb is also one of the fifths of C7alt.
func TestKnownTuningsArePlainEnumeration(t *testing.T) {
	if testing.Short() {
		t.Skip("a quarter of a million shapes a chord")
	}
	for _, c := range []struct {
		tuning, chord string
		frets         fretboard.Fret
	}{
		{"standard", "F", 6}, {"standard", "Gm7/D", 6}, {"A2 D3 G3 B3 E4", "C7alt/Gb", 9}, {"ukulele", "C13", 15},
	} {
		g, chord := tuned(t, c.tuning), mustChord(c.chord)
		g.Frets = c.frets
		got, want := first(g, chord, 0), listed(t, g, chord, voicing.Options{})
		if !slices.Equal(got, want) || len(want) == 0 {
			t.Errorf("%s on %s: found %d shapes, %v ...; plain enumeration %d, %v ...",
				c.chord, c.tuning, len(got), got[:min(6, len(got))], len(want), want[:min(6, len(want))])
		}
	}
}
