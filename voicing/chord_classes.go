package voicing

import (
	"math/bits"

	"weft.example/fretboard"
)

// A ClassSet is a set of pitch classes. The zero ClassSet is empty.
type ClassSet uint16

// everything holds all pitch classes.
const everything ClassSet = 1<<12 - 1

// With returns set with p in it; p is 0 to 11.
func (set ClassSet) With(p fretboard.PitchClass) ClassSet { return set | 1<<p }

// Has reports whether p is in set.
func (set ClassSet) Has(p fretboard.PitchClass) bool { return set>>p&1 != 0 }

// up returns set moved up by p semitones.
func (set ClassSet) up(p fretboard.PitchClass) ClassSet {
	return (set<<p | set>>(12-p)) & (1<<12 - 1)
}

// Len returns how many pitch classes set holds.
func (set ClassSet) Len() int { return bits.OnesCount16(uint16(set)) }
