package voicing

// content gathers what a symbol says into a formula. Every change checks
// itself against the ones before it in such a way that their order decides
// neither the outcome nor whether there is one.
type content struct {
	formula formula
	named   formula // what quality and number say outright, which nothing may change
	stack   formula // what the number implies, its top included
	omitted formula
}

// A fault is a contradiction, without its place.
type fault struct{ reason, mend string }

// A change is what a mark does to members.
type change uint8

const (
	adding change = iota
	altering
	suspending
	omitting
)

// apply makes a change to each of some members, up to the first fault.
func (c *content) apply(do change, to formula) (f *fault) {
	for one := range to.all() {
		switch do {
		case adding:
			f = c.add(one)
		case altering:
			f = c.alter(one)
		case suspending:
			f = c.suspend(one)
		case omitting:
			f = c.omit(one)
		}
		if f != nil {
			return f
		}
	}
	return nil
}

const keepOne = "keep one of the two"

// add puts one member in.
func (c *content) add(one formula) *fault {
	name := memberOf(one).name
	if c.formula.has(one) {
		return &fault{"the chord has its " + name + " already", "leave one out"}
	}
	for rival, m := range ((c.formula | c.omitted) & rivalsOf(one)).all() {
		switch {
		case c.omitted.has(rival):
			return &fault{name + " and no " + m.name, keepOne}
		case (m.semitones-memberOf(one).semitones)%12 == 0:
			return &fault{name + " sounds the same as the chord's " + m.name, keepOne}
		}
		return &fault{name + " beside the chord's " + m.name, keepOne}
	}
	if c.omitted.has(one) {
		return &fault{name + " and no " + name, keepOne}
	}
	c.formula |= one
	return nil
}

// alter puts an altered member in, in place of the plain one where a number or
// the triad implies that.
func (c *content) alter(one formula) *fault {
	degree := degreeOf(one)
	if said := c.named & degree; said != 0 && !c.formula.has(one) {
		return &fault{memberOf(one).name + " in a chord that names its " + memberOf(said).name,
			"write the chord without the one or the other, such as C7b9 for C9b9"}
	}
	c.formula &^= (c.stack | fifth) & degree
	return c.add(one)
}

// degreeOf returns the members that share the degree of one, if a triad or a
// number may imply one of them.
func degreeOf(one formula) formula {
	for _, degree := range [...]formula{fifths, ninths, eleventh | sharpEleventh, thirteenth | flatThirteenth} {
		if degree.has(one) {
			return degree
		}
	}
	return 0
}

// suspend puts a second or a fourth in place of the third. The same tone an
// octave up, where a number implies it, is then that second or fourth.
func (c *content) suspend(one formula) *fault {
	if said := c.named & thirds; said != 0 {
		return &fault{memberOf(one).name + " suspended in a chord that names its " + memberOf(said).name,
			"write sus without minor or major, or add" + memberOf(one).name + " to keep the third"}
	}
	c.formula &^= majorThird | c.stack&rivalsOf(one)&(ninth|eleventh)
	return c.add(one)
}

// omit takes a member out: the third, the fifth, or a 9th or 11th below the
// number that implies it. A third that a suspension has replaced is out already.
func (c *content) omit(one formula) *fault {
	name := memberOf(one).name
	if one == majorThird {
		one |= c.named & thirds
	}
	switch {
	case c.omitted.any(one):
		return &fault{"the " + name + " is left out twice", "leave one out"}
	case c.named.any(one):
		return &fault{"no " + name + " in a chord that names it", "write the chord without it"}
	case one != majorThird && !(c.formula & (c.stack | fifth)).has(one):
		return &fault{"no plain " + name + " to leave out", "leave that away"}
	}
	c.formula &^= one
	c.omitted |= one
	return nil
}
