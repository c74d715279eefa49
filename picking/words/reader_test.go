package words_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"weft.example/picking"
)

// A reading is what a reader who knows English takes from plain words.
type reading struct {
	title  string
	about  []string
	unit   picking.Ticks // from count to count
	chords map[string]*readChord
	bars   []*readBar // bar 1 at 0
}

// A readChord is a chord as its heading and its lines tell it.
type readChord struct {
	frets   map[int]int // of each string; -1 is muted
	fingers map[int]string
	start   int
	others  []string
}

// A readBar is a bar, its times counted from its beginning.
type readBar struct {
	folded bool
	lines  int
	chords []readChange
	picks  []readPick
	states []readState
}

type readChange struct {
	At     picking.Ticks
	Label  string
	Figure int
}

type readPick struct {
	At             picking.Ticks
	String, Fret   int
	Stroke, Marked string
}

type readState struct {
	At   picking.Ticks
	Rest bool
}

// read reads plain words that are not wrapped.
func read(text string, bar picking.Ticks) (*reading, error) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	r := &reading{title: lines[0], chords: map[string]*readChord{}}
	part, head := "", ""
	for i := 1; i < len(lines); i++ {
		line := lines[i]
		if line == "" { // a heading follows
			i++
			head = lines[i]
			if i+1 < len(lines) && lines[i+1] == "" {
				part = head
				continue
			}
			if err := r.open(part, head); err != nil {
				return nil, err
			}
			continue
		}
		if err := r.line(part, head, line, bar); err != nil {
			return nil, fmt.Errorf("line %d, %q: %w", i+1, line, err)
		}
	}
	return r, nil
}

// open begins what stands under a heading.
func (r *reading) open(part, head string) error {
	switch part {
	case "About this part":
	case "Chords":
		r.chords[head] = &readChord{frets: map[int]int{}, fingers: map[int]string{}}
	case "Bars":
		from, to, err := barNumbers(strings.ToLower(head))
		if err != nil {
			return err
		}
		if from != len(r.bars)+1 {
			return fmt.Errorf("%s follows bar %d", head, len(r.bars))
		}
		for range to - from + 1 {
			r.bars = append(r.bars, &readBar{})
		}
	default:
		return fmt.Errorf("%q under %q", head, part)
	}
	return nil
}

var barsPattern = regexp.MustCompile(`^bars? (\d+)(?: (?:to|and) (\d+))?$`)

func barNumbers(text string) (from, to int, err error) {
	m := barsPattern.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, fmt.Errorf("not bars: %q", text)
	}
	from = atoi(m[1])
	if m[2] == "" {
		return from, from, nil
	}
	return from, atoi(m[2]), nil
}

func atoi(text string) int {
	n, _ := strconv.Atoi(text) // the patterns let only digits in
	return n
}

var countedPattern = regexp.MustCompile(`^A bar is counted (?:in|as) (\d+)\.$`)

func (r *reading) line(part, head, line string, bar picking.Ticks) error {
	if !strings.HasSuffix(line, ".") {
		return fmt.Errorf("no sentence")
	}
	switch part {
	case "About this part":
		r.about = append(r.about, line)
		if m := countedPattern.FindStringSubmatch(line); m != nil {
			r.unit = bar / picking.Ticks(atoi(m[1]))
		}
	case "Chords":
		r.chords[head].line(line)
	case "Bars":
		return r.barLine(head, line)
	}
	return nil
}

var (
	mutedPattern = regexp.MustCompile(`^String (\d+) muted\.$`)
	openPattern  = regexp.MustCompile(`^String (\d+) open(: start here)?\.$`)
	fretPattern  = regexp.MustCompile(`^String (\d+), fret (\d+)(?:, (index|middle|ring|little) finger)?(: start here)?\.$`)
)

func (c *readChord) line(line string) {
	if m := mutedPattern.FindStringSubmatch(line); m != nil {
		c.frets[atoi(m[1])] = -1
	} else if m := openPattern.FindStringSubmatch(line); m != nil {
		c.set(atoi(m[1]), 0, "", m[2] != "")
	} else if m := fretPattern.FindStringSubmatch(line); m != nil {
		c.set(atoi(m[1]), atoi(m[2]), m[3], m[4] != "")
	} else {
		c.others = append(c.others, line)
	}
}

func (c *readChord) set(on, fret int, finger string, start bool) {
	c.frets[on] = fret
	if finger != "" {
		c.fingers[on] = finger
	}
	if start {
		c.start = on
	}
}

