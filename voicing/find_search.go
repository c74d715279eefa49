package voicing

import (
	"math"

	"weft.example/fretboard"
)

// ceilings are tried in turn: a search looks only at shapes that cost no more
// than the ceiling, in hundredths of a point, and at dearer ones if those are
// too few. No shape stands above the last.
var ceilings = [...]int{40000, 100000, 250000, math.MaxInt}

// A search goes through all shapes of a chord, window by window: the shapes
// whose lowest fret held is the same. It gives up a window, or a shape of which
// some strings are chosen, as soon as what it must cost at least is above what
// the shapes kept so far cost at most.
type search struct {
	judge
	instrument fretboard.Instrument
	chord      Chord
	options    Options                      // normal
	span       int                          // of the options, in tenths of a millimetre
	factor     Cost                         // by which each term counts, in hundredths
	notes      [fretboard.MaxStrings][]note // on each string, rising
	must       needs

	window   window
	partials [fretboard.MaxStrings + 1]partial
	shape    held
	kept     ranking
	ceiling  int // index of ceilings
}

// newSearch prepares the search for chord on g.
func newSearch(g fretboard.Instrument, chord Chord, o Options) (*search, error) {
	if chord.Silent() {
		return nil, unplayable(chord, "silence has no shape", "name a chord")
	}
	g, err := g.Normal()
	if err != nil {
		return nil, err
	}
	if o, err = o.normal(g); err != nil {
		return nil, err
	}
	s := &search{judge: newJudge(g, chord), instrument: g, chord: chord, options: o, span: tenths(o.Span),
		factor: o.Weights.factor()}
	s.listNotes()
	s.must = s.needs
	s.partials[s.strings] = nothing
	return s, nil
}

// first returns the most cheapest shapes; where none sounds all that the chord
// needs, the search goes on for its character alone.
func (s *search) first(most int) []found {
	shapes := s.cheapest(most)
	if len(shapes) == 0 {
		s.must, s.ceiling = character(s.chord), 0
		shapes = s.cheapest(most)
	}
	return shapes
}

func (s *search) voicing(f found) Voicing {
	pitches := s.open
	for i, fret := range f.shape[:s.strings] {
		pitches[i] += fretboard.Pitch(max(0, fret))
	}
	return hold(s.instrument, s.chord, f.shape.shape(s.strings), &pitches)
}

// cheapest returns the most cheapest shapes, or all if there are fewer, by
// rising cost.
func (s *search) cheapest(most int) []found {
	if most == math.MaxInt { // nothing to be gained by looking at the cheap ones first
		s.ceiling = len(ceilings) - 1
	}
	for {
		s.kept = ranking{most: most, ceiling: ceilings[s.ceiling]}
		for low := int8(0); low <= int8(s.options.High) && s.places[low]/10*s.factor.Position <= s.kept.worst(); low++ {
			s.enter(low)
			s.choose(s.strings - 1)
		}
		if s.kept.full() || s.ceiling == len(ceilings)-1 {
			return s.kept.sorted()
		}
		s.ceiling++
	}
}

// choose tries all that string i+1 and those thinner can do. What is known of
// the thicker ones stands in partials[i+1].
func (s *search) choose(i int) {
	p := &s.partials[i+1]
	if i < 0 {
		s.offer(p)
		return
	}
	if !s.canMeet(i, p) {
		return
	}
	if worst := s.kept.worst(); worst < math.MaxInt && s.atLeast(i, p) > worst {
		return
	}
	next := &s.partials[i]
	for _, n := range s.window.notes[i] {
		*next = *p
		if s.stop(i, n, next) {
			s.shape[i] = n.fret
			s.choose(i - 1)
		}
	}
	if !s.options.Sounding.Has(fretboard.StringNumber(i + 1)) {
		*next = *p
		s.mute(next)
		s.shape[i] = muted
		s.choose(i - 1)
	}
}

// offer prices a whole shape and keeps it if it is cheap enough. The fingers
// come last, since they take the longest.
func (s *search) offer(p *partial) {
	if p.sounding == 0 || s.window.low > 0 && p.atLow == 0 || s.must.unmet(p.sounded) > 0 ||
		s.options.BassLow && p.lowest != p.bass {
		return
	}
	cost := p.paid + s.placed(p) + s.heard(p)
	if cost > s.kept.worst() {
		return
	}
	if s.window.low > 0 {
		hand := s.hand(&s.shape)
		g := hand.cheapest()
		if !hand.found || !hand.within(s.options.Fingers) {
			return
		}
		cost += g.cost.fingers*s.factor.Fingers + g.cost.spread*s.factor.Spread +
			g.cost.splay*s.factor.Splay + g.cost.barre*s.factor.Barre
	}
	if cost <= s.kept.worst() {
		s.kept.add(found{cost, s.shape})
	}
}
