package picking

import (
	"weft.example/fretboard"
	"weft.example/voicing"
)

// A Moulding is a way of fitting a figure to the strings that sound.
type Moulding uint8

// The three mouldings. All put the figure's root events on the start string.
// Contour keeps rise and fall as far as the strings allow. Bass leaves every
// other event on its string, or on the nearest that sounds. Shift moves every
// event by as many strings as the root moves, held inside those that sound.
const (
	Contour Moulding = iota
	Bass
	Shift
)

var mouldingNames = [...]string{"contour", "bass", "shift"}

// String returns contour, bass or shift.
func (m Moulding) String() string { return fretboard.NameOf(mouldingNames[:], int(m)) }

// ParseMoulding reads contour, bass or shift.
func ParseMoulding(text string) (Moulding, error) {
	i, err := fretboard.ParseName("fit", mouldingNames[:], text)
	return Moulding(i), err
}

// A Fit is a figure moulded to a voicing. The figure counts as looping.
type Fit struct {
	// Strings holds the string of each event of the figure, in turn. Fits of
	// one voicing may share it: the caller must not change it.
	Strings []fretboard.StringNumber
	// CSIM and CPlusSIM compare the figure's contour with the fit's; 1 is whole.
	CSIM, CPlusSIM float64
	// Losses lists the steps from an event to the next, and round from the last
	// to the first, whose direction is not the figure's.
	Losses []Loss
}

// A Loss is a step of the figure that became a repeat or turned. From and To
// count the figure's events from 1.
type Loss struct {
	From, To  int
	Want, Got Direction
}

// Fit moulds f to the strings that v sounds. The contour moulding is an exact
// optimum: it minimises, in this order, the contour lost between neighbours
// (the last and the first are neighbours too), the contour lost between all
// pairs, and the distance to the strings as written; of equal solutions it
// takes the pointwise thinnest. A figure that loses nothing costs linear time,
// any other a minimum cut over at most events * (sounding strings - 1) nodes;
// the other mouldings are linear.
func (f Figure) Fit(v voicing.Voicing, m Moulding) Fit {
	p := problem{events: f.events(), root: f.Root(), sounding: v.Sounding(), start: v.Start().String}
	return p.solve(m, new(cutter))
}

// A problem is what a fit depends on.
type problem struct {
	events   []fretboard.StringNumber
	root     fretboard.StringNumber // events on it go to start
	sounding fretboard.StringSet
	start    fretboard.StringNumber
}

func (p problem) solve(m Moulding, c *cutter) Fit {
	fit := Fit{Strings: p.mould(m, c)}
	fit.CSIM = CSIM(p.events, fit.Strings)
	fit.CPlusSIM = CPlusSIM(p.events, fit.Strings)
	for i := range p.events {
		j := (i + 1) % len(p.events)
		want, got := direction(p.events[i], p.events[j]), direction(fit.Strings[i], fit.Strings[j])
		if want != got {
			fit.Losses = append(fit.Losses, Loss{i + 1, j + 1, want, got})
		}
	}
	return fit
}

func (p problem) mould(m Moulding, c *cutter) []fretboard.StringNumber {
	switch m {
	case Bass:
		return p.move(0)
	case Shift:
		return p.move(p.start - p.root)
	}
	if strings, whole := p.levels(); whole {
		return strings
	}
	return p.contour(c)
}

// move puts root events on the start string and all others as many strings
// further, or on the nearest that sounds.
func (p problem) move(by fretboard.StringNumber) []fretboard.StringNumber {
	strings := make([]fretboard.StringNumber, len(p.events))
	for i, s := range p.events {
		strings[i] = p.start
		if s != p.root {
			strings[i] = p.sounding.Nearest(min(max(s+by, 1), fretboard.MaxStrings))
		}
	}
	return strings
}

// direction returns where a step from one string to another leads.
func direction(from, to fretboard.StringNumber) Direction {
	switch {
	case to < from:
		return Up
	case to > from:
		return Down
	}
	return Same
}
