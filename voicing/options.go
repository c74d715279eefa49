package voicing

import (
	"strconv"

	"weft.example/fretboard"
)

// Options narrow what [Find] and [Best] look for, and weigh what makes one
// voicing better than another. The zero Options are the usual ones.
type Options struct {
	// Low and High bound the frets held, counted from the capo, open strings
	// apart. A High of 0 is the last fret.
	Low, High fretboard.Fret
	// Span bounds the distance from the lowest to the highest fret held, up to
	// 150 mm; 0 means 105: frets 1 to 4 of a guitar, 5 to 9, 12 to 18.
	Span     fretboard.Millimetres
	Fingers  int                 // so many fingers can hold the shape, 1 to 4; 0 means 4
	Sounding fretboard.StringSet // strings that may not be muted
	Closed   bool                // whether no string may be open
	BassLow  bool                // whether the slash bass or else the root must sound lowest, on any instrument
	Weights  Weights
}

// usualSpan is the reach of a hand (common practice: four frets from the nut
// of a guitar, five from fret 5).
const usualSpan fretboard.Millimetres = 105

// widestSpan is further than hands reach: frets 1 to 5 of a guitar are 126 mm.
const widestSpan fretboard.Millimetres = 150

// normal returns o with every zero field replaced by what it means on g, which
// is normal, or an [fretboard.ImpossibleError].
func (o Options) normal(g fretboard.Instrument) (Options, error) {
	if o.High == 0 {
		o.High = g.Reach()
	}
	if o.Span == 0 {
		o.Span = usualSpan
	}
	if o.Fingers == 0 {
		o.Fingers = maxFingers
	}
	return o, o.check(g)
}

// Check returns nil, or the [fretboard.ImpossibleError] that says what of g or o
// cannot be; [Find] yields nothing then.
func (o Options) Check(g fretboard.Instrument) error {
	g, err := g.Normal()
	if err == nil {
		_, err = o.normal(g)
	}
	return err
}

// check refuses normal options that cannot be met on g.
func (o Options) check(g fretboard.Instrument) error {
	refuse := func(what, text, reason, mend string) error {
		return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: what, Source: text, Length: len(text),
			Reason: reason, Mend: mend}}
	}
	switch {
	case o.High < 0:
		return refuse("highest fret", digits(o.High), "no such fret", "0 means the last")
	case o.Low < 0:
		return refuse("lowest fret", digits(o.Low), "no such fret", "0 means the first")
	case o.Low > o.High:
		return refuse("lowest fret", digits(o.Low), "frets "+digits(o.Low)+" to "+digits(o.High)+" are no window", "choose a lower one")
	case o.High > g.Reach():
		return refuse("highest fret", digits(o.High), "the last fret from the capo is "+digits(g.Reach()), "0 means the last")
	case !(o.Span > 0 && o.Span <= widestSpan):
		return refuse("span", strconv.FormatFloat(float64(o.Span), 'g', -1, 64), "a hand spans up to 150 mm", "0 means 105")
	case o.Fingers < 1 || o.Fingers > maxFingers:
		return refuse("fingers", digits(o.Fingers), "a hand has 1 to 4 fingers to fret with", "0 means 4")
	case o.Sounding&^g.Tuning.All() != 0:
		missing := (o.Sounding &^ g.Tuning.All()).Nth(0)
		return refuse("sounding string", digits(missing), "the instrument has strings 1 to "+digits(g.Tuning.Strings()),
			"name strings that it has")
	}
	return o.Weights.check(refuse)
}
