// Package words writes a passage as prose that a screen reader reads aloud or a
// braille display shows: how the part is set up, every chord string by string,
// and every bar beat by beat.
//
// Sentences are short and say one fact each, always in the same order. They
// hold no signs but full stops, commas and colons; numbers are digits, and
// chords and notes are named in words. Plain text and HTML say the same. A bar
// that is played like an earlier one refers to it.
//
// Two words tell the way over the strings: on is toward string 1, back is away
// from it.
package words

import (
	"io"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are choices for the words. The zero Options gives plain text, each
// heading after an empty line and each sentence or beat on a line of its own.
type Options struct {
	// HTML asks for a page instead: headings of three levels to jump by, lists,
	// and links from a bar to the one it is like. It needs nothing from
	// elsewhere, and it is well-formed XML too.
	HTML bool
	// Width is the longest line of plain text in characters, 12 to 1000, as a
	// braille display has cells; 0 breaks no line. A word that is longer is cut.
	Width int
}

const (
	minWidth = 12
	maxWidth = 1000
)

// Encode writes the words of p to w, in one piece. The error is w's or, for
// options or a passage that cannot be, a [fretboard.ImpossibleError]; then
// nothing is written. The time grows with the picks and, at worst, with the
// square of the bars.
func Encode(w io.Writer, p picking.Passage, o Options) error {
	if err := o.check(); err != nil {
		return err
	}
	var err error
	if p.Instrument, err = p.Instrument.Normal(); err != nil {
		return err
	}
	if err := check(p); err != nil {
		return err
	}
	text := newPart(p).tell()
	out := plain(text, o.Width)
	if o.HTML {
		out = page(text)
	}
	n, err := w.Write(out)
	if err == nil && n < len(out) {
		err = io.ErrShortWrite
	}
	return err
}

func (o Options) check() error {
	text := strconv.Itoa(o.Width)
	if o.Width != 0 && (o.Width < minWidth || o.Width > maxWidth) {
		return refuse("width", text, "not a width for lines of words", "choose 12 to 1000 characters, or 0 to break no line")
	}
	if o.HTML && o.Width != 0 {
		return refuse("width", text, "a page breaks its lines itself", "leave the width at 0")
	}
	return nil
}

// check refuses a passage made by hand that cannot be told.
func check(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	if p.Strokes > picking.Jig {
		return refuse("strokes", strconv.Itoa(int(p.Strokes)), "no such choice", "")
	}
	if p.Fit > picking.Shift {
		return refuse("fit", strconv.Itoa(int(p.Fit)), "no such choice", "")
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
	at := bar.At
	for _, pick := range bar.Picks {
		if pick.At < at || pick.At >= bar.At+bar.Length || pick.Length <= 0 {
			return "has a pick that begins outside it, comes too late or has no length"
		}
		if !p.Instrument.Tuning.All().Has(pick.String) || pick.Fret < 0 || pick.Fret > fretboard.MaxFrets {
			return "plucks a string or a fret that the instrument lacks"
		}
		at = pick.At
	}
	at = bar.At
	for _, chord := range bar.Chords {
		if chord.At < at || chord.Length <= 0 || chord.At+chord.Length > bar.At+bar.Length {
			return "has a chord that reaches outside it or into another"
		}
		at = chord.At + chord.Length
	}
	return ""
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
