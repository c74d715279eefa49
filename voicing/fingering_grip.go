package voicing

// A press is one finger on the neck, on one string or, as a barre, across
// several. It runs from the string where the tip lies, on the ceiling's side,
// to the one on the floor's side.
type press struct{ finger, fret, tip, base int8 }

func (p press) strings() int { return int(max(p.tip-p.base, p.base-p.tip)) + 1 }

// A grip is one way of holding a shape, the index finger first.
type grip struct {
	presses [maxFingers]press
	fingers int8
	cost    gripCost
}

// A gripCost holds the terms of [Cost] that depend on the fingers.
type gripCost struct{ fingers, spread, splay, barre int }

func (c gripCost) total() int { return c.fingers + c.spread + c.splay + c.barre }

// add adds to c what finger p costs after the finger last, which is p itself for
// the first.
func (h *hand) add(c *gripCost, p, last press) {
	c.fingers += fingerPrice + curlPrice*h.ceiling(p.tip)
	if p.finger == maxFingers {
		c.fingers += littlePrice
	}
	c.spread += spreadPrice * p.apart(last)
	c.splay += splay(int(p.finger-last.finger), h.places[p.fret]-h.places[last.fret])
}

// ceiling returns how many strings lie between string s and the ceiling.
func (h *hand) ceiling(s int8) int {
	if h.step > 0 {
		return int(s - 1)
	}
	return int(h.last - s)
}

// barre prices a finger that lies across several strings, if it does.
func (h *hand) barre(p press) int {
	n := p.strings()
	if n == 1 {
		return 0
	}
	price := barrePrice + crossingPrice*n
	if p.finger > 1 {
		price = otherBarrePrice + otherCrossingPrice*n
	}
	if p.finger == maxFingers {
		price += littleCrossingPrice * n
	}
	if beyond := p.tip - h.step; beyond >= 1 && beyond <= h.last && h.shape[beyond-1] == 0 {
		price += tipPrice
	}
	return price
}

// apart returns how many string spacings lie between two fingers.
func (p press) apart(q press) int {
	low, high := min(p.tip, p.base), max(p.tip, p.base)
	return int(max(min(q.tip, q.base)-high, low-max(q.tip, q.base), 0))
}

// splay prices two fingers, so many apart by number, that lie so many tenths
// of a millimetre apart along the neck.
func splay(fingers, apart int) int {
	off := int64(apart - restTenths*fingers)
	return int(off * off / (100 * splayShare))
}
