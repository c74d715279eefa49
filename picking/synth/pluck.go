package synth

import "math"

// A strike is how a string is plucked.
type strike struct {
	gain float64 // 1 is the hardest
	edge float64 // pole of the plectrum's edge
	up   bool
	seed uint64
}

// pluckTail is the time in which all filters of a pluck have died away.
const pluckTail = 1.0 / 200

// length returns the frames that a pluck takes: noise, echo and filters.
func (t *tone) length() int { return t.burst + int(t.comb) + 4 + t.tail }

// excite writes a pluck into out and returns the frames it takes: the jerk of
// the string let go and the noise of the plectrum, sent through the comb of the
// place where it is plucked and the filters of its tone, brought to one energy,
// then given its strength and stroke. out has room for it.
func (t *tone) excite(out []float32, s strike) int {
	out = out[:t.length()]
	clear(out)
	t.jerk(out[:t.burst], s.seed)
	echo(out, t.comb)
	smooth(out, t.pluck)
	smooth(out, s.edge)
	scale(out, float64(s.gain*t.level)/math.Sqrt(energy(out)))
	if s.up {
		smooth(out, t.up)
	}
	return len(out)
}

// jerk writes an impulse of energy 1 with noise that grows fainter.
func (t *tone) jerk(out []float32, seed uint64) {
	// noise of uniform samples has a third of its peak's energy, and a third
	// again as it falls off in a straight line
	peak := math.Sqrt(9 * t.noise / float64(len(out)))
	random := generator(seed)
	for i := range out {
		fall := float64(len(out)-i) / float64(len(out))
		out[i] = float32(float64(peak*fall) * random.next())
	}
	out[0] += 1
}

// echo takes away from x what was there by samples before, between samples as
// by the cubic through the four around. It leaves no constant part.
func echo(x []float32, by float64) {
	by = max(by, 1)
	whole := int(by)
	d := by - float64(whole) // past the second of the four
	h := [4]float32{
		float32(-float64(d*(1-d)) * (2 - d) / 6),
		float32(float64((1+d)*(1-d)) * (2 - d) / 2),
		float32(float64(d*(1+d)) * (2 - d) / 2),
		float32(-float64(d*(1+d)) * (1 - d) / 6),
	}
	for i := len(x) - 1; i >= 0; i-- {
		for k, weight := range h {
			if at := i - whole + 1 - k; at >= 0 {
				x[i] -= float32(weight * x[at])
			}
		}
	}
}

// smooth sends x through (1-p) / (1 - p/z).
func smooth(x []float32, p float64) {
	a, b, y := float32(1-p), float32(p), float32(0)
	for i, v := range x {
		y = float32(a*v) + float32(b*y)
		x[i] = y
	}
}

func energy(x []float32) float64 {
	sum := 0.0
	for _, v := range x {
		sum += float64(float64(v) * float64(v))
	}
	return sum
}

func scale(x []float32, by float64) {
	gain := float32(by)
	for i := range x {
		x[i] *= gain
	}
}

// A generator makes chance from a seed: SplitMix64 (Steele, Lea & Flood 2014,
// Fast splittable pseudorandom number generators).
type generator uint64

// next returns a number from -1 to below 1.
func (g *generator) next() float64 {
	*g += 0x9e3779b97f4a7c15
	x := uint64(*g)
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	x ^= x >> 31
	return float64(int64(x)>>11) / (1 << 52)
}
