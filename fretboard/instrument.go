package fretboard

import "strconv"

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
	refuse := func(what, text, reason, mend string) error {
		return &ImpossibleError{Place{what, text, 0, len(text), reason, mend}}
	}
	switch {
	case g.Frets < 1 || g.Frets > MaxFrets:
		return refuse("frets", digits(g.Frets), "an instrument has 1 to 36 frets", "")
	case g.Capo < 0 || g.Capo >= g.Frets:
		return refuse("capo", digits(g.Capo), "a capo leaves a fret to play; the neck has "+digits(g.Frets), "0 means no capo")
	case !(g.Scale > 0 && g.Scale < 5000):
		return refuse("scale length", g.Scale.digits(), "not a length in millimetres", "a guitar has about 645")
	case !(g.Spacing > 0 && g.Spacing < 1000):
		return refuse("string spacing", g.Spacing.digits(), "not a length in millimetres", "a guitar has about 10.8")
	case g.Hand > LeftTurned:
		return refuse("hand", digits(int(g.Hand)), "no such way of holding", "choose right, left or turned")
	}
	return g.checkPitches(refuse)
}

func (g Instrument) checkPitches(refuse func(what, text, reason, mend string) error) error {
	for s := StringNumber(1); s <= g.Tuning.Strings(); s++ {
		if open := g.Tuning.Open(s).Pitch(); open < MinPitch || open.Up(g.Frets) > MaxPitch {
			return refuse("tuning", g.Tuning.String(),
				"string "+digits(s)+" would sound outside the MIDI range on "+digits(g.Frets)+" frets",
				"tune it lower or give the instrument fewer frets")
		}
	}
	return nil
}

// digits prints a fret, a string or a count for a sentence.
func digits[N ~int](n N) string { return strconv.Itoa(int(n)) }

// digits prints m in the fewest digits that tell it from every other length.
func (m Millimetres) digits() string { return strconv.FormatFloat(float64(m), 'g', -1, 64) }

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
