package picking

import (
	"strconv"

	"weft.example/fretboard"
)

// A Setting says how a progression and figures become a passage. Every zero
// field means the usual choice.
type Setting struct {
	Title      string
	Meter      Meter                // zero: 4/4
	Tempo      int                  // the meter's beats a minute, 10 to 400; 0 means 80
	Instrument fretboard.Instrument // zero: a six-string guitar in standard tuning
	Strokes    Tradition            // zero: toward the next string
	Fit        Moulding             // zero: contour
	Change     Change               // zero: restart
	Fill       Fill                 // zero: again
	InTurn     bool                 // take the figures in turn, one a chord, where a chord names none
	Once       bool                 // play once and let the last chord ring, rather than loop
}

// A Change says what a figure does when the chord changes.
type Change uint8

// At a change of chord the figure starts again (Restart) or runs on (Carry).
const (
	Restart Change = iota
	Carry
)

var changeNames = [...]string{"restart", "carry"}

// String returns restart or carry.
func (c Change) String() string { return fretboard.NameOf(changeNames[:], int(c)) }

// ParseChange reads restart or carry.
func ParseChange(text string) (Change, error) {
	i, err := fretboard.ParseName("change", changeNames[:], text)
	return Change(i), err
}

// A Fill says what happens when a figure ends before its chord.
type Fill uint8

// The figure starts again, its last turn cut at the change (Again), or its
// last note rings to the bar line or the change, whichever comes first, and
// the figure starts again there (Ring).
const (
	Again Fill = iota
	Ring
)

var fillNames = [...]string{"again", "ring"}

// String returns again or ring.
func (f Fill) String() string { return fretboard.NameOf(fillNames[:], int(f)) }

// ParseFill reads again or ring.
func ParseFill(text string) (Fill, error) {
	i, err := fretboard.ParseName("fill", fillNames[:], text)
	return Fill(i), err
}

// The slowest and the fastest tempo, in the meter's beats a minute.
const (
	MinTempo = 10
	MaxTempo = 400

	usualTempo = 80
)

// normal fills in what zero fields mean and refuses what cannot be.
func (s Setting) normal() (Setting, error) {
	if err := fretboard.CheckText("title", s.Title); err != nil {
		return s, err
	}
	s.Meter = s.Meter.normal()
	if !s.Meter.valid() {
		return s, &fretboard.ImpossibleError{Place: meterPlace(s.Meter.String())}
	}
	if s.Tempo == 0 {
		s.Tempo = usualTempo
	}
	if s.Tempo < MinTempo || s.Tempo > MaxTempo {
		return s, refuse("tempo", digits(s.Tempo), "not a tempo to practise at",
			"choose "+digits(MinTempo)+" to "+digits(MaxTempo)+" beats a minute")
	}
	for _, choice := range []struct {
		notation string
		value    int
		names    []string
	}{
		{"strokes", int(s.Strokes), traditionNames[:]},
		{"fit", int(s.Fit), mouldingNames[:]},
		{"change", int(s.Change), changeNames[:]},
		{"fill", int(s.Fill), fillNames[:]},
	} {
		if choice.value >= len(choice.names) {
			return s, refuse(choice.notation, digits(choice.value), "no such choice", "")
		}
	}
	var err error
	s.Instrument, err = s.Instrument.Normal()
	return s, err
}

// digits prints a count or a string for a sentence.
func digits[N ~int](n N) string { return strconv.Itoa(int(n)) }

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
