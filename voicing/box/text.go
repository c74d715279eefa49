package box

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// The measures of a box in characters. A margin holds the fret of the first
// row; a step from string to string leaves room for string numbers from 10 on.
const (
	margin    = 3
	step      = 3
	narrowest = 10 // for the chord names of instruments with one or two strings
)

func width(strings int) int { return max(narrowest, margin+step*strings-1) }

// Text draws b in ASCII, for a font whose characters are all of one width: the
// chord's name and the capo, x above a muted string and 0 above an open one,
// the nut or capo as a double line, the fingers in the grid, a barre as a line
// between them, a number on the left of a first row that is not fret 1, and
// below the grid the numbers of the strings and ^ under the start string. The
// stopped strings of a shape that four fingers cannot hold are marked *. All
// lines end in a newline; none has spaces before it. [Encode] explains the
// signs.
func (b Box) Text() string {
	d := b.draw(fretboard.English)
	var out strings.Builder
	for _, line := range append(d.head, d.body...) {
		writeLine(&out, line)
	}
	return out.String()
}

func writeLine(out *strings.Builder, line string) {
	out.WriteString(strings.TrimRight(line, " "))
	out.WriteByte('\n')
}

// A drawing is a box as lines: names above the body, and the body from the
// marks above the nut to the mark of the start string.
type drawing struct {
	width      int
	head, body []string
}

func (b Box) draw(s fretboard.Spelling) drawing {
	c := canvas{columns: b.Columns()}
	d := drawing{width: width(len(c.columns)), head: b.head(s)}
	if len(c.columns) == 0 {
		return d
	}
	first, rows := b.Window()
	c.mark(columnMark)
	c.across(first == 1)
	for row := 1; row <= rows; row++ {
		c.row(row, b.Barres())
		if row == 1 && first > 1 {
			c.write(margin-1, strconv.Itoa(int(first)))
		}
		c.across(false)
	}
	c.mark(func(Column) string { return " " })
	for i, column := range c.columns {
		c.write(place(i)+len(number(column.String)), number(column.String))
	}
	c.mark(startMark)
	for _, line := range c.lines {
		d.body = append(d.body, string(line))
	}
	return d
}

func number(s fretboard.StringNumber) string { return strconv.Itoa(int(s)) }

// head names the chord, on as many lines as its name needs, and the capo.
func (b Box) head(s fretboard.Spelling) []string {
	room := width(int(b.voicing.Shape().Strings())) - margin
	var lines []string
	for name := b.voicing.Chord().StringIn(s); name != ""; {
		end := breakName(name, room)
		lines = append(lines, indent+name[:end])
		name = name[end:]
	}
	if capo := b.voicing.Instrument().Capo; capo > 0 {
		lines = append(lines, indent+"capo "+strconv.Itoa(int(capo)))
	}
	return lines
}

var indent = strings.Repeat(" ", margin)

// breakName returns how much of a name a line holds: if not all, up to the last
// slash, bracket or sharp after the root that it can.
func breakName(name string, room int) int {
	const root = 2 // a letter with its accidental
	if len(name) <= room {
		return len(name)
	}
	if at := strings.LastIndexAny(name[root:room+1], "/(#"); at >= 0 {
		return root + at
	}
	return room
}

// A canvas takes the lines of a body from top to bottom.
type canvas struct {
	columns []Column
	lines   [][]byte
}

// place returns where column i stands in a line.
func place(i int) int { return margin + step*i }

// newLine adds an empty line.
func (c *canvas) newLine() []byte {
	line := []byte(strings.Repeat(" ", width(len(c.columns))))
	c.lines = append(c.lines, line)
	return line
}

// write puts text into the last line so that it ends before end.
func (c *canvas) write(end int, text string) {
	copy(c.lines[len(c.lines)-1][end-len(text):], text)
}

// mark adds a line with one sign a column.
func (c *canvas) mark(sign func(Column) string) {
	line := c.newLine()
	for i, column := range c.columns {
		copy(line[place(i):], sign(column))
	}
}

// across adds a fret as a line, or the nut.
func (c *canvas) across(nut bool) {
	line := c.newLine()
	for at := place(0); at <= place(len(c.columns)-1); at++ {
		switch {
		case nut:
			line[at] = '='
		case (at-margin)%step == 0:
			line[at] = '+'
		default:
			line[at] = '-'
		}
	}
}

// row adds the space between two frets.
func (c *canvas) row(row int, barres []Barre) {
	c.mark(func(Column) string { return "|" })
	line := c.lines[len(c.lines)-1]
	for _, barre := range barres {
		if barre.Row == row {
			for at := place(barre.Left); at <= place(barre.Right); at++ {
				line[at] = '-'
			}
		}
	}
	for i, column := range c.columns {
		if column.Row == row {
			line[place(i)] = fingerSign(column.Finger)
		}
	}
}

func columnMark(c Column) string {
	switch {
	case c.Muted:
		return "x"
	case c.Fret == 0:
		return "0"
	}
	return " "
}

func startMark(c Column) string {
	if c.Start {
		return "^"
	}
	return " "
}

func fingerSign(f voicing.Finger) byte {
	if f == 0 {
		return '*'
	}
	return '0' + byte(f)
}
