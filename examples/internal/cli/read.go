package cli

import (
	"fmt"
	"io"
	"strconv"

	"weft.example/fretboard"
)

// A Format is a form of output.
type Format int

// The formats.
const (
	TextFormat Format = iota
	JSONFormat
)

var formatNames = []string{TextFormat: "text", JSONFormat: "json"}

// ParseFormat reads text or json.
func ParseFormat(text string) (Format, error) {
	i, err := fretboard.ParseName("format", formatNames, text)
	return Format(i), err
}

// Read parses a flag's text into value.
func Read[T any](value *T, parse func(string) (T, error), text string) (err error) {
	*value, err = parse(text)
	return err
}

// Number returns a parser of whole numbers.
func Number(notation, mend string) func(string) (int, error) {
	return func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || strconv.Itoa(n) != text {
			return 0, &fretboard.SyntaxError{Place: fretboard.Place{Notation: notation, Source: text,
				Length: len(text), Reason: "not a whole number", Mend: mend}}
		}
		return n, nil
	}
}

// Within returns a parser of whole numbers from least to most.
func Within(notation string, least, most int) func(string) (int, error) {
	mend := fmt.Sprintf("choose %d to %d", least, most)
	return func(text string) (int, error) {
		n, err := Number(notation, mend)(text)
		if err == nil && (n < least || n > most) {
			err = Impossible(notation, text, "out of range", mend)
		}
		return n, err
	}
}

// ReadChart returns a flag's chart or, where it is -, what stands on standard
// input, of which it reads a little more than a chart may be long at most.
func ReadChart(flag, text string, stdin io.Reader) (string, error) {
	if text != "-" {
		return text, nil
	}
	chart, err := io.ReadAll(io.LimitReader(stdin, fretboard.MaxText+1))
	if err != nil {
		return "", fmt.Errorf("standard input: %w", err)
	}
	if len(chart) > fretboard.MaxText {
		return "", &fretboard.ImpossibleError{Place: fretboard.Place{Notation: flag, Source: string(chart),
			Offset: fretboard.MaxText, Reason: fmt.Sprintf("more than %d bytes of text", fretboard.MaxText), Mend: "split the song"}}
	}
	return string(chart), nil
}

// Impossible returns an error about the whole of a flag's text.
func Impossible(flag, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: flag, Source: text, Length: len(text),
		Reason: reason, Mend: mend}}
}
