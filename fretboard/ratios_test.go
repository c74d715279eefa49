package fretboard

import (
	"math"
	"math/big"
	"testing"
)

// TestSemitoneRatiosAreTheNearestFloats proves the table to half a unit in the
// last place: a float64 r is nearest to 2^(n/12) if 2^n lies between the
// twelfth powers of the two midpoints around r, which exact arithmetic decides.
func TestSemitoneRatiosAreTheNearestFloats(t *testing.T) {
	for n, r := range semitoneRatios {
		if n == 0 {
			if r != 1 {
				t.Errorf("the unison has the ratio %v", r)
			}
			continue
		}
		want := new(big.Float).SetInt64(1 << n)
		below, above := midpoint(r, math.Nextafter(r, 0)), midpoint(r, math.Nextafter(r, 3))
		if twelfthPower(below).Cmp(want) >= 0 || twelfthPower(above).Cmp(want) <= 0 {
			t.Errorf("%d semitones: %.17g is not the float64 nearest to 2^(%d/12)", n, r, n)
		}
	}
}

// exact is enough bits for the twelfth power of a number of 54 bits.
const exact = 12 * 54

func midpoint(a, b float64) *big.Float {
	sum := new(big.Float).SetPrec(exact).Add(big.NewFloat(a), big.NewFloat(b))
	return sum.Mul(sum, big.NewFloat(0.5))
}

func twelfthPower(x *big.Float) *big.Float {
	power := new(big.Float).SetPrec(exact).SetInt64(1)
	for range semitones {
		power.Mul(power, x)
	}
	return power
}

func TestTwoToTheFollowsTheOctaves(t *testing.T) {
	for n := -240; n <= 240; n++ {
		want := math.Exp2(float64(n) / 12) // whose argument is rounded, at 20 to 2e-15 of the result
		if got := twoToThe(n); math.Abs(got-want) > 2e-15*want || twoToThe(n+semitones) != 2*got {
			t.Errorf("2^(%d/12) = %.17g, want %.17g", n, got, want)
		}
	}
}

func TestFloorDivRoundsDown(t *testing.T) {
	for a := -40; a <= 40; a++ {
		if got, want := floorDiv(a, 12), int(math.Floor(float64(a)/12)); got != want {
			t.Errorf("%d / 12 = %d, want %d", a, got, want)
		}
	}
}
