package api

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/wasm/internal/jsontext"
)

// listChoices lists the names that requests may use, and the limits.
func listChoices(_ *Library, f *fields) (reply, error) {
	f.done()
	return reply{members: writeChoices}, f.state.err
}

func writeChoices(w *jsontext.Writer) {
	choice(w, "spelling", fretboard.MixedGerman)
	choice(w, "hand", fretboard.LeftTurned)
	choice(w, "strokes", picking.Jig)
	choice(w, "fit", picking.Shift)
	choice(w, "change", picking.Carry)
	choice(w, "fill", picking.Ring)
	for _, c := range leafChoices {
		texts(w, c.name, c.names)
	}
	w.List("tunings", func() {
		for _, name := range fretboard.TuningNames() {
			w.Object("", func() {
				w.Text("name", name)
				w.Text("text", fretboard.MustParseTuning(name).String())
			})
		}
	})
	w.List("formats", func() {
		for _, t := range formats {
			w.Object("", func() { t.write(w) })
		}
	})
	w.Object("limits", func() { writeLimits(w) })
}

// leafChoices are the choices of packages that are not linked for their names
// alone. A test holds them against those.
var leafChoices = [...]struct {
	name  string
	names []string
}{
	{"aim", []string{"total", "worst"}},
	{"count", []string{"auto", "beats", "units", "eighths", "sixteenths"}},
	{"paper", []string{"A4", "Letter"}},
	{"staves", []string{"both", "tab"}},
	{"material", []string{"steel", "nylon"}},
	{"click", []string{"off", "auto", "beats", "divided"}},
	{"sample", []string{"int16", "float32"}},
}

// choice writes the names of a choice up to its last.
func choice[T interface {
	~uint8
	String() string
}](w *jsontext.Writer, name string, last T) {
	w.List(name, func() {
		for c := T(0); c <= last; c++ {
			w.Text("", c.String())
		}
	})
}

func writeLimits(w *jsontext.Writer) {
	w.Int("strings", fretboard.MaxStrings)
	w.Int("frets", int(fretboard.MaxFrets))
	w.Int("bars", picking.MaxBars)
	w.Int("slots", picking.MaxSlots)
	w.Int("text", fretboard.MaxText)
	w.List("tempo", func() {
		w.Int("", picking.MinTempo)
		w.Int("", picking.MaxTempo)
	})
	w.Int("sound", MaxSound)
}
