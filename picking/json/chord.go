package json

import (
	"strconv"

	"slices"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

func (b *builder) chord(f chordForm) (c picking.HeldChord, err error) {
	c.At, c.Length, c.Figure = f.At, f.Length, f.Figure
	if c.Chord, err = parsed("symbol", voicing.ParseChord, f.Symbol); err != nil {
		return c, err
	}
	if c.Sounds, err = parsed("sounds", voicing.ParseChord, f.Sounds); err != nil {
		return c, err
	}
	if err := b.checkSounds(c.Chord, c.Sounds); err != nil {
		return c, err
	}
	if c.Chord.Silent() {
		return c, f.checkSilent()
	}
	if err := f.checkWhole(); err != nil {
		return c, err
	}
	shape, err := parsed("shape", voicing.ParseShape, f.Shape)
	if err != nil {
		return c, err
	}
	if c.Voicing, err = voicing.New(b.passage.Instrument, c.Chord, shape); err != nil {
		return c, &Error{"shape", err.Error(), err}
	}
	if err := f.checkVoicing(c.Voicing); err != nil {
		return c, err
	}
	c.Remarks = f.Fit.Remarks
	c.Fit, err = f.Fit.read(c.Voicing)
	return c, within("fit", err)
}

// checkSounds refuses what chord does not sound with the capo. The letters by
// which the capo moves the chords' names are the same in the whole passage.
func (b *builder) checkSounds(chord, sounds voicing.Chord) error {
	if chord.Silent() {
		if !sounds.Silent() {
			return refuse("sounds", sounds.String()+" where nothing sounds")
		}
		return nil
	}
	capo := b.passage.Instrument.Capo
	left, found := b.letters, false
	var usual voicing.Chord
	for letters := range left {
		if !left[letters] {
			continue
		}
		moved := chord.Transpose(fretboard.Interval{Letters: letters, Semitones: int(capo % 12)})
		left[letters] = moved == sounds
		found = found || moved == sounds
		if usual.Silent() || abs(moved.Root().Accidental) < abs(usual.Root().Accidental) {
			usual = moved
		}
	}
	if !found {
		return refuse("sounds", sounds.String()+" where "+chord.String()+" with the capo on fret "+digits(capo)+" sounds "+usual.String())
	}
	b.letters = left
	return nil
}

func abs(a int8) int8 { return max(a, -a) }

// checkSilent refuses what N.C. cannot have.
func (f chordForm) checkSilent() error {
	for _, given := range []struct {
		name string
		is   bool
	}{{"figure", f.Figure != 0}, {"shape", f.Shape != ""}, {"start", f.Start != nil},
		{"bass", f.Bass != 0}, {"root", f.Root != 0}, {"fit", f.Fit != nil}} {
		if given.is {
			return refuse(given.name, "silence has none; leave the field out")
		}
	}
	return nil
}

// checkWhole refuses a chord that lacks what all but N.C. have.
func (f chordForm) checkWhole() error {
	switch {
	case f.Figure < 0:
		return refuse("figure", digits(f.Figure)+"; figures are counted from 1")
	case f.Figure == 0:
		return refuse("figure", "missing")
	case f.Shape == "":
		return refuse("shape", "missing")
	case f.Start == nil:
		return refuse("start", "missing")
	case f.Bass == 0:
		return refuse("bass", "missing")
	case f.Fit == nil:
		return refuse("fit", "missing")
	}
	return nil
}

func (f chordForm) checkVoicing(v voicing.Voicing) error {
	start := v.Start()
	root, sounds := v.Root()
	switch {
	case f.Start.String != start.String:
		return refuse("start.string", digits(f.Start.String)+" where "+v.Shape().String()+" as "+v.Chord().String()+" starts on string "+digits(start.String))
	case f.Start.Reason != start.Reason.String():
		return refuse("start.reason", strconv.Quote(f.Start.Reason)+" where string "+digits(start.String)+" is the start for the reason "+strconv.Quote(start.Reason.String()))
	case f.Bass != v.Bass():
		return refuse("bass", digits(f.Bass)+" where string "+digits(v.Bass())+" of "+v.Shape().String()+" sounds lowest")
	case f.Root != root && !sounds:
		return refuse("root", digits(f.Root)+" where no string of "+v.Shape().String()+" sounds the root of "+v.Chord().String()+"; leave the field out")
	case f.Root == 0 && sounds:
		return refuse("root", "missing; string "+digits(root)+" of "+v.Shape().String()+" sounds the root of "+v.Chord().String())
	case f.Root != root:
		return refuse("root", digits(f.Root)+" where string "+digits(root)+" of "+v.Shape().String()+" is the lowest to sound the root of "+v.Chord().String())
	}
	return nil
}

// read returns the fit, whose losses [builder.losses] holds against the picks.
func (f *fitForm) read(v voicing.Voicing) (fit picking.Fit, err error) {
	fit = picking.Fit{Strings: f.Strings, CSIM: f.CSIM, CPlusSIM: f.CPlusSIM}
	if n := len(f.Strings); n < 1 || n > picking.MaxSlots {
		return fit, refuse("strings", digits(n)+" of them; a figure plucks 1 to "+digits(picking.MaxSlots))
	}
	for i, s := range f.Strings {
		if !v.Sounding().Has(s) {
			return fit, element("strings", i, refuse("", digits(s)+"; "+v.Shape().String()+" does not sound that string"))
		}
	}
	switch {
	case !(f.CSIM >= 0 && f.CSIM <= 1):
		return fit, refuse("csim", shortest(f.CSIM)+"; the range is 0 to 1")
	case !(f.CPlusSIM >= 0 && f.CPlusSIM <= 1):
		return fit, refuse("cplussim", shortest(f.CPlusSIM)+"; the range is 0 to 1")
	}
	for i, l := range f.Losses {
		loss, err := l.read(len(f.Strings))
		if err == nil && slices.Contains(fit.Losses, loss) {
			err = refuse("", "given twice")
		}
		if err != nil {
			return fit, element("losses", i, err)
		}
		fit.Losses = append(fit.Losses, loss)
	}
	return fit, checkTexts("remarks", f.Remarks)
}

func (f lossForm) read(events int) (l picking.Loss, err error) {
	l.From, l.To = f.From, f.To
	switch {
	case l.From < 1 || l.From > events:
		return l, refuse("from", digits(l.From)+"; the figure's events are 1 to "+digits(events))
	case l.To != l.From%events+1:
		return l, refuse("to", digits(l.To)+"; after event "+digits(l.From)+" of "+digits(events)+" comes "+digits(l.From%events+1))
	}
	if l.Want, err = chosen("want", picking.ParseDirection, f.Want); err != nil {
		return l, err
	}
	if l.Got, err = chosen("got", picking.ParseDirection, f.Got); err != nil {
		return l, err
	}
	if l.Want == l.Got {
		return l, refuse("got", l.Got.String()+" as wanted; nothing is lost")
	}
	return l, nil
}
