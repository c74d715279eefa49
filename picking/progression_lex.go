package picking

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"weft.example/fretboard"
)

// A mark is a piece of a chart: a bar line of some kind, or a chord.
type mark struct {
	kind  markKind
	field fretboard.Field
}

type markKind uint8

const (
	chordMark  markKind = iota
	againMark           // %
	barLine             // |
	openLine            // |:
	closeLine           // :|
	turnLine            // :|: closes one repeat and opens the next
	lineEnd             // the end of a line of text, a bar line where none stands
	endOfChart          // the end of the text
)

// signs lists the marks that stand for themselves, longer ones before those
// that begin them.
var signs = []struct {
	text string
	kind markKind
}{
	{":|:", turnLine}, {":||:", turnLine}, {"||:", openLine}, {"|:", openLine}, {":||", closeLine}, {":|", closeLine},
	{"|]", barLine}, {"|", barLine}, {"‖", barLine}, {"%", againMark}, {"𝄎", againMark}, {"\n", lineEnd},
}

// nextMark returns the mark that begins at or after from, and where it ends.
func nextMark(text string, from int) (mark, int) {
	for from < len(text) {
		r, size := utf8.DecodeRuneInString(text[from:])
		if !isSpace(r) {
			break
		}
		from += size
	}
	if from == len(text) {
		return mark{endOfChart, fretboard.Field{At: from}}, from
	}
	if m, ok := signAt(text, from); ok {
		return m, from + len(m.field.Text)
	}
	end := chordEnd(text, from)
	return mark{chordMark, fretboard.Field{Text: text[from:end], At: from}}, end
}

func isSpace(r rune) bool { return r != '\n' && (unicode.IsSpace(r) || r == '\ufeff') }

func signAt(text string, at int) (mark, bool) {
	if strings.HasPrefix(text[at:], "||") && atEdge(text, at, at+2) {
		return mark{barLine, fretboard.Field{Text: "||", At: at}}, true
	}
	for _, sign := range signs {
		if strings.HasPrefix(text[at:], sign.text) {
			return mark{sign.kind, fretboard.Field{Text: sign.text, At: at}}, true
		}
	}
	return mark{}, false
}

// atEdge reports whether a line of text begins before from or ends after to:
// there two bar lines are one double line and no bar stands between them.
func atEdge(text string, from, to int) bool {
	before := text[strings.LastIndexByte(text[:from], '\n')+1 : from]
	after, _, _ := strings.Cut(text[to:], "\n")
	return strings.TrimSpace(before) == "" || strings.TrimSpace(after) == ""
}

// chordEnd returns where the chord ends that begins at from: before a space or
// a sign, except inside brackets, where spaces belong to it: C7(b9, #11).
func chordEnd(text string, from int) int {
	depth := 0
	for at, r := range text[from:] {
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case r == '\n' || r == '|' || isSpace(r) && depth <= 0:
			return from + at
		}
		if _, sign := signAt(text, from+at); sign {
			return from + at
		}
	}
	return len(text)
}
