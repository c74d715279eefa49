package voicing

import (
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
)

// ParseKey reads a key: a capital letter with at most one sharp or flat, then
// nothing, M, maj or major for a major key, and m, min, minor or - for a minor
// one, with or without a space between. A key that would need more than seven
// sharps or flats, such as G#, is an [fretboard.ImpossibleError], and so is a
// tonic with more than four; all else is a [fretboard.SyntaxError].
func ParseKey(text string) (Key, error) { return ParseKeyIn(text, fretboard.English) }

// ParseKeyIn is [ParseKey] with the tonic named as spelling has it. The two
// German ways also have Dur for major and Moll for minor, with a hyphen, a space
// or nothing before them: Es-Dur, fis-Moll, a Moll. There a small tonic is a
// minor key even alone (h), and with a word for major it is an
// [fretboard.ImpossibleError]; a capital one may be either, so A-Moll is a-Moll.
func ParseKeyIn(text string, spelling fretboard.Spelling) (Key, error) {
	if err := fretboard.CheckText("key", text); err != nil {
		return Key{}, err
	}
	body := strings.TrimSpace(text)
	t := keyText{source: text, body: body, start: strings.Index(text, body), spelling: spelling}
	k, err := t.key()
	if err != nil {
		return Key{}, err
	}
	return k, nil
}

// A keyText is the text of a key and the spelling in which it is read.
type keyText struct {
	source   string
	body     string // source without the spaces around it
	start    int    // of body in source
	spelling fretboard.Spelling
}

func (t keyText) key() (k Key, err error) {
	tonic, size, err := fretboard.ScanNoteIn(t.body, t.spelling)
	switch {
	case err != nil:
		return k, fretboard.Within(err, "key", t.source, t.start)
	case size == 0:
		return k, t.noTonic()
	}
	k.tonic = tonic
	if k.mode, err = t.mode(strings.TrimSpace(t.body[size:])); err != nil {
		return k, err
	}
	if s := k.signature(); s < -maxSignature || s > maxSignature {
		return k, &fretboard.ImpossibleError{Place: t.place(0, len(t.body), "more than seven sharps or flats in the signature",
			"write "+k.plainer().StringIn(t.spelling)+", which sounds the same")}
	}
	return k, nil
}

// mode reads the word with which the text ends, after a small or capital tonic.
func (t keyText) mode(word string) (mode, error) {
	m, at := modeNamed(word), len(t.body)-len(word)
	if m == noMode && t.german() {
		m = germanMode(word)
	}
	small := 'a' <= t.body[0]
	switch {
	case m == noMode && t.german():
		return m, &fretboard.SyntaxError{Place: t.place(at, len(word), "neither major nor minor",
			"write Moll for a minor key, Dur for a major one, such as h-Moll or Es-Dur")}
	case m == noMode:
		return m, &fretboard.SyntaxError{Place: t.place(at, len(word), "neither major nor minor",
			"write m or minor for a minor key, nothing or major for a major one")}
	case small && word == "":
		return minorMode, nil
	case small && m == majorMode:
		return m, &fretboard.ImpossibleError{Place: t.place(at, len(word), "major after a small tonic, which is minor",
			"write a capital tonic for a major key, Moll for a minor one")}
	}
	return m, nil
}

func (t keyText) german() bool {
	return t.spelling == fretboard.German || t.spelling == fretboard.MixedGerman
}

// modeNamed reads the word after the tonic. Only the single letters tell
// capital from small.
func modeNamed(word string) mode {
	switch word {
	case "", "M":
		return majorMode
	case "m", "-", "−", "–":
		return minorMode
	}
	switch strings.ToLower(word) {
	case "maj", "major":
		return majorMode
	case "min", "minor":
		return minorMode
	}
	return noMode
}

// germanMode reads Dur or Moll, which a hyphen may tie to the tonic.
func germanMode(word string) mode {
	for _, hyphen := range [...]string{"-", "\u2010", "\u2011", "–", "−"} {
		if rest, tied := strings.CutPrefix(word, hyphen); tied {
			word = strings.TrimSpace(rest)
			break
		}
	}
	switch strings.ToLower(word) {
	case "dur":
		return majorMode
	case "moll":
		return minorMode
	}
	return noMode
}

// place locates a fault at a byte of the body.
func (t keyText) place(at, length int, reason, mend string) fretboard.Place {
	return fretboard.Place{Notation: "key", Source: t.source, Offset: t.start + at, Length: length, Reason: reason, Mend: mend}
}

// noTonic says why no key begins with the body.
func (t keyText) noTonic() error {
	_, width := utf8.DecodeRuneInString(t.body)
	reason, mend := "no tonic", "write a letter from A to G and m for minor, such as Eb or F#m"
	switch first := t.body[:width]; {
	case t.german():
		mend = "write a letter from A to H and Dur or Moll, such as Es-Dur or fis-Moll"
	case strings.EqualFold(first, "h"):
		reason, mend = "H is not a note in English", "write B for H and Bb for B, or read it in a German spelling"
	case first >= "a" && first <= "g" && width == 1:
		capital := strings.ToUpper(first)
		reason, mend = "a tonic is a capital letter", "write "+capital+", or "+capital+"m for minor"
	}
	return &fretboard.SyntaxError{Place: t.place(0, width, reason, mend)}
}
