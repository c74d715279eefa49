package synth

import (
	"time"

	"weft.example/fretboard"
)

// A Material is what the strings are made of.
type Material uint8

// Steel strings ring long and bright, nylon ones short and round.
const (
	Steel Material = iota
	Nylon
)

var materialNames = [...]string{"steel", "nylon"}

// String returns steel or nylon.
func (m Material) String() string { return fretboard.NameOf(materialNames[:], int(m)) }

// ParseMaterial reads steel or nylon.
func ParseMaterial(text string) (Material, error) {
	i, err := fretboard.ParseName("material", materialNames[:], text)
	return Material(i), err
}

// A substance is what a material's sound is made of. The figures are ours, set
// by ear's rules of thumb; times are to fall by 60 dB.
type substance struct {
	ring     float64 // seconds that E2 rings
	high     float64 // seconds that 5 kHz would ring if it lost nothing else
	from     float64 // where the pick meets an open string, in its lengths from the bridge
	pluck    float64 // Hz above which a pluck falls off
	hardness float64 // Hz above which the plectrum's own edge falls off, struck hardest
	noise    float64 // energy of the plectrum's noise, against the pluck's
}

var materials = [...]substance{
	Steel: {ring: 8, high: 0.7, from: 0.13, pluck: 280, hardness: 8000, noise: 0.15},
	Nylon: {ring: 4.5, high: 0.16, from: 0.16, pluck: 160, hardness: 4000, noise: 0.06},
}

// highLoss is the frequency of [substance.high].
const highLoss = 5000.0

// Ring returns how long a pitch takes to fall by 60 dB, the note's fundamental
// that is, if nothing stops it: 8 s for E2 on steel and 4.5 s on nylon, and half
// as long every two octaves up. No pitch rings longer than 12 s.
func (m Material) Ring(p fretboard.Pitch) time.Duration {
	return time.Duration(float64(materials[m].decay(p) * float64(time.Second)))
}

func (s substance) decay(p fretboard.Pitch) float64 {
	const e2, halving, longest = 40, 24.0, 12.0
	ring := float64(s.ring * exp2(-float64(p-e2)/halving))
	return min(ring, longest, float64(0.8*s.highDecay(float64(p.Hertz()))))
}

// highDecay returns how long f would ring with only the loss that grows with
// the square of the frequency.
func (s substance) highDecay(f float64) float64 {
	ratio := highLoss / f
	return float64(s.high * float64(ratio*ratio))
}

// partialDecay returns how long a partial at f rings in a note of fundamental
// f0 that rings for t: the loss grows with the square of the frequency.
func (s substance) partialDecay(f, f0, t float64) float64 {
	return 1 / (1/t + 1/s.highDecay(f) - 1/s.highDecay(f0))
}
