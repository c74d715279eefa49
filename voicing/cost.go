package voicing

import "weft.example/fretboard"

// A Cost says what a voicing asks of the player and what it lacks, term by
// term. Every term is 0 or more, in the same unit: one point is what a player
// would pay to stay a millimetre nearer the nut. All terms are whole numbers,
// so every machine ranks alike.
type Cost struct {
	Stretch  int // between the lowest and the highest fret held: mm * mm / 100, since effort grows faster than length
	Position int // from the nut or capo to the lowest fret held, a point a mm
	Fingers  int // each finger that presses, a barre being one
	Spread   int // each string spacing between a finger and the next
	Barre    int // an index finger across several strings, and each string that it crosses
	Mutes    int // strings that do not sound, dearest between sounding ones
	Thin     int // each string fewer than four that sounds
	Low      int // each string that sounds below the bass that the chord wants
	Missing  int // each tone of the chord that does not sound
	Doubled  int // tones that sound more than once, where that spoils the chord
	Clash    int // the major third and the perfect 11th together
	Muddy    int // a narrow interval at the bottom, by each semitone under a fourth
}

// Total returns the sum of the terms, by which voicings are ranked.
func (c Cost) Total() int {
	return c.Stretch + c.Position + c.Fingers + c.Spread + c.Barre +
		c.Mutes + c.Thin + c.Low + c.Missing + c.Doubled + c.Clash + c.Muddy
}

// The prices. What each buys is judged by the open shapes that every handbook
// prints (common practice); a change that puts another shape first for one of
// them fails the tests.
const (
	fingerPrice   = 12 // one finger fewer goes before an optional tone doubled: 320003 before 320033
	spreadPrice   = 12 // the hand stays gathered: x24432 before x20432, where two fingers reach round an open string
	barrePrice    = 35 // open strings go before a barre where they give the whole chord: x21202 before x24242
	crossingPrice = 5  // a barre over two strings is easier than one over six

	thickMutePrice = 40  // a thick string left out is easily missed by the pick, but sounds fuller: 133211 before xx3211
	thinMutePrice  = 100 // a thin string left out loses the top of the chord: x20003 before x2000x
	innerMutePrice = 150 // a string muted between sounding ones must be damped: 200232 before 2x0232
	thinPrice      = 200 // four strings make a whole chord, a seventh and all

	lowPrice = 100 // dearer than muting a thick string: x02220 before 002220, xx0232 before x00232

	optionalPrice  = 20  // a fifth may go where keeping it needs a barre: x32310 before x35353
	essentialPrice = 200 // only where the instrument cannot sound the whole chord

	unisonPrice = 30 // two strings on one pitch say one thing: x46654 before x46650
	colourPrice = 40 // a seventh or a suspended tone doubled grates: 022200 before 002200
	thirdPrice  = 4  // a third doubled is only less good than a fifth

	clashPrice = 40 // a minor ninth between them: players sound the 13th or the 11th without

	muddyPrice = 30 // 355333 before 310033, a minor third at the bottom
)

// muddyBelow is the pitch of the lowest tone from which a third over it sounds
// clear: E3. Teachers of arranging put the limit within a tone or two of it
// (common practice).
const muddyBelow fretboard.Pitch = 52

// Cost prices v, also where no hand could hold it.
func (v Voicing) Cost() Cost {
	j := newJudge(v.instrument, v.chord)
	held := v.shape.held()
	cost, _ := j.price(&held)
	return cost
}
