package synth

import (
	"math"

	"weft.example/fretboard"
)

// A tone is all that a pitch on a string of some material needs to sound.
type tone struct {
	loop                        // in full precision; what follows is how it runs
	now, before, again  float32 // the loss: on the sample, the one before, its own output
	allpass             float32
	comb                float64 // samples from a pluck to its echo from the bridge, inverted
	life                int     // frames until it is too faint to hear
	level               float64 // scale of a pluck of energy 1
	pluck, soft, middle float64 // poles of the pluck's own tone, by strength
	hard, up            float64
	burst, tail         int // frames of the plectrum's noise, and of the filters after it
	noise               float64
}

// loudness is the root mean square of the hardest pluck over its first period,
// chosen so that twelve strings struck at once stay below the knee of [limit].
const loudness = 0.09

// upStroke is where an up-stroke begins to fall off, in Hz.
const upStroke = 4000.0

// newTone returns the tone of a pitch on a string that sounds open when free.
func newTone(rate float64, m Material, p, open fretboard.Pitch) *tone {
	s, f := materials[m], float64(p.Hertz())
	t := s.decay(p)
	f1 := min(max(highLoss, 2*f), float64(0.45*rate))
	l := newLoop(rate, f, t, f1, s.partialDecay(f1, f, t))
	from := min(0.5, float64(s.from*f)/float64(open.Hertz()))
	out := &tone{loop: l,
		comb: float64(from*rate) / f, life: int(float64(2 * float64(t*rate))),
		level: loudness * math.Sqrt(rate/f),
		pluck: onePole(s.pluck, rate), up: onePole(upStroke, rate),
		hard: onePole(s.hardness, rate), middle: onePole(s.hardness*0.7, rate), soft: onePole(s.hardness*0.5, rate),
		burst: int(rate) / 400, tail: int(float64(rate * pluckTail)), noise: s.noise,
	}
	out.now = float32(float64(l.g*(1-l.s)) * (1 - l.a))
	out.before = float32(float64(l.g*l.s) * (1 - l.a))
	out.again, out.allpass = float32(l.a), float32(l.c)
	return out
}

// onePole returns p of the filter (1-p) / (1 - p/z) whose corner is at f.
func onePole(f, rate float64) float64 {
	const log2OfE = math.Log2E
	return exp2(-2 * math.Pi * log2OfE * f / rate)
}
