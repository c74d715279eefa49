package fretboard

import (
	"strings"
	"unicode"
)

// A Tuning is the pitches of the open strings, 1 to [MaxStrings] of them, each
// with its spelling. It may be re-entrant. The zero Tuning is standard tuning.
// A double course, as on a mandolin, counts as one string.
//
// Tunings compare with ==, except that the zero Tuning differs from the
// [Standard] one it stands for; [Instrument.Normal] turns the one into the other.
type Tuning struct {
	count int8
	open  [MaxStrings]PitchName // open[s-1] is string s
}

var standard = MustParseTuning("E2 A2 D3 G3 B3 E4")

// Standard returns the six-string guitar's tuning, E2 A2 D3 G3 B3 E4.
func Standard() Tuning { return standard }

func (t Tuning) normal() Tuning {
	if t.count == 0 {
		return standard
	}
	return t
}

// Strings returns how many strings t has: its strings are 1 to that number.
func (t Tuning) Strings() StringNumber { return StringNumber(t.normal().count) }

// All returns the set of t's strings.
func (t Tuning) All() StringSet { return StringsUpTo(t.Strings()) }

// Open returns the pitch of the open string s, which t must have.
func (t Tuning) Open(s StringNumber) PitchName { return t.normal().open[s-1] }

// String prints the open strings, the highest string number first, as shapes
// are read: E2 A2 D3 G3 B3 E4. The text parses to the same tuning.
func (t Tuning) String() string {
	names := make([]string, 0, MaxStrings)
	for s := t.Strings(); s >= 1; s-- {
		names = append(names, t.Open(s).String())
	}
	return strings.Join(names, " ")
}

// Name returns the name under which [ParseTuning] knows t, or the empty string.
func (t Tuning) Name() string {
	if named := t.named(); named != nil {
		return named.name
	}
	return ""
}

func (t Tuning) named() *namedTuning {
	pitches := t.String()
	for i := range namedTunings {
		if namedTunings[i].pitches == pitches {
			return &namedTunings[i]
		}
	}
	return nil
}

// ParseTuning reads a tuning: the name of one ("standard", "drop D", ...; see
// [TuningNames]; case, spaces and hyphens do not matter), or the open strings
// as notes with octaves, the highest string number first: "E2 A2 D3 G3 B3 E4".
// The grammar is tuning.ebnf.
func ParseTuning(text string) (Tuning, error) {
	if err := CheckText("tuning", text); err != nil {
		return Tuning{}, err
	}
	name := simple(text)
	for _, named := range namedTunings {
		if simple(named.name) == name {
			text = named.pitches
		}
	}
	return parsePitches(text)
}

// MustParseTuning is [ParseTuning] for text known to be good; it panics if not.
func MustParseTuning(text string) Tuning {
	t, err := ParseTuning(text)
	if err != nil {
		panic(err)
	}
	return t
}

func parsePitches(text string) (Tuning, error) {
	wrong := func(at, length int, reason string) Place {
		return Place{"tuning", text, at, length, reason,
			"name the open strings from the thickest, such as E2 A2 D3 G3 B3 E4, or a tuning: " +
				strings.Join(TuningNames(), ", ")}
	}
	var t Tuning
	fields := Fields(text, " ,")
	if len(fields) == 0 {
		return Tuning{}, &SyntaxError{wrong(0, 0, "no strings")}
	}
	if n := len(fields); n > MaxStrings {
		return Tuning{}, &ImpossibleError{wrong(fields[MaxStrings].At, len(fields[MaxStrings].Text),
			digits(n)+" strings; the limit is "+digits(MaxStrings))}
	}
	t.count = int8(len(fields))
	for i, f := range fields {
		name, err := ParsePitchName(f.Text)
		if err != nil {
			err = Within(err, "tuning", text, f.At)
			if syntax, ok := err.(*SyntaxError); ok {
				return Tuning{}, &SyntaxError{wrong(f.At, len(f.Text), syntax.Reason)}
			}
			return Tuning{}, err
		}
		t.open[len(fields)-1-i] = name
	}
	return t, nil
}

// simple takes the spaces and hyphens of every kind out of a name and puts it
// in lower case.
func simple(name string) string {
	return strings.Map(func(r rune) rune {
		if r == '_' || unicode.IsSpace(r) || unicode.Is(unicode.Pd, r) {
			return -1
		}
		return unicode.ToLower(r)
	}, name)
}
