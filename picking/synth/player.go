package synth

import (
	"math"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A Player plays a passage into the caller's buffers. It does not allocate
// after [New]. It is not safe for use by several goroutines at once.
type Player struct {
	score   *score
	options Options
	rate    int64
	pulse   // where it is
	rooms   [2 * fretboard.MaxStrings]voice
	body    body
	tick    tick
	mute    bool // it only counts
}

// most is how many frames are made at a time.
const most = 128

// Times in which a string fades out, in seconds: stopped by the plectrum that
// plucks it again, or by the hand.
const plectrumFade, handFade = 0.006, 0.03

// New returns a player of p at a rate in frames a second, [MinRate] to
// [MaxRate]. The error is a [fretboard.ImpossibleError]. Its memory grows with
// the strings and the picks.
func New(rate int, p picking.Passage, o Options) (*Player, error) {
	if rate < MinRate || rate > MaxRate {
		return nil, refuse("rate", strconv.Itoa(rate), "not a rate to play at", "choose 8000 to 192000; 48000 is usual")
	}
	if err := checkPassage(p); err != nil {
		return nil, err
	}
	o, err := o.normal(p)
	if err != nil {
		return nil, err
	}
	s, err := newScore(float64(rate), p, o)
	if err != nil {
		return nil, err
	}
	player := &Player{score: s, options: o, rate: int64(rate), body: newBody(float64(rate)), tick: newTick(float64(rate))}
	player.string(p.Instrument.Tuning.Strings())
	player.rewind()
	return player, nil
}

// string gives every string of the instrument its two voices, the one that
// sounds and the one that fades, and its place from left to right.
func (p *Player) string(strings fretboard.StringNumber) {
	const width = 0.45 // of the way from the middle to the sides
	for s := range strings {
		pan := 0.0
		if strings > 1 {
			pan = width * (1 - float64(2*s)/float64(strings-1)) // string 1 to the right
		}
		for _, v := range p.pair(s + 1) {
			v.left, v.right = float32(math.Sqrt((1-pan)/2)), float32(math.Sqrt((1+pan)/2))
			v.delay = make([]float32, p.score.room)
			v.pluck = make([]float32, p.score.pluckRoom)
		}
	}
}

// pair returns the voices of a string, the one that sounds first.
func (p *Player) pair(s fretboard.StringNumber) [2]*voice {
	return [2]*voice{&p.rooms[2*s-2], &p.rooms[2*s-1]}
}

// Fill writes the next frames to two channels, as many as the shorter holds,
// and returns how many that is: fewer only at the end, after which it is 0. What
// is left of the channels is silence. Samples lie within -1 and 1. The time
// grows with the frames and with the strings that sound in them.
func (p *Player) Fill(left, right []float32) int {
	n := min(len(left), len(right))
	clear(left)
	clear(right)
	done := 0
	for done < n {
		k := p.stretch(n - done)
		if k == 0 {
			break
		}
		p.render(left[done:done+k], right[done:done+k])
		p.pass(k)
		p.sought = false
		done += k
	}
	return done
}

// stretch starts what begins now and returns for how many frames, up to limit,
// nothing else begins or ends. It returns 0 at the end.
func (p *Player) stretch(limit int) int {
	p.begin()
	n, sounds := limit, false
	if !p.mute {
		n = min(n, most)
	}
	until := func(left int) {
		if left > 0 {
			n, sounds = min(n, left), true
		}
	}
	for i := range p.rooms {
		until(p.rooms[i].next())
	}
	if !sounds {
		until(p.body.left)
	}
	until(p.tick.left)
	next, more := p.framesToNext()
	if more {
		n = int(min(int64(n), next))
	}
	if !more && !sounds {
		return 0
	}
	return n
}

func (p *Player) strings() bool {
	for i := range p.rooms {
		if p.rooms[i].sounding() {
			return true
		}
	}
	return false
}

func (p *Player) render(left, right []float32) {
	for i := range p.rooms {
		if v := &p.rooms[i]; v.sounding() {
			v.render(left, right)
		}
	}
	if p.body.left > 0 || p.strings() {
		p.body.render(left, right)
	}
	if p.tick.left > 0 {
		p.tick.render(left, right)
	}
	limit(left)
	limit(right)
}

// pass lets n frames go by for all that sounds.
func (p *Player) pass(n int) {
	p.at += int64(n) * p.advance()
	p.tick.pass(n)
	if !p.strings() {
		if p.body.left -= n; p.body.left <= 0 {
			p.body.left = 0
			p.body.silence()
		}
		return
	}
	for i := range p.rooms {
		p.rooms[i].pass(n)
	}
	p.body.left = p.body.tail
}

// limit bends what is louder than the knee, so that nothing passes 1. Below it
// nothing changes.
func limit(x []float32) {
	const knee = 0.8
	for i, v := range x {
		switch {
		case v > knee:
			over := (v - knee) / (1 - knee)
			x[i] = knee + float32((1-knee)*(over/(1+over)))
		case v < -knee:
			over := (-v - knee) / (1 - knee)
			x[i] = -knee - float32((1-knee)*(over/(1+over)))
		}
	}
}
