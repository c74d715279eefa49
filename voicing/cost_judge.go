package voicing

import (
	"math"

	"weft.example/fretboard"
)

// A judge prices the shapes of one chord on one instrument. It speaks of
// pitches without the capo, to which the chord's name applies.
type judge struct {
	neck
	capo     fretboard.Pitch
	open     soundings
	doubling [12]int // what sounding a pitch class once more costs
	needs    needs
	optional ClassSet             // worth sounding
	clash    ClassSet             // the major third with the perfect 11th, if the chord has both
	bass     fretboard.PitchClass // that the chord wants lowest
	ordered  bool                 // whether what sounds below the bass counts
	enough   int                  // strings make a whole chord
	thinMute int                  // what a thin string costs that is left out
	alien    ClassSet             // the slash bass, where it is no tone of the chord
}

// newJudge returns the judge of chord c on g, which is normal.
func newJudge(g fretboard.Instrument, c Chord) judge {
	bass, slash := c.Bass()
	j := judge{
		neck:    newNeck(g),
		capo:    fretboard.Pitch(g.Capo),
		bass:    bass.Class(),
		ordered: slash || !c.Silent() && hearsBass(g.Tuning),
		needs:   needsOf(c),
	}
	for s := range j.strings {
		j.open[s] = g.Tuning.Open(fretboard.StringNumber(s + 1)).Pitch()
	}
	if slash {
		j.alien = j.alien.With(j.bass)
	}
	j.enough, j.thinMute = min(4, j.strings), thinMutePrice
	if c.formula.size() == 2 { // three strings of a power chord, on the thick ones: 022xxx
		j.enough, j.thinMute = min(3, j.strings), 0
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

// price returns the cost of shape and the number of fingers that hold it, 0 if
// it is open or no hand can.
func (j *judge) price(shape *held) (Cost, int) {
	var c Cost
	hand := j.hand(shape)
	if hand.size > 0 {
		low, high := hand.stops[0].fret, hand.stops[hand.size-1].fret
		c.Stretch = j.stretch(low, high)
		c.Position = j.places[low] / 10
		c.Open = j.opens(shape) * c.Position / openShare
	}
	g := hand.cheapest()
	c.Fingers, c.Spread, c.Splay, c.Barre = g.cost.fingers, g.cost.spread, g.cost.splay, g.cost.barre
	j.priceMutes(shape, &c)
	j.priceSound(shape, &c)
	return c, int(g.fingers)
}

// opens counts the open strings.
func (n *neck) opens(shape *held) int {
	opens := 0
	for _, fret := range shape[:n.strings] {
		if fret == 0 {
			opens++
		}
	}
	return opens
}

func (j *judge) stretch(low, high int8) int {
	span := int64(j.places[high] - j.places[low])
	return int(span * span / (100 * stretchShare))
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
	c.Mutes += j.thinMute * since
	c.Thin = thinPrice * max(0, j.enough-sounding)
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
	}
	if j.ordered {
		c.Low = lowPrice * j.below(shape, bass)
	}
	if n > 1 {
		c.Muddy = j.muddy(pitches[0], pitches[1])
	}
	if j.clash != 0 && sounded&j.clash == j.clash {
		c.Clash = clashPrice
	}
	c.Missing = optionalPrice*(j.optional&^sounded).Len() + essentialPrice*j.needs.unmet(sounded)
}

// below counts the strings that sound below the bass.
func (j *judge) below(shape *held, bass fretboard.Pitch) int {
	n := 0
	for s := range j.strings {
		if shape[s] != muted && j.open[s]+fretboard.Pitch(shape[s]) < bass {
			n++
		}
	}
	return n
}

// muddy prices the interval between the two strings that sound lowest.
func (j *judge) muddy(lowest, second fretboard.Pitch) int {
	if lowest+j.capo >= muddyBelow || second == lowest {
		return 0
	}
	return muddyPrice * max(0, 5-int(second-lowest))
}
