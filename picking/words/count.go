package words

import (
	"sort"

	"weft.example/picking"
)

// A counter names the times of a bar. Beats are counted, but in a compound
// meter, 6/8 or 12/8, the notes that the lower figure names. The half of one
// is and; where finer parts are needed they are numbered, for the customary
// syllables e and a sound like strings and notes.
type counter struct {
	unit      picking.Ticks
	one, many phrase
}

func counting(m picking.Meter) counter {
	if m.Compound() {
		return counter{m.UnitTicks(), oneCount, manyCounts}
	}
	return counter{m.Beat(), oneBeat, manyBeats}
}

// parts returns into how many equal parts a count falls, given when things
// happen after its beginning.
func (c counter) parts(offsets []picking.Ticks) int {
	parts := picking.Ticks(1)
	for _, off := range offsets {
		n := c.unit / gcd(c.unit, off)
		parts = parts / gcd(parts, n) * n
	}
	return int(parts)
}

func gcd(a, b picking.Ticks) picking.Ticks {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// name names a time of count k, from 0, that falls into parts.
func (p *part) name(k int, off picking.Ticks, parts int) string {
	switch {
	case off == 0:
		return p.say(p.counter.one, number(k+1))
	case parts == 2:
		return p.say(andAt)
	}
	return p.say(partOf, number(int(off)*parts/int(p.counter.unit)+1), number(parts))
}

// from names a time of count k in full.
func (p *part) from(k int, off picking.Ticks, parts int) string {
	count := p.name(k, 0, parts)
	if off == 0 {
		return count
	}
	return p.say(fromPart, count, p.name(k, off, parts))
}

// silencesIn returns the silences in a time, cut to it.
func (p *part) silencesIn(from, to picking.Ticks) (list []picking.Silence) {
	for _, q := range p.silences[p.silencesBefore(from):] {
		if q.From >= to {
			break
		}
		list = append(list, picking.Silence{From: max(q.From, from), To: min(q.To, to)})
	}
	return list
}

// silencesBefore returns how many silences are over at a time.
func (p *part) silencesBefore(t picking.Ticks) int {
	return sort.Search(len(p.silences), func(i int) bool { return p.silences[i].To > t })
}
