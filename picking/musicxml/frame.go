package musicxml

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// frames keeps the text of each frame written, since a song holds few shapes.
type frames map[voicing.Voicing][]byte

// frame writes the chord box of v.
func (s *score) frame(v voicing.Voicing) {
	text, known := s.frames[v]
	if !known {
		start := len(s.out)
		s.drawFrame(v)
		s.frames[v] = append(text, s.out[start:]...)
		return
	}
	s.out = append(s.out, text...)
}

// drawFrame writes string after string from the highest number on. Frets count
// from the capo and not from the first row; a string that is not named is muted.
func (s *score) drawFrame(v voicing.Voicing) {
	b := box.Of(v)
	if v.Instrument().Hand.Mirrored() {
		b = b.Mirror() // back: the standard goes by string numbers
	}
	columns := b.Columns()
	barres := barreEnds(b.Barres())
	first, rows := b.Window()
	s.open("frame", "unplayed", "x")
	s.number("frame-strings", len(columns))
	s.number("frame-frets", rows)
	if first > 1 {
		s.text("first-fret", strconv.Itoa(int(first)))
	}
	for i, c := range columns {
		if c.Muted {
			continue
		}
		s.open("frame-note")
		s.number("string", int(c.String))
		s.number("fret", int(c.Fret))
		if c.Finger != 0 {
			s.number("fingering", int(c.Finger))
		}
		if barres[i] != "" {
			s.empty("barre", "type", barres[i])
		}
		s.shut("frame-note")
	}
	s.shut("frame")
}

// barreEnds returns for each column whether a barre begins or ends there. It
// begins at the string with the higher number.
func barreEnds(barres []box.Barre) (ends [fretboard.MaxStrings]string) {
	for _, b := range barres {
		ends[b.Left], ends[b.Right] = "start", "stop"
	}
	return ends
}
