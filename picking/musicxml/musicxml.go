// Package musicxml writes a passage as MusicXML 4.0, the open standard of the
// W3C Music Notation Community Group for exchanging scores: one part with a
// staff of notation over a staff of tab, or tab alone.
//
// These decisions hold; "the standard" is the documentation in its schema.
//   - Pitches are those that sound, capo and all, under a clef with its octave
//     sign; nothing is transposed. Chord symbols name what sounds. With a capo
//     the name of the shape stands beside them in brackets.
//   - Frets count from the capo, in the tab and in chord frames. The standard
//     has the tuning without the capo, lets the capo change the open strings
//     and calls an open string fret 0.
//   - Strings keep their numbers and lines whatever the hand. A down-bow sign
//     is a stroke toward the floor, which on a guitar turned over is toward
//     the thickest string.
//   - Lengths are those written; a note that rings on is marked let-ring.
//   - Every note of both staves has its string, fret and stroke. Strokes print
//     once, over the notation if there is one, strings and frets in the tab; the
//     other staff holds them unprinted.
//   - A repeat is a repeat only where both playings are written alike in every
//     sign; else all bars stand. A loop is said in words, so that the file
//     lasts as long as the passage.
//
// Reasons for strokes, crossings, losses and remarks have no place in the
// standard and are left to other views.
package musicxml

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are choices for the score. The zero Options works.
type Options struct {
	Staves Staves // zero: notation and tab
}

// Staves says which staves the part has.
type Staves uint8

// The part has a staff of notation over one of tab (Both), or tab alone.
const (
	Both Staves = iota
	TabAlone
)

var stavesNames = [...]string{"both", "tab"}

// String returns both or tab.
func (s Staves) String() string { return fretboard.NameOf(stavesNames[:], int(s)) }

// ParseStaves reads both or tab.
func ParseStaves(text string) (Staves, error) {
	i, err := fretboard.ParseName("staves", stavesNames[:], text)
	return Staves(i), err
}

// Encode writes p to w as an uncompressed MusicXML file, in pieces of a bar.
// The error is w's or, for options or a passage that cannot be written, a
// [fretboard.ImpossibleError]; then nothing is written. The time grows with the
// picks.
func Encode(w io.Writer, p picking.Passage, o Options) error {
	s, err := newScore(p, o)
	if err != nil {
		return err
	}
	s.w = w
	s.write()
	return s.err
}

// A score is a passage on its way to MusicXML.
type score struct {
	xmlWriter
	picking.Passage
	staves Staves
	notes  []note // of the whole passage
	first  []int  // for each bar, the first note that sounds in it or later
	key    key
	meter  grid // of a bar
	frames frames
}

func newScore(p picking.Passage, o Options) (*score, error) {
	if int(o.Staves) >= len(stavesNames) {
		return nil, refuse("staves", o.Staves.String(), "no such staves", "choose both or tab")
	}
	var err error
	if p.Instrument, err = p.Instrument.Normal(); err != nil {
		return nil, err
	}
	if err := check(p); err != nil {
		return nil, err
	}
	s := &score{Passage: p, staves: o.Staves, key: keyOf(p), meter: meterGrid(p.Meter), frames: frames{}}
	s.notes, s.first = notesOf(p)
	return s, nil
}

// write writes the file.
func (s *score) write() {
	s.raw(`<?xml version="1.0" encoding="UTF-8"?>`)
	s.open("score-partwise", "version", "4.0")
	s.header()
	s.open("part", "id", partID)
	if len(s.Bars) == 0 {
		s.emptyMeasure()
	}
	number := 0
	for _, part := range s.sections() {
		for i := part.from; i < part.to; i++ {
			number++
			s.measure(i, number, part)
			s.flush()
		}
	}
	s.shut("part")
	s.shut("score-partwise")
	s.flush()
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
