package text_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/text"
)

var update = flag.Bool("update", false, "write the golden files anew")

// A song is what a passage for a test is made of.
type song struct {
	name, chords, figures string
	setting               picking.Setting
	options               text.Options
}

func tuned(tuning string) fretboard.Instrument {
	return fretboard.Instrument{Tuning: fretboard.MustParseTuning(tuning)}
}

const twelveStrings = "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4" // a double course each, counted singly

// songs are the sheets that stand as golden files.
var songs = []song{
	{"six-eight", "Am=x02210 | G=320003 | Dm=xx0231 | E=022100", "5 3 2 1 2 3",
		picking.Setting{Title: "Evening Water", Meter: picking.SixEight, Tempo: 66}, text.Options{}},
	{"six-eight-by-the-beat", "Am=x02210 | G=320003", "5 3 2 1 2 3",
		picking.Setting{Meter: picking.SixEight, Tempo: 66}, text.Options{Count: picking.CountBeats}},
	{"capo-repeat-rest-own", "|: A7=x02020 | D=xx0232 G=5x0003 :| Em7=222030 | A7=x02020", "5 3 2u 1 - . 2 3",
		picking.Setting{Title: "Third Fret", Instrument: fretboard.Instrument{Capo: 3, Tuning: fretboard.MustParseTuning("drop D")}},
		text.Options{}},
	{"repeat-differs", "C=x32010 | |: G/B=x20003 | Am=x02210 | C/G=332010 :| F=133211", "5 3 2 1 2 3 2 5",
		picking.Setting{Title: "Round Twice"}, text.Options{}},
	{"repeat-once-bar", "|: Am=x02210 :| |: E=022100 :|", "6 3 2 1", picking.Setting{Once: true}, text.Options{}},
	{"silence-losses-once", "D=xx0232 | N.C. | D=xx0232 | Am=x02210", "6 4 3 2 1 2 3 4",
		picking.Setting{Once: true, Fill: picking.Ring}, text.Options{}},
	{"seven-eight", "Em=022000 | D=xx0232 | Cmaj7=x32000 | B7=x21202", "1/8: 5 3 2 1 3 2 1",
		picking.Setting{Title: "Seven Steps", Meter: picking.Meter{Count: 7, Unit: 8}, Tempo: 160}, text.Options{}},
	{"twelve-eight", "G=320003 | C/G=332010", "6 3 2 1 2 3 5 3 2 1 2 3",
		picking.Setting{Title: "Slow Twelve", Meter: picking.TwelveEight, Tempo: 54}, text.Options{}},
	{"figures-mixed", "D=xx0232@1 A=x-12-14-14-14-12@2 | C=x32010@3 | G=320003@4", "1/8: 5 3 2 1; 1/12: 5 3 2u; 1/4: 5 3; 1/16: 5d 3 2 1 2 3 2u 1",
		picking.Setting{Title: "Four Figures"}, text.Options{}},
	{"sixteenths-turned", "D=xx0232 | A=x02220", "1/16: 6 4 3 2 1 2 3 4",
		picking.Setting{Instrument: fretboard.Instrument{Hand: fretboard.LeftTurned}}, text.Options{}},
	{"thirty-seconds", "C=x32010", "1/32: 5 3 2 1 2 3 2 1", picking.Setting{Tempo: 40}, text.Options{}},
	{"ukulele", "C=0003 | Am=2000 | F=2010 | G7=0212", "4 3 2 1 - 2",
		picking.Setting{Title: "Four Strings", Meter: picking.ThreeFour, Instrument: tuned("ukulele"), Change: picking.Carry}, text.Options{}},
	{"twelve-strings", "D=x-x-x-x-0-0-2-2-3-3-10-10 | Em=022220000000", "8 6 4 2 1 3 5 7",
		picking.Setting{Title: "Twelve Strings", Instrument: tuned(twelveStrings)}, text.Options{}},
	{"seven-strings-left", "F#m7b5=x2x2210 Bbmaj7#11/D=x-x-12-12-14-10-12 | Ebmaj9#11=xx11011 C#m7b5/G=x3x2002", "7 4 3 2",
		picking.Setting{Title: "A Title of Sixty Characters, Counted to the Last of Them, Ok",
			Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("seven-string"), Hand: fretboard.LeftRestrung}},
		text.Options{}},
	{"one-string", "A=0 | D=5", "1 1 1 1", picking.Setting{Instrument: tuned("A2")}, text.Options{}},
	{"narrow", "Am=x02210 | Bm7b5/A=x0423x G=320003", "1/12: 5 3 2 1 2 3",
		picking.Setting{Title: "A narrow sheet for a small screen in the pocket"}, text.Options{Width: 40}},
	{"split-bars", "Bm7b5/A=x0423x F#m7b5=2x2210 Ebmaj7#11=x65366 G=320003 | Am=x02210", "1/16: 5 3 2 1",
		picking.Setting{Meter: picking.Meter{Count: 4, Unit: 4}}, text.Options{Width: 40}},
	{"sixteen-bars", sixteenBars, "5 3 2 1 2 3 2 3", picking.Setting{Title: "Sixteen Bars", Tempo: 92}, text.Options{}},
	{"sixteenths-in-six", "Am=x02210 | E=022100", "1/16: 5 3 2 1 2 3",
		picking.Setting{Meter: picking.SixEight, Strokes: picking.Jig, Fit: picking.Bass}, text.Options{}},
	{"german", "Bm7b5=x2323x | Bb/D=x10331 | G/B=x20003 | D=x20232", "5 3 2 1 2 3",
		picking.Setting{Title: "Heimweg", Meter: picking.SixEight, Instrument: fretboard.Instrument{Capo: 1}}, text.Options{Spelling: fretboard.German}},
	{"mixed-german", "Gm=x00000 | Bb=x33300 | G/B=x40010", "5 4 3 2 1 2 3 4",
		picking.Setting{Instrument: tuned("open G minor")}, text.Options{Spelling: fretboard.MixedGerman}},
	{"odd-title", "Am=x02210", "5 3 2 1", picking.Setting{Title: "Tab\there\nand \x1b[31mred\x07, Übung № 1 \u202eback"}, text.Options{}},
}

