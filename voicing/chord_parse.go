package voicing

import (
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
)

// maxRootAccidental is the most sharps or flats that a root or bass takes; the
// tones above it then stay within what a [fretboard.Note] holds.
const maxRootAccidental = 2

// ParseChord reads a chord symbol as songbooks write them:
//
//   - a root, a capital letter with at most two sharps or flats. Accidentals
//     right after the letter belong to the root: C#9 is a ninth chord on C#,
//     C(#9) a triad on C with a raised ninth;
//   - a quality: none or maj M Δ; min m -; dim o °; ø; aug +; dom. Δ means a
//     major seventh and ø a minor one even without a number;
//   - a number: 5 6 6/9 7 9 11 13, with maj, M or Δ for the major seventh. A
//     bare 2 or 4 stands in place of the third, as sus2 and sus4 do;
//   - alterations (b5 #5 b6 b9 #9 #11 b13; a bare + is #5), additions (add9),
//     suspensions (sus sus2 sus4), omissions (no3 omit5) and alt, in any order,
//     close together, in brackets or after slashes;
//   - a slash and a bass note.
//
// Accidentals and the minus may be Unicode's. N.C. is the zero Chord. German H
// and small roots are refused. The grammar is chord.ebnf; what it does not hold
// is a [fretboard.SyntaxError]. A symbol that it holds but that contradicts
// itself, such as Cm7sus4, is a [fretboard.ImpossibleError].
func ParseChord(text string) (Chord, error) {
	if err := fretboard.CheckText("chord", text); err != nil {
		return Chord{}, err
	}
	s := newSymbol(text)
	if s.silent() {
		return Chord{}, nil
	}
	c, err := s.chord()
	if err != nil {
		return Chord{}, err
	}
	return c, nil
}

// A symbol is a chord symbol being read: the reader of its text and the
// content that it has given so far.
type symbol struct {
	reader
	content
	quality *quality
	number  *number // nil until one is read
	marked  bool    // whether a mark has been read
	inside  bool    // whether in brackets, where spaces may stand
}

func newSymbol(text string) *symbol {
	body := strings.TrimSpace(text)
	at := strings.Index(text, body)
	return &symbol{reader: reader{source: text, text: text[:at+len(body)], at: at}}
}

// silent reports whether the symbol is N.C., with or without its dots, in
// capital or small letters.
func (s *symbol) silent() bool {
	for _, way := range [...]string{"N.C.", "NC", "N.C", "NC."} {
		if strings.EqualFold(s.rest(), way) {
			return true
		}
	}
	return false
}

func (s *symbol) chord() (c Chord, err error) {
	if c.root, err = s.note("root"); err != nil {
		return c, err
	}
	if err = s.kind(); err != nil {
		return c, err
	}
	if s.take("/") {
		c.slash = true
		if c.bass, err = s.note("bass"); err != nil {
			return c, err
		}
	}
	if s.rest() != "" {
		return c, s.unreadable(0)
	}
	c.formula = s.formula
	return c, nil
}

// note reads a root or a bass.
func (s *symbol) note(what string) (fretboard.Note, error) {
	rest := s.rest()
	letter, size := fretboard.ScanNote(rest[:min(1, len(rest))])
	if size == 0 {
		return letter, s.noNote(what)
	}
	s.at++
	shift, size := scanSigns(s.rest())
	if shift < -maxRootAccidental || shift > maxRootAccidental {
		return letter, s.impossible(s.at, size, "more than two accidentals on the "+what, "write the "+what+" with fewer")
	}
	s.at += size
	letter.Accidental = int8(shift)
	return letter, nil
}

// scanSigns reads a natural sign, or the sharps or the flats at the front of
// text: in C#b9 the flat is no longer the root's.
func scanSigns(text string) (shift, size int) {
	for size < len(text) {
		_, width := utf8.DecodeRuneInString(text[size:])
		more, took := fretboard.ScanAccidental(text[size : size+width])
		switch {
		case took == 0 || more*shift < 0:
			return shift, size
		case more == 0 && size == 0:
			return 0, took
		case more == 0:
			return shift, size
		}
		shift, size = shift+more, size+took
	}
	return shift, size
}

// noNote says why no root or bass begins here.
func (s *symbol) noNote(what string) error {
	rest := s.rest()
	if rest == "" {
		return s.syntax(s.at, 0, "no "+what, "write a letter from A to G, such as in Am7 or G/B")
	}
	_, width := utf8.DecodeRuneInString(rest)
	first := rest[:width]
	switch {
	case strings.EqualFold(first, "h"):
		return s.syntax(s.at, width, "H is not a note here", "write B for H and Bb for B")
	case first >= "a" && first <= "g":
		capital := strings.ToUpper(first)
		if what == "bass" {
			return s.syntax(s.at, width, "a bass is a capital letter", "write "+capital)
		}
		return s.syntax(s.at, width, "a root is a capital letter", "write "+capital+", or "+capital+"m for minor")
	case what == "bass" && isDigit(first[0]):
		return s.syntax(s.at, width, "neither a bass nor an added tone", "write sus4, add4 or add6, whichever is meant")
	}
	return s.syntax(s.at, width, "no "+what, "write a letter from A to G, such as in Am7 or G/B")
}
