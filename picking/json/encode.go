package json

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are how a passage is written. There is nothing to choose yet: the
// same passage always gives the same bytes.
type Options struct{}

// Encode writes p as one JSON object on one line. What it writes, [Decode]
// reads back as an equal passage. A passage that [Decode] would refuse, which
// [picking.Arrange] never makes, is refused here with the same [Error], and
// nothing is written. Other errors are w's. Linear in the size of p.
func Encode(w io.Writer, p picking.Passage, _ Options) error {
	if err := checkHeld(p); err != nil {
		return err
	}
	f := formOf(p)
	if _, err := passageOf(f); err != nil {
		return err
	}
	var out writer
	out.object(&f)
	out.out = append(out.out, '\n')
	if n := len(out.out); n > MaxSize {
		return refuse("", digits(n)+" bytes of JSON; the limit is "+digits(MaxSize))
	}
	_, err := w.Write(out.out)
	return err
}

// checkHeld refuses what the form has no room for: a chord that says one thing
// and its voicing another.
func checkHeld(p picking.Passage) error {
	for i, bar := range p.Bars {
		for j, c := range bar.Chords {
			silent := c.Chord.Silent()
			if silent && (len(c.Fit.Strings)+len(c.Fit.Losses)+len(c.Remarks) > 0 || c.Fit.CSIM != 0 || c.Fit.CPlusSIM != 0) {
				return element("bars", i, element("chords", j, refuse("", "silence with a fit or a remark")))
			}
			g := p.Instrument
			if silent {
				g = fretboard.Instrument{}
			}
			if c.Voicing.Chord() != c.Chord || c.Voicing.Instrument() != g {
				return element("bars", i, element("chords", j, refuse("", "the voicing is not of this chord on this instrument")))
			}
		}
	}
	return nil
}

func formOf(p picking.Passage) passageForm {
	return passageForm{
		Version:         Version,
		Title:           p.Title,
		Meter:           p.Meter.String(),
		Tempo:           p.Tempo,
		TicksPerQuarter: picking.TicksPerQuarter,
		Tuning:          p.Instrument.Tuning.String(),
		Frets:           p.Instrument.Frets,
		Capo:            p.Instrument.Capo,
		ScaleLength:     p.Instrument.Scale,
		StringSpacing:   p.Instrument.Spacing,
		Hand:            p.Instrument.Hand.String(),
		Strokes:         p.Strokes.String(),
		Fit:             p.Fit.String(),
		Loop:            p.Loop,
		Travel:          travelForm{p.Travel, p.TravelLength()},
		Remarks:         listed(p.Remarks),
		Bars:            each(p.Bars, formOfBar),
	}
}

// each returns f of every element, and an empty list of none, never null.
func each[T, F any](list []T, f func(T) F) []F {
	forms := make([]F, len(list))
	for i := range list {
		forms[i] = f(list[i])
	}
	return forms
}

func listed[T any](list []T) []T { return each(list, func(t T) T { return t }) }

func formOfBar(b picking.Bar) barForm {
	return barForm{b.Number, b.Written, b.Pass, b.At, b.Length, each(b.Chords, formOfChord), each(b.Picks, formOfPick)}
}

func formOfChord(c picking.HeldChord) chordForm {
	f := chordForm{At: c.At, Length: c.Length, Symbol: c.Chord.String(), Sounds: c.Sounds.String(),
		Figure: c.Figure, Shape: c.Voicing.Shape().String(), Bass: c.Voicing.Bass()}
	if c.Chord.Silent() {
		return f
	}
	start := c.Voicing.Start()
	f.Start = &startForm{start.String, start.Reason.String()}
	f.Root, _ = c.Voicing.Root()
	f.Fit = &fitForm{listed(c.Fit.Strings), c.Fit.CSIM, c.Fit.CPlusSIM, each(c.Fit.Losses, formOfLoss), listed(c.Remarks)}
	return f
}

func formOfLoss(l picking.Loss) lossForm {
	return lossForm{l.From, l.To, l.Want.String(), l.Got.String()}
}

func formOfPick(p picking.Pick) pickForm {
	return pickForm{p.At, p.Length, p.Rings, p.Event, p.String, p.Fret, p.Pitch, p.Note.String(),
		p.Stroke.String(), p.Why.String(), p.Crossing.String(), p.Travel}
}
