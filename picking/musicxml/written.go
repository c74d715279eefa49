package musicxml

import "weft.example/picking"

// parts is a written length, counted in 256ths of a whole note. A 256th lasts
// 7.5 ticks, in a triplet 5: every time and length in a passage is a whole
// number of the one or the other.
type parts int

// finest is what every length in a passage is a multiple of: a 256th in a
// triplet. plainest is the same of times that need no triplet: a 128th.
const (
	finest   picking.Ticks = 5
	plainest picking.Ticks = 15
)

func plainParts(t picking.Ticks) parts   { return parts(2 * t / plainest) }
func tripletParts(t picking.Ticks) parts { return parts(t / finest) }

// noteTypes names the note of 1, 2, 4, ... parts.
var noteTypes = [...]string{"256th", "128th", "64th", "32nd", "16th", "eighth", "quarter", "half", "whole", "breve"}

const (
	quarterPower = 6 // its place in noteTypes
	quarterParts = parts(1) << quarterPower
)

// A value is how a note or rest of one sign is written.
type value struct {
	power  int // of two: the place in noteTypes
	dotted bool
}

// value returns the single sign that lasts n, plain or with one dot.
func (n parts) value() (v value, ok bool) {
	if v.dotted = n%3 == 0; v.dotted {
		n = n / 3 * 2
	}
	for v.power < len(noteTypes)-1 && parts(1)<<v.power < n {
		v.power++
	}
	return v, parts(1)<<v.power == n
}

func (n parts) single() bool {
	_, ok := n.value()
	return ok
}

// beams returns how many beams or flags the note has.
func (v value) beams() int { return max(0, quarterPower-v.power) }

// A grid is how a bar or a triplet divides: lengths in parts, each a multiple
// of the next, down to 1. A time is the stronger the longer the length that it
// is a multiple of; its rank is that length's place.
type grid []parts

// meterGrid returns the grid of a bar: halves as long as the beats divide, the
// beat, the thirds of a compound one, and halves again.
func meterGrid(m picking.Meter) grid {
	g := grid{plainParts(m.Bar())}
	beats := int(m.Bar() / m.Beat())
	for ; beats%2 == 0; beats /= 2 {
		g = append(g, g[len(g)-1]/2)
	}
	if beats > 1 {
		g = append(g, plainParts(m.Beat()))
	}
	if m.Compound() {
		g = append(g, plainParts(m.UnitTicks()))
	}
	return g.halved()
}

// tripletGrid returns the grid of three notes in the time of two that last n
// together: thirds, then halves. A lone one that is no plain note long divides
// by halves alone.
func tripletGrid(n parts) grid {
	if n%3 == 0 && (n / 3).single() && n/3%3 != 0 {
		return grid{n, n / 3}.halved()
	}
	half := parts(1)
	for half*2 < n {
		half *= 2
	}
	return grid{n, half}.halved()
}

func (g grid) halved() grid {
	for last := g[len(g)-1]; last > 1; last /= 2 {
		g = append(g, last/2)
	}
	return g
}

// rank returns the place of the longest length that at is a multiple of.
func (g grid) rank(at parts) int {
	for i, length := range g {
		if at%length == 0 {
			return i
		}
	}
	return len(g)
}

// inside returns the rank of the strongest time between from and to, and the
// first time of that rank.
func (g grid) inside(from, to parts) (rank int, first parts) {
	for i, length := range g {
		if first = from/length*length + length; first < to {
			return i, first
		}
	}
	return len(g), to
}

// readable reports whether one sign may last from one time to another. As in
// common practice, a note may pass a stronger time than it begins or ends at by
// one step of halves: a quarter may stand across a beat, but not across the
// middle of a bar from an eighth before it; it does not pass the beat of a
// compound meter, or a third, out of step. A rest passes none.
func (g grid) readable(from, to parts, rest bool) bool {
	if !(to - from).single() {
		return false
	}
	rank, first := g.inside(from, to)
	if rank == len(g) {
		return true
	}
	out := max(g.rank(from), g.rank(to)) - rank
	if out <= 0 {
		return true
	}
	halves := rank+1 < len(g) && g[rank] == 2*g[rank+1]
	return out == 1 && halves && !rest && first+g[rank] >= to
}

// split cuts the time between from and to into signs and calls emit with each.
// It cuts at the strongest time within, as late as it can if it begins in step.
func (g grid) split(from, to parts, rest bool, emit func(from, to parts)) {
	if g.readable(from, to, rest) {
		emit(from, to)
		return
	}
	rank, cut := g.inside(from, to)
	if g.rank(from) <= rank {
		for later := cut + g[rank]; later < to; later += g[rank] {
			if g.readable(from, later, rest) {
				cut = later
			}
		}
	}
	g.split(from, cut, rest, emit)
	g.split(cut, to, rest, emit)
}
