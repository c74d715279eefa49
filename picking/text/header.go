package text

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// header writes the title and what holds for the whole sheet.
func (s *sheet) header() {
	if s.Title != "" {
		s.paragraph("", s.Title)
		s.newLine()
	}
	s.entry("meter", s.Meter.String()+", "+s.tempo())
	s.entry("tuning", s.tuning())
	if capo := s.Instrument.Capo; capo > 0 {
		s.entry("capo", "fret "+strconv.Itoa(int(capo)))
	}
	if s.spelling != fretboard.English {
		s.entry("notes", spellingWords[s.spelling])
	}
	s.entry("hand", handWords[s.Instrument.Hand])
	s.entry("stroke", traditionWords(s.Strokes))
	s.entry("fit", mouldingWords(s.Fit))
	s.entry("form", s.form())
	s.newLine()
}

// tempo names the note that the tempo counts, which is the meter's beat.
func (s *sheet) tempo() string {
	return strconv.Itoa(s.Tempo) + " " + noteWords(s.Meter.Beat()) + "s a minute"
}

var noteNames = [...]string{"whole", "half", "quarter", "eighth", "sixteenth", "thirty-second"}

// noteWords names the beat or the unit of a meter.
func noteWords(length picking.Ticks) string {
	dotted := ""
	if length%9 == 0 { // of plain lengths none is
		dotted, length = "dotted ", length*2/3
	}
	for i, name := range noteNames {
		if picking.WholeNote>>i == length {
			return dotted + name + " note"
		}
	}
	return strconv.Itoa(int(length)) + " ticks"
}

func (s *sheet) tuning() string {
	t := s.Instrument.Tuning
	var open []string
	for n := t.Strings(); n >= 1; n-- {
		pitch := t.Open(n)
		open = append(open, pitch.Note.StringIn(s.spelling)+strconv.Itoa(int(pitch.Octave)))
	}
	text := strings.Join(open, " ")
	if n := t.Strings(); n > 1 {
		text += " (string " + strconv.Itoa(int(n)) + " to string 1)"
	}
	if name := t.Name(); name != "" {
		text = name + ", " + text
	}
	return text
}

var spellingWords = [...]string{
	fretboard.German:      "German: H is B natural, B is B flat",
	fretboard.MixedGerman: "German: H is B natural, Bb is B flat",
}

var handWords = [...]string{
	fretboard.RightHanded:  "right-handed",
	fretboard.LeftRestrung: "left-handed, strung for the left hand",
	fretboard.LeftTurned:   "left-handed, a right-handed instrument turned over: string 1 is uppermost",
}

func traditionWords(t picking.Tradition) string {
	switch t {
	case picking.TowardNext:
		return "toward the next string"
	case picking.Economy:
		return "economy: onto a new string in the direction the pick comes"
	case picking.Alternate:
		return "alternate: down and up in turn, slot by slot from the bar line"
	case picking.RestStroke:
		return "rest-stroke: the first note on every new string is down"
	case picking.Jig:
		return "jig: down, up, down in each group of three"
	}
	return t.String()
}

func mouldingWords(m picking.Moulding) string {
	switch m {
	case picking.Contour:
		return "contour: the figure keeps its rise and fall over the strings"
	case picking.Bass:
		return "bass: only the figure's root notes move to the start string"
	case picking.Shift:
		return "shift: the whole figure moves with its root"
	}
	return m.String()
}

func (s *sheet) form() string {
	if s.Loop {
		return "a loop: the end leads back to bar 1"
	}
	for _, pick := range s.Picks() {
		if pick.At+pick.Rings > s.Length() {
			return "once through; the last notes ring on for a bar"
		}
	}
	return "once through"
}
