package fretboard

import (
	"iter"
	"math/bits"
)

// MaxStrings is the most strings an instrument may have.
const MaxStrings = 12

// A StringNumber names a string by its place: 1 is the thinnest, nearest the
// floor when a right-handed player holds a normally strung guitar. Range 1 to
// [MaxStrings]; the zero StringNumber is no string.
type StringNumber int

// A StringSet is a set of strings. The zero StringSet is empty.
type StringSet uint16

// StringsUpTo returns the set of strings 1 to n, empty where n is below 1.
func StringsUpTo(n StringNumber) StringSet {
	return StringSet(1)<<min(max(n, 0), MaxStrings) - 1
}

// With returns set with s in it; s is 1 to [MaxStrings].
func (set StringSet) With(s StringNumber) StringSet { return set | 1<<(s-1) }

// Has reports whether s is in set.
func (set StringSet) Has(s StringNumber) bool { return s > 0 && set&(1<<(s-1)) != 0 }

// Len returns how many strings set holds.
func (set StringSet) Len() int { return bits.OnesCount16(uint16(set)) }

// Rank returns how many strings of set are thinner than s.
func (set StringSet) Rank(s StringNumber) int { return (set & StringsUpTo(s-1)).Len() }

// Nth returns the string of set with n thinner ones in it; n is 0 to Len-1.
func (set StringSet) Nth(n int) StringNumber {
	for ; n > 0; n-- {
		set &= set - 1
	}
	return StringNumber(bits.TrailingZeros16(uint16(set)) + 1)
}

// Nearest returns the string of set nearest to s, the thinner of two equally
// near ones. It returns 0 if set is empty.
func (set StringSet) Nearest(s StringNumber) StringNumber {
	for d := StringNumber(0); d < MaxStrings; d++ {
		if set.Has(s - d) {
			return s - d
		}
		if set.Has(s + d) {
			return s + d
		}
	}
	return 0
}

// Thinnest yields the strings of set in physical order, thinnest first.
func (set StringSet) Thinnest() iter.Seq[StringNumber] {
	return func(yield func(StringNumber) bool) {
		for rest := set; rest != 0; rest &= rest - 1 {
			if !yield(StringNumber(bits.TrailingZeros16(uint16(rest)) + 1)) {
				return
			}
		}
	}
}

// Lowest returns the string of set that sounds lowest, the thicker of two that
// sound alike. It returns 0 if set is empty.
func Lowest(set StringSet, pitch func(StringNumber) Pitch) StringNumber {
	var lowest StringNumber
	for s := range set.Thinnest() {
		if lowest == 0 || pitch(s) <= pitch(lowest) {
			lowest = s
		}
	}
	return lowest
}

// LowestFirst lists the strings of set in pitch order, the lowest sounding
// first; of two that sound alike the thicker comes first.
func LowestFirst(set StringSet, pitch func(StringNumber) Pitch) []StringNumber {
	order := make([]StringNumber, 0, MaxStrings)
	for s := range set.Thinnest() {
		order = append(order, s)
		for i := len(order) - 1; i > 0 && pitch(s) <= pitch(order[i-1]); i-- {
			order[i-1], order[i] = s, order[i-1]
		}
	}
	return order
}
