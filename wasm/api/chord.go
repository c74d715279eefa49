package api

import (
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/wasm/internal/jsontext"
)

// A speaker writes chords and notes in a spelling.
type speaker struct {
	*jsontext.Writer
	spelling fretboard.Spelling
}

// chordName writes a chord by its names.
func (s speaker) chordName(name string, c voicing.Chord) {
	s.Object(name, func() { s.names(c) })
}

func (s speaker) names(c voicing.Chord) {
	s.Text("symbol", c.String())
	s.Text("name", c.ChartIn(s.spelling))
	s.Text("words", c.Words())
}

// chord writes a chord with its tones.
func (s speaker) chord(c voicing.Chord) {
	s.names(c)
	s.Bool("silent", c.Silent())
	s.Text("formula", c.Formula())
	s.List("tones", func() {
		if c.Silent() {
			return
		}
		degrees := strings.Fields(c.Formula())
		for i, t := range c.Tones() {
			s.tone(degrees[i], t)
		}
	})
	bass := ""
	if n, slash := c.Bass(); slash {
		bass = n.ChartIn(s.spelling)
	}
	s.Text("bass", bass)
}

func (s speaker) tone(degree string, t voicing.Tone) {
	s.Object("", func() {
		s.Text("degree", degree)
		s.Text("note", t.Note.ChartIn(s.spelling))
		s.Text("need", [...]string{"essential", "optional", "either"}[t.Need])
	})
}

// notes writes the notes of a list.
func (s speaker) notes(name string, notes []fretboard.Note) {
	s.List(name, func() {
		for _, n := range notes {
			s.Text("", n.ChartIn(s.spelling))
		}
	})
}

// texts writes a list of texts.
func texts(w *jsontext.Writer, name string, list []string) {
	w.List(name, func() {
		for _, text := range list {
			w.Text("", text)
		}
	})
}

// stringNote writes what a string sounds.
func stringNote(w *jsontext.Writer, string fretboard.StringNumber, note fretboard.PitchName) {
	w.Object("", func() {
		w.Int("string", int(string))
		w.Text("note", note.String())
		w.Int("pitch", int(note.Pitch()))
	})
}
