package json

import (
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
		return refuse("at", "%d; there is silence", f.At)
	}
	if f.Event < 1 || f.Event > len(c.Fit.Strings) {
		return refuse("event", "%d; the figure's events are 1 to %d", f.Event, len(c.Fit.Strings))
	}
	if s := c.Fit.Strings[f.Event-1]; f.String != s {
		return refuse("string", "%d where the fit puts event %d on string %d", f.String, f.Event, s)
	}
	if fret, _ := c.Voicing.Shape().Fret(f.String); f.Fret != fret {
		return refuse("fret", "%d where %s has %d on string %d", f.Fret, c.Voicing.Shape(), fret, f.String)
	}
	if pitch := c.Voicing.Pitch(f.String); f.Pitch != pitch {
		return refuse("pitch", "%d where string %d, fret %d sounds %d", f.Pitch, f.String, f.Fret, pitch)
	}
	return nil
}

// checkNote refuses another pitch than the pick's, and another spelling than
// the sounding chord's of one of its tones. Other tones may be spelled freely.
func checkNote(p picking.Pick, sounds voicing.Chord) error {
	if p.Note.Pitch() != p.Pitch {
		return refuse("note", "%s is pitch %d; the pick sounds %d", p.Note, p.Note.Pitch(), p.Pitch)
	}
	if n, member := sounds.Spell(p.Pitch.Class()); member && p.Note != p.Pitch.Spell(n) {
		return refuse("note", "%s where %s has %s", p.Note, sounds, p.Pitch.Spell(n))
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
		return refuse("travel.spacings", "%d; the picks travel %d", f.Spacings, want.Travel)
	case f.Millimetres != want.TravelLength():
		return refuse("travel.millimetres", "%v; %d spacings are %v", f.Millimetres, f.Spacings, want.TravelLength())
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
		return refuse("length", "%d ticks where the next pick or the end is %d away", p.Length, next-p.At)
	case p.Rings < 1 || p.Rings > stop-p.At:
		return refuse("rings", "%d ticks where the string is stopped after %d", p.Rings, stop-p.At)
	case p.Crossing != crossing && crossing == picking.NoCrossing:
		return refuse("crossing", "%q; nothing was struck before, leave the field out", p.Crossing)
	case p.Crossing != crossing && p.Crossing == picking.NoCrossing:
		return refuse("crossing", "missing")
	case p.Crossing != crossing:
		return refuse("crossing", "%q where the strokes make it %q", p.Crossing, crossing)
	case p.Travel != travel:
		return refuse("travel", "%d where the strokes lie %d apart", p.Travel, travel)
	}
	return nil
}
