package voicing

import "weft.example/fretboard"

// A Confidence says how far a name may be relied on. In brackets stands how
// often names of that level were the given one, of all names for 1609 guitar
// shapes of an open data set; a test measures it.
type Confidence uint8

// The levels. A name is whole if all its essential tones sound and nothing is
// added. Of two pitch classes only the fifth is more than Possible.
const (
	Remote   Confidence = iota // not whole, or far behind the first (1 in 100 at most)
	Possible                   // whole and at most 30 points behind the first, or the first and not whole (1 in 10)
	Likely                     // the first, and whole (4 in 5)
	Certain                    // likely, on its root, and 20 points ahead of the next (98 in 100)
)

const (
	closeBehind = 30
	clearAhead  = 20
)

var confidenceNames = [...]string{"remote", "possible", "likely", "certain"}

// String returns remote, possible, likely or certain.
func (c Confidence) String() string { return fretboard.NameOf(confidenceNames[:], int(c)) }

// confidence judges the i-th of the ranked names.
func confidence(h heard, ranked []rated, i int) Confidence {
	r := ranked[i]
	first := i == 0
	switch {
	case !r.whole && first:
		return Possible
	case !r.whole || r.points > ranked[0].points+closeBehind:
		return Remote
	case !first || h.classes.Len() == 2 && r.gaps > 0:
		return Possible
	case r.root == h.bass && (len(ranked) == 1 || ranked[1].points >= r.points+clearAhead):
		return Certain
	}
	return Likely
}
