package text

import (
	"slices"
	"strconv"

	"weft.example/picking"
)

// A name is what stands over a chord.
type name struct {
	at                    picking.Ticks
	x                     int // characters from the stretch's first column
	chord, sounds, figure string
}

// A stretch is a bar as it stands in one line, or a part of it.
type stretch struct {
	number  string // of the bar
	columns []column
	names   []name
	picks   []picking.Pick
	width   int  // of the columns
	more    bool // the bar goes on in the next line
	begun   bool // the bar began in a line before
}

// lead is the bar line and the dash before the first column.
const lead = 2

// slotWidth is the room for the shortest slot of a bar.
const slotWidth = 3

// A spacing says how columns are set: in proportion to time, or tight.
type spacing bool

const (
	inTime spacing = false
	tight  spacing = true
)

// stretch lays out what a bar holds in a part of its time.
func (s *sheet) stretch(bar picking.Bar, number string, from, to picking.Ticks, spacing spacing) stretch {
	columns := s.columns(bar)
	base := shortest(bar, columns)
	t := stretch{more: to < bar.At+bar.Length, begun: from > bar.At}
	t.columns = slices.DeleteFunc(columns, func(c column) bool { return c.at < from || c.at >= to })
	for _, pick := range bar.Picks {
		if pick.At >= from && pick.At < to {
			t.picks = append(t.picks, pick)
		}
	}
	t.number = number
	if t.begun {
		t.number = "(" + t.number + ")"
	}
	for _, chord := range bar.Chords {
		if chord.At < to && chord.At+chord.Length > from {
			n := s.name(chord)
			n.at = max(chord.At, from)
			t.names = append(t.names, n)
		}
	}
	t.space(to, base, spacing)
	t.setNames()
	return t
}

// shortest returns the shortest slot of a bar: of its picks as written, and of
// its counted words.
func shortest(bar picking.Bar, columns []column) picking.Ticks {
	least, last := bar.Length, picking.Ticks(-1)
	for _, pick := range bar.Picks {
		least = min(least, pick.Length)
	}
	for _, c := range columns {
		if c.word == "" {
			continue
		}
		if last >= 0 {
			least = min(least, c.at-last)
		}
		last = c.at
	}
	return least
}

// space places the columns, so that the shortest slot takes slotWidth or, if
// tight, so that each takes only what its texts need.
func (t *stretch) space(to, base picking.Ticks, spacing spacing) {
	t.width = 0
	for i := range t.columns {
		c := &t.columns[i]
		c.x = t.width
		next := to
		if i+1 < len(t.columns) {
			next = t.columns[i+1].at
		}
		room := c.need
		if from := t.columns[0].at; spacing == inTime {
			room = max(room, along(next-from, base)-along(c.at-from, base))
		}
		t.width += room
	}
	t.widen(0, t.width, len(t.number)+1)
}

// along returns how far a time lies from the stretch's beginning, rounded.
func along(t, base picking.Ticks) int { return int((2*slotWidth*t + base) / (2 * base)) }

// name words what stands over a chord: with a capo, how it sounds too.
func (s *sheet) name(chord picking.HeldChord) name {
	n := name{chord: chord.Chord.StringIn(s.spelling)}
	if shape := chord.Voicing.Shape(); shape.Strings() > 0 {
		n.chord += " " + shape.String()
	}
	if s.Instrument.Capo > 0 && !chord.Chord.Silent() {
		n.sounds = chord.Sounds.StringIn(s.spelling)
	}
	if s.figures && chord.Figure > 0 {
		n.figure = strconv.Itoa(chord.Figure)
	}
	return n
}

func (n name) width() int { return max(len(n.chord), len(n.sounds), len(n.figure)) }

// setNames puts the names over their columns and widens the stretch where a
// name would meet the next one or the bar line.
func (t *stretch) setNames() {
	for i := range t.names {
		n, end, gap := &t.names[i], t.width, 1
		if i+1 < len(t.names) { // wider than the space between a name and its shape
			end, gap = at(t.columns, t.names[i+1].at).x, 2
		}
		n.x = at(t.columns, n.at).x
		t.widen(n.x, end, n.width()+gap)
	}
}

// widen stretches the room from one place to another until it is wide enough,
// keeping its proportions, and moves on what comes after.
func (t *stretch) widen(from, to, need int) {
	if room := to - from; need > room {
		for i := range t.columns {
			switch c := &t.columns[i]; {
			case c.x >= to:
				c.x += need - room
			case c.x > from:
				c.x = from + (c.x-from)*need/room
			}
		}
		t.width += need - room
	}
}
