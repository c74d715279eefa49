package voicing

import "weft.example/fretboard"

// A Need says whether a voicing must sound a tone of its chord.
type Need uint8

const (
	Essential Need = iota // must sound
	Optional              // may be left out
)

// A Tone is one member of a chord.
type Tone struct {
	Degree   int                // 1, 3, 5, 7, 9, 11, 13, 2, 4, 6
	Interval fretboard.Interval // above the root
	Note     fretboard.Note
	Need     Need
}

// A Chord is a chord symbol's meaning: root, tones and, in a slash chord, the
// bass. The zero Chord is N.C., no chord. Chords compare with ==.
type Chord struct {
	root, bass fretboard.Note
	formula    uint32
	slash      bool
}

func (c Chord) Silent() bool                                        { panic("todo") }
func (c Chord) Root() fretboard.Note                                { panic("todo") }
func (c Chord) Bass() (n fretboard.Note, slash bool)                { panic("todo") }
func (c Chord) Tones() []Tone                                       { panic("todo") }
func (c Chord) Spell(p fretboard.PitchClass) (fretboard.Note, bool) { panic("todo") }
func (c Chord) Transpose(i fretboard.Interval) Chord                { panic("todo") }
func (c Chord) String() string                                      { panic("todo") }
func (c Chord) Chart() string                                       { panic("todo") }
func (c Chord) Formula() string                                     { panic("todo") } // "1 b3 5 b7"
func ParseChord(text string) (Chord, error)                         { panic("todo") }
