package voicing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestStartStrings holds the start strings of the open shapes (common
// practice: a picking pattern begins on the string of the root) and of shapes
// whose lowest string is not the root's.
func TestStartStrings(t *testing.T) {
	for _, c := range []struct {
		tuning, shapes string
		start          fretboard.StringNumber
		reason         voicing.Reason
	}{
		{"standard", "E=022100 Em=022000 E7=020100 G=320003 F=133211", 6, voicing.RootTone},
		{"standard", "A=x02220 Am=x02210 A7=x02020 C=x32010 C7=x32310 Cmaj7=x32000 B7=x21202", 5, voicing.RootTone},
		{"standard", "D=xx0232 Dm=xx0231 D7=xx0212 Dsus4=xx0233 F=xx3211", 4, voicing.RootTone},
		{"standard", "C=332010 Am=002210", 5, voicing.RootTone},
		{"standard", "D=200232", 4, voicing.RootTone},
		{"standard", "G/B=x20003", 5, voicing.SlashBass},
		{"standard", "C/G=332010 C/E=032010 D/F#=200232 D/F#=2x0232 Am/F#=2x2210", 6, voicing.SlashBass},
		{"standard", "Am/G=3x2210", 6, voicing.SlashBass},
		{"standard", "G/B=3x003x G/B=3xx03x", 6, voicing.RootTone},
		{"standard", "C=xxx05x Em7/A=xxx03x", 3, voicing.Lowest},
		{"standard", "N.C.=x32010", 5, voicing.Lowest},
		{"ukulele", "C=0003", 3, voicing.RootTone},
		{"ukulele", "F=2010", 2, voicing.RootTone},
		{"ukulele", "Am=2000", 4, voicing.RootTone},
		{"mandolin", "D=2002", 3, voicing.RootTone},
	} {
		for _, entry := range strings.Fields(c.shapes) {
			chord, shape, _ := strings.Cut(entry, "=")
			v := mustVoicing(t, tuned(t, c.tuning), chord, shape)
			if got := v.Start(); got != (voicing.Start{String: c.start, Reason: c.reason}) {
				t.Errorf("%s, %s starts on %d (%s), want %d (%s)", c.tuning, entry, got.String, got.Reason, c.start, c.reason)
			}
		}
	}
}

func TestVoicingParts(t *testing.T) {
	v := mustVoicing(t, fretboard.Instrument{Capo: 2}, "C", "332010")
	if v.Bass() != 6 || v.Pitch(6) != 45 || v.Pitch(1) != 66 {
		t.Errorf("bass on %d, pitches %d and %d; want 6, A2 and F#4", v.Bass(), v.Pitch(6), v.Pitch(1))
	}
	if root, sounds := v.Root(); root != 5 || !sounds {
		t.Errorf("root on %d, %v", root, sounds)
	}
	if v.Chord() != mustChord("C") || v.Shape() != mustShape(t, "332010") || v.Sounding() != v.Shape().Sounding() {
		t.Errorf("%v, %v, %b", v.Chord(), v.Shape(), v.Sounding())
	}
	if g := v.Instrument(); g.Frets != 24 || g.Scale == 0 || g.Tuning != fretboard.Standard() {
		t.Errorf("the instrument is not filled in: %v", g)
	}
	if root, sounds := mustVoicing(t, fretboard.Instrument{}, "C", "xxx05x").Root(); root != 0 || sounds {
		t.Errorf("a root that does not sound is on %d, %v", root, sounds)
	}
}

func TestReasonNames(t *testing.T) {
	got := fmt.Sprint(voicing.SlashBass, ", ", voicing.RootTone, ", ", voicing.Lowest, ", ", voicing.Reason(9))
	if want := "slash bass, root, bass, 9"; got != want {
		t.Errorf("%s; want %s", got, want)
	}
}

func TestWhatCannotBeHeld(t *testing.T) {
	for _, c := range []struct {
		g                   fretboard.Instrument
		shape, text, reason string
	}{
		{fretboard.Instrument{}, "0232", "0232", "4 strings in the shape, 6 on the instrument"},
		{fretboard.Instrument{}, "xxxxxx", "xxxxxx", "every string is muted"},
		{fretboard.Instrument{Frets: 12, Capo: 3}, "x-x-10-9-8-7", "x-x-10-9-8-7", "fret 10 on string 4; the last fret from the capo is 9"},
	} {
		_, err := voicing.New(c.g, mustChord("C"), mustShape(t, c.shape))
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || impossible.Reason != c.reason || impossible.Text() != c.text {
			t.Errorf("%s: %v; want %q: %s", c.shape, err, c.text, c.reason)
		}
	}
	if _, err := voicing.New(fretboard.Instrument{Capo: 24}, mustChord("C"), mustShape(t, "x32010")); err == nil {
		t.Error("a capo on the last fret is no error")
	}
	last, err := voicing.New(fretboard.Instrument{Frets: 12, Capo: 3}, mustChord("C"), mustShape(t, "x-x-9-9-8-7"))
	if err != nil {
		t.Errorf("the last fret can be held, but %v, %v", last.Shape(), err)
	}
}

func TestVoicingProperties(t *testing.T) {
	p := seeded(500)
	p.Property("the bass sounds lowest; a root or slash bass that sounds is the start string's", prop.ForAll(
		func(chord voicing.Chord, sh voicing.Shape) bool {
			v, ok := onTwelveStrings(chord, sh)
			if !ok {
				return true
			}
			for s := range v.Sounding().Thinnest() {
				if v.Pitch(s) < v.Pitch(v.Bass()) {
					return false
				}
			}
			bass, slash := chord.Bass()
			start := v.Start()
			switch {
			case slash && counts(v)[bass.Class()] > 0:
				return start.Reason == voicing.SlashBass && v.Pitch(start.String).Class() == bass.Class()
			case counts(v)[chord.Root().Class()] > 0:
				return start.Reason == voicing.RootTone && v.Pitch(start.String).Class() == chord.Root().Class()
			}
			return start == voicing.Start{String: v.Bass(), Reason: voicing.Lowest}
		}, songChords(), shapes()))
	p.Property("raising the capo raises every pitch and changes nothing else", prop.ForAll(
		func(g fretboard.Instrument, chord voicing.Chord, capo int) bool {
			g.Frets, g.Capo = 24, 0
			best, err := voicing.Best(g, chord, voicing.Options{})
			if err != nil {
				return true
			}
			g.Capo = fretboard.Fret(capo)
			raised, err := voicing.New(g, chord, best.Shape())
			if err != nil {
				return best.Shape() != raised.Shape() // it no longer fits the neck
			}
			for s := range best.Sounding().Thinnest() {
				if raised.Pitch(s) != best.Pitch(s)+fretboard.Pitch(capo) {
					return false
				}
			}
			a, b := fmt.Sprint(best.Remarks()), fmt.Sprint(raised.Remarks())
			return best.Start() == raised.Start() && best.Bass() == raised.Bass() && a == b
		}, instruments(3, 6, 24), songChords(), gen.IntRange(1, 8)))
	p.TestingRun(t)
}

// onTwelveStrings makes a voicing of any shape on a tuning of its size whose
// strings rise and fall.
func onTwelveStrings(chord voicing.Chord, sh voicing.Shape) (voicing.Voicing, bool) {
	names := strings.Fields("E3 E2 A3 A2 D4 D3 G4 G3 B3 B2 E4 E1")[:sh.Strings()]
	g := fretboard.Instrument{Tuning: fretboard.MustParseTuning(strings.Join(names, " ")), Frets: fretboard.MaxFrets}
	v, err := voicing.New(g, chord, sh)
	return v, err == nil
}

func ExampleNew() {
	chord, _ := voicing.ParseChord("G/B")
	shape, _ := voicing.ParseShape("x20003")
	v, err := voicing.New(fretboard.Instrument{}, chord, shape)
	if err != nil {
		fmt.Println(err)
		return
	}
	start := v.Start()
	fmt.Printf("start on string %d, the %s, at MIDI pitch %d\n", start.String, start.Reason, v.Pitch(start.String))
	// Output: start on string 5, the slash bass, at MIDI pitch 47
}
