package voicing

import (
	"math"

	"weft.example/fretboard"
)

// maxSpan is how far apart the frets held may lie, in tenths of a millimetre:
// the reach of a hand (common practice: four frets from the nut of a guitar,
// five from fret 5).
const maxSpan = 1050

// ceilings are tried in turn: a search looks only at shapes that cost no more
// than the ceiling, and at dearer ones if those are too few. No shape stands
// above the last.
var ceilings = [...]int{400, 1000, 2500, math.MaxInt}

// A search goes through all shapes of a chord, window by window: the shapes
// whose lowest fret held is the same. It gives up a window, or a shape of which
// some strings are chosen, as soon as what it must cost at least is above what
// the shapes kept so far cost at most.
type search struct {
	judge
	instrument fretboard.Instrument
	chord      Chord
	reach      int8
	frets      [fretboard.MaxStrings][]int8 // where each string sounds a tone, rising
	must       []ClassSet

	window struct {
		low, high int8
		// What strings 1 to i can do: the classes they sound, those of them
		// without another finger above the lowest fret, and the lowest bass.
		classes [fretboard.MaxStrings + 1]ClassSet
		easy    [fretboard.MaxStrings + 1]ClassSet
		bass    [fretboard.MaxStrings + 1]fretboard.Pitch
	}
	shape   held
	kept    ranking
	ceiling int // index of ceilings
}

// newSearch prepares the search for chord on g.
func newSearch(g fretboard.Instrument, chord Chord) (*search, error) {
	if chord.Silent() {
		return nil, unplayable(chord, "silence has no shape", "name a chord")
	}
	g, err := g.Normal()
	if err != nil {
		return nil, err
	}
	s := &search{judge: newJudge(g, chord), instrument: g, chord: chord, reach: int8(g.Reach())}
	classes := chord.Classes()
	all := make([]int8, 0, s.strings*int(s.reach+1))
	for i := range s.strings {
		from := len(all)
		for f := range s.reach + 1 {
			if classes.Has((s.open[i] + fretboard.Pitch(f)).Class()) {
				all = append(all, f)
			}
		}
		s.frets[i] = all[from:len(all):len(all)]
	}
	s.must = s.needs
	return s, nil
}

// best returns the cheapest shape; where none sounds all that the chord needs,
// the search goes on for its character alone.
func (s *search) best() (found, bool) {
	shapes := s.cheapest(1)
	if len(shapes) == 0 {
		s.must, s.ceiling = character(s.chord), 0
		shapes = s.cheapest(1)
	}
	if len(shapes) == 0 {
		return found{}, false
	}
	return shapes[0], true
}

func (s *search) voicing(f found) Voicing {
	return hold(s.instrument, s.chord, f.shape.shape(s.strings))
}

// cheapest returns the most cheapest shapes, or all if there are fewer, by
// rising cost.
func (s *search) cheapest(most int) []found {
	if most == math.MaxInt { // nothing to be gained by looking at the cheap ones first
		s.ceiling = len(ceilings) - 1
	}
	for {
		s.kept = ranking{most: most, ceiling: ceilings[s.ceiling]}
		for low := int8(0); low <= s.reach && s.places[low]/10 <= s.kept.worst(); low++ {
			s.enter(low)
			s.choose(s.strings-1, partial{lowest: silentBass, bass: silentBass})
		}
		if s.kept.full() || s.ceiling == len(ceilings)-1 {
			return s.kept.sorted()
		}
		s.ceiling++
	}
}

// enter opens the window of the shapes whose lowest fret held is low, 0 for
// the shapes of open strings alone.
func (s *search) enter(low int8) {
	w := &s.window
	w.low, w.high = low, low
	for low > 0 && w.high < s.reach && s.places[w.high+1]-s.places[low] <= maxSpan {
		w.high++
	}
	w.bass[0] = silentBass
	for i := range s.strings {
		w.classes[i+1], w.easy[i+1], w.bass[i+1] = w.classes[i], w.easy[i], w.bass[i]
		for _, f := range s.frets[i] {
			if f != 0 && (f < w.low || w.high < f) {
				continue
			}
			pitch := s.open[i] + fretboard.Pitch(f)
			w.classes[i+1] = w.classes[i+1].With(pitch.Class())
			if f <= w.low {
				w.easy[i+1] = w.easy[i+1].With(pitch.Class())
			}
			if pitch.Class() == s.bass {
				w.bass[i+1] = min(w.bass[i+1], pitch)
			}
		}
	}
}

// silentBass stands above every pitch, for a bass that does not sound.
const silentBass = fretboard.MaxPitch + 1

