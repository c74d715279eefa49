package box_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing/box"
)

var update = flag.Bool("update", false, "write the golden files anew")

const twelveStrings = "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4" // a double course each, counted singly

// sheets are the sheets of boxes that stand as golden files, each followed by
// the words of its boxes.
var sheets = []struct {
	name       string
	instrument fretboard.Instrument
	chords     string
	options    box.Options
}{
	{"open", fretboard.Instrument{}, "C=x32010 G=320003 D=xx0232 G/B=x20003 Em=022000 E7=020100", box.Options{}},
	{"barred", fretboard.Instrument{}, "F=133211 Bb=x13331 Am=577555 Dm=x57765 A=x-10-12-12-12-10 F#=x4342x", box.Options{Width: 64}},
	{"capo-left", fretboard.Instrument{Capo: 3, Hand: fretboard.LeftRestrung}, "C=x32010 F=133211 A=x-10-12-12-12-10", box.Options{}},
	{"turned", fretboard.Instrument{Hand: fretboard.LeftTurned}, "C=x32010 F=xx3211", box.Options{}},
	{"ukulele", tuned("ukulele"), "C=0003 G7=0212 Bb=3211 D=2220 Am=2000 F=2010", box.Options{}},
	{"twelve-strings", tuned(twelveStrings), "Em=002222000000 F=113333221111 N.C.=xxxxxxxxxx00", box.Options{}},
	{"twelve-strings-left", fretboard.Instrument{Tuning: fretboard.MustParseTuning(twelveStrings), Hand: fretboard.LeftRestrung},
		"Em=002222000000 A=x-x-12-12-14-14-14-14-14-14-12-12", box.Options{}},
	{"one-string", tuned("A2"), "A=0- D=5- Bbmaj7#11/D=17- A=24-", box.Options{}},
	{"unheld", fretboard.Instrument{}, "Cmaj9=135246 C=x32010 F#m(maj9)add11/C#=x-4-1-9-2-7", box.Options{Width: 64}},
	{"last-fret", fretboard.Instrument{Frets: 36, Tuning: fretboard.MustParseTuning("E1 A1 D2 G2")}, "C=x-35-34-x E=36-x-34-x G=3-36-x-x", box.Options{}},
}

// encoded returns the sheet of boxes under options that must be good.
func encoded(boxes []box.Box, o box.Options) string {
	var b strings.Builder
	if err := box.Encode(&b, boxes, o); err != nil {
		panic(err)
	}
	return b.String()
}

func TestGoldenSheets(t *testing.T) {
	for _, s := range sheets {
		t.Run(s.name, func(t *testing.T) {
			var boxes []box.Box
			words := ""
			for _, entry := range strings.Fields(s.chords) {
				b := box.Of(held(t, s.instrument, entry))
				boxes = append(boxes, b)
				words += "\n" + strings.Join(b.Words(), "\n") + "\n"
			}
			got := []byte(encoded(boxes, s.options) + words)
			path := filepath.Join("testdata", s.name+".txt")
			if *update {
				if err := os.WriteFile(path, got, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Error(cmp.Diff(string(want), string(got)))
			}
		})
	}
}

// TestEveryGoldenFileHasASheet finds files that no test reads any more.
func TestEveryGoldenFileHasASheet(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(sheets) {
		t.Errorf("%d golden files, %d sheets", len(files), len(sheets))
	}
}

// TestLegendsSayOnlyWhatOccurs counts the entries of legends.
func TestLegendsSayOnlyWhatOccurs(t *testing.T) {
	for chords, want := range map[string][]string{
		"Em=022000":                {"0", "===", "1-4", "below", "^"},
		"A=x-10-12-12-12-10":       {"x", "left", "1-4", "1--1", "below", "^"},
		"C=135246 C=135246":        {"===", "*", "below", "^", "note"},
		"C=135246 Em=135246":       {"===", "*", "below", "^", "note", "note"},
		"Em=000000":                {"0", "===", "below", "^"},
		"Em=xx222x A=8xx888":       {"x", "===", "left", "1-4", "1--1", "below", "^"},
		"Em=x-x-x-x-10-x A=xx7xx0": {"x", "0", "left", "1-4", "below", "^"},
	} {
		var boxes []box.Box
		for _, entry := range strings.Fields(chords) {
			boxes = append(boxes, box.Of(held(t, fretboard.Instrument{}, entry)))
		}
		sheet := encoded(boxes, box.Options{Width: 1000})
		var got []string
		for _, line := range strings.Split(sheet[strings.LastIndex(sheet, "\n\n")+2:], "\n") {
			if sign, _, _ := strings.Cut(line, " "); sign != "" {
				got = append(got, sign)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", chords, diff)
		}
	}
}
