package picking

import "weft.example/fretboard"

// A Stroke is the way the pick moves through a string. Down is toward the
// floor: toward string 1, but toward the thickest on a guitar turned over for
// the left hand.
type Stroke uint8

// The strokes. Free is one not yet chosen.
const (
	Free Stroke = iota
	DownStroke
	UpStroke
)

var strokeNames = [...]string{"free", "down", "up"}

// String returns free, down or up.
func (s Stroke) String() string { return fretboard.NameOf(strokeNames[:], int(s)) }

// ParseStroke reads down or up.
func ParseStroke(text string) (Stroke, error) {
	i, err := fretboard.ParseName("stroke", strokeNames[1:], text)
	return Stroke(i + 1), err
}

// letter returns the stroke as a figure writes it after a string number.
func (s Stroke) letter() string {
	switch s {
	case DownStroke:
		return "d"
	case UpStroke:
		return "u"
	}
	return ""
}

func (s Stroke) other() Stroke { return DownStroke + UpStroke - s }

// A Tradition is a rule for choosing strokes.
type Tradition uint8

// The five traditions.
//
// TowardNext: each stroke goes toward the next string to be plucked. Economy:
// the first stroke on a new string follows the pick's way onto it, the same
// rule one note later. Alternate: down and up in turn, slot by slot from the
// bar line; slots of a beat or longer are all down. RestStroke: the first
// stroke on every new string is down. Jig: down, up, down in each group of three slots. In all but
// Alternate and Jig a repeated string alternates.
//
// Alternate, economy and the inside and outside crossings are common practice;
// the rest-stroke is described in Bickford's mandolin method, p. 44.
const (
	TowardNext Tradition = iota
	Economy
	Alternate
	RestStroke
	Jig
)

var traditionNames = [...]string{"toward-next", "economy", "alternate", "rest-stroke", "jig"}

// String returns toward-next, economy, alternate, rest-stroke or jig.
func (t Tradition) String() string { return fretboard.NameOf(traditionNames[:], int(t)) }

// ParseTradition reads the name of a tradition.
func ParseTradition(text string) (Tradition, error) {
	i, err := fretboard.ParseName("strokes", traditionNames[:], text)
	return Tradition(i), err
}

// A Why is the reason for a stroke.
type Why uint8

// The reasons for a stroke.
const (
	TowardNextString Why = iota + 1 // it goes toward the next string
	Turnaround                      // so it does, back the way the pick came
	Repeat                          // the same string is next: strokes alternate
	RoundLoop                       // it goes toward the first string of the loop
	LastStroke                      // nothing follows: it goes on as it came
	OwnStroke                       // the teacher's own, set in the figure
	ByTradition                     // the chosen tradition's rule
)

var whyNames = [...]string{"", "toward the next string", "turnaround", "repeat", "loop", "last", "own", "tradition"}

// String returns the reason in a word or a few.
func (w Why) String() string { return fretboard.NameOf(whyNames[:], int(w)) }

// ParseWhy reads a reason as [Why.String] prints it.
func ParseWhy(text string) (Why, error) {
	i, err := fretboard.ParseName("why", whyNames[1:], text)
	return Why(i + 1), err
}

// A Strike is a string to be plucked, as the choice of strokes sees it.
type Strike struct {
	String fretboard.StringNumber
	Own    Stroke // kept whatever the tradition, or Free
	// Offbeat puts the strike on the up-strokes of the grid, which Alternate
	// goes by and TowardNext falls back on.
	Offbeat bool
	Step    int // slots from the bar line; Jig goes by it
}

// grid returns the stroke of the grid.
func (s Strike) grid() Stroke {
	if s.Offbeat {
		return UpStroke
	}
	return DownStroke
}

// toward returns the stroke that leads from one string to another, or Free if
// they are one.
func toward(h fretboard.Hand, from, to fretboard.StringNumber) Stroke {
	switch step := (to - from) * h.Toward(); {
	case step > 0:
		return DownStroke
	case step < 0:
		return UpStroke
	}
	return Free
}

// ChooseStrokes returns the stroke of each strike under a tradition. If loop
// is set, the last strike is followed by the first. TowardNext minimises, in
// this order: the pick's travel, the string changes not left toward the next
// string, the repeats that do not alternate, and the strokes off the grid. It
// is exact and linear, as all traditions are.
func ChooseStrokes(strikes []Strike, t Tradition, h fretboard.Hand, loop bool) []Stroke {
	strokes := make([]Stroke, len(strikes))
	if len(strikes) == 0 {
		return strokes
	}
	switch t {
	case Economy, RestStroke:
		chain(strokes, strikes, t, h, loop)
	case Alternate, Jig:
		for i, s := range strikes {
			strokes[i] = s.fixed(t)
		}
	default:
		leastTravel(strokes, strikes, h, loop)
	}
	return strokes
}

// fixed returns the stroke that a tradition sets by the grid alone.
func (s Strike) fixed(t Tradition) Stroke {
	switch {
	case s.Own != Free:
		return s.Own
	case t == Jig && s.Step%3 == 1:
		return UpStroke
	case t == Jig:
		return DownStroke
	}
	return s.grid()
}

// chain chooses each stroke from the one before: a new string takes the
// tradition's stroke, a repeated string alternates.
func chain(strokes []Stroke, strikes []Strike, t Tradition, h fretboard.Hand, loop bool) {
	n := len(strikes)
	first := chainStart(strikes, loop)
	for k := range n {
		i := (first + k) % n
		before := (i + n - 1) % n
		from, to := strikes[before].String, strikes[i].String
		switch {
		case strikes[i].Own != Free:
			strokes[i] = strikes[i].Own
		case k == 0 && (!loop || from == to):
			strokes[i] = DownStroke
		case from == to:
			strokes[i] = strokes[before].other()
		case t == RestStroke:
			strokes[i] = DownStroke
		default:
			strokes[i] = toward(h, from, to)
		}
	}
}

// chainStart returns where the chain begins: in a loop at the first new
// string, so that a repeat over the loop's join has a stroke to answer.
func chainStart(strikes []Strike, loop bool) int {
	n := len(strikes)
	for i := 0; loop && i < n; i++ {
		if strikes[i].String != strikes[(i+n-1)%n].String {
			return i
		}
	}
	return 0
}
