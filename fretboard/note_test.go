package fretboard_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

func TestNotes(t *testing.T) {
	for _, c := range []struct {
		why, text    string
		class        fretboard.PitchClass
		plain, chart string
	}{
		{"natural", "C", 0, "C", "C"},
		{"flat", "Eb", 3, "Eb", "E♭"},
		{"sharp", "F#", 6, "F#", "F♯"},
		{"the flat of the letter B", "Bb", 10, "Bb", "B♭"},
		{"below C, the class wraps", "Cb", 11, "Cb", "C♭"},
		{"above B, the class wraps", "B#", 0, "B#", "B♯"},
		{"double flat", "Ebb", 2, "Ebb", "E𝄫"},
		{"double sharp in numbers' style", "F##", 7, "F##", "F𝄪"},
		{"double sharp as a cross", "Fx", 7, "F##", "F𝄪"},
		{"double below C", "Cbb", 10, "Cbb", "C𝄫"},
		{"double above B", "Bx", 1, "B##", "B𝄪"},
		{"Unicode flat", "A♭", 8, "Ab", "A♭"},
		{"Unicode sharp", "C♯", 1, "C#", "C♯"},
		{"Unicode double flat", "D𝄫", 0, "Dbb", "D𝄫"},
		{"Unicode double sharp", "G𝄪", 9, "G##", "G𝄪"},
		{"a natural sign", "G♮", 7, "G", "G"},
		{"triple, single sign first", "F###", 8, "F###", "F♯𝄪"},
		{"triple flat", "B♭𝄫", 8, "Bbbb", "B♭𝄫"},
		{"four accidentals are the most", "D####", 6, "D####", "D𝄪𝄪"},
		{"four flats", "Dbbbb", 10, "Dbbbb", "D𝄫𝄫"},
	} {
		n, err := fretboard.ParseNote(c.text)
		if err != nil {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		if n.Class() != c.class || n.String() != c.plain || n.Chart() != c.chart {
			t.Errorf("%s: %s is %d, %s, %s; want %d, %s, %s", c.why, c.text, n.Class(), n, n.Chart(), c.class, c.plain, c.chart)
		}
	}
}

func TestTextsThatAreNotNotes(t *testing.T) {
	for _, c := range []struct {
		why, text string
		offset    int
	}{
		{"empty", "", 0},
		{"a letter too far", "H", 0},
		{"small letters name no note, since b would be both", "c", 0},
		{"an accidental alone", "#", 0},
		{"something behind", "C#m", 2},
		{"a space behind", "C ", 1},
		{"both directions: C# with the flat of something else", "C#b", 2},
		{"both directions", "Eb#", 2},
		{"a natural sign stands alone", "E♮b", 4},
		{"a natural sign takes nothing back", "Eb♮", 2},
		{"more than four accidentals", "C#####", 0},
		{"more than four accidentals as doubles", "C𝄪𝄪♯", 0},
		{"so many accidentals that 8 bits would wrap", "C" + strings.Repeat("#", 256), 0},
		{"invalid UTF-8", "C\xff", 1},
		{"half a sign", "C\xe2\x99", 1},
	} {
		n, err := fretboard.ParseNote(c.text)
		var syntax *fretboard.SyntaxError
		if !errors.As(err, &syntax) {
			t.Errorf("%s: %q gives %v, %v", c.why, c.text, n, err)
			continue
		}
		if syntax.Offset != c.offset || syntax.Offset+syntax.Length != len(c.text) || syntax.Source != c.text {
			t.Errorf("%s: the fault of %q lies at %d+%d, want %d to the end", c.why, c.text, syntax.Offset, syntax.Length, c.offset)
		}
	}
}

func TestAScanLeavesTheRestToItsCaller(t *testing.T) {
	for _, c := range []struct {
		text string
		note fretboard.Note
		size int
	}{
		{"Bb7", fretboard.Note{Letter: fretboard.B, Accidental: -1}, 2},
		{"C#b5", fretboard.Note{Letter: fretboard.C, Accidental: 1}, 2},   // the flat belongs to the fifth
		{"Bb#11", fretboard.Note{Letter: fretboard.B, Accidental: -1}, 2}, // the sharp to the eleventh
		{"A♮♭9", fretboard.Note{Letter: fretboard.A}, 4},
		{"Fmaj7", fretboard.Note{Letter: fretboard.F}, 1},
		{"N.C.", fretboard.Note{}, 0},
		{"", fretboard.Note{}, 0},
	} {
		if n, size := fretboard.ScanNote(c.text); n != c.note || size != c.size {
			t.Errorf("%q: %v, %d bytes; want %v, %d", c.text, n, size, c.note, c.size)
		}
	}
}

func TestIntervals(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		want           fretboard.Interval
	}{
		{"unison", "C", "C", fretboard.Interval{}},
		{"minor third", "A", "C", fretboard.Interval{Letters: 2, Semitones: 3}},
		{"augmented second", "A", "B#", fretboard.Interval{Letters: 1, Semitones: 3}},
		{"major third over B", "B", "D#", fretboard.Interval{Letters: 2, Semitones: 4}},
		{"perfect fifth", "Eb", "Bb", fretboard.Interval{Letters: 4, Semitones: 7}},
		{"diminished fifth", "F#", "C", fretboard.Interval{Letters: 4, Semitones: 6}},
		{"diminished seventh", "C", "Bbb", fretboard.Interval{Letters: 6, Semitones: 9}},
		{"sharp ninth, an octave down", "E", "F##", fretboard.Interval{Letters: 1, Semitones: 3}},
		{"major seventh", "Db", "C", fretboard.Interval{Letters: 6, Semitones: 11}},
		{"B to C flat is a second of no width", "B", "Cb", fretboard.Interval{Letters: 1}},
		{"down a chromatic semitone", "C#", "C", fretboard.Interval{Semitones: -1}},
		{"past the octave", "Db", "C##", fretboard.Interval{Letters: 6, Semitones: 13}},
	} {
		from, to := parsed(t, fretboard.ParseNote, c.from), parsed(t, fretboard.ParseNote, c.to)
		if got := from.IntervalTo(to); got != c.want {
			t.Errorf("%s: from %s to %s is %v, want %v", c.name, from, to, got, c.want)
		}
		if got := from.Up(c.want); got != to {
			t.Errorf("%s: up from %s is %s, want %s", c.name, from, got, to)
		}
	}
}

