package voicing_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestOptionsThatCannotBe holds the refusals: each says which option, what was
// asked and what would do; Find yields nothing then.
func TestOptionsThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		why                          string
		o                            voicing.Options
		notation, text, reason, mend string
	}{
		{"frets below the nut", voicing.Options{Low: -1}, "lowest fret", "-1", "no such fret", "0 means the first"},
		{"a window upside down", voicing.Options{Low: 7, High: 5}, "lowest fret", "7", "frets 7 to 5 are no window", "choose a lower one"},
		{"a window above the neck", voicing.Options{Low: 22}, "lowest fret", "22", "frets 22 to 21 are no window", "choose a lower one"},
		{"a window over its end", voicing.Options{High: 22}, "highest fret", "22", "the last fret from the capo is 21", "0 means the last"},
		{"a span below nothing", voicing.Options{Span: -1}, "span", "-1", "a hand spans up to 150 mm", "0 means 105"},
		{"a span beyond every hand", voicing.Options{Span: 150.5}, "span", "150.5", "a hand spans up to 150 mm", "0 means 105"},
		{"a span that is no number", voicing.Options{Span: fretboard.Millimetres(math.NaN())}, "span", "NaN", "a hand spans up to 150 mm", "0 means 105"},
		{"five fingers", voicing.Options{Fingers: 5}, "fingers", "5", "a hand has 1 to 4 fingers to fret with", "0 means 4"},
		{"fewer than none", voicing.Options{Fingers: -1}, "fingers", "-1", "a hand has 1 to 4 fingers to fret with", "0 means 4"},
		{"no such fret", voicing.Options{High: -1}, "highest fret", "-1", "no such fret", "0 means the last"},
		{"a string that is not there", voicing.Options{Sounding: fretboard.StringsUpTo(6).With(7)}, "sounding string", "7",
			"the instrument has strings 1 to 6", "name strings that it has"},
		{"a weight that turns a price", voicing.Options{Weights: voicing.Weights{Barre: -101}}, "weight of barre", "-101",
			"a weight is -100 to 1000 percent", "0 leaves a term as it is"},
		{"a weight without end", voicing.Options{Weights: voicing.Weights{Muddy: 1001}}, "weight of muddy", "1001",
			"a weight is -100 to 1000 percent", "0 leaves a term as it is"},
	} {
		g := fretboard.Instrument{Capo: 3}
		_, err := voicing.Best(g, mustChord("C"), c.o)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%s: %v; want an ImpossibleError", c.why, err)
			continue
		}
		if impossible.Notation != c.notation || impossible.Text() != c.text || impossible.Reason != c.reason || impossible.Mend != c.mend {
			t.Errorf("%s: %v; want %s %q: %s; %s", c.why, err, c.notation, c.text, c.reason, c.mend)
		}
		if shapes := asked(g, mustChord("C"), c.o, 1); shapes != nil {
			t.Errorf("%s: Find yields %v where Best refuses", c.why, shapes)
		}
	}
}

// TestOptionsAtTheirEnds: what lies on the border is allowed, and does what it
// says.
func TestOptionsAtTheirEnds(t *testing.T) {
	for _, c := range []struct {
		why, chord string
		o          voicing.Options
		has, hasNo string
	}{
		{"one fret", "C", voicing.Options{Low: 5, High: 5}, "xx555x", "x35553"},
		{"the last fret", "Em7", voicing.Options{Low: 24, High: 24}, "x-x-24-24-24-24", "022030"},
		{"open strings lie in every window", "Em7", voicing.Options{Low: 12, High: 12}, "0x0000", "022030"},
		{"and in none where none may be", "Em7", voicing.Options{Low: 12, High: 12, Closed: true}, "12-x-12-12-12-12", "0x0000"},
		{"one finger", "Em", voicing.Options{Fingers: 1}, "022000", "022003"},
		{"two fingers, though three hold it better", "A", voicing.Options{Fingers: 2}, "x02220", "x07650"},
		{"every string", "C/E", voicing.Options{Sounding: fretboard.StringsUpTo(6)}, "032010", "x32010"},
		{"a span of frets 1 to 3", "C", voicing.Options{Span: 66.4}, "x32010", "x35010"},
		{"a hair less", "C", voicing.Options{Span: 66.3}, "x35553", "x32010"},
		{"the widest span", "C", voicing.Options{Span: 150}, "x35558", "x320x8"},
		{"the root lowest", "C", voicing.Options{BassLow: true}, "x32010", "032010"},
		{"the slash bass lowest", "C/E", voicing.Options{BassLow: true}, "032010", "x32010"},
	} {
		shapes := asked(fretboard.Instrument{}, mustChord(c.chord), c.o, 0)
		if !slices.Contains(shapes, c.has) || slices.Contains(shapes, c.hasNo) {
			t.Errorf("%s: want %s and not %s among %d shapes, %v ...", c.why, c.has, c.hasNo, len(shapes), shapes[:min(6, len(shapes))])
		}
	}
	ukulele := tuned(t, "ukulele")
	if got := asked(ukulele, mustChord("C"), voicing.Options{BassLow: true}, 0); slices.Contains(got, "2010") || !slices.Contains(got, "0003") {
		t.Errorf("the root lowest on a ukulele: %v", got)
	}
}

