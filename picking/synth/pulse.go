package synth

import (
	"math"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A pulse is where a player is in its score. Time is counted in grains, of which
// a tick has 60 for each frame of a second: then a frame takes a whole number of
// them at any whole tempo, and nothing drifts.
type pulse struct {
	at      int64 // grains from the start of the passage
	tempo   int
	round   int           // from 1
	bar     int           // the next to begin, from 0 at the first of the round; below 0 to count in
	note    int           // the next to be plucked
	begun   int           // bars begun, without the count-in
	current int           // the note last plucked, or -1
	clicked picking.Ticks // where in its bar the next click is
	silent  bool
	sought  bool                            // nothing of the next bar is written yet
	over    bool                            // the last round is
	until   [fretboard.MaxStrings + 1]int64 // when each string stops
}

const never = math.MaxInt64

// grains returns how many a tick has.
func (p *Player) grains() int64 { return 60 * p.rate }

// advance returns how many grains a frame takes.
func (p *Player) advance() int64 { return int64(p.tempo) * int64(p.score.beat) }

// frames returns how many frames begin before a time that is n grains away.
func (p *Player) frames(n int64) int64 { return (n + p.advance() - 1) / p.advance() }

// begin starts and stops all that does so by now. What begins between two
// frames begins with the second.
func (p *Player) begin() {
	p.beginBars()
	for !p.over && p.at >= int64(p.score.to)*p.grains() {
		p.turn()
		p.beginBars()
	}
}

// turn goes round to the first bar, or ends the last round.
func (p *Player) turn() {
	if p.last() {
		p.over = true
		return
	}
	length := int64(p.score.to-p.score.from) * p.grains()
	p.at -= length
	for s, until := range p.until {
		if until != never {
			p.until[s] -= length
		}
	}
	p.round++
	p.bar, p.note = 0, 0
}

func (p *Player) last() bool { return p.round == p.options.Rounds }

// beginBars begins what is in the bars, up to the end of the round.
func (p *Player) beginBars() {
	for !p.over && p.bar < len(p.score.bars) && p.at >= p.barGrains() {
		p.beginBar()
	}
	for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
		if p.until[s] <= p.at {
			p.stop(s, handFade)
		}
	}
	for p.at >= p.clickGrains() {
		p.click()
	}
	for p.at >= p.noteGrains() {
		p.pluck(p.score.notes[p.note])
		p.current = p.note
		p.note++
	}
}

func (p *Player) beginBar() {
	p.clicked = 0
	if p.bar >= 0 {
		was := p.silent
		turn := p.options.Sounding + p.options.Silent
		p.silent = p.options.Silent > 0 && p.begun%turn >= p.options.Sounding
		if p.silent && !was {
			p.stopAll(handFade)
		}
		p.begun++
	}
	p.bar++
}

// span returns bar i, which counts in if below 0.
func (s *score) span(i int) span {
	if i < 0 {
		return span{at: s.from + picking.Ticks(i)*s.bar, length: s.bar}
	}
	return s.bars[i]
}

// barGrains returns when the next bar begins.
func (p *Player) barGrains() int64 { return int64(p.score.span(p.bar).at) * p.grains() }

// noteGrains returns when the next note is plucked, or never.
func (p *Player) noteGrains() int64 {
	if p.over || p.note == len(p.score.notes) {
		return never
	}
	return int64(p.score.notes[p.note].at) * p.grains()
}

// clickGrains returns when the next click of the bar is, or never.
func (p *Player) clickGrains() int64 {
	i := p.bar - 1
	if p.over {
		return never
	}
	if i >= 0 && (p.options.Click == NoClick || p.silent && p.options.Hush) {
		return never
	}
	bar := p.score.span(i)
	if p.clicked >= bar.length {
		return never
	}
	return int64(bar.at+p.clicked) * p.grains()
}

// slow is the tempo below which AutoClick divides the beat: common practice.
const slow = 60

func (p *Player) click() {
	kind, step := divided, p.score.beat
	switch {
	case p.clicked == 0:
		kind = accent
	case p.clicked%p.score.beat == 0:
		kind = beat
	}
	p.tick.start(kind)
	if p.options.Click == DividedClick || p.options.Click == AutoClick && p.tempo < slow {
		step = p.score.division
	}
	p.clicked += step - p.clicked%step
}

func (p *Player) pluck(n note) {
	if p.silent {
		return
	}
	p.stop(n.string, plectrumFade)
	free := p.pair(n.string)
	if v := free[0]; v.hold+v.fade > free[1].hold+free[1].fade {
		free[0] = free[1]
	}
	free[0].start(n.tone, n.strike, p.fade(handFade), p.mute)
	stop := n.joined
	if p.last() {
		stop = n.stop
	}
	p.until[n.string] = int64(stop) * p.grains()
}

func (p *Player) fade(seconds float64) int { return int(float64(seconds * float64(p.rate))) }

func (p *Player) stop(s fretboard.StringNumber, fade float64) {
	p.until[s] = never
	for _, v := range p.pair(s) {
		v.stop(p.fade(fade))
	}
}

func (p *Player) stopAll(fade float64) {
	for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
		p.stop(s, fade)
	}
}

// framesToNext returns in how many frames the next thing begins or stops, and
// whether there is any.
func (p *Player) framesToNext() (frames int64, more bool) {
	next := min(p.noteGrains(), p.clickGrains())
	if !p.over {
		next = min(next, int64(p.score.to)*p.grains())
		if p.bar < len(p.score.bars) {
			next = min(next, p.barGrains())
		}
	}
	for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
		if pair := p.pair(s); pair[0].sounding() || pair[1].sounding() {
			next = min(next, p.until[s])
		}
	}
	if next == never {
		return 0, false
	}
	return p.frames(next - p.at), true
}