// A partial is what is known of a shape whose thicker strings are chosen.
type partial struct {
	sounded  ClassSet
	lowest   fretboard.Pitch // that sounds, if anything does
	bass     fretboard.Pitch // the lowest bass that sounds, or silentBass
	alien    bool            // the slash bass sounds, which is no tone of the chord
	sounding int
	pitches  [2]uint64 // a bit for each that sounds
	paid     int       // for mutes at least, for tones doubled, for what is certainly below the bass
	low      bool      // something is certainly below the bass
	gap      int       // strings muted since the last that sounds, if any does
	atLow    int       // strings stopped at the window's lowest fret
	above    int       // strings stopped above it
	high     int8
}

// choose tries all that string i+1 and those thinner can do.
func (s *search) choose(i int, p partial) {
	if i < 0 {
		s.offer(p)
		return
	}
	if !s.canMeet(i, p) || s.atLeast(i, p) > s.kept.worst() {
		return
	}
	for _, f := range s.frets[i] {
		if f > s.window.high {
			break
		}
		if f != 0 && f < s.window.low {
			continue
		}
		if next, ok := s.stop(i, f, p); ok {
			s.shape[i] = f
			s.choose(i-1, next)
		}
	}
	s.shape[i] = muted
	s.choose(i-1, p.mute())
}

// canMeet reports whether string i+1 and those thinner may yet sound all that
// must sound, one tone each, with the fingers that are left.
func (s *search) canMeet(i int, p partial) bool {
	missing, fingers := 0, p.above
	for _, need := range s.must {
		if need&p.sounded != 0 {
			continue
		}
		if missing++; missing > i+1 || need&s.window.classes[i+1] == 0 {
			return false
		}
		if need&s.window.easy[i+1] == 0 {
			fingers++
		}
	}
	return fingers < maxFingers // one stays at the lowest fret
}

// mute adds a muted string to p. One thinner than a sounding string costs the
// least until another sounds beyond it.
func (p partial) mute() partial {
	if p.sounding == 0 {
		p.paid += thickMutePrice
		return p
	}
	p.paid += thinMutePrice
	p.gap++
	return p
}

// stop adds string i+1 at fret f to p, unless no hand can or chord may.
func (s *search) stop(i int, f int8, p partial) (partial, bool) {
	pitch := s.open[i] + fretboard.Pitch(f)
	class := pitch.Class()
	if class == s.bass {
		p.bass = min(p.bass, pitch)
	}
	p.lowest = min(p.lowest, pitch)
	if s.ordered && pitch < min(p.bass, s.window.bass[i]) {
		p.paid += lowPrice
		p.low = true
	}
	if bit := uint64(1) << (pitch & 63); p.pitches[pitch>>6]&bit != 0 {
		p.paid += unisonPrice
	} else {
		p.pitches[pitch>>6] |= bit
	}
	if s.alien.Has(class) {
		if p.alien {
			return p, false
		}
		p.alien = true
	}
	switch {
	case f == 0:
	case f == s.window.low:
		p.atLow++
	default:
		p.above++
		p.high = max(p.high, f)
	}
	if p.sounded.Has(class) {
		p.paid += s.doubling[class]
	}
	p.sounded = p.sounded.With(class)
	p.sounding++
	p.paid += p.gap * (innerMutePrice - thinMutePrice)
	p.gap = 0
	return p, p.above <= maxFingers-1 // one finger stays at the lowest fret
}

// atLeast bounds from below what the shapes cost that begin with p.
func (s *search) atLeast(i int, p partial) int {
	cost := p.paid + thinPrice*max(0, min(4, s.strings)-p.sounding-i-1) +
		optionalPrice*(s.optional&^(p.sounded|s.window.classes[i+1])).Len()
	if s.ordered && !p.low && p.lowest < min(p.bass, s.window.bass[i+1]) {
		cost += lowPrice
	}
	if s.window.low == 0 {
		return cost
	}
	cost += s.places[s.window.low]/10 + fingerPrice*(p.above+1)
	if p.high > 0 {
		cost += s.stretch(s.window.low, p.high)
	}
	return cost + s.lowestFret(p)
}

// lowestFret bounds what the strings at the lowest fret cost beyond the first:
// a finger each, or a barre, which takes them all but is the only way where
// fingers run out.
func (s *search) lowestFret(p partial) int {
	const leastBarre = barrePrice + 2*crossingPrice
	if p.above+p.atLow > maxFingers {
		return leastBarre
	}
	return min(leastBarre, fingerPrice*max(0, p.atLow-1))
}

// offer prices a whole shape and keeps it if it is cheap enough.
func (s *search) offer(p partial) {
	if p.sounding == 0 || s.window.low > 0 && p.atLow == 0 || unmet(s.must, p.sounded) > 0 {
		return
	}
	cost, playable := s.price(&s.shape)
	if playable && cost.Total() <= s.kept.worst() {
		s.kept.add(found{cost.Total(), s.shape})
	}
}
