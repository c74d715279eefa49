package picking

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// MaxBars is the most bars a passage may have, repeats played out.
const MaxBars = 512

// A Progression is a chart of chords, bar by bar. Make one with
// [ParseProgression], [ParseProgressionIn] or [NewProgression]. The zero
// Progression has no bars and cannot be arranged.
type Progression struct {
	bars     []ChartBar
	text     string
	spelling fretboard.Spelling // of text, in which errors speak
}

// A ChartBar is one bar as written.
type ChartBar struct {
	Opens, Closes bool // a repeat begins before it, ends after it; it plays twice
	Again         bool // the bar before is played again, written %
	Chords        []ChartChord
	at            fretboard.Field
}

// A ChartChord is one chord as written. A silent Chord is N.C.
type ChartChord struct {
	Chord  voicing.Chord
	Shape  voicing.Shape // the shape to hold; without strings, the best is found
	Figure int           // the figure to play, from 1, or 0 for none named
	Beats  Beats         // how long it lasts, or 0 for an equal share of the bar
	at     fretboard.Field
	held   fretboard.Field // the shape's text
}

// Beats counts quarters of a beat, so that a chord may last a beat and a half.
// A beat is the unit of the meter; in a compound meter a bar may as well be
// counted in its dotted beats.
type Beats int

const quartersOfBeat Beats = 4

// String prints b in beats: 3, 1.5, 0.25.
func (b Beats) String() string {
	return strconv.FormatFloat(float64(b)/float64(quartersOfBeat), 'f', -1, 64)
}

// NewProgression returns the progression of the given bars. Errors are those
// of [ParseProgression], located in the chart as [Progression.String] prints it.
func NewProgression(bars ...ChartBar) (Progression, error) {
	return ParseProgression(Progression{bars: bars}.String())
}

// Bars returns the bars as written. The caller must not change them.
func (p Progression) Bars() []ChartBar { return p.bars }

// Equal reports whether p and q are the same chart, in whatever spelling they
// were read.
func (p Progression) Equal(q Progression) bool { return p.String() == q.String() }

// String prints p in canonical form, in English whatever spelling p was read
// in; the text parses to an equal progression.
func (p Progression) String() string { return p.StringIn(fretboard.English) }

// StringIn is [Progression.String] with the notes named as s has them; the text
// parses in s to an equal progression.
func (p Progression) StringIn(s fretboard.Spelling) string {
	var b strings.Builder
	closed := true
	for i, bar := range p.bars {
		switch {
		case bar.Opens:
			b.WriteString("|: ")
		case i > 0 && !closed:
			b.WriteString("| ")
		}
		bar.write(&b, s)
		if closed = bar.Closes; closed {
			b.WriteString(" :|")
		}
		if i < len(p.bars)-1 {
			b.WriteByte(' ')
		}
	}
	return b.String()
}

func (bar ChartBar) write(b *strings.Builder, s fretboard.Spelling) {
	if bar.Again {
		b.WriteByte('%')
		return
	}
	for i, chord := range bar.Chords {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(chord.StringIn(s))
	}
}

// String prints c: the symbol, then =shape, @figure and :beats where given.
func (c ChartChord) String() string { return c.StringIn(fretboard.English) }

// StringIn is [ChartChord.String] with the notes named as s has them.
func (c ChartChord) StringIn(s fretboard.Spelling) string {
	text := c.Chord.StringIn(s)
	if c.Shape.Strings() > 0 {
		text += "=" + c.Shape.String()
	}
	if c.Figure != 0 {
		text += "@" + strconv.Itoa(c.Figure)
	}
	if c.Beats != 0 {
		text += ":" + c.Beats.String()
	}
	return text
}
