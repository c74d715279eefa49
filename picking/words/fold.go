package words

import (
	"slices"
	"strconv"

	"weft.example/picking"
)

// A group is bars that stand under one heading: one told in full, or some that
// are so many times like those from an earlier group's beginning on.
type group struct{ from, to, like, times int }

// groups divides the bars so that each reference covers as many as it can. None
// reaches over the beginning or the end of a repeat, and what it refers to
// begins and ends with a group.
func (p *part) groups() (list []group) {
	starts := p.sectionStarts()
	for s, start := range starts[:len(starts)-1] {
		end := starts[s+1]
		for i := start; i < end; {
			g := p.reference(list, i, end-i, roomFrom(i-start, end-i))
			list, i = append(list, g), g.to
		}
	}
	return list
}

// sectionStarts lists where the passage begins, where each playing of a repeat
// begins and ends, and where the passage ends.
func (p *part) sectionStarts() []int {
	starts := []int{0}
	for i := 0; i < len(p.Bars); i++ {
		if n := p.SecondPlaying(i); n > 0 {
			starts = append(starts, i-n, i, i+n)
			i += n - 1
		}
	}
	starts = append(starts, len(p.Bars))
	return slices.Compact(starts)
}

// A room says how much a reference may cover. Phrases have four bars, or two,
// and a reference should not begin in one and end in the next.
type room struct {
	once  int // bars in one playing
	again int // bars in all
}

const phraseBars = 4

// roomFrom returns the room of a reference that begins so far into a section
// with so many bars left.
func roomFrom(offset, left int) room {
	again := min(left, phraseBars-offset%phraseBars)
	switch {
	case offset%phraseBars == 0:
		return room{left, left}
	case offset%2 == 0:
		return room{min(left, 2), again}
	}
	return room{1, again}
}

// reference returns the group that begins at bar i of a section with so many
// bars left. What repeats all the bars since those that it refers to may fill
// more than its room.
func (p *part) reference(list []group, i, left int, r room) group {
	best := group{from: i, to: i + 1}
	for _, start := range list {
		size := p.reach(list, start.from, i, left, r.once)
		if size > 0 && best.times == 0 || size > best.to-i {
			best = group{i, i + size, start.from, 1}
		}
	}
	if best.times == 0 {
		return best
	}
	size, end := best.to-i, i+r.again
	if best.like+size == i {
		end = i + left
	}
	for best.to+size <= end && slices.Equal(p.kinds[i:i+size], p.kinds[best.to:best.to+size]) {
		best.to += size
		best.times++
	}
	return best
}

// reach returns how many bars from i on are like those from an earlier one on,
// up to the end of a group before i.
func (p *part) reach(list []group, from, i, left, most int) int {
	n := 0
	for n < left && p.kinds[from+n] == p.kinds[i+n] {
		n++
	}
	if n == 0 {
		return 0
	}
	size := 0
	for _, g := range list {
		whole := g.to - from
		if size < whole && whole <= n && (whole <= most || g.to == i) {
			size = whole
		}
	}
	return size
}

// barKinds returns a number for each bar, the same for those that are played
// alike.
func (p *part) barKinds() []int {
	known := map[string]int{}
	kinds := make([]int, len(p.Bars))
	for i, bar := range p.Bars {
		key := p.barKey(bar)
		if _, is := known[key]; !is {
			known[key] = i
		}
		kinds[i] = known[key]
	}
	return kinds
}

// barKey holds all that a player does in a bar. Reasons for strokes are not
// among it, but what is told of the way to the first pick is.
func (p *part) barKey(bar picking.Bar) string {
	var key []byte
	put := func(values ...int) {
		for _, v := range values {
			key = append(strconv.AppendInt(key, int64(v), 10), ' ')
		}
		key = append(key, ';')
	}
	put(int(bar.Length))
	for _, c := range bar.Chords {
		key = append(key, c.Chord.String()+"="+c.Voicing.Shape().String()+"@"...)
		put(int(c.At-bar.At), int(c.Length), c.Figure)
	}
	for _, pick := range bar.Picks {
		owned, crossed := 0, picking.Crossing(0)
		if pick.Why == picking.OwnStroke {
			owned = 1
		}
		if pick.Crossing == picking.InsideCrossing || pick.Crossing == picking.ReturnCrossing {
			crossed = pick.Crossing
		}
		put(int(pick.At-bar.At), int(pick.Length), int(pick.String), int(pick.Fret), int(pick.Stroke), owned, int(crossed))
	}
	for _, q := range p.silencesIn(bar.At, bar.At+bar.Length) {
		put(int(q.From-bar.At), int(q.To-bar.At))
	}
	return string(key)
}

// tellRepeats says which bars are the second playing of a repeat, and where it
// differs from the first.
func (p *part) tellRepeats() {
	for i := 0; i < len(p.Bars); i++ {
		n := p.SecondPlaying(i)
		if n == 0 {
			continue
		}
		var differ []int
		for k := i; k < i+n; k++ {
			if p.kinds[k] != p.kinds[k-n] {
				differ = append(differ, p.Bars[k].Number)
			}
		}
		again := capital(p.barSpan(p.Bars[i].Number, p.Bars[i+n-1].Number))
		first := p.barSpan(p.Bars[i-n].Number, p.Bars[i-1].Number)
		if len(differ) == 0 {
			p.text.items(p.say(repeatSame, again, first))
		} else {
			p.text.items(p.say(repeatBut, again, first, p.bars(differ)))
		}
		i += n - 1
	}
}
