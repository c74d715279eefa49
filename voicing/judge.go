package voicing

import (
	"math"
	"slices"

	"weft.example/fretboard"
)

// A judge prices the shapes of one chord on one instrument. It speaks of
// pitches without the capo, to which the chord's name applies.
type judge struct {
	strings  int
	floor    fretboard.StringNumber
	capo     fretboard.Pitch
	open     [fretboard.MaxStrings]fretboard.Pitch
	places   [fretboard.MaxFrets + 1]int // of each fret from the capo, in tenths of a millimetre
	doubling [12]int                     // what sounding a pitch class once more costs
	needs    []ClassSet                  // of each, at least one class must sound
	optional ClassSet                    // worth sounding
	clash    ClassSet                    // the major third with the perfect 11th, if the chord has both
	bass     fretboard.PitchClass        // that the chord wants lowest
	ordered  bool                        // whether what sounds below the bass counts
	alien    ClassSet                    // the slash bass, where it is no tone of the chord
}

// newJudge returns the judge of chord c on g, which is normal.
func newJudge(g fretboard.Instrument, c Chord) judge {
	bass, slash := c.Bass()
	j := judge{
		strings: int(g.Tuning.Strings()),
		floor:   g.Hand.Toward(),
		capo:    fretboard.Pitch(g.Capo),
		bass:    bass.Class(),
		ordered: slash || !c.Silent() && hearsBass(g.Tuning),
		needs:   needs(c),
	}
	for s := range j.strings {
		j.open[s] = g.Tuning.Open(fretboard.StringNumber(s + 1)).Pitch()
	}
	for f := range g.Reach() + 1 {
		j.places[f] = tenths(fretboard.FromBridge(g.Scale, g.Capo)) - tenths(fretboard.FromBridge(g.Scale, g.Capo+f))
	}
	if slash {
		j.alien = j.alien.With(j.bass)
	}
	j.clash = clash(c)
	for _, tone := range c.Tones() {
		class := tone.Note.Class()
		j.alien &^= ClassSet(0).With(class)
		if tone.Need == Optional && !j.clash.Has(class) {
			j.optional = j.optional.With(class)
		}
		switch tone.Degree {
		case 1, 5:
		case 3:
			j.doubling[class] = thirdPrice
		default:
			j.doubling[class] = colourPrice
		}
	}
	return j
}

// clash returns the major third and the perfect fourth or 11th of c, or the
// empty set if c lacks one of them.
func clash(c Chord) ClassSet {
	if !c.formula.has(majorThird) || !c.formula.any(fourth|eleventh) {
		return 0
	}
	third := c.root.Class()
	return ClassSet(0).With((third + 4) % 12).With((third + 5) % 12)
}

// tenths rounds to whole numbers at once, so that no processor can fuse the
// product into a sum and rank otherwise than another.
func tenths(length fretboard.Millimetres) int { return int(math.Round(float64(length * 10))) }

// bassRegister is where the strings of bass instruments end: G3 is the lowest
// string of a violin and a mandolin.
const bassRegister fretboard.Pitch = 55

// hearsBass reports whether the lowest tone of a chord is heard as its bass.
// It is not on a re-entrant tuning, where the thickest string is not the
// lowest, nor on an instrument without low strings: ukulele and mandolin
// players take the inversion that lies best (common practice).
func hearsBass(t fretboard.Tuning) bool {
	low := false
	for s := fretboard.StringNumber(1); s <= t.Strings(); s++ {
		pitch := t.Open(s).Pitch()
		if s > 1 && pitch > t.Open(s-1).Pitch() {
			return false
		}
		low = low || pitch < bassRegister
	}
	return low
}

// needs lists what a voicing of c must sound: each essential tone, of the tones
// of one degree that may replace each other at least one, and the slash bass.
// No class is in two of them, so that each takes a string of its own.
func needs(c Chord) []ClassSet {
	var all []ClassSet
	degree := 0
	for _, tone := range c.Tones() {
		class := ClassSet(0).With(tone.Note.Class())
		switch {
		case tone.Need == Essential:
			all = append(all, class)
		case tone.Need == Either && tone.Degree == degree:
			all[len(all)-1] |= class
		case tone.Need == Either:
			all = append(all, class)
			degree = tone.Degree
		}
	}
	bass, slash := c.Bass()
	if !slash {
		return all
	}
	class := ClassSet(0).With(bass.Class())
	all = slices.DeleteFunc(all, func(need ClassSet) bool { return need&class != 0 })
	return append(all, class)
}

// price returns the cost of shape and whether four fingers can hold it.
func (j *judge) price(shape *held) (Cost, bool) {
	var c Cost
	hand := newHand(shape, j.strings)
	grip := hand.best(shape, j.strings, j.floor)
	if hand.size > 0 {
		low, high := hand.presses[0].fret, hand.presses[hand.size-1].fret
		c.Stretch = j.stretch(low, high)
		c.Position = j.places[low] / 10
	}
	c.Fingers, c.Spread, c.Barre = fingerPrice*grip.fingers, spreadPrice*grip.spread, grip.barre()
	j.priceMutes(shape, &c)
	j.priceSound(shape, &c)
	return c, grip.fingers <= maxFingers
}

func (j *judge) stretch(low, high int8) int {
	span := int64(j.places[high] - j.places[low])
	return int(span * span / 10000)
}

func (j *judge) priceMutes(shape *held, c *Cost) {
	sounding, since := 0, 0 // since counts the mutes since the last sounding string
	for s := j.strings - 1; s >= 0; s-- {
		switch {
		case shape[s] == muted:
			since++
			continue
		case sounding == 0:
			c.Mutes += thickMutePrice * since
		default:
			c.Mutes += innerMutePrice * since
		}
		sounding, since = sounding+1, 0
	}
	c.Mutes += thinMutePrice * since
	c.Thin = thinPrice * max(0, min(4, j.strings)-sounding)
}

// priceSound prices what is heard.
func (j *judge) priceSound(shape *held, c *Cost) {
	var pitches [fretboard.MaxStrings]fretboard.Pitch // in rising order
	var sounded ClassSet
	n, bass := 0, silentBass
	for s := range j.strings {
		if shape[s] == muted {
			continue
		}
		pitch := j.open[s] + fretboard.Pitch(shape[s])
		class := pitch.Class()
		if sounded.Has(class) {
			c.Doubled += j.doubling[class]
		}
		if class == j.bass {
			bass = min(bass, pitch)
		}
		sounded = sounded.With(class)
		at := n
		for ; at > 0 && pitches[at-1] > pitch; at-- {
			pitches[at] = pitches[at-1]
		}
		pitches[at] = pitch
		n++
	}
	for i, pitch := range pitches[:n] {
		if i > 0 && pitch == pitches[i-1] {
			c.Doubled += unisonPrice
		}
		if j.ordered && pitch < bass {
			c.Low += lowPrice
		}
	}
	if n > 1 && pitches[0]+j.capo < muddyBelow && pitches[1] > pitches[0] {
		c.Muddy = muddyPrice * max(0, 5-int(pitches[1]-pitches[0]))
	}
	if j.clash != 0 && sounded&j.clash == j.clash {
		c.Clash = clashPrice
	}
	c.Missing = optionalPrice*(j.optional&^sounded).Len() + essentialPrice*unmet(j.needs, sounded)
}

// unmet counts the needs of which nothing sounds.
func unmet(needs []ClassSet, sounded ClassSet) int {
	n := 0
	for _, need := range needs {
		if need&sounded == 0 {
			n++
		}
	}
	return n
}
