package picking

import (
	"strings"

	"weft.example/fretboard"
)

// A pattern is a figure set in a meter: its slots with their times.
type pattern struct {
	steps  []step
	events []fretboard.StringNumber
	root   fretboard.StringNumber
	levels int // how many strings the figure plucks
}

// A step is a slot in time.
type step struct {
	slot   Slot
	length Ticks
	event  int // of a pluck, from 0
}

// setIn gives each slot of f its length: the value named, or an equal share of
// the bar that must be a plain value or one in triplets.
func (f Figure) setIn(m Meter) (pattern, error) {
	p := pattern{root: f.Root(), events: f.events(), steps: make([]step, 0, len(f.slots))}
	var used fretboard.StringSet
	for _, s := range p.events {
		used = used.With(s)
	}
	p.levels = used.Len()
	event := 0
	for i, bar := range f.Bars() {
		length, err := f.slotLength(i, len(bar), m)
		if err != nil {
			return pattern{}, err
		}
		for _, slot := range bar {
			p.steps = append(p.steps, step{slot, length, event})
			if slot.Kind == Pluck {
				event++
			}
		}
	}
	return p, nil
}

func (f Figure) slotLength(bar, slots int, m Meter) (Ticks, error) {
	if f.value == 0 {
		if v := evenShare(m.Bar(), slots); v != 0 {
			return Ticks(v), nil
		}
		return 0, f.undivided(bar, slots, m)
	}
	if length := Ticks(f.value) * Ticks(slots); len(f.bars) > 1 && length != m.Bar() {
		return 0, f.impossible(bar, "bar "+digits(bar+1)+" of the figure has "+digits(slots)+" slots of "+f.value.String()+
			", which do not make a bar of "+m.String(), "leave out the figure's bar lines or the slot's value")
	}
	return Ticks(f.value), nil
}

// evenShare returns the note value of one of n equal shares of a bar, or 0 if it
// has none or only a dotted one.
func evenShare(bar Ticks, n int) NoteValue {
	v := NoteValue(bar / Ticks(n))
	if Ticks(v)*Ticks(n) != bar || v.dotted() || !v.valid() {
		return 0
	}
	return v
}

// undivided names both ways out: more slots by letting notes ring, or a value.
func (f Figure) undivided(bar, slots int, m Meter) error {
	ways := "name the slot (1/8: ...)"
	if example := f.stretched(bar, slots, m); example != "" {
		ways = "let a note ring (" + example + ") or " + ways
	}
	return f.impossible(bar, digits(slots)+" slots do not divide a bar of "+m.String(), ways)
}

// stretched prints the bar with holds spread over its first notes until it
// divides m, or nothing if twice the slots are not enough.
func (f Figure) stretched(bar, slots int, m Meter) string {
	n := slots + 1
	for ; evenShare(m.Bar(), n) == 0; n++ {
		if n > 2*slots {
			return ""
		}
	}
	var longer []Slot
	for i, slot := range f.Bars()[bar] {
		longer = append(longer, slot)
		if i < n-slots {
			longer = append(longer, Slot{Kind: Hold})
		}
	}
	var b strings.Builder
	writeSlots(&b, longer)
	return front(b.String(), 60)
}

// impossible places an error on one bar of the figure.
func (f Figure) impossible(bar int, reason, mend string) error {
	from := 0
	if bar > 0 {
		from = f.bars[bar-1]
	}
	first, last := f.source.places[from], f.source.places[f.bars[bar]-1]
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "figure", Source: f.source.text,
		Offset: first.At, Length: last.At + len(last.Text) - first.At, Reason: reason, Mend: mend}}
}

// checkStrings refuses a figure that plucks a string the instrument lacks.
func (f Figure) checkStrings(strings fretboard.StringNumber) error {
	for i, slot := range f.slots {
		if slot.String > strings {
			return &fretboard.ImpossibleError{Place: f.slotPlace(i,
				"no string "+digits(slot.String)+"; the instrument has "+digits(strings),
				"use strings 1 to "+digits(strings))}
		}
	}
	if f.root > strings {
		return &fretboard.ImpossibleError{Place: f.slotPlace(0,
			"the root is on string "+digits(f.root)+"; the instrument has "+digits(strings), "name another root string")}
	}
	return nil
}

func (f Figure) slotPlace(i int, reason, mend string) fretboard.Place {
	at := f.source.places[i]
	return fretboard.Place{Notation: "figure", Source: f.source.text,
		Offset: at.At, Length: len(at.Text), Reason: reason, Mend: mend}
}
