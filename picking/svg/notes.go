package svg

import (
	"strconv"
	"strings"

	"weft.example/picking"
)

// A note is something said of chords, in the bars where it holds. It is told at
// the end, and its number stands where it happens.
type note struct {
	places []place
	text   string
}

// A place is a chord and the bars where something is to be said of it.
type place struct {
	chord string
	bars  []int
}

// String tells the note.
func (n note) String() string {
	heads := make([]string, len(n.places))
	for i, p := range n.places {
		heads[i] = p.chord + ", " + barsText(p.bars)
	}
	return strings.Join(heads, "; ") + ": " + n.text
}

func (n *note) add(chord string, bar int) {
	for i := range n.places {
		if p := &n.places[i]; p.chord == chord {
			if p.bars[len(p.bars)-1] != bar {
				p.bars = append(p.bars, bar)
			}
			return
		}
	}
	n.places = append(n.places, place{chord, []int{bar}})
}

// A lostStep is a step of a figure whose direction a chord loses.
type lostStep struct {
	chord  string
	figure int
	loss   picking.Loss
}

// A notebook collects the notes, numbered from 1 as they first happen.
type notebook struct {
	list    []note
	remarks map[string]int
	losses  map[lostStep]int
}

// readNotes collects what is to be said of the chords.
func (s *sheet) readNotes() {
	s.notes = notebook{remarks: map[string]int{}, losses: map[lostStep]int{}}
	for _, bar := range s.Bars {
		for _, chord := range bar.Chords {
			name := chord.Chord.ChartIn(s.spelling)
			for _, text := range chord.Remarks {
				s.notes.at(s.notes.remark(s.respell(text)), name, bar.Number)
			}
			for _, loss := range chord.Fit.Losses {
				s.notes.at(s.notes.loss(lostStep{name, chord.Figure, loss}, s.lossText), name, bar.Number)
			}
		}
	}
}

func (b *notebook) at(number int, chord string, bar int) { b.list[number-1].add(chord, bar) }

// remark returns the number of a remark.
func (b *notebook) remark(text string) int {
	number, known := b.remarks[text]
	if !known {
		b.list = append(b.list, note{text: text})
		number = len(b.list)
		b.remarks[text] = number
	}
	return number
}

// loss returns the number of a lost step, which text words.
func (b *notebook) loss(step lostStep, text func(lostStep) string) int {
	number, known := b.losses[step]
	if !known {
		b.list = append(b.list, note{text: text(step)})
		number = len(b.list)
		b.losses[step] = number
	}
	return number
}

// lossText says what the figure wants and what the chord makes of it.
func (s *sheet) lossText(step lostStep) string {
	name, round := "the figure", ""
	if s.figures {
		name = figureName(step.figure)
	}
	if step.loss.To <= step.loss.From {
		round = " round"
	}
	return name + " " + s.way(step.loss.Want) + " from its note " + strconv.Itoa(step.loss.From) + round + " to note " +
		strconv.Itoa(step.loss.To) + ", but here it " + s.way(step.loss.Got)
}

func figureName(figure int) string { return "figure " + strconv.Itoa(figure) }

func (s *sheet) way(d picking.Direction) string {
	switch d {
	case picking.Up:
		return "goes toward string 1"
	case picking.Down:
		return "goes toward " + stringNumber(s.strings())
	}
	return "stays on its string"
}

// remarksOnAll says what holds for the whole part.
func (s *sheet) remarksOnAll() (texts []string) {
	for _, text := range s.Remarks {
		texts = append(texts, capital(s.respell(text))+".")
	}
	if own := s.ownStrokes(); own != "" {
		texts = append(texts, own)
	}
	if len(s.Bars) > 0 {
		texts = append(texts, s.travel())
	}
	if s.scale.points < s.asked {
		texts = append(texts, s.shrunk())
	}
	return texts
}

// shrunk says that the sheet is smaller than asked for.
func (s *sheet) shrunk() string {
	return "Printed at " + strconv.Itoa(s.scale.points) + " points: at " + strconv.Itoa(s.asked) +
		" a line of this music has no room on the page."
}

// ownStrokes lists the strokes that the teacher set, figure by figure.
func (s *sheet) ownStrokes() string {
	type own struct{ figure, event int }
	seen, texts := map[own]bool{}, []string{}
	for _, bar := range s.Bars {
		for _, pick := range bar.Picks {
			o := own{figureAt(bar, pick.At), pick.Event}
			if pick.Why == picking.OwnStroke && !seen[o] {
				seen[o] = true
				texts = append(texts, s.ownStroke(pick, o.figure))
			}
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return "The teacher's own strokes are kept: " + strings.Join(texts, ", ") + "."
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
	text := "The pick moves " + strconv.Itoa(s.Travel) + verb(s.Travel, " string spacing", " string spacings") + " (" +
		strconv.FormatFloat(float64(s.TravelLength()), 'f', 1, 64) + " mm) between strokes"
	if s.Loop {
		text += ", round the loop too"
	}
	return text + "."
}

// ending makes the blocks of the notes and of what holds for the whole part.
func (s *sheet) ending() (blocks []block) {
	texts := s.remarksOnAll()
	if len(texts)+len(s.notes.list) == 0 {
		return nil
	}
	blocks = append(blocks, s.subtitle("Notes"))
	for i, n := range s.notes.list {
		blocks = append(blocks, s.numbered(i+1, n.String()+".")...)
	}
	for _, text := range texts {
		blocks = append(blocks, s.paragraph("remark", text, 0)...)
	}
	return blocks
}

// numbered makes the blocks of a note with its number in a frame.
func (s *sheet) numbered(number int, text string) []block {
	c := &s.scale
	indent := max(s.signWidth(), c.frameWidth([]int{number})+c.small.size/2)
	return signed(s.paragraph("remark", text, indent), c.body.size*20/100, func(p *pen, y int) {
		p.frame([]int{number}, margin, y+c.body.size-c.body.middle(), c)
	})
}
