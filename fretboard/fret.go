package fretboard

// A Fret is where a string is stopped. Fret 0 is the open string; a muted
// string has no fret. Frets are counted from the capo where one is set.
type Fret int

// MaxFrets is the most frets an instrument may have.
const MaxFrets Fret = 36

// Millimetres is a length on the instrument.
type Millimetres float64

// FromBridge returns how far fret f lies from the bridge on a string of the
// given scale length: scale * 2^(-f/12), the rule of equal temperament.
func FromBridge(scale Millimetres, f Fret) Millimetres {
	// The conversion rounds, so that no processor fuses the product with the
	// subtraction of Span and finds other bits.
	return Millimetres(scale * Millimetres(twoToThe(-int(f))))
}

// Span returns the distance between two frets, counted from the nut, on a
// string of the given scale length.
func Span(scale Millimetres, low, high Fret) Millimetres {
	return FromBridge(scale, low) - FromBridge(scale, high)
}
