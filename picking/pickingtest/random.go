package pickingtest

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// Random returns a passage that the state of r decides, over everything that a
// setting allows: every meter and tempo, instruments of 1 to 12 strings from
// D0 upward, capos, hands, shapes of any stretch, repeats, rests, own strokes.
// One in ten leaves its shapes to the finder. Most are short; a few have up to
// some forty bars.
func Random(r *rand.Rand) picking.Passage {
	c := chance{r}
	for {
		if p, err := c.song(); err == nil {
			return p
		}
	}
}

// chance makes songs. Not all can be arranged: some slots do not fill a bar,
// some chords do not share it evenly.
type chance struct{ *rand.Rand }

func (c chance) often(percent int) bool { return c.IntN(100) < percent }

func oneOf[T any](c chance, from ...T) T { return from[c.IntN(len(from))] }

func (c chance) song() (picking.Passage, error) {
	g := c.instrument()
	if c.often(10) {
		g = fretboard.Instrument{Capo: fretboard.Fret(c.IntN(6)), Hand: g.Hand}
	}
	s := picking.Setting{
		Title:      oneOf(c, "", "", "Slow Walk", SixtyTitle, MarksTitle, ControlTitle),
		Meter:      c.meter(),
		Tempo:      oneOf(c, 0, picking.MinTempo, picking.MaxTempo, 60+c.IntN(80), picking.MinTempo+c.IntN(picking.MaxTempo-picking.MinTempo+1)),
		Instrument: g,
		Strokes:    picking.Tradition(c.IntN(5)),
		Fit:        picking.Moulding(c.IntN(3)),
		Change:     picking.Change(c.IntN(2)),
		Fill:       picking.Fill(c.IntN(2)),
		InTurn:     c.often(50),
		Once:       c.often(50),
	}
	figures := make([]string, 1+c.IntN(3))
	for i := range figures {
		figures[i] = c.figure(int(g.Tuning.Strings()))
	}
	return arrange(c.chart(g, len(figures)), strings.Join(figures, "; "), s)
}

func (c chance) meter() picking.Meter {
	if c.often(20) {
		return picking.Meter{Count: 1 + c.IntN(32), Unit: 1 << c.IntN(6)}
	}
	return oneOf(c, picking.Meter{}, picking.FourFour, picking.ThreeFour, picking.TwoFour, picking.SixEight, picking.NineEight,
		picking.TwelveEight, picking.Meter{Count: 7, Unit: 8}, picking.Meter{Count: 5, Unit: 4}, picking.Meter{Count: 2, Unit: 2})
}

// instrument returns one that can be: no string's last fret passes the highest
// pitch.
func (c chance) instrument() fretboard.Instrument {
	g := fretboard.Instrument{
		Hand:    fretboard.Hand(c.IntN(3)),
		Scale:   oneOf(c, 0, fretboard.Millimetres(300+c.IntN(600))),
		Spacing: oneOf(c, 0, fretboard.Millimetres(7+c.IntN(6))),
	}
	if names := fretboard.TuningNames(); c.often(60) {
		g.Tuning = fretboard.MustParseTuning(names[c.IntN(len(names))])
		g.Frets = oneOf(c, 0, 12+fretboard.Fret(c.IntN(25)))
	} else {
		g.Tuning = c.tuning()
		g.Frets = 1 + fretboard.Fret(c.IntN(36))
	}
	if g.Frets != 1 && c.often(50) {
		g.Capo = fretboard.Fret(c.IntN(int(min(g.Reach(), 12))))
	}
	return g
}

// tuning returns 1 to 12 strings in any order, from D0 to B6, which is low
// enough for 28 frets; songs on more of them may be refused.
func (c chance) tuning() fretboard.Tuning {
	open := make([]string, 1+c.IntN(fretboard.MaxStrings))
	for i := range open {
		letter := oneOf(c, "D", "E", "F", "G", "A", "B")
		open[i] = letter + oneOf(c, "", "", "", "#", "b") + fmt.Sprint(oneOf(c, 2, 3, 3, 4, c.IntN(7)))
	}
	t, err := fretboard.ParseTuning(strings.ReplaceAll(strings.Join(open, " "), "Db0", "D0"))
	if err != nil {
		panic(err)
	}
	return t
}

