package picking

import "weft.example/fretboard"

// A strain is what a choice of strokes costs, the weightier first.
type strain struct {
	travel   int64 // string spacings
	away     int   // string changes not left toward the next string
	same     int   // repeats that do not alternate
	offbeats int   // strokes off the grid
}

func (a strain) plus(b strain) strain {
	return strain{a.travel + b.travel, a.away + b.away, a.same + b.same, a.offbeats + b.offbeats}
}

func (a strain) less(b strain) bool {
	switch {
	case a.travel != b.travel:
		return a.travel < b.travel
	case a.away != b.away:
		return a.away < b.away
	case a.same != b.same:
		return a.same < b.same
	}
	return a.offbeats < b.offbeats
}

// forbidden is worse than any choice, and may be added to without overflow.
var forbidden = strain{travel: 1 << 30}

// both are the strokes in the order in which ties are broken.
var both = [2]Stroke{DownStroke, UpStroke}

// alone returns the cost of a stroke by itself.
func (s Strike) alone(stroke Stroke) strain {
	switch {
	case s.Own != Free && s.Own != stroke:
		return forbidden
	case s.grid() != stroke:
		return strain{offbeats: 1}
	}
	return strain{}
}

// join returns the cost of one stroke after another.
func join(h fretboard.Hand, from Strike, a Stroke, to Strike, b Stroke) strain {
	cost := strain{travel: int64(travel(h, from.String, a, to.String, b))}
	switch lead := toward(h, from.String, to.String); {
	case lead == Free && a == b:
		cost.same = 1
	case lead != Free && lead != a:
		cost.away = 1
	}
	return cost
}

// leastTravel fills strokes by dynamic programming over the stroke of each
// strike; a loop is solved once for each stroke of its first.
func leastTravel(strokes []Stroke, strikes []Strike, h fretboard.Hand, loop bool) {
	came := make([][2]uint8, len(strikes)) // the best stroke before, as an index of both
	best := forbidden.plus(forbidden)
	try := func(costs [2]strain, close func(last int) strain) {
		costs = forward(came, strikes, h, costs)
		for last := range both {
			if total := costs[last].plus(close(last)); total.less(best) {
				best = total
				backward(strokes, came, last)
			}
		}
	}
	first, last := strikes[0], strikes[len(strikes)-1]
	alone := [2]strain{first.alone(both[0]), first.alone(both[1])}
	if !loop {
		try(alone, func(int) strain { return strain{} })
		return
	}
	for k := range both {
		only := [2]strain{forbidden, forbidden}
		only[k] = alone[k]
		try(only, func(l int) strain { return join(h, last, both[l], first, both[k]) })
	}
}

// forward returns the least cost of ending on each stroke, from those of the
// first strike, and notes in came how it was reached.
func forward(came [][2]uint8, strikes []Strike, h fretboard.Hand, costs [2]strain) [2]strain {
	for i := 1; i < len(strikes); i++ {
		var next [2]strain
		for b := range both {
			down := costs[0].plus(join(h, strikes[i-1], both[0], strikes[i], both[b]))
			up := costs[1].plus(join(h, strikes[i-1], both[1], strikes[i], both[b]))
			next[b], came[i][b] = down, 0
			if up.less(down) {
				next[b], came[i][b] = up, 1
			}
			next[b] = next[b].plus(strikes[i].alone(both[b]))
		}
		costs = next
	}
	return costs
}

// backward reads the best strokes from the last to the first.
func backward(strokes []Stroke, came [][2]uint8, last int) {
	for i := len(strokes) - 1; i >= 0; i-- {
		strokes[i] = both[last]
		last = int(came[i][last])
	}
}
