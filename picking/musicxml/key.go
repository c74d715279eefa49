package musicxml

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// A key is a key signature.
type key struct {
	fifths int    // sharps, or flats below zero
	mode   string // major, minor, or nothing if no key is known
}

// keyOf returns the key that explains the chords of p best, as they sound, or
// a signature without signs if it has none.
func keyOf(p picking.Passage) key {
	var chords []voicing.Chord
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			chords = append(chords, held.Sounds)
		}
	}
	k := voicing.KeyOf(chords)
	switch {
	case k == voicing.Key{}:
		return key{}
	case k.Minor():
		return key{circle(k.Tonic()) - 3, "minor"}
	}
	return key{circle(k.Tonic()), "major"}
}

// sharpened lists the letters in the order in which signatures sharpen them;
// flats come in the opposite order.
var sharpened = [...]fretboard.Letter{fretboard.F, fretboard.C, fretboard.G, fretboard.D, fretboard.A, fretboard.E, fretboard.B}

// circle returns the place of n in the circle of fifths, counted from C.
func circle(n fretboard.Note) int {
	for i, letter := range sharpened {
		if letter == n.Letter {
			return i - 1 + len(sharpened)*int(n.Accidental)
		}
	}
	return 0
}

// accidentals holds for every letter in every octave which accidental stands
// there so far in a bar.
type accidentals [7][10]int8

// doubtful stands for a place where a tie has brought an accidental into the
// bar, which holds for the tied note alone.
const doubtful int8 = -128

// accidentals returns what the signature alone says.
func (k key) accidentals() *accidentals {
	var a accidentals
	for i, letter := range sharpened {
		for octave := range a[letter] {
			switch {
			case i < k.fifths:
				a[letter][octave] = 1
			case len(sharpened)-1-i < -k.fifths:
				a[letter][octave] = -1
			}
		}
	}
	return &a
}

// next returns the accidental that a new note shows, or nothing.
func (a *accidentals) next(n fretboard.PitchName) string {
	place := &a[n.Note.Letter][n.Octave]
	if *place == n.Note.Accidental {
		return ""
	}
	*place = n.Note.Accidental
	return accidentalWord(n.Note.Accidental)
}

// tied takes note of a note that is tied over the bar line: one that is not
// the signature's leaves doubt.
func (a *accidentals) tied(n fretboard.PitchName) {
	if place := &a[n.Note.Letter][n.Octave]; *place != n.Note.Accidental {
		*place = doubtful
	}
}

var accidentalWords = [...]string{"triple-flat", "flat-flat", "flat", "natural", "sharp", "double-sharp", "triple-sharp"}

// accidentalWord names an accidental as the standard does, which has none
// beyond three.
func accidentalWord(accidental int8) string {
	if i := int(accidental) + len(accidentalWords)/2; i >= 0 && i < len(accidentalWords) {
		return accidentalWords[i]
	}
	return "other"
}

// written returns a pitch name within the octaves 0 to 9 of the standard: a
// B sharp below octave 0 is written as C.
func written(n fretboard.PitchName) fretboard.PitchName {
	if n.Octave >= 0 && n.Octave <= 9 {
		return n
	}
	p := n.Pitch()
	for letter := fretboard.C; letter <= fretboard.B; letter++ {
		for _, accidental := range [...]int8{0, 1} {
			if plain := (fretboard.Note{Letter: letter, Accidental: accidental}); plain.Class() == p.Class() {
				return p.Spell(plain)
			}
		}
	}
	return n
}
