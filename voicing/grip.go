package voicing

import "weft.example/fretboard"

// held is a shape opened for arithmetic: held[s-1] is the fret of string s.
type held [fretboard.MaxStrings]int8

const muted = -1

func (sh Shape) held() held {
	h := sh.stops
	for s := range h {
		if !sh.sounds.Has(fretboard.StringNumber(s + 1)) {
			h[s] = muted
		}
	}
	return h
}

func (h *held) shape(strings int) Shape {
	sh := Shape{count: int8(strings)}
	for s := range strings {
		if h[s] != muted {
			sh.stops[s] = h[s]
			sh.sounds = sh.sounds.With(fretboard.StringNumber(s + 1))
		}
	}
	return sh
}

// maxFingers is what the fretting hand has without the thumb.
const maxFingers = 4

// A grip is one way of holding a shape: a finger for each fretted string, or
// the index finger across several, which is a barre.
type grip struct {
	fingers int
	spread  int // string spacings from each finger to the next, summed
	crossed int // strings under the barre; 0 without one
}

func (g grip) barre() int {
	if g.crossed == 0 {
		return 0
	}
	return barrePrice + crossingPrice*g.crossed
}

func (g grip) cost() int { return fingerPrice*g.fingers + spreadPrice*g.spread + g.barre() }

// better prefers a grip within four fingers, then the cheaper one.
func (g grip) better(than grip) bool {
	if can := g.fingers <= maxFingers; can != (than.fingers <= maxFingers) {
		return can
	}
	return g.cost() < than.cost()
}

// A press is a fretted string; a barre presses strings from thick to thin.
type press struct{ fret, thick, thin int8 }

// A hand is the fretted strings of a shape in the order in which the fingers
// take them: by fret, and on one fret from the thickest string.
type hand struct {
	presses [fretboard.MaxStrings]press
	size    int
}

func newHand(h *held, strings int) hand {
	var hand hand
	for s := int8(strings); s >= 1; s-- {
		fret := h[s-1]
		if fret <= 0 {
			continue
		}
		at := hand.size
		for ; at > 0 && hand.presses[at-1].fret > fret; at-- {
			hand.presses[at] = hand.presses[at-1]
		}
		hand.presses[at] = press{fret, s, s}
		hand.size++
	}
	return hand
}

// grip returns the grip in which the index finger makes the press barre, if
// that has strings, and takes what lies under it.
func (h *hand) grip(barre press) grip {
	var g grip
	before := barre
	if barre.thick != 0 {
		g = grip{fingers: 1, crossed: int(barre.thick-barre.thin) + 1}
	}
	for _, p := range h.presses[:h.size] {
		if p.fret == barre.fret && barre.thin <= p.thin && p.thick <= barre.thick {
			continue
		}
		if g.fingers > 0 {
			g.spread += int(max(p.thin-before.thick, before.thin-p.thick, 0))
		}
		g.fingers++
		before = p
	}
	return g
}

// best returns the better of all grips. A barre lies at the lowest fret over
// neighbouring strings, from the thickest to the thinnest of them stopped
// there, none muted or open: a barre cannot free a string under it. Nor may a
// string be open beside it on the side from which the finger comes, the floor.
func (h *hand) best(shape *held, strings int, floor fretboard.StringNumber) grip {
	best := h.grip(press{})
	if h.size < 2 || h.presses[1].fret != h.presses[0].fret {
		return best
	}
	low := h.presses[0].fret
	for s := int8(strings); s >= 1; s-- {
		barre := press{fret: low}
		for ; s >= 1 && shape[s-1] > 0; s-- {
			if shape[s-1] == low {
				barre.thick, barre.thin = max(barre.thick, s), s
			}
		}
		if barre.thick > barre.thin && !openToward(shape, strings, barre, floor) {
			if g := h.grip(barre); g.better(best) {
				best = g
			}
		}
	}
	return best
}

// openToward reports whether a string is open between barre and the floor.
func openToward(shape *held, strings int, barre press, floor fretboard.StringNumber) bool {
	beside := shape[:barre.thin-1]
	if floor > 0 {
		beside = shape[barre.thick:strings]
	}
	for _, fret := range beside {
		if fret == 0 {
			return true
		}
	}
	return false
}
