package fretboard

import (
	"strings"
	"unicode"
)

// A Field is a piece of a text and the byte offset at which it begins.
type Field struct {
	Text string
	At   int
}

// Fields cuts text at the characters of separators and at every space but the
// plain one, which is a separator only where separators has it; it leaves out
// empty pieces.
func Fields(text, separators string) []Field {
	var fields []Field
	start := -1
	for at, r := range text {
		cut := strings.ContainsRune(separators, r) || r != ' ' && unicode.IsSpace(r)
		if cut && start >= 0 {
			fields, start = append(fields, Field{text[start:at], start}), -1
		} else if !cut && start < 0 {
			start = at
		}
	}
	if start >= 0 {
		fields = append(fields, Field{text[start:], start})
	}
	return fields
}
