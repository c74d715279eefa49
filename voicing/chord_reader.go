package voicing

import (
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
)

// A reader goes through the text of a symbol and tells where it fails.
type reader struct {
	source, text string // text is source without the spaces at its end
	at           int
}

func (r *reader) rest() string { return r.text[r.at:] }

// take steps over word if it comes next, in these very letters.
func (r *reader) take(word string) bool {
	if !strings.HasPrefix(r.rest(), word) {
		return false
	}
	r.at += len(word)
	return true
}

// takeFold steps over word if it comes next. A word of two or more plain
// letters may be in capitals; word itself is in small ones.
func (r *reader) takeFold(word string) bool {
	rest := r.rest()
	if len(word) == 1 || !isLetter(word[0]) {
		return r.take(word)
	}
	if len(rest) < len(word) {
		return false
	}
	for i := range len(word) {
		if small(rest[i]) != word[i] {
			return false
		}
	}
	r.at += len(word)
	return true
}

// takeOne steps over the first of words that comes next and returns its index,
// or -1.
func (r *reader) takeOne(words ...string) int {
	for i, word := range words {
		if r.take(word) {
			return i
		}
	}
	return -1
}

// peek returns the next byte with capitals made small, or 0 at the end.
func (r *reader) peek() byte {
	if r.at == len(r.text) {
		return 0
	}
	return small(r.text[r.at])
}

func small(b byte) byte {
	if 'A' <= b && b <= 'Z' {
		return b - 'A' + 'a'
	}
	return b
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

func (r *reader) place(at, length int, reason, mend string) fretboard.Place {
	return fretboard.Place{Notation: "chord", Source: r.source, Offset: at, Length: length, Reason: reason, Mend: mend}
}

func (r *reader) syntax(at, length int, reason, mend string) error {
	return &fretboard.SyntaxError{Place: r.place(at, length, reason, mend)}
}

func (r *reader) impossible(at, length int, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: r.place(at, length, reason, mend)}
}

// unreadable refuses the piece that comes next, of at least length bytes.
func (r *reader) unreadable(length int) error {
	rest := r.rest()
	switch {
	case rest == "":
		return r.syntax(r.at, 0, "the symbol breaks off", "finish it, such as in C7b9, Cadd9 or D/F#")
	case strings.TrimLeft(rest, " \t\u00a0") != rest:
		return r.syntax(r.at, 1, "a space inside the symbol", "leave it out")
	}
	return r.syntax(r.at, max(length, pieceLength(rest)), "not part of a chord symbol",
		"write the root, then the chord, such as in C, Am7, F#m7b5, C7b9, Cadd9 or D/F#")
}

// pieceLength measures the letters and the digits after them that rest begins
// with, or else one character.
func pieceLength(rest string) int {
	n := 0
	for n < len(rest) && isLetter(rest[n]) {
		n++
	}
	for n < len(rest) && isDigit(rest[n]) {
		n++
	}
	if n == 0 {
		_, n = utf8.DecodeRuneInString(rest)
	}
	return n
}

func isLetter(b byte) bool { return 'a' <= small(b) && small(b) <= 'z' }
