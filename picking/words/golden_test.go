package words_test

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
	"weft.example/picking/words"
)

var update = flag.Bool("update", false, "write the golden files anew")

// A song is what a passage for a test is made of.
type song struct {
	name, chords, figures string
	setting               picking.Setting
	options               words.Options
}

func tuned(tuning string) fretboard.Instrument {
	return fretboard.Instrument{Tuning: fretboard.MustParseTuning(tuning)}
}

const (
	usual         = "Am=x02210 | G=320003 | Dm=xx0231 | E=022100"
	twelveStrings = "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4" // a double course each, counted singly
)

// long is a song of 300 bars: verses of 16 and choruses of 8 in turn, and an
// ending.
var long = func() string {
	verse := strings.Repeat("Am=x02210 | G=320003 | F=133211 | E7=020100 | Am=x02210 | C=x32010 | Dm=xx0231 | E7=020100 | ", 2)
	chorus := "C=x32010 | G=320003 | Am=x02210 | F=133211 | C=x32010 | G=320003 | F=133211 G=320003 | C=x32010 | "
	return strings.Repeat(verse+chorus, 12) + strings.Repeat("Am=x02210 | E7=020100 | ", 5) + "Dm=xx0231 | Am=x02210"
}()

var songs = []song{
	{"six-eight", usual, "5 3 2 1 2 3", picking.Setting{Title: "Evening Water", Meter: picking.SixEight, Tempo: 66}, words.Options{}},
	{"six-eight-page", usual, "5 3 2 1 2 3", picking.Setting{Title: "Evening Water", Meter: picking.SixEight, Tempo: 66}, words.Options{HTML: true}},
	{"braille", usual, "5 3 2 1 2 3", picking.Setting{Title: "Evening Water", Meter: picking.SixEight, Tempo: 66}, words.Options{Width: 40}},
	{"ukulele", "C=0003 | Am=2000 | F=2010 | G7=0212", "4 3 2 1 - 2",
		picking.Setting{Title: "Four Strings", Meter: picking.ThreeFour, Instrument: tuned("ukulele"), Change: picking.Carry}, words.Options{}},
	{"capo-left", "|: A7=x02020 | D=xx0232 G=5x0003 :| Em7=222030 | A7=x02020", "5 3 2u 1 - . 2 3",
		picking.Setting{Title: "Third Fret", Instrument: fretboard.Instrument{Capo: 3, Tuning: fretboard.MustParseTuning("drop D"), Hand: fretboard.LeftRestrung}},
		words.Options{}},
	{"triplets", "Am=x02210@1 C=x32010@2 | F#m7b5=2x2210@2", "1/12: 5 - 3 - - 2; 1/16: 5 3 2 1",
		picking.Setting{Title: "Threes & <Fours>", Once: true}, words.Options{}},
	{"twelve-strings", "D=x-x-x-x-0-0-2-2-3-3-10-10 | Em=022220000000", "8 6 4 2 1 3 5 7",
		picking.Setting{Title: "Twelve Strings", Instrument: tuned(twelveStrings)}, words.Options{}},
	{"repeat-differs-page", "C=x32010 | |: G/B=x20003 | Am=x02210 | C/G=332010 :| F=133211 | C=x-x-10-9-8-8", "5 3 2 1 2 3 2 5",
		picking.Setting{Title: "Round <Twice> & \"Back\""}, words.Options{HTML: true}},
	{"silence-losses-once", "D=xx0232 | N.C. | D=xx0232 | Am=x02210", "6 4 3 2 1 2 3 4",
		picking.Setting{Once: true, Fill: picking.Ring, Strokes: picking.Alternate}, words.Options{}},
	{"turned-figures", "Em=022000@2 | D/A=x00232@1 | Bbmaj9#11/D=x10331@2", "1/16: 6 3 2 1; 1/8: 6 1 4d 2 3 . 2 1",
		picking.Setting{Title: "Turned", Instrument: fretboard.Instrument{Hand: fretboard.LeftTurned}}, words.Options{}},
	{"three-hundred-bars", long, "5 3 2 1 2 3 2 3", picking.Setting{Title: "Three Hundred Bars"}, words.Options{}},
}

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

// encoded returns the words of a passage, which must be good.
func encoded(t testing.TB, p picking.Passage, o words.Options) string {
	t.Helper()
	var b strings.Builder
	if err := words.Encode(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func (s song) file() string {
	if s.options.HTML {
		return filepath.Join("testdata", s.name+".html")
	}
	return filepath.Join("testdata", s.name+".txt")
}

func TestGoldenWords(t *testing.T) {
	for _, s := range songs {
		t.Run(s.name, func(t *testing.T) {
			got := []byte(encoded(t, arranged(t, s), s.options))
			if *update {
				if err := os.WriteFile(s.file(), got, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(s.file())
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
	files, err := filepath.Glob("testdata/*.*")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(songs) {
		t.Errorf("%d golden files, %d songs", len(files), len(songs))
	}
}

// TestALongSongStaysShort holds 300 bars of a song with verses to a few words a
// bar.
func TestALongSongStaysShort(t *testing.T) {
	p := arranged(t, songs[len(songs)-1])
	text := encoded(t, p, words.Options{})
	if len(p.Bars) != 300 {
		t.Fatalf("%d bars", len(p.Bars))
	}
	all, bars := len(strings.Fields(text)), len(strings.Fields(text[strings.Index(text, "\nBars\n"):]))
	t.Logf("%d words, %d of them on 300 bars", all, bars)
	if all > 5*300 {
		t.Errorf("%d words for 300 bars", all)
	}
}
