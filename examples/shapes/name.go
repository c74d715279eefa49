package main

import (
	"fmt"
	"strings"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/voicing"
)

// A nameAnswer lists the chords that a shape may be.
type nameAnswer struct {
	heading
	Shape  string   `json:"shape"`
	Key    string   `json:"key"`
	Sounds string   `json:"sounds"`
	Notes  []string `json:"notes"`
	Names  []name   `json:"names"`
	Shapes []held   `json:"shapes"`
}

type name struct {
	Chord      string   `json:"chord"`
	Words      string   `json:"words"`
	Confidence string   `json:"confidence"`
	Missing    []string `json:"missing"`
	Added      []string `json:"added"`
}

func (s *setting) nameShape(text string) (answer, error) {
	if err := fretboard.CheckText("name", text); err != nil {
		return nil, err
	}
	shape, err := voicing.ParseShape(text)
	if err != nil {
		return nil, err
	}
	if shape.Sounding() == 0 {
		return nil, cli.Impossible("name", text, "every string is muted", "let one string sound at least")
	}
	reading, err := voicing.Names(s.instrument, shape, s.key)
	if err != nil {
		return nil, err
	}
	a := nameAnswer{heading: s.heading(), Shape: shape.String(), Sounds: reading.Plain(), Notes: []string{}, Names: []name{}, Shapes: []held{}}
	if s.key != (voicing.Key{}) {
		a.Key = s.key.String()
	}
	for _, note := range reading.Notes {
		a.Notes = append(a.Notes, note.String())
	}
	for _, n := range reading.Names {
		a.Names = append(a.Names, nameOf(n))
	}
	return a, a.show(s, shape, reading.Names)
}

func nameOf(n voicing.Name) name {
	it := name{n.Chord.String(), n.Chord.Words(), n.Confidence.String(), []string{}, []string{}}
	for _, tone := range n.Missing {
		it.Missing = append(it.Missing, tone.Note.String())
	}
	for _, note := range n.Added {
		it.Added = append(it.Added, note.String())
	}
	return it
}

// show adds the shape as it is held for its first name.
func (a *nameAnswer) show(s *setting, shape voicing.Shape, names []voicing.Name) error {
	if len(names) == 0 {
		return nil
	}
	v, err := voicing.New(s.instrument, names[0].Chord, shape)
	if err != nil {
		return err
	}
	f, _ := v.Fingering() // where there is none, the shape says so
	a.Shapes = append(a.Shapes, s.hold(v, f))
	return nil
}

// write gives the names in a table, and the shape below it.
func (a nameAnswer) write(s *sheet) {
	s.line("%s sounds %s", a.Shape, s.spell(a.Sounds))
	s.line("")
	s.heading(a.heading)
	if a.Key != "" {
		s.entry(0, "key", s.spell(a.Key))
	}
	s.entry(0, "notes", s.pitches(a.Notes)+", the lowest first")
	s.line("")
	if len(a.Names) == 0 {
		s.line("One note alone is no chord and has no other name.")
		return
	}
	s.table(a.Names)
	s.line("")
	s.shapes(a.Shapes)
	s.line("")
	s.entry(0, "names", "certain: hardly ever wrong; likely: right four times in five; possible: one time in ten; remote: hardly ever right")
	s.legend()
}

func (s *sheet) table(names []name) {
	longest := 0
	for _, n := range names {
		longest = max(longest, len(s.spell(n.Chord)))
	}
	for i, n := range names {
		s.hang(fmt.Sprintf("%-3d%-*s  %-8s  ", i+1, longest, s.spell(n.Chord), n.Confidence), n.says(s))
	}
}

// says what the name is in words, and what is missing and added.
func (n name) says(s *sheet) string {
	text := n.Words
	if len(n.Missing) > 0 {
		text += "; without " + s.spell(strings.Join(n.Missing, ", "))
	}
	if len(n.Added) > 0 {
		text += "; with " + s.spell(strings.Join(n.Added, ", ")) + " added"
	}
	return text
}
