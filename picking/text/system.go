package text

import (
	"bytes"
	"strings"
)

// The lines of a system that stand above the tab, in order. Below it stands
// the start line.
const (
	barLine = iota
	chordLine
	soundsLine
	figureLine
	countLine
	strokeLine
	tabLine // of string 1
)

var lineLabels = [...]string{"bar", "chord", "sounds", "figure", "count", "stroke"}

// writeBars writes the bars of one line, or the lines of one bar.
func (s *sheet) writeBars(bars [][]stretch) {
	if len(bars) == 1 {
		for i := range bars[0] {
			s.writeSystem(bars[0][i : i+1])
		}
		return
	}
	line := make([]stretch, len(bars))
	for i, parts := range bars {
		line[i] = parts[0]
	}
	s.writeSystem(line)
}

// writeSystem draws stretches side by side and writes them.
func (s *sheet) writeSystem(line []stretch) {
	s.clearCanvas(line)
	x := s.margin
	for _, t := range line {
		s.draw(t, x)
		x += lead + t.width
	}
	closing := byte(barSign)
	if line[len(line)-1].more {
		closing = moreSign
	}
	s.drawBarLine(closing, x)
	for i, row := range s.canvas {
		s.writeRow(row, i >= countLine && i < s.startLine())
	}
	s.newLine()
}

const (
	barSign  = '|'
	moreSign = '>'
)

func (s *sheet) strings() int { return int(s.Instrument.Tuning.Strings()) }

func (s *sheet) startLine() int { return tabLine + s.strings() }

// clearCanvas makes room for a system and writes the labels.
func (s *sheet) clearCanvas(line []stretch) {
	s.lineWidth = s.margin + 1
	for _, t := range line {
		s.lineWidth += lead + t.width
	}
	if s.canvas == nil {
		s.canvas = make([][]byte, s.startLine()+1)
	}
	for i := range s.canvas {
		s.canvas[i] = append(s.canvas[i][:0], strings.Repeat(" ", s.lineWidth)...)
	}
	for i, label := range lineLabels {
		s.put(i, 0, label)
	}
	for n := range s.Instrument.Tuning.All().Thinnest() {
		s.put(tabLine+int(n)-1, 0, s.stringLabel(n))
		s.put(tabLine+int(n)-1, s.margin, strings.Repeat("-", s.lineWidth-s.margin))
	}
	s.put(s.startLine(), 0, "start")
}

func (s *sheet) put(row, x int, text string) { copy(s.canvas[row][x:], text) }

func (s *sheet) drawBarLine(sign byte, x int) {
	for row := tabLine; row < s.startLine(); row++ {
		s.canvas[row][x] = sign
	}
}

// draw puts a stretch on the canvas, its bar line at x.
func (s *sheet) draw(t stretch, x int) {
	opening := byte(barSign)
	if t.begun {
		opening = moreSign
	}
	s.drawBarLine(opening, x)
	x += lead
	s.put(barLine, x, t.number)
	for _, n := range t.names {
		s.put(chordLine, x+n.x, n.chord)
		s.put(soundsLine, x+n.x, n.sounds)
		s.put(figureLine, x+n.x, n.figure)
	}
	for _, c := range t.columns {
		s.put(countLine, x+c.x, c.word)
		s.put(strokeLine, x+c.x, c.mark)
		s.put(s.startLine(), x+c.x, c.start)
	}
	for _, pick := range t.picks {
		s.put(tabLine+int(pick.String)-1, x+at(t.columns, pick.At).x, fretText(pick.Fret))
	}
	s.signs.note(t)
}

// writeRow writes a line of the system; one that says nothing only if it is to
// stand anyway.
func (s *sheet) writeRow(row []byte, always bool) {
	if always || len(bytes.TrimSpace(row[s.margin:])) > 0 {
		s.out = append(s.out, bytes.TrimRight(row, " ")...)
		s.newLine()
	}
}
