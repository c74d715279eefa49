package changes

import (
	"cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// A Grip is a voicing and the fingers that hold it. The zero Grip is a rest.
type Grip struct {
	Voicing   voicing.Voicing
	Fingering voicing.Fingering
}

const fingers = int(voicing.Little)

// A hold is a grip opened for arithmetic.
type hold struct {
	grip  *Grip
	spots [fingers]spot // of each finger from the index
	on    [fingers]bool
	base  int  // where along the neck the index finger lies or would rest, in tenths of a millimetre
	frets bool // whether any finger is on; where none is, base means nothing
	holdPrice
}

// A holdPrice is the price of a shape and its fingers, in hundredths of a point.
type holdPrice struct {
	price int
	more  int // than the chord's usual grip costs
	felt  int // as much of the usual grip's price as the hand feels
}

func (n *neck) hold(g *Grip, p holdPrice) hold {
	h := hold{grip: g, holdPrice: p}
	for _, p := range g.Fingering.Presses() {
		i := int(p.Finger - voicing.Index)
		h.spots[i], h.on[i] = n.spot(p), true
		if !h.frets {
			h.base, h.frets = h.spots[i].along-restTenths*i, true
		}
	}
	return h
}

// A gripper lists the grips of a chord. The usual one, by which the others are
// measured, is the cheapest of the first shape.
type gripper struct {
	neck    *neck
	weights voicing.Weights
	most    int // fingers
	usual   holdPrice
	holds   []hold
}

// add adds the grips of v that take no more fingers than the most.
func (r *gripper) add(v voicing.Voicing) {
	first := r.holds == nil
	from := len(r.holds)
	for _, f := range v.Fingerings() {
		if len(f.Presses()) > r.most {
			continue
		}
		p := priceOf(v.CostWith(f), r.weights)
		if first && (len(r.holds) == from || p.price < r.usual.price) {
			r.usual = p
		}
		r.holds = append(r.holds, r.neck.hold(&Grip{v, f}, p))
	}
	for i := range r.holds[from:] {
		h := &r.holds[from+i]
		h.more, h.felt = max(0, h.price-r.usual.price), r.usual.felt
	}
}

// priceOf prices a grip that costs c.
func priceOf(c voicing.Cost, w voicing.Weights) holdPrice {
	return holdPrice{price: c.Weighed(w), felt: felt(c, w)}
}

// fixed lists the grips of a shape that the caller names.
func (r *gripper) fixed(g fretboard.Instrument, step Step) error {
	v, err := voicing.New(g, step.Chord, step.Shape)
	if err != nil {
		return err
	}
	if _, err := v.Fingering(); err != nil {
		return err
	}
	r.most = fingers
	r.add(v)
	return nil
}

// found lists the grips of the cheapest shapes of a chord.
func (r *gripper) found(g fretboard.Instrument, chord voicing.Chord, o Options) error {
	r.most = cmp.Or(o.Voicing.Fingers, fingers)
	shapes := 0
	for v := range voicing.Find(g, chord, o.Voicing) {
		r.add(v)
		if shapes++; shapes == o.Shapes {
			break
		}
	}
	if shapes == 0 {
		_, err := voicing.Best(g, chord, o.Voicing)
		return err
	}
	return nil
}
