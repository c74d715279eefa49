package api

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/words"
	"weft.example/voicing"
	"weft.example/wasm/internal/jsontext"
)

// checkText reads one text in the notation that the request names.
func checkText(_ *Library, f *fields) (reply, error) {
	notation, _ := f.text("notation")
	f.need("notation")
	spelling := fretboard.English
	readSpelling(f, &spelling)
	f.need("text")
	var members func(w *jsontext.Writer)
	switch notation {
	case "chord":
		members = checkChord(f, spelling)
	case "chords":
		members = checkChart(f, spelling)
	case "figures":
		members = checkFigures(f)
	case "tuning":
		members = checkTuning(f)
	case "shape":
		members = checkShape(f)
	case "key":
		members = checkKey(f)
	case "meter":
		members = checkMeter(f)
	default:
		f.refuse("notation", "no such notation")
	}
	f.done()
	return reply{members: members}, f.state.err
}

// canonical writes the result of checking a text.
func canonical(text string, more func(w *jsontext.Writer)) func(w *jsontext.Writer) {
	return func(w *jsontext.Writer) {
		w.Text("text", text)
		more(w)
	}
}

// readChord reads a chord symbol in a spelling.
func readChord(f *fields, name string, spelling fretboard.Spelling) (c voicing.Chord) {
	parsed(f, name, &c, func(text string) (voicing.Chord, error) {
		if err := fretboard.CheckText("chord", text); err != nil {
			return c, err
		}
		return voicing.ParseChordIn(text, spelling)
	})
	return c
}

func checkChord(f *fields, spelling fretboard.Spelling) func(w *jsontext.Writer) {
	c := readChord(f, "text", spelling)
	return canonical(c.StringIn(spelling), func(w *jsontext.Writer) { speaker{w, spelling}.chord(c) })
}

func checkChart(f *fields, spelling fretboard.Spelling) func(w *jsontext.Writer) {
	var p picking.Progression
	parsed(f, "text", &p, func(text string) (picking.Progression, error) {
		return picking.ParseProgressionIn(text, spelling)
	})
	return canonical(p.StringIn(spelling), func(w *jsontext.Writer) {
		w.Text("english", p.String())
		w.List("bars", func() {
			for _, bar := range p.Bars() {
				speaker{w, spelling}.chartBar(bar)
			}
		})
	})
}

func (s speaker) chartBar(b picking.ChartBar) {
	s.Object("", func() {
		s.Bool("opens", b.Opens)
		s.Bool("closes", b.Closes)
		s.Bool("again", b.Again)
		s.List("chords", func() {
			for _, c := range b.Chords {
				s.Object("", func() {
					s.names(c.Chord)
					s.Text("shape", c.Shape.String())
					s.Int("figure", c.Figure)
					s.Float("beats", float64(c.Beats)/quartersOfBeat)
				})
			}
		})
	})
}

// quartersOfBeat is how [picking.Beats] count.
const quartersOfBeat = 4

func checkFigures(f *fields) func(w *jsontext.Writer) {
	var figures picking.Figures
	parsed(f, "text", &figures, picking.ParseFigures)
	return canonical(figures.String(), func(w *jsontext.Writer) {
		w.List("figures", func() {
			for _, figure := range figures {
				writeFigure(w, figure)
			}
		})
	})
}

func writeFigure(w *jsontext.Writer, f picking.Figure) {
	value := ""
	if f.Value() != 0 {
		value = f.Value().String()
	}
	w.Object("", func() {
		w.Text("text", f.String())
		w.Text("value", value)
		w.Int("root", int(f.Root()))
		w.List("bars", func() {
			for _, bar := range f.Bars() {
				w.List("", func() {
					for _, slot := range bar {
						w.Object("", func() { writeSlot(w, slot) })
					}
				})
			}
		})
		texts(w, "words", words.Figure(f))
	})
}

func writeSlot(w *jsontext.Writer, s picking.Slot) {
	w.Text("kind", [...]string{"rest", "hold", "pluck"}[s.Kind])
	if s.Kind == picking.Pluck {
		w.Int("string", int(s.String))
		w.Text("own", s.Own.String())
	}
}

func checkTuning(f *fields) func(w *jsontext.Writer) {
	t := fretboard.Standard()
	parsed(f, "text", &t, fretboard.ParseTuning)
	return canonical(t.String(), func(w *jsontext.Writer) {
		w.Text("name", t.Name())
		w.List("strings", func() {
			for s := range t.All().Thinnest() {
				stringNote(w, s, t.Open(s))
			}
		})
	})
}

func checkShape(f *fields) func(w *jsontext.Writer) {
	var sh voicing.Shape
	parsed(f, "text", &sh, voicing.ParseShape)
	return canonical(sh.String(), func(w *jsontext.Writer) {
		w.List("frets", func() {
			for s := range fretboard.StringsUpTo(sh.Strings()).Thinnest() {
				if fret, sounds := sh.Fret(s); sounds {
					w.Int("", int(fret))
				} else {
					w.Null("")
				}
			}
		})
	})
}

func checkKey(f *fields) func(w *jsontext.Writer) {
	var k voicing.Key
	parsed(f, "text", &k, voicing.ParseKey)
	return canonical(k.String(), func(w *jsontext.Writer) {
		w.Text("tonic", k.Tonic().String())
		w.Bool("minor", k.Minor())
	})
}

func checkMeter(f *fields) func(w *jsontext.Writer) {
	var m picking.Meter
	parsed(f, "text", &m, picking.ParseMeter)
	return canonical(m.String(), func(w *jsontext.Writer) {
		w.Int("count", m.Count)
		w.Int("unit", m.Unit)
		w.Bool("compound", m.Compound())
		w.Int("bar", int(m.Bar()))
		w.Int("beat", int(m.Beat()))
	})
}
