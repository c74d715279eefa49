package changes

import (
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// A Step is one chord of a song.
type Step struct {
	Chord voicing.Chord
	Shape voicing.Shape // to hold; where it is the zero Shape, one is found
	// Plucked lists the strings in the order in which the figure needs them
	// after the change to the chord. It may be empty, and decides nothing: it
	// serves the reports on who is needed first.
	Plucked []fretboard.StringNumber
}

// rests reports whether the hand rests: N.C. without a shape.
func (s Step) rests() bool { return s.Chord.Silent() && s.Shape == voicing.Shape{} }

// A Path is a way through the changes.
type Path struct {
	Grips []Grip // one for each step; the zero Grip where the hand rests
	// Changes has one for each step but the first that is no rest, in their
	// order; in a loop, the one back to the first comes last. A change passes
	// over rests.
	Changes []Change
	Total   int // what all shapes cost and half of what all changes do, in hundredths of a point
	Worst   int // the index in Changes of the one with the most effort, the first of several; -1 where there is none
}

// Easiest returns the easiest path through steps on g. It is exact: no other
// choice among the o.Shapes cheapest shapes of each chord, in the order of
// [voicing.Find], and all their fingerings with no more fingers than the options
// allow has a lower total or, with [LeastWorst], a lower worst effort or an
// equal one and a lower total. A shape that a step names is kept; only its fingers are chosen. Of paths that are equally
// easy, the same one is always returned.
//
// The error is an [fretboard.ImpossibleError], located in the chords printed
// with bar lines between them, if a chord has no playable shape, or if a shape
// cannot be held or is not the instrument's.
//
// With n steps and k grips a chord, some 60 on a guitar, it takes O(n k^2) time
// and memory, and in a loop O(n k^2 m) time, where m is the fewest grips that
// any chord has. Equal chords are searched once; a chord takes some 220
// allocations, the finder's included.
func Easiest(g fretboard.Instrument, steps []Step, o Options) (Path, error) {
	g, err := g.Normal()
	if err != nil {
		return Path{}, err
	}
	if o, err = o.normal(); err != nil {
		return Path{}, err
	}
	t := tour{neck: newNeck(g), loop: o.Loop}
	if err := t.gather(g, steps, o); err != nil {
		return Path{}, err
	}
	return t.path(steps, t.choose(o.Aim)), nil
}

// gather lists the holds of every step that is no rest.
func (t *tour) gather(g fretboard.Instrument, steps []Step, o Options) error {
	type wanted struct {
		chord voicing.Chord
		shape voicing.Shape
	}
	known := map[wanted]*stage{}
	for i, step := range steps {
		if err := checkPlucked(g, step); err != nil {
			return locate(steps, i, err)
		}
		if step.rests() {
			continue
		}
		key := wanted{step.Chord, step.Shape}
		if known[key] == nil {
			holds, err := t.neck.holdsOf(g, step, o)
			if err != nil {
				return locate(steps, i, err)
			}
			known[key] = &stage{holds: holds}
		}
		t.stages = append(t.stages, known[key])
		t.steps = append(t.steps, i)
	}
	t.loop = t.loop && len(t.stages) > 1
	return nil
}

func (n *neck) holdsOf(g fretboard.Instrument, step Step, o Options) ([]hold, error) {
	r := gripper{neck: n, weights: o.Voicing.Weights}
	var err error
	if step.Shape != (voicing.Shape{}) {
		err = r.fixed(g, step)
	} else {
		err = r.found(g, step.Chord, o)
	}
	return r.holds, err
}

func checkPlucked(g fretboard.Instrument, step Step) error {
	for _, s := range step.Plucked {
		if s < 1 || s > g.Tuning.Strings() {
			text := step.Chord.String()
			return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "chord", Source: text, Length: len(text),
				Reason: "string " + digits(s) + " is plucked; the instrument has strings 1 to " + digits(g.Tuning.Strings()),
				Mend:   "name strings that it has"}}
		}
	}
	return nil
}

// path describes the path that takes hold chosen[i] at stage i.
func (t *tour) path(steps []Step, chosen []int) Path {
	p := Path{Grips: make([]Grip, len(steps)), Worst: -1}
	for i, pick := range chosen {
		h := &t.stages[i].holds[pick]
		p.Grips[t.steps[i]] = *h.grip
		p.Total += h.price
	}
	for _, to := range t.arrivals() {
		from := (to + len(chosen) - 1) % len(chosen)
		c := change(&t.stages[from].holds[chosen[from]], &t.stages[to].holds[chosen[to]], steps[t.steps[to]].Plucked)
		c.From, c.To = t.steps[from], t.steps[to]
		p.Total += changeShare * c.Cost.Total()
		p.Changes = append(p.Changes, c)
		if p.Worst < 0 || c.Effort > p.Changes[p.Worst].Effort {
			p.Worst = len(p.Changes) - 1
		}
	}
	return p
}

// locate moves an error about a chord or a shape to its step among all; other
// errors, about the instrument or the options, come back unchanged.
func locate(steps []Step, at int, err error) error {
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok || located.Notation != "chord" && located.Notation != "shape" {
		return err
	}
	texts := make([]string, len(steps))
	offset := 0
	for i, step := range steps {
		texts[i] = step.Chord.String()
		if step.Shape != (voicing.Shape{}) {
			texts[i] += "=" + step.Shape.String()
		}
		if i < at {
			offset += len(texts[i]) + len(barLine)
		}
	}
	if located.Notation == "shape" {
		offset += len(steps[at].Chord.String()) + len("=")
	}
	place := fretboard.Within(err, chordsNotation, strings.Join(texts, barLine), offset).(*fretboard.ImpossibleError).Place
	place.Reason = "chord " + digits(at+1) + ": " + place.Reason
	return &fretboard.ImpossibleError{Place: place}
}

const (
	barLine        = " | "
	chordsNotation = "chords"
)
