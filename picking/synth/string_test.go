package synth

import (
	"math"
	"math/cmplx"
	"testing"

	"weft.example/fretboard"
)

// everyNote calls do for each string of a guitar and fret 0 to 20.
func everyNote(do func(s fretboard.StringNumber, f fretboard.Fret, p, open fretboard.Pitch)) {
	var guitar fretboard.Instrument
	guitar, _ = guitar.Normal()
	for s := fretboard.StringNumber(1); s <= 6; s++ {
		for f := fretboard.Fret(0); f <= 20; f++ {
			do(s, f, guitar.Pitch(s, f), guitar.Pitch(s, 0))
		}
	}
}

// TestPitches holds the fundamental of every note, body and all, within 1 cent
// of 440 * 2^((m-69)/12) (ISO 16), measured by its phase.
func TestPitches(t *testing.T) {
	worst := 0.0
	for _, rate := range []int{44100, 48000} {
		for m := range materials {
			everyNote(func(s fretboard.StringNumber, f fretboard.Fret, p, _ fretboard.Pitch) {
				left, _ := rendered(t, rate, single(s, f, 480), Options{Material: Material(m)})
				want := 440 * math.Pow(2, (float64(p)-69)/12)
				off := cents(frequency(left[rate/5:rate*19/20], want*1.004, float64(rate)), want)
				if worst = max(worst, math.Abs(off)); !(math.Abs(off) < 1) {
					t.Errorf("%s, string %d, fret %d at %d: %+.3f cents", Material(m), s, f, rate, off)
				}
			})
		}
	}
	t.Logf("within %.3f cents", worst)
}

// TestTheMeasurementCanFail detunes a loop by 2 cents.
func TestTheMeasurementCanFail(t *testing.T) {
	x := newTone(48000, Steel, 45, 45)
	x.allpass = float32(x.allpass - 0.5)
	sound := bare(x, x.hardest(), 48000)
	if off := cents(frequency(sound[4800:], 110, 48000), 110); math.Abs(off) < 1 {
		t.Errorf("a string out of tune measures as %+.3f cents", off)
	}
}

// TestRing holds how long each note's fundamental rings, and its partials as
// far as they stand out, against what is asked.
func TestRing(t *testing.T) {
	const rate = 48000
	worst := [3]float64{}
	for m, material := range materials {
		everyNote(func(s fretboard.StringNumber, f fretboard.Fret, p, open fretboard.Pitch) {
			x := newTone(rate, Material(m), p, open)
			ring := Material(m).Ring(p).Seconds()
			sound := bare(x, x.hardest(), int(rate*ring*0.7))
			for i, k := range []float64{1, 2, 3} {
				f0 := float64(p.Hertz())
				asked := material.partialDecay(k*f0, f0, ring)
				n, step := int(24*rate/f0), int(rate*asked/4)
				got := fall(sound[rate/20:], k*f0, rate, n, step)
				off := math.Abs(got/asked - 1)
				if worst[i] = max(worst[i], off); k == 1 && !(off < 0.05) || !(off < 0.15) {
					t.Errorf("%s, string %d, fret %d, partial %v: rings %.3f s, asked %.3f", Material(m), s, f, k, got, asked)
				}
			}
		})
	}
	t.Logf("partials 1, 2, 3 within %.1f %%, %.1f %%, %.1f %%", 100*worst[0], 100*worst[1], 100*worst[2])
}

// TestPluckPosition plucks at a fifth of the string, where the fifth partial
// has a node: |2 sin(pi beta k)| (Smith, Physical Audio Signal Processing).
func TestPluckPosition(t *testing.T) {
	const rate = 48000
	everyNote(func(s fretboard.StringNumber, f fretboard.Fret, p, open fretboard.Pitch) {
		x := newTone(rate, Steel, p, open)
		f0 := float64(p.Hertz())
		level := func(from, k float64) float64 {
			x.comb = from * rate / f0
			return cmplx.Abs(partial(bare(x, x.hardest(), int(12*rate/f0))[int(2*rate/f0):], k*f0, rate))
		}
		// the same partial where it is strongest, plucked at a tenth
		if null := decibels(level(0.2, 5) / level(0.1, 5)); !(null < -30) {
			t.Errorf("string %d, fret %d: the fifth partial is at %.1f dB", s, f, null)
		}
		if here := decibels(level(0.2, 3) / level(0.1, 3)); !(here > -6) {
			t.Errorf("string %d, fret %d: the third partial is at %.1f dB, and has no node there", s, f, here)
		}
	})
}

// TestStrokes holds the spectrum of an up-stroke against that of a down-stroke
// with the ratio |(1-p) / (1 - p/z)|, whose p = 0.9 is -25.58 dB at half the
// rate (Jaffe & Smith 1983; the number worked out apart).
func TestStrokes(t *testing.T) {
	const rate = 44100
	x := newTone(rate, Steel, 45, 45)
	for _, pole := range []float64{x.up, 0.9} {
		x.up = pole
		down := x.hardest()
		up := down
		up.up = true
		one, other := make([]float32, x.length()), make([]float32, x.length())
		x.excite(one, down)
		x.excite(other, up)
		for f := 100.0; f <= rate/2; f += 1997.7 {
			z := cmplx.Exp(complex(0, -2*math.Pi*f/rate))
			want := decibels(cmplx.Abs(complex(1-pole, 0) / (1 - complex(pole, 0)*z)))
			got := decibels(cmplx.Abs(spectrum(other, f/rate)) / cmplx.Abs(spectrum(one, f/rate)))
			if math.Abs(got-want) > 0.1 {
				t.Errorf("p %.3f at %.0f Hz: %.2f dB, want %.2f", pole, f, got, want)
			}
		}
	}
	if got := decibels((1 - 0.9) / (1 + 0.9)); math.Abs(got+25.58) > 0.01 {
		t.Errorf("p = 0.9 is %.2f dB at half the rate", got)
	}
}

func spectrum(x []float32, f float64) complex128 {
	sum := 0i
	for i, v := range x {
		sum += complex(float64(v), 0) * cmplx.Exp(complex(0, -2*math.Pi*f*float64(i)))
	}
	return sum
}

// TestNoConstantPart: the mean over whole periods, and over all of a note, is
// far below its amplitude.
func TestNoConstantPart(t *testing.T) {
	everyNote(func(s fretboard.StringNumber, f fretboard.Fret, p, open fretboard.Pitch) {
		left, _ := rendered(t, 48000, single(s, f, 960), Options{})
		sum, peak := 0.0, 0.0
		for _, v := range left {
			sum += float64(v)
			peak = max(peak, math.Abs(float64(v)))
		}
		if mean := math.Abs(sum) / float64(len(left)); mean > 1e-4*peak {
			t.Errorf("string %d, fret %d: mean %.2e, peak %.2f", s, f, mean, peak)
		}
	})
}