// TestWeightsAtTheirEnds: all terms eleven times as dear rank as they do at
// their price, and where none counts the strings do.
func TestWeightsAtTheirEnds(t *testing.T) {
	var dearest, none voicing.Weights
	for i := range reflect.TypeFor[voicing.Weights]().NumField() {
		reflect.ValueOf(&dearest).Elem().Field(i).SetInt(1000)
		reflect.ValueOf(&none).Elem().Field(i).SetInt(-100)
	}
	g := fretboard.Instrument{Frets: 5}
	usual := first(g, mustChord("C"), 0)
	if got := asked(g, mustChord("C"), voicing.Options{Weights: dearest}, 0); !slices.Equal(got, usual) {
		t.Errorf("dearest: %v ...; want %v ...", got[:6], usual[:6])
	}
	slices.Sort(usual) // a fret sorts before x
	if got := asked(g, mustChord("C"), voicing.Options{Weights: none}, 0); !slices.Equal(got, usual) {
		t.Errorf("none counts: %v ...; want %v ...", got[:6], usual[:6])
	}
}

// TestOptionsNarrow holds the options against the whole list.
func TestOptionsNarrow(t *testing.T) {
	p := seeded(80)
	p.Property("options that narrow take from the list what does not keep to them, and leave its order", prop.ForAll(
		func(q question) bool {
			q.o.Span = min(q.o.Span, 105)
			var kept []string
			wide := voicing.Options{Weights: q.o.Weights}
			for v := range voicing.Find(q.g, q.c, wide) {
				if !soundsAllItNeeds(v) {
					return true // then others that sound its character may be let in
				}
				if keepsTo(v, q.o) && fingersSuffice(v, q.o.Fingers) {
					kept = append(kept, v.Shape().String())
				}
			}
			return kept == nil || slices.Equal(asked(q.g, q.c, q.o, 0), kept)
		}, questions(4, 7, 12)))
	p.Property("weights change the order, not the list", prop.ForAll(
		func(q question) bool {
			weighed := asked(q.g, q.c, q.o, 0)
			q.o.Weights = voicing.Weights{}
			usual := asked(q.g, q.c, q.o, 0)
			slices.Sort(weighed)
			slices.Sort(usual)
			return slices.Equal(weighed, usual)
		}, questions(4, 7, 12)))
	p.TestingRun(t)
}

// TestBeginnersGetEasierShapes: for the chords that make beginners stumble
// (common practice: F, B, Bm and the rest of the barre chords) what comes first
// lies under no full barre, and the thin strings of the barre chord that their
// methods print come early. What they learn first stays as it is.
func TestBeginnersGetEasierShapes(t *testing.T) {
	beginner := voicing.Options{Weights: voicing.Beginner()}
	for _, chord := range strings.Fields("F Bb B Bm Cm F#m C#m Gm Fm") {
		usual, easy := mustBest(t, chord, voicing.Options{}), mustBest(t, chord, beginner)
		if longestBarre(t, usual) < 5 || longestBarre(t, easy) > 3 || easy.Cost().Barre >= usual.Cost().Barre {
			t.Errorf("%s: a beginner has %s, %+v, and without weights %s", chord, easy.Shape(), easy.Cost(), usual.Shape())
		}
	}
	for chord, small := range map[string]string{"F": "xx3211", "Fm": "xx3111", "F#m": "xx4222"} {
		if shapes := asked(fretboard.Instrument{}, mustChord(chord), beginner, 4); !slices.Contains(shapes, small) {
			t.Errorf("%s: %s is not among a beginner's %v", chord, small, shapes)
		}
	}
	for _, chord := range strings.Fields("C G D A E Am Em Dm") {
		if usual, easy := mustBest(t, chord, voicing.Options{}), mustBest(t, chord, beginner); easy != usual {
			t.Errorf("%s: a beginner has %s; %s is easy enough", chord, easy.Shape(), usual.Shape())
		}
	}
}

func mustBest(t testing.TB, chord string, o voicing.Options) voicing.Voicing {
	t.Helper()
	v, err := voicing.Best(fretboard.Instrument{}, mustChord(chord), o)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// longestBarre returns how many strings the longest press of v crosses.
func longestBarre(t testing.TB, v voicing.Voicing) int {
	f, err := v.Fingering()
	if err != nil {
		t.Fatal(err)
	}
	longest := 0
	for _, p := range f.Presses() {
		longest = max(longest, int(p.Thick-p.Thin)+1)
	}
	return longest
}

func ExampleOptions() {
	chord, _ := voicing.ParseChord("A")
	far := voicing.Options{Low: 5, Closed: true, BassLow: true}
	for v := range voicing.Find(fretboard.Instrument{}, chord, far) {
		f, _ := v.Fingering()
		fmt.Println(v.Shape(), "held with", f)
		break
	}
	// Output:
	// 577655 held with 134211
}

func ExampleBeginner() {
	chord, _ := voicing.ParseChord("F#m")
	for _, w := range []voicing.Weights{{}, voicing.Beginner()} {
		v, _ := voicing.Best(fretboard.Instrument{}, chord, voicing.Options{Weights: w})
		fmt.Println(v.Shape())
	}
	// Output:
	// 244222
	// xx4222
}
