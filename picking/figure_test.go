package picking

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/fretboard/grammartest"
)

// figures feeds the parser, the printer and the fuzzer; each row says why it
// is there.
var figures = []struct{ text, canonical, why string }{
	{"5 3 2 1 2 3", "5 3 2 1 2 3", "plain"},
	{"5,3, 2\t1", "5 3 2 1", "commas and tabs separate"},
	{"  5 3  ", "5 3", "spaces around"},
	{"5\n3\r\n2", "5 3 2", "line ends separate"},
	{"5d 3 2u 1", "5d 3 2u 1", "own strokes"},
	{"5D 2U", "5d 2u", "capital strokes"},
	{"5 - . 3", "5 - . 3", "a hold and a rest"},
	{"5 – — ‐ − 3", "5 - - - - 3", "dashes that keyboards make"},
	{"5 -- 3", "5 - - 3", "two hyphens hold two slots"},
	{"5 3|2 1", "5 3 | 2 1", "a bar line without spaces"},
	{"1/8: 5 3", "1/8: 5 3", "a slot"},
	{"1/12:5 3", "1/12: 5 3", "a triplet slot, no space"},
	{"3/8: 5", "3/8: 5", "a dotted slot"},
	{"root 5: 4 3", "root 5: 4 3", "a root that is not plucked"},
	{"Root 5 1/16: 5 3", "1/16 root 5: 5 3", "the head in any order and case"},
	{"12 11 10 1", "12 11 10 1", "strings of two figures"},
	{"- 5 3", "- 5 3", "a hold in front"},
	{"5", "5", "one slot"},
}

func TestFiguresAreReadAndPrinted(t *testing.T) {
	for _, test := range figures {
		f, err := ParseFigure(test.text)
		if err != nil {
			t.Errorf("%s: %v", test.why, err)
			continue
		}
		if f.String() != test.canonical {
			t.Errorf("%s: %q prints as %q, want %q", test.why, test.text, f, test.canonical)
		}
		if again, err := ParseFigure(f.String()); err != nil || !again.Equal(f) || !cmp.Equal(again.Bars(), f.Bars()) {
			t.Errorf("%s: %q comes back as %q, %v", test.why, f, again, err)
		}
	}
}

func TestBadFiguresAreRefusedInPlace(t *testing.T) {
	for _, test := range []struct {
		text, at   string // the offending text
		impossible bool
		mend       string // part of it
	}{
		{"", "", false, "5 3 2 1 2 3"},
		{"   ", "   ", false, "5 3 2 1 2 3"},
		{". - .", ". - .", false, "string numbers"},
		{"5 q 3", "q", false, "a string number"},
		{"5 3x", "3x", false, ""},
		{"13 2", "13", true, "1 to 12"},
		{"0 2", "0", true, ""},
		{"532123", "532123", true, "5 3 2 1 2 3"},
		{"5-3-2-1", "5-3-2-1", false, "5 3 2 1"},
		{"99999999999999999999 2", "99999999999999999999", true, ""},
		{"1/8 5 3", "1/8", false, "colon"},
		{"1/7: 5", "1/7", false, "1/12"},
		{"1/8 1/4: 5", "1/4", false, ""},
		{"root: 5", "root", false, "root 5"},
		{"root 13: 5", "13", true, ""},
		{"root 5 root 4: 5", "root", false, ""},
		{": 5", "", false, ""},
		{"5 | | 3", "|", false, "full stop"},
		{"5 |", "", false, ""},
		{"| 5", "|", false, ""},
		{"5 \x00", "\x00", false, ""},
		{"5 ٣", "٣", false, ""},
		{strings.Repeat("1 ", 257), "1", true, "two"},
	} {
		_, err := ParseFigure(test.text)
		var impossible *fretboard.ImpossibleError
		located, ok := err.(fretboard.Located)
		if !ok || errors.As(err, &impossible) != test.impossible {
			t.Errorf("%q: %T %v", test.text, err, err)
			continue
		}
		if p := located.Where(); p.Text() != test.at || !strings.Contains(p.Mend+p.Reason, test.mend) || p.Notation != "figure" || p.Mend == "" {
			t.Errorf("%q: at %q, want %q; mend %q", test.text, p.Text(), test.at, p.Mend)
		}
	}
}

