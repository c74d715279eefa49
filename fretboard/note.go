package fretboard

import "strings"

// A Letter names a note without its accidental.
type Letter int8

// The seven letters, in the order of the scale from C.
const (
	C Letter = iota
	D
	E
	F
	G
	A
	B
)

const (
	letterNames   = "CDEFGAB"
	lettersInAll  = 7
	maxAccidental = 4
	semitones     = 12
)

// naturals holds the semitones from C up to each letter.
var naturals = [lettersInAll]int{0, 2, 4, 5, 7, 9, 11}

// A Note is a spelled pitch class: a letter and its accidental. The zero Note
// is C natural. Notes compare with ==, so C# and Db differ; compare their
// [Note.Class] to ask whether they sound alike.
type Note struct {
	Letter Letter
	// Accidental counts semitones: 1 is sharp, -1 flat. Range -4 to 4, which
	// holds every tone of a chord on a root with a double accidental.
	Accidental int8
}

// A PitchClass is a pitch without its octave: 0 to 11, semitones above C.
type PitchClass int8

// Class returns the pitch class that n names.
func (n Note) Class() PitchClass {
	return classOf(naturals[n.Letter] + int(n.Accidental))
}

func classOf(semitone int) PitchClass {
	class := semitone % semitones
	if class < 0 {
		class += semitones
	}
	return PitchClass(class)
}

// An Interval leads from one spelled note to another: so many letters and so
// many semitones up. A minor third is {2, 3}, an augmented second {1, 3}. The
// zero Interval is the unison.
type Interval struct{ Letters, Semitones int }

// Up returns the note that lies i above n, spelled by the interval's letters.
// An interval far from its letters' natural width gives more accidentals than
// [ParseNote] reads.
func (n Note) Up(i Interval) Note {
	steps := int(n.Letter) + i.Letters
	octave := floorDiv(steps, lettersInAll)
	letter := Letter(steps - octave*lettersInAll)
	above := naturals[letter] + octave*semitones - naturals[n.Letter]
	return Note{letter, n.Accidental + int8(i.Semitones-above)}
}

// IntervalTo returns the interval from n up to the next m: less than an octave,
// but for accidentals that reach past it.
func (n Note) IntervalTo(m Note) Interval {
	letters := int(m.Letter-n.Letter+lettersInAll) % lettersInAll
	sum := naturals[m.Letter] - naturals[n.Letter]
	if m.Letter < n.Letter {
		sum += semitones
	}
	return Interval{letters, sum + int(m.Accidental-n.Accidental)}
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((b - 1 - a) / b)
	}
	return a / b
}

// String prints n in plain text: C, Db, F##.
func (n Note) String() string {
	return letterNames[n.Letter:n.Letter+1] + accidental(n.Accidental, "#", "b")
}

// Chart prints n with the accidentals of printed music: C, D♭, F𝄪. A triple
// one reads single before double, as engravers set it.
func (n Note) Chart() string {
	return letterNames[n.Letter:n.Letter+1] + chartAccidental(n.Accidental)
}

func chartAccidental(a int8) string {
	return accidental(a%2, "♯", "♭") + accidental(a/2, "𝄪", "𝄫")
}

func accidental(a int8, sharp, flat string) string {
	if a < 0 {
		return strings.Repeat(flat, -int(a))
	}
	return strings.Repeat(sharp, int(a))
}

// accidentals lists the signs a note may carry; none begins another.
var accidentals = []struct {
	sign  string
	shift int8
}{{"#", 1}, {"b", -1}, {"♯", 1}, {"♭", -1}, {"𝄪", 2}, {"x", 2}, {"𝄫", -2}, {"♮", 0}}

// ScanNote reads a note from the front of text and returns it with the bytes
// it took: none if text begins with no capital letter from A to G, or with
// more than four accidentals.
func ScanNote(text string) (n Note, size int) {
	if text == "" {
		return Note{}, 0
	}
	letter := strings.IndexByte(letterNames, text[0])
	if letter < 0 {
		return Note{}, 0
	}
	shift, signs := ScanAccidental(text[1:])
	if shift < -maxAccidental || shift > maxAccidental {
		return Note{}, 0
	}
	return Note{Letter(letter), int8(shift)}, 1 + signs
}

// ScanAccidental reads the accidentals at the front of text, plain or Unicode,
// and returns their sum in semitones with the bytes they took. They are all
// sharps, all flats or one natural: the flat of C#b5 belongs to the fifth.
func ScanAccidental(text string) (shift, size int) {
	for {
		step, took := nextAccidental(text[size:])
		if took == 0 || size > 0 && step*shift <= 0 {
			return shift, size
		}
		shift, size = shift+step, size+took
	}
}

func nextAccidental(text string) (shift, size int) {
	for _, a := range accidentals {
		if strings.HasPrefix(text, a.sign) {
			return int(a.shift), len(a.sign)
		}
	}
	return 0, 0
}

// ParseNote reads a note: a capital letter from A to G and at most four
// accidentals, all sharps or all flats, plain (b, #, x) or Unicode.
func ParseNote(text string) (Note, error) {
	n, size := ScanNote(text)
	if size == 0 || size != len(text) {
		return Note{}, &SyntaxError{Place{Notation: "note", Source: text, Offset: size, Length: len(text) - size,
			Reason: "not a note", Mend: "write a letter from A to G and its accidentals, such as Eb or F#"}}
	}
	return n, nil
}
