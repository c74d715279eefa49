package fretboard

import "fmt"

// An Instrument is what the player holds. Every zero field means a usual
// choice, so the zero Instrument is a six-string guitar in standard tuning.
type Instrument struct {
	Tuning Tuning
	Frets  Fret        // on the neck, counted from the nut, 1 to 36; 0 means 24
	Capo   Fret        // the fret the capo lies on; 0 means none
	Scale  Millimetres // length of the open strings; 0 means the tuning's usual one
	// Spacing is the distance between neighbouring strings where the pick
	// crosses them; 0 means 10.8, the narrow end of builders' saddle spacings
	// for steel-string guitars (53.97 mm from E to E).
	Spacing Millimetres
	Hand    Hand
}

const (
	usualFrets   Fret        = 24
	usualScale   Millimetres = 645.16 // 25.4 inches
	usualSpacing Millimetres = 10.8
)

// Normal returns g with every zero field replaced by what it means, or an
// [ImpossibleError] if no such instrument can be.
func (g Instrument) Normal() (Instrument, error) {
	g.Tuning = g.Tuning.normal()
	if g.Frets == 0 {
		g.Frets = usualFrets
	}
	if g.Scale == 0 {
		g.Scale = g.Tuning.usualScale()
	}
	if g.Spacing == 0 {
		g.Spacing = usualSpacing
	}
	return g, g.check()
}

func (t Tuning) usualScale() Millimetres {
	if named := t.named(); named != nil && named.scale != 0 {
		return named.scale
	}
	return usualScale
}

// check refuses a normal instrument that cannot be.
func (g Instrument) check() error {
	refuse := func(what string, value any, reason, mend string) error {
		text := fmt.Sprint(value)
		return &ImpossibleError{Place{what, text, 0, len(text), reason, mend}}
	}
	switch {
	case g.Frets < 1 || g.Frets > MaxFrets:
		return refuse("frets", int(g.Frets), "an instrument has 1 to 36 frets", "")
	case g.Capo < 0 || g.Capo >= g.Frets:
		return refuse("capo", int(g.Capo), fmt.Sprintf("a capo leaves a fret to play; the neck has %d", g.Frets), "0 means no capo")
	case !(g.Scale > 0 && g.Scale < 5000):
		return refuse("scale length", float64(g.Scale), "not a length in millimetres", "a guitar has about 645")
	case !(g.Spacing > 0 && g.Spacing < 1000):
		return refuse("string spacing", float64(g.Spacing), "not a length in millimetres", "a guitar has about 10.8")
	case g.Hand > LeftTurned:
		return refuse("hand", int(g.Hand), "no such way of holding", "choose right, left or turned")
	}
	return g.checkPitches(refuse)
}

func (g Instrument) checkPitches(refuse func(string, any, string, string) error) error {
	for s := StringNumber(1); s <= g.Tuning.Strings(); s++ {
		if open := g.Tuning.Open(s).Pitch(); open < MinPitch || open.Up(g.Frets) > MaxPitch {
			return refuse("tuning", g.Tuning, fmt.Sprintf("string %d would sound outside the MIDI range on %d frets", s, g.Frets),
				"tune it lower or give the instrument fewer frets")
		}
	}
	return nil
}

// Reach returns the highest fret, counted from the capo.
func (g Instrument) Reach() Fret {
	if g.Frets == 0 {
		return usualFrets - g.Capo
	}
	return g.Frets - g.Capo
}

// Pitch returns what string s sounds at fret f, counted from the capo.
func (g Instrument) Pitch(s StringNumber, f Fret) Pitch {
	return g.Tuning.Open(s).Pitch().Up(g.Capo + f)
}
