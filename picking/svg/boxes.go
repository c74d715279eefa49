package svg

import (
	"slices"
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// A boxDrawing is a chord box and its measures.
type boxDrawing struct {
	box.Box
	columns       []box.Column
	first         fretboard.Fret
	rows          []boxRow
	label         int // room for the numbers of the frets on the right
	width, height int
}

// A boxRow is a row of the window as it is drawn. Where long stretches of the
// neck are free, they are left out.
type boxRow struct {
	row    int // of the window, from 1
	y      int // of its upper fret, from the nut
	skips  bool
	marked bool // its fret has a number
}

// wholeRows is how many rows are drawn before free ones are left out.
const wholeRows = 6

// boxOf returns the drawing of a voicing's box.
func (s *sheet) boxOf(v voicing.Voicing) *boxDrawing {
	if d := s.boxes[v]; d != nil {
		return d
	}
	c := &s.scale
	d := &boxDrawing{Box: box.Of(v)}
	d.columns = d.Columns()
	d.setRows(c)
	for _, r := range d.rows {
		if r.marked {
			d.label = max(d.label, c.small.room(d.fretOf(r))+c.dot*75/100)
		}
	}
	d.width = (len(d.columns)-1)*c.boxColumn + c.dot + max(d.label-c.dot/2, 0)
	d.height = c.boxTop() + d.depth(c) + c.boxFoot()
	s.boxes[v] = d
	return d
}

// setRows chooses the rows to draw: all of a short window, of a long one those
// in which something is held.
func (d *boxDrawing) setRows(c *scale) {
	first, count := d.Window()
	d.first = first
	y, last := 0, 0
	for row := 1; row <= count; row++ {
		held := slices.ContainsFunc(d.columns, func(column box.Column) bool { return column.Row == row })
		if count > wholeRows && !held {
			continue
		}
		skips := row > last+1
		if skips {
			y += c.boxRow / 2
		}
		d.rows = append(d.rows, boxRow{row: row, y: y, skips: skips, marked: skips || row == 1 && first > 1})
		y += c.boxRow
		last = row
	}
}

// depth returns the height of the grid.
func (d *boxDrawing) depth(c *scale) int { return d.rows[len(d.rows)-1].y + c.boxRow }

func (d *boxDrawing) fretOf(r boxRow) string { return strconv.Itoa(int(d.first) + r.row - 1) }

// boxTop is the room above the nut, boxFoot that below the grid.
func (c *scale) boxTop() int  { return c.dot }
func (c *scale) boxFoot() int { return c.dot * 80 / 100 }

// draw draws the box, its left edge at x and its top at y.
func (d *boxDrawing) draw(s *sheet, p *pen, x, y int) {
	p.open("box", "img", "Chord box. "+strings.Join(d.Words(), " "))
	b := boxPen{pen: p, scale: &s.scale, boxDrawing: d, left: x + s.scale.dot/2, nut: y + s.scale.boxTop()}
	b.grid()
	b.frets()
	b.barres()
	for i, column := range d.columns {
		b.column(i, column)
	}
	p.close()
}

// A boxPen draws one box.
type boxPen struct {
	*pen
	*scale
	*boxDrawing
	left, nut int
}

func (b *boxPen) x(column int) int { return b.left + column*b.boxColumn }

// grid draws the strings and the frets, broken where rows are left out.
func (b *boxPen) grid() {
	left, right := b.edges()
	lines := b.path("grid")
	for i, r := range b.rows {
		top := b.nut + r.y
		if i == 0 || r.skips {
			lines.move(left, top).to(right, top)
		}
		for column := range b.columns {
			lines.move(b.x(column), top).to(b.x(column), top+b.boxRow)
		}
		lines.move(left, top+b.boxRow).to(right, top+b.boxRow)
	}
	lines.stroke(b.scale.line)
	if b.first == 1 && b.rows[0].row == 1 {
		b.pen.line("nut", left-b.scale.line/2, b.nut-b.heavy/2, right+b.scale.line/2, b.nut-b.heavy/2, b.heavy)
	}
}

// edges returns where the frets begin and end: at the outermost strings, or
// beside the only one.
func (b *boxPen) edges() (left, right int) {
	if len(b.columns) == 1 {
		return b.left - b.dot/2, b.left + b.dot/2
	}
	return b.left, b.x(len(b.columns) - 1)
}

// frets numbers the rows that are not counted from the nut.
func (b *boxPen) frets() {
	for _, r := range b.rows {
		if r.marked {
			b.text("position", b.small, b.x(len(b.columns)-1)+b.dot*75/100, b.nut+r.y+b.boxRow/2+b.small.middle(), start, black, b.fretOf(r))
		}
	}
}

// row returns the middle of a row of the window.
func (b *boxPen) row(row int) int {
	for _, r := range b.rows {
		if r.row == row {
			return b.nut + r.y + b.boxRow/2
		}
	}
	return b.nut
}

func (b *boxPen) barres() {
	for _, barre := range b.Barres() {
		b.pen.line("barre", b.x(barre.Left), b.row(barre.Row), b.x(barre.Right), b.row(barre.Row), b.dot/2)
	}
}

// column draws what happens on a string.
func (b *boxPen) column(i int, c box.Column) {
	x, above := b.x(i), b.nut-b.heavy-b.dot*42/100
	arm := b.dot * 28 / 100
	switch {
	case c.Muted:
		b.path("muted").move(x-arm, above-arm).to(x+arm, above+arm).move(x-arm, above+arm).to(x+arm, above-arm).stroke(b.scale.line * 3 / 2)
	case c.Fret == 0:
		b.circle("open", x, above, arm, b.scale.line*3/2)
	default:
		b.circle("dot", x, b.row(c.Row), b.dot/2, 0)
		if c.Finger > 0 {
			b.text("finger", b.finger, x, b.row(c.Row)+b.finger.middle(), middle, white, strconv.Itoa(int(c.Finger)))
		}
	}
	if c.Start {
		b.startSign(x, b.nut+b.depth(b.scale)+b.dot*45/100)
	}
}

// startSign draws the sign of the start string.
func (b *boxPen) startSign(x, y int) { b.pen.diamond("start", x, y, b.dot*32/100) }

func (p *pen) diamond(class string, x, y, arm int) {
	p.path(class).move(x, y-arm).to(x+arm, y).to(x, y+arm).to(x-arm, y).shut().fill()
}
