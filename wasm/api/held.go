package api

import (
	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// A grip is a voicing and how it is held; without a fingering, the cheapest.
type grip struct {
	voicing   voicing.Voicing
	fingering voicing.Fingering
}

// held writes a shape with the fingers that hold it.
func (s speaker) held(name string, g grip) {
	v, cost := g.voicing, g.voicing.Cost()
	b := box.Of(v)
	fingers := ""
	if b.Unheld() == nil {
		if g.fingering == (voicing.Fingering{}) {
			g.fingering, _ = v.Fingering()
		} else if with, err := b.With(g.fingering); err == nil {
			b = with
			own := g.fingering.Cost()
			cost.Fingers, cost.Spread, cost.Splay, cost.Barre = own.Fingers, own.Spread, own.Splay, own.Barre
		}
		fingers = g.fingering.String()
	}
	s.Object(name, func() {
		s.chordName("chord", v.Chord())
		s.Text("shape", v.Shape().String())
		s.Text("fingers", fingers)
		s.strings(v)
		s.Int("effort", cost.Effort())
		s.Int("cost", cost.Weighed(voicing.Weights{}))
		texts(s.Writer, "remarks", v.Remarks())
		s.box(b)
	})
}

// strings writes what the strings of a voicing do.
func (s speaker) strings(v voicing.Voicing) {
	start := v.Start()
	s.Object("start", func() {
		s.Int("string", int(start.String))
		s.Text("reason", start.Reason.String())
	})
	s.Int("bass", int(v.Bass()))
	if root, ok := v.Root(); ok {
		s.Int("root", int(root))
	} else {
		s.Null("root")
	}
	s.List("notes", func() {
		for n := range v.Sounding().Thinnest() {
			p := v.Pitch(n)
			stringNote(s.Writer, n, p.Spell(noteOf(v, p)))
		}
	})
}

// noteOf names a pitch of a voicing: as the chord names it where no capo moves
// it, otherwise by the plainest name.
func noteOf(v voicing.Voicing, p fretboard.Pitch) fretboard.Note {
	if v.Instrument().Capo == 0 {
		if n, ok := v.Chord().Spell(p.Class()); ok {
			return n
		}
	}
	return plainNotes[p.Class()]
}

// plainNotes are the twelve notes as a fretboard without a key names them.
var plainNotes = [12]fretboard.Note{
	{Letter: fretboard.C}, {Letter: fretboard.C, Accidental: 1}, {Letter: fretboard.D}, {Letter: fretboard.E, Accidental: -1},
	{Letter: fretboard.E}, {Letter: fretboard.F}, {Letter: fretboard.F, Accidental: 1}, {Letter: fretboard.G},
	{Letter: fretboard.A, Accidental: -1}, {Letter: fretboard.A}, {Letter: fretboard.B, Accidental: -1}, {Letter: fretboard.B},
}

// box writes what a drawing of a chord box needs.
func (s speaker) box(b box.Box) {
	first, rows := b.Window()
	unheld := ""
	if located, ok := b.Unheld().(fretboard.Located); ok {
		unheld = located.Where().Reason
	}
	s.Object("box", func() {
		s.Int("first", int(first))
		s.Int("rows", rows)
		s.List("columns", func() {
			for _, c := range b.Columns() {
				s.column(c)
			}
		})
		s.List("barres", func() {
			for _, barre := range b.Barres() {
				s.Object("", func() {
					s.Text("finger", barre.Finger.String())
					s.Int("row", barre.Row)
					s.Int("left", barre.Left)
					s.Int("right", barre.Right)
				})
			}
		})
		s.Text("unheld", unheld)
		texts(s.Writer, "words", b.Words())
	})
}

func (s speaker) column(c box.Column) {
	s.Object("", func() {
		s.Int("string", int(c.String))
		s.Text("tuned", c.Tuned.String())
		s.Bool("muted", c.Muted)
		s.Int("fret", int(c.Fret))
		s.Int("row", c.Row)
		if c.Finger == 0 {
			s.Null("finger")
		} else {
			s.Text("finger", c.Finger.String())
		}
		s.Bool("start", c.Start)
	})
}
