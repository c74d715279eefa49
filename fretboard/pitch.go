package fretboard

import (
	"math"
	"strconv"
)

// A Pitch is a sounding height as a MIDI key number: 69 is A4, 60 is C4, one
// step a semitone. Range 0 to 127.
type Pitch int

// The pitches a MIDI key number can name.
const (
	MinPitch Pitch = 0
	MaxPitch Pitch = 127
)

// Hertz is a frequency.
type Hertz float64

// semitoneRatios holds 2^(n/12). A table and a power of two give the same bits
// on every processor, which math.Pow does not promise.
var semitoneRatios = [semitones]float64{
	1, 1.0594630943592953, 1.122462048309373, 1.189207115002721,
	1.2599210498948732, 1.3348398541700344, 1.4142135623730951, 1.4983070768766815,
	1.5874010519681996, 1.681792830507429, 1.7817974362806785, 1.887748625363387,
}

// twoToThe returns 2^(n/12).
func twoToThe(n int) float64 {
	octave := floorDiv(n, semitones)
	return math.Ldexp(semitoneRatios[n-octave*semitones], octave)
}

// Hertz returns the frequency of p in equal temperament with A4 = 440 Hz
// (ISO 16): 440 * 2^((p-69)/12).
func (p Pitch) Hertz() Hertz { return Hertz(440 * twoToThe(int(p)-69)) }

// Class returns the pitch class of p.
func (p Pitch) Class() PitchClass { return classOf(int(p)) }

// Up returns the pitch n semitones above p.
func (p Pitch) Up(n Fret) Pitch { return p + Pitch(n) }

// Spell names p with the note n, which must be of p's class: pitch 59 spelled
// with C flat is Cb4.
func (p Pitch) Spell(n Note) PitchName {
	natural := int(p) - int(n.Accidental)
	return PitchName{n, int8(floorDiv(natural, semitones) - 1)}
}

// A PitchName is a pitch spelled in scientific pitch notation, such as Eb2.
// The octave number belongs to the letter, so Cb4 sounds as B3 and B#3 as C4.
type PitchName struct {
	Note   Note
	Octave int8
}

// Pitch returns the pitch that n sounds; it may lie outside the MIDI range.
func (n PitchName) Pitch() Pitch {
	return Pitch((int(n.Octave)+1)*semitones + naturals[n.Note.Letter] + int(n.Note.Accidental))
}

// String prints n, such as A2 or Cb4.
func (n PitchName) String() string { return n.Note.String() + strconv.Itoa(int(n.Octave)) }

// ParsePitchName reads a note and its octave, -1 to 9, such as Eb2. The letter
// may be small. A pitch outside the MIDI range is an [ImpossibleError].
func ParsePitchName(text string) (PitchName, error) {
	wrong := func(reason string) Place {
		return Place{Notation: "pitch", Source: text, Length: len(text), Reason: reason,
			Mend: "write a note and its octave, such as E2 or Bb3; C4 is middle C"}
	}
	n, size := ScanNote(upperFirst(text))
	if size == 0 {
		return PitchName{}, &SyntaxError{wrong("not a note with an octave")}
	}
	octave, err := strconv.Atoi(text[size:])
	if err != nil || octave < -1 || octave > 9 || strconv.Itoa(octave) != text[size:] {
		return PitchName{}, &SyntaxError{wrong("no octave from -1 to 9 after the note")}
	}
	name := PitchName{n, int8(octave)}
	if p := name.Pitch(); p < MinPitch || p > MaxPitch {
		return PitchName{}, &ImpossibleError{wrong("outside the MIDI range of pitches, C-1 to G9")}
	}
	return name, nil
}

// upperFirst raises a small first letter: in a pitch name no other reading of
// it exists, since the octave follows.
func upperFirst(text string) string {
	if text != "" && 'a' <= text[0] && text[0] <= 'g' {
		return string(text[0]-'a'+'A') + text[1:]
	}
	return text
}
