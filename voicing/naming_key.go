package voicing

import "weft.example/fretboard"

// KeyOf returns the most likely key of a progression, or the zero Key if no
// chord sounds. The rule is common practice, in whole points. Each chord gives
// a key
//   - 1 for each of its tones that is in the key's scale, and -2 for each that
//     is not. In a minor key the raised seventh is in the scale of chords on the
//     fifth and the seventh degree, the plain one in that of all others. The
//     minor seventh above a major third does not count: dominant chords stand
//     on every degree, and in a blues on the tonic;
//   - 2 if it is the tonic chord, major or minor as the key is, and 1 if it is
//     a major chord on the fifth degree;
//   - 2 more if it is the tonic chord and comes first, 3 if it comes last, and 2
//     if a major chord on the fifth degree leads to it.
//
// Of keys with as many points, the one that spells more of the chords' tones
// as they are spelled goes first, then the one with the smaller signature, then
// sharps before flats and major before minor. It takes time in proportion to
// the chords and does not allocate.
func KeyOf(chords []Chord) Key {
	var best Key
	most, mostSpelled := 0, 0
	for i, k := range allKeys {
		points, spelled := k.points(chords)
		if i == 0 || points > most || points == most && spelled > mostSpelled {
			best, most, mostSpelled = k, points, spelled
		}
	}
	for _, c := range chords {
		if !c.Silent() {
			return best
		}
	}
	return Key{}
}

// points rates how well k explains chords, and counts the tones that it spells
// alike.
func (k Key) points(chords []Chord) (points, spelled int) {
	before := Chord{} // the chord before, which a silence does not part from the next
	last := Chord{}
	for _, c := range chords {
		if c.Silent() {
			continue
		}
		fit, same := k.holds(c)
		points += fit + k.role(before, c)
		spelled += same
		before, last = c, c
	}
	if k.isTonic(last) {
		points += 3
	}
	return points, spelled
}

// holds rates the tones of c by the scale of k, and counts those that k spells
// as c does.
func (k Key) holds(c Chord) (points, same int) {
	counted := c.formula
	if counted.has(majorThird | minorSeventh) {
		counted &^= minorSeventh
	}
	scale := Chord{formula: k.scaleUnder(c), root: k.tonic}
	for _, m := range counted.all() {
		n := c.root.Up(m.interval())
		own, ok := scale.Spell(n.Class())
		switch {
		case !ok:
			points -= 2
		case own == n:
			same++
			fallthrough
		default:
			points++
		}
	}
	return points, same
}

// scaleUnder returns the scale of k with the seventh that suits c.
func (k Key) scaleUnder(c Chord) formula {
	if !k.Minor() {
		return k.scale()
	}
	switch above(k.tonic.Class(), c.root.Class()) {
	case 7, 11:
		return minorScale &^ minorSeventh
	}
	return minorScale &^ majorSeventh
}

// role rates what c is in k after the chord before it.
func (k Key) role(before, c Chord) int {
	switch {
	case k.isDominant(c):
		return 1
	case !k.isTonic(c):
		return 0
	case before.Silent() || k.isDominant(before):
		return 4
	}
	return 2
}

func (k Key) isTonic(c Chord) bool {
	third := majorThird
	if k.Minor() {
		third = minorThird
	}
	return c.root.Class() == k.tonic.Class() && c.formula.has(third)
}

func (k Key) isDominant(c Chord) bool {
	return above(k.tonic.Class(), c.root.Class()) == 7 && c.formula.has(majorThird)
}

// above returns the semitones from p up to q, 0 to 11.
func above(p, q fretboard.PitchClass) fretboard.PitchClass {
	return fretboard.PitchClass(modulo(int(q-p), 12))
}
