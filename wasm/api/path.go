//go:build !sheets && !drawings

package api

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/voicing/changes"
	"weft.example/wasm/internal/jsontext"
)

// A tour is a request for a way through a song.
type tour struct {
	chart      *chart
	spelling   fretboard.Spelling
	instrument fretboard.Instrument
	options    changes.Options
}

// readTour reads what path and capo have in common.
func readTour(f *fields) (t tour) {
	readSpelling(f, &t.spelling)
	var p picking.Progression
	readChart(f, &p, t.spelling)
	t.instrument = readInstrument(f)
	t.options.Voicing = readLimits(f, t.instrument)
	parsed(f, "aim", &t.options.Aim, changes.ParseAim)
	t.options.Loop = !f.truth("once")
	if f.state.err == nil {
		t.chart = newChart(p, t.spelling)
		if err := t.chart.play(); err != nil {
			f.fail(faultAt("chords", err))
		}
	}
	return t
}

// findPath finds the easiest way through the chords of a song.
func findPath(_ *Library, f *fields) (reply, error) {
	t := readTour(f)
	t.options.Shapes = readShapeCount(f, "tried", t.instrument, mostTried)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	path, err := changes.Easiest(t.instrument, t.chart.steps, t.options)
	if err != nil {
		return reply{}, t.relocate(err)
	}
	shaped, err := t.chart.withShapes(path)
	if err != nil {
		return reply{}, t.relocate(err)
	}
	return reply{members: func(w *jsontext.Writer) {
		speaker{w, t.spelling}.path(path, shaped)
	}}, nil
}

// relocate moves an error of package changes, which is located in the steps
// with bar lines between them, to the chart.
func (t tour) relocate(err error) error {
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok {
		return err
	}
	if located.Notation != "chords" {
		return faultAt(fieldOf(err), err)
	}
	return faultAt("chords", t.chart.relocated(located.Place))
}

func (s speaker) path(p changes.Path, chart picking.Progression) {
	s.Text("chords", chart.StringIn(s.spelling))
	s.List("steps", func() {
		for _, g := range p.Grips {
			if g == (changes.Grip{}) {
				s.Null("")
			} else {
				s.held("", grip{g.Voicing, g.Fingering})
			}
		}
	})
	s.List("changes", func() {
		for _, c := range p.Changes {
			s.Object("", func() { s.change(c) })
		}
	})
	s.Int("total", p.Total)
	if p.Worst < 0 {
		s.Null("worst")
	} else {
		s.Int("worst", p.Worst)
	}
	texts(s.Writer, "remarks", p.Remarks())
}

func (s speaker) change(c changes.Change) {
	s.Int("from", c.From)
	s.Int("to", c.To)
	s.List("fingers", func() {
		for _, m := range c.Fingers {
			s.Text("", m.String())
		}
	})
	s.Int("cost", c.Cost.Total())
	s.Int("effort", c.Effort)
	texts(s.Writer, "remarks", c.Remarks())
}

// findCapos finds the frets for the capo.
func findCapos(_ *Library, f *fields) (reply, error) {
	t := readTour(f)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	for i, step := range t.chart.steps {
		if step.Shape != (voicing.Shape{}) {
			return reply{}, faultAt("chords", t.chart.refuse(i, "a shape sounds this chord behind one capo only", "leave out the shape"))
		}
	}
	capos, err := changes.Capos(t.instrument, t.chart.chords(), t.options)
	if err != nil {
		return reply{}, t.relocate(err)
	}
	return reply{members: func(w *jsontext.Writer) {
		w.List("capos", func() {
			for _, c := range capos {
				w.Object("", func() { t.capo(speaker{w, t.spelling}, c) })
			}
		})
	}}, nil
}

func (t tour) capo(s speaker, c changes.Capo) {
	moved := t.chart.named(c.Chords)
	shaped, err := moved.withShapes(c.Path)
	if err != nil { // too long with its shapes: the names alone
		shaped, _ = moved.withShapes(changes.Path{})
	}
	s.Int("fret", int(c.Fret))
	s.Int("cost", c.Cost)
	s.Text("chords", shaped.StringIn(t.spelling))
	s.chordNames("played", c.Chords)
	s.chordNames("sounding", c.Sounding)
	s.Object("path", func() { s.path(c.Path, shaped) })
}

func (s speaker) chordNames(name string, chords []voicing.Chord) {
	s.List(name, func() {
		for _, c := range chords {
			s.chordName("", c)
		}
	})
}
