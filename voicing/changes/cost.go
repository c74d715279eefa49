package changes

import "weft.example/voicing"

// A Cost says what a change asks of the fretting hand, term by term, in points
// (one point is what a player would pay to stay a millimetre nearer the nut).
// A finger that stays where it is costs nothing.
type Cost struct {
	Slides   int // fingers that stay on their strings and go to another fret: an eighth of a point a mm
	Moves    int // fingers that leave for other strings: 5 points each, and a quarter of a point a mm
	SetsDown int // fingers that come from the air: 10 points each, and a quarter of a point a mm by which the hand shifts along the neck
	Lifts    int // fingers that go into the air: 2 points each
}

// Total returns the sum of the terms.
func (c Cost) Total() int { return c.Slides + c.Moves + c.SetsDown + c.Lifts }

// The prices, in points. Two things judge them, both common practice: changes
// that every method teaches keep the fingers down that are taught to stay, and
// no chord of those leaves the shape that handbooks print first.
const (
	movePrice    = 5  // less than setting down: a finger that goes to the next string keeps its bend and its place in the hand
	setDownPrice = 10 // it must be aimed; with a lift it costs as much as a move by two strings
	liftPrice    = 2
	moveTenths   = 40 // the way that costs a point
	slideTenths  = 80 // the string guides the finger
)

// changeShare is how many hundredths of a point each point of a change adds to
// the total. A change is over in a moment while a shape is held and heard, so it
// counts half: enough to choose the fingers, and the shape among good ones, and
// too little to leave 320003 for 32000x.
const changeShare = 50

// restTenths is how far neighbouring fingers rest from each other along the
// neck, in tenths of a millimetre: 24 mm, as [voicing.Cost] has it.
const restTenths = 240

// add counts one finger that does act over a distance in tenths of a millimetre.
func (c *Cost) add(act Act, distance int) {
	switch act {
	case Slides:
		c.Slides += (distance + slideTenths/2) / slideTenths
	case Moves:
		c.Moves += movePrice + (distance+moveTenths/2)/moveTenths
	case SetsDown:
		c.SetsDown += setDownPrice + (distance+moveTenths/2)/moveTenths
	case Lifts:
		c.Lifts += liftPrice
	}
}

// felt returns what of the price of a voicing the hand feels, and does not
// hear, in hundredths of a point. Too few strings are among it, or a song would
// be made easy by leaving out most of its notes.
func felt(c voicing.Cost, w voicing.Weights) int {
	return voicing.Cost{Stretch: c.Stretch, Position: c.Position, Fingers: c.Fingers, Spread: c.Spread,
		Splay: c.Splay, Barre: c.Barre, Thin: c.Thin}.Weighed(w)
}
