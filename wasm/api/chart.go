//go:build !sheets && !drawings

package api

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A chart is a progression as it is played: repeats twice, the bar before again
// where it says so. What is held on over bar lines is one step. Errors about it
// are located in the chart as it prints, where the place of each chord is known.
type chart struct {
	spelling fretboard.Spelling
	written  []picking.ChartBar
	text     string
	symbols  []fretboard.Field // the chords of text
	first    []int             // of each written bar, the place of its first chord in symbols
	bars     []playedBar
	steps    []changes.Step
	from     []int // of each step, the place of its first chord in symbols
}

// A playedBar is a bar in the order of playing; steps tells which step each of
// its chords is.
type playedBar struct {
	written int
	steps   []int
}

func newChart(p picking.Progression, spelling fretboard.Spelling) *chart {
	c := &chart{spelling: spelling, written: p.Bars(), text: p.StringIn(spelling)}
	for _, f := range fretboard.Fields(c.text, " ") {
		if strings.Trim(f.Text, "|:%") != "" {
			c.symbols = append(c.symbols, f)
		}
	}
	next := 0
	for _, bar := range c.written {
		c.first = append(c.first, next)
		next += len(bar.Chords)
	}
	return c
}

// mostSteps is the most steps of a chart: four chords a bar.
const mostSteps = 4 * picking.MaxBars

// play lays out the bars in the order of playing, and the steps.
func (c *chart) play() error {
	opened := 0
	for i, bar := range c.written {
		if bar.Opens {
			opened = i
		}
		c.playBar(i)
		for w := opened; bar.Closes && w <= i; w++ {
			c.playBar(w)
		}
		if len(c.bars) > picking.MaxBars || len(c.steps) > mostSteps {
			return c.refuse(len(c.steps)-1, "more than "+strconv.Itoa(picking.MaxBars)+" bars or "+strconv.Itoa(mostSteps)+
				" chords, repeats played out", "cut the song in parts")
		}
	}
	for _, step := range c.steps {
		if !step.Chord.Silent() {
			return nil
		}
	}
	return c.refuse(0, "no chord sounds", "write one, such as Am | G | Dm | E")
}

// source returns the bar whose chords a written bar plays.
func (c *chart) source(written int) int {
	for c.written[written].Again {
		written--
	}
	return written
}

func (c *chart) playBar(written int) {
	source := c.source(written)
	bar := playedBar{written: written}
	for i, chord := range c.written[source].Chords {
		step := changes.Step{Chord: chord.Chord, Shape: chord.Shape}
		if n := len(c.steps); n == 0 || c.steps[n-1].Chord != step.Chord || c.steps[n-1].Shape != step.Shape {
			c.steps = append(c.steps, step)
			c.from = append(c.from, c.first[source]+i)
		}
		bar.steps = append(bar.steps, len(c.steps)-1)
	}
	c.bars = append(c.bars, bar)
}

// refuse finds fault with a step.
func (c *chart) refuse(step int, reason, mend string) error {
	f := c.symbols[c.from[step]]
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "chords", Source: c.text, Offset: f.At,
		Length: len(f.Text), Reason: reason, Mend: mend}}
}

// relocated moves a place in the steps, printed with bar lines between them, to
// the chart.
func (c *chart) relocated(p fretboard.Place) error {
	n := strings.Count(p.Source[:p.Offset], " | ")
	_, reason, _ := strings.Cut(p.Reason, ": ")
	return c.refuse(n, reason, p.Mend)
}

func (c *chart) chords() []voicing.Chord {
	chords := make([]voicing.Chord, len(c.steps))
	for i, step := range c.steps {
		chords[i] = step.Chord
	}
	return chords
}

// named returns the chart with other chords for its steps, and no shapes.
func (c *chart) named(chords []voicing.Chord) *chart {
	named := *c
	named.steps = make([]changes.Step, len(chords))
	for i, chord := range chords {
		named.steps[i].Chord = chord
	}
	return &named
}

// withShapes returns the chart with the shape of every chord, as a path has
// them. Bars that are played again with other shapes are written out.
func (c *chart) withShapes(p changes.Path) (picking.Progression, error) {
	played := make([]picking.ChartBar, len(c.bars))
	seen := map[int][]picking.ChartChord{} // of each written bar
	same := true
	for i, bar := range c.bars {
		played[i].Chords = c.shaped(bar, p)
		before, again := seen[bar.written]
		same = same && (!again || equalChords(before, played[i].Chords))
		seen[bar.written] = played[i].Chords
	}
	if !same {
		return picking.NewProgression(played...)
	}
	written := make([]picking.ChartBar, len(c.written))
	for i, bar := range c.written {
		written[i] = picking.ChartBar{Opens: bar.Opens, Closes: bar.Closes, Chords: seen[i]}
		if bar.Again && equalChords(seen[i], seen[i-1]) {
			written[i].Again, written[i].Chords = true, nil
		}
	}
	return picking.NewProgression(written...)
}

// shaped returns the chords of a bar with their shapes, and what else the chart
// says of them.
func (c *chart) shaped(bar playedBar, p changes.Path) []picking.ChartChord {
	chords := make([]picking.ChartChord, len(bar.steps))
	for i, written := range c.written[c.source(bar.written)].Chords {
		step := bar.steps[i]
		chords[i] = picking.ChartChord{Chord: c.steps[step].Chord, Figure: written.Figure, Beats: written.Beats}
		if step < len(p.Grips) {
			chords[i].Shape = p.Grips[step].Voicing.Shape()
		}
	}
	return chords
}

func equalChords(a, b []picking.ChartChord) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
