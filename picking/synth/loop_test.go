package synth

import (
	"math"
	"testing"

	"weft.example/fretboard"
)

// TestLoopConstants holds N, Pc and C of the plain averager, which delays by
// half a sample, at 44.1 kHz, and rho, against values worked out apart from
// this code by the formulas of Jaffe & Smith 1983:
//
//	fs/f0 = N + 1/2 + Pc,  C = sin((w - w Pc)/2) / sin((w + w Pc)/2),  rho = 0.001^(1/(f0 t60))
func TestLoopConstants(t *testing.T) {
	const rate = 44100
	for _, c := range []struct {
		pitch   fretboard.Pitch
		n       int
		part, c float64
	}{
		{40, 534, .6494, .212541},
		{45, 400, .4091, .419362},
		{64, 133, .2874, .553628},
	} {
		f := float64(c.pitch.Hertz())
		w0, w1 := 2*math.Pi*f/rate, 2*math.Pi*5000/float64(rate)
		// loss at 5 kHz just as the averager has it
		gain := round(f, 4)
		high := gain * math.Cos(w1/2) / math.Cos(w0/2)
		l := newLoop(rate, f, 4, 5000, -3/math.Log10(high)/f)
		if math.Abs(l.s-0.5) > 1e-4 || l.a > 1e-4 || math.Abs(l.delay-0.5) > 1e-4 {
			t.Errorf("pitch %d: not the averager: s %v, a %v, Pa %v", c.pitch, l.s, l.a, l.delay)
		}
		if l.n != c.n || math.Abs(l.part-c.part) > 1e-4 || math.Abs(l.c-c.c) > 1e-4 {
			t.Errorf("pitch %d: N %d, Pc %.4f, C %.6f; want %d, %.4f, %.6f", c.pitch, l.n, l.part, l.c, c.n, c.part, c.c)
		}
	}
	if got := round(110, 4); math.Abs(got-0.98442315) > 5e-9 {
		t.Errorf("rho at 110 Hz for 4 s is %.8f", got)
	}
}

// TestAllPassDelay proves the sign of the all-pass, which is easily wrong: at
// low frequencies it delays by (1-C)/(1+C) samples, near Pc.
func TestAllPassDelay(t *testing.T) {
	for _, pitch := range []fretboard.Pitch{28, 40, 52, 64, 84} {
		l := newTone(48000, Steel, pitch, pitch).loop
		if got := (1 - l.c) / (1 + l.c); math.Abs(got-l.part) > 0.01 {
			t.Errorf("pitch %d: delays by %v samples, want %v", pitch, got, l.part)
		}
	}
}

// TestEveryLoopIsStable goes through all pitches and many rates: a loop whose
// gain were above 1 anywhere would grow.
func TestEveryLoopIsStable(t *testing.T) {
	met := 0
	for _, rate := range []float64{8000, 11025, 22050, 44100, 48000, 96000, 192000} {
		for m := range materials {
			for p := fretboard.MinPitch; p <= fretboard.MaxPitch; p++ {
				if checkPitch(rate, p) != nil {
					continue
				}
				met++
				x := newTone(rate, Material(m), p, p)
				if !(x.g > 0 && x.g < 1 && x.s >= 0 && x.s <= 0.5 && x.a >= 0 && x.a < 1 && x.n >= 1 &&
					x.part >= 0.1 && x.part < 1.1 && math.Abs(x.c) < 1 && x.life > 0) {
					t.Errorf("%v, %s, pitch %d: %+v", rate, Material(m), p, x.loop)
				}
				if total := float64(x.n) + x.delay + x.part; math.Abs(total*float64(p.Hertz())/rate-1) > 1e-12 {
					t.Errorf("%v, %s, pitch %d: %v samples round", rate, Material(m), p, total)
				}
			}
		}
	}
	if met < 7*2*100 {
		t.Errorf("only %d loops", met)
	}
}
