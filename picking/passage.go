package picking

import (
	"iter"
	"math"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// A Passage is the finished part: bars of picks with their chords, repeats
// played out. [Arrange] makes it; a view only reads it.
type Passage struct {
	Title      string
	Meter      Meter
	Tempo      int                  // the meter's beats a minute
	Instrument fretboard.Instrument // every field filled in
	Strokes    Tradition
	Fit        Moulding
	Loop       bool // the last pick leads to the first
	Bars       []Bar
	// Travel is the way of the pick between all strokes, round the loop too, in
	// string spacings.
	Travel  int
	Remarks []string // on the whole; each chord has its own
}

// A Bar is one bar as played.
type Bar struct {
	Number  int // as played, from 1
	Written int // the bar of the chart that it plays, from 1
	Pass    int // 2 in the second playing of a repeat, else 1
	At      Ticks
	Length  Ticks
	Chords  []HeldChord
	Picks   []Pick // those that begin in the bar
}

// A HeldChord is a chord for as long as one bar holds it.
type HeldChord struct {
	At, Length Ticks
	Chord      voicing.Chord   // as its shape is named; silent for N.C.
	Sounds     voicing.Chord   // as it sounds with the capo
	Voicing    voicing.Voicing // zero for N.C.
	Figure     int             // the figure played, from 1; 0 for N.C.
	// Fit is of the whole figure, but its Losses are only those that sound here.
	Fit     Fit
	Remarks []string
}

// A Pick is one plucked note.
type Pick struct {
	At     Ticks // from the start of the passage
	Length Ticks // as written: its slot and the holds after it
	// Rings is how long it sounds: until its string is plucked again, until a
	// rest, or until the chord changes and its string's fret does. In a loop it
	// may ring on past the end; played once, what is left rings one bar longer.
	Rings    Ticks
	Event    int // of the figure, from 1
	String   fretboard.StringNumber
	Fret     fretboard.Fret // from the capo
	Pitch    fretboard.Pitch
	Note     fretboard.PitchName // the pitch as the sounding chord spells it
	Stroke   Stroke
	Why      Why
	Crossing Crossing // from the pick before
	Travel   int      // from the pick before, in string spacings
}

// Length returns the length of the passage.
func (p Passage) Length() Ticks {
	if len(p.Bars) == 0 {
		return 0
	}
	last := p.Bars[len(p.Bars)-1]
	return last.At + last.Length
}

// Picks yields every pick in turn with its index from 0.
func (p Passage) Picks() iter.Seq2[int, Pick] {
	return func(yield func(int, Pick) bool) {
		i := 0
		for _, bar := range p.Bars {
			for _, pick := range bar.Picks {
				if !yield(i, pick) {
					return
				}
				i++
			}
		}
	}
}

// TravelLength returns the pick's way in millimetres at the instrument's
// string spacing, to the thousandth.
func (p Passage) TravelLength() fretboard.Millimetres {
	const thousandths = 1000
	way := float64(p.Travel) * float64(p.Instrument.Spacing)
	return fretboard.Millimetres(math.Round(way*thousandths) / thousandths)
}