func TestSeveralFigures(t *testing.T) {
	fs, err := ParseFigures("5 3 2 1; 1/8: 5d - ;6 3")
	if err != nil || fs.String() != "5 3 2 1; 1/8: 5d -; 6 3" {
		t.Fatalf("%q, %v", fs, err)
	}
	_, err = ParseFigures("5 3; 2 q")
	if located, ok := err.(fretboard.Located); !ok || located.Where().Offset != 7 {
		t.Errorf("the second figure's fault is placed wrongly: %v", err)
	}
	if _, err := ParseFigures("5 3;"); err == nil {
		t.Error("an empty last figure is taken")
	}
}

func TestGrammarOfFigures(t *testing.T) {
	g := grammartest.Load(t, "figure.ebnf", "figures")
	r := random(4)
	for range 2000 {
		text := g.Sentence(r)
		fs, err := ParseFigures(text)
		if err != nil || fs.String() != text {
			t.Fatalf("%q: %q, %v", text, fs, err)
		}
	}
}

// randomFigure returns a figure over the strings 1 to n.
func randomFigure(r *rand.Rand, slots, n int) Figure {
	bar := []Slot{{Kind: Pluck, String: fretboard.StringNumber(1 + r.IntN(n))}}
	for len(bar) < slots {
		switch r.IntN(8) {
		case 0:
			bar = append(bar, Slot{Kind: Hold})
		case 1:
			bar = append(bar, Slot{Kind: Rest})
		default:
			bar = append(bar, Slot{Kind: Pluck, String: fretboard.StringNumber(1 + r.IntN(n)), Own: Stroke(max(0, r.IntN(12)-9))})
		}
	}
	f, err := NewFigure(0, 0, bar)
	if err != nil {
		panic(err)
	}
	return f
}

func TestFigureProperties(t *testing.T) {
	properties := gopter.NewProperties(nil)
	properties.Property("printing and parsing are inverse", prop.ForAll(
		func(seed int64) bool {
			r := random(seed)
			f := randomFigure(r, 1+r.IntN(20), 12)
			again, err := ParseFigure(f.String())
			return err == nil && again.Equal(f) && cmp.Equal(again.Bars(), f.Bars()) && again.Root() == f.Root()
		}, gen.Int64()))
	properties.TestingRun(t)
}

func TestNewFigureRefusesWhatCannotBeWritten(t *testing.T) {
	for _, bar := range [][]Slot{nil, {{Kind: Pluck}}, {{Kind: Pluck, String: 13}}, {{Kind: Rest}}, {{Kind: Pluck, String: -1}}} {
		if f, err := NewFigure(0, 0, bar); err == nil {
			t.Errorf("%v makes %q", bar, f)
		}
	}
	if _, err := NewFigure(NoteValue(7), 0, []Slot{{Kind: Pluck, String: 1}}); err == nil {
		t.Error("a slot of 7 ticks is taken")
	}
}

func FuzzParseFigures(f *testing.F) {
	for _, test := range figures {
		f.Add(test.text)
	}
	f.Add("5 3; 2 1 | 4")
	f.Fuzz(func(t *testing.T, text string) {
		fs, err := ParseFigures(text)
		if err != nil {
			checkPlace(t, text, err)
			return
		}
		again, err := ParseFigures(fs.String())
		if err != nil || again.String() != fs.String() {
			t.Fatalf("%q prints as %q, which reads as %q, %v", text, fs, again, err)
		}
		for _, fig := range fs {
			if len(fig.events()) == 0 || fig.Root() < 1 || fig.Root() > fretboard.MaxStrings {
				t.Fatalf("%q gives a figure without a root or events: %q", text, fig)
			}
		}
	})
}

// checkPlace fails if err does not say where in text it lies.
func checkPlace(t *testing.T, text string, err error) {
	t.Helper()
	located, ok := err.(fretboard.Located)
	if !ok {
		t.Fatalf("%q: %T without a place: %v", text, err, err)
	}
	p := located.Where()
	if p.Source != text || p.Offset < 0 || p.Offset+p.Length > len(text) || p.Reason == "" {
		t.Fatalf("%q: a place outside the text: %+v", text, p)
	}
	if lines := strings.Split(p.Caret(), "\n"); len(lines) != 2 || !strings.Contains(lines[1], "^") {
		t.Fatalf("%q: caret %q", text, p.Caret())
	}
}
