package json

import (
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// A reader fills the form from JSON known to be well formed. It is strict:
// names are exact and given once, null is no value, and what is missing is not
// zero; and it knows the path to every fault.
type reader struct {
	text []byte
	at   int
}

// next returns the byte with which the next value, name or end begins. In JSON
// that is well formed, commas and colons say nothing that the order does not.
func (r *reader) next() byte {
	for {
		switch c := r.text[r.at]; c {
		case ' ', '\t', '\n', '\r', ',', ':':
			r.at++
		default:
			return c
		}
	}
}

// A kind says in words what a value is.
type kind string

const (
	anObject kind = "an object"
	aList    kind = "a list"
	aText    kind = "a text"
	aNumber  kind = "a number"
	aTruth   kind = "true or false"
	aNull    kind = "null"
)

func kindOf(first byte) kind {
	switch first {
	case '{':
		return anObject
	case '[':
		return aList
	case '"':
		return aText
	case 't', 'f':
		return aTruth
	case 'n':
		return aNull
	}
	return aNumber
}

// want refuses a next value of another kind.
func (r *reader) want(k kind) error {
	if got := kindOf(r.next()); got != k {
		return refuse("", string(got+" where "+k+" is wanted"))
	}
	return nil
}

// literal reads a number, true, false or null as it is written.
func (r *reader) literal() string {
	r.next()
	start := r.at
	for r.at < len(r.text) && strings.IndexByte(" \t\n\r,]}", r.text[r.at]) < 0 {
		r.at++
	}
	return string(r.text[start:r.at])
}

func (r *reader) number() (string, error) {
	if err := r.want(aNumber); err != nil {
		return "", err
	}
	return r.literal(), nil
}

// quoted reads a text or a name. It is part of r's text unless that has escapes.
func (r *reader) quoted() []byte {
	r.next()
	r.at++
	start := r.at
	var out []byte // what stands before start, once there is an escape
	for {
		switch r.text[r.at] {
		case '"':
			r.at++
			if out == nil {
				return r.text[start : r.at-1]
			}
			return append(out, r.text[start:r.at-1]...)
		case '\\':
			out = r.escape(append(out, r.text[start:r.at]...))
			start = r.at
		default:
			r.at++
		}
	}
}

// escape reads an escape and appends what it stands for.
func (r *reader) escape(out []byte) []byte {
	c := r.text[r.at+1]
	if c != 'u' {
		r.at += 2
		return append(out, escaped[strings.IndexByte(escapes, c)])
	}
	first := rune(unit(r.text[r.at:]))
	r.at += 6
	if utf16.IsSurrogate(first) {
		first = utf16.DecodeRune(first, rune(unit(r.text[r.at:])))
		r.at += 6
	}
	return utf8.AppendRune(out, first)
}

// skip passes over a value.
func (r *reader) skip() {
	for depth := 0; ; {
		switch r.next() {
		case '{', '[':
			depth++
			r.at++
		case '}', ']':
			depth--
			r.at++
		case '"':
			r.quoted()
		default:
			r.literal()
		}
		if depth == 0 {
			return
		}
	}
}

func (r *reader) list(read func(i int) error) error {
	if err := r.want(aList); err != nil {
		return err
	}
	r.at++
	for i := 0; r.next() != ']'; i++ {
		if err := read(i); err != nil {
			return element("", i, err)
		}
	}
	r.at++
	return nil
}

// short cuts what a message shows of a name or number to a readable length.
func short(text string) string {
	if len(text) > 24 || strings.ContainsFunc(text, func(r rune) bool { return r <= ' ' || r > '~' }) {
		quoted := strconv.QuoteToASCII(text[:min(24, len(text))])
		return quoted + strings.Repeat("...", min(1, len(text)/25))
	}
	return text
}
