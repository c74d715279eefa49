package text

import (
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// respell turns the notes and chords that a remark names into the sheet's
// spelling. A passage speaks English, in sentences of small letters: there a
// word with a capital that reads as a chord symbol is one.
func (s *sheet) respell(text string) string {
	if s.spelling == fretboard.English {
		return text
	}
	words := strings.Split(text, " ")
	for i, word := range words {
		name := strings.TrimRight(word, ",;:")
		words[i] = s.respellName(name) + word[len(name):]
	}
	return strings.Join(words, " ")
}

// respellName respells a note, which may have more accidentals than a root, or
// a chord; any other word stays.
func (s *sheet) respellName(name string) string {
	if n, err := fretboard.ParseNote(name); err == nil {
		return n.StringIn(s.spelling)
	}
	if c, err := voicing.ParseChord(name); err == nil {
		return c.StringIn(s.spelling)
	}
	return name
}