// figure returns a figure that plucks strings 1 to most.
func (c chance) figure(most int) string {
	text := oneOf(c, "", "1/8: ", "1/8: ", "1/16: ", "1/12: ", "1/4: ", "1/2: ", "1/6: ", "1/24: ", "3/16: ", "3/8: ", "1/32: ", "1/3: ", "1/1: ", "3/2: ", "1/96: ")
	if c.often(20) {
		text = fmt.Sprintf("%sroot %d: ", strings.Replace(text, ":", "", 1), 1+c.IntN(most))
	}
	text += oneOf(c, "", "", "", "- ", ". ")
	for n := 1 + c.IntN(oneOf(c, 4, 8, 8, 24)); n > 0; n-- {
		text += fmt.Sprint(1+c.IntN(most)) + oneOf(c, "", "", "", "", "u", "d", " -", " - -", " .") + " "
	}
	return text
}

// chart returns a chart for an instrument and a number of figures. A zero
// tuning leaves the shapes to the finder.
func (c chance) chart(g fretboard.Instrument, figures int) string {
	var b strings.Builder
	open := false
	most := oneOf(c, 2, 4, 8, 8, 20)
	for n := 1 + c.IntN(most); n > 0; n-- {
		switch {
		case !open && c.often(25):
			b.WriteString("|: ")
			open = true
		case open && c.often(40):
			b.WriteString(":| ")
			open = false
		default:
			b.WriteString("| ")
		}
		if b.Len() > len("|: ") && c.often(10) {
			b.WriteString("% ")
			continue
		}
		b.WriteString(c.bar(g, figures))
	}
	if open {
		b.WriteString(":|")
	}
	return strings.TrimPrefix(b.String(), "| ")
}

// bar returns the chords of a bar, with beats where they may add up.
func (c chance) bar(g fretboard.Instrument, figures int) string {
	text, beats := "", c.often(25)
	for n := oneOf(c, 1, 1, 1, 2, 2, 3, 4); n > 0; n-- {
		text += c.chord(g, figures)
		if beats {
			text += oneOf(c, ":1", ":1", ":2", ":3", ":1.5", ":0.5", "")
		}
		text += " "
	}
	return text
}

func (c chance) chord(g fretboard.Instrument, figures int) string {
	if c.often(10) {
		return "N.C."
	}
	figure := ""
	if c.often(25) {
		figure = fmt.Sprint("@", 1+c.IntN(figures))
	}
	if g.Tuning == (fretboard.Tuning{}) {
		return oneOf(c, "Am", "G", "C/E", "F#m7", "Bb", "Dsus4", "E7") + figure
	}
	symbol := oneOf(c, "Am", "G", "F#m7b5", "Db", "C#m", "E7#9", "Bbmaj7", "G/B", "C/D", "D5", "Ebdim7", "Abm(maj7)", "Fb", "B#m", "Gbmaj9#11/Bb")
	return symbol + "=" + c.shape(g).String() + figure
}

// shape returns a shape within an instrument's frets, at least one string of
// which sounds. Most could be held; some could not.
func (c chance) shape(g fretboard.Instrument) voicing.Shape {
	n := g.Tuning.Strings()
	shape := voicing.NewShape(n)
	lowest, span := 0, int(min(g.Reach(), 4))
	if c.often(30) {
		lowest = c.IntN(int(g.Reach()) - span + 1)
	}
	if c.often(5) {
		lowest, span = 0, int(g.Reach())
	}
	sure := fretboard.StringNumber(1 + c.IntN(int(n)))
	for s := range g.Tuning.All().Thinnest() {
		if s == sure || c.often(75) {
			shape = shape.With(s, fretboard.Fret(lowest+c.IntN(span+1)))
		}
	}
	return shape
}
