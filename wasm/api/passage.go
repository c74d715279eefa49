package api

import (
	"weft.example/picking"
	"weft.example/wasm/internal/jsontext"
)

// writePassage writes the interchange form, byte for byte as the package
// picking/json does, which uses reflection. A test holds the two together.
func writePassage(w *jsontext.Writer, name string, p picking.Passage) {
	g := p.Instrument
	w.Object(name, func() {
		w.Int("version", passageVersion)
		w.Text("title", p.Title)
		w.Text("meter", p.Meter.String())
		w.Int("tempo", p.Tempo)
		w.Int("ticksPerQuarter", int(picking.TicksPerQuarter))
		w.Text("tuning", g.Tuning.String())
		w.Int("frets", int(g.Frets))
		w.Int("capo", int(g.Capo))
		w.Float("scaleLength", float64(g.Scale))
		w.Float("stringSpacing", float64(g.Spacing))
		w.Text("hand", g.Hand.String())
		w.Text("strokes", p.Strokes.String())
		w.Text("fit", p.Fit.String())
		w.Bool("loop", p.Loop)
		w.Object("travel", func() {
			w.Int("spacings", p.Travel)
			w.Float("millimetres", float64(p.TravelLength()))
		})
		texts(w, "remarks", p.Remarks)
		w.List("bars", func() {
			for _, bar := range p.Bars {
				writeBar(w, bar)
			}
		})
	})
}

// passageVersion is the version of the interchange form.
const passageVersion = 1

func writeBar(w *jsontext.Writer, b picking.Bar) {
	w.Object("", func() {
		w.Int("number", b.Number)
		w.Int("written", b.Written)
		w.Int("pass", b.Pass)
		w.Int("at", int(b.At))
		w.Int("length", int(b.Length))
		w.List("chords", func() {
			for _, c := range b.Chords {
				w.Object("", func() { writeHeldChord(w, c) })
			}
		})
		w.List("picks", func() {
			for _, p := range b.Picks {
				w.Object("", func() { writePick(w, p) })
			}
		})
	})
}

func writeHeldChord(w *jsontext.Writer, c picking.HeldChord) {
	w.Int("at", int(c.At))
	w.Int("length", int(c.Length))
	w.Text("symbol", c.Chord.String())
	w.Text("sounds", c.Sounds.String())
	if c.Chord.Silent() {
		return
	}
	v := c.Voicing
	w.Int("figure", c.Figure)
	w.Text("shape", v.Shape().String())
	w.Object("start", func() {
		w.Int("string", int(v.Start().String))
		w.Text("reason", v.Start().Reason.String())
	})
	w.Int("bass", int(v.Bass()))
	if root, ok := v.Root(); ok {
		w.Int("root", int(root))
	}
	w.Object("fit", func() {
		w.List("strings", func() {
			for _, s := range c.Fit.Strings {
				w.Int("", int(s))
			}
		})
		w.Float("csim", c.Fit.CSIM)
		w.Float("cplussim", c.Fit.CPlusSIM)
		w.List("losses", func() {
			for _, l := range c.Fit.Losses {
				w.Object("", func() { writeLoss(w, l) })
			}
		})
		texts(w, "remarks", c.Remarks)
	})
}

func writeLoss(w *jsontext.Writer, l picking.Loss) {
	w.Int("from", l.From)
	w.Int("to", l.To)
	w.Text("want", l.Want.String())
	w.Text("got", l.Got.String())
}

func writePick(w *jsontext.Writer, p picking.Pick) {
	w.Int("at", int(p.At))
	w.Int("length", int(p.Length))
	w.Int("rings", int(p.Rings))
	w.Int("event", p.Event)
	w.Int("string", int(p.String))
	w.Int("fret", int(p.Fret))
	w.Int("pitch", int(p.Pitch))
	w.Text("note", p.Note.String())
	w.Text("stroke", p.Stroke.String())
	w.Text("why", p.Why.String())
	if p.Crossing != picking.NoCrossing {
		w.Text("crossing", p.Crossing.String())
	}
	w.Int("travel", p.Travel)
}
