package json

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// A writer writes the form on one line.
type writer struct{ out []byte }

func (w *writer) object(f form) {
	w.out = append(w.out, '{')
	f.members(w)
	w.out = append(w.out, '}')
}

func (w *writer) must(name string, v value) {
	if w.out[len(w.out)-1] != '{' {
		w.out = append(w.out, ',')
	}
	w.out = append(w.out, '"')
	w.out = append(w.out, name...)
	w.out = append(w.out, '"', ':')
	v.write(w)
}

func (w *writer) may(name string, v value) {
	if !v.empty() {
		w.must(name, v)
	}
}

func (w *writer) list(n int, element func(i int)) {
	w.out = append(w.out, '[')
	for i := range n {
		if i > 0 {
			w.out = append(w.out, ',')
		}
		element(i)
	}
	w.out = append(w.out, ']')
}

// number writes a finite number as ECMAScript prints it: in the fewest digits
// that read back as the same one, very small and very large ones with an
// exponent.
func (w *writer) number(v float64) {
	const small, large = 1e-6, 1e21
	if size := math.Abs(v); size == 0 || size >= small && size < large {
		w.out = strconv.AppendFloat(w.out, v, 'f', -1, 64)
		return
	}
	w.out = strconv.AppendFloat(w.out, v, 'e', -1, 64)
	if n := len(w.out); w.out[n-3] == '-' && w.out[n-2] == '0' { // e-09 is e-9
		w.out = append(w.out[:n-2], w.out[n-1])
	}
}

// quoted writes a text. The line separators of Unicode are escaped: once they
// ended a line within a text of JavaScript.
func (w *writer) quoted(text string) {
	w.out = append(w.out, '"')
	start := 0
	for at, c := range text {
		if c >= ' ' && c != '"' && c != '\\' && c != '\u2028' && c != '\u2029' {
			continue
		}
		w.out = append(w.out, text[start:at]...)
		w.escape(c)
		start = at + utf8.RuneLen(c)
	}
	w.out = append(w.out, text[start:]...)
	w.out = append(w.out, '"')
}

// The letters of the short escapes, and what they stand for.
const escapes, escaped = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

func (w *writer) escape(c rune) {
	const hex = "0123456789abcdef"
	for i := range len(escaped) {
		if c == rune(escaped[i]) {
			w.out = append(w.out, '\\', escapes[i])
			return
		}
	}
	w.out = append(w.out, '\\', 'u', hex[c>>12&15], hex[c>>8&15], hex[c>>4&15], hex[c&15])
}
