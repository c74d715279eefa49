package svg

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// A sheet is a passage on its way to pages.
type sheet struct {
	picking.Passage
	spelling fretboard.Spelling
	format   format
	asked    int   // the size in points
	scale    scale // of the size that has room
	gathered bool  // the chord boxes stand together at the front

	silences  []picking.Silence
	figures   bool // more than one figure is played
	parts     []section
	novelty   [][]novelty    // of each bar's chords
	picks     []picking.Pick // of the whole passage
	firstPick []int          // the index of each bar's first pick
	byString  [][]picking.Pick
	notes     notebook
	boxes     map[voicing.Voicing]*boxDrawing
	signs     signs
}

func newSheet(p picking.Passage, o Options) (*sheet, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	var err error
	if p.Instrument, err = p.Instrument.Normal(); err != nil {
		return nil, err
	}
	if err := check(p); err != nil {
		return nil, err
	}
	s := &sheet{Passage: p, spelling: o.Spelling, format: o.format(), asked: max(o.Size, usualSize)}
	s.read()
	return s, nil
}

// read gathers from the passage what does not depend on sizes.
func (s *sheet) read() {
	s.Title = fretboard.Printable(s.Title)
	s.silences = s.Passage.Silences()
	s.figures = s.Passage.ManyFigures()
	s.parts = s.sections()
	s.readPicks()
	s.readChords()
	s.readNotes()
}

func (s *sheet) readPicks() {
	s.byString = make([][]picking.Pick, s.strings()+1)
	for _, bar := range s.Bars {
		s.firstPick = append(s.firstPick, len(s.picks))
		s.picks = append(s.picks, bar.Picks...)
	}
	for _, pick := range s.picks {
		s.byString[pick.String] = append(s.byString[pick.String], pick)
	}
}

// A novelty says how new the shape of a chord is.
type novelty uint8

const (
	held  novelty = iota // it was held before, or nothing is
	again                // it comes again after another
	first                // it comes for the first time
)

func (s *sheet) readChords() {
	s.novelty = make([][]novelty, len(s.Bars))
	seen := map[voicing.Voicing]bool{}
	var before voicing.Voicing
	for i, bar := range s.Bars {
		for _, chord := range bar.Chords {
			v, how := chord.Voicing, held
			switch {
			case v == before || v.Sounding() == 0:
			case seen[v]:
				how = again
			default:
				how = first
			}
			s.novelty[i] = append(s.novelty[i], how)
			before, seen[v] = v, true
		}
	}
}

// boxed reports whether a chord's box is drawn above it: where the chord
// changes or, in large print, which has less room, where it comes for the first
// time.
func (s *sheet) boxed(how novelty) bool {
	return !s.gathered && (how == first || how == again && s.scale.points < large)
}

// pages lays the sheet out at the largest size that has room.
func (s *sheet) pages() []page {
	for points := s.asked; ; points-- {
		for _, s.gathered = range [...]bool{false, true} {
			s.scale = newScale(points)
			s.boxes, s.signs = map[voicing.Voicing]*boxDrawing{}, signs{}
			if blocks, ok := s.blocks(); ok || points == leastSize {
				return s.paginate(blocks)
			}
		}
	}
}

// leastSize is where shrinking ends; there a line of 12 strings has room on
// either paper.
const leastSize = 6

// A block is something that stands on one page. What it draws begins at y.
type block struct {
	height int
	gap    int  // white above it, unless it comes first on its page
	keep   bool // it stands on the page of the block that follows
	bars   []int
	draw   func(p *pen, y int)
}

// blocks lays everything out, and reports whether it has room on the paper.
func (s *sheet) blocks() (blocks []block, ok bool) {
	systems, ok := s.systems()
	if !ok {
		return nil, false
	}
	blocks = s.header()
	if s.gathered {
		blocks = append(blocks, s.gallery()...)
	}
	blocks = append(blocks, systems...)
	blocks = append(blocks, s.legend()...)
	blocks = append(blocks, s.ending()...)
	for _, b := range blocks {
		ok = ok && b.height <= s.depth()
	}
	return blocks, ok
}

// depth returns the room for blocks on a page, below the running head.
func (s *sheet) depth() int { return s.format.depth() - s.headDepth() }