func TestNoteProperties(t *testing.T) {
	p := properties()
	p.Property("printing a note and parsing it are inverse", prop.ForAll(func(n fretboard.Note) bool {
		plain, err := fretboard.ParseNote(n.String())
		chart, err2 := fretboard.ParseNote(n.Chart())
		return err == nil && err2 == nil && plain == n && chart == n
	}, notes()))
	p.Property("going up by the interval to a note arrives at it", prop.ForAll(func(n, m fretboard.Note) bool {
		return n.Up(n.IntervalTo(m)) == m
	}, notes(), notes()))
	p.Property("the interval back from where an interval leads is the same one", prop.ForAll(func(n, m, from fretboard.Note) bool {
		i := n.IntervalTo(m)
		return from.IntervalTo(from.Up(i)) == i
	}, notes(), notes(), notes()))
	p.Property("an interval moves the class by its semitones", prop.ForAll(func(n, m fretboard.Note) bool {
		return (int(m.Class())-int(n.Class())-n.IntervalTo(m).Semitones)%12 == 0
	}, notes(), notes()))
	p.Property("an interval and its complement make an octave", prop.ForAll(func(n, m fretboard.Note) bool {
		there, back := n.IntervalTo(m), m.IntervalTo(n)
		if n.Letter == m.Letter {
			return there.Semitones == -back.Semitones
		}
		return there.Letters+back.Letters == 7 && there.Semitones+back.Semitones == 12
	}, notes(), notes()))
	p.Property("an octave up, by letters and semitones, is the same note", prop.ForAll(func(n fretboard.Note) bool {
		up := n.Up(fretboard.Interval{Letters: 7, Semitones: 12})
		return up == n && n.Up(fretboard.Interval{Letters: -7, Semitones: -12}) == n
	}, notes()))
	check(t, p)
}

// TestNotesMadeByHandPrint covers what no parser returns.
func TestNotesMadeByHandPrint(t *testing.T) {
	n := fretboard.Note{Letter: fretboard.C, Accidental: -128}
	if got, want := n.String(), "C"+strings.Repeat("b", 128); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
