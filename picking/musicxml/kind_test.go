package musicxml_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/musicxml"
	"weft.example/voicing"
)

// everyChord lists chords of every formula that these symbols spell: all
// qualities and numbers, bare and with up to three marks.
func everyChord() (chords []voicing.Chord) {
	seen := map[string]bool{}
	var marks []string
	single := []string{"", "b5", "#5", "b6", "b9", "#9", "#11", "b13", "add2", "add4", "add6", "add9", "add11", "add13", "addb9", "add#11",
		"sus2", "sus4", "sus24", "no3", "no5", "alt"}
	for _, a := range single {
		for _, b := range single {
			marks = append(marks, a+b)
		}
	}
	for _, two := range slices.Clone(marks) {
		marks = append(marks, two+"#11", two+"b13", two+"#9")
	}
	for _, quality := range []string{"", "m", "maj", "dim", "aug", "ø"} {
		for _, number := range []string{"", "2", "4", "5", "6", "69", "7", "9", "11", "13", "maj7", "maj9", "maj11", "maj13", "(maj7)", "(maj9)"} {
			for _, mark := range marks {
				if mark != "" && quality+number == "" {
					mark = "(" + mark + ")"
				}
				c, err := voicing.ParseChord("C" + quality + number + mark)
				if err == nil && !seen[c.Formula()] {
					seen[c.Formula()] = true
					chords = append(chords, c)
				}
			}
		}
	}
	return chords
}

// harmonies returns the chord symbols of a score in which each chord lasts a
// bar, in any shape at all.
func harmonies(t *testing.T, chords []voicing.Chord) (list []item) {
	t.Helper()
	for chunk := range slices.Chunk(chords, picking.MaxBars) {
		bars := make([]picking.ChartBar, len(chunk))
		for i, c := range chunk {
			shape := voicing.NewShape(6)
			if !c.Silent() {
				shape = shape.With(1, 0)
			}
			bars[i].Chords = []picking.ChartChord{{Chord: c, Shape: shape}}
			if c.Silent() {
				bars[i].Chords[0].Shape = voicing.Shape{}
			}
		}
		song, err := picking.NewProgression(bars...)
		if err != nil {
			t.Fatal(err)
		}
		p, err := picking.Arrange(song, picking.Figures{picking.MustParseFigure("1/1: 1")}, picking.Setting{})
		if err != nil {
			t.Fatal(err)
		}
		s, err := parsed(encoded(t, p, musicxml.Options{}))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range s.Measures {
			for _, x := range m.Items {
				if x.XMLName.Local == "harmony" {
					list = append(list, x)
				}
			}
		}
	}
	return list
}

func TestKindAndDegreesSpellEveryChord(t *testing.T) {
	chords := everyChord()
	if len(chords) < 500 {
		t.Fatalf("only %d chords", len(chords))
	}
	for i, x := range harmonies(t, chords) {
		if fault := readChord(picking.HeldChord{Chord: chords[i], Sounds: chords[i]}, item{Root: x.Root, Kind: x.Kind, Bass: x.Bass, Degrees: x.Degrees}); fault != "" {
			t.Errorf("%s: %s", chords[i], fault)
		}
		for _, d := range x.Degrees {
			if d.Type == "alter" && d.Value == 3 {
				t.Errorf("%s: a kind with another third, %s", chords[i], x.Kind.Kind)
			}
		}
	}
	t.Logf("%d chords", len(chords))
}

