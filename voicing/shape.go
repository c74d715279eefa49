package voicing

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// A Shape says for each string whether it is fretted, open or muted. It reads
// from the highest string number to string 1: x32010 mutes string 6. Frets are
// counted from the capo, 0 to 36. Shapes compare with ==; the zero Shape has
// no strings.
type Shape struct {
	count  int8
	stops  [fretboard.MaxStrings]int8 // stops[s-1] of string s, if it sounds
	sounds fretboard.StringSet
}

// NewShape returns the shape of a number of strings, all muted; [Shape.With]
// adds those that sound. It panics on more than 12 strings or fewer than 0.
func NewShape(strings fretboard.StringNumber) Shape {
	if strings < 0 || strings > fretboard.MaxStrings {
		panic("voicing: NewShape: " + digits(strings) + " strings")
	}
	return Shape{count: int8(strings)}
}

// With returns sh with string s stopped at fret f, 0 for open. It panics if sh
// lacks string s or f is not a fret.
func (sh Shape) With(s fretboard.StringNumber, f fretboard.Fret) Shape {
	if s < 1 || s > sh.Strings() || f < 0 || f > fretboard.MaxFrets {
		panic("voicing: Shape.With: string " + digits(s) + ", fret " + digits(f))
	}
	sh.stops[s-1] = int8(f)
	sh.sounds = sh.sounds.With(s)
	return sh
}

// Strings returns how many strings sh speaks of.
func (sh Shape) Strings() fretboard.StringNumber { return fretboard.StringNumber(sh.count) }

// Fret returns where string s is stopped, or false if it is muted.
func (sh Shape) Fret(s fretboard.StringNumber) (fretboard.Fret, bool) {
	if !sh.sounds.Has(s) {
		return 0, false
	}
	return fretboard.Fret(sh.stops[s-1]), true
}

// Sounding returns the strings that are not muted.
func (sh Shape) Sounding() fretboard.StringSet { return sh.sounds }

// String prints sh: one character a string, or hyphens between the strings if
// a fret is above 9; a hyphen follows where there is but one string. The text
// parses to the same shape.
func (sh Shape) String() string {
	var marks [fretboard.MaxStrings]string
	separator := ""
	for s := sh.Strings(); s >= 1; s-- {
		mark := "x"
		if f, sounds := sh.Fret(s); sounds {
			mark = digits(f)
		}
		if len(mark) > 1 {
			separator = "-"
		}
		marks[sh.Strings()-s] = mark
	}
	if sh.Strings() == 1 {
		return marks[0] + separator
	}
	return strings.Join(marks[:sh.Strings()], separator)
}

// ParseShape reads a shape: for each string from the highest number to 1 a
// fret, 0 for open, or x for muted, close together (x32010) or, with any fret
// above 9, separated by hyphens or spaces (x-10-12-12-12-10). On one string,
// 12- is fret 12 and 12 is two strings. The grammar is shape.ebnf.
func ParseShape(text string) (Shape, error) {
	if err := fretboard.CheckText("shape", text); err != nil {
		return Shape{}, err
	}
	marks := shapeMarks(text)
	if len(marks) == 0 {
		return Shape{}, &fretboard.SyntaxError{Place: shapePlace(text, fretboard.Field{}, "no strings")}
	}
	if len(marks) > fretboard.MaxStrings {
		return Shape{}, &fretboard.ImpossibleError{Place: shapePlace(text, marks[fretboard.MaxStrings],
			digits(len(marks))+" strings; the limit is "+digits(fretboard.MaxStrings))}
	}
	sh := NewShape(fretboard.StringNumber(len(marks)))
	for i, mark := range marks {
		if mark.Text == "x" || mark.Text == "X" {
			continue
		}
		fret, err := parseFret(text, mark)
		if err != nil {
			return Shape{}, err
		}
		sh = sh.With(sh.Strings()-fretboard.StringNumber(i), fret)
	}
	return sh, nil
}

// shapeMarks cuts a shape into one field a string.
func shapeMarks(text string) []fretboard.Field {
	const dashes = " ,-\u2010\u2011\u2012\u2013\u2014\u2212"
	marks := fretboard.Fields(text, dashes)
	if len(marks) != 1 || strings.TrimSpace(text) != marks[0].Text {
		return marks
	}
	together := marks[0]
	marks = marks[:0]
	for at, r := range together.Text {
		marks = append(marks, fretboard.Field{Text: string(r), At: together.At + at})
	}
	return marks
}

func parseFret(text string, mark fretboard.Field) (fretboard.Fret, error) {
	for _, r := range mark.Text {
		if r < '0' || r > '9' {
			return 0, &fretboard.SyntaxError{Place: shapePlace(text, mark, "neither a fret nor x")}
		}
	}
	n, err := strconv.Atoi(mark.Text)
	if err != nil || n > int(fretboard.MaxFrets) {
		return 0, &fretboard.ImpossibleError{Place: shapePlace(text, mark,
			"no fret "+mark.Text+"; the limit is "+digits(fretboard.MaxFrets))}
	}
	return fretboard.Fret(n), nil
}

func shapePlace(text string, at fretboard.Field, reason string) fretboard.Place {
	return fretboard.Place{Notation: "shape", Source: text, Offset: at.At, Length: len(at.Text), Reason: reason,
		Mend: "write a fret, 0 or x for each string from the thickest, such as x32010 or x-10-12-12-12-10"}
}
