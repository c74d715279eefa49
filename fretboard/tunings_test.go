package fretboard_test

import (
	_ "embed"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
)

// keys prints the MIDI key numbers of a tuning's open strings, thickest first.
func keys(t fretboard.Tuning) string {
	var numbers []string
	for s := t.Strings(); s >= 1; s-- {
		numbers = append(numbers, fmt.Sprint(int(t.Open(s).Pitch())))
	}
	return strings.Join(numbers, " ")
}

// TestTuningsOfTheMusicEncodingInitiative holds tunings against the controlled
// list data.COURSETUNING of the MEI guidelines, which gives them in pitches,
// thickest course first.
func TestTuningsOfTheMusicEncodingInitiative(t *testing.T) {
	for _, c := range []struct{ mei, name, pitches string }{
		{"guitar.standard", "standard", "E2 A2 D3 G3 B3 E4"},
		{"guitar.drop.D", "drop D", "D2 A2 D3 G3 B3 E4"},
		{"guitar.open.D", "open D", "D2 A2 D3 F#3 A3 D4"},
		{"guitar.open.G", "open G", "D2 G2 D3 G3 B3 D4"},
		{"guitar.open.A", "open A", "E2 A2 E3 A3 C#4 E4"},
	} {
		if got := parsed(t, fretboard.ParseTuning, c.name).String(); got != c.pitches {
			t.Errorf("%s is %s, want %s", c.mei, got, c.pitches)
		}
	}
}

// TestTuningsInKeyNumbers is derived from the pitches by the rule that C4 is 60.
func TestTuningsInKeyNumbers(t *testing.T) {
	for name, want := range map[string]string{
		"standard": "40 45 50 55 59 64",
		"drop D":   "38 45 50 55 59 64",
		"DADGAD":   "38 45 50 55 57 62",
		"open G":   "38 43 50 55 59 62",
		"open D":   "38 45 50 54 57 62",
	} {
		if got := keys(parsed(t, fretboard.ParseTuning, name)); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}

// publicTunings is facts from a public table; its first line says which.
//
//go:embed testdata/tunings.tsv
var publicTunings string

// alsoKnown maps the table's instruments and names to ours. Bowed instruments
// and two rarities on five strings have no name of ours.
var alsoKnown = map[string]string{
	"guitar Standard E":                  "standard",
	"guitar Half Step Down":              "half step down",
	"guitar Whole Step Down":             "whole step down",
	"guitar Drop D":                      "drop D",
	"guitar Double Drop D":               "double drop D",
	"guitar DADGAD":                      "DADGAD",
	"guitar Open G":                      "open G",
	"guitar Open G minor":                "open G minor",
	"guitar Open D":                      "open D",
	"guitar Open D minor":                "open D minor",
	"bassGuitar Standard EADG":           "bass",
	"bassGuitar 5-String Standard BEADG": "five-string bass",
	"mandolin Standard GDAE":             "mandolin",
	"ukulele Standard GCEA":              "ukulele",
	"guitar 5-String Open G":             "",
	"guitar DAEAD":                       "",
	"violin Standard GDAE":               "",
	"viola Standard CGDA":                "",
	"cello Standard CGDA":                "",
	"doubleBass Standard EADG":           "",
}

func TestTuningsOutside(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(publicTunings), "\n")[1:]
	if len(lines) != 20 || len(alsoKnown) != 20 {
		t.Fatalf("%d tunings in the table and %d in the map, want 20", len(lines), len(alsoKnown))
	}
	agreed := 0
	for _, line := range lines {
		columns := strings.Split(line, "\t")
		if len(columns) != 3 {
			t.Fatalf("%q has %d columns", line, len(columns))
		}
		name, listed := alsoKnown[columns[0]+" "+columns[1]]
		if !listed {
			t.Errorf("nobody decided about %s %s", columns[0], columns[1])
		}
		if name == "" {
			continue
		}
		if got := keys(parsed(t, fretboard.ParseTuning, name)); got != columns[2] {
			t.Errorf("%s: %s, the table has %s", name, got, columns[2])
		} else {
			agreed++
		}
	}
	t.Logf("%d of the table's %d tunings have a name here, and agree", agreed, len(lines))
}

// TestEveryNamedTuning lists them all; those that the tests above do not hold
// against a source are common practice, from memory.
func TestEveryNamedTuning(t *testing.T) {
	want := map[string]string{
		"standard":         "E2 A2 D3 G3 B3 E4",
		"half step down":   "Eb2 Ab2 Db3 Gb3 Bb3 Eb4",
		"whole step down":  "D2 G2 C3 F3 A3 D4",
		"drop D":           "D2 A2 D3 G3 B3 E4",
		"double drop D":    "D2 A2 D3 G3 B3 D4",
		"DADGAD":           "D2 A2 D3 G3 A3 D4",
		"open G":           "D2 G2 D3 G3 B3 D4",
		"open G minor":     "D2 G2 D3 G3 Bb3 D4",
		"open D":           "D2 A2 D3 F#3 A3 D4",
		"open D minor":     "D2 A2 D3 F3 A3 D4",
		"open E":           "E2 B2 E3 G#3 B3 E4",
		"open A":           "E2 A2 E3 A3 C#4 E4",
		"seven-string":     "B1 E2 A2 D3 G3 B3 E4",
		"baritone":         "B1 E2 A2 D3 F#3 B3",
		"ukulele":          "G4 C4 E4 A4",
		"mandolin":         "G3 D4 A4 E5",
		"tenor guitar":     "C3 G3 D4 A4",
		"bass":             "E1 A1 D2 G2",
		"five-string bass": "B0 E1 A1 D2 G2",
	}
	got := map[string]string{}
	for _, name := range fretboard.TuningNames() {
		tuning := parsed(t, fretboard.ParseTuning, name)
		got[name] = tuning.String()
		if tuning.Name() != name {
			t.Errorf("%s calls itself %q", name, tuning.Name())
		}
		if _, err := (fretboard.Instrument{Tuning: tuning}).Normal(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if name := parsed(t, fretboard.ParseTuning, "E2 A2 D3 G3 B3 F4").Name(); name != "" {
		t.Errorf("a tuning without a name is called %q", name)
	}
}

// TestRelationsBetweenTunings follows from what the names say.
func TestRelationsBetweenTunings(t *testing.T) {
	for _, c := range []struct {
		why, from, to string
		up            fretboard.Fret
	}{
		{"a half step down", "standard", "half step down", -1},
		{"a whole step down", "standard", "whole step down", -2},
		{"open E is open D two frets up", "open D", "open E", 2},
		{"open A is open G two frets up", "open G", "open A", 2},
		{"a baritone is a fourth below", "standard", "baritone", -5},
	} {
		from, to := parsed(t, fretboard.ParseTuning, c.from), parsed(t, fretboard.ParseTuning, c.to)
		for s := fretboard.StringNumber(1); s <= 6; s++ {
			if got, want := to.Open(s).Pitch(), from.Open(s).Pitch().Up(c.up); got != want {
				t.Errorf("%s: string %d sounds %d, want %d", c.why, s, got, want)
			}
		}
	}
	guitar, bass := fretboard.Standard(), parsed(t, fretboard.ParseTuning, "bass")
	for s := fretboard.StringNumber(1); s <= 4; s++ {
		if bass.Open(s).Pitch().Up(12) != guitar.Open(s+2).Pitch() {
			t.Errorf("string %d of the bass is not an octave below the guitar's string %d", s, s+2)
		}
	}
}