var asPattern = regexp.MustCompile(`^As (bars? [0-9a-z ]+?)(?:, (\d+) times)?\.$`)

// barLine reads a line under the heading of a bar, or of some.
func (r *reading) barLine(head, line string) error {
	from, to, _ := barNumbers(strings.ToLower(head))
	if m := asPattern.FindStringSubmatch(line); m != nil {
		first, last, err := barNumbers(m[1])
		times := max(1, atoi(m[2]))
		if err != nil || last >= from || (last-first+1)*times != to-from+1 {
			return fmt.Errorf("%s cannot be %q: %v", head, line, err)
		}
		for i := range to - from + 1 {
			told := *r.bars[first-1+i%(last-first+1)]
			told.folded = true
			r.bars[from-1+i] = &told
		}
		return nil
	}
	if from != to {
		return fmt.Errorf("%s told as one", head)
	}
	b := r.bars[from-1]
	b.lines++
	if strings.HasPrefix(line, "Chord ") || strings.HasPrefix(line, "No chord") {
		return b.change(line, r.unit)
	}
	return b.count(line, r.unit)
}

var (
	changePattern = regexp.MustCompile(`^(?:Chord (.+?)|No chord)(?:, figure (\d+))?(?:, from (?:beat|count) (\d+)(?:, (and|part \d+ of \d+))?)?\.$`)
	timePattern   = regexp.MustCompile(`^(?:beat|count) (\d+)$`)
	spanPattern   = regexp.MustCompile(`^(?:beat|count)s (\d+) (?:to|and) (\d+)$`)
	partPattern   = regexp.MustCompile(`^part (\d+) of (\d+)$`)
	pickPattern   = regexp.MustCompile(`^string (\d+), (?:open|fret (\d+)), (down|up|any stroke)((?:, (?:own stroke|turnaround|inside crossing|return crossing))*)$`)
)

func (b *readBar) change(line string, unit picking.Ticks) error {
	m := changePattern.FindStringSubmatch(line)
	if m == nil {
		return fmt.Errorf("no chord")
	}
	c := readChange{Label: m[1], Figure: atoi(m[2])}
	if m[3] != "" {
		c.At = picking.Ticks(atoi(m[3])-1) * unit
		off, err := offset(m[4], unit)
		if err != nil {
			return err
		}
		c.At += off
	}
	b.chords = append(b.chords, c)
	return nil
}

// offset reads how far into a count a part of it begins.
func offset(text string, unit picking.Ticks) (picking.Ticks, error) {
	if text == "" {
		return 0, nil
	}
	if text == "and" {
		return unit / 2, nil
	}
	m := partPattern.FindStringSubmatch(text)
	if m == nil || int(unit)*(atoi(m[1])-1)%atoi(m[2]) != 0 {
		return 0, fmt.Errorf("not a part of a count: %q", text)
	}
	return picking.Ticks(int(unit) * (atoi(m[1]) - 1) / atoi(m[2])), nil
}

// count reads what begins in a count, or that nothing does in several.
func (b *readBar) count(line string, unit picking.Ticks) error {
	at := picking.Ticks(-1)
	for _, sentence := range strings.Split(strings.TrimSuffix(line, "."), ". ") {
		when, what, _ := strings.Cut(strings.ToLower(sentence), ": ")
		var times []picking.Ticks
		if m := timePattern.FindStringSubmatch(when); m != nil {
			at = picking.Ticks(atoi(m[1])-1) * unit
			times = []picking.Ticks{at}
		} else if m := spanPattern.FindStringSubmatch(when); m != nil {
			for k := atoi(m[1]); k <= atoi(m[2]); k++ {
				times = append(times, picking.Ticks(k-1)*unit)
			}
		} else {
			off, err := offset(when, unit)
			if err != nil || at < 0 {
				return fmt.Errorf("%q: no time: %v", sentence, err)
			}
			times = []picking.Ticks{at + off}
		}
		if err := b.event(times, what); err != nil {
			return err
		}
	}
	return nil
}

func (b *readBar) event(times []picking.Ticks, what string) error {
	if what == "hold" || what == "rest" {
		for _, t := range times {
			b.states = append(b.states, readState{t, what == "rest"})
		}
		return nil
	}
	m := pickPattern.FindStringSubmatch(what)
	if m == nil || len(times) != 1 {
		return fmt.Errorf("%q is no pick", what)
	}
	b.picks = append(b.picks, readPick{times[0], atoi(m[1]), atoi(m[2]), m[3], strings.TrimPrefix(m[4], ", ")})
	return nil
}
