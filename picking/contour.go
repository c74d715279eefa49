package picking

import (
	"cmp"

	"weft.example/fretboard"
)

// A Direction is where a step leads over the strings. Up is toward string 1.
type Direction int8

// The three directions of a step.
const (
	Same Direction = iota
	Up
	Down
)

var directionNames = [...]string{"same", "up", "down"}

// String returns same, up or down.
func (d Direction) String() string { return fretboard.NameOf(directionNames[:], int(d)) }

// ParseDirection reads same, up or down.
func ParseDirection(text string) (Direction, error) {
	i, err := fretboard.ParseName("direction", directionNames[:], text)
	return Direction(i), err
}

// CSIM is the contour similarity of a and b, which have equal length: the
// share of pairs i < j whose elements compare alike in both. 1 is the same
// contour, 0 its inversion; contours with fewer than two elements are alike.
// O(n^2). Marvin & Laprade, Journal of Music Theory 31 (1987).
func CSIM[T cmp.Ordered](a, b []T) float64 {
	pairs, alike := len(a)*(len(a)-1)/2, 0
	for j := range a {
		for i := range j {
			if cmp.Compare(a[i], a[j]) == cmp.Compare(b[i], b[j]) {
				alike++
			}
		}
	}
	return share(alike, pairs)
}

// CPlusSIM is the contour similarity of a and b, which have equal length, by
// ascent alone: the share of ordered pairs i, j whose "a rises from i to j" is
// true of both or of neither. It agrees with [CSIM] where neither has ties; a
// tie against a step costs half as much. O(n^2). Quinn, Perspectives of New
// Music 35 (1997).
func CPlusSIM[T cmp.Ordered](a, b []T) float64 {
	pairs, alike := len(a)*(len(a)-1), 0
	for j := range a {
		for i := range j {
			if (a[i] < a[j]) == (b[i] < b[j]) {
				alike++
			}
			if (a[j] < a[i]) == (b[j] < b[i]) {
				alike++
			}
		}
	}
	return share(alike, pairs)
}

func share(alike, pairs int) float64 {
	if pairs <= 0 {
		return 1
	}
	return float64(alike) / float64(pairs)
}
