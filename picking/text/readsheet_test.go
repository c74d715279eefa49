package text_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A sheet is what a reader makes of a sheet's text: the systems' bars, and the
// labelled entries above and below them.
type sheet struct {
	lines    []string
	headings []string
	bars     map[int]*sheetBar // by every number that a bar bears
	entries  []entry
}

type entry struct{ label, text string }

// A sheetBar is a bar put together from the lines in which it stands.
type sheetBar struct{ parts []part }

// A part is a bar as it stands in one line.
type part struct {
	line    int // of the text, the system's first
	single  bool
	rows    map[string]string // the lines above the tab, from the first column
	columns []sheetColumn
	width   int
}

// A sheetColumn is what stands in one place of a part.
type sheetColumn struct {
	x                   int
	word, stroke, start string
	strings, frets      []int
}

// readSheet reads a sheet or says what keeps it from being one.
func readSheet(text string) (*sheet, error) {
	s := &sheet{lines: strings.Split(text, "\n"), bars: map[int]*sheetBar{}}
	for i := 0; i < len(s.lines); i++ {
		line := s.lines[i]
		switch {
		case strings.HasPrefix(line, "bar "):
			end := i + slices.Index(s.lines[i:], "")
			if err := s.readSystem(i, s.lines[i:end]); err != nil {
				return nil, fmt.Errorf("line %d: %w", i+1, err)
			}
			i = end
		case strings.HasPrefix(line, "Bar"):
			for ; s.lines[i+1] != ""; i++ {
				line += " " + s.lines[i+1]
			}
			s.headings = append(s.headings, line)
		case strings.HasPrefix(line, "  ") && len(s.entries) > 0:
			s.entries[len(s.entries)-1].text += " " + strings.TrimSpace(line)
		default:
			label, rest, _ := strings.Cut(line, " ")
			s.entries = append(s.entries, entry{label, strings.TrimSpace(rest)})
		}
	}
	return s, nil
}

// readSystem reads the lines of one system.
func (s *sheet) readSystem(line int, rows []string) error {
	tab := slices.IndexFunc(rows, func(row string) bool { return strings.HasPrefix(strings.TrimSpace(row), "1 ") })
	if tab < 0 {
		return fmt.Errorf("a system without string 1")
	}
	var signs []int // where the bar lines stand
	for x, c := range rows[tab] {
		if c == '|' || c == '>' {
			signs = append(signs, x)
		}
	}
	for i := range signs[:len(signs)-1] {
		from, to := signs[i]+2, signs[i+1]
		p := part{line: line, single: len(signs) == 2, rows: map[string]string{}, width: to - signs[i]}
		for j, row := range rows {
			if err := p.readRow(row, j >= tab, from, to); err != nil {
				return err
			}
		}
		slices.SortFunc(p.columns, func(a, b sheetColumn) int { return a.x - b.x })
		if err := s.add(p, rows[tab][signs[i]] == '>'); err != nil {
			return err
		}
	}
	return nil
}

// readRow reads what stands in one line of a part.
func (p *part) readRow(row string, below bool, from, to int) error {
	label := strings.Fields(row)[0]
	isTab := below && label != "start"
	if isTab && (strings.Trim(row[from-1:to], "-0123456789") != "" || row[from-1] != '-') {
		return fmt.Errorf("not a tab line: %q", row)
	}
	here := ""
	if len(row) > from {
		here = row[from:min(to, len(row))]
	}
	if !below {
		p.rows[label] = here
	}
	if label != "count" && label != "stroke" && label != "start" && !isTab {
		return nil
	}
	for _, token := range tokens(here) {
		c := p.column(token.x)
		switch label {
		case "count":
			c.word = token.text
		case "stroke":
			c.stroke = token.text
		case "start":
			c.start = token.text
		default:
			number, _ := strconv.Atoi(label)
			fret, err := strconv.Atoi(token.text)
			if err != nil {
				return err
			}
			c.strings, c.frets = append(c.strings, number), append(c.frets, fret)
		}
	}
	return nil
}

func (p *part) column(x int) *sheetColumn {
	for i := range p.columns {
		if p.columns[i].x == x {
			return &p.columns[i]
		}
	}
	p.columns = append(p.columns, sheetColumn{x: x})
	return &p.columns[len(p.columns)-1]
}

type token struct {
	x    int
	text string
}

// tokens cuts a text at spaces and dashes.
func tokens(text string) (list []token) {
	for x := 0; x < len(text); x++ {
		if n := strings.IndexAny(text[x:]+" ", " -"); n > 0 {
			list = append(list, token{x, text[x : x+n]})
			x += n
		}
	}
	return list
}

// add files a part under its bar's numbers.
func (s *sheet) add(p part, begun bool) error {
	label := strings.TrimSpace(p.rows["bar"])
	if strings.HasPrefix(label, "(") != begun {
		return fmt.Errorf("bar %s: the brackets and the sign for a bar begun before disagree", label)
	}
	var bar *sheetBar
	for _, text := range strings.Split(strings.Trim(label, "()"), ", ") {
		number, err := strconv.Atoi(text)
		switch {
		case err != nil:
			return err
		case (s.bars[number] != nil) != begun:
			return fmt.Errorf("bar %d stands twice, or goes on from nowhere", number)
		case bar == nil && !begun:
			bar = &sheetBar{}
		case bar == nil:
			bar = s.bars[number]
		}
		s.bars[number] = bar
	}
	bar.parts = append(bar.parts, p)
	return nil
}
