package voicing

import (
	"math/rand/v2"
	"slices"
	"testing"

	"weft.example/fretboard"
)

// TestBoundsHold: what a search expects the shapes to cost at least that begin
// with some strings is never more than what one of them costs. Otherwise it
// would give up shapes that it must find; a search for all of them would not
// show it. Options narrow what it expects, and weights scale it.
func TestBoundsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	tunings := []string{"standard", "drop D", "ukulele", "mandolin", "E3 E2 A3 A2 D4 D3", "E2 E2 E3 B2 B2", "seven-string"}
	symbols := []string{"C", "Bm", "F#m7", "A7", "C13/G", "Dsus4", "Eb/F", "G7alt", "E11"}
	for range 80 {
		tuning, err := fretboard.ParseTuning(tunings[r.IntN(len(tunings))])
		if err != nil {
			t.Fatal(err)
		}
		chord, err := ParseChord(symbols[r.IntN(len(symbols))])
		if err != nil {
			t.Fatal(err)
		}
		s, err := newSearch(fretboard.Instrument{Tuning: tuning, Frets: 9, Capo: fretboard.Fret(r.IntN(4))}, chord, someOptions(r))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range s.cheapest(3000) {
			if i, bound := s.firstBoundAbove(f); i >= 0 {
				t.Fatalf("%s on %s with %+v: %s costs %d, but from string %d it seems to cost %d",
					chord, tuning, s.options, f.shape.shape(s.strings), f.cost, i+1, bound)
			}
		}
	}
}

// someOptions makes the usual ones, those of a beginner, or some by chance.
func someOptions(r *rand.Rand) Options {
	switch r.IntN(4) {
	case 0:
		return Options{}
	case 1:
		return Options{Weights: Beginner()}
	}
	weight := func() int { return r.IntN(1101) - 100 }
	return Options{
		Low: fretboard.Fret(r.IntN(3)), Span: fretboard.Millimetres(60 + 90*r.Float64()), Fingers: 2 + r.IntN(3),
		Sounding: fretboard.StringSet(r.IntN(8)), Closed: r.IntN(3) == 0, BassLow: r.IntN(3) == 0,
		Weights: Weights{weight(), weight(), weight(), weight(), weight(), weight(), weight(),
			weight(), weight(), weight(), weight(), weight(), weight(), weight()},
	}
}

// firstBoundAbove walks through shape as choose does and returns the string
// index at which the bound is above the cost, or the search would turn back,
// or -1.
func (s *search) firstBoundAbove(f found) (i, bound int) {
	s.enter(f.lowest(s.strings))
	s.shape = f.shape // the thicker strings of which stop looks at
	p := nothing
	for i := s.strings - 1; i >= 0; i-- {
		if bound := s.atLeast(i, &p); bound > f.cost || !s.canMeet(i, &p) {
			return i, bound
		}
		if f.shape[i] == muted {
			s.mute(&p)
			continue
		}
		at := slices.IndexFunc(s.window.notes[i], func(n note) bool { return n.fret == f.shape[i] })
		if !s.stop(i, s.window.notes[i][at], &p) {
			return i, 0
		}
	}
	return -1, 0
}

func (f found) lowest(strings int) int8 {
	low := int8(0)
	for _, fret := range f.shape[:strings] {
		if fret > 0 && (low == 0 || fret < low) {
			low = fret
		}
	}
	return low
}
