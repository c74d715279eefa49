//go:build !sheets && !drawings

package api

import (
	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/wasm/internal/jsontext"
)

// Shapes finds and names shapes, and ways through a song.
func Shapes(l *Library) {
	l.operations["shapes"] = findShapes
	l.operations["names"] = findNames
	l.operations["path"] = findPath
	l.operations["capo"] = findCapos
}

// More than few shapes of a chord are only found by finding all, which with
// many strings are millions.
const (
	fewShapes   = 8
	mostShapes  = 100
	mostTried   = 24 // for each chord of a path, whose time grows with their square
	manyStrings = 9
)

// findShapes finds the shapes of a chord.
func findShapes(_ *Library, f *fields) (reply, error) {
	spelling := fretboard.English
	readSpelling(f, &spelling)
	chord := readChord(f, "chord", spelling)
	f.need("chord")
	g := readInstrument(f)
	limits := readLimits(f, g)
	count := readShapeCount(f, "count", g, mostShapes)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	found, err := shapesOf(g, chord, limits, count)
	if err != nil {
		return reply{}, chordFault(f, err)
	}
	return reply{members: func(w *jsontext.Writer) {
		s := speaker{w, spelling}
		w.Object("chord", func() {
			w.Text("text", chord.StringIn(spelling))
			s.chord(chord)
		})
		w.List("shapes", func() {
			for _, v := range found[:min(count, len(found))] {
				s.held("", grip{voicing: v})
			}
		})
		w.Bool("more", len(found) > count)
	}}, nil
}

func readShapeCount(f *fields, name string, g fretboard.Instrument, most int) int {
	if g.Tuning.Strings() > manyStrings {
		return f.within(name, 1, fewShapes, fewShapes)
	}
	return f.within(name, 1, most, fewShapes)
}

// shapesOf returns count shapes of a chord and one more where there are more;
// but of the few that are found as fast as one it asks for no more than these,
// unless fewer are wanted.
func shapesOf(g fretboard.Instrument, chord voicing.Chord, limits voicing.Options, count int) (found []voicing.Voicing, err error) {
	if _, err := voicing.Best(g, chord, limits); err != nil {
		return nil, err
	}
	for v := range voicing.Find(g, chord, limits) {
		found = append(found, v)
		if len(found) > count {
			break
		}
	}
	return found, nil
}

// chordFault places an error about a chord in the text of the request.
func chordFault(f *fields, err error) error {
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok {
		return err
	}
	e := faultAt(fieldOf(err), err)
	if located.Notation == "chord" {
		text, _ := f.text("chord")
		place := located.Place
		place.Source, place.Offset, place.Length = text, 0, len(text)
		place.Mend = "widen the limits, or try a chord of fewer tones or another tuning"
		return &fault{code: impossible, field: "chord", place: &place}
	}
	return e
}

// findNames names what a shape sounds.
func findNames(_ *Library, f *fields) (reply, error) {
	spelling := fretboard.English
	readSpelling(f, &spelling)
	var shape voicing.Shape
	parsed(f, "shape", &shape, voicing.ParseShape)
	f.need("shape")
	var key voicing.Key
	parsed(f, "key", &key, voicing.ParseKey)
	g := readInstrument(f)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	reading, err := voicing.Names(g, shape, key)
	if err != nil {
		return reply{}, faultAt(fieldOf(err), err)
	}
	return reply{members: func(w *jsontext.Writer) {
		speaker{w, spelling}.reading(g, shape, reading)
	}}, nil
}

func (s speaker) reading(g fretboard.Instrument, shape voicing.Shape, r voicing.Reading) {
	s.Text("shape", shape.String())
	s.List("notes", func() { s.soundings(g, shape, r.Notes) })
	s.Text("plain", r.Plain())
	s.List("names", func() {
		for _, n := range r.Names {
			s.Object("", func() { s.name(n) })
		}
	})
	if len(r.Names) > 0 {
		if v, err := voicing.New(g, r.Names[0].Chord, shape); err == nil {
			s.held("held", grip{voicing: v})
			return
		}
	}
	s.Null("held")
}

func (s speaker) name(n voicing.Name) {
	s.chordName("chord", n.Chord)
	s.Text("confidence", n.Confidence.String())
	var missing []fretboard.Note
	for _, t := range n.Missing {
		missing = append(missing, t.Note)
	}
	s.notes("missing", missing)
	s.notes("added", n.Added)
}

// soundings writes what each string of a shape sounds without the capo, in the
// names of the notes given.
func (s speaker) soundings(g fretboard.Instrument, shape voicing.Shape, names []fretboard.PitchName) {
	g.Capo = 0
	for n := range shape.Sounding().Thinnest() {
		fret, _ := shape.Fret(n)
		for _, name := range names {
			if name.Pitch() == g.Pitch(n, fret) {
				stringNote(s.Writer, n, name)
				break
			}
		}
	}
}
