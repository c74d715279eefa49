package fretboard_test

import (
	"errors"
	"math"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

func TestPitchNames(t *testing.T) {
	for _, c := range []struct {
		why, text string
		pitch     fretboard.Pitch
		printed   string
	}{
		{"MIDI key 60 is middle C", "C4", 60, "C4"},
		{"MIDI key 69, the pitch of ISO 16", "A4", 69, "A4"},
		{"the octave belongs to the letter: Cb4 is B3", "Cb4", 59, "Cb4"},
		{"and B#3 is C4", "B#3", 60, "B#3"},
		{"doubly", "Cbb4", 58, "Cbb4"},
		{"doubly", "B##3", 61, "B##3"},
		{"double sharp as a cross", "Fx4", 67, "F##4"},
		{"double flat in Unicode", "E𝄫3", 50, "Ebb3"},
		{"a small letter", "e2", 40, "E2"},
		{"a small b is the letter first and the flat after", "bb3", 58, "Bb3"},
		{"small b alone", "b3", 59, "B3"},
		{"the lowest key", "C-1", 0, "C-1"},
		{"the highest key", "G9", 127, "G9"},
		{"low octave, but back in range", "B#-1", 12, "B#-1"},
		{"high octave, but back in range", "Ab9", 128, ""},
		{"high octave, but back in range", "Abb9", 127, "Abb9"},
	} {
		n, err := fretboard.ParsePitchName(c.text)
		if c.printed == "" {
			if err == nil {
				t.Errorf("%s: %s is out of range and was read as %v", c.why, c.text, n)
			}
			continue
		}
		if err != nil || n.Pitch() != c.pitch || n.String() != c.printed {
			t.Errorf("%s: %s is %v, pitch %d, %v; want %s, %d", c.why, c.text, n, n.Pitch(), err, c.printed, c.pitch)
		}
	}
}

func TestTextsThatAreNotPitches(t *testing.T) {
	for _, c := range []struct {
		why, text  string
		impossible bool
	}{
		{"empty", "", false},
		{"no octave", "E", false},
		{"no note", "2", false},
		{"no letter", "H2", false},
		{"a sign before the octave", "E+2", false},
		{"minus zero", "E-0", false},
		{"a leading zero", "E02", false},
		{"an octave too low to name", "E-2", false},
		{"an octave too high to name", "E10", false},
		{"an octave beyond any integer", "E99999999999999999999", false},
		{"a space inside", "E 2", false},
		{"sharp and flat", "E#b2", false},
		{"five accidentals", "C#####4", false},
		{"invalid UTF-8", "E\xff2", false},
		{"digits of another script", "E٢", false},
		{"one below the lowest key", "Cb-1", true},
		{"one above the highest key", "G#9", true},
		{"one above, by letter", "A9", true},
	} {
		n, err := fretboard.ParsePitchName(c.text)
		var syntax *fretboard.SyntaxError
		var impossible *fretboard.ImpossibleError
		if errors.As(err, &syntax) == c.impossible || errors.As(err, &impossible) != c.impossible {
			t.Errorf("%s: %q gives %v and error %v", c.why, c.text, n, err)
		}
	}
}

// TestOpenStringFrequencies holds the strings of standard tuning against the
// rule 440 * 2^((m-69)/12) with the A4 of ISO 16:1975, worked to 1 mHz.
func TestOpenStringFrequencies(t *testing.T) {
	want := []float64{329.628, 246.942, 195.998, 146.832, 110, 82.407}
	for i, want := range want {
		p := fretboard.Standard().Open(fretboard.StringNumber(i + 1)).Pitch()
		if got := float64(p.Hertz()); math.Abs(got-want) > 0.0005 {
			t.Errorf("string %d sounds at %.4f Hz, want %.3f", i+1, got, want)
		}
	}
	if got := fretboard.Pitch(69).Hertz(); got != 440 {
		t.Errorf("A4 sounds at %v Hz; ISO 16:1975 says 440", got)
	}
}

// TestFrequenciesOfAllKeys compares with the rule worked by another route.
func TestFrequenciesOfAllKeys(t *testing.T) {
	for p := fretboard.MinPitch; p <= fretboard.MaxPitch; p++ {
		want := 440 * math.Exp2((float64(p)-69)/12)
		if got := float64(p.Hertz()); math.Abs(got-want) > 1e-15*want {
			t.Errorf("key %d: %.17g Hz, want %.17g", p, got, want)
		}
	}
}

func TestPitchProperties(t *testing.T) {
	p := properties()
	p.Property("printing a pitch name and parsing it are inverse", prop.ForAll(func(n fretboard.PitchName) bool {
		back, err := fretboard.ParsePitchName(n.String())
		return err == nil && back == n
	}, pitchNames()))
	p.Property("spelling a name's pitch with its note gives the name", prop.ForAll(func(n fretboard.PitchName) bool {
		return n.Pitch().Spell(n.Note) == n
	}, pitchNames()))
	p.Property("a pitch has the class of every note that spells it", prop.ForAll(func(n fretboard.PitchName) bool {
		return n.Pitch().Class() == n.Note.Class()
	}, pitchNames()))
	p.Property("an octave doubles the frequency exactly", prop.ForAll(func(p int) bool {
		return fretboard.Pitch(p).Up(12).Hertz() == 2*fretboard.Pitch(p).Hertz()
	}, gen.IntRange(-100, 200)))
	p.Property("the class of a pitch is 0 to 11, below the MIDI range too", prop.ForAll(func(p int) bool {
		c := fretboard.Pitch(p).Class()
		return c >= 0 && c < 12 && (p-int(c))%12 == 0
	}, gen.IntRange(-100, 200)))
	check(t, p)
}
