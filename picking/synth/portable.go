package synth

import "math"

// Go may fuse x*y + z into one rounding where the processor can, and package
// math has versions of Exp and others in some processors' own code; so the same
// source gives other last bits elsewhere. Here every product is rounded by a
// conversion, which the language promises to keep, and the few functions needed
// are series of such products. math.Sqrt, Floor and Ldexp are exact everywhere.

// exp2 returns 2^x for |x| < 1000, to a few parts in 10^16.
func exp2(x float64) float64 {
	whole := math.Floor(x + 0.5)
	t := float64((x - whole) * math.Ln2)
	sum := 1.0
	for n := 16; n > 0; n-- {
		sum = 1 + float64(sum*t)/float64(n)
	}
	return math.Ldexp(sum, int(whole))
}

// sin returns the sine of an angle from -pi to pi, to a few parts in 10^16.
func sin(x float64) float64 {
	switch {
	case x > math.Pi/2:
		x = math.Pi - x
	case x < -math.Pi/2:
		x = -math.Pi - x
	}
	sum, square := 1.0, float64(x*x)
	for n := 27; n > 1; n -= 2 {
		sum = 1 - float64(sum*square)/float64(n*(n-1))
	}
	return float64(sum * x)
}

// cos returns the cosine of an angle from 0 to pi.
func cos(x float64) float64 { return sin(math.Pi/2 - x) }

// atan returns the angle whose tangent is x, to a few parts in 10^16. Halving
// the angle three times brings it to where the series is short.
func atan(x float64) float64 {
	const halvings = 3
	for range halvings {
		x /= 1 + math.Sqrt(1+float64(x*x))
	}
	sum, square := 0.0, float64(x*x)
	for n := 25; n > 0; n -= 2 {
		sum = 1/float64(n) - float64(sum*square)
	}
	return float64(sum*x) * (1 << halvings)
}
