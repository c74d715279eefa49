package main

import (
	"fmt"
	"strings"

	"weft.example/voicing/changes"
)

// write gives the chart first, ready to be pasted, then the shapes and what each
// change asks of the fingers.
func (a pathAnswer) write(s *sheet) {
	for _, line := range chartLines(a.spelled) {
		s.line("%s", line)
	}
	s.line("")
	s.heading(a.heading)
	s.way(a.Loop, a.Aim)
	if a.Figure != "" {
		s.entry(0, "figure", a.Figure)
	}
	s.entry(0, "hardest", a.hardest(s))
	s.line("")
	s.shapes(a.Shapes)
	for i, c := range a.Changes {
		s.line("")
		s.change(i+1, c, a)
	}
	s.line("")
	s.legend()
	if len(a.Changes) > 0 {
		s.entry(0, "change", "what the fingers do on the way, in points: the more, the further they go and the more of them are set down; 0 where all stay. The hardest has the most; the shapes have efforts of their own")
	}
}

func (a pathAnswer) hardest(s *sheet) string {
	if a.Hardest == 0 {
		return "there is no change; the hand stays"
	}
	c := a.Changes[a.Hardest-1]
	text := fmt.Sprintf("%s, in bar %d; change %d: %s", a.title(s, c), c.Bar, c.Cost, onTheWay(c.Fingers))
	if to := a.Shapes[c.To-1]; to.Hold != "easy" {
		text += fmt.Sprintf("; %s is %s to hold", s.spell(to.Chord), to.Hold)
	}
	return text
}

// onTheWay says which fingers go how far, without those that stay or lift.
func onTheWay(fingers []motion) string {
	var words, down []string
	shift, rest := 0, "no finger moves"
	for _, m := range fingers {
		switch m.Act {
		case changes.Moves.String(), changes.Slides.String():
			words = append(words, fmt.Sprintf("%s %s %s", m.Finger, m.Act, millimetres(m.Tenths)))
		case changes.SetsDown.String():
			down, shift = append(down, m.Finger), m.Tenths
		case changes.Lifts.String():
			rest = "fingers only lift"
		}
	}
	if len(down) == 1 {
		words = append(words, down[0]+" is set down")
	} else if down != nil {
		words = append(words, together(down)+" are set down")
	}
	if words == nil {
		return rest
	}
	if shift > 0 {
		words = append(words, "the hand shifts "+millimetres(shift))
	}
	return strings.Join(words, ", ")
}

func millimetres(tenths int) string { return fmt.Sprintf("%d.%d mm", tenths/10, tenths%10) }

// title names a change: from Am x02210 to F xx3211.
func (a pathAnswer) title(s *sheet, c change) string {
	return s.spell("from " + a.grip(c.From) + " to " + a.grip(c.To))
}

// grip names a shape by its number, with the fingers where others hold it too.
func (a pathAnswer) grip(number int) string {
	it := a.Shapes[number-1]
	text := it.Chord + " " + it.Shape
	for i, other := range a.Shapes {
		if i != number-1 && other.Chord == it.Chord && other.Shape == it.Shape {
			return text + " (" + it.Fingers + ")"
		}
	}
	return text
}

// change tells what each finger does.
func (s *sheet) change(number int, c change, a pathAnswer) {
	times := ""
	if c.Times > 1 {
		times = fmt.Sprintf(", %d times", c.Times)
	}
	hardest := ""
	if number == a.Hardest {
		hardest = ", the hardest"
	}
	s.hang("", fmt.Sprintf("%s: bar %d%s; change %d%s", a.title(s, c), c.Bar, times, c.Cost, hardest))
	for _, m := range c.Fingers {
		s.hang(fmt.Sprintf("   %-8s", m.Finger), strings.TrimPrefix(m.Says, m.Finger+" "))
	}
	if len(c.Fingers) == 0 {
		s.line("   no finger moves")
	}
	for _, remark := range c.Remarks {
		s.hang("   ", remark)
	}
}

// chartLines breaks a chart at bar lines; the end of a line is one too.
func chartLines(chart string) (lines []string) {
	line, bar := "", ""
	end := func() {
		if line != "" && len(line)+1+len(bar) > width {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + bar)
		bar = ""
	}
	for _, mark := range strings.Fields(chart) {
		if mark == "|:" && bar != "" {
			end()
		}
		bar = strings.TrimSpace(bar + " " + mark)
		if mark == "|" || mark == ":|" {
			end()
		}
	}
	end()
	return append(lines, line)
}

// way says how the song is played and what was looked for.
func (s *sheet) way(loop bool, aim string) {
	s.entry(0, "form", map[bool]string{true: "a loop: the last chord leads back to the first", false: "played once"}[loop])
	s.entry(0, "aim", map[string]string{"total": "all shapes and changes together as easy as can be",
		"worst": "the worst of all changes as easy as can be, its shapes counted in"}[aim])
}
