package jsontext

import (
	"strconv"
	"unicode/utf8"
)

// The limits of what is read.
const (
	MaxSize   = 1 << 20 // bytes
	MaxDepth  = 8       // lists and objects within each other
	MaxValues = 1 << 10 // in all
)

// An Error says why a text is not read, and where.
type Error struct {
	Offset int // bytes
	Reason string
}

// Error prints e on one line.
func (e *Error) Error() string { return "byte " + strconv.Itoa(e.Offset) + ": " + e.Reason }

// Read reads one JSON value and nothing after it. The error is an [Error].
func Read(text string) (Value, error) {
	if len(text) > MaxSize {
		return Value{}, &Error{MaxSize, strconv.Itoa(len(text)) + " bytes; the limit is " + strconv.Itoa(MaxSize)}
	}
	r := reader{text: text}
	v := r.value(0)
	r.space()
	if r.at < len(text) {
		r.refuse("text after the value")
	}
	if r.err != nil {
		return Value{}, r.err
	}
	return v, nil
}

// A reader reads on until its first error, then nothing more.
type reader struct {
	text   string
	at     int
	values int
	err    error
}

func (r *reader) refuse(reason string) {
	if r.err == nil {
		r.err = &Error{r.at, reason}
		r.text = r.text[:r.at]
	}
}

// next returns the next byte, or 0 at the end. A NUL in the text is no sign of
// JSON either.
func (r *reader) next() byte {
	if r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

func (r *reader) space() {
	for c := r.next(); c == ' ' || c == '\t' || c == '\n' || c == '\r'; c = r.next() {
		r.at++
	}
}

// take passes over a sign and reports whether it was there.
func (r *reader) take(sign byte) bool {
	r.space()
	if r.at < len(r.text) && r.text[r.at] == sign {
		r.at++
		return true
	}
	return false
}

func (r *reader) value(depth int) Value {
	r.space()
	if r.values++; r.values > MaxValues {
		r.refuse("more than " + strconv.Itoa(MaxValues) + " values")
		return Value{}
	}
	switch c := r.next(); {
	case c == '"':
		return Value{Kind: Text, Text: r.quoted()}
	case c == '-' || isDigit(c):
		return Value{Kind: Number, Text: r.number()}
	case c != '[' && c != '{':
		return r.word()
	case depth == MaxDepth:
		r.refuse("more than " + strconv.Itoa(MaxDepth) + " levels")
		return Value{}
	case c == '[':
		return r.list(depth + 1)
	}
	return r.object(depth + 1)
}

var words = [...]struct {
	text  string
	value Value
}{{"null", Value{}}, {"true", Value{Kind: Bool, True: true}}, {"false", Value{Kind: Bool}}}

func (r *reader) word() Value {
	for _, w := range words {
		if rest := r.text[r.at:]; len(rest) >= len(w.text) && rest[:len(w.text)] == w.text {
			r.at += len(w.text)
			return w.value
		}
	}
	r.refuse("no JSON value")
	return Value{}
}

func (r *reader) list(depth int) Value {
	v := Value{Kind: List, List: []Value{}}
	r.take('[')
	if r.take(']') {
		return v
	}
	for r.err == nil {
		v.List = append(v.List, r.value(depth))
		if r.take(']') {
			return v
		}
		if !r.take(',') {
			r.refuse("neither a comma nor the end of a list")
		}
	}
	return Value{}
}

func (r *reader) object(depth int) Value {
	v := Value{Kind: Object}
	r.take('{')
	if r.take('}') {
		return v
	}
	for r.err == nil {
		v.Members = append(v.Members, r.member(v, depth))
		if r.take('}') {
			return v
		}
		if !r.take(',') {
			r.refuse("neither a comma nor the end of an object")
		}
	}
	return Value{}
}

func (r *reader) member(of Value, depth int) Member {
	r.space()
	start := r.at
	if r.next() != '"' {
		r.refuse("no name in quotes")
		return Member{}
	}
	name := r.quoted()
	if _, twice := of.Member(name); twice {
		r.at = start
		r.refuse("a name given twice")
	}
	if !r.take(':') {
		r.refuse("no colon after a name")
	}
	return Member{name, r.value(depth)}
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// number returns a number as it is written.
func (r *reader) number() string {
	start := r.at
	if r.next() == '-' {
		r.at++
	}
	if r.next() == '0' {
		r.at++
	} else {
		r.digits()
	}
	if r.next() == '.' {
		r.at++
		r.digits()
	}
	if c := r.next(); c == 'e' || c == 'E' {
		r.at++
		if c := r.next(); c == '+' || c == '-' {
			r.at++
		}
		r.digits()
	}
	if r.err != nil {
		return ""
	}
	return r.text[start:r.at]
}

func (r *reader) digits() {
	if !isDigit(r.next()) {
		r.refuse("no digit where a number wants one")
	}
	for isDigit(r.next()) {
		r.at++
	}
}

// quoted reads a text in quotes.
func (r *reader) quoted() string {
	r.at++
	start := r.at
	var out []byte // what stands before start, once there is an escape
	for r.at < len(r.text) {
		switch c := r.text[r.at]; {
		case c == '"':
			r.at++
			if out == nil {
				return r.text[start : r.at-1]
			}
			return string(append(out, r.text[start:r.at-1]...))
		case c == '\\':
			out = append(out, r.text[start:r.at]...)
			out = r.escape(out)
			start = r.at
		case c < ' ':
			r.refuse("a control character in a text")
		case c < utf8.RuneSelf:
			r.at++
		default:
			r.character()
		}
	}
	r.refuse("a text without its end")
	return ""
}

func (r *reader) character() {
	c, size := utf8.DecodeRuneInString(r.text[r.at:])
	if c == utf8.RuneError && size == 1 {
		r.refuse("not valid UTF-8")
		return
	}
	r.at += size
}

const escapes, escaped = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

// escape reads an escape and appends what it stands for.
func (r *reader) escape(out []byte) []byte {
	r.at++
	for i := range len(escapes) {
		if r.next() == escapes[i] {
			r.at++
			return append(out, escaped[i])
		}
	}
	if r.next() != 'u' {
		r.refuse("no such escape")
		return out
	}
	r.at++
	c := r.hex()
	if isHigh(c) && len(r.text)-r.at >= 6 && r.text[r.at:r.at+2] == `\u` {
		back := r.at
		r.at += 2
		if low := r.hex(); isLow(low) {
			return utf8.AppendRune(out, 0x10000+(c-0xd800)<<10+(low-0xdc00))
		}
		r.at = back
	}
	if isHigh(c) || isLow(c) {
		return append(out, 0xe0|byte(c>>12), 0x80|byte(c>>6&0x3f), 0x80|byte(c&0x3f))
	}
	return utf8.AppendRune(out, c)
}

func isHigh(c rune) bool { return 0xd800 <= c && c < 0xdc00 }

func isLow(c rune) bool { return 0xdc00 <= c && c < 0xe000 }

// hex reads four hexadecimal digits.
func (r *reader) hex() (c rune) {
	for range 4 {
		d := r.next()
		switch {
		case isDigit(d):
			d -= '0'
		case 'a' <= d|0x20 && d|0x20 <= 'f':
			d = d | 0x20 - 'a' + 10
		default:
			r.refuse("no hexadecimal digit in an escape")
			return 0
		}
		c = c<<4 | rune(d)
		r.at++
	}
	return c
}
