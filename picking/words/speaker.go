package words

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// A speaker speaks a language.
type speaker struct{ *language }

// say fills a phrase in: {1} is the first argument.
func (s speaker) say(p phrase, arguments ...string) string {
	template := s.phrases[p]
	var b strings.Builder
	for {
		before, after, found := strings.Cut(template, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		b.WriteString(arguments[after[0]-'1'])
		template = after[len("1}"):]
	}
}

// count says a phrase of a number, or its neighbour in the table of one.
func (s speaker) count(many phrase, n int) string {
	if n == 1 {
		return s.say(many-1, number(1))
	}
	return s.say(many, number(n))
}

func number(n int) string { return strconv.Itoa(n) }

func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return strings.ToUpper(string(first)) + text[size:]
}

// list joins parts as in a sentence: a, b and c.
func (s speaker) list(parts []string) string {
	if n := len(parts); n > 1 {
		return s.say(listAnd, strings.Join(parts[:n-1], ", "), parts[n-1])
	}
	return strings.Join(parts, "")
}

// span names neighbours: 3, 3 and 4, 3 to 5.
func (s speaker) span(from, to int) string {
	switch to - from {
	case 0:
		return number(from)
	case 1:
		return s.say(listAnd, number(from), number(to))
	}
	return s.say(spanTo, number(from), number(to))
}

// barSpan names bars that follow each other: bar 3, bars 3 to 5.
func (s speaker) barSpan(from, to int) string {
	if from == to {
		return s.say(oneBar, number(from))
	}
	return s.say(manyBars, s.span(from, to))
}

// bars names bars by their numbers, which rise: bar 1; bars 1, 5 and 9; bars 1
// to 4 and 6.
func (s speaker) bars(numbers []int) string {
	var parts []string
	for i := 0; i < len(numbers); {
		j := i + 1
		for j < len(numbers) && numbers[j] == numbers[j-1]+1 {
			j++
		}
		if j-i < 3 {
			j = i + 1
		}
		parts = append(parts, s.span(numbers[i], numbers[j-1]))
		i = j
	}
	if len(numbers) == 1 {
		return s.say(oneBar, parts[0])
	}
	return s.say(manyBars, s.list(parts))
}

// note names a note without signs: E flat.
func (s speaker) note(n fretboard.Note) string {
	letter := fretboard.Note{Letter: n.Letter}.String()
	switch {
	case n.Accidental > 0:
		return s.say(sharp+phrase(min(n.Accidental, 4)-1), letter)
	case n.Accidental < 0:
		return s.say(flat+phrase(min(-n.Accidental, 4)-1), letter)
	}
	return letter
}

// length names a note value with its article: a dotted quarter note.
func (s speaker) length(t picking.Ticks) string {
	for i, name := range s.notes {
		switch plain := picking.WholeNote >> i; t {
		case plain:
			return name.one
		case plain * 3 / 2:
			return s.say(dotted, name.bare)
		case plain * 2 / 3:
			return s.say(inTriplets, name.one)
		}
	}
	return s.say(ticks, number(int(t)))
}

// spell turns the signs in a remark into words: notes, chords and units. A
// passage speaks in sentences of small letters: there a word with a capital
// that reads as a chord symbol is one.
func (s speaker) spell(text string) string {
	words := strings.Split(text, " ")
	for i, word := range words {
		name := strings.TrimRight(word, ",;:.")
		words[i] = s.spellWord(name) + word[len(name):]
	}
	return strings.Join(words, " ")
}

func (s speaker) spellWord(word string) string {
	if word == "mm" {
		return s.say(millimetres)
	}
	if n, err := fretboard.ParseNote(word); err == nil {
		return s.note(n)
	}
	if word == "" || word[0] < 'A' || word[0] > 'G' {
		return word
	}
	if c, err := voicing.ParseChord(word); err == nil {
		return c.Words()
	}
	return word
}
