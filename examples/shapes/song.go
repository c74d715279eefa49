package main

import (
	"fmt"
	"io"
	"strings"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A song is a chart as it is played: repeats twice, the bar before again where
// it says so. Errors about it are located in the chart as it prints, which
// tells where each chord stands.
type song struct {
	flag     string
	spelling fretboard.Spelling
	written  []picking.ChartBar
	text     string
	symbols  []fretboard.Field // the chords of text
	first    []int             // of each bar, the place of its first chord in symbols
	bars     []playedBar
	steps    []step
}

// A playedBar is a bar of the chart as it is played; steps tells for each of
// its chords which step it is.
type playedBar struct {
	written int
	steps   []int
}

// A step is a chord for as long as it is held.
type step struct {
	picking.ChartChord
	symbol int // where it comes first, in symbols
	bar    int // as played, from 1
}

// maxSteps is the most steps of a song: four chords a bar.
const maxSteps = 4 * picking.MaxBars

// readSong reads the chart that a flag gives.
func (s *setting) readSong(flag, text string, stdin io.Reader) (*song, error) {
	chart, err := cli.ReadChart(flag, text, stdin)
	if err != nil {
		return nil, err
	}
	p, err := picking.ParseProgressionIn(chart, s.spelling)
	if located, ok := err.(fretboard.Located); ok {
		return nil, fretboard.Within(err, flag, located.Where().Source, 0)
	}
	it := &song{flag: flag, spelling: s.spelling, written: p.Bars(), text: p.StringIn(s.spelling)}
	it.index()
	return it, it.play()
}

// index finds the chords in the chart as it prints, where none holds a space.
func (it *song) index() {
	for _, f := range fretboard.Fields(it.text, " ") {
		if strings.Trim(f.Text, "|:%") != "" {
			it.symbols = append(it.symbols, f)
		}
	}
	next := 0
	for _, bar := range it.written {
		it.first = append(it.first, next)
		next += len(bar.Chords)
	}
}

// play lays out the bars in the order of playing, and the steps.
func (it *song) play() error {
	opened := 0
	for i, bar := range it.written {
		if bar.Opens {
			opened = i
		}
		it.playBar(i)
		for w := opened; bar.Closes && w <= i; w++ {
			it.playBar(w)
		}
		symbol := min(it.first[i], len(it.symbols)-1)
		if len(it.bars) > picking.MaxBars {
			return it.refuse(symbol, fmt.Sprintf("more than %d bars, repeats played out", picking.MaxBars), "cut the song in parts")
		}
		if len(it.steps) > maxSteps {
			return it.refuse(symbol, fmt.Sprintf("more than %d chords, repeats played out", maxSteps), "cut the song in parts")
		}
	}
	for _, step := range it.steps {
		if !step.Chord.Silent() {
			return nil
		}
	}
	return it.refuse(0, "no chord sounds", "write one, such as Am | G | Dm | E")
}

func (it *song) playBar(written int) {
	source := written
	for it.written[source].Again {
		source--
	}
	bar := playedBar{written: written}
	for i, c := range it.written[source].Chords {
		if n := len(it.steps); n == 0 || it.steps[n-1].Chord != c.Chord || it.steps[n-1].Shape != c.Shape {
			it.steps = append(it.steps, step{c, it.first[source] + i, len(it.bars) + 1})
		}
		bar.steps = append(bar.steps, len(it.steps)-1)
	}
	it.bars = append(it.bars, bar)
}

// refuse returns an error at a chord of the chart.
func (it *song) refuse(symbol int, reason, mend string) error {
	f := it.symbols[symbol]
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: it.flag, Source: it.text, Offset: f.At, Length: len(f.Text),
		Reason: reason, Mend: mend}}
}

// chords lists the chords of the steps.
func (it *song) chords() []voicing.Chord {
	chords := make([]voicing.Chord, len(it.steps))
	for i, step := range it.steps {
		chords[i] = step.Chord
	}
	return chords
}

// relocate moves an error of package changes, which is located in the steps with
// bar lines between them, to the chart.
func (s *setting) relocate(it *song, err error) error {
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok || located.Notation != "chords" {
		return err
	}
	n := strings.Count(located.Source[:located.Offset], " | ")
	_, reason, _ := strings.Cut(located.Reason, ": ")
	if it.steps[n].Shape != (voicing.Shape{}) {
		return it.refuse(it.steps[n].symbol, reason, located.Mend)
	}
	return it.refuse(it.steps[n].symbol, reason, s.narrowed("name its shape, such as Am=x02210, or try a chord of fewer tones"))
}

// options are what the hand may do on the way through a song.
func (s *setting) options() changes.Options {
	return changes.Options{Voicing: s.limits, Aim: s.aim, Loop: s.loop}
}

// withShapes returns the chart with the shape of every chord, given that of each
// step. Bars that are played again with other shapes are written out.
func (it *song) withShapes(shapes []voicing.Shape) (picking.Progression, error) {
	played := make([]picking.ChartBar, len(it.bars))
	seen := map[int][]picking.ChartChord{} // of each written bar
	same := true
	for i, bar := range it.bars {
		played[i].Chords = it.shaped(bar, shapes)
		before, again := seen[bar.written]
		same = same && (!again || equal(before, played[i].Chords))
		seen[bar.written] = played[i].Chords
	}
	if !same {
		return picking.NewProgression(played...)
	}
	written := make([]picking.ChartBar, len(it.written))
	for i, bar := range it.written {
		written[i] = picking.ChartBar{Opens: bar.Opens, Closes: bar.Closes, Chords: seen[i]}
		if bar.Again && equal(seen[i], seen[i-1]) {
			written[i].Again, written[i].Chords = true, nil
		}
	}
	return picking.NewProgression(written...)
}

// shaped returns the chords of a bar with their shapes, and what else the chart
// says of them.
func (it *song) shaped(bar playedBar, shapes []voicing.Shape) []picking.ChartChord {
	source := bar.written
	for it.written[source].Again {
		source--
	}
	chords := make([]picking.ChartChord, len(bar.steps))
	for i, c := range it.written[source].Chords {
		chords[i] = picking.ChartChord{Chord: c.Chord, Shape: shapes[bar.steps[i]], Figure: c.Figure, Beats: c.Beats}
	}
	return chords
}

func equal(a, b []picking.ChartChord) bool {
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
