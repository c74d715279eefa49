package musicxml

import (
	"strings"

	"weft.example/picking"
	"weft.example/voicing"
)

// chord writes a chord symbol some ticks after the place where the next sign
// stands, with its frame if asked, and the name of its shape if that is
// another.
func (s *score) chord(held picking.HeldChord, after picking.Ticks, frame bool) {
	s.open("harmony")
	s.harmony(held.Sounds)
	if frame && held.Voicing.Sounding() != 0 {
		s.frame(held.Voicing)
	}
	if after != 0 {
		s.number("offset", int(after))
	}
	s.directionStaff()
	s.shut("harmony")
	if held.Chord != held.Sounds {
		s.words("("+held.Chord.Chart()+")", "above", after)
	}
}

// harmony writes root, kind, bass and degrees. The text of the kind is what
// chord charts print between root and bass, so the degrees need no print.
func (s *score) harmony(c voicing.Chord) {
	s.open("root")
	if c.Silent() { // the standard wants a root and hides it
		s.text("root-step", "C", "text", "")
		s.shut("root")
		s.text("kind", "none", "text", c.Chart())
		return
	}
	s.noteName("root-", c.Root())
	s.shut("root")
	kind, degrees := kindOf(c)
	s.text("kind", kind, "text", suffix(c))
	if bass, slash := c.Bass(); slash {
		s.open("bass")
		s.noteName("bass-", bass)
		s.shut("bass")
	}
	for _, d := range degrees {
		s.open("degree", "print-object", "no")
		s.number("degree-value", d.value)
		s.number("degree-alter", d.alter)
		s.text("degree-type", d.change)
		s.shut("degree")
	}
}

// suffix returns the printed symbol without root and bass.
func suffix(c voicing.Chord) string {
	text := strings.TrimPrefix(c.Chart(), c.Root().Chart())
	if bass, slash := c.Bass(); slash {
		text = strings.TrimSuffix(text, "/"+bass.Chart())
	}
	return text
}
