package main

import (
	"fmt"
	"regexp"
	"strconv"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
)

// Every number means itself: none stands for the usual one, which is had by
// leaving the flag out.

// whole returns a parser of whole numbers from least to most; reason is what it
// says of others.
func whole(flag string, least, most int, reason string) func(string) (int, error) {
	mend := fmt.Sprintf("choose %d to %d", least, most)
	if least == most {
		mend = fmt.Sprintf("choose %d", most)
	}
	return func(text string) (int, error) {
		n, err := cli.Number(flag, mend)(text)
		if err == nil && (n < least || n > most) {
			err = cli.Impossible(flag, text, reason, mend)
		}
		return n, err
	}
}

// readWindow reads the frets that may be held, once it is known where the neck
// ends.
func (s *setting) readWindow(r *request) error {
	end := int(s.instrument.Reach())
	if r.given["high"] {
		high, err := whole("high", 1, end, fmt.Sprintf("the last fret from the capo is %d", end))(r.high)
		if err != nil {
			return err
		}
		s.limits.High, end = fretboard.Fret(high), high
	}
	low, err := whole("low", 1, end, fmt.Sprintf("the frets that may be held are 1 to %d", end))(r.low)
	s.limits.Low = fretboard.Fret(low)
	return err
}

// plainNumber is how a length is written: 105 or 82.5.
var plainNumber = regexp.MustCompile(`^(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// readSpan reads a length in millimetres.
func readSpan(text string) (fretboard.Millimetres, error) {
	const mend = "choose 1 to 150, such as 105"
	if !plainNumber.MatchString(text) {
		return 0, &fretboard.SyntaxError{Place: fretboard.Place{Notation: "span", Source: text, Length: len(text),
			Reason: "not a length in millimetres", Mend: mend}}
	}
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil || mm < 1 || mm > 150 {
		return 0, cli.Impossible("span", text, "a hand spans up to 150 mm", mend)
	}
	return fretboard.Millimetres(mm), nil
}

// readStrings reads string numbers of an instrument.
func readStrings(text string, last fretboard.StringNumber) (set fretboard.StringSet, err error) {
	if err := fretboard.CheckText("sounding", text); err != nil {
		return 0, err
	}
	const mend = "write string numbers, such as 4 3 2"
	for _, f := range fretboard.Fields(text, " ,") {
		n, err := strconv.Atoi(f.Text)
		place := fretboard.Place{Notation: "sounding", Source: text, Offset: f.At, Length: len(f.Text)}
		switch {
		case err != nil || strconv.Itoa(n) != f.Text:
			place.Reason, place.Mend = "not a string number", mend
			return 0, &fretboard.SyntaxError{Place: place}
		case n < 1 || n > int(last):
			place.Reason, place.Mend = "no such string", "the instrument has strings 1 to "+strconv.Itoa(int(last))
			return 0, &fretboard.ImpossibleError{Place: place}
		}
		set = set.With(fretboard.StringNumber(n))
	}
	if set == 0 {
		return 0, &fretboard.SyntaxError{Place: fretboard.Place{Notation: "sounding", Source: text, Length: len(text),
			Reason: "no string is named", Mend: mend}}
	}
	return set, nil
}
