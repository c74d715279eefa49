package picking

import "weft.example/fretboard"

// A Crossing is how the pick gets from one string struck to the next.
type Crossing uint8

// The crossings. Each is named by where the pick passes: on in the stroke's
// own direction (SweepCrossing), round the outside of the next string
// (OutsideCrossing), back between the two (InsideCrossing), or back over both
// to strike the same way again (ReturnCrossing). SameString is a repeat.
// Sweep, outside and inside are the trade's words, common practice.
const (
	NoCrossing Crossing = iota // nothing was struck before
	SameString
	SweepCrossing
	OutsideCrossing
	InsideCrossing
	ReturnCrossing
)

var crossingNames = [...]string{"", "same", "sweep", "outside", "inside", "return"}

// String returns same, sweep, outside, inside or return.
func (c Crossing) String() string { return fretboard.NameOf(crossingNames[:], int(c)) }

// ParseCrossing reads a crossing as [Crossing.String] prints it.
func ParseCrossing(text string) (Crossing, error) {
	i, err := fretboard.ParseName("crossing", crossingNames[1:], text)
	return Crossing(i + 1), err
}

// Cross returns how the pick gets from string s, struck by a, to string t,
// struck by b, and how far it travels there in string spacings. A stroke takes
// the pick from half a spacing on one side of its string to half a spacing on
// the other; travel is from where one ends to where the next begins.
func Cross(h fretboard.Hand, s fretboard.StringNumber, a Stroke, t fretboard.StringNumber, b Stroke) (Crossing, int) {
	return crossing(h, s, a, t, b), travel(h, s, a, t, b)
}

func crossing(h fretboard.Hand, s fretboard.StringNumber, a Stroke, t fretboard.StringNumber, b Stroke) Crossing {
	lead := toward(h, s, t)
	switch {
	case lead == Free:
		return SameString
	case a == lead && b == lead:
		return SweepCrossing
	case a == lead:
		return OutsideCrossing
	case b == lead:
		return InsideCrossing
	}
	return ReturnCrossing
}

// travel measures in half spacings, so that all positions are whole.
func travel(h fretboard.Hand, s fretboard.StringNumber, a Stroke, t fretboard.StringNumber, b Stroke) int {
	end := 2*s + half(h, a)
	begin := 2*t - half(h, b)
	return int(max(end-begin, begin-end)) / 2
}

// half returns the half spacing from a string to where a stroke on it ends.
func half(h fretboard.Hand, s Stroke) fretboard.StringNumber {
	if s == DownStroke {
		return h.Toward()
	}
	return -h.Toward()
}
