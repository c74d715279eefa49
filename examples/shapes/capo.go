package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A capoAnswer lists the frets for the capo.
type capoAnswer struct {
	heading
	Chords []string `json:"chords"`
	Aim    string   `json:"aim"`
	Loop   bool     `json:"loop"`
	More   bool     `json:"more"`
	Capos  []capo   `json:"capos"`
}

type capo struct {
	Capo     int      `json:"capo"`
	Cost     int      `json:"cost"`
	Hand     []string `json:"hand"`
	Shapes   []held   `json:"shapes"`
	Sounding []string `json:"sounding"`
}

func (s *setting) findCapos(r *request, stdin io.Reader) (answer, error) {
	it, err := s.readSong("capo", r.capo, stdin)
	if err != nil {
		return nil, err
	}
	for _, step := range it.steps {
		if step.Shape != (voicing.Shape{}) {
			return nil, it.refuse(step.symbol, "a shape sounds this chord behind one capo only", "leave out ="+step.Shape.String())
		}
	}
	capos, err := changes.Capos(s.instrument, it.chords(), s.options())
	if err != nil {
		return nil, s.relocate(it, err)
	}
	a := capoAnswer{heading: s.heading(), Chords: []string{}, Aim: s.aim.String(), Loop: s.loop,
		More: len(capos) > s.count, Capos: []capo{}}
	for _, step := range it.steps {
		if symbol := step.Chord.String(); !step.Chord.Silent() && !slices.Contains(a.Chords, symbol) {
			a.Chords = append(a.Chords, symbol)
		}
	}
	for _, c := range capos[:min(s.count, len(capos))] {
		a.Capos = append(a.Capos, s.capoOf(c))
	}
	return a, nil
}

func (s *setting) capoOf(c changes.Capo) capo {
	it := capo{Capo: int(c.Fret), Cost: points(c.Cost), Shapes: []held{}, Sounding: []string{}}
	var seen []voicing.Voicing
	for i, grip := range c.Path.Grips {
		if grip == (changes.Grip{}) || slices.Contains(seen, grip.Voicing) {
			continue
		}
		seen = append(seen, grip.Voicing)
		it.Shapes = append(it.Shapes, s.hold(grip.Voicing, grip.Fingering))
		it.Sounding = append(it.Sounding, c.Sounding[i].String())
	}
	it.Hand = asks(it.Shapes, c.Path)
	return it
}

// asks says what a way of playing asks of the hand.
func asks(shapes []held, path changes.Path) []string {
	var barres, hard []string
	for _, h := range shapes {
		if len(h.box.Barres()) > 0 {
			barres = append(barres, h.Chord)
		}
		if h.Hold != "easy" {
			hard = append(hard, h.Chord+" is "+h.Hold)
		}
	}
	words := []string{"no barre"}
	if barres != nil {
		words = []string{"a barre for " + strings.Join(barres, ", ")}
	}
	if words = append(words, hard...); hard == nil {
		words = append(words, "all shapes are easy")
	}
	if c, any := hardest(path); any {
		words = append(words, fmt.Sprintf("the hardest change is from %s to %s: %s",
			path.Grips[c.From].Voicing.Chord(), path.Grips[c.To].Voicing.Chord(), onTheWay(motionsOf(c))))
	}
	return words
}

// hardest returns of the changes that lead to another grip the one with the most
// to do on the way, the first of several.
func hardest(path changes.Path) (worst changes.Change, any bool) {
	for _, c := range path.Changes {
		if path.Grips[c.From] != path.Grips[c.To] && (!any || c.Cost.Total() > worst.Cost.Total()) {
			worst, any = c, true
		}
	}
	return worst, any
}

// write gives each capo as a table: below each chord that sounds the one that
// is played, and its shape.
func (a capoAnswer) write(s *sheet) {
	s.hang("the song sounds ", s.spell(strings.Join(a.Chords, " ")))
	s.line("")
	s.heading(a.heading)
	s.way(a.Loop, a.Aim)
	for i, c := range a.Capos {
		s.line("")
		at := "no capo"
		if c.Capo > 0 {
			at = fmt.Sprintf("capo at fret %d", c.Capo)
		}
		s.line("%-3d%s; cost %d", i+1, at, c.Cost)
		s.capo(c)
		s.entry(3, "hand", s.spell(strings.Join(c.Hand, "; ")))
	}
	s.line("")
	s.entry(0, "sounds", "the chords of the song; play: what their shapes are called behind the capo")
	s.entry(0, "shape", "from the thickest string to string 1: the fret from the capo, 0 open, x muted")
	s.entry(0, "cost", "what the capos are ranked by: what the hand feels of the shapes and changes, and the capo itself")
	if a.More {
		s.entry(0, "more", fmt.Sprintf("these are the best %d; -count asks for more", len(a.Capos)))
	}
}

// capo writes the table, in pieces that the sheet is wide enough for.
func (s *sheet) capo(c capo) {
	rows := [3]string{}
	flush := func() {
		for i, label := range [...]string{"sounds", "play", "shape"} {
			s.line("   %-8s%s", label, rows[i])
			rows[i] = ""
		}
	}
	for i, h := range c.Shapes {
		cells := [...]string{s.spell(c.Sounding[i]), s.spell(h.Chord), h.Shape}
		wide := 0
		for _, cell := range cells {
			wide = max(wide, len(cell)+2)
		}
		if rows[0] != "" && 11+len(rows[0])+wide > width {
			flush()
		}
		for row := range rows {
			rows[row] += fmt.Sprintf("%-*s", wide, cells[row])
		}
	}
	flush()
}
