package picking

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/fretboard/grammartest"
	"weft.example/voicing"
)

// progressions feeds the parser, the printer and the fuzzer; each row says why
// it is there.
var progressions = []struct{ text, canonical, why string }{
	{"Am | G | Dm | E", "Am | G | Dm | E", "plain"},
	{"| Am | G |", "Am | G", "bar lines at the edges"},
	{"Am|G", "Am | G", "no spaces"},
	{"C G/B", "C G/B", "two chords in a bar"},
	{"Am\nG\r\nDm", "Am | G | Dm", "a line end is a bar line"},
	{"| Am | G |\n| Dm | E |\n", "Am | G | Dm | E", "lines with bar lines at both edges"},
	{"\n\nAm |\n\nG\n", "Am | G", "blank lines"},
	{"Am=x02210 | D=xx0232@2:3 A7:1", "Am=x02210 | D=xx0232@2:3 A7:1", "all a chord may carry"},
	{"D:3@2=xx0232", "D=xx0232@2:3", "in any order"},
	{"G=x-10-12-12-12-10", "G=x-10-12-12-12-10", "a shape with hyphens"},
	{"Am:1.5 G:2.50", "Am:1.5 G:2.5", "beats and parts of them"},
	{"Am | % | %", "Am | % | %", "the bar before"},
	{"N.C. | Am NC", "N.C. | Am N.C.", "silence"},
	{"|: Am | F=xx3211 | C G/B | E7 :|", "|: Am | F=xx3211 | C G/B | E7 :|", "a repeat"},
	{"Am | G :| C", "|: Am | G :| C", "a repeat from the start"},
	{"|: Am :|: G :|", "|: Am :| |: G :|", "a repeat after a repeat"},
	{"|: Am :||: G :||", "|: Am :| |: G :|", "double bar lines at repeats"},
	{"Am:3 G:1:|", "|: Am:3 G:1 :|", "beats beside the sign that ends a repeat"},
	{"Am | |: G :|", "Am |: G :|", "a bar line before a repeat"},
	{"C7(b9, #11) | A", "C7b9#11 | A", "spaces in brackets belong to the chord"},
	{"B♭ | F♯m", "Bb | F#m", "Unicode accidentals"},
	{"\ufeffAm", "Am", "a byte order mark"},
	{"|| Am | G ||\n|| Dm | E ||", "Am | G | Dm | E", "double bar lines at the edges of lines"},
	{"Am | G ‖ Dm |]", "Am | G | Dm", "other double bar lines"},
	{"Am, G | Dm", "Am G | Dm", "commas between chords"},
}

func TestProgressionsAreReadAndPrinted(t *testing.T) {
	for _, test := range progressions {
		p, err := ParseProgression(test.text)
		if err != nil {
			t.Errorf("%s: %v", test.why, err)
			continue
		}
		canonical := test.canonical
		if strings.Contains(test.text, "C7(") { // its print is the chord's own affair
			c, _ := voicing.ParseChord("C7(b9,#11)")
			canonical = c.String() + " | A"
		}
		if p.String() != canonical {
			t.Errorf("%s: %q prints as %q, want %q", test.why, test.text, p, canonical)
		}
		if again, err := ParseProgression(p.String()); err != nil || !again.Equal(p) {
			t.Errorf("%s: %q comes back as %q, %v", test.why, p, again, err)
		}
	}
}

