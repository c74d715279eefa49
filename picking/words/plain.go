package words

import (
	"strings"
	"unicode/utf8"
)

// plain writes a document as lines, none longer than width unless it is 0.
func plain(d document, width int) []byte {
	var out []byte
	for i, b := range d {
		if i > 0 && b.kind < sentence {
			out = append(out, '\n')
		}
		if width == 0 {
			out = append(out, b.text...)
		} else {
			out = wrap(out, b.text, width)
		}
		out = append(out, '\n')
	}
	return out
}

// wrap writes a text, its words set one space apart on lines of a width.
func wrap(out []byte, text string, width int) []byte {
	column := 0
	for i, word := range strings.Fields(text) {
		size := utf8.RuneCountInString(word)
		switch {
		case i > 0 && column+1+size > width:
			out, column = append(out, '\n'), 0
		case i > 0:
			out = append(out, ' ')
			column++
		}
		for size > width { // so that nothing is lost where a display ends
			head := front(word, width)
			out = append(append(out, head...), '\n')
			word, size = word[len(head):], size-width
		}
		out = append(out, word...)
		column += size
	}
	return out
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
