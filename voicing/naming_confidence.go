package voicing

import "weft.example/fretboard"

// A Confidence says how far a name may be relied on. In brackets stands how
// often names of that level were the given one, without a key, of all names for
// 1609 guitar shapes of one open data set, nearly all of four to six sounding
// strings, which it files under chords without a slash; a test measures it. What
// the set calls by a slash, such as Am/F, is here rather Fmaj7 and counts as
// neither right nor wrong. For other instruments, shapes of two or three strings
// and songs in a key the shares were not measured.
type Confidence uint8

// The levels. The first name is the one with the fewest points. A name is whole
// if all its essential tones sound and nothing is added. If its root is not the
// lowest note, it is Likely only if nothing at all is missing, and likewise if no
// more than two pitch classes sound.
const (
	Remote   Confidence = iota // not whole, or far behind the first (1 in 100 at most)
	Possible                   // whole and at most 30 points behind the first, or the first and not Likely (1 in 10)
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

// confidence judges the i-th of the names ranked by points.
func (h heard) confidence(ranked []rated, i int) Confidence {
	r := ranked[i]
	first := i == 0
	switch {
	case !r.whole && first:
		return Possible
	case !r.whole || r.points > ranked[0].points+closeBehind:
		return Remote
	case !first || r.gaps > 0 && (r.root != h.bass || h.classes.Len() == 2):
		return Possible
	case r.root == h.bass && (len(ranked) == 1 || ranked[1].points >= r.points+clearAhead):
		return Certain
	}
	return Likely
}
