package synth

import (
	"math"
	"slices"
	"testing"
)

// TestAStoppedStringDoesNotClick compares a string with its twin that is
// stopped: up to then they are the same, after it the twin falls from the
// other's level to nothing in small steps.
func TestAStoppedStringDoesNotClick(t *testing.T) {
	const rate, at, fade = 48000, 5000, 288
	x := newTone(rate, Steel, 40, 40)
	free := bare(x, x.hardest(), at+fade)
	v := &voice{left: 1, right: 1, delay: make([]float32, x.n), pluck: make([]float32, x.length())}
	v.start(x, x.hardest(), 1440, false)
	var out [at + fade]float32
	for i := 0; v.sounding() && i < len(out); {
		if i == at {
			v.stop(fade)
		} else if i > at {
			v.stop(10 * fade) // it already fades
		}
		n := min(100, v.next())
		v.render(out[i:i+n], make([]float32, n))
		v.pass(n)
		i += n
	}
	if v.sounding() || !slices.Equal(out[:at], free[:at]) {
		t.Fatal("the string sounds otherwise before, or on after the fade")
	}
	last, before := 1.0, at-1
	for i := at; i < len(out); i++ {
		if math.Abs(float64(free[i])) < 1e-6 {
			continue
		}
		gain := float64(out[i]) / float64(free[i])
		if step := last - gain; step < -1e-4 || step > 2.1/fade*float64(i-before) {
			t.Fatalf("frame %d: the level goes from %.4f to %.4f", i-at, last, gain)
		}
		last, before = gain, i
	}
	if last > 0.01 {
		t.Errorf("it ends at %.4f of its level", last)
	}
}

// TestLimit: what is below the knee stays, what is above keeps its order and
// its sign and does not pass 1.
func TestLimit(t *testing.T) {
	last := float32(-1)
	for i := -30000; i <= 30000; i++ {
		in := float32(i) / 1000
		x := []float32{in}
		limit(x)
		if x[0] < last || math.Abs(float64(x[0])) > 1 || math.Abs(float64(in)) <= 0.8 && x[0] != in {
			t.Fatalf("%v becomes %v, after %v", in, x[0], last)
		}
		last = x[0]
	}
	if last < 0.99 {
		t.Errorf("the loudest becomes %v", last)
	}
}
