package main

import (
	"fmt"
	"strings"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/voicing"
)

// A chordAnswer lists the shapes of a chord.
type chordAnswer struct {
	heading
	Chord  string `json:"chord"`
	Words  string `json:"words"`
	Bass   string `json:"bass"`
	Tones  []tone `json:"tones"`
	More   bool   `json:"more"`
	Shapes []held `json:"shapes"`
}

type tone struct {
	Degree string `json:"degree"`
	Note   string `json:"note"`
	Need   string `json:"need"`
	Why    string `json:"why"`
}

func (s *setting) findChord(r *request) (answer, error) {
	if err := fretboard.CheckText("chord", r.chord); err != nil {
		return nil, err
	}
	chord, err := voicing.ParseChordIn(r.chord, s.spelling)
	if err != nil {
		return nil, err
	}
	if chord.Silent() {
		return nil, cli.Impossible("chord", r.chord, "silence has no shape", "name a chord, such as Am7")
	}
	if _, err := voicing.Best(s.instrument, chord, s.limits); err != nil {
		return nil, s.unplayable(r.chord, err)
	}
	a := chordAnswer{heading: s.heading(), Chord: chord.String(), Words: chord.Words(), Tones: tonesOf(chord), Shapes: []held{}}
	if bass, slash := chord.Bass(); slash {
		a.Bass = bass.String()
	}
	for v := range voicing.Find(s.instrument, chord, s.limits) {
		f, _ := v.Fingering() // what is found can be held
		a.Shapes = append(a.Shapes, s.hold(v, f))
		if a.More = len(a.Shapes) == s.count; a.More {
			break
		}
	}
	return a, nil
}

// unplayable tells what to do about a chord that no shape sounds; an error
// about the limits stays as it is.
func (s *setting) unplayable(symbol string, err error) error {
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok || located.Notation != "chord" {
		return err
	}
	return cli.Impossible("chord", symbol, located.Reason, s.narrowed("try a chord of fewer tones or another tuning"))
}

func tonesOf(chord voicing.Chord) []tone {
	names := strings.Fields(chord.Formula())
	tones := []tone{}
	for i, t := range chord.Tones() {
		tones = append(tones, tone{names[i], t.Note.String(), [...]string{"essential", "optional", "either"}[t.Need], whyNot(t)})
	}
	return tones
}

// whyNot says why a tone may be left out; see [voicing.Need].
func whyNot(t voicing.Tone) string {
	switch {
	case t.Need == voicing.Essential:
		return ""
	case t.Need == voicing.Either:
		return fmt.Sprintf("one of the two %ss is enough", degrees[t.Degree])
	case t.Degree == 5:
		return "the root's strongest overtone, it tells no chord from another"
	case t.Degree == 3:
		return "the eleventh grates against it"
	case t.Degree == 11:
		return "it grates against the third"
	}
	return "the highest number tells the chord"
}

// write gives the sheet for a teacher to hand out.
func (a chordAnswer) write(s *sheet) {
	s.line("%s, in words %s", s.spell(a.Chord), a.Words)
	s.line("")
	s.heading(a.heading)
	s.entry(0, "tones", s.spell(a.tones()))
	for _, t := range a.Tones {
		if t.Why != "" {
			s.entry(0, "spare", s.spell(t.Note)+" may be left out: "+t.Why)
		}
	}
	if a.Bass != "" {
		s.entry(0, "bass", s.spell(a.Bass)+", wanted lowest")
	}
	s.line("")
	s.shapes(a.Shapes)
	s.line("")
	s.legend()
	if a.More {
		s.entry(0, "more", fmt.Sprintf("these are the best %d; -count asks for more", len(a.Shapes)))
	} else {
		s.entry(0, "more", "there are no others within these limits")
	}
}

func (a chordAnswer) tones() string {
	all := make([]string, len(a.Tones))
	for i, t := range a.Tones {
		all[i] = t.Degree + " " + t.Note
	}
	return strings.Join(all, ", ")
}
