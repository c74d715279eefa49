package svg

import (
	"slices"

	"weft.example/picking"
)

// A stretch is a bar as it stands in one line, or a part of it.
type stretch struct {
	index         int // of the bar, from 0
	bar           picking.Bar
	from, to      picking.Ticks
	number        string // of the bar
	opens, closes bool   // a repeat begins before it, ends after it
	ends          bool   // the last of the sheet
	columns       []column
	names         []name
	lead, tail    int // room before the first column and after the last gap
	x, width      int
}

// begun reports whether the bar began in a line before.
func (t *stretch) begun() bool { return t.from > t.bar.At }

// more reports whether the bar goes on in the next line.
func (t *stretch) more() bool { return t.to < t.bar.At+t.bar.Length }

// A name is what stands over a chord.
type name struct {
	at    picking.Ticks
	x     int // of its left edge
	chord string
	below string // how it sounds, which figure is played
	held  picking.HeldChord
	box   *boxDrawing // or nil
	width int
}

// stretch lays out what a bar holds in a part of its time. Of whole the bar,
// its number and its edges are given.
func (s *sheet) stretch(whole stretch, from, to picking.Ticks) stretch {
	t, bar := whole, whole.bar
	t.from, t.to = from, to
	t.opens, t.closes, t.ends = t.opens && !t.begun(), t.closes && !t.more(), t.ends && !t.more()
	t.columns = slices.DeleteFunc(s.columns(bar, s.firstPick[t.index]), func(c column) bool { return c.at < from || c.at >= to })
	if t.begun() {
		t.number = "(" + t.number + ")"
	}
	for i, chord := range bar.Chords {
		if chord.At < to && chord.At+chord.Length > from {
			t.names = append(t.names, s.name(chord, max(chord.At, from), chord.At >= from && s.boxed(s.novelty[t.index][i])))
		}
	}
	s.setEdges(&t)
	return t
}

// setEdges makes room for bar lines, repeat signs and the bar's number.
func (s *sheet) setEdges(t *stretch) {
	c := &s.scale
	t.lead, t.tail = c.lead, c.lead*40/100
	if t.opens {
		t.lead += c.repeatWidth()
	}
	if t.closes || t.ends {
		t.tail += c.repeatWidth()
	}
	if len(t.columns) > 0 {
		t.lead = max(t.lead, c.numberInset()+c.small.room(t.number)+c.pad+t.columns[0].half)
	}
}

// repeatWidth returns the room for a repeat sign.
func (c *scale) repeatWidth() int { return c.thick(650) }

// numberInset is how far a bar's number stands from its bar line.
func (c *scale) numberInset() int { return c.thick(60) }

// name words what stands over a chord. Its box is drawn where the chord begins
// and is another than the one before.
func (s *sheet) name(chord picking.HeldChord, at picking.Ticks, boxed bool) name {
	n := name{at: at, chord: chord.Chord.ChartIn(s.spelling), below: s.below(chord), held: chord}
	n.width = max(s.scale.chord.room(n.chord), s.scale.small.room(n.below))
	if boxed {
		n.box = s.boxOf(chord.Voicing)
		n.width = max(n.width, n.box.width)
	}
	n.width += s.scale.fret.size * 60 / 100
	return n
}

// below says with a capo how a chord sounds, and which figure it plays where
// there are several.
func (s *sheet) below(chord picking.HeldChord) string {
	text := ""
	if s.Instrument.Capo > 0 && !chord.Chord.Silent() {
		text = "sounds " + chord.Sounds.ChartIn(s.spelling)
	}
	if s.figures && chord.Figure > 0 {
		if text != "" {
			text += ", "
		}
		text += figureName(chord.Figure)
	}
	return text
}

// place sets the columns, rate units to 1024 ticks where there is room, and
// wider where there is not. Columns count from the stretch's beginning.
func (s *sheet) place(t *stretch, rate int) {
	x := t.lead
	for i := range t.columns {
		c := &t.columns[i]
		c.x = x
		next, need := t.to, c.half+s.scale.pad
		if i+1 < len(t.columns) {
			next, need = t.columns[i+1].at, need+t.columns[i+1].half
		}
		x += max(need, int(int64(next-c.at)*int64(rate)>>10))
	}
	t.width = x + t.tail
	for i := range t.names {
		until := t.to
		if i+1 < len(t.names) {
			until = t.names[i+1].at
		}
		t.widen(t.names[i].at, until, t.names[i].width)
	}
	s.placeFrames(t)
	for i := range t.names {
		n := &t.names[i]
		n.x = at(t.columns, n.at).x - s.scale.inset()
	}
}

// placeFrames makes room for the numbers of the notes, each frame before the
// next.
func (s *sheet) placeFrames(t *stretch) {
	for i := range t.columns {
		if len(t.columns[i].notes) == 0 {
			continue
		}
		until := t.to
		for _, c := range t.columns[i+1:] {
			if len(c.notes) > 0 {
				until = c.at
				break
			}
		}
		t.widen(t.columns[i].at, until, s.scale.frameWidth(t.columns[i].notes)+s.scale.pad)
	}
}

// inset is how far to the left of a column's middle a chord's name begins: over
// the left edge of a figure of the tab.
func (c *scale) inset() int { return c.fret.size * 32 / 100 }

// widen makes room between two times for what is as wide as need, in proportion
// to time, and moves on what comes after.
func (t *stretch) widen(from, to picking.Ticks, need int) {
	end := t.width
	if to < t.to {
		end = at(t.columns, to).x
	}
	more := need - (end - at(t.columns, from).x)
	if more <= 0 {
		return
	}
	for i := range t.columns {
		if c := &t.columns[i]; c.at > from {
			c.x += int(int64(more) * int64(min(c.at, to)-from) / int64(to-from))
		}
	}
	t.width += more
}

// shortest returns the shortest slot of a stretch: of its picks as written, and
// of its counted words.
func (t *stretch) shortest() picking.Ticks {
	least, last := t.bar.Length, picking.Ticks(none)
	for _, pick := range t.bar.Picks {
		least = min(least, pick.Length)
	}
	for _, c := range t.columns {
		if c.word == "" {
			continue
		}
		if last >= 0 {
			least = min(least, c.at-last)
		}
		last = c.at
	}
	return max(1, least)
}

// rate returns the units to 1024 ticks at which the shortest slot of a stretch
// is comfortable.
func (s *sheet) rate(t *stretch) int { return s.scale.slot << 10 / int(t.shortest()) }
