package box

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// Words says what b shows in short English sentences, to be read aloud or felt
// on a braille display: the chord, the capo, why the shape cannot be held where
// it cannot, the barres, and then every string once, from the highest number
// to string 1. A mirrored box has the same words.
//
// The sentences hold no signs but full stops, commas and colons.
func (b Box) Words() []string {
	words := []string{capital(b.voicing.Chord().Words()) + "."}
	if capo := b.voicing.Instrument().Capo; capo > 0 {
		words = append(words, "Frets are counted from the capo at fret "+strconv.Itoa(int(capo))+".")
	}
	if reason := b.reason(); reason != "" {
		words = append(words, "Four fingers cannot hold this shape: "+reason+".")
	}
	for _, p := range b.fingering.Presses() {
		if p.Barre() {
			words = append(words, barreWords(p))
		}
	}
	for s := b.voicing.Shape().Strings(); s >= 1; s-- {
		words = append(words, stringWords(b.look(s, 1)))
	}
	return words
}

func barreWords(p voicing.Press) string {
	to := " to "
	if p.Thick == p.Thin+1 {
		to = " and "
	}
	return capital(p.Finger.String()) + " finger across strings " + number(p.Thick) + to + number(p.Thin) +
		" at fret " + fretWord(p.Fret) + "."
}

func stringWords(c Column) string {
	text := "String " + number(c.String)
	switch {
	case c.Muted:
		text += " muted"
	case c.Fret == 0:
		text += " open"
	default:
		text += ", fret " + fretWord(c.Fret)
	}
	if c.Finger > 0 {
		text += ", " + c.Finger.String() + " finger"
	}
	if c.Start {
		text += ": start here"
	}
	return text + "."
}

func fretWord(f fretboard.Fret) string { return strconv.Itoa(int(f)) }

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