// TestKindsOfCommonChords holds the kinds that a musician expects (common
// practice) and that the chord's own name is printed.
func TestKindsOfCommonChords(t *testing.T) {
	cases := []struct{ symbol, kind, text, degrees string }{
		{"C", "major", "", ""},
		{"Am", "minor", "m", ""},
		{"F#m7b5", "half-diminished", "m7♭5", ""},
		{"Bdim7", "diminished-seventh", "dim7", ""},
		{"G7", "dominant", "7", ""},
		{"C+7", "augmented-seventh", "7♯5", ""},
		{"Cm(maj7)", "major-minor", "m(maj7)", ""},
		{"C6/9", "major-sixth", "6/9", "add 9 0"},
		{"C13", "dominant-13th", "13", ""},
		{"Dsus4", "suspended-fourth", "sus4", ""},
		{"A5", "power", "5", ""},
		{"Cadd9", "major", "add9", "add 9 0"},
		{"E7#9", "dominant", "7♯9", "add 9 1"},
		{"E7b5", "dominant", "7♭5", "alter 5 -1"},
		{"A7sus4", "suspended-fourth", "7sus4", "add 7 0"},
		{"Cmaj7#5", "augmented", "maj7♯5", "add 7 1"},
		{"C9no5", "dominant-ninth", "9no5", "subtract 5 0"},
		{"C7alt", "augmented-seventh", "7alt", "add 5 -1, add 9 -1, add 9 1"},
		{"Dbmaj13#11/F", "major-13th", "maj13♯11", "alter 11 1"},
	}
	var chords []voicing.Chord
	for _, c := range cases {
		chord, err := voicing.ParseChord(c.symbol)
		if err != nil {
			t.Fatal(err)
		}
		chords = append(chords, chord)
	}
	for i, x := range harmonies(t, chords) {
		var degrees []string
		for _, d := range x.Degrees {
			degrees = append(degrees, fmt.Sprint(d.Type, " ", d.Value, " ", d.Alter))
		}
		c := cases[i]
		if got := strings.Join(degrees, ", "); x.Kind.Kind != c.kind || x.Kind.Text != c.text || got != c.degrees {
			t.Errorf("%s: %s %q [%s], want %s %q [%s]", c.symbol, x.Kind.Kind, x.Kind.Text, got, c.kind, c.text, c.degrees)
		}
	}
}

// TestKindsAreThoseOfTheSchema reads what the schema's documentation says of
// each kind, such as "major-ninth (major-seventh, major ninth)", and holds the
// formulas of this test to it.
func TestKindsAreThoseOfTheSchema(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(schemaFolder(t), "musicxml.xsd"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), `name="kind-value"`)
	list, _, _ := strings.Cut(rest, "</xs:documentation>")
	documented := map[string]string{}
	for _, line := range regexp.MustCompile(`(?m)^\t([a-z0-9-]+) \((.*)\)\r?$`).FindAllStringSubmatch(list, -1) {
		formula := "1"
		for part := range strings.SplitSeq(line[2], ", ") {
			degree := documentedParts[part]
			if whole := documented[part]; whole != "" {
				formula, degree = whole, ""
			} else if whole := documented[strings.TrimSuffix(part, " triad")]; whole != "" {
				formula, degree = whole, ""
			} else if whole := documented[map[string]string{"dominant-seventh": "dominant"}[part]]; whole != "" {
				formula, degree = whole, ""
			}
			formula = strings.TrimSpace(formula + " " + degree)
		}
		if line[1] != "pedal" {
			documented[line[1]] = formula
		}
	}
	if len(documented) != 25 || len(formulas) != 25 {
		t.Errorf("%d kinds in the schema, %d here", len(documented), len(formulas))
	}
	for kind, formula := range formulas {
		if documented[kind] != formula {
			t.Errorf("%s: %s in the schema, %s here", kind, documented[kind], formula)
		}
	}
}

// documentedParts are the intervals that the schema names.
var documentedParts = map[string]string{
	"major second": "2", "major third": "3", "minor third": "b3", "perfect fourth": "4", "perfect fifth": "5", "augmented fifth": "#5",
	"diminished fifth": "b5", "added sixth": "6", "minor seventh": "b7", "major seventh": "7", "diminished seventh": "bb7",
	"major ninth": "9", "perfect 11th": "11", "major 13th": "13",
}

func TestSilenceIsAKindOfItsOwn(t *testing.T) {
	x := harmonies(t, []voicing.Chord{{}})
	if len(x) != 1 || readChord(picking.HeldChord{}, x[0]) != "" {
		t.Errorf("%+v", x)
	}
}

// TestSlashBass checks a bass with an accidental of its own.
func TestSlashBass(t *testing.T) {
	c, err := voicing.ParseChord("D/F#")
	if err != nil {
		t.Fatal(err)
	}
	x := harmonies(t, []voicing.Chord{c})
	if len(x) != 1 || x[0].Bass == nil || x[0].Bass.Step != "F" || x[0].Bass.Alter != 1 || x[0].Root.Step.Step != (fretboard.Note{Letter: fretboard.D}).String() {
		t.Errorf("%+v", x)
	}
}
