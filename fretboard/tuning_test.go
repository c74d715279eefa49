package fretboard_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/fretboard/grammartest"
)

// tuningTexts feeds the parser's test and the fuzzer. Each row says why it is
// there; printed is empty where the text is refused at fault.
var tuningTexts = []struct{ why, text, printed, fault string }{
	{"the usual one", "E2 A2 D3 G3 B3 E4", "E2 A2 D3 G3 B3 E4", ""},
	{"by name", "standard", "E2 A2 D3 G3 B3 E4", ""},
	{"a name in any case", "DROP d", "D2 A2 D3 G3 B3 E4", ""},
	{"a name without its space", "openG", "D2 G2 D3 G3 B3 D4", ""},
	{"a name with a hyphen or an underscore", "half-step_down", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4", ""},
	{"a name with an en dash and a no-break space", "seven–string\u00a0", "B1 E2 A2 D3 G3 B3 E4", ""},
	{"a name without its hyphen", "seven string", "B1 E2 A2 D3 G3 B3 E4", ""},
	{"re-entrant", "G4 C4 E4 A4", "G4 C4 E4 A4", ""},
	{"one string", "E2", "E2", ""},
	{"twelve strings", strings.Repeat("E2 ", 12), "E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2", ""},
	{"commas, tabs and line ends", "E2,A2,\tD3\r\nG3 , B3,E4", "E2 A2 D3 G3 B3 E4", ""},
	{"small letters, b the note and b the flat", "b1 bb1 eb2", "B1 Bb1 Eb2", ""},
	{"Unicode accidentals", "E♭2 F♯2 E𝄫3 F𝄪3 E♮4", "Eb2 F#2 Ebb3 F##3 E4", ""},
	{"the spelling is kept", "Cb3 B#2", "Cb3 B#2", ""},
	{"the ends of the range", "C-1 G9", "C-1 G9", ""},
	{"empty", "", "", ""},
	{"spaces only", " \t ", "", ""},
	{"hyphens only", "---", "", "---"},
	{"a letter too far", "E2 A2 H3", "", "H3"},
	{"no octave", "E A D G B E", "", "E"},
	{"a name that nobody knows", "drop Q", "", "drop"},
	{"a name with something behind it", "standard!", "", "standard!"},
	{"hyphens between pitches", "E2-A2-D3", "", "E2-A2-D3"},
	{"thirteen strings", strings.Repeat("E2 ", 12) + "A2", "", "A2"},
	{"fourteen: the thirteenth is the first too many", strings.Repeat("E2 ", 12) + "A2 B2", "", "A2"},
	{"above the range", "E2 A9 D3", "", "A9"},
	{"below the range", "Cb-1", "", "Cb-1"},
	{"invalid UTF-8", "E2 \xff A2", "", "\xff"},
	{"too long", strings.Repeat(" ", fretboard.MaxText) + "E2", "", ""},
}

func TestTuningTexts(t *testing.T) {
	for _, c := range tuningTexts {
		tuning, err := fretboard.ParseTuning(c.text)
		if c.printed != "" {
			if err != nil || tuning.String() != c.printed {
				t.Errorf("%s: %q is %v, %v; want %s", c.why, c.text, tuning, err, c.printed)
			}
			continue
		}
		var located fretboard.Located
		if !errors.As(err, &located) {
			t.Errorf("%s: %q was read as %v", c.why, c.text, tuning)
			continue
		}
		place := located.Where()
		if place.Text() != c.fault || place.Notation != "tuning" || place.Source != c.text || place.Mend == "" {
			t.Errorf("%s: the fault is %q of %.40q, want %q: %v", c.why, place.Text(), place.Source, c.fault, err)
		}
	}
}

func TestImpossibleTuningsReadWell(t *testing.T) {
	for _, text := range []string{strings.Repeat("E2 ", 13), "E2 A9", "Cb-1", strings.Repeat("E2 ", fretboard.MaxText)} {
		_, err := fretboard.ParseTuning(text)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%.20q gives %T", text, err)
		}
	}
}

func TestTheZeroTuningIsTheStandardOne(t *testing.T) {
	var zero fretboard.Tuning
	standard := fretboard.Standard()
	if zero.String() != standard.String() || zero.Strings() != 6 || zero.Name() != "standard" || zero.All() != fretboard.StringsUpTo(6) {
		t.Errorf("the zero tuning is %s, %q", zero, zero.Name())
	}
	for s := fretboard.StringNumber(1); s <= 6; s++ {
		if zero.Open(s) != standard.Open(s) {
			t.Errorf("string %d of the zero tuning is %s", s, zero.Open(s))
		}
	}
	g, err := fretboard.Instrument{}.Normal()
	if err != nil || g.Tuning != standard || zero == standard {
		t.Errorf("made normal, the zero tuning is %v, %v", g.Tuning, err)
	}
}

func TestMustParseTuningPanicsOnBadText(t *testing.T) {
	if fretboard.MustParseTuning("drop D") != fretboard.MustParseTuning("D2 A2 D3 G3 B3 E4") {
		t.Error("a name and its pitches differ")
	}
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	fretboard.MustParseTuning("E2 H2")
}

func TestTuningProperties(t *testing.T) {
	p := properties()
	p.Property("printing a tuning and parsing it are inverse", prop.ForAll(func(names []fretboard.PitchName) bool {
		text := strings.Trim(fmt.Sprint(names), "[]")
		tuning, err := fretboard.ParseTuning(text)
		if err != nil || tuning.String() != text || int(tuning.Strings()) != len(names) {
			return false
		}
		for i, name := range names {
			if tuning.Open(tuning.Strings()-fretboard.StringNumber(i)) != name {
				return false
			}
		}
		again, err := fretboard.ParseTuning(tuning.String())
		return err == nil && again == tuning
	}, openStrings()))
	check(t, p)
}

func TestTuningGrammar(t *testing.T) {
	grammar := grammartest.Load(t, "tuning.ebnf", "tuning")
	r := rand.New(rand.NewPCG(1, 1))
	seen := map[string]bool{}
	for range 5000 {
		text := grammar.Sentence(r)
		tuning, err := fretboard.ParseTuning(text)
		if err != nil {
			t.Fatalf("a sentence of the grammar: %v", err)
		}
		if again, err := fretboard.ParseTuning(tuning.String()); err != nil || again != tuning {
			t.Fatalf("%q prints as %q and comes back as %v, %v", text, tuning, again, err)
		}
		seen[text] = true
	}
	for _, name := range fretboard.TuningNames() {
		if !seen[name] {
			t.Errorf("the grammar does not know %q", name)
		}
	}
}
