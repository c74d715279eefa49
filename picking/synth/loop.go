package synth

import "math"

// A loop is the filter that a string's vibration goes round in: a delay of n
// samples, a loss and an all-pass that tunes it. The loss is
//
//	g ((1-s) + s/z) (1-a) / (1 - a/z)
//
// Karplus and Strong's averager is s = 1/2, a = 0. What is to lose less up high
// has a smaller s (Jaffe & Smith's stretching), what is to lose more has a pole
// a as well. The all-pass is (c + 1/z) / (1 + c/z).
type loop struct {
	n       int     // N, samples of delay, at least 1
	g, s, a float64 // the loss
	delay   float64 // Pa, the samples by which the loss delays the fundamental
	part    float64 // Pc, the samples by which the all-pass does, 0.1 to 1.1
	c       float64
}

// round returns the gain once round the loop that makes f fall by 60 dB in t
// seconds: rho = 0.001^(1 / (f t)).
func round(f, t float64) float64 {
	const log2Of1000 = 9.965784284662087
	return exp2(-log2Of1000 / float64(f*t))
}

// newLoop returns the loop in which f0 rings for t seconds and f1, higher, for
// t1, at a rate in samples a second. Both lie below half the rate.
func newLoop(rate, f0, t, f1, t1 float64) loop {
	w0, w1 := 2*math.Pi*f0/rate, 2*math.Pi*f1/rate
	var l loop
	gain, high := round(f0, t), round(f0, t1) // f1 too goes round f0 times a second
	l.s, l.a = losses(w0, w1, gain, high)
	l.g = gain / l.unscaled(w0)
	l.delay = l.lag(w0) / w0
	l.tune(rate/f0, w0)
	return l
}

// losses returns s and a of a loss that, but for g, passes w0 and w1 in the ratio
// of their gains. Near the top of the rate, where the loss grows less than with
// the square of the frequency, w1 loses less than asked, so that g is below 1.
func losses(w0, w1, gain, high float64) (s, a float64) {
	const most = 0.8 // of what w0 loses, for s
	ratio := high / gain
	averager := cos(w1/2) / cos(w0/2)
	if ratio < averager {
		return 0.5, pole(w0, w1, ratio/averager)
	}
	// |(1-s) + s/z|^2 = 1 - 4 s (1-s) sin^2(w/2)
	square := float64(ratio * ratio)
	sin0, sin1 := sin(w0/2), sin(w1/2)
	q := (1 - square) / (float64(sin1*sin1) - float64(square*float64(sin0*sin0)))
	q = min(q, float64(most*(1-float64(gain*gain)))/float64(sin0*sin0))
	return (1 - math.Sqrt(max(0, 1-q))) / 2, 0
}

// pole returns a of a one-pole filter that passes w1 by a ratio below 1 less
// than w0. It solves |1 - a/z|^2 = 1 - 2 a cos w + a^2 at both.
func pole(w0, w1, ratio float64) float64 {
	square := float64(ratio * ratio)
	k := (cos(w0) - float64(square*cos(w1))) / (1 - square)
	return 1 / (k + math.Sqrt(max(0, float64(k*k)-1)))
}

// unscaled returns the gain of the loss at w for g = 1.
func (l loop) unscaled(w float64) float64 {
	half := sin(w / 2)
	zero := 1 - float64(4*float64(l.s*(1-l.s))*float64(half*half))
	one := float64((1-l.a)*(1-l.a)) + float64(4*float64(l.a*float64(half*half)))
	return float64((1 - l.a) * math.Sqrt(zero/one))
}

// lag returns by how much the loss delays w, as an angle.
func (l loop) lag(w float64) float64 {
	sine, cosine := sin(w), cos(w)
	return atan(float64(l.s*sine)/(1-l.s+float64(l.s*cosine))) +
		atan(float64(l.a*sine)/(1-float64(l.a*cosine)))
}

// tune chooses N, Pc and C for a period in samples, of which the loss already
// makes up a part.
func (l *loop) tune(period, w float64) {
	const least = 0.1 // an all-pass of hardly any delay would ring at half the rate
	rest := period - l.delay
	l.n = int(math.Floor(rest - least))
	l.part = rest - float64(l.n)
	by := float64(w * l.part)
	l.c = sin((w-by)/2) / sin((w+by)/2)
}
