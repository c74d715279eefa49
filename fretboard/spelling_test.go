package fretboard_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

const (
	english = fretboard.English
	german  = fretboard.German
	mixed   = fretboard.MixedGerman
)

// TestGermanNames: the first nine by the documentation of music21 (BSD),
// pitch.Pitch.german and languageExcerpts, the rest by the rule they follow,
// common practice.
func TestGermanNames(t *testing.T) {
	for _, c := range []struct{ german, english string }{
		{"B", "Bb"}, {"H", "B"}, {"Es", "Eb"}, {"Cis", "C#"}, {"Ases", "Abb"}, {"Asas", "Abb"}, {"Heses", "Bbb"}, {"His", "B#"}, {"Eisis", "E##"},
		{"C", "C"}, {"D", "D"}, {"E", "E"}, {"F", "F"}, {"G", "G"}, {"A", "A"},
		{"Dis", "D#"}, {"Eis", "E#"}, {"Fis", "F#"}, {"Gis", "G#"}, {"Ais", "A#"},
		{"Ces", "Cb"}, {"Des", "Db"}, {"Fes", "Fb"}, {"Ges", "Gb"}, {"As", "Ab"}, {"Hes", "Bb"},
		{"Cisis", "C##"}, {"Fisis", "F##"}, {"Hisis", "B##"}, {"Ceses", "Cbb"}, {"Eses", "Ebb"}, {"Geses", "Gbb"},
		{"F#", "F#"}, {"Eb", "Eb"}, {"A♭", "Ab"}, {"Gx", "G##"}, {"H#", "B#"}, {"Hb", "Bb"}, {"Hbb", "Bbb"}, {"H♮", "B"}, {"Cbbbb", "Cbbbb"},
	} {
		for _, text := range []string{c.german, strings.ToLower(c.german[:1]) + c.german[1:]} {
			n, err := fretboard.ParseNoteIn(text, german)
			if err != nil || n.String() != c.english {
				t.Errorf("%s: %v, %v; want %s", text, n, err, c.english)
			}
			m, err := fretboard.ParseNoteIn(text, mixed)
			if doubt := c.german == "B"; (err != nil) != doubt || !doubt && m != n {
				t.Errorf("%s in the mixed way: %v, %v; want %v", text, m, err, n)
			}
		}
	}
}

func TestNotesPrintInEachSpelling(t *testing.T) {
	for _, c := range []struct{ english, german, mixed, germanChart, mixedChart string }{
		{"B", "H", "H", "H", "H"},
		{"Bb", "B", "Bb", "B", "B♭"},
		{"Bbb", "Hbb", "Bbb", "H𝄫", "B𝄫"},
		{"Bbbb", "Hbbb", "Bbbb", "H♭𝄫", "B♭𝄫"},
		{"B#", "H#", "H#", "H♯", "H♯"},
		{"B##", "H##", "H##", "H𝄪", "H𝄪"},
		{"Eb", "Eb", "Eb", "E♭", "E♭"},
		{"Ab", "Ab", "Ab", "A♭", "A♭"},
		{"F#", "F#", "F#", "F♯", "F♯"},
	} {
		n := parsed(t, fretboard.ParseNote, c.english)
		got := fmt.Sprint(n.StringIn(german), n.StringIn(mixed), n.ChartIn(german), n.ChartIn(mixed))
		if want := fmt.Sprint(c.german, c.mixed, c.germanChart, c.mixedChart); got != want {
			t.Errorf("%s: %s, want %s", c.english, got, want)
		}
		if n.StringIn(english) != n.String() || n.ChartIn(english) != n.Chart() || n.StringIn(9) != n.String() {
			t.Errorf("%s in English is %s, %s", n, n.StringIn(english), n.ChartIn(english))
		}
	}
}

func TestNotesThatASpellingRefuses(t *testing.T) {
	for _, c := range []struct {
		text     string
		spelling fretboard.Spelling
		at, mend string
	}{
		{"B", mixed, "0:B", "write H or Bb"},
		{"b", mixed, "0:b", "write h or bb"},
		{"B♮", mixed, "0:B♮", "write H or Bb"},
		{"B#", mixed, "0:B#", "write H or H#"},
		{"b##", mixed, "0:b##", "write h or h#"},
		{"Bbbbbb", mixed, "1:bbbbb", "fewer"},
		{"Bb", german, "0:Bb", "write B or Hbb"},
		{"b♭", german, "0:b♭", "write b or hbb"},
		{"B#", german, "0:B#", "write H or H#"},
		{"B♮", german, "0:B♮", "write H or B"},
		{"Bes", german, "1:es", "from A to H"},
		{"Bis", mixed, "0:B", "write H or Bb"},
		{"Fisb", german, "3:b", "from A to H"},
		{"Es♮", german, "2:♮", "from A to H"},
		{"Aes", german, "1:es", "from A to H"},
		{"Asus", german, "1:sus", "from A to H"},
		{"FIS", german, "1:IS", "from A to H"},
		{"I", german, "0:I", "from A to H"},
		{"", german, "0:", "from A to H"},
		{"C#####", german, "1:#####", "fewer"},
		{"H", english, "0:H", "from A to G"},
		{"Fis", english, "1:is", "from A to G"},
		{"fis", english, "0:fis", "from A to G"},
	} {
		n, err := fretboard.ParseNoteIn(c.text, c.spelling)
		var located fretboard.Located
		if !errors.As(err, &located) {
			t.Errorf("%s in %s is %v", c.text, c.spelling, n)
			continue
		}
		p := located.Where()
		if at := fmt.Sprintf("%d:%s", p.Offset, p.Text()); at != c.at || !strings.Contains(p.Mend, c.mend) || p.Source != c.text || p.Notation != "note" {
			t.Errorf("%s in %s: %v; want %s and %q", c.text, c.spelling, err, c.at, c.mend)
		}
	}
}

