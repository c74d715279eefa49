package synth

import "math"

// A body is the guitar's: three resonances beside the strings themselves, the
// air in it and two of its top. Real ones lie near 100, 200 and 400 Hz (Fletcher
// & Rossing, The Physics of Musical Instruments; from memory).
type body struct {
	modes [3]mode
	tail  int // frames until it is too faint to hear
	left  int // frames that it still sounds
}

// A mode is a band-pass of two poles, with no gain at zero frequency.
type mode struct{ gain, b1, b2, x2, x1, y1, y2 float32 }

var bodyModes = [...]struct{ f, q, gain float64 }{{98, 9, 0.55}, {205, 11, 0.5}, {410, 9, 0.3}}

// bodyTail is the time in which the slowest mode falls by 100 dB, and more.
const bodyTail = 0.4

func newBody(rate float64) body {
	b := body{tail: int(float64(rate * bodyTail))}
	for i, m := range bodyModes {
		w := 2 * math.Pi * m.f / rate
		bandwidth := sin(w) / (2 * m.q)
		norm := 1 / (1 + bandwidth)
		b.modes[i] = mode{gain: float32(float64(m.gain*bandwidth) * norm),
			b1: float32(2 * float64(cos(w)*norm)), b2: float32(-float64((1 - bandwidth) * norm))}
	}
	return b
}

// render adds to two channels what the body makes of both.
func (b *body) render(left, right []float32) {
	var block [most]float32
	both := block[:len(left)]
	for i := range both {
		both[i] = float32((left[i] + right[i]) * 0.5)
	}
	for i := range b.modes {
		b.modes[i].render(both, left, right)
	}
}

func (m *mode) render(in, left, right []float32) {
	gain, b1, b2 := m.gain, m.b1, m.b2
	x1, x2, y1, y2 := m.x1, m.x2, m.y1, m.y2
	for i, x := range in {
		y := float32(gain*(x-x2)) + float32(b1*y1) + float32(b2*y2)
		x2, x1, y2, y1 = x1, x, y1, y
		left[i] += y
		right[i] += y
	}
	m.x1, m.x2, m.y1, m.y2 = x1, x2, y1, y2
}

func (b *body) silence() {
	for i := range b.modes {
		m := &b.modes[i]
		m.x1, m.x2, m.y1, m.y2 = 0, 0, 0, 0
	}
}
