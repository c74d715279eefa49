package svg

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// rows holds where each row of a system stands, from its top: lines of type for
// names and below, tops for boxes, middles for the rest.
type rows struct {
	name, below, box, notes, sign, tab, count, lane, height int
}

// rowsOf lays the rows of a system out.
func (s *sheet) rowsOf(line *system) (r rows) {
	c := &s.scale
	below, boxes, notes := false, 0, false
	for i := range line.stretches {
		for _, n := range line.stretches[i].names {
			below = below || n.below != ""
			if n.box != nil {
				boxes = max(boxes, n.box.height)
			}
		}
		for _, column := range line.stretches[i].columns {
			notes = notes || len(column.notes) > 0
		}
	}
	r.name = c.chord.up()
	y := c.chord.height()
	if below {
		r.below = y + c.small.up()
		y += c.small.height()
	}
	if boxes > 0 {
		r.box = y
		y += boxes
	}
	y += c.thick(150)
	if notes {
		r.notes = y + c.small.height()*55/100
		y += c.small.height() * 140 / 100
	}
	r.sign = y + max(c.sign, c.small.height())/2
	y += max(c.sign, c.small.height()) + c.thick(150)
	r.tab = y + c.fret.size*40/100
	y = r.tab + int(s.strings()-1)*c.tabPitch + c.fret.size*58/100
	r.count = y + c.count.height()/2
	y += c.count.height() + c.thick(250)
	r.lane = y
	y += int(s.strings()) * c.lanePitch
	r.height = y
	return r
}

// systemBlock makes a block of a system.
func (s *sheet) systemBlock(line *system) block {
	line.rows = s.rowsOf(line)
	s.signs.noteSystem(s, line)
	var bars []int
	for i := range line.stretches {
		bars = append(bars, line.stretches[i].bar.Number)
	}
	return block{height: line.rows.height, gap: s.scale.thick(1400), bars: bars, draw: func(p *pen, y int) {
		d := drawing{sheet: s, pen: p, line: line, top: y}
		d.draw(capital(barsText(bars)))
	}}
}

// A drawing draws one system whose top is at top.
type drawing struct {
	*sheet
	*pen
	line *system
	top  int
}

func (d *drawing) left() int  { return margin + d.labelWidth() }
func (d *drawing) right() int { return d.left() + d.line.width }

// tab returns the height of a string's line in the tab: string 1 on top.
func (d *drawing) tab(n fretboard.StringNumber) int {
	return d.top + d.line.rows.tab + int(n-1)*d.scale.tabPitch
}

// draw draws the system: first what the bars share, then bar by bar.
func (d *drawing) draw(label string) {
	d.open("system", "group", label)
	d.decoration("tab")
	d.labels()
	d.strings()
	d.rings()
	d.barLines()
	d.close()
	for i := range d.line.stretches {
		d.stretch(&d.line.stretches[i])
	}
	d.lane()
	d.close()
}

// labels names the strings at the left, in the tab and in the lane.
func (d *drawing) labels() {
	f := d.scale.label
	x := d.left() - f.size*35/100
	for n := range d.Instrument.Tuning.All().Thinnest() {
		d.pen.text("label", f, x, d.tab(n)+f.middle(), end, black, d.stringLabel(n))
	}
}

// stretch draws a bar, or a part of one: its chord boxes, each read aloud for
// itself, and the rest, read aloud as one.
func (d *drawing) stretch(t *stretch) {
	for i := range t.names {
		if n := &t.names[i]; n.box != nil {
			n.box.draw(d.sheet, d.pen, n.x, d.top+d.line.rows.box)
		}
	}
	d.open("bar", "img", d.barWords(t))
	r, c := &d.line.rows, &d.scale
	for _, n := range t.names {
		d.pen.text("chord", c.chord, n.x, d.top+r.name, start, black, n.chord)
		d.pen.text("below", c.small, n.x, d.top+r.below, start, black, n.below)
	}
	d.pen.text("bar-number", c.small, t.x+c.numberInset(), d.top+r.sign+c.small.middle(), start, black, t.number)
	for i := range t.columns {
		d.column(&t.columns[i])
	}
	d.close()
}

// column draws what stands at a moment.
func (d *drawing) column(column *column) {
	r, c := &d.line.rows, &d.scale
	d.frame(column.notes, column.x-c.inset(), d.top+r.notes, c)
	d.pen.text("count", c.count, column.x, d.top+r.count+c.count.middle(), middle, black, column.word)
	if column.rest {
		d.restSign(column.x, d.top+r.sign, c)
	}
	if column.pick == none {
		return
	}
	pick := d.picks[column.pick]
	d.strokeSign(pick.Stroke, column.x, d.top+r.sign, c)
	d.pen.text("fret", c.fret, column.x, d.tab(pick.String)+c.fret.middle(), middle, black, fretText(pick.Fret))
}

// frame draws the numbers of notes, its left edge at x and its middle at y.
func (p *pen) frame(numbers []int, x, y int, c *scale) {
	if len(numbers) == 0 {
		return
	}
	width, half := c.frameWidth(numbers), c.small.size*48/100
	p.path("frame").move(x, y-half).to(x+width, y-half).to(x+width, y+half).to(x, y+half).shut().stroke(c.line)
	p.text("note", c.small, x+width/2, y+c.small.middle(), middle, black, numbersText(numbers))
}

// strokeSign draws the down-bow or the up-bow sign of common notation, its
// middle at x, y.
func (p *pen) strokeSign(stroke picking.Stroke, x, y int, c *scale) {
	half := c.sign / 2
	if stroke == picking.DownStroke {
		wide, bar := c.sign*40/100, c.sign*28/100
		p.path("down").move(x-wide, y+half).to(x-wide, y-half).to(x+wide, y-half).to(x+wide, y+half).
			to(x+wide-c.line, y+half).to(x+wide-c.line, y-half+bar).to(x-wide+c.line, y-half+bar).to(x-wide+c.line, y+half).shut().fill()
		return
	}
	wide := c.sign * 36 / 100
	p.path("up").move(x-wide, y-half).to(x, y+half).to(x+wide, y-half).stroke(c.line * 5 / 4)
}

// restSign draws the sign of silence: a block, as the longer rests of common
// notation are.
func (p *pen) restSign(x, y int, c *scale) {
	wide, high := c.sign*76/100, c.sign*30/100
	p.rectangle("rest", x-wide/2, y-high/2, wide, high)
}

// loopBlock makes the block that says at the end where the part goes on.
func (s *sheet) loopBlock(line *system) block {
	f := s.scale.small
	text := "back to bar " + strconv.Itoa(s.Bars[0].Number)
	right := margin + max(s.labelWidth()+line.width, f.room(text))
	return block{height: f.height(), gap: s.scale.thick(150), draw: func(p *pen, y int) {
		p.text("loop", f, right, y+f.up(), end, black, text)
	}}
}
