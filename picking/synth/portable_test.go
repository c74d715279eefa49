package synth

import (
	"math"
	"testing"
)

// TestFunctions holds the functions against package math, which is good to a
// last bit or two, if not always to the same one.
func TestFunctions(t *testing.T) {
	close := func(name string, x, got, want float64) {
		if math.Abs(got-want) > 1e-15*math.Max(1, math.Abs(want)) && math.Abs(got-want) > 4e-16*math.Abs(want) {
			t.Errorf("%s of %v is %v, want %v", name, x, got, want)
		}
	}
	for i := -1000; i <= 1000; i++ {
		x := float64(i) / 1000
		close("sin", math.Pi*x, sin(math.Pi*x), math.Sin(math.Pi*x))
		close("cos", math.Pi*math.Abs(x), cos(math.Pi*math.Abs(x)), math.Cos(math.Pi*x))
		close("atan", 5*x, atan(5*x), math.Atan(5*x))
		close("exp2", 40*x, exp2(40*x), math.Exp2(40*x))
	}
	if exp2(0) != 1 || exp2(-3) != 0.125 || exp2(10) != 1024 || sin(0) != 0 || atan(0) != 0 {
		t.Error("whole powers of two and zeros are exact")
	}
}
