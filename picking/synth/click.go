package synth

import "math"

// A tick is a short knock, the click of a metronome.
type tick struct {
	kinds [3][]float32
	sound []float32 // what is left of the one that sounds
	left  int       // its frames
}

// The kinds of click.
const (
	accent = iota // the first beat of a bar
	beat
	divided
)

var knocks = [3]struct{ f, gain float64 }{accent: {2100, 0.30}, beat: {1400, 0.20}, divided: {1050, 0.09}}

// newTick returns the clicks, each a sine that falls by 60 dB in knockTime: less
// than the shortest time between two clicks, a quarter of the fastest beat.
func newTick(rate float64) (t tick) {
	const knockTime = 0.03
	for kind, k := range knocks {
		t.kinds[kind] = make([]float32, int(float64(rate*knockTime)))
		fall := round(1, knockTime*rate) // of one frame
		radius := float64(2 * float64(fall*cos(2*math.Pi*k.f/rate)))
		y1, y2 := float64(k.gain*sin(2*math.Pi*k.f/rate)), 0.0
		for i := range t.kinds[kind] {
			t.kinds[kind][i] = float32(y2)
			y1, y2 = float64(radius*y1)-float64(float64(fall*fall)*y2), y1
		}
	}
	return t
}

func (t *tick) start(kind int) { t.sound, t.left = t.kinds[kind], len(t.kinds[kind]) }

// render adds the click to two channels.
func (t *tick) render(left, right []float32) {
	sound := t.sound[len(t.sound)-t.left:]
	for i := range min(len(left), len(sound)) {
		left[i] += sound[i]
		right[i] += sound[i]
	}
}

func (t *tick) pass(n int) { t.left = max(0, t.left-n) }
