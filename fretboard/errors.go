package fretboard

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MaxText is the longest text, in bytes, that any parser of the module reads.
const MaxText = 64 << 10

// A Place says what is wrong with a text, where, and how to mend it.
type Place struct {
	Notation string // what the text is: tuning, shape, chord, chords, figure, ...
	Source   string // the whole text
	Offset   int    // where the fault begins, in bytes, 0 to len(Source)
	Length   int    // how many bytes it takes; 0 for something missing
	Reason   string // what is wrong
	Mend     string // what to write instead; empty where nothing helps
}

// A SyntaxError is text that cannot be read.
type SyntaxError struct{ Place }

// An ImpossibleError is text that reads well and asks for what cannot be, such
// as a fret beyond the instrument.
type ImpossibleError struct{ Place }

// A Located error knows its place; both error types of the module do.
type Located interface {
	error
	Where() Place
}

// Where returns the place itself.
func (p Place) Where() Place { return p }

// Text returns the offending part of the source.
func (p Place) Text() string {
	rest := p.Source[min(max(p.Offset, 0), len(p.Source)):]
	return rest[:min(max(p.Length, 0), len(rest))]
}

// Error prints one line: the notation, the byte offset, the offending text cut
// to a readable length, the reason and the mend.
func (p Place) Error() string {
	var b strings.Builder
	b.WriteString(p.Notation + ", byte " + digits(p.Offset) + ": ")
	if text := p.Text(); text != "" {
		b.WriteString(quote(text) + ": ")
	}
	b.WriteString(p.Reason)
	if p.Mend != "" {
		b.WriteString("; " + p.Mend)
	}
	return b.String()
}

const quoted = 40 // characters of the offending text that a message shows

func quote(text string) string {
	short, cut := front(text, quoted)
	if cut {
		return strconv.Quote(short) + "..."
	}
	return strconv.Quote(short)
}

const around = 30 // characters of the source shown on either side of the fault

// Caret prints two lines: the source around the fault, on one line, and carets
// under the fault, for a display that gives every character one column, East
// Asian ones and emoji two, and combining marks none. Three dots stand for what
// is left out.
func (p Place) Caret() string {
	from := min(max(p.Offset, 0), len(p.Source))
	before, head := tail(p.Source[:from], around)
	fault, rest := front(p.Text(), around)
	after := ""
	if !rest {
		after, rest = front(p.Source[from+len(p.Text()):], around)
	}
	line := Printable(before)
	if head {
		line = "..." + line
	}
	under := strings.Repeat(" ", columns(line)) + strings.Repeat("^", max(1, columns(Printable(fault))))
	line += Printable(fault) + Printable(after)
	if rest {
		line += "..."
	}
	return line + "\n" + under
}

// front cuts text to its first n characters and reports whether it was longer.
func front(text string, n int) (string, bool) {
	at := 0
	for ; n > 0 && at < len(text); n-- {
		_, size := utf8.DecodeRuneInString(text[at:])
		at += size
	}
	return text[:at], at < len(text)
}

// tail cuts text to its last n characters and reports whether it was longer.
func tail(text string, n int) (string, bool) {
	at := len(text)
	for ; n > 0 && at > 0; n-- {
		_, size := utf8.DecodeLastRuneInString(text[:at])
		at -= size
	}
	return text[at:], at > 0
}

// Printable makes text safe to show on one line: every kind of space becomes a
// plain one and every other character that does not print a question mark, so
// that a caret below still points to the right place.
func Printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == utf8.RuneError || !strconv.IsPrint(r):
			return '?'
		}
		return r
	}, text)
}

func columns(text string) int {
	n := 0
	for _, r := range text {
		n += width(r)
	}
	return n
}

// width returns how many columns a display gives r, by its script rather than
// by the long table of Unicode Standard Annex 11.
func width(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me):
		return 0
	case 0xff61 <= r && r <= 0xffee: // the half-width forms
		return 1
	case unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul),
		0x3001 <= r && r <= 0x303e, 0xff01 <= r && r <= 0xff60, 0x1f300 <= r && r <= 0x1faff:
		return 2
	}
	return 1
}

// Within returns err with its place moved into a longer text of which the
// error's own text begins at offset. Other errors come back unchanged.
func Within(err error, notation, source string, offset int) error {
	move := func(p Place) Place {
		p.Notation, p.Source, p.Offset = notation, source, p.Offset+offset
		return p
	}
	switch e := err.(type) {
	case *SyntaxError:
		return &SyntaxError{move(e.Place)}
	case *ImpossibleError:
		return &ImpossibleError{move(e.Place)}
	}
	return err
}

// CheckText refuses what no parser of the module reads: text over [MaxText]
// and invalid UTF-8.
func CheckText(notation, text string) error {
	if len(text) > MaxText {
		return &ImpossibleError{Place{notation, text, MaxText, 0,
			digits(len(text)) + " bytes of text; the limit is " + digits(MaxText), "split the text"}}
	}
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if r == utf8.RuneError && size == 1 {
			return &SyntaxError{Place{notation, text, at, 1, "not valid UTF-8", "save the text as UTF-8"}}
		}
		at += size
	}
	return nil
}

// ParseName finds text among names, whatever its case, and returns its index;
// the error lists the names.
func ParseName(notation string, names []string, text string) (int, error) {
	for i, name := range names {
		if strings.EqualFold(name, text) {
			return i, nil
		}
	}
	return 0, &SyntaxError{Place{notation, text, 0, len(text), "no such " + notation,
		"choose one of " + strings.Join(names, ", ")}}
}

// NameOf returns names[i], or the bare number where a value was made by hand.
func NameOf(names []string, i int) string {
	if i >= 0 && i < len(names) {
		return names[i]
	}
	return strconv.Itoa(i)
}
