// Package svg draws a passage as the sheet that a teacher hands out: pages of
// systems with chord names, chord boxes, stroke signs, tab, count and, in a
// lane of its own, the pick's path as a thread over the strings.
//
// The thread is the picture of the strokes. The floor is below, as players see
// their own hand: a down-stroke goes down. Where the pick plucks a string the
// thread lies over it, where it only passes the thread lies under it; where it
// is caught between two strings or goes back over one it is broken. Tab keeps
// its convention, string 1 on top.
//
// The drawings are SVG 1.1 with WAI-ARIA labels, black on white, without
// scripts, identifiers or anything loaded from elsewhere. Text stays
// text, in the viewer's own sans-serif font; room is made for the widest one
// (see advances). All lengths are whole hundredths of a point.
package svg

import (
	"io"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are choices for the sheet. The zero Options works: A4 upright, 12
// points, English names.
type Options struct {
	Paper     Paper
	Landscape bool
	// Size is the size of the chord names in points, 12 to 36; 0 means 12. It
	// is the one setting for large print: the smaller signs grow faster, so that
	// from 18 points on nothing is smaller than Size, and fewer bars stand in a
	// line. Where the paper has no room for a line of music at that size, the
	// chord boxes stand together at the front; where that is not enough, the
	// largest size that fits is taken, and the sheet says so.
	Size     int
	Spelling fretboard.Spelling // of notes and chords
}

// Encode writes the sheet of p to w as one drawing in one piece, its pages one
// below the other without a gap. It tells a browser the size of its paper, so
// that opened there alone it prints page by page. The error is w's or, for options or a passage
// that cannot be, a [fretboard.ImpossibleError]; then nothing is written. The
// time grows with the picks.
func Encode(w io.Writer, p picking.Passage, o Options) error {
	s, err := newSheet(p, o)
	if err != nil {
		return err
	}
	out := s.document(s.pages(), true)
	n, err := w.Write(out)
	if err == nil && n < len(out) {
		err = io.ErrShortWrite
	}
	return err
}

// Pages returns each page of the sheet as a drawing of its own, to be put into a
// document. There is at least one. The errors are those of [Encode].
func Pages(p picking.Passage, o Options) ([][]byte, error) {
	s, err := newSheet(p, o)
	if err != nil {
		return nil, err
	}
	pages := s.pages()
	drawings := make([][]byte, len(pages))
	for i := range pages {
		drawings[i] = s.document(pages[i:i+1], false)
	}
	return drawings, nil
}

// The sizes in points.
const (
	usualSize = 12
	maxSize   = 36
)

func (o Options) check() error {
	switch {
	case o.Paper > Letter:
		return refuse("paper", o.Paper.String(), "no such paper", "choose A4 or Letter")
	case o.Size != 0 && (o.Size < usualSize || o.Size > maxSize):
		return refuse("size", strconv.Itoa(o.Size), "not a size for a sheet", "choose 12 to 36 points, or 0 for 12")
	case o.Spelling > fretboard.MixedGerman:
		return refuse("spelling", o.Spelling.String(), "no such spelling", "")
	}
	return nil
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
