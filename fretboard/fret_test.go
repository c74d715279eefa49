package fretboard_test

import (
	"math"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

// TestFretTable holds frets against a published table for a scale of 25 inches,
// which follows L * 2^(-n/12); printed to a thousandth of a millimetre.
func TestFretTable(t *testing.T) {
	want := []float64{635.000, 599.360, 565.721, 533.969, 504.000, 475.712, 449.013, 423.812, 400.025, 377.573, 356.382}
	for f, want := range want {
		if got := float64(fretboard.FromBridge(25*25.4, fretboard.Fret(f))); math.Abs(got-want) > 0.0006 {
			t.Errorf("fret %d lies %.4f mm from the bridge, want %.3f", f, got, want)
		}
	}
}

// TestFirstFret checks the luthiers' constant of equal temperament: fret 1 lies
// a 17.8171537th of the scale from the nut, 1/(1 - 2^(-1/12)).
func TestFirstFret(t *testing.T) {
	if got := float64(1 / fretboard.Span(1, 0, 1)); math.Abs(got-17.8171537) > 5e-8 {
		t.Errorf("the constant is %.8f, want 17.8171537", got)
	}
}

// TestSpansOutside is derived from the rule at 25.4 inches, rounded to 0.1 mm.
func TestSpansOutside(t *testing.T) {
	for _, c := range []struct {
		low, high fretboard.Fret
		want      float64
	}{{1, 4, 96.9}, {1, 5, 125.6}, {5, 8, 76.9}, {5, 9, 99.7}, {3, 3, 0}, {0, 12, 322.58}} {
		if got := float64(fretboard.Span(645.16, c.low, c.high)); math.Abs(got-c.want) > 0.05 {
			t.Errorf("frets %d to %d span %.3f mm, want %.1f", c.low, c.high, got, c.want)
		} else {
			t.Logf("frets %d to %d span %.1f mm, by the rule %.1f", c.low, c.high, got, c.want)
		}
	}
}

func TestFretProperties(t *testing.T) {
	fret := gen.IntRange(0, int(fretboard.MaxFrets))
	scale := gen.Float64Range(100, 2000)
	p := properties()
	p.Property("the same stretch twelve frets up spans exactly half", prop.ForAll(func(scale float64, low, high int) bool {
		l, a, b := fretboard.Millimetres(scale), fretboard.Fret(low), fretboard.Fret(high)
		return fretboard.Span(l, a+12, b+12) == fretboard.Span(l, a, b)/2
	}, scale, fret, fret))
	p.Property("a span turned over changes its sign", prop.ForAll(func(scale float64, low, high int) bool {
		l, a, b := fretboard.Millimetres(scale), fretboard.Fret(low), fretboard.Fret(high)
		return fretboard.Span(l, a, b) == -fretboard.Span(l, b, a)
	}, scale, fret, fret))
	p.Property("each fret lies nearer to the bridge than the one below it", prop.ForAll(func(scale float64, f int) bool {
		l := fretboard.Millimetres(scale)
		return fretboard.FromBridge(l, fretboard.Fret(f+1)) < fretboard.FromBridge(l, fretboard.Fret(f))
	}, scale, fret))
	p.Property("a string's length and its frequency multiply to the same number at every fret", prop.ForAll(func(scale float64, f int) bool {
		open := scale * float64(fretboard.Pitch(40).Hertz())
		stopped := float64(fretboard.FromBridge(fretboard.Millimetres(scale), fretboard.Fret(f))) *
			float64(fretboard.Pitch(40).Up(fretboard.Fret(f)).Hertz())
		return math.Abs(open-stopped) < 1e-12*open
	}, scale, fret))
	check(t, p)
}
