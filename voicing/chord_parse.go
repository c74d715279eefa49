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
//   - a quality: none or maj major M Δ; min minor m -; dim o °; ø; aug +; dom. Δ means a
//     major seventh and ø a minor one even without a number;
//   - a number: 5 6 6/9 7 9 11 13, with maj, M or Δ for the major seventh. A
//     bare 2 or 4 stands in place of the third, as sus2 and sus4 do;
//   - alterations (b5 #5 b6 b9 #9 #11 b13; a bare + is #5), additions (add9),
//     suspensions (sus sus2 sus4), omissions (no3 omit5) and alt, in any order,
//     close together, in brackets or after slashes;
//   - a slash and a bass note.
//
// Accidentals and the minus may be Unicode's. N.C. is the zero Chord. German H
// and small roots are refused; [ParseChordIn] reads them. The grammar is
// chord.ebnf; what it does not hold is a [fretboard.SyntaxError]. A symbol that
// it holds but that contradicts itself, such as Cm7sus4, is a
// [fretboard.ImpossibleError].
func ParseChord(text string) (Chord, error) { return ParseChordIn(text, fretboard.English) }

// ParseChordIn is [ParseChord] with the notes named as spelling has them. In
// the two German ways a small root is a minor chord, as songbooks have it: what
// follows it is read as after a capital root with m, so that fis7 is F#m7 and
// amaj7 is Am(maj7), unless it says minor or diminished itself (am7, h°, hm7b5).
// A bass may be a small letter without that meaning anything (a/g). Accidentals
// right after the letter belong to the root here too, while a German ending
// closes it: Ab5 is a fifth on A flat, Asb5 a triad on A flat with a flat fifth.
func ParseChordIn(text string, spelling fretboard.Spelling) (Chord, error) {
	if err := fretboard.CheckText("chord", text); err != nil {
		return Chord{}, err
	}
	s := newSymbol(text)
	s.spelling = spelling
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
	quality  *quality
	number   *number // nil until one is read
	spelling fretboard.Spelling
	small    bool // whether the root is a small letter, which means minor
	marked   bool // whether a mark has been read
	inside   bool // whether in brackets, where spaces may stand
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
	rest := s.rest()
	s.small = rest != "" && isLetter(rest[0]) && rest[0] == small(rest[0])
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
	n, size, err := fretboard.ScanNoteIn(s.rest(), s.spelling)
	switch {
	case err != nil:
		return n, fretboard.Within(err, "chord", s.source, s.at)
	case size == 0:
		return n, s.noNote(what)
	case n.Accidental < -maxRootAccidental, n.Accidental > maxRootAccidental:
		return n, s.impossible(s.at+1, size-1, "more than two accidentals on the "+what, "write the "+what+" with fewer")
	}
	s.at += size
	return n, nil
}

// noNote says why no root or bass begins here.
func (s *symbol) noNote(what string) error {
	letters := "write a letter from A to G, such as in Am7 or D/F#"
	if s.spelling != fretboard.English {
		letters = "write a letter from A to H, such as in Hm7 or D/F#"
	}
	rest := s.rest()
	if rest == "" {
		return s.syntax(s.at, 0, "no "+what, letters)
	}
	_, width := utf8.DecodeRuneInString(rest)
	first := rest[:width]
	switch {
	case strings.EqualFold(first, "h"):
		return s.syntax(s.at, width, "H is not a note in English", "write B for H and Bb for B, or read it in a German spelling")
	case first >= "a" && first <= "g":
		capital := strings.ToUpper(first)
		if what == "bass" {
			return s.syntax(s.at, width, "a bass is a capital letter", "write "+capital)
		}
		return s.syntax(s.at, width, "a root is a capital letter", "write "+capital+", or "+capital+"m for minor")
	case what == "bass" && isDigit(first[0]):
		return s.syntax(s.at, width, "neither a bass nor an added tone", "write sus4, add4 or add6, whichever is meant")
	}
	return s.syntax(s.at, width, "no "+what, letters)
}
