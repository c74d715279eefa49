package text

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
)

func (s *sheet) newLine() { s.out = append(s.out, '\n') }

// entry writes a label and what it says, in line with the systems.
func (s *sheet) entry(label, text string) {
	indent := s.margin + lead
	s.paragraph(label+strings.Repeat(" ", indent-len(label)), text)
}

// paragraph writes text after a lead-in, wrapped and indented below it.
func (s *sheet) paragraph(before, text string) {
	s.out = append(s.out, before...)
	indent := utf8.RuneCountInString(before)
	column := indent
	for i, word := range strings.Fields(fretboard.Printable(text)) {
		size := utf8.RuneCountInString(word)
		switch {
		case i > 0 && column+1+size > s.width:
			s.breakLine(indent)
			column = indent
		case i > 0:
			s.out = append(s.out, ' ')
			column++
		}
		for column+size > s.width { // a word longer than a line
			head := front(word, s.width-column)
			s.out = append(s.out, head...)
			s.breakLine(indent)
			word, size, column = word[len(head):], size-(s.width-column), indent
		}
		s.out = append(s.out, word...)
		column += size
	}
	s.newLine()
}

func (s *sheet) breakLine(indent int) {
	s.newLine()
	s.out = append(s.out, strings.Repeat(" ", indent)...)
}

// front returns the first n characters of a text that has more.
func front(text string, n int) string {
	for i := range text {
		if n == 0 {
			return text[:i]
		}
		n--
	}
	return text
}

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func verb(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// bars names bars by their numbers, which rise: bar 1; bars 1, 5 and 9; bars 1
// to 4 and 6.
func bars(numbers []int) string {
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
