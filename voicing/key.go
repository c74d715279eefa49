package voicing

import "weft.example/fretboard"

// A Key is a major or minor key with a signature of at most seven sharps or
// flats. Keys compare with ==, so F# and Gb differ. The zero Key means that no
// key is known.
type Key struct {
	tonic fretboard.Note
	mode  mode
}

type mode uint8

const (
	noMode mode = iota
	majorMode
	minorMode
)

// Tonic returns the note on which k rests; the zero Note if k is no key.
func (k Key) Tonic() fretboard.Note { return k.tonic }

// Minor reports whether k is a minor key.
func (k Key) Minor() bool { return k.mode == minorMode }

// String prints k, such as Eb or F#m; no key for the zero Key. What it prints
// of a key parses to the same key.
func (k Key) String() string { return k.StringIn(fretboard.English) }

// StringIn is [Key.String] with the tonic named as s has it: Hm in German. As in
// chords, minor is an m and never a small letter. What it prints of a key parses
// in s to the same key.
func (k Key) StringIn(s fretboard.Spelling) string {
	switch k.mode {
	case majorMode:
		return k.tonic.StringIn(s)
	case minorMode:
		return k.tonic.StringIn(s) + "m"
	}
	return "no key"
}

const maxSignature = 7

// signature counts the sharps of k, or its flats below zero: the place of the
// tonic in the circle of fifths from C, or from A for a minor key.
func (k Key) signature() int {
	fifths := [...]int{fretboard.C: 0, fretboard.D: 2, fretboard.E: 4, fretboard.F: -1, fretboard.G: 1, fretboard.A: 3, fretboard.B: 5}
	place := fifths[k.tonic.Letter] + 7*int(k.tonic.Accidental)
	if k.Minor() {
		place -= 3
	}
	return place
}

var (
	majorScale = root | second | majorThird | fourth | fifth | sixth | majorSeventh
	minorScale = root | second | minorThird | fourth | fifth | flatSixth | minorSeventh | majorSeventh
)

// scale returns the tones of k above its tonic. A minor key has both sevenths:
// the raised one leads to the tonic from its dominant chords.
func (k Key) scale() formula {
	switch k.mode {
	case majorMode:
		return majorScale
	case minorMode:
		return minorScale
	}
	return 0
}

// has reports whether n is a tone of k, spelled as k spells it.
func (k Key) has(n fretboard.Note) bool {
	own, ok := k.spell(n.Class())
	return ok && own == n
}

// spell names p as a tone of k, or returns false if it is none.
func (k Key) spell(p fretboard.PitchClass) (fretboard.Note, bool) {
	return Chord{formula: k.scale(), root: k.tonic}.Spell(p)
}

// plainer returns the key that sounds like k and has the smallest signature.
func (k Key) plainer() Key {
	for _, other := range allKeys {
		if other.mode == k.mode && other.tonic.Class() == k.tonic.Class() {
			return other
		}
	}
	return k
}

// allKeys lists the thirty keys by rising size of their signatures, sharps
// before flats and major before minor.
var allKeys = func() (keys [30]Key) {
	for i := range keys {
		signature := (i/2 + 1) / 2
		if i/2%2 == 0 {
			signature = -signature
		}
		keys[i] = keyWith(signature, majorMode+mode(i%2))
	}
	return keys
}()

// keyWith returns the key of a signature.
func keyWith(signature int, m mode) Key {
	for letter := fretboard.C; letter <= fretboard.B; letter++ {
		for sharps := int8(-1); sharps <= 1; sharps++ {
			k := Key{fretboard.Note{Letter: letter, Accidental: sharps}, m}
			if k.signature() == signature {
				return k
			}
		}
	}
	return Key{}
}
