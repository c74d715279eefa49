package svg

// A face is a size of type in units, plain or bold.
type face struct {
	size int
	bold bool
}

// A scale holds the sizes of all that is drawn, in units.
type scale struct {
	points int

	title, chord, fret, count, label, body, small, finger face

	tabPitch, lanePitch int // from string to string
	sign                int // height of a stroke sign
	dot                 int // across a finger in a chord box
	boxColumn, boxRow   int
	pad                 int // between neighbours in a line
	lead                int // from a bar line to the first column, at least
	slot                int // a comfortable distance for the shortest slot

	hairline, line, heavy, thread, pluck int // thicknesses
}

func newScale(points int) scale {
	c := scale{points: points}
	small := func(hundredths int) int { return grown(hundredths, points) }
	c.title = face{18*point + (points-usualSize)*104, true}
	c.chord = face{points * point, true}
	c.fret = face{small(950), false}
	c.count = face{small(850), false}
	c.label = face{small(775), false}
	c.body = face{small(900), false}
	c.small = face{small(750), false}
	c.finger = face{small(750), true}
	c.tabPitch = c.fret.size * (80 + max(0, large-points)*8/(large-usualSize)) / 100
	c.lanePitch = max(950, c.label.size*80/100)
	c.sign = c.fret.size * 70 / 100
	c.dot = c.finger.size * 112 / 100
	c.boxColumn = c.dot * 104 / 100
	c.boxRow = c.dot * 110 / 100
	c.pad = c.thick(250)
	c.lead = c.fret.size
	c.slot = c.fret.size * 140 / 100
	c.hairline, c.line, c.heavy = c.thick(40), c.thick(70), c.thick(220)
	c.thread, c.pluck = c.thick(90), c.thick(150)
	return c
}

// thick returns a length that grows with the size.
func (c *scale) thick(hundredths int) int { return hundredths * c.points / usualSize }

// large is the size in points from which nothing is smaller than the size
// itself: 18 points are the least for large print, common practice.
const large = 18

// grown returns the size of a sign that has the given size at 12 points, so
// that at large print and above it is as large as the chord names.
func grown(small, points int) int {
	if points >= large {
		return points * point
	}
	return small + (points-usualSize)*(large*point-small)/(large-usualSize)
}

// The height of capitals and figures above the line of type, and the depth of
// what hangs below it, in hundredths of the size: the greatest of those faces
// that advances was measured on.
const (
	capHeight = 76
	descent   = 24
	leading   = 125 // from line to line
)

func (f face) up() int      { return f.size * capHeight / 100 }
func (f face) down() int    { return f.size * descent / 100 }
func (f face) height() int  { return f.up() + f.down() }
func (f face) leading() int { return f.size * leading / 100 }

// middle returns how far below a line the type stands that is centred on it.
func (f face) middle() int { return f.size * 36 / 100 }
