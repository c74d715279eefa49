package svg

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func verb(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// barsText names bars by their numbers, which rise: bar 1; bars 1, 5 and 9;
// bars 1 to 4 and 6.
func barsText(numbers []int) string {
	var parts []string
	for i := 0; i < len(numbers); {
		j := i + 1
		for j < len(numbers) && numbers[j] == numbers[j-1]+1 {
			j++
		}
		if j-i < 3 {
			j = i + 1
			parts = append(parts, strconv.Itoa(numbers[i]))
		} else {
			parts = append(parts, strconv.Itoa(numbers[i])+" to "+strconv.Itoa(numbers[j-1]))
		}
		i = j
	}
	return verb(len(numbers), "bar ", "bars ") + list(parts)
}

// list joins parts as in a sentence: a, b and c.
func list(parts []string) string {
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// respell turns the notes and chords that a remark names into the sheet's
// spelling, with the accidentals of printed music. A passage speaks English, in sentences of small letters: there a
// word with a capital that reads as a note or a chord symbol is one.
func (s *sheet) respell(text string) string {
	words := strings.Split(text, " ")
	for i, word := range words {
		name := strings.TrimRight(word, ",;:")
		words[i] = s.respellName(name) + word[len(name):]
	}
	return strings.Join(words, " ")
}

func (s *sheet) respellName(name string) string {
	if n, err := fretboard.ParseNote(name); err == nil {
		return n.ChartIn(s.spelling)
	}
	if c, err := voicing.ParseChord(name); err == nil {
		return c.ChartIn(s.spelling)
	}
	return name
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

func article(noun string) string {
	if strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}

// stringLabel names a string by its number and its open note.
func (s *sheet) stringLabel(n fretboard.StringNumber) string {
	return strconv.Itoa(int(n)) + " " + s.Instrument.Tuning.Open(n).Note.ChartIn(s.spelling)
}

func stringNumber(n fretboard.StringNumber) string { return "string " + strconv.Itoa(int(n)) }

// outermost names the last string that lies one way.
func (s *sheet) outermost(toward fretboard.StringNumber) string {
	switch {
	case s.strings() == 1 && toward == s.Instrument.Hand.Toward():
		return "the floor"
	case s.strings() == 1:
		return "the ceiling"
	case toward < 0:
		return stringNumber(1)
	}
	return stringNumber(s.strings())
}

// floor says where a down-stroke goes, and more where that is unusual.
func (s *sheet) floor() string {
	toward := s.Instrument.Hand.Toward()
	if toward < 0 || s.strings() == 1 {
		return s.outermost(toward)
	}
	return "the floor, which on a turned instrument is toward " + s.outermost(toward)
}

func (s *sheet) strings() fretboard.StringNumber { return s.Instrument.Tuning.Strings() }
