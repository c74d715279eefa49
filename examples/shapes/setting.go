package main

import (
	"strings"

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
	var capo int
	for _, err := range []error{
		cli.Read(&s.instrument.Tuning, fretboard.ParseTuning, r.tuning),
		cli.Read(&capo, cli.Number("behind", "choose a fret; 0 means no capo"), r.behind),
		cli.Read(&s.instrument.Hand, fretboard.ParseHand, r.hand),
		cli.Read(&s.spelling, fretboard.ParseSpelling, r.spelling),
		cli.Read(&s.format, cli.ParseFormat, r.format),
		cli.Read(&s.aim, changes.ParseAim, r.aim),
		cli.Read(&s.count, whole("count", 1, 100, "1 to 100 can be listed"), r.count),
		cli.Read(&s.limits.Fingers, whole("fingers", 1, 4, "a hand has 1 to 4 fingers to fret with"), r.fingers),
		cli.Read(&s.limits.Span, readSpan, r.span),
	} {
		if err != nil {
			return nil, err
		}
	}
	s.instrument.Capo = fretboard.Fret(capo)
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
		return r.ofInstrument(err)
	}
	if err := s.readWindow(r); err != nil {
		return err
	}
	if r.given["key"] {
		if s.key, err = voicing.ParseKeyIn(r.key, s.spelling); err != nil {
			return err
		}
	}
	if r.given["sounding"] {
		s.limits.Sounding, err = readStrings(r.sounding, s.instrument.Tuning.Strings())
	}
	return err
}

// ofInstrument locates an error about an instrument in the flag that gave what
// cannot be: its tuning or its capo, since nothing else of it is left to be wrong.
func (r *request) ofInstrument(err error) error {
	located, ok := err.(fretboard.Located)
	if !ok {
		return err
	}
	place := located.Where()
	if place.Notation == "tuning" {
		return cli.Impossible("tuning", r.tuning, place.Reason, "tune it lower")
	}
	return fretboard.Within(err, "behind", r.behind, 0)
}

// flagged renames the place of an error about a shape after the flag that gave
// it; all other errors have the name of theirs.
func flagged(err error) error {
	located, ok := err.(fretboard.Located)
	if !ok {
		return err
	}
	place := located.Where()
	if place.Notation != "shape" {
		return err
	}
	return fretboard.Within(err, "name", place.Source, 0)
}

// narrowed says what to do where the limits leave nothing.
func (s *setting) narrowed(otherwise string) string {
	if len(s.limited) == 0 {
		return otherwise
	}
	return "widen " + strings.Join(s.limited, " ") + ", or " + otherwise
}
