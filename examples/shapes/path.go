package main

import (
	"fmt"
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A pathAnswer is the way through a song.
type pathAnswer struct {
	heading
	Chart   string   `json:"chart"`
	Aim     string   `json:"aim"`
	Loop    bool     `json:"loop"`
	Figure  string   `json:"figure"`
	Cost    int      `json:"cost"`
	Shapes  []held   `json:"shapes"`
	Order   []int    `json:"order"`
	Changes []change `json:"changes"`
	Hardest int      `json:"hardest"`

	spelled string // the chart in the sheet's spelling
}

type change struct {
	From    int      `json:"from"`
	To      int      `json:"to"`
	Bar     int      `json:"bar"`
	Times   int      `json:"times"`
	Cost    int      `json:"changeCost"`
	Whole   int      `json:"withShapes"`
	First   int      `json:"first"`
	Stopped string   `json:"stopped"`
	Fingers []motion `json:"fingers"`
	Remarks []string `json:"remarks"`
}

type motion struct {
	Finger string `json:"finger"`
	Act    string `json:"act"`
	Tenths int    `json:"tenths"`
	Spare  int    `json:"spare"`
	Says   string `json:"says"`
}

func (s *setting) findPath(r *request, stdin io.Reader) (answer, error) {
	it, err := s.readSong("path", r.path, stdin)
	if err != nil {
		return nil, err
	}
	figures, err := s.readFigures(r)
	if err != nil {
		return nil, err
	}
	steps := make([]changes.Step, len(it.steps))
	for i, step := range it.steps {
		steps[i] = changes.Step{Chord: step.Chord, Shape: step.Shape}
	}
	path, err := changes.Easiest(s.instrument, steps, s.options())
	if err != nil {
		return nil, s.relocate(it, err)
	}
	if figures != nil {
		if path, err = s.plucked(it, figures, steps, path); err != nil {
			return nil, err
		}
	}
	return s.pathAnswer(it, figures, path)
}

// plucked fits the figures to the shapes of a path and returns it with what is
// plucked first. The fit depends on the shapes chosen, and what is plucked does
// not sway the choice: so the same path is found again, and now it reports. A
// figure that is cut by the next chord begins alike, so that it need not be known
// how long a chord lasts.
func (s *setting) plucked(it *song, figures picking.Figures, steps []changes.Step, path changes.Path) (changes.Path, error) {
	for i, grip := range path.Grips {
		n := max(it.steps[i].Figure, 1)
		if n > len(figures) {
			return path, it.refuse(it.steps[i].symbol, fmt.Sprintf("no figure %d; there are %d", n, len(figures)), "put more figures after a semicolon in -figure")
		}
		if grip != (changes.Grip{}) {
			steps[i].Plucked = figures[n-1].Fit(grip.Voicing, picking.Contour).Strings
		}
	}
	return changes.Easiest(s.instrument, steps, s.options())
}

// readFigures reads the figures, none where the flag is not given, and refuses
// those that pluck strings which the instrument lacks.
func (s *setting) readFigures(r *request) (picking.Figures, error) {
	if !r.given["figure"] {
		return nil, nil
	}
	figures, err := picking.ParseFigures(r.figure)
	if err != nil {
		return nil, err
	}
	last := s.instrument.Tuning.Strings()
	for _, f := range figures {
		if thickest := thickest(f); thickest > last {
			return nil, missingString(f.String(), thickest, last)
		}
	}
	return figures, nil
}

func thickest(f picking.Figure) fretboard.StringNumber {
	most := f.Root()
	for _, bar := range f.Bars() {
		for _, slot := range bar {
			most = max(most, slot.String)
		}
	}
	return most
}

// missingString locates a string in a figure as it prints.
func missingString(figure string, s, last fretboard.StringNumber) error {
	place := fretboard.Place{Notation: "figure", Source: figure, Length: len(figure),
		Reason: fmt.Sprintf("no string %d; the instrument has %d", s, last), Mend: fmt.Sprintf("use strings 1 to %d", last)}
	for _, f := range fretboard.Fields(figure, " :") {
		if f.Text == fmt.Sprint(s) || f.Text == fmt.Sprintf("%dd", s) || f.Text == fmt.Sprintf("%du", s) {
			place.Offset, place.Length = f.At, len(f.Text)
			break
		}
	}
	return &fretboard.ImpossibleError{Place: place}
}

func (s *setting) pathAnswer(it *song, figures picking.Figures, path changes.Path) (answer, error) {
	shapes := make([]voicing.Shape, len(path.Grips))
	for i, grip := range path.Grips {
		shapes[i] = grip.Voicing.Shape()
	}
	chart, err := it.withShapes(shapes)
	if err != nil { // all is well-formed, so that it can only be too long
		return nil, it.refuse(0, fmt.Sprintf("with its shapes the chart has more than %d bytes", fretboard.MaxText), "cut the song in parts")
	}
	a := pathAnswer{heading: s.heading(), Chart: chart.String(), Aim: s.aim.String(), Loop: s.loop, Figure: figures.String(),
		Cost: points(path.Total), Shapes: []held{}, Order: []int{}, Changes: []change{}, spelled: chart.StringIn(s.spelling)}
	numbers := map[changes.Grip]int{{}: 0}
	for _, grip := range path.Grips {
		if _, known := numbers[grip]; !known {
			a.Shapes = append(a.Shapes, s.hold(grip.Voicing, grip.Fingering))
			numbers[grip] = len(a.Shapes)
		}
		a.Order = append(a.Order, numbers[grip])
	}
	a.addChanges(it, path)
	return a, nil
}

// addChanges adds the changes that differ. Changes between the same grips, and
// before the same figure, are the same; where the grip stays there is none.
func (a *pathAnswer) addChanges(it *song, path changes.Path) {
	type same struct{ from, to, figure int }
	known := map[same]int{}
	most := -1
	for _, c := range path.Changes {
		key := same{a.Order[c.From], a.Order[c.To], it.steps[c.To].Figure}
		if key.from == key.to {
			continue
		}
		if known[key] == 0 {
			a.Changes = append(a.Changes, changeOf(c, key.from, key.to, it.steps[c.To].bar))
			known[key] = len(a.Changes)
		}
		a.Changes[known[key]-1].Times++
		if cost := c.Cost.Total(); cost > most {
			most, a.Hardest = cost, known[key]
		}
	}
}

func changeOf(c changes.Change, from, to, bar int) change {
	it := change{From: from, To: to, Bar: bar, Cost: c.Cost.Total(), Whole: points(c.Effort), First: int(c.First),
		Fingers: motionsOf(c), Remarks: append([]string{}, c.Remarks()...)}
	if c.Stopped != 0 {
		it.Stopped = c.Stopped.String()
	}
	return it
}

func motionsOf(c changes.Change) []motion {
	all := []motion{}
	for _, m := range c.Fingers {
		tenths := int(m.Distance*10 + 0.5)
		says := m.String()
		if m.Act == changes.SetsDown && tenths > 0 {
			says += fmt.Sprintf("; the hand shifts %.1f mm", m.Distance)
		}
		all = append(all, motion{m.Finger.String(), m.Act.String(), tenths, m.Spare, says})
	}
	return all
}
