package voicing

import (
	"strings"

	"weft.example/fretboard"
)

// A Chord is what a chord symbol means: a root, the tones above it and, in a
// slash chord, the bass. Only content counts, so C+7 and C7#5 are the same
// chord; C7b5 and C7#11, which spell one tone differently, are two. Chords
// compare with ==. The zero Chord is N.C., no chord.
type Chord struct {
	formula formula
	root    fretboard.Note
	bass    fretboard.Note // the zero Note unless slash
	slash   bool
}

// A Tone is one member of a chord.
type Tone struct {
	Degree   int                // 1 to 7, 9, 11 or 13
	Interval fretboard.Interval // above the root; past the octave from the 9th on
	Note     fretboard.Note
	Need     Need
}

// A Need says whether a voicing must sound a tone of its chord.
type Need uint8

// Common practice decides the needs. The root is Essential in every chord: the
// picking figure starts on it. So are the third or what is suspended in its
// place, an altered fifth, the sixth, the seventh and all that is added or
// altered by name, since these tell one chord from another. These are Optional:
//   - a perfect fifth beside a third, or beside a suspended tone and a seventh:
//     it is the root's strongest overtone and tells no chord from another. It
//     stays Essential in C5, Csus2 and Csus4, which are little else;
//   - the 11th in a 13 chord: it grates against the third, and players omit it.
//     The formula has it, as the handbooks do;
//   - the 9th in a 13 chord and in a minor 11 chord, where the highest number
//     carries the name;
//   - the major third in an 11 chord, against which the 11th grates. There the
//     9th is Essential, or nothing would tell C11 from C7sus4.
//
// In an altered chord (C7alt) b5 and #5, and b9 and #9, are Either.
const (
	Essential Need = iota // must sound
	Optional              // may be left out
	Either                // may be left out if the other tone of its degree sounds
)

// Silent reports whether c is N.C.
func (c Chord) Silent() bool { return c.formula == 0 }

// Root returns the root. N.C. has none and returns the zero Note.
func (c Chord) Root() fretboard.Note { return c.root }

// Bass returns the note that c wants lowest: the one after the slash, or else
// the root.
func (c Chord) Bass() (n fretboard.Note, slash bool) {
	if c.slash {
		return c.bass, true
	}
	return c.root, false
}

// Tones lists the tones of c, the root first, then by rising degree: at most
// one tone a degree, but for b5 with #5 and b9 with #9. A slash bass that is
// no member is not among them. It takes one allocation.
func (c Chord) Tones() []Tone {
	tones := make([]Tone, 0, c.formula.size())
	optional, either := c.formula.optional(), c.formula.either()
	for one, m := range c.formula.all() {
		tone := Tone{m.degree, m.interval(), c.root.Up(m.interval()), Essential}
		switch {
		case optional.has(one):
			tone.Need = Optional
		case either.has(one):
			tone.Need = Either
		}
		tones = append(tones, tone)
	}
	return tones
}

// Classes returns the pitch classes of c's tones and of its slash bass.
func (c Chord) Classes() ClassSet {
	set := c.formula.classes().up(c.root.Class())
	if c.slash {
		set = set.With(c.bass.Class())
	}
	return set
}

// Has reports whether p is a tone of c or its slash bass. It does not allocate.
func (c Chord) Has(p fretboard.PitchClass) bool { return c.Classes().Has(p) }

// Spell returns the note by which c names pitch class p, or false if p is
// neither a tone of c nor its slash bass. A tone's name goes before the bass's.
func (c Chord) Spell(p fretboard.PitchClass) (fretboard.Note, bool) {
	for _, m := range c.formula.all() {
		if n := c.root.Up(m.interval()); n.Class() == p {
			return n, true
		}
	}
	if c.slash && c.bass.Class() == p {
		return c.bass, true
	}
	return fretboard.Note{}, false
}

// Transpose returns c moved up by i, root and bass, each spelled by the letters
// of i; a root or bass that would then need more than two accidentals takes
// the nearest letter that needs no more. N.C. stays N.C.
func (c Chord) Transpose(i fretboard.Interval) Chord {
	if c.Silent() {
		return c
	}
	c.root = transpose(c.root, i)
	if c.slash {
		c.bass = transpose(c.bass, i)
	}
	return c
}

// transpose moves n as Note.Up does, within the accidentals of a root.
func transpose(n fretboard.Note, i fretboard.Interval) fretboard.Note {
	class := modulo(int(n.Class())+i.Semitones%12, 12)
	letter := modulo(int(n.Letter)+i.Letters%7, 7)
	for {
		natural := fretboard.Note{Letter: fretboard.Letter(letter)}
		shift := modulo(class-int(natural.Class())+6, 12) - 6
		switch {
		case shift > maxRootAccidental:
			letter = modulo(letter+1, 7)
		case shift < -maxRootAccidental:
			letter = modulo(letter-1, 7)
		default:
			natural.Accidental = int8(shift)
			return natural
		}
	}
}

func modulo(a, n int) int { return ((a % n) + n) % n }

// Formula prints the degrees of c's tones, such as 1 b3 5 b7; empty for N.C.
func (c Chord) Formula() string {
	var names []string
	for _, m := range c.formula.all() {
		names = append(names, m.name)
	}
	return strings.Join(names, " ")
}

const silence = "N.C."

// String prints c in plain text, such as F#m7b5, C(#11), Eb6/9/G or N.C. The
// text holds no space or comma and parses to the same chord.
func (c Chord) String() string { return c.StringIn(fretboard.English) }

// Chart prints c with the accidentals of printed music: F♯m7♭5. The text
// parses to the same chord.
func (c Chord) Chart() string { return c.ChartIn(fretboard.English) }

// StringIn is [Chord.String] with the notes named as s has them: Hm7b5 in
// German. Minor is an m and never a small root, which looks the same in some
// letters. The text parses in s to the same chord.
func (c Chord) StringIn(s fretboard.Spelling) string {
	if c.Silent() {
		return silence
	}
	text := c.root.StringIn(s) + c.formula.suffix()
	if c.slash {
		text += "/" + c.bass.StringIn(s)
	}
	return text
}

// ChartIn is [Chord.StringIn] with the accidentals of printed music: Hm7♭5.
func (c Chord) ChartIn(s fretboard.Spelling) string {
	if c.Silent() {
		return silence
	}
	text := c.root.ChartIn(s) + chartSigns.Replace(c.formula.suffix())
	if c.slash {
		text += "/" + c.bass.ChartIn(s)
	}
	return text
}

// chartSigns turns the accidentals of a suffix; no word of one has a b.
var chartSigns = strings.NewReplacer("b", "♭", "#", "♯")
