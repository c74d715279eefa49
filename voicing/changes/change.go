package changes

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// An Act is what a finger does in a change.
type Act uint8

// The acts.
const (
	Stays    Act = iota // on the same strings at the same fret: an anchor
	Slides              // along the same strings to another fret
	Moves               // to other strings
	SetsDown            // from the air onto the neck
	Lifts               // from the neck into the air
)

var actNames = [...]string{"stays", "slides", "moves", "sets down", "lifts"}

// String returns stays, slides, moves, sets down or lifts.
func (a Act) String() string { return fretboard.NameOf(actNames[:], int(a)) }

// A Motion is what one finger does in a change.
type Motion struct {
	Finger voicing.Finger
	Act    Act
	From   voicing.Press // the zero Press where it is set down
	To     voicing.Press // the zero Press where it lifts
	// Distance is how far the finger goes in the plane of the fretboard; where
	// it is set down, how far the hand has taken it along the neck; where it
	// lifts, 0. In whole tenths.
	Distance fretboard.Millimetres
	// Spare is how many plucks pass before one needs the finger where it has
	// gone, or gone from where it was; -1 if none does.
	Spare int
}

// A Change leads from the grip of one chord to that of another.
type Change struct {
	From, To int      // the steps, counted from 0
	Fingers  []Motion // of those on the neck before or after, the index finger first
	Cost     Cost
	// Effort is what [LeastWorst] keeps low, in hundredths of a point: the cost
	// of the change; what the hand feels of the usual grip of the chord that it
	// leads to (the terms Stretch, Position, Fingers, Spread, Splay, Barre and
	// Thin of its cost); and by how much each of the two grips costs more than its
	// chord's usual one, so that no change is made easy by a grip that is hard or
	// sounds poor. The usual grip is the cheapest of the shape that [voicing.Find]
	// yields first, or of the one that the step names. Where the grip stays the
	// same, only what it costs more counts.
	Effort int
	// First is the string that is plucked first of those that sound, and
	// Stopped the finger that stops it, 0 where it is open. First is 0 where
	// the step does not say what is plucked.
	First   fretboard.StringNumber
	Stopped voicing.Finger
}

// does returns what finger i does between two holds and over what distance in
// tenths of a millimetre, or false where it is off in both.
func does(a, b *hold, i int) (act Act, distance int, any bool) {
	from, to := &a.spots[i], &b.spots[i]
	switch {
	case !a.on[i] && !b.on[i]:
		return 0, 0, false
	case !b.on[i]:
		return Lifts, 0, true
	case !a.on[i]:
		return SetsDown, shift(a, b), true
	case from.press == to.press:
		return Stays, 0, true
	case from.press.Thick == to.press.Thick && from.press.Thin == to.press.Thin:
		return Slides, max(from.along-to.along, to.along-from.along), true
	}
	return Moves, from.apart(to), true
}

// shift returns how far the hand goes along the neck.
func shift(a, b *hold) int {
	if !a.frets || !b.frets {
		return 0
	}
	return max(a.base-b.base, b.base-a.base)
}

// cost prices the change from a to b.
func cost(a, b *hold) (c Cost) {
	for i := range fingers {
		if act, distance, any := does(a, b, i); any {
			c.add(act, distance)
		}
	}
	return c
}

// effort returns [Change.Effort] from what the change costs in points.
func effort(cost int, from, to *hold) int {
	more := from.more + to.more
	if cost == 0 && from.grip.Fingering == to.grip.Fingering {
		return more
	}
	return more + 100*cost + to.felt
}

// change describes the change from a to b, with what is plucked after it.
func change(a, b *hold, plucked []fretboard.StringNumber) Change {
	c := Change{Cost: cost(a, b)}
	c.Effort = effort(c.Cost.Total(), a, b)
	for i := range fingers {
		if act, distance, any := does(a, b, i); any {
			m := Motion{Finger: voicing.Index + voicing.Finger(i), Act: act, From: a.spots[i].press, To: b.spots[i].press,
				Distance: fretboard.Millimetres(distance) / 10}
			m.Spare = m.spare(b.grip, plucked)
			c.Fingers = append(c.Fingers, m)
		}
	}
	for _, s := range plucked {
		if b.grip.Voicing.Sounding().Has(s) {
			c.First, c.Stopped = s, b.grip.Fingering.Finger(s)
			break
		}
	}
	return c
}

// spare counts the plucks before the first one that the finger must have been
// in time for.
func (m *Motion) spare(to *Grip, plucked []fretboard.StringNumber) int {
	for i, s := range plucked {
		if to.Voicing.Sounding().Has(s) && (to.Fingering.Finger(s) == m.Finger || m.buries(s, to)) {
			return i
		}
	}
	return -1
}

// buries reports whether the finger, were it still where it was, would stop
// string s above where it now sounds.
func (m *Motion) buries(s fretboard.StringNumber, to *Grip) bool {
	fret, _ := to.Voicing.Shape().Fret(s)
	return m.From.Thin <= s && s <= m.From.Thick && m.From.Fret > fret
}

// String prints what the finger does: ring moves 16.9 mm, from string 3, fret 2
// to string 5, fret 3.
func (m Motion) String() string {
	return m.Finger.String() + " " + m.doing()
}

func (m Motion) doing() string {
	switch m.Act {
	case Stays:
		return "stays on " + place(m.To)
	case Lifts:
		return "lifts off " + place(m.From)
	case SetsDown:
		return "is set down on " + place(m.To)
	}
	far := strconv.FormatFloat(float64(m.Distance), 'f', 1, 64) + " mm"
	if m.Act == Slides {
		return "slides " + far + " on " + stringsOf(m.To) + " to fret " + digits(m.To.Fret)
	}
	return "moves " + far + ", from " + place(m.From) + " to " + place(m.To)
}

func place(p voicing.Press) string { return stringsOf(p) + ", fret " + digits(p.Fret) }

func stringsOf(p voicing.Press) string {
	if p.Barre() {
		return "strings " + digits(p.Thick) + " to " + digits(p.Thin)
	}
	return "string " + digits(p.Thin)
}
