package main

import (
	"strconv"
	"strings"
	"unicode"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A setting is the flags understood, but for what is asked for.
type setting struct {
	verb       string
	instrument fretboard.Instrument
	limits     voicing.Options
	limited    []string // the flags that narrow what may be held
	told       []string // the same and -beginner, with their values
	aim        changes.Aim
	loop       bool
	key        voicing.Key
	count      int
	spelling   fretboard.Spelling
	format     cli.Format
}

// understand parses the flags that serve more than one verb. Its errors are
// located in the flag that they concern.
func (r *request) understand(verb string) (*setting, error) {
	s := &setting{verb: verb, loop: !r.once}
	var capo, low, high int
	for _, err := range []error{
		cli.Read(&s.instrument.Tuning, fretboard.ParseTuning, r.tuning),
		cli.Read(&capo, cli.Number("behind", "choose a fret; 0 means no capo"), r.behind),
		cli.Read(&s.instrument.Hand, fretboard.ParseHand, r.hand),
		cli.Read(&s.spelling, fretboard.ParseSpelling, r.spelling),
		cli.Read(&s.format, cli.ParseFormat, r.format),
		cli.Read(&s.aim, changes.ParseAim, r.aim),
		cli.Read(&s.count, cli.Number("count", "choose 1 to 100"), r.count),
		cli.Read(&low, cli.Number("low", "choose a fret"), r.low),
		cli.Read(&high, cli.Number("high", "choose a fret; 0 means the last"), r.high),
		cli.Read(&s.limits.Fingers, cli.Number("fingers", "choose 1 to 4"), r.fingers),
		cli.Read(&s.limits.Span, parseSpan, r.span),
	} {
		if err != nil {
			return nil, err
		}
	}
	s.instrument.Capo, s.limits.Low, s.limits.High = fretboard.Fret(capo), fretboard.Fret(low), fretboard.Fret(high)
	s.limits.Closed, s.limits.BassLow = r.closed, r.bass
	if r.beginner {
		s.limits.Weights = voicing.Beginner()
	}
	s.tell(r)
	return s, s.complete(r)
}

// tell keeps the limits as the command line has them.
func (s *setting) tell(r *request) {
	s.told = []string{}
	for _, limit := range [][2]string{{"low", r.low}, {"high", r.high}, {"span", r.span}, {"fingers", r.fingers}, {"sounding", r.sounding}} {
		if r.given[limit[0]] {
			s.limited = append(s.limited, "-"+limit[0])
			s.told = append(s.told, "-"+limit[0]+" "+limit[1])
		}
	}
	if r.closed {
		s.limited, s.told = append(s.limited, "-closed"), append(s.told, "-closed")
	}
	if r.bass {
		s.limited, s.told = append(s.limited, "-bass"), append(s.told, "-bass")
	}
	if r.beginner {
		s.told = append(s.told, "-beginner")
	}
}

// complete parses what depends on other flags, and checks them together.
func (s *setting) complete(r *request) (err error) {
	if s.instrument, err = s.instrument.Normal(); err != nil {
		return fretboard.Within(err, "behind", r.behind, 0) // all else of the instrument is parsed already
	}
	if s.limits.Fingers == 0 { // which would mean the usual four
		return cli.Impossible("fingers", r.fingers, "without fingers only open strings sound", "choose 1 to 4")
	}
	if err := s.checkCount(r.count); err != nil {
		return err
	}
	if r.given["key"] {
		if s.key, err = parseKey(r.key, s.spelling); err != nil {
			return err
		}
	}
	s.limits.Sounding, err = parseStrings(r.sounding, s.instrument.Tuning.Strings())
	return err
}

// More than few shapes of a chord are only found by finding all, which with
// many strings are millions.
const (
	few, most   = 8, 100
	manyStrings = 9
)

func (s *setting) checkCount(text string) error {
	strings := s.instrument.Tuning.Strings()
	switch {
	case s.count < 1 || s.count > most:
		return cli.Impossible("count", text, "not a number of shapes to list", "choose 1 to 100")
	case s.verb == "chord" && s.count > few && strings > manyStrings:
		return cli.Impossible("count", text, "too many to find on "+strconv.Itoa(int(strings))+" strings", "choose 1 to 8")
	}
	return nil
}

// parseSpan reads a length in millimetres.
func parseSpan(text string) (fretboard.Millimetres, error) {
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, &fretboard.SyntaxError{Place: fretboard.Place{Notation: "span", Source: text, Length: len(text),
			Reason: "not a length in millimetres", Mend: "write a number, such as 105"}}
	}
	return fretboard.Millimetres(mm), nil
}

// parseStrings reads string numbers of an instrument.
func parseStrings(text string, last fretboard.StringNumber) (set fretboard.StringSet, err error) {
	if err := fretboard.CheckText("sounding", text); err != nil {
		return 0, err
	}
	for _, f := range fretboard.Fields(text, " ,") {
		n, err := strconv.Atoi(f.Text)
		place := fretboard.Place{Notation: "sounding", Source: text, Offset: f.At, Length: len(f.Text)}
		switch {
		case err != nil:
			place.Reason, place.Mend = "not a string number", "write string numbers, such as 4 3 2"
			return 0, &fretboard.SyntaxError{Place: place}
		case n < 1 || n > int(last):
			place.Reason, place.Mend = "no such string", "the instrument has strings 1 to "+strconv.Itoa(int(last))
			return 0, &fretboard.ImpossibleError{Place: place}
		}
		set = set.With(fretboard.StringNumber(n))
	}
	return set, nil
}

// parseKey reads a key named in a spelling; a small letter alone is a minor key.
func parseKey(text string, spelling fretboard.Spelling) (voicing.Key, error) {
	english := text
	if spelling != fretboard.English {
		note, size, err := fretboard.ScanNoteIn(text, spelling)
		if err != nil {
			return voicing.Key{}, fretboard.Within(err, "key", text, 0)
		}
		english = note.String() + text[size:]
		if size == 0 {
			english = text
		} else if size == len(text) && unicode.IsLower(rune(text[0])) {
			english += "m"
		}
	}
	key, err := voicing.ParseKey(english)
	if located, ok := err.(fretboard.Located); ok && english != text {
		place := located.Where()
		err = &fretboard.SyntaxError{Place: fretboard.Place{Notation: "key", Source: text, Length: len(text), Reason: place.Reason, Mend: place.Mend}}
	}
	return key, err
}

// flagged renames the place of an error after the flag that set it.
func flagged(err error) error {
	located, ok := err.(fretboard.Located)
	if !ok {
		return err
	}
	place := located.Where()
	name, known := map[string]string{"shape": "name", "lowest fret": "low", "highest fret": "high"}[place.Notation]
	if !known {
		return err
	}
	return fretboard.Within(err, name, place.Source, 0)
}

// narrowed says what to do where the limits leave nothing.
func (s *setting) narrowed(otherwise string) string {
	if len(s.limited) == 0 {
		return otherwise
	}
	return "widen " + strings.Join(s.limited, " ") + ", or " + otherwise
}
