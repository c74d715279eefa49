package synth

import (
	"math"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A join is where the last of the bars played leads back to the first. A
// passage that loops says itself how its strings ring on over its own join. For
// other bars, a string rings on if the first chord holds it as the last one did,
// until it is plucked, damped or held otherwise: the passage's own rule.
type join struct {
	from, to picking.Ticks
	own      bool // the passage's own join
	stops    [fretboard.MaxStrings + 1]picking.Ticks
}

// newJoin returns the join of bars of p, which are good.
func newJoin(p picking.Passage, o Options) join {
	bars := p.Bars[o.From-1 : o.To]
	last := bars[len(bars)-1]
	j := join{from: bars[0].At, to: last.At + last.Length, own: p.Loop && len(bars) == len(p.Bars)}
	rest := firstRest(p, o)
	for s := range j.stops {
		j.stops[s] = rest
	}
	before := lastChord(last)
	for _, bar := range bars {
		j.stopChanged(&before, bar)
		for _, pick := range bar.Picks {
			j.stops[pick.String] = min(j.stops[pick.String], pick.At)
		}
	}
	return j
}

// stop returns when a pick stops if the first bar follows the last.
func (j *join) stop(p picking.Pick) picking.Ticks {
	stop := p.At + p.Rings
	if j.own || stop <= j.to {
		return stop
	}
	return j.to - j.from + j.stops[p.String]
}

func lastChord(b picking.Bar) (c picking.HeldChord) {
	if n := len(b.Chords); n > 0 {
		return b.Chords[n-1]
	}
	return c
}

// stopChanged stops the strings that a chord of the bar holds otherwise than the
// chord before it.
func (j *join) stopChanged(before *picking.HeldChord, bar picking.Bar) {
	for _, now := range bar.Chords {
		for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
			was, sounded := before.Voicing.Shape().Fret(s)
			is, sounds := now.Voicing.Shape().Fret(s)
			if sounded != sounds || was != is {
				j.stops[s] = min(j.stops[s], now.At)
			}
		}
		*before = now
	}
}

// firstRest returns when the first rest of the bars begins: where no pick is
// written, and none is held. A passage may begin with a hold, which shows in
// what rings over its own join.
func firstRest(p picking.Passage, o Options) picking.Ticks {
	held := p.Bars[o.From-1].At
	if o.From == 1 && ringsOver(p) {
		for _, first := range p.Picks() {
			held = first.At
			break
		}
	}
	for i, bar := range p.Bars[:o.To] {
		for _, pick := range bar.Picks {
			if i >= o.From-1 && pick.At > held {
				return held
			}
			held = max(held, pick.At+pick.Length)
		}
	}
	if end := p.Bars[o.To-1]; held < end.At+end.Length {
		return held
	}
	return math.MaxInt32
}

func ringsOver(p picking.Passage) bool {
	for _, pick := range p.Picks() {
		if p.Loop && pick.At+pick.Rings > p.Length() {
			return true
		}
	}
	return false
}
