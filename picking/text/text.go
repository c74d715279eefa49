// Package text writes a passage as the sheet that a player reads in a terminal
// or pastes into a message: chord names, count, strokes and tab in aligned
// lines, and below them in words what the signs mean, where contour was lost
// and what else is to be said.
//
// The sheet is ASCII, except for what the user typed. It wants a font whose
// characters are all of one width. All bars stand as they are played; a repeat
// stands once if both playings are the same in every pick.
package text

import (
	"io"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are choices for the sheet. The zero Options works.
type Options struct {
	Count picking.CountWords // zero: whatever the meter and the slots call for
	// Width is the longest line in characters, 40 to 1000; 0 means 80. A line
	// is longer only where a single beat or chord name needs more. A bar is
	// split, at a beat, only where it needs a longer line for itself.
	Width int
	// Spelling is how notes are named: in chords, in remarks, on the strings and
	// in the tuning, which ParseTuning then may not read. The sheet says so
	// unless the spelling is English.
	Spelling fretboard.Spelling
}

const (
	usualWidth = 80
	minWidth   = 40
	maxWidth   = 1000
)

// Encode writes the sheet of p to w, in one piece. The error is w's or, for
// options or a passage that cannot be, a [fretboard.ImpossibleError]; then
// nothing is written. The time grows with the picks.
func Encode(w io.Writer, p picking.Passage, o Options) error {
	s, err := newSheet(p, o)
	if err != nil {
		return err
	}
	s.header()
	for _, part := range s.sections() {
		s.writeSection(part)
	}
	s.legend()
	s.notes()
	n, err := w.Write(s.out)
	if err == nil && n < len(s.out) {
		err = io.ErrShortWrite
	}
	return err
}

// A sheet is a passage on its way to text.
type sheet struct {
	picking.Passage
	width     int
	spelling  fretboard.Spelling
	margin    int // characters before the first bar line
	count     picking.CountWords
	silences  []picking.Silence
	figures   bool // more than one figure is played
	signs     signs
	out       []byte
	canvas    [][]byte // the lines of one system
	lineWidth int      // of the system on the canvas
}

func newSheet(p picking.Passage, o Options) (*sheet, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	var err error
	if p.Instrument, err = p.Instrument.Normal(); err != nil {
		return nil, err
	}
	if err := check(p); err != nil {
		return nil, err
	}
	s := &sheet{Passage: p, width: o.Width, spelling: o.Spelling, count: o.Count, silences: p.Silences(), figures: p.ManyFigures()}
	if s.width == 0 {
		s.width = usualWidth
	}
	s.margin = s.marginWidth()
	return s, nil
}

func (o Options) check() error {
	if o.Count > picking.CountSixteenths {
		return refuse("count", o.Count.String(), "no such count", "")
	}
	if o.Spelling > fretboard.MixedGerman {
		return refuse("spelling", o.Spelling.String(), "no such spelling", "")
	}
	if o.Width != 0 && (o.Width < minWidth || o.Width > maxWidth) {
		return refuse("width", strconv.Itoa(o.Width), "not a width for a sheet", "choose 40 to 1000 characters, or 0 for 80")
	}
	return nil
}

// check refuses a passage made by hand that has no place on a sheet.
func check(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	for _, bar := range p.Bars {
		if reason := misfit(bar, p); reason != "" {
			return refuse("passage", "", "bar "+strconv.Itoa(bar.Number)+" "+reason, "let Arrange make the passage")
		}
	}
	return nil
}

// misfit says what is wrong with a bar, if anything is.
func misfit(bar picking.Bar, p picking.Passage) string {
	if bar.Length <= 0 || bar.Length > p.Meter.Bar() {
		return "has no length, or more than the meter's"
	}
	for _, pick := range bar.Picks {
		if pick.At < bar.At || pick.At >= bar.At+bar.Length || pick.Length <= 0 {
			return "has a pick that begins outside it or has no length"
		}
		if !p.Instrument.Tuning.All().Has(pick.String) {
			return "plucks a string that the instrument lacks"
		}
	}
	for _, chord := range bar.Chords {
		if chord.At < bar.At || chord.Length <= 0 || chord.At+chord.Length > bar.At+bar.Length {
			return "has a chord that reaches outside it"
		}
	}
	return ""
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}

// marginWidth returns the room for the longest label and a space.
func (s *sheet) marginWidth() int {
	width := len("sounds")
	for n := range s.Instrument.Tuning.All().Thinnest() {
		width = max(width, len(s.stringLabel(n))+1)
	}
	return width
}

// stringLabel names a string by its number and its open note.
func (s *sheet) stringLabel(n fretboard.StringNumber) string {
	label := strconv.Itoa(int(n)) + " " + s.Instrument.Tuning.Open(n).Note.StringIn(s.spelling)
	if s.Instrument.Tuning.Strings() > 9 && n <= 9 {
		return " " + label
	}
	return label
}
