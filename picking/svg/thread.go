package svg

import (
	"slices"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A level is a place of the pick across the strings, in half spacings: string n
// lies at 2n, and a stroke takes the pick from the odd level on one side of its
// string to that on the other.
type level int

// levels returns where a pick begins and ends.
func (s *sheet) levels(p picking.Pick) (begin, end level) {
	string, half := level(2*p.String), level(s.Instrument.Hand.Toward())
	if p.Stroke == picking.UpStroke {
		half = -half
	}
	return string - half, string + half
}

// height returns the height of a level in the lane: the floor is below.
func (d *drawing) height(l level) int {
	top := d.top + d.line.rows.lane
	if d.Instrument.Hand.Toward() < 0 {
		l = level(2*d.sheet.strings()) + 2 - l
	}
	return top + int(l-1)*d.scale.lanePitch/2
}

func (d *drawing) stringHeight(n fretboard.StringNumber) int { return d.height(level(2 * n)) }

// A turn is a pluck in the lane: the thread goes from one level to another over
// a string at x, wide to either side.
type turn struct {
	pick       picking.Pick
	x, wide    int
	begin, end level
}

// lane draws the pick's path over the strings. What it passes without plucking
// is drawn over it, what it plucks beneath it.
func (d *drawing) lane() {
	d.decoration("lane")
	turns := d.turns()
	d.laneEdges()
	travels := d.travels(turns)
	for _, t := range travels {
		d.travel(t)
	}
	for _, t := range travels {
		d.passings(t)
	}
	d.laneStrings(turns)
	for _, t := range travels {
		if t.knotted {
			d.knot((t.x1+t.x2)/2, (d.height(t.from)+d.height(t.to))/2, &d.scale)
		}
	}
	for _, t := range turns {
		d.pluck(t, d.height(t.begin), d.stringHeight(t.pick.String), d.height(t.end), &d.scale)
	}
	d.close()
}

// laneEdges names the strings and draws the bar lines.
func (d *drawing) laneEdges() {
	f := d.scale.label
	x := d.left() - f.size*35/100
	for n := range d.Instrument.Tuning.All().Thinnest() {
		d.pen.text("label", f, x, d.stringHeight(n)+f.middle(), end, black, d.stringLabel(n))
	}
	top := d.top + d.line.rows.lane
	bottom := top + int(d.sheet.strings())*d.scale.lanePitch
	for i := range d.line.stretches {
		t := &d.line.stretches[i]
		if i == 0 && !t.begun() {
			d.pen.line("lane-bar", t.x, top, t.x, bottom, d.scale.hairline)
		}
		if x := t.x + t.width; !t.more() {
			d.pen.line("lane-bar", x, top, x, bottom, d.scale.hairline)
		}
	}
}

// turns lists the plucks of the system.
func (d *drawing) turns() (turns []turn) {
	for i := range d.line.stretches {
		for _, c := range d.line.stretches[i].columns {
			if c.pick != none {
				t := turn{pick: d.picks[c.pick], x: c.x}
				t.begin, t.end = d.levels(t.pick)
				turns = append(turns, t)
			}
		}
	}
	for i := range turns {
		t := &turns[i]
		t.wide = d.scale.thick(260)
		if i > 0 {
			t.wide = min(t.wide, (t.x-turns[i-1].x)/4)
		}
		if i+1 < len(turns) {
			t.wide = min(t.wide, (turns[i+1].x-t.x)/4)
		}
	}
	return turns
}

// A travel is the way of the pick between two plucks.
type travel struct {
	x1, x2   int
	from, to level
	knotted  bool // the pick is caught between two strings, or goes back over both
}

// travels lists the ways between the plucks, and from and to the systems before
// and after.
func (d *drawing) travels(turns []turn) (list []travel) {
	first, last := &d.line.stretches[0], &d.line.stretches[len(d.line.stretches)-1]
	next := d.pickFrom(last.to)
	onward, goesOn := d.arrival(next)
	comes := d.Loop || d.pickFrom(first.from) > 0
	if len(turns) == 0 {
		if comes && goesOn {
			list = append(list, travel{d.left(), d.right(), onward, onward, false})
		}
		return list
	}
	if t := &turns[0]; comes {
		list = append(list, travel{d.left(), t.x - t.wide, t.begin, t.begin, false})
	}
	for i := range turns[1:] {
		a, b := &turns[i], &turns[i+1]
		list = append(list, travel{a.x + a.wide, b.x - b.wide, a.end, b.begin, knots(b.pick)})
	}
	if t := &turns[len(turns)-1]; goesOn {
		list = append(list, travel{t.x + t.wide, d.right(), t.end, onward, knots(d.picks[next%len(d.picks)])})
	}
	return list
}

// pickFrom returns the index of the first pick at a time or after it.
func (s *sheet) pickFrom(t picking.Ticks) int {
	i, _ := slices.BinarySearchFunc(s.picks, t, func(p picking.Pick, t picking.Ticks) int { return int(p.At - t) })
	return i
}

// arrival returns where the pick goes next after a system.
func (d *drawing) arrival(next int) (level, bool) {
	switch {
	case next < len(d.picks):
	case d.Loop && len(d.picks) > 0:
		next = 0
	default:
		return 0, false
	}
	begin, _ := d.levels(d.picks[next])
	return begin, true
}

// knots reports whether the thread has a knot on the way to a pick.
func knots(p picking.Pick) bool {
	return p.Crossing == picking.InsideCrossing || p.Crossing == picking.ReturnCrossing
}

func (d *drawing) travel(t travel) {
	middle := (t.x1 + t.x2) / 2
	y1, y2 := d.height(t.from), d.height(t.to)
	d.path("travel").move(t.x1, y1).curve(middle, y1, middle, y2, t.x2, y2).stroke(d.scale.thread)
}

// knot draws the sign of a pick that is caught.
func (p *pen) knot(x, y int, c *scale) {
	p.raw(`<circle class="knot"`)
	p.attribute("cx", x)
	p.attribute("cy", y)
	p.attribute("r", c.thick(190))
	p.raw(` fill="#fff" stroke="#000"`)
	p.attribute("stroke-width", c.thread)
	p.raw("/>\n")
}

// passings draws a little white where the thread lies under a string.
func (d *drawing) passings(t travel) {
	low, high := min(t.from, t.to), max(t.from, t.to)
	for l := low + 1; l < high; l++ {
		if l%2 != 0 {
			continue
		}
		x, half := t.at(l), d.scale.thick(240)
		left, right := max(x-half, d.left()), min(x+half, d.right())
		d.path("passing").move(left, d.height(l)).to(right, d.height(l)).colored("#fff", d.scale.thick(190))
	}
}

// at returns where the thread comes to a level: the curve's height at parameter
// u, in 1024ths, is 3u^2 - 2u^3 of the way, which rises, and is searched.
func (t travel) at(l level) int {
	const whole = 1 << 10
	low, high := int64(0), int64(whole)
	for high-low > 1 {
		u := (low + high) / 2
		if (3*whole-2*u)*u*u*int64(size(t.to-t.from)) <= int64(size(l-t.from))*whole*whole*whole {
			low = u
		} else {
			high = u
		}
	}
	u, v := low, whole-low
	// x of the curve from x1 to x2 whose handles lie at the middle
	share := u*u*u*2 + 3*u*u*v + 3*u*v*v
	return t.x1 + int(int64(t.x2-t.x1)*share/(2*whole*whole*whole))
}

func size(l level) level { return max(l, -l) }

// laneStrings draws the strings of the lane, broken where the thread lies over
// them.
func (d *drawing) laneStrings(turns []turn) {
	half := d.scale.lanePitch * 34 / 100
	for n := range d.Instrument.Tuning.All().Thinnest() {
		x, y := d.left(), d.stringHeight(n)
		line := d.path("lane-string")
		for _, t := range turns {
			if t.pick.String == n && t.x-half > x {
				line.move(x, y).to(t.x-half, y)
				x = t.x + half
			}
		}
		line.move(x, y).to(d.right(), y).stroke(d.scale.hairline)
	}
}

// pluck draws the thread over its string, which lies at y, from y1 to y2, with
// the head of an arrow.
func (p *pen) pluck(t turn, y1, y, y2 int, c *scale) {
	p.path("pluck").move(t.x-t.wide, y1).curve(t.x+t.wide, y1, t.x-t.wide, y2, t.x+t.wide, y2).stroke(c.pluck)
	class, wide, point := "pluck-down", c.lanePitch*34/100, c.lanePitch*30/100
	if t.pick.Stroke == picking.UpStroke {
		class, point = "pluck-up", -point
	}
	p.path(class).move(t.x-wide, y-point).to(t.x+wide, y-point).to(t.x, y+point).shut().fill()
}
