package voicing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestGermanKeys holds keys as German sheets write them, small for minor and
// capital for major (common practice).
func TestGermanKeys(t *testing.T) {
	for _, c := range []struct{ texts, german, mixed string }{
		{"C|C-Dur|C Dur|CDur|C-dur|C major|C-DUR| C ", "C", "C"},
		{"h|hm|h-Moll|h-moll|H-Moll|H moll|Hm|h Moll|hmoll|h - Moll|h–Moll|h‑Moll|h minor|h-|H-", "Bm", "Bm"},
		{"H|H-Dur|HDur|H maj", "B", "B"},
		{"Es-Dur|Es|Eb-Dur|E♭|Es dur|EsDur", "Eb", "Eb"},
		{"As|As-Dur|Ab", "Ab", "Ab"},
		{"as|as-Moll|abm|As-Moll", "Abm", "Abm"},
		{"fis-Moll|fis|f#|f♯-Moll|Fis-Moll|F#m|fis m", "F#m", "F#m"},
		{"a|a Moll|Am|am|a-Moll|A-Moll|amoll|a min", "Am", "Am"},
		{"es|es-Moll", "Ebm", "Ebm"},
		{"Ces-Dur|Ces", "Cb", "Cb"},
		{"Cis", "C#", "C#"},
		{"ais-Moll", "A#m", "A#m"},
		{"Hb|Hes-Dur", "Bb", "Bb"},
		{"B|B-Dur|B Dur", "Bb", ""},
		{"b|b-Moll|Bm|bm|B-Moll", "Bbm", ""},
		{"Bb|Bb-Dur|B♭", "", "Bb"},
		{"bb|bb-Moll|Bbm", "", "Bbm"},
	} {
		for text := range strings.SplitSeq(c.texts, "|") {
			for s, want := range map[fretboard.Spelling]string{german: c.german, mixed: c.mixed} {
				k, err := voicing.ParseKeyIn(text, s)
				if want == "" && err == nil || want != "" && (err != nil || k.String() != want) {
					t.Errorf("%q in %s is %v, %v; want %s", text, s, k, err, want)
				}
			}
		}
	}
}

func TestGermanKeyErrors(t *testing.T) {
	for _, c := range []struct {
		text       string
		in         fretboard.Spelling
		at, mend   string
		impossible bool
	}{
		{"", german, "0:", "write a letter from A to H and Dur or Moll, such as Es-Dur or fis-Moll", false},
		{"Q", mixed, "0:Q", "write a letter from A to H and Dur or Moll, such as Es-Dur or fis-Moll", false},
		{" B-Dur", mixed, "1:B", "write H or Bb", false},
		{"b-Moll", mixed, "0:b", "write h or bb", false},
		{"Bb-Dur", german, "0:Bb", "write B or Hbb", false},
		{"h dorisch", german, "2:dorisch", "write Moll for a minor key, Dur for a major one, such as h-Moll or Es-Dur", false},
		{"h--Moll", german, "1:--Moll", "write Moll for a minor key, Dur for a major one, such as h-Moll or Es-Dur", false},
		{"Aes", german, "1:es", "write Moll for a minor key, Dur for a major one, such as h-Moll or Es-Dur", false},
		{" c-Dur", german, "2:-Dur", "write a capital tonic for a major key, Moll for a minor one", true},
		{"a major", mixed, "2:major", "write a capital tonic for a major key, Moll for a minor one", true},
		{"aM", german, "1:M", "write a capital tonic for a major key, Moll for a minor one", true},
		{"Gis-Dur ", german, "0:Gis-Dur", "write Ab, which sounds the same", true},
		{"ces", german, "0:ces", "write Hm, which sounds the same", true},
		{"Ais", german, "0:Ais", "write B, which sounds the same", true},
		{"Ais", mixed, "0:Ais", "write Bb, which sounds the same", true},
		{"C#####", german, "1:#####", "write the note with fewer", true},
		{"H\xff", german, "1:\xff", "save the text as UTF-8", false},
		{"h-Moll", fretboard.English, "0:h", "write B for H and Bb for B, or read it in a German spelling", false},
		{"C-Dur", fretboard.English, "1:-Dur", "write m or minor for a minor key, nothing or major for a major one", false},
	} {
		k, err := voicing.ParseKeyIn(c.text, c.in)
		located, ok := err.(fretboard.Located)
		if !ok {
			t.Errorf("%q in %s: %v, %v", c.text, c.in, k, err)
			continue
		}
		var impossible *fretboard.ImpossibleError
		p := located.Where()
		if at := fmt.Sprintf("%d:%s", p.Offset, p.Text()); k != (voicing.Key{}) || p.Notation != "key" || p.Source != c.text ||
			at != c.at || p.Mend != c.mend || errors.As(err, &impossible) != c.impossible {
			t.Errorf("%q in %s: %v, %v, %+v", c.text, c.in, k, err, p)
		}
	}
}

