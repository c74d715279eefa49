package changes

import (
	"math"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// A neck holds the lengths of an instrument in the plane of its fretboard, in
// tenths of a millimetre, by the fret from the capo. A finger counts as lying
// at its fret.
type neck struct {
	strings int
	along   [fretboard.MaxFrets + 1]int // from the nut or capo to the fret
	gap     [fretboard.MaxFrets + 1]int // from one string to the next
}

// newNeck returns the neck of g, which is normal. The strings spread evenly
// from the nut, where they lie two thirds as far apart as the pick finds them
// near the bridge (from memory: 7.2 mm at the nut goes with 10.8 mm at the
// saddle on a steel-string guitar).
func newNeck(g fretboard.Instrument) *neck {
	n := &neck{strings: int(g.Tuning.Strings())}
	scale, spacing := max(1, tenths(g.Scale)), tenths(g.Spacing)
	nut := tenths(fretboard.FromBridge(g.Scale, g.Capo))
	for f := range g.Reach() + 1 {
		bridge := tenths(fretboard.FromBridge(g.Scale, g.Capo+f))
		n.along[f] = nut - bridge
		n.gap[f] = spacing - int(int64(spacing)*int64(bridge)/int64(3*scale))
	}
	return n
}

// tenths rounds at once, so that no processor can fuse the product into a sum.
func tenths(length fretboard.Millimetres) int { return int(math.Round(float64(length * 10))) }

// A spot is where a finger lies; across counts from the middle of the neck. A
// barre lies where its middle does.
type spot struct {
	press         voicing.Press
	along, across int
}

func (n *neck) spot(p voicing.Press) spot {
	return spot{p, n.along[p.Fret], (int(p.Thick+p.Thin) - n.strings - 1) * n.gap[p.Fret] / 2}
}

// apart returns the distance between two spots. The square root of a whole
// number below 2^52, cut to whole tenths, is the same on every processor.
func (a *spot) apart(b *spot) int {
	along, across := int64(a.along-b.along), int64(a.across-b.across)
	return int(math.Sqrt(float64(along*along + across*across)))
}
