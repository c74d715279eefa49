package voicing

import (
	"slices"

	"weft.example/fretboard"
)

const (
	maxFingers   = 4 // of the fretting hand, without the thumb
	longestBarre = 4 // strings under another finger than the index
	tipBarre     = 2 // strings that the tip joint takes, so that the rest of the finger stays off
)

// A neck is what the fretting hand needs to know of an instrument.
type neck struct {
	strings int
	floor   fretboard.StringNumber      // the step from one string to the next, toward the floor
	places  [fretboard.MaxFrets + 1]int // of each fret from the capo, in tenths of a millimetre
}

// newNeck returns the neck of g, which is normal.
func newNeck(g fretboard.Instrument) neck {
	n := neck{strings: int(g.Tuning.Strings()), floor: g.Hand.Toward()}
	for f := range g.Reach() + 1 {
		n.places[f] = tenths(fretboard.FromBridge(g.Scale, g.Capo)) - tenths(fretboard.FromBridge(g.Scale, g.Capo+f))
	}
	return n
}

// A hand tries the grips for one shape. Fingers are set in their order: a
// finger never lies below the one before it, nor at the same fret on the
// ceiling's side of it.
type hand struct {
	places *[fretboard.MaxFrets + 1]int
	shape  *held
	last   int8                           // the highest string number
	step   int8                           // in string numbers, from the ceiling toward the floor
	stops  [fretboard.MaxStrings + 1]stop // the last is none
	size   int8
	least  [fretboard.MaxStrings + 1]int8 // fingers for the stops from each number on
	trial  grip
	best   grip
	found  bool
	all    *[]grip // takes every grip, where set
}

// A stop is a fretted string.
type stop struct{ fret, string int8 }

// hand lists the fretted strings of shape by rising fret, and on one fret
// from the ceiling to the floor.
func (n *neck) hand(shape *held) hand {
	h := hand{places: &n.places, shape: shape, last: int8(n.strings), step: int8(n.floor)}
	s := h.last
	if h.step > 0 {
		s = 1
	}
	for ; s >= 1 && s <= h.last; s += h.step {
		fret := shape[s-1]
		if fret <= 0 {
			continue
		}
		at := h.size
		for ; at > 0 && h.stops[at-1].fret > fret; at-- {
			h.stops[at] = h.stops[at-1]
		}
		h.stops[at] = stop{fret, s}
		h.size++
	}
	h.count()
	return h
}

// count bounds from below how many fingers the stops take: one finger takes no
// two frets, and above the lowest fret no strings apart.
func (h *hand) count() {
	for i := h.size - 1; i >= 0; i-- {
		h.least[i] = h.least[i+1]
		if a, b := h.stops[i], h.stops[i+1]; i+1 == h.size || a.fret != b.fret || a.fret > h.stops[0].fret && a.string+h.step != b.string {
			h.least[i]++
		}
	}
}

// cheapest returns the grip that costs least. Where no hand can hold the shape
// it has no fingers, and costs what one finger a string would.
func (h *hand) cheapest() *grip {
	h.tryAll()
	if !h.found {
		for i := range h.size {
			h.add(&h.best.cost, h.finger(i), h.finger(max(0, i-1)))
		}
	}
	return &h.best
}

// finger returns a press on stop i alone.
func (h *hand) finger(i int8) press {
	stop := h.stops[i]
	return press{min(i+1, maxFingers), stop.fret, stop.string, stop.string}
}

// span returns how far apart the frets held lie, in tenths of a millimetre.
func (h *hand) span() int {
	if h.size == 0 {
		return 0
	}
	return h.places[h.stops[h.size-1].fret] - h.places[h.stops[0].fret]
}

// tryAll tries every grip.
func (h *hand) tryAll() {
	if h.span() <= tenths(widestSpan) {
		h.set(0, 1)
	}
}

// set tries all fingers from finger on for the stops from number i on, longer
// barres first.
func (h *hand) set(i, finger int8) {
	if i == h.size {
		h.keep()
		return
	}
	end := i + 1
	for ; end < h.size && h.stops[end].fret == h.stops[i].fret; end++ {
	}
	for ; end > i; end-- {
		p := press{0, h.stops[i].fret, h.stops[i].string, h.stops[end-1].string}
		for p.finger = finger; p.finger+h.least[end] <= maxFingers; p.finger++ {
			if silence, ok := h.lies(p); ok {
				h.press(p, silence, end)
			}
		}
	}
}

// within reports whether most fingers can hold the shape.
func (h *hand) within(most int) bool {
	if int(h.best.fingers) <= most {
		return true
	}
	var all []grip
	h.all = &all
	h.tryAll()
	return slices.ContainsFunc(all, func(g grip) bool { return int(g.fingers) <= most })
}

// keep takes the grip that is complete.
func (h *hand) keep() {
	switch {
	case h.all != nil:
		*h.all = append(*h.all, h.trial)
	case !h.found || h.trial.cost.total() < h.best.cost.total():
		h.best, h.found = h.trial, true
	}
}

// press sets p, and goes on with the stops from number next on unless a better
// grip is known.
func (h *hand) press(p press, silence int, next int8) {
	g := &h.trial
	before, last := g.cost, p
	if g.fingers > 0 {
		last = g.presses[g.fingers-1]
	}
	h.add(&g.cost, p, last)
	g.cost.barre += h.barre(p) + silence
	g.presses[g.fingers] = p
	g.fingers++
	if h.all != nil || !h.found || g.cost.total()+fingerPrice*int(h.least[next]) < h.best.cost.total() {
		h.set(next, p.finger+1)
	}
	g.cost = before
	g.fingers--
}

// lies reports whether a finger can lie so, and what it costs to silence the
// muted strings that it crosses. See [Fingering] for the rules.
func (h *hand) lies(p press) (silence int, ok bool) {
	n := p.strings()
	if n == 1 {
		return 0, true
	}
	index := p.finger == 1
	if !index && n > longestBarre {
		return 0, false
	}
	for s := p.tip; s != p.base; s += h.step {
		switch fret := h.shape[s-1]; {
		case fret == p.fret:
		case fret == muted && index:
			silence += h.silence(s, p.fret)
		case fret > p.fret && index:
		default:
			return 0, false
		}
	}
	return silence, n <= tipBarre || h.clear(p)
}

// silence prices keeping string s silent under a barre, which has strings on
// both of its sides: a finger that stops one of them higher touches it.
func (h *hand) silence(s, fret int8) int {
	if h.shape[s] > fret || h.shape[s-2] > fret {
		return dampedPrice
	}
	return slackPrice
}

// clear reports whether nothing sounds on the floor's side of a barre that the
// rest of the finger would damp or stop.
func (h *hand) clear(p press) bool {
	for s := p.base + h.step; s >= 1 && s <= h.last; s += h.step {
		if fret := h.shape[s-1]; fret != muted && fret < p.fret {
			return false
		}
	}
	return true
}
