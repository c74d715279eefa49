package api

import (
	"slices"
	"strconv"

	"weft.example/fretboard"
	"weft.example/wasm/internal/jsontext"
)

// Fields are the members of an object in a request. What is read of them is
// remembered, so that done can refuse the rest. The first error is kept, and
// what is read after it does not matter.
type fields struct {
	state *state
	path  string // of the object, with a full stop, or empty
	value jsontext.Value
	known []string
}

type state struct{ err error }

func newFields(v jsontext.Value) *fields {
	f := &fields{state: new(state), value: v}
	if v.Kind != jsontext.Object {
		f.refuse("", v.Kind.String()+" where an object is wanted")
	}
	return f
}

// refuse finds fault with the request at a field.
func (f *fields) refuse(name, reason string) { f.fail(requestFault(f.path+name, reason)) }

func (f *fields) fail(err error) {
	if f.state.err == nil {
		f.state.err = err
	}
}

// get returns the value of a field, or false where it is left out or not of the
// kind wanted.
func (f *fields) get(name string, kind jsontext.Kind) (jsontext.Value, bool) {
	f.known = append(f.known, name)
	v, ok := f.value.Member(name)
	if ok && v.Kind != kind {
		f.refuse(name, v.Kind.String()+" where "+kind.String()+" is wanted")
		return v, false
	}
	return v, ok
}

// need refuses a request without a field that has been read.
func (f *fields) need(name string) {
	if _, ok := f.value.Member(name); !ok {
		f.refuse(name, "left out; it must be there")
	}
}

// done refuses fields that nobody asked for.
func (f *fields) done() {
	for _, m := range f.value.Members {
		if !slices.Contains(f.known, m.Name) {
			f.refuse(front(m.Name), "there is no such field here")
		}
	}
}

func (f *fields) text(name string) (string, bool) {
	v, ok := f.get(name, jsontext.Text)
	return v.Text, ok
}

func (f *fields) truth(name string) bool {
	v, _ := f.get(name, jsontext.Bool)
	return v.True
}

// whole returns a whole number of moderate size.
func (f *fields) whole(name string) (int, bool) {
	v, ok := f.get(name, jsontext.Number)
	return f.wholeOf(name, v, ok)
}

const largest = 1_000_000_000

func (f *fields) wholeOf(name string, v jsontext.Value, ok bool) (int, bool) {
	if !ok {
		return 0, false
	}
	n, err := strconv.Atoi(v.Text)
	if err != nil || n < -largest || n > largest {
		f.refuse(name, front(v.Text)+" where a whole number of moderate size is wanted")
		return 0, false
	}
	return n, true
}

// within returns a whole number in a range, or usual where it is left out.
func (f *fields) within(name string, low, high, usual int) int {
	n, ok := f.whole(name)
	if !ok {
		return usual
	}
	if n < low || n > high {
		f.outside(name, strconv.Itoa(n), "choose "+strconv.Itoa(low)+" to "+strconv.Itoa(high))
		return usual
	}
	return n
}

// outside finds fault with a number that a person may have chosen.
func (f *fields) outside(name, text, mend string) {
	f.fail(&fault{code: impossible, field: f.path + name, place: &fretboard.Place{Notation: name, Source: text,
		Length: len(text), Reason: "outside the range", Mend: mend}})
}

// length returns a length above 0, or 0 where it is left out.
func (f *fields) length(name string) fretboard.Millimetres {
	v, ok := f.get(name, jsontext.Number)
	if !ok {
		return 0
	}
	mm, err := strconv.ParseFloat(v.Text, 64)
	if err != nil || mm <= 0 {
		f.outside(name, front(v.Text), "choose a length in millimetres")
	}
	return fretboard.Millimetres(mm)
}

// object returns the fields of an object that must be there.
func (f *fields) object(name string) *fields {
	v, ok := f.get(name, jsontext.Object)
	if !ok {
		f.need(name)
	}
	return &fields{state: f.state, path: f.path + name + ".", value: v}
}

// parsed reads a field by the parser of its notation.
func parsed[T any](f *fields, name string, to *T, parse func(string) (T, error)) {
	text, ok := f.text(name)
	if !ok {
		return
	}
	v, err := parse(text)
	if err != nil {
		f.fail(faultAt(f.path+name, err))
		return
	}
	*to = v
}
