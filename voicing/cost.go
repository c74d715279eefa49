package voicing

import "weft.example/fretboard"

// A Cost says what a voicing asks of the player and what it lacks, term by
// term. Every term is 0 or more, in the same unit: one point is what a player
// would pay to stay a millimetre nearer the nut. All terms are whole numbers,
// so every machine ranks alike. A shape that no hand holds is priced as if each
// string had a finger, those beyond the fourth like the little one.
type Cost struct {
	Stretch  int // between the lowest and the highest fret held: mm * mm / 50, since effort grows faster than length
	Position int // from the nut or capo to the lowest fret held, a point a mm
	Open     int // each open string, a third of Position: it stands out from what is fretted far up the neck
	Fingers  int // each finger that presses, a barre being one, and each string that it reaches over; the little one a bit more
	Spread   int // each string spacing between a finger and the next
	Splay    int // how far a finger and the next lie off their rest, 24 mm apart a finger: mm * mm / 30
	Barre    int // a finger across several strings, and each string that it crosses, dearer where one must not sound, most where no finger beside it can damp it
	Mutes    int // strings that do not sound, dearest between sounding ones; the thin ones of a power chord are free
	Thin     int // each string fewer than four that sounds, or fewer than three of a power chord
	Low      int // each string that sounds below the bass that the chord wants
	Missing  int // each tone of the chord that does not sound
	Doubled  int // tones that sound more than once, where that spoils the chord
	Clash    int // the major third and the perfect 11th together
	Muddy    int // a narrow interval at the bottom, by each semitone under a fourth
}

// terms lists the terms of c.
func (c *Cost) terms() [14]int {
	return [...]int{c.Stretch, c.Position, c.Open, c.Fingers, c.Spread, c.Splay, c.Barre,
		c.Mutes, c.Thin, c.Low, c.Missing, c.Doubled, c.Clash, c.Muddy}
}

var termNames = [...]string{"stretch", "position", "open", "fingers", "spread", "splay", "barre",
	"mutes", "thin", "low", "missing", "doubled", "clash", "muddy"}

// Total returns the sum of the terms, by which voicings are ranked.
func (c Cost) Total() int {
	total := 0
	for _, term := range c.terms() {
		total += term
	}
	return total
}

// Effort says how hard the shape is to hold, in points, without regard to how
// it sounds or where it lies: the fingers, their spread and twice their splay,
// the barre, and a quarter of the stretch. So weighed, the shapes C, E, Am and
// G7 stand in the order of their load in a published model of the fretting hand
// (Proceedings of the HFES, doi 10.1177/1541931213571367).
func (c Cost) Effort() int { return c.Fingers + c.Spread + 2*c.Splay + c.Barre + c.Stretch/4 }

// Weighed returns the sum of the terms under w, in hundredths of a point.
func (c Cost) Weighed(w Weights) int {
	total := 0
	for i, weight := range (*Cost)(&w).terms() {
		total += c.terms()[i] * (100 + weight)
	}
	return total
}

// Weights say by how many percent each term of a [Cost] counts more or less
// than usual: 100 doubles a term, -100 drops it. Range -100 to 1000. Under the
// zero Weights every term counts as it is.
type Weights Cost

// Beginner returns weights for hands that are new to the neck: reach, fingers
// and barres count twice, the way up the neck more, and a string heard below the
// root less.
func Beginner() Weights {
	return Weights{Stretch: 100, Position: 50, Fingers: 100, Splay: 100, Barre: 100, Low: -50}
}

// factor returns by how many hundredths each term counts.
func (w Weights) factor() Cost {
	return Cost{100 + w.Stretch, 100 + w.Position, 100 + w.Open, 100 + w.Fingers, 100 + w.Spread, 100 + w.Splay, 100 + w.Barre,
		100 + w.Mutes, 100 + w.Thin, 100 + w.Low, 100 + w.Missing, 100 + w.Doubled, 100 + w.Clash, 100 + w.Muddy}
}

// check refuses a weight out of range.
func (w Weights) check(refuse func(what, text, reason, mend string) error) error {
	for i, weight := range (*Cost)(&w).terms() {
		if weight < -100 || weight > 1000 {
			return refuse("weight of "+termNames[i], digits(weight), "a weight is -100 to 1000 percent", "0 leaves a term as it is")
		}
	}
	return nil
}

// The prices. Two things outside judge them: the open shapes that every
// handbook prints (common practice), which must come first, and, where those
// leave room, the shapes that an open data set of 1609 lists for each chord,
// which are to come early. A change that puts another shape first fails the
// tests; what the data set says is printed by them.
const (
	stretchShare = 50 // square millimetres a point
	splayShare   = 30
	openShare    = 3 // x02220 before x04220

	fingerPrice = 9  // one finger fewer goes before an optional tone doubled: 320003 before 320033
	curlPrice   = 1  // and it curls more the more strings lie above it: a published hand model finds Am harder than E
	littlePrice = 3  // it is the weakest: 320003 with middle, index and ring
	spreadPrice = 13 // the hand stays gathered: x24432 before x20432, where two fingers reach round an open string

	// restTenths is how far apart neighbouring fingers rest along the neck, in
	// tenths of a millimetre: a fret's width at frets 5 to 9.
	restTenths = 240

	barrePrice          = 40  // open strings go before a barre where they give the whole chord: x21202 before x24242
	crossingPrice       = 8   // a barre over two strings is easier than one over six
	dampedPrice         = 40  // a string under a barre sounds unless a finger beside it damps it
	slackPrice          = 150 // or the index eases off on that string alone: 5x555x with middle and ring, not the index
	tipPrice            = 40  // nor may the tip touch an open string beside it: xx0232 with three fingers
	otherBarrePrice     = 120 // the other fingers lie flat less well: 134211, not 133211 with the ring finger on two strings
	otherCrossingPrice  = 10
	littleCrossingPrice = 10 // on top, for the little finger

	thickMutePrice = 52  // a thick string left out is easily missed by the pick, but sounds fuller: 133211 before xx3211
	thinMutePrice  = 135 // a thin string left out loses the top of the chord: x20003 before x2000x
	innerMutePrice = 250 // a string muted between sounding ones must be damped: 200232 before 2x0232
	thinPrice      = 180 // four strings make a whole chord, a seventh and all

	lowPrice = 145 // dearer than muting a thick string: x02220 before 002220, xx0232 before x00232

	optionalPrice  = 26  // a fifth may go where keeping it needs a barre: x32310 before x35353
	essentialPrice = 200 // only where the instrument cannot sound the whole chord

	unisonPrice = 28 // two strings on one pitch say one thing: x46654 before x46650
	colourPrice = 64 // a seventh or a suspended tone doubled grates: 022200 before 002200
	thirdPrice  = 2  // a third doubled is only less good than a fifth

	clashPrice = 40 // a minor ninth between them: players sound the 13th or the 11th without

	muddyPrice = 12 // 355333 before 310033, a minor third at the bottom
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