func TestKeySpellingProperties(t *testing.T) {
	p := seeded(1000)
	spellings := gen.IntRange(0, 3).Map(func(i int) fretboard.Spelling { return fretboard.Spelling(i) })
	p.Property("a key printed in a spelling reads there as the same key", prop.ForAll(
		func(k voicing.Key, s fretboard.Spelling) bool {
			again, err := voicing.ParseKeyIn(k.StringIn(s), s)
			return err == nil && again == k || k == voicing.Key{} && k.StringIn(s) == "no key"
		}, keys(), spellings))
	p.Property("a German tonic with Dur or Moll is that key, and so is its letter alone, small for minor", prop.ForAll(
		func(k voicing.Key, mixedWay bool, tie int) bool {
			if k == (voicing.Key{}) {
				return true
			}
			s := map[bool]fretboard.Spelling{false: german, true: mixed}[mixedWay]
			tonic, word := k.Tonic().StringIn(s), "Dur"
			if k.Minor() {
				tonic, word = strings.ToLower(tonic[:1])+tonic[1:], "Moll"
			}
			long, err := voicing.ParseKeyIn(tonic+[]string{"-", " ", "", " - "}[tie]+word, s)
			short, errShort := voicing.ParseKeyIn(tonic, s)
			return err == nil && errShort == nil && long == k && short == k
		}, keys(), gen.Bool(), gen.IntRange(0, 3)))
	p.Property("without a B or H an English key means the same in every spelling", prop.ForAll(
		func(k voicing.Key, s fretboard.Spelling) bool {
			in, err := voicing.ParseKeyIn(k.String(), s)
			return k == voicing.Key{} || k.Tonic().Letter == fretboard.B || err == nil && in == k
		}, keys(), spellings))
	p.TestingRun(t)
}

// FuzzParseKeyIn: what reads in a spelling prints and reads again there, and
// a key printed in any spelling is the same key in it.
func FuzzParseKeyIn(f *testing.F) {
	for _, text := range []string{"h", "h-Moll", "H-Dur", "Es-Dur", "fis-Moll", "a Moll", "bb", "B", "as", "Asas", "c-Dur", "h--"} {
		f.Add(text, uint8(german))
		f.Add(text, uint8(mixed))
	}
	f.Fuzz(func(t *testing.T, text string, spelling uint8) {
		s := fretboard.Spelling(spelling % 3)
		k, err := voicing.ParseKeyIn(text, s)
		if err != nil {
			located, ok := err.(fretboard.Located)
			if !ok || k != (voicing.Key{}) {
				t.Fatalf("%q in %s: %v, %v", text, s, k, err)
			}
			if p := located.Where(); p.Source != text || p.Notation != "key" || p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(text) || p.Reason == "" || p.Mend == "" {
				t.Fatalf("%q in %s: place %+v", text, s, p)
			}
			return
		}
		for in := fretboard.English; in <= mixed; in++ {
			if again, err := voicing.ParseKeyIn(k.StringIn(in), in); err != nil || again != k {
				t.Fatalf("%q prints in %s as %q, which reads as %v, %v", text, in, k.StringIn(in), again, err)
			}
		}
		if padded, err := voicing.ParseKeyIn(" "+text+"\t", s); err != nil || padded != k {
			t.Fatalf("%q in %s is %v, with spaces around %v, %v", text, s, k, padded, err)
		}
	})
}

func ExampleParseKeyIn() {
	for _, text := range []string{"h-Moll", "Es-Dur", "b"} {
		key, err := voicing.ParseKeyIn(text, fretboard.German)
		fmt.Println(key, key.StringIn(fretboard.German), err)
	}
	_, err := voicing.ParseKeyIn("B-Dur", fretboard.MixedGerman)
	fmt.Println(err)
	// Output:
	// Bm Hm <nil>
	// Eb Eb <nil>
	// Bbm Bm <nil>
	// key, byte 0: "B": in doubt, since B is B natural in English and B flat in German; write H or Bb
}
