package synth_test

import (
	"math"
	"slices"
	"testing"

	"weft.example/picking"
	"weft.example/picking/synth"
)

// TestClicks counts the frames at which clicks begin: each from silence, as
// nothing else sounds.
func TestClicks(t *testing.T) {
	const rate = 16000
	p := arranged(t, "Am=x02210 | Am", "5 . . . . . . .", picking.Setting{Tempo: 50})
	six := arranged(t, "Am=x02210 | Am", "5 . . . . .", picking.Setting{Tempo: 70, Meter: picking.SixEight})
	mute := func(o synth.Options) synth.Options { o.Silent = 1; return o }
	for _, c := range []struct {
		why  string
		p    picking.Passage
		o    synth.Options
		want []float64 // beats
	}{
		{"none by default", p, synth.Options{}, nil},
		{"beats", p, synth.Options{Click: synth.BeatClick}, []float64{0, 1, 2, 3, 4, 5, 6, 7}},
		{"a count-in with no click after it", p, synth.Options{CountIn: 1}, []float64{0, 1, 2, 3}},
		{"below 60 the halves too", p, synth.Options{Click: synth.AutoClick, To: 1}, []float64{0, .5, 1, 1.5, 2, 2.5, 3, 3.5}},
		{"from 60 on only beats", p, synth.Options{Click: synth.AutoClick, To: 1, Tempo: 60}, []float64{0, 1, 2, 3}},
		{"the thirds of a compound beat", six, synth.Options{Click: synth.DividedClick, To: 1}, []float64{0, 1. / 3, 2. / 3, 1, 4. / 3, 5. / 3}},
		{"hushed in silent bars but for the count-in", p, synth.Options{Click: synth.BeatClick, CountIn: 1, Hush: true}, []float64{0, 1, 2, 3}},
		{"three rounds", six, synth.Options{Click: synth.BeatClick, To: 1, Rounds: 3}, []float64{0, 1, 2, 3, 4, 5}},
	} {
		tempo := c.p.Tempo
		if c.o.Tempo != 0 {
			tempo = c.o.Tempo
		}
		var want []int
		for _, beats := range c.want {
			want = append(want, frameOf(rate, tempo, c.p, picking.Ticks(math.Round(beats*float64(c.p.Meter.Beat())))))
		}
		if got := onsets(rendered(t, rate, c.p, mute(c.o)), rate); !near(got, want) {
			t.Errorf("%s: clicks at %v, want %v", c.why, got, want)
		}
	}
}

// near reports whether frames are those wanted, or one later: a sine begins
// with nothing.
func near(got, want []int) bool {
	return slices.EqualFunc(got, want, func(a, b int) bool { return a-b == 0 || a-b == 1 })
}

// onsets returns the frames at which something begins after 10 ms of silence.
func onsets(sound []float32, rate int) (frames []int) {
	quiet := rate
	for i, v := range sound {
		if v != 0 && quiet >= rate/100 {
			frames = append(frames, i)
		}
		quiet++
		if v != 0 {
			quiet = 0
		}
	}
	return frames
}

func TestTheFirstBeatIsAccented(t *testing.T) {
	const rate = 16000
	p := arranged(t, "Am=x02210", "5 . . . . . . .", picking.Setting{Tempo: 50})
	sound := rendered(t, rate, p, synth.Options{Click: synth.AutoClick, Silent: 1})
	peak := func(beats float64) (peak float32) {
		from := int(beats * 60 / 50 * rate)
		for _, v := range sound[from : from+rate/20] {
			peak = max(peak, v, -v)
		}
		return peak
	}
	if one, two, and := peak(0), peak(1), peak(0.5); !(one > 1.2*two && two > 1.2*and && and > 0.01) {
		t.Errorf("peaks %v on one, %v on two, %v between", one, two, and)
	}
}

func TestSilentBars(t *testing.T) {
	const rate = 8000
	p := arranged(t, "Am=x02210 | G=320003", "5 3 2 1 2 3 1 2", picking.Setting{Tempo: 60})
	bar := frameOf(rate, 60, p, p.Meter.Bar())
	sound := rendered(t, rate, p, synth.Options{Rounds: 3, Sounding: 2, Silent: 1})
	for i := range 6 {
		loud := false
		for _, v := range sound[i*bar+rate/2 : (i+1)*bar] { // the hand and the body take less than half a second
			loud = loud || v != 0
		}
		if want := i%3 < 2; loud != want {
			t.Errorf("bar %d of 6 sounds: %v", i+1, loud)
		}
	}
	at := player(t, rate, p, synth.Options{Sounding: 1, Silent: 1})
	buffer := make([]float32, bar+bar/2)
	at.Fill(buffer, slices.Clone(buffer))
	if now := at.Now(); !now.Silent || now.Bar != 2 || now.Pick != 11 {
		t.Errorf("in the silent bar it is at %+v", now)
	}
}
