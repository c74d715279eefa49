package fretboard

import "strings"

// A Spelling is a way of naming notes in chord symbols and on sheets. The
// functions that end in In read or print in a spelling; those without are for
// English, and so is all that programs exchange. Pitches with octaves, such as
// tunings, are in scientific pitch notation, which is English. A value made by
// hand counts as English.
type Spelling uint8

// The three spellings.
//
// English has the letters A to G with sharps and flats.
//
// German has H for B natural and B for B flat. A sign after B is refused: Bb
// is B flat to some and a double flat to others.
//
// MixedGerman has H for B natural and Bb for B flat, as songbooks do that want
// to be safe from the doubt. There B without a flat is refused.
//
// Both German ways have besides H the letters A to G but B, with the same signs
// as English (F#, Eb, Hb) or with the endings of German names: is for a sharp
// and es for a flat, shortened after E and A (Fis, Ges, Es, As), twice for a
// double one (Fisis, Heses, Asas or Ases). An ending takes no more signs. An s
// that begins sus is none: Asus4 is suspended, Assus4 is on A flat. Small letters
// name the same notes: fis, b, h.
const (
	English Spelling = iota
	German
	MixedGerman
)

var spellingNames = [...]string{"english", "german", "mixed"}

// String returns english, german or mixed.
func (s Spelling) String() string { return NameOf(spellingNames[:], int(s)) }

// ParseSpelling reads english, german or mixed.
func ParseSpelling(text string) (Spelling, error) {
	i, err := ParseName("spelling", spellingNames[:], text)
	return Spelling(i), err
}

func (s Spelling) german() bool { return s == German || s == MixedGerman }

// StringIn prints n by the names of s in plain text: H, B or Bb, F#. Signs stand
// where German has endings, since chord charts print them in German too, and
// since As and Es before sus are hard to tell from A and E. The text parses in s
// to the same note.
func (n Note) StringIn(s Spelling) string {
	letter, signs := s.written(n)
	return letter + accidental(signs, "#", "b")
}

// ChartIn is [Note.StringIn] with the accidentals of printed music: H, F♯.
func (n Note) ChartIn(s Spelling) string {
	letter, signs := s.written(n)
	return letter + chartAccidental(signs)
}

// written returns the letter that n begins with in s and the accidental that
// its signs are to say.
func (s Spelling) written(n Note) (letter string, signs int8) {
	switch {
	case n.Letter != B || !s.german():
	case s == German && n.Accidental == -1:
		return "B", 0
	case s == German || n.Accidental >= 0:
		return "H", n.Accidental
	}
	return letterNames[n.Letter : n.Letter+1], n.Accidental
}

// ParseNoteIn reads a note by the names of s, such as Fis or H; in English it
// is [ParseNote].
func ParseNoteIn(text string, s Spelling) (Note, error) {
	if !s.german() {
		return ParseNote(text)
	}
	n, size, err := ScanNoteIn(text, s)
	switch {
	case err != nil:
		return Note{}, Within(err, "note", text, 0)
	case size == 0 || size != len(text):
		return Note{}, &SyntaxError{Place{Notation: "note", Source: text, Offset: size, Length: len(text) - size,
			Reason: "not a note", Mend: "write a letter from A to H and its accidentals, such as Eb or F#, Es or Fis"}}
	}
	return n, nil
}

// ScanNoteIn reads a note from the front of text by the names of s and returns
// it with the bytes it took, none if no note begins there. The error is for a
// note that does begin there and is refused: a B in doubt is a [SyntaxError],
// more than four accidentals are an [ImpossibleError]. It does not allocate
// unless it fails.
func ScanNoteIn(text string, s Spelling) (n Note, size int, err error) {
	letter, ok := s.letter(text)
	if !ok {
		return Note{}, 0, nil
	}
	if s.german() && text[0]|small == 'b' {
		return s.scanB(text)
	}
	if shift, took := ending(text); s.german() && took > 0 {
		return Note{letter, shift}, 1 + took, nil
	}
	return signed(letter, text)
}

const small = 'a' - 'A' // the bit that tells small letters from capitals

// letter returns the letter that text begins with; H is B.
func (s Spelling) letter(text string) (Letter, bool) {
	if text == "" {
		return 0, false
	}
	first := text[0]
	if s.german() {
		first &^= small
		if first == 'H' {
			return B, true
		}
	}
	i := strings.IndexByte(letterNames, first)
	return Letter(i), i >= 0
}

// endings lists the German endings, longer ones before those that begin them,
// with the letters that take them.
var endings = [...]struct {
	letters, text string
	shift         int8
}{
	{"ACDEFGH", "isis", 2}, {"ACDEFGH", "is", 1},
	{"CDFGH", "eses", -2}, {"CDFGH", "es", -1},
	{"A", "sas", -2}, {"AE", "ses", -2}, {"AE", "s", -1},
}

// ending returns what the ending after the first letter of text says, and its
// bytes.
func ending(text string) (shift int8, size int) {
	first, rest := text[0]&^small, text[1:]
	if len(rest) >= len("sus") && strings.EqualFold(rest[:len("sus")], "sus") {
		return 0, 0
	}
	for _, e := range endings {
		if strings.IndexByte(e.letters, first) >= 0 && strings.HasPrefix(rest, e.text) {
			return e.shift, len(e.text)
		}
	}
	return 0, 0
}

// signed reads the signs after the letter that text begins with.
func signed(letter Letter, text string) (Note, int, error) {
	shift, signs := ScanAccidental(text[1:])
	if shift < -maxAccidental || shift > maxAccidental {
		return Note{}, 0, &ImpossibleError{Place{"note", text, 1, signs, "more than four accidentals", "write the note with fewer"}}
	}
	return Note{letter, int8(shift)}, 1 + signs, nil
}

// scanB reads a note from a text that begins with a German B.
func (s Spelling) scanB(text string) (Note, int, error) {
	shift, signs := ScanAccidental(text[1:])
	switch {
	case s == German && signs == 0:
		return Note{B, -1}, 1, nil
	case s == MixedGerman && shift < 0:
		return signed(B, text)
	}
	reason, mend := s.doubt(shift)
	if text[0] == 'b' {
		mend = strings.NewReplacer("H", "h", "B", "b").Replace(mend)
	}
	return Note{}, 0, &SyntaxError{Place{"note", text, 0, 1 + signs, reason, mend}}
}

// doubt says why a B with signs of some shift is refused. The mends stand for
// both cases of the letter; scanB puts them in that of the text.
func (s Spelling) doubt(shift int) (reason, mend string) {
	reason, mend = "in doubt, since B is B natural in English and B flat in German", "write H or Bb"
	if s == German {
		reason, mend = "a sign on B, which is B flat in German", "write H or B"
	}
	switch {
	case shift > 0:
		mend = "write H or H#"
	case shift < 0:
		mend = "write B or Hbb"
	}
	return reason, mend
}
