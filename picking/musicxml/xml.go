package musicxml

import (
	"io"
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// An xmlWriter writes elements, each on a line of its own, indented by depth.
// Names of attributes and their values come in turn. It keeps the first error
// of w and then writes no more.
type xmlWriter struct {
	w     io.Writer
	out   []byte
	depth int
	err   error
}

// raw writes a line as it is.
func (x *xmlWriter) raw(line string) { x.out = append(append(x.out, line...), '\n') }

// open begins an element that holds others.
func (x *xmlWriter) open(name string, attributes ...string) {
	x.tag(name, attributes)
	x.out = append(x.out, ">\n"...)
	x.depth++
}

// shut ends the element that open began.
func (x *xmlWriter) shut(name string) {
	x.depth--
	x.indent()
	x.end(name)
}

// text writes an element that holds text, made safe for XML.
func (x *xmlWriter) text(name, text string, attributes ...string) {
	x.tag(name, attributes)
	x.out = append(x.out, '>')
	x.escape(text)
	x.end(name)
}

func (x *xmlWriter) number(name string, n int, attributes ...string) {
	x.tag(name, attributes)
	x.out = strconv.AppendInt(append(x.out, '>'), int64(n), 10)
	x.end(name)
}

// empty writes an element that holds nothing.
func (x *xmlWriter) empty(name string, attributes ...string) {
	x.tag(name, attributes)
	x.out = append(x.out, "/>\n"...)
}

func (x *xmlWriter) tag(name string, attributes []string) {
	x.indent()
	x.out = append(append(x.out, '<'), name...)
	for i := 0; i+1 < len(attributes); i += 2 {
		x.out = append(append(append(x.out, ' '), attributes[i]...), `="`...)
		x.escape(attributes[i+1])
		x.out = append(x.out, '"')
	}
}

func (x *xmlWriter) end(name string) {
	x.out = append(append(append(x.out, "</"...), name...), ">\n"...)
}

func (x *xmlWriter) indent() {
	for range x.depth {
		x.out = append(x.out, "  "...)
	}
}

// escape writes text with the marks of XML named. What does not print is a
// question mark: XML 1.0 holds few control characters, and none is for a score.
func (x *xmlWriter) escape(text string) {
	x.out = append(x.out, escapes.Replace(fretboard.Printable(text))...)
}

var escapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// flush hands on what is written so far.
func (x *xmlWriter) flush() {
	if x.err == nil {
		var n int
		if n, x.err = x.w.Write(x.out); x.err == nil && n < len(x.out) {
			x.err = io.ErrShortWrite
		}
	}
	x.out = x.out[:0]
}
