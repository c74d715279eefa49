package box

import (
	"io"
	"slices"
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// Options are choices for a sheet of boxes. The zero Options works.
type Options struct {
	// Width is the longest line in characters, 40 to 1000; 0 means 80.
	Width    int
	Spelling fretboard.Spelling // of the chord names
}

const (
	usualWidth = 80
	minWidth   = 40
	maxWidth   = 1000
)

// Encode writes boxes to w, side by side in as many rows as they need, as
// [Box.Text] draws them, and below them in words what the signs mean and why
// a shape cannot be held. Boxes with the same number of strings have the same
// width; their grids begin on the same line. The sheet is ASCII and is written
// in one piece, nothing at all for no boxes. The error is w's or, for options
// that cannot be, a [fretboard.ImpossibleError]. The time grows with the boxes.
func Encode(w io.Writer, boxes []Box, o Options) error {
	if o.Width == 0 {
		o.Width = usualWidth
	}
	if text := strconv.Itoa(o.Width); o.Width < minWidth || o.Width > maxWidth {
		return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "width", Source: text, Length: len(text),
			Reason: "not a width for a sheet", Mend: "choose 40 to 1000 characters, or 0 for 80"}}
	}
	if len(boxes) == 0 {
		return nil
	}
	var out strings.Builder
	for _, row := range rows(boxes, o) {
		writeRow(&out, row)
		out.WriteByte('\n')
	}
	for _, sign := range legend(boxes, o.Spelling) {
		writeEntry(&out, sign, o.Width)
	}
	n, err := io.WriteString(w, out.String())
	if err == nil && n < out.Len() {
		err = io.ErrShortWrite
	}
	return err
}

// gap keeps a box from the number on the left of the next.
const gap = 1

// rows deals boxes into rows that fit into a width. No box is wider than the
// least one.
func rows(boxes []Box, o Options) [][]drawing {
	var rows [][]drawing
	room := 0
	for _, b := range boxes {
		d := b.draw(o.Spelling)
		if d.width > room {
			rows = append(rows, nil)
			room = o.Width
		}
		last := len(rows) - 1
		rows[last] = append(rows[last], d)
		room -= d.width + gap
	}
	return rows
}

// writeRow writes drawings side by side, the names standing on the bodies.
func writeRow(out *strings.Builder, row []drawing) {
	heads, bodies := 0, 0
	for _, d := range row {
		heads, bodies = max(heads, len(d.head)), max(bodies, len(d.body))
	}
	for at := -heads; at < bodies; at++ {
		line := ""
		for _, d := range row {
			line += pad(d.line(at), d.width+gap)
		}
		writeLine(out, line)
	}
}

// line returns a line of d, counted from the top of the body.
func (d drawing) line(at int) string {
	all := append(slices.Clip(d.head), d.body...)
	if at += len(d.head); at < 0 || at >= len(all) {
		return ""
	}
	return all[at]
}

func pad(line string, width int) string { return line + strings.Repeat(" ", width-len(line)) }

// An entry explains a sign.
type entry struct{ sign, meaning string }

const entryIndent = 6

// writeEntry writes an entry, its meaning wrapped and indented.
func writeEntry(out *strings.Builder, e entry, width int) {
	line := pad(e.sign, entryIndent-1)
	for _, word := range strings.Fields(e.meaning) {
		if len(line)+1+len(word) > width {
			writeLine(out, line)
			line = strings.Repeat(" ", entryIndent-1)
		}
		line += " " + word
	}
	writeLine(out, line)
}
