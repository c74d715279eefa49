package voicing

import "weft.example/fretboard"

// A partial is what is known of a shape whose thicker strings are chosen.
type partial struct {
	sounded  ClassSet
	lowest   fretboard.Pitch // that sounds, if anything does
	second   fretboard.Pitch // that of the string that sounds lowest but one
	bass     fretboard.Pitch // the lowest bass that sounds, or silentBass
	alien    bool            // the slash bass sounds, which is no tone of the chord
	sounding int
	pitches  [2]uint64 // a bit for each that sounds
	paid     int       // for mutes at least, for tones doubled, in hundredths of a point
	low      int       // strings certainly below the bass
	gap      int       // strings muted since the last that sounds, if any does
	opens    int
	atLow    int  // strings stopped at the window's lowest fret
	above    int  // fingers stopping strings above it, at least
	high     int8 // the highest fret held, if above that
}

// nothing is the partial of no strings.
var nothing = partial{lowest: silentBass, second: silentBass, bass: silentBass}

// mute adds a muted string to p. One thinner than a sounding string costs the
// least until another sounds beyond it.
func (s *search) mute(p *partial) {
	if p.sounding == 0 {
		p.paid += thickMutePrice * s.factor.Mutes
		return
	}
	p.paid += s.thinMute * s.factor.Mutes
	p.gap++
}

// stop adds note n on string i+1 to p. It reports false where no hand can stop
// it too or the chord has no room for it.
func (s *search) stop(i int, n note, p *partial) bool {
	if s.alien&n.class != 0 {
		if p.alien {
			return false
		}
		p.alien = true
	}
	s.finger(i, n.fret, p)
	if p.above >= s.options.Fingers && p.above > 0 { // one finger stays at the lowest fret
		return false
	}
	if p.sounded&n.class != 0 {
		p.paid += s.doubling[n.pitch.Class()] * s.factor.Doubled
	}
	p.sounded |= n.class
	p.sounding++
	p.paid += p.gap * (innerMutePrice - s.thinMute) * s.factor.Mutes
	p.gap = 0
	s.sound(n.pitch, s.window.bass[i], p)
	return p.low == 0 || !s.options.BassLow
}

// finger notes what stopping string i+1 at fret f asks of the hand.
func (s *search) finger(i int, f int8, p *partial) {
	switch {
	case f == 0:
		p.opens++
	case f == s.window.low:
		p.atLow++
	default:
		if i+1 == s.strings || s.shape[i+1] != f { // else the finger may lie across both
			p.above++
		}
		p.high = max(p.high, f)
	}
}

// sound adds a pitch to p; toCome is the lowest bass that thinner strings can
// sound.
func (s *search) sound(pitch, toCome fretboard.Pitch, p *partial) {
	if pitch < p.bass && pitch.Class() == s.bass {
		p.bass = pitch
	}
	if pitch < min(p.bass, toCome) {
		p.low++
	}
	if pitch < p.lowest {
		p.lowest, p.second = pitch, p.lowest
	} else if pitch < p.second {
		p.second = pitch
	}
	if bit := uint64(1) << (pitch & 63); p.pitches[pitch>>6]&bit != 0 {
		p.paid += unisonPrice * s.factor.Doubled
	} else {
		p.pitches[pitch>>6] |= bit
	}
}

// canMeet reports whether string i+1 and those thinner may yet sound all that
// must sound, one tone each. Where but one finger is left, it lies at the
// lowest fret, and the others can only lie across more strings.
func (s *search) canMeet(i int, p *partial) bool {
	if !s.must.within(p.sounded, s.window.classes[i+1]) {
		return false
	}
	missing := s.must.unmet(p.sounded)
	if missing == 0 {
		return true
	}
	last := p.above > 0 && p.above+1 >= s.options.Fingers
	return missing <= i+1 && (!last || s.must.within(p.sounded, s.lastFinger(i)))
}

// lastFinger returns the classes that string i+1 and those thinner sound
// without another finger above the lowest fret.
func (s *search) lastFinger(i int) ClassSet {
	can := s.window.easy[i+1]
	if i+1 < s.strings && s.shape[i+1] > s.window.low {
		can |= s.window.along(i+1, s.shape[i+1])
	}
	return can
}

// atLeast bounds from below what the shapes cost that begin with p, in
// hundredths of a point.
func (s *search) atLeast(i int, p *partial) int {
	cost := p.paid + s.placed(p) +
		thinPrice*max(0, s.enough-p.sounding-i-1)*s.factor.Thin +
		optionalPrice*(s.optional&^(p.sounded|s.window.classes[i+1])).Len()*s.factor.Missing
	if low := p.low; s.ordered {
		if low == 0 && p.lowest < min(p.bass, s.window.bass[i+1]) {
			low = 1
		}
		cost += lowPrice * low * s.factor.Low
	}
	if s.window.low > 0 {
		cost += fingerPrice * (p.above + 1) * s.factor.Fingers
	}
	return cost
}

// placed prices where the hand lies and how far it stretches.
func (s *search) placed(p *partial) int {
	position := s.places[s.window.low] / 10
	cost := position*s.factor.Position + p.opens*position/openShare*s.factor.Open
	if p.high > 0 {
		cost += s.stretch(s.window.low, p.high) * s.factor.Stretch
	}
	return cost
}

// heard prices what a whole shape sounds, beyond what is paid.
func (s *search) heard(p *partial) int {
	cost := thinPrice*max(0, s.enough-p.sounding)*s.factor.Thin +
		(optionalPrice*(s.optional&^p.sounded).Len()+essentialPrice*s.needs.unmet(p.sounded))*s.factor.Missing +
		s.muddy(p.lowest, p.second)*s.factor.Muddy
	if s.ordered && p.lowest < p.bass {
		cost += lowPrice * s.below(&s.shape, p.bass) * s.factor.Low
	}
	if s.clash != 0 && p.sounded&s.clash == s.clash {
		cost += clashPrice * s.factor.Clash
	}
	return cost
}
