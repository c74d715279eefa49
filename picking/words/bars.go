package words

import (
	"slices"

	"weft.example/picking"
)

// tellBars tells the bars, those in full that are like none before.
func (p *part) tellBars() {
	if len(p.Bars) == 0 {
		return
	}
	p.text.add(heading, p.say(theBars))
	for _, g := range p.groups() {
		first, last := p.Bars[g.from], p.Bars[g.to-1]
		p.text = append(p.text, block{kind: subheading, text: capital(p.barSpan(first.Number, last.Number)), bar: first.Number})
		if g.times == 0 {
			p.tellBar(first)
			continue
		}
		size := (g.to - g.from) / g.times
		like := p.barSpan(p.Bars[g.like].Number, p.Bars[g.like+size-1].Number)
		text := p.say(asBars, like)
		if g.times > 1 {
			text = p.say(asBarsTimes, like, number(g.times))
		}
		p.text = append(p.text, block{kind: sentence, text: text, link: link{like, p.Bars[g.like].Number}})
	}
}

// tellBar tells a bar count by count. A count is one item; counts in which
// nothing begins share one.
func (p *part) tellBar(bar picking.Bar) {
	counts := int((bar.Length + p.counter.unit - 1) / p.counter.unit)
	for k := 0; k < counts; {
		c := p.countOf(bar, k)
		for _, chord := range c.chords {
			p.text.items(p.tellChange(bar, c, chord))
		}
		k++
		if !c.idle() {
			p.text.items(p.tellCount(c))
			continue
		}
		for k < counts && p.countOf(bar, k).goesOn(c) {
			k++
		}
		p.text.items(p.tellIdle(c, k))
	}
}

// A count is what begins in one count of a bar.
type count struct {
	index  int // from 0
	at     picking.Ticks
	quiet  bool // silent as it begins
	parts  int  // into which the things in it divide it
	chords []picking.HeldChord
	picks  []picking.Pick
	rests  []picking.Ticks // when silences begin after it has begun
}

func (p *part) countOf(bar picking.Bar, k int) count {
	c := count{index: k, at: bar.At + picking.Ticks(k)*p.counter.unit}
	end := min(c.at+p.counter.unit, bar.At+bar.Length)
	inside := func(t picking.Ticks) bool { return c.at <= t && t < end }
	var offsets []picking.Ticks
	for _, chord := range bar.Chords {
		if inside(chord.At) {
			c.chords, offsets = append(c.chords, chord), append(offsets, chord.At-c.at)
		}
	}
	for _, pick := range bar.Picks {
		if inside(pick.At) {
			c.picks, offsets = append(c.picks, pick), append(offsets, pick.At-c.at)
		}
	}
	for _, q := range p.silencesIn(c.at, end) {
		if q.From == c.at {
			c.quiet = true
			continue
		}
		c.rests, offsets = append(c.rests, q.From), append(offsets, q.From-c.at)
	}
	c.parts = p.counter.parts(offsets)
	return c
}

// idle reports whether the count is a hold or a rest and nothing else.
func (c count) idle() bool { return len(c.picks)+len(c.rests) == 0 }

// goesOn reports whether c does what an idle count before it does.
func (c count) goesOn(before count) bool {
	return c.idle() && len(c.chords) == 0 && c.quiet == before.quiet
}

// tellChange names a chord as it begins. At the beginning of a bar it is said
// without the time.
func (p *part) tellChange(bar picking.Bar, c count, held picking.HeldChord) string {
	name := p.label(held)
	if !held.Chord.Silent() {
		name = p.say(chordNamed, name)
	}
	if p.figures && held.Figure > 0 {
		name = p.say(chordFigure, name, number(held.Figure))
	}
	if held.At > bar.At {
		name = p.say(chordFrom, name, p.from(c.index, held.At-c.at, c.parts))
	}
	return capital(name) + "."
}

// tellIdle tells of counts up to another that are all a hold or all a rest.
func (p *part) tellIdle(c count, to int) string {
	name := p.name(c.index, 0, 1)
	if to > c.index+1 {
		name = p.say(p.counter.many, p.span(c.index+1, to))
	}
	if c.quiet {
		return p.say(restAt, capital(name))
	}
	return p.say(holdAt, capital(name))
}

// tellCount tells a count in which something begins, in the order of time.
func (p *part) tellCount(c count) string {
	text := ""
	if len(c.picks) == 0 || c.picks[0].At > c.at {
		text = p.tellIdle(c, c.index+1)
	}
	add := func(sentence string) {
		if text != "" {
			text += " "
		}
		text += sentence
	}
	rests := slices.Clone(c.rests)
	restUntil := func(t picking.Ticks) {
		for len(rests) > 0 && rests[0] < t {
			add(p.say(restAt, capital(p.name(c.index, rests[0]-c.at, c.parts))))
			rests = rests[1:]
		}
	}
	for _, pick := range c.picks {
		restUntil(pick.At)
		add(p.tellPick(pick, capital(p.name(c.index, pick.At-c.at, c.parts))))
	}
	restUntil(c.at + p.counter.unit)
	return text
}

// tellPick says string, fret and stroke, and what is uncommon in the stroke.
func (p *part) tellPick(pick picking.Pick, when string) string {
	fret := p.say(openFret)
	if pick.Fret > 0 {
		fret = p.say(atFret, number(int(pick.Fret)))
	}
	return p.say(pickIs, when, place(pick.String), fret, p.tellStroke(pick))
}

func (p *part) tellStroke(pick picking.Pick) string {
	text := p.say(anyStroke)
	switch pick.Stroke {
	case picking.DownStroke:
		text = p.say(down)
	case picking.UpStroke:
		text = p.say(up)
	}
	switch pick.Why {
	case picking.OwnStroke:
		text = p.say(ownStroke, text)
	case picking.Turnaround:
		text = p.say(turning, text)
	}
	switch pick.Crossing {
	case picking.InsideCrossing:
		text = p.say(crossing, text)
	case picking.ReturnCrossing:
		text = p.say(returning, text)
	}
	return text
}
