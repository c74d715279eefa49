package synth

import (
	"math"
	"math/cmplx"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
)

// The measurements of these tests. None of them uses the code that is measured.

// partial returns the amplitude and phase of what x sounds at f, by a Hann
// window over all of x.
func partial(x []float32, f, rate float64) complex128 {
	sum, weights := 0i, 0.0
	turn, turned := cmplx.Exp(complex(0, -2*math.Pi*f/rate)), 1+0i
	step, bell := cmplx.Exp(complex(0, 2*math.Pi/float64(len(x)))), cmplx.Exp(complex(0, math.Pi/float64(len(x))))
	for _, v := range x {
		weight := 0.5 - 0.5*real(bell)
		sum += complex(weight*float64(v), 0) * turned
		weights += weight
		turned, bell = turned*turn, bell*step
	}
	return 2 * sum / complex(weights, 0)
}

// frequency returns the frequency of the partial near f: by how far its phase
// turns from one window to another. It comes closer in rounds, as
// windows further apart need a better guess.
func frequency(x []float32, f, rate float64) float64 {
	n := int(8 * rate / f)
	for step := int(2 * rate / f); step+n <= len(x); step *= 2 {
		turns := cmplx.Phase(partial(x[step:step+n], f, rate)/partial(x[:n], f, rate)) / (2 * math.Pi)
		turns += math.Round(f*float64(step)/rate - turns)
		f = turns * rate / float64(step)
	}
	return f
}

func cents(f, want float64) float64 { return 1200 * math.Log2(f/want) }

func decibels(ratio float64) float64 { return 20 * math.Log10(ratio) }

// fall returns the seconds that a partial takes to fall by 60 dB, by its
// amplitude in two windows, n frames long and step frames apart.
func fall(x []float32, f, rate float64, n, step int) float64 {
	drop := decibels(cmplx.Abs(partial(x[:n], f, rate)) / cmplx.Abs(partial(x[step:step+n], f, rate)))
	return 60 / drop * float64(step) / rate
}

// bare returns a string alone, with no body, for so many frames.
func bare(t *tone, s strike, frames int) []float32 {
	v := &voice{delay: make([]float32, t.n), pluck: make([]float32, t.length())}
	v.start(t, s, 1, false)
	v.hold = frames
	out := make([]float32, frames)
	v.run(out)
	return out
}

// hardest is the strike of a down-stroke at the bar line.
func (t *tone) hardest() strike { return strike{gain: 1, edge: t.hard, seed: 1} }

// single returns a passage of one pick on a guitar in a bar of two seconds, a
// quarter note each. It rings for so many ticks.
func single(s fretboard.StringNumber, f fretboard.Fret, rings picking.Ticks) picking.Passage {
	guitar, _ := fretboard.Instrument{}.Normal()
	meter := picking.TwoFour
	pick := picking.Pick{At: 0, Length: rings, Rings: rings, String: s, Fret: f, Pitch: guitar.Pitch(s, f), Stroke: picking.DownStroke}
	return picking.Passage{Meter: meter, Tempo: 60, Instrument: guitar,
		Bars: []picking.Bar{{Number: 1, Written: 1, Pass: 1, Length: meter.Bar(), Picks: []picking.Pick{pick}}}}
}

func rendered(t testing.TB, rate int, p picking.Passage, o Options) (left, right []float32) {
	t.Helper()
	left, right, err := Render(rate, p, o)
	if err != nil {
		t.Fatal(err)
	}
	return left, right
}
