package voicing

import (
	"strings"

	"weft.example/fretboard"
)

// Words says c in English as musicians do, without signs or digits: C sharp
// minor seven flat five, E flat major over G, no chord. A comma keeps an
// accidental from the root of a chord that has neither a third nor a number to
// stand between them: C, flat five no three. No two chords have the same words.
func (c Chord) Words() string {
	if c.Silent() {
		return "no chord"
	}
	text := noteWords(c.root)
	suffix := c.formula.suffix()
	head, _ := c.formula.head()
	switch {
	case head == "" && c.formula.has(majorThird):
		text += " major"
	case strings.HasPrefix(suffix, "("):
		text += ","
	}
	text += suffixWords.Replace(suffix)
	if c.slash {
		text += " over " + noteWords(c.bass)
	}
	return text
}

// suffixWords turns a suffix into words, sign by sign; of two that begin alike
// the longer comes first.
var suffixWords = strings.NewReplacer(
	"maj", " major", "m", " minor", "dim", " diminished", "aug", " augmented", "alt", " altered",
	"sus2sus4", " suspended two and four", "sus", " suspended", "add", " add", "no", " no",
	"b", " flat", "#", " sharp", "(", "", ")", "", "/", "",
	"13", " thirteen", "11", " eleven", "9", " nine", "7", " seven", "6", " six", "5", " five",
	"4", " four", "3", " three", "2", " two",
)

var accidentalWords = [...]string{"", "", "double ", "triple ", "quadruple "}

func noteWords(n fretboard.Note) string {
	letter := fretboard.Note{Letter: n.Letter}.String()
	switch {
	case n.Accidental > 0:
		return letter + " " + accidentalWords[n.Accidental] + "sharp"
	case n.Accidental < 0:
		return letter + " " + accidentalWords[-n.Accidental] + "flat"
	}
	return letter
}
