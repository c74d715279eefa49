package voicing

import (
	"iter"
	"math/bits"

	"weft.example/fretboard"
)

// A formula is the content of a chord: a set of members, each an interval
// above the root with the degree that names it. The empty formula is N.C.
type formula uint32

// The members in rising degree. Two that sound alike are kept apart, since
// they are spelled apart: C7b5 holds Gb, C7#11 holds F#.
const (
	root formula = 1 << iota
	second
	minorThird
	majorThird
	fourth
	flatFifth
	fifth
	sharpFifth
	flatSixth
	sixth
	diminishedSeventh
	minorSeventh
	majorSeventh
	flatNinth
	ninth
	sharpNinth
	eleventh
	sharpEleventh
	flatThirteenth
	thirteenth

	thirds       = minorThird | majorThird
	fifths       = flatFifth | fifth | sharpFifth
	sevenths     = diminishedSeventh | minorSeventh | majorSeventh
	ninths       = flatNinth | ninth | sharpNinth
	alteredTones = flatFifth | sharpFifth | flatNinth | sharpNinth
)

type member struct {
	name              string
	degree, semitones int
}

// members is indexed by the bit number of a member.
var members = [...]member{
	{"1", 1, 0}, {"2", 2, 2}, {"b3", 3, 3}, {"3", 3, 4}, {"4", 4, 5},
	{"b5", 5, 6}, {"5", 5, 7}, {"#5", 5, 8}, {"b6", 6, 8}, {"6", 6, 9},
	{"bb7", 7, 9}, {"b7", 7, 10}, {"7", 7, 11},
	{"b9", 9, 13}, {"9", 9, 14}, {"#9", 9, 15},
	{"11", 11, 17}, {"#11", 11, 18}, {"b13", 13, 20}, {"13", 13, 21},
}

func (m member) interval() fretboard.Interval {
	return fretboard.Interval{Letters: m.degree - 1, Semitones: m.semitones}
}

// all yields each member of f as a formula of its own, in rising degree.
func (f formula) all() iter.Seq2[formula, member] {
	return func(yield func(formula, member) bool) {
		for rest := f; rest != 0; rest &= rest - 1 {
			if !yield(rest&-rest, members[bits.TrailingZeros32(uint32(rest))]) {
				return
			}
		}
	}
}

func (f formula) has(one formula) bool { return f&one == one }
func (f formula) any(of formula) bool  { return f&of != 0 }
func (f formula) size() int            { return bits.OnesCount32(uint32(f)) }

// memberOf returns what is known of a single member.
func memberOf(one formula) member { return members[bits.TrailingZeros32(uint32(one))] }

// rivals holds for each member those that cannot stand beside it: the ones on
// its letter, except that b5 goes with #5 and b9 with #9, and the ones that
// sound like it.
var rivals = func() (rivals [len(members)]formula) {
	for i, a := range members {
		for j, b := range members {
			one, other := formula(1)<<i, formula(1)<<j
			pair := one|other == flatFifth|sharpFifth || one|other == flatNinth|sharpNinth
			letter := (a.degree-b.degree)%7 == 0 && !pair
			if i != j && (letter || (a.semitones-b.semitones)%12 == 0) {
				rivals[i] |= other
			}
		}
	}
	return rivals
}()

func rivalsOf(one formula) formula { return rivals[bits.TrailingZeros32(uint32(one))] }

// optional returns the members that a voicing may leave out, by the reasons
// given at [Optional].
func (f formula) optional() (out formula) {
	if f.any(thirds) || f.any(second|fourth) && f.any(sevenths) {
		out |= f & fifth
	}
	if !f.any(sevenths) || !f.any(ninths) {
		return out
	}
	switch {
	case f.has(thirteenth):
		out |= f & (ninth | eleventh)
	case f.has(eleventh) && f.has(majorThird):
		out |= majorThird
	case f.has(eleventh) && f.has(minorThird):
		out |= f & ninth
	}
	return out
}

// either returns the members of which one of a pair is enough.
func (f formula) either() formula {
	if f.has(alteredTones) {
		return alteredTones
	}
	return 0
}

// classes returns the pitch classes of f on root C.
func (f formula) classes() (set ClassSet) {
	for rest := f; rest != 0; rest &= rest - 1 {
		set |= classBits[bits.TrailingZeros32(uint32(rest))]
	}
	return set
}

var classBits = func() (classes [len(members)]ClassSet) {
	for i, m := range members {
		classes[i] = ClassSet(0).With(fretboard.PitchClass(m.semitones % 12))
	}
	return classes
}()
