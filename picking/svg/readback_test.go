package svg_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A plucked string as the tests' own reader finds it on the sheet.
type plucked struct {
	String fretboard.StringNumber
	Fret   fretboard.Fret
	Stroke picking.Stroke
}

// readBack compares a sheet's pages with the passage and says what differs.
func readBack(p picking.Passage, pages []drawing) string {
	found := map[int][]plucked{}
	var order []int
	for _, d := range pages {
		for system := range countSystems(d) {
			s := systemOf(d, system)
			if fault := s.read(p, found, &order); fault != "" {
				return fmt.Sprintf("system %d: %s", system, fault)
			}
			if fault := s.readLane(p); fault != "" {
				return fmt.Sprintf("lane of system %d: %s", system, fault)
			}
		}
	}
	for _, bar := range p.Bars {
		var want []plucked
		for _, pick := range bar.Picks {
			want = append(want, plucked{pick.String, pick.Fret, pick.Stroke})
		}
		if !slices.Equal(found[bar.Number], want) {
			return fmt.Sprintf("bar %d reads %v, want %v", bar.Number, found[bar.Number], want)
		}
		delete(found, bar.Number)
	}
	if len(found) > 0 {
		return fmt.Sprintf("%d bars that the passage lacks", len(found))
	}
	slices.Sort(order)
	if len(slices.Compact(slices.Clone(order))) != len(order) || len(order) != len(p.Bars) {
		return fmt.Sprintf("the sheet begins the bars %v", order)
	}
	return ""
}

func countSystems(d drawing) int {
	n := 0
	for _, g := range d.groups {
		if g.class == "system" {
			n++
		}
	}
	return n
}

// A system is what stands in one line of music.
type system struct {
	elements []element
}

func systemOf(d drawing, n int) (s system) {
	for _, e := range d.elements {
		if e.system == n {
			s.elements = append(s.elements, e)
		}
	}
	return s
}

// lines returns the heights of the strings of a class, from string 1.
func (s system) lines(class string) (heights []int) {
	for _, e := range s.elements {
		if e.class == class {
			heights = append(heights, e.points()[0][1])
		}
	}
	return heights
}

// read adds what is plucked in the system to its bars.
func (s system) read(p picking.Passage, found map[int][]plucked, order *[]int) string {
	strings := s.lines("string")
	if len(strings) != int(p.Instrument.Tuning.Strings()) || !slices.IsSorted(strings) {
		return fmt.Sprintf("the lines of the tab lie at %v", strings)
	}
	for _, bar := range s.bars() {
		numbers, continued := barNumbers(bar)
		picks, fault := picksOf(bar, strings)
		if fault != "" {
			return fault
		}
		for _, n := range numbers {
			found[n] = append(found[n], picks...)
			if !continued {
				*order = append(*order, n)
			}
		}
	}
	return ""
}

// bars groups the elements of the system by bar.
func (s system) bars() (bars [][]element) {
	last := -1
	for _, e := range s.elements {
		if e.bar < 0 {
			continue
		}
		if e.bar != last {
			bars, last = append(bars, nil), e.bar
		}
		bars[len(bars)-1] = append(bars[len(bars)-1], e)
	}
	return bars
}

func barNumbers(bar []element) (numbers []int, continued bool) {
	for _, e := range bar {
		if e.class != "bar-number" {
			continue
		}
		for _, text := range strings.Split(strings.Trim(e.text, "()"), ", ") {
			n, _ := strconv.Atoi(text)
			numbers = append(numbers, n)
		}
		return numbers, strings.HasPrefix(e.text, "(")
	}
	return nil, false
}

// picksOf reads the figures of a bar and the signs above them.
func picksOf(bar []element, lines []int) (picks []plucked, fault string) {
	x, stroke := 0, picking.Free
	for _, e := range bar {
		switch e.class {
		case "down":
			x, stroke = middleOf(e), picking.DownStroke
		case "up":
			x, stroke = middleOf(e), picking.UpStroke
		case "fret":
			if near := e.number("x") - x; stroke == picking.Free || near < -1 || near > 1 {
				return nil, "a figure without a stroke above it"
			}
			n := lineAt(lines, e.number("y")-e.number("font-size")*36/100)
			fret, err := strconv.Atoi(e.text)
			if n < 0 || err != nil {
				return nil, fmt.Sprintf("the figure %q stands on no line", e.text)
			}
			picks = append(picks, plucked{fretboard.StringNumber(n + 1), fretboard.Fret(fret), stroke})
			stroke = picking.Free
		}
	}
	if stroke != picking.Free {
		return nil, "a stroke without a figure"
	}
	return picks, ""
}

func middleOf(e element) int {
	a := e.area()
	return (a.left + a.right) / 2
}

// lineAt returns which line lies at a height, within a unit.
func lineAt(lines []int, y int) int {
	return slices.IndexFunc(lines, func(l int) bool { return l-y >= -1 && l-y <= 1 })
}

// readLane compares the thread with the tab above it: the same strings in the
// same strokes at the same places, down on the page for a down-stroke, and no
// gap between the end of one piece of thread and the beginning of the next.
func (s system) readLane(p picking.Passage) string {
	lines := s.lines("lane-string")
	turned := p.Instrument.Hand == fretboard.LeftTurned
	if len(lines) > 1 && (lines[0] < lines[1]) != turned {
		return "the floor is above"
	}
	tab, fault := s.tabPicks(p)
	if fault != "" {
		return fault
	}
	var ends [][2]int // where pieces of thread begin and end
	n := 0
	for _, e := range s.elements {
		switch e.class {
		case "travel", "pluck":
			points := e.points()
			ends = append(ends, points[0], points[len(points)-1])
			if down := points[len(points)-1][1] > points[0][1]; e.class == "pluck" && (n >= len(tab) || down != (tab[n].Stroke == picking.DownStroke)) {
				return fmt.Sprintf("pluck %d goes the wrong way", n)
			}
			if e.class == "pluck" {
				if y := (points[0][1] + points[len(points)-1][1]) / 2; lineAt(lines, y) != int(tab[n].String)-1 {
					return fmt.Sprintf("pluck %d is of another string", n)
				}
				n++
			}
		}
	}
	if n != len(tab) {
		return fmt.Sprintf("%d plucks for %d picks", n, len(tab))
	}
	return loose(ends)
}

func (s system) tabPicks(p picking.Passage) (picks []plucked, fault string) {
	lines := s.lines("string")
	for _, bar := range s.bars() {
		more, fault := picksOf(bar, lines)
		if fault != "" {
			return nil, fault
		}
		picks = append(picks, more...)
	}
	return picks, ""
}

// loose reports ends of thread that meet no other, but for the two outermost.
func loose(ends [][2]int) string {
	met := map[[2]int]int{}
	for _, e := range ends {
		met[e]++
	}
	alone := 0
	for _, n := range met {
		if n%2 == 1 {
			alone++
		}
	}
	if alone > 2 {
		return fmt.Sprintf("the thread has %d ends", alone)
	}
	return ""
}
