package jsontext

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// A Writer writes one JSON value on one line. Its methods take the name of the
// member that they write, which needs no escapes, or an empty name for an
// element of a list and for the whole value. The zero Writer is ready.
type Writer struct {
	// Limit is the most bytes wanted; 0 means no limit. Past it nothing is
	// written, and Over reports true.
	Limit int

	out  []byte
	over bool
}

// Over reports whether the value has more bytes than the limit.
func (w *Writer) Over() bool { return w.over }

// Bytes returns what has been written.
func (w *Writer) Bytes() []byte { return w.out }

// begin writes what stands before a value: a comma unless it is the first, and
// the name.
func (w *Writer) begin(name string) {
	if w.Limit > 0 && len(w.out) > w.Limit {
		w.out, w.over = w.out[:0], true
	}
	if n := len(w.out); n > 0 && w.out[n-1] != '{' && w.out[n-1] != '[' {
		w.out = append(w.out, ',')
	}
	if name != "" {
		w.out = append(w.out, '"')
		w.out = append(w.out, name...)
		w.out = append(w.out, '"', ':')
	}
}

// Object writes an object whose members the function writes.
func (w *Writer) Object(name string, members func()) {
	w.begin(name)
	w.out = append(w.out, '{')
	members()
	w.out = append(w.out, '}')
}

// List writes a list whose elements the function writes.
func (w *Writer) List(name string, elements func()) {
	w.begin(name)
	w.out = append(w.out, '[')
	elements()
	w.out = append(w.out, ']')
}

// Null writes null.
func (w *Writer) Null(name string) {
	w.begin(name)
	w.out = append(w.out, "null"...)
}

// Bool writes true or false.
func (w *Writer) Bool(name string, v bool) {
	w.begin(name)
	w.out = strconv.AppendBool(w.out, v)
}

// Int writes a whole number.
func (w *Writer) Int(name string, v int) {
	w.begin(name)
	w.out = strconv.AppendInt(w.out, int64(v), 10)
}

// Float writes a finite number as JavaScript prints it, in the fewest digits
// that read back as the same one.
func (w *Writer) Float(name string, v float64) {
	w.begin(name)
	const small, large = 1e-6, 1e21
	if size := math.Abs(v); size != 0 && (size < small || size >= large) {
		w.out = strconv.AppendFloat(w.out, v, 'e', -1, 64)
		if n := len(w.out); n > 4 && w.out[n-4] == 'e' && w.out[n-2] == '0' { // e-07
			w.out = append(w.out[:n-2], w.out[n-1])
		}
		return
	}
	w.out = strconv.AppendFloat(w.out, v, 'f', -1, 64)
}

// Text writes a text.
func (w *Writer) Text(name, v string) {
	w.begin(name)
	w.out = append(w.out, '"')
	start := 0
	for at := 0; at < len(v); {
		size, plain := look(v[at:])
		if plain {
			at += size
			continue
		}
		w.out = append(w.out, v[start:at]...)
		w.escape(v[at : at+size])
		at += size
		start = at
	}
	w.out = append(w.out, v[start:]...)
	w.out = append(w.out, '"')
}

// look returns the size of the first character and whether it needs no escape.
func look(v string) (size int, plain bool) {
	if c := v[0]; c < utf8.RuneSelf {
		return 1, c >= ' ' && c != '"' && c != '\\'
	}
	if isHalf(v) {
		return 3, false
	}
	c, size := utf8.DecodeRuneInString(v)
	// The two line separators end a line in old JavaScript.
	return size, !(c == utf8.RuneError && size == 1) && c != '\u2028' && c != '\u2029'
}

// isHalf reports whether v begins with half a surrogate pair; see the package.
func isHalf(v string) bool {
	return len(v) >= 3 && v[0] == 0xed && v[1] >= 0xa0 && v[1] < 0xc0 && v[2] >= 0x80 && v[2] < 0xc0
}

const digits = "0123456789abcdef"

func (w *Writer) escape(v string) {
	c, _ := utf8.DecodeRuneInString(v)
	if isHalf(v) {
		c = 0xd000 | rune(v[1]&0x3f)<<6 | rune(v[2]&0x3f)
	}
	for i := range len(escaped) {
		if c == rune(escaped[i]) && c != '/' {
			w.out = append(w.out, '\\', escapes[i])
			return
		}
	}
	w.out = append(w.out, '\\', 'u', digits[c>>12&15], digits[c>>8&15], digits[c>>4&15], digits[c&15])
}

// Units returns how many UTF-16 units a text has once it is written and read by
// JavaScript: two for a character beyond U+FFFF, one for any other, for half a
// surrogate pair and for a byte that is not UTF-8.
func Units(text string) int {
	n := 0
	for at := 0; at < len(text); n++ {
		if isHalf(text[at:]) {
			at += 3
			continue
		}
		c, size := utf8.DecodeRuneInString(text[at:])
		if c > math.MaxUint16 {
			n++
		}
		at += size
	}
	return n
}
