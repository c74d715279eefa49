package json

import (
	"strconv"

	"weft.example/fretboard"
)

// An Error is a field that cannot be read, or that contradicts the others.
type Error struct {
	Path   string // the field, such as bars[3].picks[2].pitch; empty for the whole object
	Reason string // what is wrong
	Err    error  // what the parser of the field's notation said, or nil
}

// Error prints the path and the reason on one line.
func (e *Error) Error() string {
	if e.Path == "" {
		return "passage: " + e.Reason
	}
	return e.Path + ": " + e.Reason
}

// Unwrap returns what the parser of the field's notation said, or nil.
func (e *Error) Unwrap() error { return e.Err }

// The two below stay out of line: there are so many reasons that the copies
// would take room in a program for a browser.

//go:noinline
func refuse(path, reason string) error { return &Error{Path: path, Reason: reason} }

// digits prints a number of the form for a reason.
//
//go:noinline
func digits[N ~int](n N) string { return strconv.Itoa(int(n)) }

// shortest prints n in the fewest digits that read back as the same number.
func shortest[N ~float64](n N) string { return strconv.FormatFloat(float64(n), 'g', -1, 64) }

// within returns err with its path moved under a parent field. Paths are built
// from the inside out, so that reading what is sound costs nothing for them.
func within(parent string, err error) error {
	e, ok := err.(*Error)
	if !ok {
		return err
	}
	dot := "."
	if e.Path == "" || e.Path[0] == '[' {
		dot = ""
	}
	return &Error{parent + dot + e.Path, e.Reason, e.Err}
}

// element is within for element i of a list.
func element(list string, i int, err error) error {
	return within(list+"["+digits(i)+"]", err)
}

// parsed reads a field by the parser of its notation.
func parsed[T any](path string, parse func(string) (T, error), text string) (T, error) {
	value, err := parse(text)
	if err != nil {
		err = &Error{path, err.Error(), err}
	}
	return value, err
}

// chosen reads a field that holds one of a few words, written exactly so.
func chosen[T interface{ String() string }](path string, parse func(string) (T, error), text string) (T, error) {
	value, err := parsed(path, parse, text)
	if err == nil && value.String() != text {
		err = refuse(path, strconv.Quote(text)+"; write it "+value.String())
	}
	return value, err
}

// checkTexts refuses remarks that no parser of the module would read.
func checkTexts(path string, texts []string) error {
	for i, text := range texts {
		if err := fretboard.CheckText("remark", text); err != nil {
			return element(path, i, &Error{Reason: err.Error(), Err: err})
		}
	}
	return nil
}
