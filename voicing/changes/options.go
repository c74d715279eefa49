package changes

import (
	"weft.example/fretboard"
	"weft.example/voicing"
)

// An Aim says which of all paths is the easiest.
type Aim uint8

// The aims. LeastWorst makes the hardest change as easy as can be and, of the
// paths that do, takes the one with the least total: a player who is new to the
// changes fails at the hardest one (the minimax path of Hori & Sagayama 2016).
const (
	LeastTotal Aim = iota
	LeastWorst
)

var aimNames = [...]string{"total", "worst"}

// String returns total or worst.
func (a Aim) String() string { return fretboard.NameOf(aimNames[:], int(a)) }

// ParseAim reads total or worst.
func ParseAim(text string) (Aim, error) {
	i, err := fretboard.ParseName("aim", aimNames[:], text)
	return Aim(i), err
}

// Options narrow what [Easiest] and [Capos] choose from, and say what counts.
// The zero Options are the usual ones.
type Options struct {
	Voicing voicing.Options // which shapes may be held, and how each is priced
	// Shapes is how many shapes of a chord are tried, its cheapest ones, 1 to
	// 100; 0 means 8, which voicing.Find yields as fast as one. More take longer
	// and are never worse.
	Shapes int
	Aim    Aim
	Loop   bool // whether the last chord leads back to the first
}

const (
	usualShapes = 8
	maxShapes   = 100
)

// normal returns o with a zero Shapes replaced by what it means, or an
// [fretboard.ImpossibleError]. Package voicing checks its own options.
func (o Options) normal() (Options, error) {
	refuse := func(what string, value int, reason, mend string) error {
		text := digits(value)
		return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: what, Source: text, Length: len(text),
			Reason: reason, Mend: mend}}
	}
	if o.Shapes == 0 {
		o.Shapes = usualShapes
	}
	switch {
	case o.Shapes < 0 || o.Shapes > maxShapes:
		return o, refuse("shapes", o.Shapes, "1 to "+digits(maxShapes)+" shapes of a chord are tried", "0 means 8")
	case o.Aim > LeastWorst:
		return o, refuse("aim", int(o.Aim), "no such aim", "choose total or worst")
	}
	return o, nil
}