// TestTheSOfSusIsNoEnding holds the places where a suspended chord begins like
// a German flat.
func TestTheSOfSusIsNoEnding(t *testing.T) {
	for text, want := range map[string]string{
		"Asus4": "A", "Esus": "E", "ASUS4": "A", "AsUS4": "A", "Assus4": "As", "Essus2": "Es", "Asassus4": "Asas", "Esessus4": "Eses",
		"asus4": "a", "essus4": "es", "Asus": "A", "As/Es": "As", "Dsus4": "D", "Asu": "As", "Fis7": "Fis", "Desm": "Des", "His": "His",
	} {
		n, size, err := fretboard.ScanNoteIn(text, german)
		if whole, _ := fretboard.ParseNoteIn(want, german); err != nil || size != len(want) || n != whole {
			t.Errorf("%s begins with %v, %d bytes, %v; want %s", text, n, size, err, want)
		}
	}
	if n := testing.AllocsPerRun(100, func() { fretboard.ScanNoteIn("Asus4", german) }); n != 0 {
		t.Errorf("a scan allocates %v times", n)
	}
}

func TestSpellingProperties(t *testing.T) {
	spellings := gen.IntRange(0, 2).Map(func(i int) fretboard.Spelling { return fretboard.Spelling(i) })
	p := properties()
	p.Property("printing a note in a spelling and parsing it there are inverse", prop.ForAll(func(n fretboard.Note, s fretboard.Spelling) bool {
		plain, err := fretboard.ParseNoteIn(n.StringIn(s), s)
		chart, err2 := fretboard.ParseNoteIn(n.ChartIn(s), s)
		return err == nil && err2 == nil && plain == n && chart == n
	}, notes(), spellings))
	p.Property("a name means one note in both German ways, or is refused in one", prop.ForAll(func(n fretboard.Note, s fretboard.Spelling) bool {
		text := n.StringIn(s)
		a, errA := fretboard.ParseNoteIn(text, german)
		b, errB := fretboard.ParseNoteIn(text, mixed)
		return errA != nil || errB != nil || a == b
	}, notes(), spellings))
	p.Property("in English the scan is that without a spelling", prop.ForAll(func(text string) bool {
		n, size := fretboard.ScanNote(text)
		in, sizeIn, err := fretboard.ScanNoteIn(text, english)
		return n == in && size == sizeIn && (err == nil || size == 0)
	}, gen.OneGenOf(gen.AnyString(), gopter.CombineGens(notes(), gen.AnyString()).Map(func(v []any) string {
		return v[0].(fretboard.Note).Chart() + v[1].(string)
	}))))
	p.Property("the names of the spellings and their words are inverse", prop.ForAll(func(i int) bool {
		s, err := fretboard.ParseSpelling(strings.ToUpper(fretboard.Spelling(i).String()))
		return (err == nil) == (i <= 2) && (err != nil || s == fretboard.Spelling(i))
	}, gen.IntRange(0, 9)))
	check(t, p)
}

func FuzzScanNoteIn(f *testing.F) {
	for _, text := range []string{"B", "Bb7", "H", "hes", "Heses", "Asus4", "Assus4", "asas", "Fisis#", "b♭", "C#####", "Esesus"} {
		f.Add(text, uint8(german))
		f.Add(text, uint8(mixed))
	}
	f.Fuzz(func(t *testing.T, text string, spelling uint8) {
		s := fretboard.Spelling(spelling % 3)
		n, size, err := fretboard.ScanNoteIn(text, s)
		if err != nil {
			var located fretboard.Located
			if !errors.As(err, &located) || located.Where().Offset+located.Where().Length > len(text) || size != 0 || n != (fretboard.Note{}) {
				t.Fatalf("%q in %s: %v, %d, %v", text, s, n, size, err)
			}
			return
		}
		if size == 0 {
			return
		}
		if again, err := fretboard.ParseNoteIn(text[:size], s); s != english && (err != nil || again != n) {
			t.Fatalf("%q in %s begins with %v, and %q is %v, %v", text, s, n, text[:size], again, err)
		}
		if again, err := fretboard.ParseNoteIn(n.StringIn(s), s); err != nil || again != n {
			t.Fatalf("%v prints in %s as %q, which reads as %v, %v", n, s, n.StringIn(s), again, err)
		}
	})
}

func ExampleNote_StringIn() {
	for _, text := range []string{"B", "Bb", "F#"} {
		n, _ := fretboard.ParseNote(text)
		fmt.Println(n.StringIn(fretboard.English), n.StringIn(fretboard.German), n.StringIn(fretboard.MixedGerman))
	}
	// Output:
	// B H H
	// Bb B Bb
	// F# F# F#
}
