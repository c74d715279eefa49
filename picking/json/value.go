package json

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// A form is an object of the form: it hands its members on in the order of
// writing.
type form interface{ members(members) }

// Members takes the members of an object: what a [writer] writes and what an
// [objectReader] looks for.
type members interface {
	must(name string, v value)
	may(name string, v value) // left out where it does not apply
}

// A value is where the value of a member stands in a form.
type value interface {
	write(*writer)
	read(*reader) error
	empty() bool // does not apply
}

type (
	intValue     int
	floatValue   float64
	textValue    string
	boolValue    bool
	textsValue   []string
	stringsValue []fretboard.StringNumber
)

func (v *intValue) write(w *writer)   { w.out = strconv.AppendInt(w.out, int64(*v), 10) }
func (v *floatValue) write(w *writer) { w.number(float64(*v)) }
func (v *textValue) write(w *writer)  { w.quoted(string(*v)) }
func (v *boolValue) write(w *writer)  { w.out = strconv.AppendBool(w.out, bool(*v)) }
func (v *textsValue) write(w *writer) { w.list(len(*v), func(i int) { w.quoted((*v)[i]) }) }
func (v *stringsValue) write(w *writer) {
	w.list(len(*v), func(i int) { (*intValue)(&(*v)[i]).write(w) })
}

func (v *intValue) empty() bool     { return *v == 0 }
func (v *floatValue) empty() bool   { return *v == 0 }
func (v *textValue) empty() bool    { return *v == "" }
func (v *boolValue) empty() bool    { return !bool(*v) }
func (v *textsValue) empty() bool   { return *v == nil }
func (v *stringsValue) empty() bool { return *v == nil }

// maxNumber bounds whole numbers, so that sums of a few fit into 32 bits.
const maxNumber = 1 << 29

func (v *intValue) read(r *reader) error {
	literal, err := r.number()
	if err != nil {
		return err
	}
	n, err := strconv.ParseInt(literal, 10, 64)
	switch {
	case strings.Trim(literal, "-0123456789") != "":
		return refuse("", short(literal)+" where a whole number is wanted")
	case err != nil || n < -maxNumber || n > maxNumber:
		return refuse("", short(literal)+" is out of range")
	}
	*v = intValue(n)
	return nil
}

func (v *floatValue) read(r *reader) error {
	literal, err := r.number()
	if err != nil {
		return err
	}
	n, err := strconv.ParseFloat(literal, 64)
	if err != nil {
		return refuse("", short(literal)+" is out of range")
	}
	*v = floatValue(n)
	return nil
}

func (v *textValue) read(r *reader) error {
	err := r.want(aText)
	if err == nil {
		*v = textValue(r.quoted())
	}
	return err
}

func (v *boolValue) read(r *reader) error {
	err := r.want(aTruth)
	if err == nil {
		*v = r.literal() == "true"
	}
	return err
}

func (v *textsValue) read(r *reader) error {
	return r.list(func(i int) error {
		*v = append(*v, "")
		return (*textValue)(&(*v)[i]).read(r)
	})
}

func (v *stringsValue) read(r *reader) error {
	return r.list(func(i int) error {
		*v = append(*v, 0)
		return (*intValue)(&(*v)[i]).read(r)
	})
}
