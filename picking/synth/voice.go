package synth

// A voice is one plucked string while it sounds.
type voice struct {
	*tone
	left, right float32 // where it stands
	hold        int     // frames until it begins to fade
	fade        int     // frames that the fade still takes
	fading      int     // frames that it takes in all

	delay []float32 // of the loop, room for the lowest pitch
	at    int       // the oldest sample in delay
	pluck []float32 // the pluck, room for the lowest pitch's
	sent  int       // how much of it has been sent
	size  int       // how much there is

	lossIn, lossOut float32 // the sample before, in the loop's filters
	passIn, passOut float32
}

func (v *voice) sounding() bool { return v.hold+v.fade > 0 }

// start plucks the string anew.
func (v *voice) start(t *tone, s strike, fade int, mute bool) {
	v.tone = t
	v.hold, v.fade, v.fading = t.life, fade, fade
	if mute {
		return
	}
	clear(v.delay[:t.n])
	v.at, v.sent = 0, 0
	v.size = t.excite(v.pluck, s)
	v.lossIn, v.lossOut, v.passIn, v.passOut = 0, 0, 0, 0
}

// stop fades the voice out, unless it already does. Of two stops at one frame
// the later counts: a string that is plucked again fades faster than one that
// a hand stops.
func (v *voice) stop(fade int) {
	if v.sounding() && v.fade == v.fading {
		v.hold, v.fade, v.fading = 0, fade, fade
	}
}

// pass lets n frames go by, at most as many as there are.
func (v *voice) pass(n int) {
	held := min(n, v.hold)
	v.hold -= held
	v.fade -= n - held
}

// next returns how many frames until the voice begins to fade or ends.
func (v *voice) next() int {
	if v.hold > 0 {
		return v.hold
	}
	return v.fade
}

// render adds the voice to two channels of one length, at most what next
// returns.
func (v *voice) render(left, right []float32) {
	var block [most]float32
	out := block[:len(left)]
	v.run(out)
	if v.hold == 0 {
		v.dampen(out)
	}
	l, r := v.left, v.right
	for i, y := range out {
		left[i] += float32(l * y)
		right[i] += float32(r * y)
	}
}

// dampen lets out fall to nothing along a parabola, flat at its end.
func (v *voice) dampen(out []float32) {
	step := 1 / float32(v.fading)
	for i := range out {
		gain := float32(float32(v.fade-i) * step)
		out[i] = float32(out[i] * float32(gain*gain))
	}
}

// run lets the string vibrate for len(out) frames: out holds what comes out of
// the loop and the pluck that goes into it.
func (v *voice) run(out []float32) {
	sending := min(len(out), v.size-v.sent)
	copy(out[:sending], v.pluck[v.sent:v.size])
	v.sent += sending
	clear(out[sending:])
	for len(out) > 0 {
		stretch := min(len(out), v.n-v.at)
		v.vibrate(out[:stretch], v.delay[v.at:v.at+stretch])
		out = out[stretch:]
		if v.at += stretch; v.at == v.n {
			v.at = 0
		}
	}
}

// vibrate is the loop itself, over a stretch of the delay that does not wrap.
func (v *voice) vibrate(out, delay []float32) {
	now, before, again, c := v.now, v.before, v.again, v.allpass
	lossIn, lossOut, passIn, passOut := v.lossIn, v.lossOut, v.passIn, v.passOut
	delay = delay[:len(out)]
	for i, x := range out {
		y := delay[i]
		loss := float32(now*y) + float32(before*lossIn) + float32(again*lossOut)
		lossIn, lossOut = y, loss
		passOut = float32(c*(loss-passOut)) + passIn
		passIn = loss
		x += passOut
		delay[i], out[i] = x, x
	}
	v.lossIn, v.lossOut, v.passIn, v.passOut = lossIn, lossOut, passIn, passOut
}
