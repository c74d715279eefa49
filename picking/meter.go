package picking

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// Ticks counts time: 480 to the quarter note.
type Ticks int

// TicksPerQuarter is the length of a quarter note, WholeNote of a whole one.
const (
	TicksPerQuarter Ticks = 480
	WholeNote       Ticks = 4 * TicksPerQuarter
)

// A Meter is a time signature: Count units of 1/Unit to the bar. The zero
// Meter means 4/4. Count is 1 to 32; Unit is 1, 2, 4, 8, 16 or 32.
type Meter struct{ Count, Unit int }

// Meters in common use.
var (
	FourFour    = Meter{4, 4}
	ThreeFour   = Meter{3, 4}
	TwoFour     = Meter{2, 4}
	SixEight    = Meter{6, 8}
	NineEight   = Meter{9, 8}
	TwelveEight = Meter{12, 8}
)

const maxMeterCount = 32

func (m Meter) normal() Meter {
	if m == (Meter{}) {
		return FourFour
	}
	return m
}

func (m Meter) valid() bool {
	return m.Count >= 1 && m.Count <= maxMeterCount && m.Unit >= 1 && m.Unit <= 32 && m.Unit&(m.Unit-1) == 0
}

// Bar returns the length of a bar.
func (m Meter) Bar() Ticks { return Ticks(m.normal().Count) * m.UnitTicks() }

// UnitTicks returns the length of the note that the lower figure names.
func (m Meter) UnitTicks() Ticks { return WholeNote / Ticks(m.normal().Unit) }

// Compound reports whether three units make a beat, as in 6/8, 9/8 and 12/8.
func (m Meter) Compound() bool {
	m = m.normal()
	return m.Unit >= 8 && m.Count > 3 && m.Count%3 == 0
}

// Beat returns the length of a beat: a unit, or three in a compound meter.
// Tempo counts these.
func (m Meter) Beat() Ticks {
	if m.Compound() {
		return 3 * m.UnitTicks()
	}
	return m.UnitTicks()
}

// String prints m, such as 6/8.
func (m Meter) String() string {
	m = m.normal()
	return digits(m.Count) + "/" + digits(m.Unit)
}

// ParseMeter reads a time signature, such as 6/8.
func ParseMeter(text string) (Meter, error) {
	if err := fretboard.CheckText("meter", text); err != nil {
		return Meter{}, err
	}
	count, unit, slash := strings.Cut(strings.TrimSpace(text), "/")
	var m Meter
	var errCount, errUnit error
	m.Count, errCount = strconv.Atoi(count)
	m.Unit, errUnit = strconv.Atoi(unit)
	if !slash || errCount != nil || errUnit != nil || !m.valid() {
		return Meter{}, &fretboard.SyntaxError{Place: meterPlace(text)}
	}
	return m, nil
}

func meterPlace(text string) fretboard.Place {
	return fretboard.Place{Notation: "meter", Source: text, Length: len(text), Reason: "not a time signature",
		Mend: "write a count from 1 to 32 over 1, 2, 4, 8, 16 or 32, such as 4/4 or 6/8"}
}

// A NoteValue is the length of a note as it is written: plain from 1/1 to
// 1/64, those dotted (3/8 is a dotted quarter) or those in triplets (1/12 is
// a triplet eighth). The zero NoteValue is none.
type NoteValue Ticks

// noteValues lists every note value, the longest first of each kind.
var noteValues = func() (values []NoteValue) {
	for plain := WholeNote; plain >= WholeNote/64; plain /= 2 {
		values = append(values, NoteValue(plain), NoteValue(plain*3/2), NoteValue(plain*2/3))
	}
	return values
}()

func (v NoteValue) valid() bool {
	for _, known := range noteValues {
		if v == known {
			return true
		}
	}
	return false
}

// dotted reports whether v is a plain value and half as much again.
func (v NoteValue) dotted() bool { return v%9 == 0 }

// String prints v as a fraction of a whole note, such as 1/8.
func (v NoteValue) String() string {
	a, b := int(v), int(WholeNote)
	for d := b; d > 1; d-- {
		if a%d == 0 && b%d == 0 {
			a, b = a/d, b/d
			break
		}
	}
	return digits(a) + "/" + digits(b)
}

// parseNoteValue reads a fraction of a whole note, or returns 0.
func parseNoteValue(text string) NoteValue {
	for _, v := range noteValues {
		if v.String() == text {
			return v
		}
	}
	return 0
}
