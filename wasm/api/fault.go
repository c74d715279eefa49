package api

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/wasm/internal/jsontext"
)

// The codes of errors.
const (
	syntax     = "syntax"
	impossible = "impossible"
	request    = "request"
	internal   = "internal"
)

// A fault is an error on its way to the caller.
type fault struct {
	code, field string
	reason      string           // where no place has one
	place       *fretboard.Place // nil where no text is at fault
	mends       []mend
}

// Error prints e on one line.
func (e *fault) Error() string {
	if e.place == nil {
		if e.field == "" {
			return e.reason
		}
		return e.field + ": " + e.reason
	}
	p := e.place
	text := p.Notation + ": "
	if at := p.Text(); at != "" {
		text += strconv.Quote(front(at)) + ": "
	}
	text += p.Reason
	if p.Mend != "" {
		text += "; " + p.Mend
	}
	return text
}

const shown = 40 // characters of a text that a message shows

// front cuts a text for a message.
func front(text string) string {
	n := 0
	for at := range text {
		if n++; n > shown {
			return text[:at] + "..."
		}
	}
	return text
}

func requestFault(field, reason string) error {
	return &fault{code: request, field: field, reason: reason}
}

// internalFault tells of a panic.
func internalFault(recovered any) error {
	reason := "a defect of the library"
	switch r := recovered.(type) {
	case error:
		reason += ": " + r.Error()
	case string:
		reason += ": " + r
	}
	return &fault{code: internal, reason: reason}
}

// faultAt says which field an error of the library concerns.
func faultAt(field string, err error) error {
	f := faultOf(err)
	f.field = field
	return f
}

// faultOf makes a fault of any error.
func faultOf(err error) *fault {
	switch e := err.(type) {
	case *fault:
		return e
	case *fretboard.SyntaxError:
		return &fault{code: syntax, place: &e.Place}
	case *fretboard.ImpossibleError:
		return &fault{code: impossible, place: &e.Place}
	}
	return &fault{code: internal, reason: err.Error()}
}

func (e *fault) write(w *jsontext.Writer, name string) {
	w.Object(name, func() {
		w.Text("code", e.code)
		w.Text("message", e.Error())
		w.Text("field", e.field)
		if e.place == nil {
			w.Null("place")
			return
		}
		e.writePlace(w)
	})
}

// writePlace counts in UTF-16 units, as JavaScript does.
func (e *fault) writePlace(w *jsontext.Writer) {
	p := e.place
	offset := min(max(p.Offset, 0), len(p.Source))
	w.Object("place", func() {
		w.Text("notation", p.Notation)
		w.Text("source", p.Source)
		w.Int("offset", jsontext.Units(p.Source[:offset]))
		w.Int("length", max(jsontext.Units(p.Text()), min(p.Length, 1)))
		w.Text("reason", p.Reason)
		w.Text("mend", p.Mend)
		w.List("mends", func() {
			for _, m := range e.mends {
				w.Object("", func() {
					w.Text("write", m.write)
					w.Text("text", m.text)
				})
			}
		})
	})
}