func TestBadProgressionsAreRefusedInPlace(t *testing.T) {
	for _, test := range []struct {
		text   string
		offset int
		mend   string // part of it
	}{
		{"", 0, "Am | G"},
		{" \n | \n", 0, "Am | G"},
		{"Am | | G", 5, "N.C."},
		{"Am || G", 4, "N.C."},
		{"Am | G | |", 9, "N.C."},
		{"Am | Zq", 5, ""},
		{"Am | :|", 5, "N.C."},
		{":| Am", 0, "before :|"},
		{"|: Am | G", 0, ":|"},
		{"|: Am |: G :|", 6, ":|"},
		{"% | Am", 0, "first bar"},
		{"Am | % G", 7, "alone"},
		{"Am | G %", 7, "alone"},
		{"=x02210", 0, "Am=x02210"},
		{"Am =x02210", 3, "without a space"},
		{"x02210", 0, "Am=x02210"},
		{"Am / / /", 3, "Am:4"},
		{"Am . . .", 3, "Am:4"},
		{"|: Am :| x3", 9, "again"},
		{"Am , G", 3, ""},
		{"Am | || G", 5, "N.C."},
		{"Am=", 3, ""},
		{"Am=x0221q", 8, ""},
		{"Am=x02210=x02210", 10, "leave one out"},
		{"Am@0", 3, "Am@2"},
		{"Am@x", 3, "Am@2"},
		{"Am:0", 3, "Am:3"},
		{"Am:1.3", 3, "Am:3"},
		{"Am:99999999999", 3, "Am:3"},
		{"Am:-1", 3, "Am:3"},
		{"N.C.=x02210", 5, "alone"},
		{"Am | \xff", 5, "UTF-8"},
		{strings.Repeat("x", fretboard.MaxText+1), fretboard.MaxText, "split"},
	} {
		_, err := ParseProgression(test.text)
		located, ok := err.(fretboard.Located)
		if !ok {
			t.Errorf("%.40q: %v", test.text, err)
			continue
		}
		if p := located.Where(); p.Offset != test.offset || !strings.Contains(p.Mend, test.mend) || p.Notation != "chords" {
			t.Errorf("%.40q: %s at %d, want %d; mend %q", test.text, p.Notation, p.Offset, test.offset, p.Mend)
		}
	}
}

func TestGrammarOfProgressions(t *testing.T) {
	g := grammartest.Load(t, "progression.ebnf", "progression")
	r := random(5)
	for range 2000 {
		text := g.Sentence(r)
		p, err := ParseProgression(text)
		if err != nil || p.String() != text {
			t.Fatalf("%q: %q, %v", text, p, err)
		}
	}
}

// respelled turns a chart of the grammar into each German way, letter by letter:
// no symbol there has a b but after a root B.
var respelled = map[fretboard.Spelling]*strings.Replacer{
	fretboard.German:      strings.NewReplacer("Bb", "B", "B", "H"),
	fretboard.MixedGerman: strings.NewReplacer("Bb", "Bb", "B", "H"),
}

func TestGrammarOfProgressionsInGerman(t *testing.T) {
	g := grammartest.Load(t, "progression.ebnf", "progression")
	r := random(6)
	for range 1000 {
		english := g.Sentence(r)
		for spelling, respell := range respelled {
			text := respell.Replace(english)
			p, err := ParseProgressionIn(text, spelling)
			if err != nil || p.StringIn(spelling) != text || p.String() != english {
				t.Fatalf("%q in %s: %q, in English %q, %v", text, spelling, p.StringIn(spelling), p, err)
			}
		}
	}
}

// TestChartsInGerman holds charts as songbooks write them against what they are
// in English. Common practice.
func TestChartsInGerman(t *testing.T) {
	for _, test := range []struct {
		spelling      fretboard.Spelling
		text, english string
	}{
		{fretboard.German, "e | H7 | a/g | C/H", "Em | B7 | Am/G | C/B"},
		{fretboard.German, "|: d | g7 | B | A7sus4 :|", "|: Dm | Gm7 | Bb | A7sus4 :|"},
		{fretboard.German, "fis=244222@2:3 Es:1 | %", "F#m=244222@2:3 Eb:1 | %"},
		{fretboard.MixedGerman, "Hm7b5 | E7 | Bb/D, Esus4", "Bm7b5 | E7 | Bb/D Esus4"},
	} {
		p, err := ParseProgressionIn(test.text, test.spelling)
		if err != nil || p.String() != test.english || !p.Equal(MustParseProgression(test.english)) {
			t.Errorf("%s in %s: %s, %v; want %s", test.text, test.spelling, p, err, test.english)
		}
	}
}

// Errors lie in the user's own text and mend it in its spelling.
func TestBadChartsInGerman(t *testing.T) {
	for _, test := range []struct {
		spelling   fretboard.Spelling
		text, at   string
		offset     int
		mend       string
		arrangedIn bool
	}{
		{fretboard.MixedGerman, "Am | G/B", "B", 7, "write H or Bb", false},
		{fretboard.MixedGerman, "a | b7", "b", 4, "write h or bb", false},
		{fretboard.German, "Am | Bb7 | E", "Bb", 5, "write B or Hbb", false},
		{fretboard.English, "Am | H7", "H", 5, "German", false},
		{fretboard.German, "H:2 Am | H:1 B:1 fis:1", "fis:1", 17, "H:2 B:1 F#m:1", true},
		{fretboard.English, "B:2 Am | B:1 Bb:1 F#m:1", "F#m:1", 18, "B:2 Bb:1 F#m:1", true},
	} {
		p, err := ParseProgressionIn(test.text, test.spelling)
		if err == nil && test.arrangedIn {
			_, err = Arrange(p, Figures{MustParseFigure("5 3 2 1")}, Setting{})
		}
		located, ok := err.(fretboard.Located)
		if !ok {
			t.Errorf("%s: %v", test.text, err)
			continue
		}
		if w := located.Where(); w.Source != test.text || w.Text() != test.at || w.Offset != test.offset || !strings.Contains(w.Mend, test.mend) {
			t.Errorf("%s: %v; want %q at %d and the mend %q", test.text, err, test.at, test.offset, test.mend)
		}
	}
}

