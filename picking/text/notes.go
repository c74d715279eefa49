package text

import (
	"strconv"
	"strings"

	"weft.example/picking"
)

// A remark is something said of a chord, in the bars where it holds.
type remark struct {
	chord, text string
	bars        []int
}

// remarks collects what is said, once for each chord.
type remarks struct {
	list  []remark
	known map[[2]string]int
}

func (r *remarks) add(chord, text string, bar int) {
	i, known := r.known[[2]string{chord, text}]
	if !known {
		i = len(r.list)
		r.list = append(r.list, remark{chord: chord, text: text})
		if r.known == nil {
			r.known = map[[2]string]int{}
		}
		r.known[[2]string{chord, text}] = i
	}
	if said := &r.list[i]; len(said.bars) == 0 || said.bars[len(said.bars)-1] != bar {
		said.bars = append(said.bars, bar)
	}
}

// notes writes in words what was lost, what is to be said of the chords, which
// strokes are the teacher's own, and how far the pick travels.
func (s *sheet) notes() {
	var said remarks
	var losses lostSteps
	for _, bar := range s.Bars {
		for _, chord := range bar.Chords {
			name := chord.Chord.StringIn(s.spelling)
			for _, loss := range chord.Fit.Losses {
				losses.add(name, chord.Figure, loss, bar.Number)
			}
			for _, text := range chord.Remarks {
				said.add(name, s.respell(text), bar.Number)
			}
		}
	}
	s.newLine()
	s.losses(losses)
	s.remarksByText(said.list)
	for _, text := range s.Remarks {
		s.entry("remark", s.respell(text))
	}
	if own := s.ownStrokes(); own != "" {
		s.entry("own", own)
	}
	s.entry("travel", s.travel())
}

// remarksByText says what is true of several chords once, all of them named.
func (s *sheet) remarksByText(remarks []remark) {
	var texts []string
	heads := map[string]string{}
	for _, r := range remarks {
		head := r.chord + ", " + bars(r.bars)
		if before, known := heads[r.text]; known {
			head = before + "; " + head
		} else {
			texts = append(texts, r.text)
		}
		heads[r.text] = head
	}
	for _, text := range texts {
		s.entry("remark", heads[text]+": "+text)
	}
}

func figureName(figure int) string { return "figure " + strconv.Itoa(figure) }

func (s *sheet) way(d picking.Direction) string {
	switch d {
	case picking.Up:
		return "goes toward string 1"
	case picking.Down:
		return "goes toward string " + strconv.Itoa(s.strings())
	}
	return "stays on its string"
}

// ownStrokes lists the strokes that the teacher set, figure by figure.
func (s *sheet) ownStrokes() string {
	type own struct{ figure, event int }
	seen, list := map[own]bool{}, []string{}
	for _, bar := range s.Bars {
		for _, pick := range bar.Picks {
			o := own{figureAt(bar, pick.At), pick.Event}
			if pick.Why == picking.OwnStroke && !seen[o] {
				seen[o] = true
				list = append(list, s.ownStroke(pick, o.figure))
			}
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "the teacher's own strokes are kept: " + strings.Join(list, ", ")
}

func (s *sheet) ownStroke(pick picking.Pick, figure int) string {
	text := "note " + strconv.Itoa(pick.Event)
	if s.figures {
		text += " of " + figureName(figure)
	}
	return text + " " + pick.Stroke.String()
}

func figureAt(bar picking.Bar, at picking.Ticks) int {
	for _, chord := range bar.Chords {
		if at < chord.At+chord.Length {
			return chord.Figure
		}
	}
	return 0
}

// travel says how far the pick goes between its strokes.
func (s *sheet) travel() string {
	text := "the pick moves " + strconv.Itoa(s.Travel) + verb(s.Travel, " string spacing", " string spacings") + " (" +
		strconv.FormatFloat(float64(s.TravelLength()), 'f', 1, 64) + " mm) between strokes"
	if s.Loop {
		text += ", round the loop too"
	}
	return text
}
