package voicing

import (
	"math/rand/v2"
	"testing"

	"weft.example/fretboard"
)

// TestBoundsHold: what a search expects the shapes to cost at least that begin
// with some strings is never more than what one of them costs. Otherwise it
// would give up shapes that it must find; a search for all of them would not
// show it.
func TestBoundsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	tunings := []string{"standard", "drop D", "ukulele", "mandolin", "E3 E2 A3 A2 D4 D3", "E2 E2 E3 B2 B2", "seven-string"}
	symbols := []string{"C", "Bm", "F#m7", "A7", "C13/G", "Dsus4", "Eb/F", "G7alt", "E11"}
	for range 60 {
		tuning, err := fretboard.ParseTuning(tunings[r.IntN(len(tunings))])
		if err != nil {
			t.Fatal(err)
		}
		chord, err := ParseChord(symbols[r.IntN(len(symbols))])
		if err != nil {
			t.Fatal(err)
		}
		s, err := newSearch(fretboard.Instrument{Tuning: tuning, Frets: 9, Capo: fretboard.Fret(r.IntN(4))}, chord)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range s.cheapest(3000) {
			if i, bound := s.firstBoundAbove(f); i >= 0 {
				t.Fatalf("%s on %s: %s costs %d, but from string %d it seems to cost %d",
					chord, tuning, f.shape.shape(s.strings), f.cost, i+1, bound)
			}
		}
	}
}

// firstBoundAbove walks through shape as choose does and returns the string
// index at which the bound is above the cost, or the search would turn back,
// or -1.
func (s *search) firstBoundAbove(f found) (i, bound int) {
	s.enter(f.lowest(s.strings))
	p := partial{lowest: silentBass, bass: silentBass}
	for i := s.strings - 1; i >= 0; i-- {
		if bound := s.atLeast(i, p); bound > f.cost || !s.canMeet(i, p) {
			return i, bound
		}
		if f.shape[i] == muted {
			p = p.mute()
			continue
		}
		var ok bool
		if p, ok = s.stop(i, f.shape[i], p); !ok {
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
