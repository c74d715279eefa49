package svg

import "weft.example/picking"

// A system is a line of music: stretches side by side.
type system struct {
	stretches []stretch
	width     int // from the first bar line to the last
	rate      int // units to 1024 ticks
	rows      rows
}

// systems lays all bars out in lines, and reports whether each has room in the
// column of the page.
func (s *sheet) systems() (blocks []block, ok bool) {
	for i, part := range s.parts {
		lines, ok := s.lines(part, i == len(s.parts)-1)
		if !ok {
			return nil, false
		}
		if part.heading != "" {
			blocks = append(blocks, s.heading(part.heading)...)
		}
		for _, line := range lines {
			blocks = append(blocks, s.systemBlock(line))
		}
		if n := len(lines); s.Loop && i == len(s.parts)-1 {
			blocks[len(blocks)-1].keep = true
			blocks = append(blocks, s.loopBlock(lines[n-1]))
		}
	}
	return blocks, true
}

// staffWidth returns the room between the first bar line and the last.
func (s *sheet) staffWidth() int { return s.format.column() - s.labelWidth() }

// labelWidth returns the room for the names of the strings.
func (s *sheet) labelWidth() (width int) {
	for n := range s.Instrument.Tuning.All().Thinnest() {
		width = max(width, s.scale.label.room(s.stringLabel(n)))
	}
	return width + s.scale.label.size*35/100
}

// lines lays a section out in systems.
func (s *sheet) lines(part section, last bool) (lines []*system, ok bool) {
	bars := make([][]stretch, part.to-part.from)
	for i := range bars {
		whole := stretch{index: part.from + i, bar: s.Bars[part.from+i], number: s.barNumber(part, part.from+i)}
		whole.opens, whole.closes = part.twice && i == 0, part.twice && i == len(bars)-1
		whole.ends = last && i == len(bars)-1
		if bars[i] = s.layOut(whole); bars[i] == nil {
			return nil, false
		}
	}
	before := 0
	for done := 0; done < len(bars); {
		next := done + s.fitting(bars[done:], done)
		for _, line := range side(bars[done:next]) {
			s.justify(line, before, next == len(bars))
			before = line.rate
			lines = append(lines, line)
		}
		done = next
	}
	return lines, true
}

// side makes a system of bars side by side, or one of each part of a bar.
func side(bars [][]stretch) (lines []*system) {
	if len(bars) == 1 {
		for i := range bars[0] {
			lines = append(lines, &system{stretches: bars[0][i : i+1]})
		}
		return lines
	}
	line := &system{}
	for _, parts := range bars {
		line.stretches = append(line.stretches, parts[0])
	}
	return append(lines, line)
}

// layOut lays a bar out, as one stretch if it has room in a line, else split at
// beats or, where even a beat is too long, within it; nil if even so it has no
// room.
func (s *sheet) layOut(whole stretch) []stretch {
	start, end := whole.bar.At, whole.bar.At+whole.bar.Length
	if t := s.stretch(whole, start, end); s.fits(&t) {
		return []stretch{t}
	}
	var cuts []picking.Ticks
	for _, c := range s.columns(whole.bar, s.firstPick[whole.index]) {
		cuts = append(cuts, c.at)
	}
	cuts = append(cuts, end)
	var parts []stretch
	for from := start; from < end; {
		part, ok := s.longest(whole, from, cuts)
		if !ok {
			return nil
		}
		parts = append(parts, part)
		from = part.to
	}
	return parts
}

// longest returns the longest part of a bar from a time on that has room in a
// line: to a beat if that can be, else to any of the times cuts.
func (s *sheet) longest(whole stretch, from picking.Ticks, cuts []picking.Ticks) (best stretch, ok bool) {
	beat := false
	for _, to := range cuts {
		isBeat := (to-whole.bar.At)%s.Meter.Beat() == 0 || to == whole.bar.At+whole.bar.Length
		if to <= from || beat && !isBeat {
			continue
		}
		part := s.stretch(whole, from, to)
		if !s.fits(&part) {
			break
		}
		best, ok, beat = part, true, beat || isBeat
	}
	return best, ok
}

// fits reports whether a stretch has room in a line when it is set as tight as
// can be.
func (s *sheet) fits(t *stretch) bool {
	s.place(t, 0)
	return t.width <= s.staffWidth()
}

// closest is how near columns may come in a line of several bars, in hundredths
// of what is comfortable.
const closest = 85

// fitting returns how many bars the next line takes at a comfortable distance:
// all, or as many as make up a phrase of 2, 4 or more, so that lines break where
// phrases do. done bars of the section stand already.
func (s *sheet) fitting(bars [][]stretch, done int) int {
	n, width := 0, 0
	for n < len(bars) && len(bars[n]) == 1 {
		t := &bars[n][0]
		s.place(t, s.rate(t)*closest/100)
		if width += t.width; width > s.staffWidth() {
			break
		}
		n++
	}
	if n == len(bars) {
		return n
	}
	phrase := 1
	for phrase*2 <= n && done%(phrase*2) == 0 {
		phrase *= 2
	}
	return phrase
}

// justify spaces a system by time, one rate for all of it, so that it fills the
// line. A last line is set like the one before, and no line wider than twice
// what is comfortable.
func (s *sheet) justify(line *system, before int, last bool) {
	comfortable := 0
	for i := range line.stretches {
		comfortable = max(comfortable, s.rate(&line.stretches[i]))
	}
	most := comfortable * 5 / 2
	if last && before > 0 {
		most = min(most, max(before, comfortable))
	} else if last {
		most = comfortable * 3 / 2
	}
	room := s.staffWidth()
	if s.placeAll(line, most) > room {
		low, high := 0, most // low fits, high does not
		for high-low > 1 {
			if middle := (low + high) / 2; s.placeAll(line, middle) <= room {
				low = middle
			} else {
				high = middle
			}
		}
		most = low
		line.stretches[len(line.stretches)-1].width += room - s.placeAll(line, most)
		line.width = room
	} else {
		line.width = s.placeAll(line, most)
	}
	line.rate = most
	s.shift(line)
}

// placeAll places the stretches of a line and returns their width.
func (s *sheet) placeAll(line *system, rate int) (width int) {
	for i := range line.stretches {
		s.place(&line.stretches[i], rate)
		width += line.stretches[i].width
	}
	return width
}

// shift moves all places of a line from its stretches to the page.
func (s *sheet) shift(line *system) {
	x := margin + s.labelWidth()
	for i := range line.stretches {
		t := &line.stretches[i]
		t.x = x
		for k := range t.columns {
			t.columns[k].x += x
		}
		for k := range t.names {
			t.names[k].x += x
		}
		x += t.width
	}
}