func TestProgressionProperties(t *testing.T) {
	properties := gopter.NewProperties(nil)
	properties.Property("a progression reads the same in every spelling that it is printed in", prop.ForAll(
		func(seed int64, spelling uint8) bool {
			p, err := NewProgression(randomBars(random(seed))...)
			in := fretboard.Spelling(spelling)
			again, errIn := ParseProgressionIn(p.StringIn(in), in)
			return err == nil && errIn == nil && again.Equal(p) && again.StringIn(in) == p.StringIn(in)
		}, gen.Int64(), gen.UInt8Range(0, 2)))
	properties.Property("a progression built by hand prints to text that reads the same", prop.ForAll(
		func(seed int64) bool {
			bars := randomBars(random(seed))
			p, err := NewProgression(bars...)
			return err == nil && p.String() == Progression{bars: bars}.String() && len(p.Bars()) == len(bars)
		}, gen.Int64()))
	properties.TestingRun(t)
}

func randomBars(r *rand.Rand) (bars []ChartBar) {
	open := false
	n := 1 + r.IntN(12)
	for i := range n {
		var bar ChartBar
		if !open && r.IntN(5) == 0 {
			bar.Opens, open = true, true
		}
		if bar.Again = i > 0 && r.IntN(5) == 0; !bar.Again {
			for range 1 + r.IntN(3) {
				bar.Chords = append(bar.Chords, randomChord(r))
			}
		}
		if open && (i == n-1 || r.IntN(3) == 0) {
			bar.Closes, open = true, false
		}
		bars = append(bars, bar)
	}
	return bars
}

func randomChord(r *rand.Rand) ChartChord {
	symbols := []string{"Am", "G/B", "Bbmaj7", "B(b5)", "F#m7b5", "C7sus4", "N.C."}
	c := ChartChord{Chord: mustChord(symbols[r.IntN(len(symbols))]), Figure: r.IntN(3), Beats: Beats(r.IntN(9))}
	if r.IntN(2) == 0 && !c.Chord.Silent() {
		shape := voicing.NewShape(fretboard.StringNumber(1 + r.IntN(12)))
		for s := fretboard.StringNumber(1); s <= shape.Strings(); s++ {
			if r.IntN(4) > 0 {
				shape = shape.With(s, fretboard.Fret(r.IntN(15)))
			}
		}
		c.Shape = shape
	}
	return c
}

func mustChord(text string) voicing.Chord {
	c, err := voicing.ParseChord(text)
	if err != nil {
		panic(err)
	}
	return c
}

func FuzzParseProgression(f *testing.F) {
	for _, test := range progressions {
		f.Add(test.text, uint8(fretboard.English))
	}
	f.Add("e | H7 | a/g | C/H", uint8(fretboard.German))
	f.Add("fis:3 Asus4 | As=x-x-x-x-x-4 | Bb", uint8(fretboard.German))
	f.Add("|: Hm7b5 | Bb/D es@2 :| b", uint8(fretboard.MixedGerman))
	f.Fuzz(func(t *testing.T, text string, spelling uint8) {
		in := fretboard.Spelling(spelling % 3)
		p, err := ParseProgressionIn(text, in)
		if err != nil {
			checkPlace(t, text, err)
			return
		}
		if again, err := ParseProgressionIn(p.StringIn(in), in); err != nil || !again.Equal(p) {
			t.Fatalf("%q prints in %s as %q, which reads as %q, %v", text, in, p.StringIn(in), again, err)
		}
		again, err := ParseProgression(p.String())
		if err != nil || !again.Equal(p) {
			t.Fatalf("%q prints as %q, which reads as %q, %v", text, p, again, err)
		}
		if len(again.Bars()) != len(p.Bars()) || fmt.Sprint(len(p.Bars())) == "0" {
			t.Fatalf("%q has %d bars, its print %d", text, len(p.Bars()), len(again.Bars()))
		}
	})
}
