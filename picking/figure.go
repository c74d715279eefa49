package picking

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// MaxSlots is the most slots a figure may have.
const MaxSlots = 256

// A Figure is a picking pattern: slots of equal length in one bar or more,
// written as on its home chord, and the string of that chord's root. Make one
// with [ParseFigure] or [NewFigure]. The zero Figure has no slots and cannot
// be arranged.
type Figure struct {
	slots  []Slot
	bars   []int // the index after each bar's last slot
	value  NoteValue
	root   fretboard.StringNumber // as written, or 0
	source source
}

// A Slot is one step of a figure. The zero Slot is a rest.
type Slot struct {
	Kind   SlotKind
	String fretboard.StringNumber // of a Pluck
	Own    Stroke                 // of a Pluck: the teacher's own stroke, or Free
}

// A SlotKind says what happens in a slot.
type SlotKind uint8

// In a Rest all strings are damped, in a Hold the note before rings on, in a
// Pluck a string is struck.
const (
	Rest SlotKind = iota
	Hold
	Pluck
)

// source remembers where each slot stood in the text, so that what is found
// out later can be shown in place.
type source struct {
	text   string
	places []fretboard.Field
}

// NewFigure returns the figure of the given bars of slots. value is the slot's
// length, or 0 to divide each bar; root is the root string, or 0 for the
// thickest string used. Errors are those of [ParseFigure], located in the
// figure as [Figure.String] prints it.
func NewFigure(value NoteValue, root fretboard.StringNumber, bars ...[]Slot) (Figure, error) {
	f := Figure{value: value, root: root}
	for _, bar := range bars {
		f.slots = append(f.slots, bar...)
		f.bars = append(f.bars, len(f.slots))
	}
	return ParseFigure(f.String())
}

// Bars returns the slots, bar by bar. The caller must not change them.
func (f Figure) Bars() [][]Slot {
	bars, from := make([][]Slot, len(f.bars)), 0
	for i, to := range f.bars {
		bars[i], from = f.slots[from:to:to], to
	}
	return bars
}

// Value returns the slot's length, or 0 if the bar is to be divided.
func (f Figure) Value() NoteValue { return f.value }

// Root returns the string that carries the root on the home chord: the one
// named, or else the thickest that the figure uses.
func (f Figure) Root() fretboard.StringNumber {
	root := f.root
	if root == 0 {
		for _, slot := range f.slots {
			root = max(root, slot.String)
		}
	}
	return root
}

// events returns the strings plucked, in turn.
func (f Figure) events() []fretboard.StringNumber {
	events := make([]fretboard.StringNumber, 0, len(f.slots))
	for _, slot := range f.slots {
		if slot.Kind == Pluck {
			events = append(events, slot.String)
		}
	}
	return events
}

// Equal reports whether f and g are the same figure.
func (f Figure) Equal(g Figure) bool { return f.String() == g.String() }

// String prints f in canonical form; the text parses to an equal figure.
func (f Figure) String() string {
	var b strings.Builder
	if f.value != 0 {
		b.WriteString(f.value.String())
	}
	if f.root != 0 {
		if f.value != 0 {
			b.WriteByte(' ')
		}
		b.WriteString("root " + strconv.Itoa(int(f.root)))
	}
	if f.value != 0 || f.root != 0 {
		b.WriteString(": ")
	}
	for i, bar := range f.Bars() {
		if i > 0 {
			b.WriteString(" | ")
		}
		writeSlots(&b, bar)
	}
	return b.String()
}

func writeSlots(b *strings.Builder, slots []Slot) {
	for i, slot := range slots {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(slot.text())
	}
}

// text prints the slot: 5, 5d, 2u, - or a full stop.
func (slot Slot) text() string {
	switch slot.Kind {
	case Rest:
		return "."
	case Hold:
		return "-"
	}
	return strconv.Itoa(int(slot.String)) + slot.Own.letter()
}

// Figures are figures counted from 1.
type Figures []Figure

// String prints the figures with semicolons between them.
func (fs Figures) String() string {
	texts := make([]string, len(fs))
	for i, f := range fs {
		texts[i] = f.String()
	}
	return strings.Join(texts, "; ")
}