const sixteenBars = `Am=x02210 | G=320003 | F=133211 | E7=020100
	Am=x02210 | C=x32010 | Dm=xx0231 | E7=020100
	F=133211 | C=x32010 | G=320003 | Am=x02210
	Dm=xx0231 | Am=x02210 | E7=020100 | Am=x02210 E7=020100`

// arranged returns the passage of a song, which must be good.
func arranged(t testing.TB, s song) picking.Passage {
	t.Helper()
	chart, err := picking.ParseProgression(s.chords)
	if err != nil {
		t.Fatal(err)
	}
	figures, err := picking.ParseFigures(s.figures)
	if err != nil {
		t.Fatal(err)
	}
	p, err := picking.Arrange(chart, figures, s.setting)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// encoded returns the sheet of a passage, which must be good.
func encoded(t testing.TB, p picking.Passage, o text.Options) string {
	t.Helper()
	var b strings.Builder
	if err := text.Encode(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGoldenSheets(t *testing.T) {
	for _, s := range songs {
		t.Run(s.name, func(t *testing.T) {
			got := []byte(encoded(t, arranged(t, s), s.options))
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

// TestEveryGoldenFileHasASong finds files that no test reads any more.
func TestEveryGoldenFileHasASong(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(songs) {
		t.Errorf("%d golden files, %d songs", len(files), len(songs))
	}
}

// TestGoldenSheetsReadBack holds the sheets that stand as golden files to what
// the passages say, as the properties do with chance ones.
func TestGoldenSheetsReadBack(t *testing.T) {
	for _, s := range songs {
		t.Run(s.name, func(t *testing.T) {
			p := arranged(t, s)
			for _, o := range []text.Options{s.options, {Count: picking.CountUnits}, {Count: picking.CountEighths, Width: 60, Spelling: fretboard.German},
				{Count: picking.CountSixteenths, Width: 120, Spelling: fretboard.MixedGerman}, {Count: picking.CountBeats, Width: 300}} {
				if fault := readBack(p, o, encoded(t, p, o)); fault != "" {
					t.Errorf("%+v: %s", o, fault)
				}
			}
		})
	}
}
