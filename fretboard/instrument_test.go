package fretboard_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

// TestReferenceFrets holds frets against the reference examples of MusicXML
// 4.0 that pair a string and a fret with a sounding pitch.
func TestReferenceFrets(t *testing.T) {
	for _, c := range []struct {
		s     fretboard.StringNumber
		f     fretboard.Fret
		pitch string
	}{{3, 5, "C4"}, {4, 5, "G3"}, {5, 3, "C3"}, {1, 14, "F#5"}} {
		want := parsed(t, fretboard.ParsePitchName, c.pitch).Pitch()
		if got := (fretboard.Instrument{}).Pitch(c.s, c.f); got != want {
			t.Errorf("string %d fret %d sounds %d, want %s, %d", c.s, c.f, got, c.pitch, want)
		}
	}
}

func TestNormalFillsInWhatZeroMeans(t *testing.T) {
	tuning := func(name string) fretboard.Tuning { return parsed(t, fretboard.ParseTuning, name) }
	for _, c := range []struct {
		why      string
		in, want fretboard.Instrument
	}{
		{"the zero instrument", fretboard.Instrument{},
			fretboard.Instrument{Tuning: fretboard.Standard(), Frets: 24, Scale: 645.16, Spacing: 10.8}},
		{"a tuning brings its usual scale", fretboard.Instrument{Tuning: tuning("ukulele")},
			fretboard.Instrument{Tuning: tuning("ukulele"), Frets: 24, Scale: 345, Spacing: 10.8}},
		{"a tuning without a name is a guitar's", fretboard.Instrument{Tuning: tuning("C2 G2 D3 A3")},
			fretboard.Instrument{Tuning: tuning("C2 G2 D3 A3"), Frets: 24, Scale: 645.16, Spacing: 10.8}},
		{"what is given stays", fretboard.Instrument{Tuning: tuning("baritone"), Frets: 22, Capo: 3, Scale: 700, Spacing: 11, Hand: fretboard.LeftTurned},
			fretboard.Instrument{Tuning: tuning("baritone"), Frets: 22, Capo: 3, Scale: 700, Spacing: 11, Hand: fretboard.LeftTurned}},
		{"the most frets", fretboard.Instrument{Frets: 36, Capo: 35},
			fretboard.Instrument{Tuning: fretboard.Standard(), Frets: 36, Capo: 35, Scale: 645.16, Spacing: 10.8}},
	} {
		got, err := c.in.Normal()
		if err != nil {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		if diff := cmp.Diff(c.want, got, cmp.Comparer(func(a, b fretboard.Tuning) bool { return a == b })); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.why, diff)
		}
		if again, err := got.Normal(); err != nil || again != got {
			t.Errorf("%s: made normal twice it is %+v, %v", c.why, again, err)
		}
	}
}

func TestInstrumentsThatCannotBe(t *testing.T) {
	tuning := func(text string) fretboard.Tuning { return parsed(t, fretboard.ParseTuning, text) }
	nan, inf := fretboard.Millimetres(math.NaN()), fretboard.Millimetres(math.Inf(1))
	for _, c := range []struct {
		why            string
		g              fretboard.Instrument
		notation, text string
	}{
		{"fewer than no frets", fretboard.Instrument{Frets: -1}, "frets", "-1"},
		{"too many frets", fretboard.Instrument{Frets: 37}, "frets", "37"},
		{"a capo off the neck", fretboard.Instrument{Capo: -1}, "capo", "-1"},
		{"a capo on the last fret", fretboard.Instrument{Capo: 24}, "capo", "24"},
		{"a capo past it", fretboard.Instrument{Frets: 12, Capo: 13}, "capo", "13"},
		{"a capo on a neck of one fret", fretboard.Instrument{Frets: 1, Capo: 1}, "capo", "1"},
		{"a negative scale", fretboard.Instrument{Scale: -1}, "scale length", "-1"},
		{"a scale without a number", fretboard.Instrument{Scale: nan}, "scale length", "NaN"},
		{"an endless scale", fretboard.Instrument{Scale: inf}, "scale length", "+Inf"},
		{"a scale in other units", fretboard.Instrument{Scale: 5000}, "scale length", "5000"},
		{"a negative spacing", fretboard.Instrument{Spacing: -10.8}, "string spacing", "-10.8"},
		{"a spacing without a number", fretboard.Instrument{Spacing: nan}, "string spacing", "NaN"},
		{"an endless spacing", fretboard.Instrument{Spacing: inf}, "string spacing", "+Inf"},
		{"a third hand", fretboard.Instrument{Hand: 3}, "hand", "3"},
		{"a string too high for its frets", fretboard.Instrument{Tuning: tuning("E2 G#7"), Frets: 24}, "tuning", "E2 G#7"},
	} {
		_, err := c.g.Normal()
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		if impossible.Notation != c.notation || impossible.Text() != c.text || impossible.Reason == "" {
			t.Errorf("%s: %v", c.why, err)
		}
	}
}

func TestAHighStringMayHaveFewFrets(t *testing.T) {
	g := fretboard.Instrument{Tuning: parsed(t, fretboard.ParseTuning, "E2 G9"), Frets: 1}
	_, err := g.Normal()
	if err == nil || !strings.Contains(err.Error(), "string 1") {
		t.Errorf("G9 with a fret: %v", err)
	}
	g.Tuning = parsed(t, fretboard.ParseTuning, "E2 F#9")
	if _, err := g.Normal(); err != nil {
		t.Errorf("F#9 with a fret: %v", err)
	}
}

func TestACapoRaisesEveryString(t *testing.T) {
	open, capo := fretboard.Instrument{}, fretboard.Instrument{Capo: 3}
	if open.Reach() != 24 || capo.Reach() != 21 || (fretboard.Instrument{Frets: 20, Capo: 2}).Reach() != 18 {
		t.Errorf("reaches %d and %d", open.Reach(), capo.Reach())
	}
	p := properties()
	p.Property("a fret above the capo sounds as that fret and the capo's from the nut", prop.ForAll(func(s, capo, f int) bool {
		g := fretboard.Instrument{Capo: fretboard.Fret(capo)}
		want := open.Pitch(fretboard.StringNumber(s), fretboard.Fret(capo+f))
		return g.Pitch(fretboard.StringNumber(s), fretboard.Fret(f)) == want
	}, gen.IntRange(1, 6), gen.IntRange(0, 12), gen.IntRange(0, 12)))
	check(t, p)
}
