package json

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// pick returns a pick under the chord that it falls on.
func (b *builder) pick(f pickForm, c picking.HeldChord) (p picking.Pick, err error) {
	p = picking.Pick{At: f.At, Length: f.Length, Rings: f.Rings, Event: f.Event, String: f.String,
		Fret: f.Fret, Pitch: f.Pitch, Travel: f.Travel}
	if err := f.checkPlace(c); err != nil {
		return p, err
	}
	if p.Note, err = parsed("note", fretboard.ParsePitchName, f.Note); err != nil {
		return p, err
	}
	if err := checkNote(p, c.Sounds); err != nil {
		return p, err
	}
	if p.Stroke, err = chosen("stroke", picking.ParseStroke, f.Stroke); err != nil {
		return p, err
	}
	if p.Why, err = chosen("why", picking.ParseWhy, f.Why); err != nil {
		return p, err
	}
	if f.Crossing != "" {
		p.Crossing, err = chosen("crossing", picking.ParseCrossing, f.Crossing)
	}
	return p, err
}

// checkPlace refuses a pick that is not where the chord's fit and shape put it.
func (f pickForm) checkPlace(c picking.HeldChord) error {
	if c.Chord.Silent() {
		return refuse("at", digits(f.At)+"; there is silence")
	}
	if f.Event < 1 || f.Event > len(c.Fit.Strings) {
		return refuse("event", digits(f.Event)+"; the figure's events are 1 to "+digits(len(c.Fit.Strings)))
	}
	if s := c.Fit.Strings[f.Event-1]; f.String != s {
		return refuse("string", digits(f.String)+" where the fit puts event "+digits(f.Event)+" on string "+digits(s))
	}
	if fret, _ := c.Voicing.Shape().Fret(f.String); f.Fret != fret {
		return refuse("fret", digits(f.Fret)+" where "+c.Voicing.Shape().String()+" has "+digits(fret)+" on string "+digits(f.String))
	}
	if pitch := c.Voicing.Pitch(f.String); f.Pitch != pitch {
		return refuse("pitch", digits(f.Pitch)+" where string "+digits(f.String)+", fret "+digits(f.Fret)+" sounds "+digits(pitch))
	}
	return nil
}

// checkNote refuses another pitch than the pick's, and another spelling than
// the sounding chord's of one of its tones. Other tones may be spelled freely.
func checkNote(p picking.Pick, sounds voicing.Chord) error {
	if p.Note.Pitch() != p.Pitch {
		return refuse("note", p.Note.String()+" is pitch "+digits(p.Note.Pitch())+"; the pick sounds "+digits(p.Pitch))
	}
	if n, member := sounds.Spell(p.Pitch.Class()); member && p.Note != p.Pitch.Spell(n) {
		return refuse("note", p.Note.String()+" where "+sounds.String()+" has "+p.Pitch.Spell(n).String())
	}
	return nil
}

// joins checks what follows from one pick to the next, and sums the travel.
func (b *builder) joins() error {
	stops := b.stops()
	k := 0
	for i, bar := range b.passage.Bars {
		for j := range bar.Picks {
			if err := b.join(k, stops[k]); err != nil {
				return element("bars", i, element("picks", j, err))
			}
			b.passage.Travel += b.picks[k].Travel
			k++
		}
	}
	switch want, f := b.passage, b.form.Travel; {
	case f.Spacings != want.Travel:
		return refuse("travel.spacings", digits(f.Spacings)+"; the picks travel "+digits(want.Travel))
	case f.Millimetres != want.TravelLength():
		return refuse("travel.millimetres", shortest(f.Millimetres)+"; "+digits(f.Spacings)+" spacings are "+shortest(want.TravelLength()))
	}
	return nil
}

func (b *builder) join(k int, stop picking.Ticks) error {
	p, n := b.picks[k], len(b.picks)
	next := b.passage.Length()
	if k+1 < n {
		next = b.picks[k+1].At
	}
	var crossing picking.Crossing
	var travel int
	if before := b.picks[(k+n-1)%n]; k > 0 || b.passage.Loop {
		crossing, travel = picking.Cross(b.passage.Instrument.Hand, before.String, before.Stroke, p.String, p.Stroke)
	}
	switch {
	case p.Length < 1 || p.Length > next-p.At:
		return refuse("length", digits(p.Length)+" ticks where the next pick or the end is "+digits(next-p.At)+" away")
	case p.Rings < 1 || p.Rings > stop-p.At:
		return refuse("rings", digits(p.Rings)+" ticks where the string is stopped after "+digits(stop-p.At))
	case p.Crossing != crossing && crossing == picking.NoCrossing:
		return refuse("crossing", strconv.Quote(p.Crossing.String())+"; nothing was struck before, leave the field out")
	case p.Crossing != crossing && p.Crossing == picking.NoCrossing:
		return refuse("crossing", "missing")
	case p.Crossing != crossing:
		return refuse("crossing", strconv.Quote(p.Crossing.String())+" where the strokes make it "+strconv.Quote(crossing.String()))
	case p.Travel != travel:
		return refuse("travel", digits(p.Travel)+" where the strokes lie "+digits(travel)+" apart")
	}
	return nil
}
