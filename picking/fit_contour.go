package picking

import "weft.example/fretboard"

// The contour fit gives each event a rank among the sounding strings, 0 for
// the thinnest, so as to minimise a sum of terms of one rank or of the
// difference of two. Each term is convex in the difference, so the sum is
// submodular and the whole is a minimum cut: one node for each event i and
// each level l from 1 to k-1, on the source's side if rank i is at least l
// (Ishikawa, IEEE Transactions on Pattern Analysis 25 (2003)). The three
// objectives are weighted so that the least step of one outweighs all of the
// next. The smallest source side is the pointwise thinnest optimum.

// weights are the worth of one unit of contour lost between neighbours and
// between any pair; one string of distance is worth 1.
type weights struct{ neighbour, pair int64 }

func weightsFor(events int) weights {
	n := int64(events)
	distance := n*fretboard.MaxStrings + 1
	pairs := n*n*fretboard.MaxStrings + 1
	return weights{neighbour: pairs * distance, pair: distance}
}

// between returns the worth of the pair i < j of n events in a loop.
func (w weights) between(i, j, n int) int64 {
	worth := w.pair
	if j == i+1 {
		worth += w.neighbour
	}
	if i == 0 && j == n-1 {
		worth += w.neighbour
	}
	return worth
}

// lost returns by how much ranks a, b miss the contour of strings s, t: a step
// must lead at least one rank the same way, a repeat must stay.
func lost(s, t fretboard.StringNumber, a, b int) int {
	switch {
	case s > t:
		return max(0, 1-(a-b))
	case s < t:
		return max(0, 1+(a-b))
	case a > b:
		return a - b
	}
	return b - a
}

// contour returns the exact optimum.
func (p problem) contour(c *cutter) []fretboard.StringNumber {
	levels := p.sounding.Len() - 1
	free := make([]int, 0, len(p.events))
	for i, s := range p.events {
		if s != p.root {
			free = append(free, i)
		}
	}
	c.reset(len(free) * levels)
	p.addTerms(c, free, levels)
	p.addPairs(c, free, levels)
	c.cut()
	return p.read(c, free, levels)
}

// addTerms adds what depends on one rank alone: the distance to the string as
// written, and the contour lost against the root events, whose rank is fixed.
func (p problem) addTerms(c *cutter, free []int, levels int) {
	w := weightsFor(len(p.events))
	fixed := p.sounding.Rank(p.start)
	for x, i := range free {
		before := p.term(w, i, 0, fixed)
		for level := 1; level <= levels; level++ {
			after := p.term(w, i, level, fixed)
			c.cost(x*levels+level-1, after-before)
			before = after
			if level > 1 {
				c.arc(x*levels+level-1, x*levels+level-2, impossible, 0)
			}
		}
	}
}

func (p problem) term(w weights, i, rank, fixed int) int64 {
	s := p.events[i]
	sum := int64(max(s-p.sounding.Nth(rank), p.sounding.Nth(rank)-s))
	for j, t := range p.events {
		if t == p.root {
			sum += w.between(min(i, j), max(i, j), len(p.events)) * int64(lost(s, t, rank, fixed))
		}
	}
	return sum
}

// addPairs adds the contour lost between each two events whose ranks are free.
func (p problem) addPairs(c *cutter, free []int, levels int) {
	w := weightsFor(len(p.events))
	for y, j := range free {
		for x, i := range free[:y] {
			worth := w.between(i, j, len(p.events))
			switch s, t := p.events[i], p.events[j]; {
			case s > t:
				addStep(c, x*levels, y*levels, levels, worth)
			case s < t:
				addStep(c, y*levels, x*levels, levels, worth)
			default:
				for l := range levels {
					c.arc(x*levels+l, y*levels+l, worth, worth)
				}
			}
		}
	}
}

// addStep charges worth for each rank by which the event at node high fails to
// lie above the one at node low: the sum over levels l of [low >= l-1] and
// [high < l].
func addStep(c *cutter, high, low, levels int, worth int64) {
	if levels == 0 {
		return
	}
	c.cost(high, -worth)
	for l := 1; l < levels; l++ {
		c.arc(low+l-1, high+l, worth, 0)
	}
	c.cost(low+levels-1, worth)
}

// read turns the cut into strings: an event's rank is how many of its levels
// lie on the source's side.
func (p problem) read(c *cutter, free []int, levels int) []fretboard.StringNumber {
	strings := make([]fretboard.StringNumber, len(p.events))
	for i := range strings {
		strings[i] = p.start
	}
	for x, i := range free {
		rank := 0
		for rank < levels && c.onSource(x*levels+rank) {
			rank++
		}
		strings[i] = p.sounding.Nth(rank)
	}
	return strings
}
