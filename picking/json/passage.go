package json

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// A builder turns the form into a passage. The model computes anew all that
// follows from shapes, tuning, capo and strokes; what the form says must agree.
type builder struct {
	form    passageForm
	passage picking.Passage
	picks   []picking.Pick // of all bars
	letters [7]bool        // by which the chords may be respelled at the capo
}

// passageOf returns the passage that f describes.
func passageOf(f passageForm) (picking.Passage, error) {
	b := builder{form: f}
	for _, step := range []func() error{b.head, b.instrument, b.bars, b.joins, b.losses} {
		if err := step(); err != nil {
			return picking.Passage{}, err
		}
	}
	return b.passage, nil
}

func (b *builder) head() (err error) {
	f, p := &b.form, &b.passage
	switch {
	case f.Version != Version:
		return refuse("version", digits(f.Version)+"; this library reads version "+digits(Version))
	case f.TicksPerQuarter != picking.TicksPerQuarter:
		return refuse("ticksPerQuarter", digits(f.TicksPerQuarter)+"; the form counts "+digits(picking.TicksPerQuarter))
	case f.Tempo < picking.MinTempo || f.Tempo > picking.MaxTempo:
		return refuse("tempo", digits(f.Tempo)+" beats a minute; the range is "+digits(picking.MinTempo)+" to "+digits(picking.MaxTempo))
	}
	if err := fretboard.CheckText("title", f.Title); err != nil {
		return &Error{"title", err.Error(), err}
	}
	p.Title, p.Tempo, p.Loop, p.Remarks = f.Title, f.Tempo, f.Loop, f.Remarks
	if p.Meter, err = parsed("meter", picking.ParseMeter, f.Meter); err != nil {
		return err
	}
	if p.Strokes, err = chosen("strokes", picking.ParseTradition, f.Strokes); err != nil {
		return err
	}
	if p.Fit, err = chosen("fit", picking.ParseMoulding, f.Fit); err != nil {
		return err
	}
	return checkTexts("remarks", f.Remarks)
}

func (b *builder) instrument() (err error) {
	f, g := &b.form, &b.passage.Instrument
	switch { // zero would mean a usual choice
	case f.Frets == 0:
		return refuse("frets", "0; an instrument has 1 to "+digits(fretboard.MaxFrets)+" frets")
	case f.ScaleLength == 0:
		return refuse("scaleLength", "0; it is a length in millimetres")
	case f.StringSpacing == 0:
		return refuse("stringSpacing", "0; it is a length in millimetres")
	}
	if g.Tuning, err = parsed("tuning", fretboard.ParseTuning, f.Tuning); err != nil {
		return err
	}
	if g.Hand, err = chosen("hand", fretboard.ParseHand, f.Hand); err != nil {
		return err
	}
	g.Frets, g.Capo, g.Scale, g.Spacing = f.Frets, f.Capo, f.ScaleLength, f.StringSpacing
	for letters := range b.letters {
		b.letters[letters] = letters == 0 || g.Capo%12 != 0
	}
	if _, err := g.Normal(); err != nil {
		return &Error{instrumentPath(err), err.Error(), err}
	}
	return nil
}

// instrumentPath returns the field that an instrument's error speaks of.
func instrumentPath(err error) string {
	var name string
	if located, ok := err.(fretboard.Located); ok {
		name = located.Where().Notation
	}
	switch name {
	case "scale length":
		return "scaleLength"
	case "string spacing":
		return "stringSpacing"
	}
	return name
}

func (b *builder) bars() error {
	n := 0
	for _, bar := range b.form.Bars {
		n += len(bar.Picks)
	}
	b.picks = make([]picking.Pick, 0, n)
	switch n := len(b.form.Bars); {
	case n == 0:
		return refuse("bars", "none; a passage has at least one")
	case n > picking.MaxBars:
		return refuse("bars", digits(n)+"; the limit is "+digits(picking.MaxBars))
	}
	b.passage.Bars = make([]picking.Bar, len(b.form.Bars))
	for i, f := range b.form.Bars {
		bar, err := b.bar(i, f)
		if err != nil {
			return element("bars", i, err)
		}
		b.passage.Bars[i] = bar
	}
	return nil
}

func (b *builder) bar(i int, f barForm) (bar picking.Bar, err error) {
	length := b.passage.Meter.Bar()
	at := picking.Ticks(i) * length
	switch {
	case f.Number != i+1:
		return bar, refuse("number", digits(f.Number)+" where bar "+digits(i+1)+" stands")
	case f.Written < 1 || f.Written > f.Number:
		return bar, refuse("written", digits(f.Written)+"; bar "+digits(f.Number)+" plays one of the bars written up to it, from 1")
	case f.Pass != 1 && f.Pass != 2:
		return bar, refuse("pass", digits(f.Pass)+"; it is 1, or 2 in the second playing of a repeat")
	case f.At != at:
		return bar, refuse("at", digits(f.At)+" where the bars before take "+digits(at)+" ticks")
	case f.Length != length:
		return bar, refuse("length", digits(f.Length)+"; a bar of "+b.passage.Meter.String()+" lasts "+digits(length)+" ticks")
	}
	bar = picking.Bar{Number: f.Number, Written: f.Written, Pass: f.Pass, At: at, Length: length}
	if bar.Chords, err = b.chords(f); err != nil {
		return bar, err
	}
	bar.Picks, err = b.pluck(f, bar.Chords)
	return bar, err
}

func (b *builder) chords(f barForm) ([]picking.HeldChord, error) {
	chords := make([]picking.HeldChord, len(f.Chords))
	at, end := f.At, f.At+f.Length
	for j, c := range f.Chords {
		var err error
		switch {
		case c.At != at:
			err = refuse("at", digits(c.At)+" where the chords before end at "+digits(at))
		case c.Length < 1 || c.Length > end-at:
			err = refuse("length", digits(c.Length)+" ticks where "+digits(end-at)+" are left of the bar")
		default:
			chords[j], err = b.chord(c)
		}
		if err != nil {
			return nil, element("chords", j, err)
		}
		at += c.Length
	}
	if at != end {
		return nil, refuse("chords", "they last "+digits(at-f.At)+" ticks of the bar's "+digits(f.Length))
	}
	return chords, nil
}

// pluck returns the picks of a bar under its chords. What lies between two
// picks is checked by joins.
func (b *builder) pluck(f barForm, chords []picking.HeldChord) ([]picking.Pick, error) {
	from, at, chord := len(b.picks), f.At, 0
	for j, p := range f.Picks {
		if p.At < at || p.At >= f.At+f.Length {
			return nil, element("picks", j, refuse("at", digits(p.At)+"; the bar ends at "+digits(f.At+f.Length)+", and the next pick may begin at "+digits(at)))
		}
		for p.At >= chords[chord].At+chords[chord].Length {
			chord++
		}
		pick, err := b.pick(p, chords[chord])
		if err != nil {
			return nil, element("picks", j, err)
		}
		b.picks = append(b.picks, pick)
		at = p.At + 1
	}
	return b.picks[from:len(b.picks):len(b.picks)], nil
}
