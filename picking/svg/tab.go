package svg

import (
	"slices"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A span is a part of a line, from left to right.
type span struct{ from, to int }

// strings draws the lines of the tab, broken round the figures.
func (d *drawing) strings() {
	for n := range d.Instrument.Tuning.All().Thinnest() {
		line := d.path("string")
		x, y := d.left(), d.tab(n)
		for _, gap := range d.gaps(n) {
			line.move(x, y).to(gap.from, y)
			x = gap.to
		}
		line.move(x, y).to(d.right(), y).stroke(d.scale.hairline)
	}
}

// gaps returns where figures stand on a string.
func (d *drawing) gaps(n fretboard.StringNumber) (gaps []span) {
	for i := range d.line.stretches {
		for k := range d.line.stretches[i].columns {
			c := &d.line.stretches[i].columns[k]
			if c.pick != none && d.picks[c.pick].String == n {
				gaps = append(gaps, d.gap(c))
			}
		}
	}
	return gaps
}

func (d *drawing) gap(c *column) span {
	half := (d.scale.fret.room(fretText(d.picks[c.pick].Fret)) + d.scale.fret.size/8) / 2
	return span{c.x - half, c.x + half}
}

// rings draws how long each note sounds, as a heavier line on its string from
// the figure to where the string is plucked again or let go.
func (d *drawing) rings() {
	first, last := &d.line.stretches[0], &d.line.stretches[len(d.line.stretches)-1]
	for n := range d.Instrument.Tuning.All().Thinnest() {
		picks := d.byString[n]
		at, _ := slices.BinarySearchFunc(picks, first.from, func(p picking.Pick, t picking.Ticks) int { return int(p.At - t) })
		for i := max(at-1, 0); i < len(picks) && picks[i].At < last.to; i++ {
			if s := d.ring(picks, i); s.to > s.from {
				d.pen.line("ring", s.from, d.tab(n), s.to, d.tab(n), d.scale.thick(130))
			}
		}
	}
}

// ring returns where in this system a note sounds.
func (d *drawing) ring(picks []picking.Pick, i int) span {
	pick := picks[i]
	until := pick.At + pick.Rings
	s := span{d.left(), d.x(until)}
	if c := d.columnAt(pick.At); c != nil {
		s.from = d.gap(c).to
	}
	if i+1 < len(picks) && picks[i+1].At <= until {
		if c := d.columnAt(picks[i+1].At); c != nil {
			s.to = d.gap(c).from
		}
	}
	return s
}

// columnAt returns the column of a time, or nil if this system has none.
func (d *drawing) columnAt(t picking.Ticks) *column {
	for i := range d.line.stretches {
		if stretch := &d.line.stretches[i]; t >= stretch.from && t < stretch.to {
			if c := at(stretch.columns, t); c.at == t {
				return c
			}
		}
	}
	return nil
}

// x returns the place of a time: an end of the system if it lies outside, and
// of a time that a bar ends with, the bar line.
func (d *drawing) x(t picking.Ticks) int {
	for i := range d.line.stretches {
		stretch := &d.line.stretches[i]
		switch {
		case t <= stretch.from:
			return stretch.x
		case t < stretch.to:
			return stretch.within(t)
		}
	}
	return d.right()
}

// within returns the place of a time inside the stretch.
func (t *stretch) within(time picking.Ticks) int {
	from, x := t.from, t.x
	for _, c := range t.columns {
		if c.at > time {
			return x + int(int64(c.x-x)*int64(time-from)/int64(c.at-from))
		}
		from, x = c.at, c.x
	}
	return x + int(int64(t.x+t.width-x)*int64(time-from)/int64(t.to-from))
}

// barLines draws the bar lines and repeat signs through the tab.
func (d *drawing) barLines() {
	top, bottom := d.tab(1), d.tab(d.sheet.strings())
	if d.sheet.strings() == 1 {
		top, bottom = top-d.scale.tabPitch/2, bottom+d.scale.tabPitch/2
	}
	b := barPen{d.pen, &d.scale, top, bottom, d.dots()}
	first := &d.line.stretches[0]
	if !first.begun() && !first.opens {
		b.thin(first.x)
	}
	for i := range d.line.stretches {
		t := &d.line.stretches[i]
		if t.opens {
			b.opening(t.x)
		}
		switch x := t.x + t.width; {
		case t.closes:
			b.closing(x)
		case t.ends:
			b.final(x)
		case !t.more():
			b.thin(x)
		}
	}
}

// dots returns the heights of the dots of a repeat sign: between the strings
// on either side of the middle.
func (d *drawing) dots() [2]int {
	middle := (d.tab(1) + d.tab(d.sheet.strings())) / 2
	reach := d.scale.tabPitch
	if d.sheet.strings()%2 == 1 {
		reach = d.scale.tabPitch / 2
	}
	return [2]int{middle - reach, middle + reach}
}

// A barPen draws bar lines from top to bottom.
type barPen struct {
	*pen
	*scale
	top, bottom int
	dots        [2]int
}

func (b *barPen) thin(x int) {
	b.pen.line("bar-line", x, b.top, x, b.bottom, b.scale.line)
}

func (b *barPen) thick(x int) {
	b.pen.line("bar-line", x, b.top, x, b.bottom, b.heavy)
}

func (b *barPen) final(x int) {
	b.thick(x - b.heavy/2)
	b.thin(x - b.heavy*2)
}

func (b *barPen) opening(x int) {
	b.thick(x + b.heavy/2)
	b.thin(x + b.heavy*2)
	b.pair(x + b.heavy*3)
}

func (b *barPen) closing(x int) {
	b.final(x)
	b.pair(x - b.heavy*3)
}

func (b *barPen) pair(x int) {
	for _, y := range b.dots {
		b.circle("repeat", x, y, b.heavy/2, 0)
	}
}
