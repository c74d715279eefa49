package picking

import "weft.example/fretboard"

// levels returns the fit that keeps the whole contour, if there is one. Such a
// fit sends each string of the figure, a level, to a string of its own in the
// same order, so the choice is of one sounding string a level rather than an
// event: it takes no cut, and time linear in the events.
func (p problem) levels() ([]fretboard.StringNumber, bool) {
	const top = fretboard.MaxStrings
	var weight [top + 1]int // of each string of the figure: its events
	var used fretboard.StringSet
	for _, s := range p.events {
		weight[s]++
		used = used.With(s)
	}
	const never = 1 << 30
	// on[i][r] is the least distance of level i and all thicker ones with level
	// i on rank r, least[i][r] with it there or on a thicker one.
	var on, least [top + 1][top + 1]int
	k := p.sounding.Len()
	for i := used.Len() - 1; i >= 0; i-- {
		s := used.Nth(i)
		least[i][k] = never
		for r := k - 1; r >= 0; r-- {
			on[i][r] = never
			if to := p.sounding.Nth(r); s != p.root || to == p.start {
				on[i][r] = least[i+1][r+1] + p.distance(s, to)*weight[s]
			}
			least[i][r] = min(on[i][r], least[i][r+1])
		}
	}
	if least[0][0] >= never {
		return nil, false
	}
	return p.readLevels(used, func(i, r int) bool { return on[i][r] == least[i][r] }), true
}

// distance is what it costs to move an event; root events move for nothing.
func (p problem) distance(s, to fretboard.StringNumber) int {
	if s == p.root {
		return 0
	}
	return int(max(s-to, to-s))
}

// readLevels puts each level on the thinnest rank that the levels before leave
// it and that is as good as any; the whole is then the pointwise thinnest.
func (p problem) readLevels(used fretboard.StringSet, best func(level, rank int) bool) []fretboard.StringNumber {
	var goes [fretboard.MaxStrings + 1]fretboard.StringNumber
	r := 0
	for i := range used.Len() {
		for !best(i, r) {
			r++
		}
		goes[used.Nth(i)] = p.sounding.Nth(r)
		r++
	}
	strings := make([]fretboard.StringNumber, len(p.events))
	for i, s := range p.events {
		strings[i] = goes[s]
	}
	return strings
}
