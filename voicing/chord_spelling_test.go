package voicing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

const (
	german = fretboard.German
	mixed  = fretboard.MixedGerman
)

// TestGermanChords holds symbols of German songbooks against what they are in
// English, in one German way or in both. Small roots for minor and the names
// are common practice; what a text of two readings means is decided here.
func TestGermanChords(t *testing.T) {
	both := []fretboard.Spelling{german, mixed}
	only := func(s fretboard.Spelling) []fretboard.Spelling { return []fretboard.Spelling{s} }
	for _, c := range []struct {
		text, english string
		in            []fretboard.Spelling
	}{
		{"H", "B", both},
		{"H7", "B7", both},
		{"Hm7b5", "Bm7b5", both},
		{"Hb5", "Bb5", both}, // the accidental is the root's
		{"H(b5)", "B(b5)", both},
		{"C/H", "C/B", both},
		{"H/A", "B/A", both},
		{"B", "Bb", only(german)},
		{"Bm7", "Bbm7", only(german)},
		{"G/B", "G/Bb", only(german)},
		{"B-5", "Bb(b5)", only(german)},
		{"B(b5)", "Bb(b5)", only(german)},
		{"Bsus4", "Bbsus4", only(german)},
		{"Bb", "Bb", only(mixed)},
		{"B♭maj7", "Bbmaj7", only(mixed)},
		{"Bbb7", "Bbb7", only(mixed)},
		{"G/Bb", "G/Bb", only(mixed)},
		{"F#m7b5/E", "F#m7b5/E", both},
		{"Fism7b5/E", "F#m7b5/E", both},
		{"Asus4", "Asus4", both},
		{"Esus4", "Esus4", both},
		{"E7sus4/H", "E7sus4/B", both},
		{"Assus4", "Absus4", both},
		{"Essus2", "Ebsus2", both},
		{"As", "Ab", both},
		{"As7/Es", "Ab7/Eb", both},
		{"Asadd9", "Abadd9", both},
		{"Asaug", "Abaug", both},
		{"Esdim", "Ebdim", both},
		{"Ab5", "Ab5", both},
		{"Asb5", "Ab(b5)", both}, // the ending closes the root
		{"Fis#9", "F#(#9)", both},
		{"Heses", "Bbb", both},
		{"Hes/D", "Bb/D", both},
		{"a", "Am", both},
		{"a7", "Am7", both},
		{"am7", "Am7", both},
		{"a-7", "Am7", both},
		{"fis", "F#m", both},
		{"f#7", "F#m7", both},
		{"es", "Ebm", both},
		{"as6", "Abm6", both},
		{"asadd9", "Abmadd9", both},
		{"h", "Bm", both},
		{"h7b5", "Bm7b5", both},
		{"hm7b5", "Bm7b5", both},
		{"h°7", "Bdim7", both},
		{"hø", "Bm7b5", both},
		{"amaj7", "Am(maj7)", both},
		{"aM7", "Am(maj7)", both},
		{"a(maj7)", "Am(maj7)", both},
		{"a/maj7", "Am(maj7)", both},
		{"aadd9", "Amadd9", both},
		{"a/g", "Am/G", both},
		{"a/fis", "Am/F#", both},
		{"d/h", "Dm/B", both},
		{"b", "Bbm", only(german)},
		{"b7", "Bbm7", only(german)},
		{"C/b", "C/Bb", only(german)},
		{"bb", "Bbm", only(mixed)},
		{"C/bb", "C/Bb", only(mixed)},
		{"C7/b9", "C7b9", both}, // a tone, as in English
		{"n.c.", "N.C.", both},
	} {
		for _, s := range []fretboard.Spelling{german, mixed} {
			got, err := voicing.ParseChordIn(c.text, s)
			switch expected := len(c.in) == 2 || c.in[0] == s; {
			case expected && (err != nil || got.String() != c.english):
				t.Errorf("%s in %s is %s, %v; want %s", c.text, s, got, err, c.english)
			case !expected && err == nil:
				t.Errorf("%s in %s is %s and should be refused", c.text, s, got)
			}
		}
	}
}

func TestGermanChordErrors(t *testing.T) {
	syntax, impossible := "syntax", "impossible"
	for _, c := range []struct {
		text           string
		in             fretboard.Spelling
		kind, at, mend string
	}{
		{"B7", mixed, syntax, "0:B", "write H or Bb"},
		{"b7", mixed, syntax, "0:b", "write h or bb"},
		{"G/B", mixed, syntax, "2:B", "write H or Bb"},
		{"G/b", mixed, syntax, "2:b", "write h or bb"},
		{" G/B", mixed, syntax, "3:B", "write H or Bb"},
		{"B#7", mixed, syntax, "0:B#", "write H or H#"},
		{"Bb7", german, syntax, "0:Bb", "write B or Hbb"},
		{"Bb5", german, syntax, "0:Bb", "write B or Hbb"},
		{"bb7", german, syntax, "0:bb", "write b or hbb"},
		{"G/B♭", german, syntax, "2:B♭", "write B or Hbb"},
		{"Hbbb", german, impossible, "1:bbb", "fewer"},
		{"C#####", german, impossible, "1:#####", "fewer"},
		{"J", german, syntax, "0:J", "from A to H"},
		{"C/", mixed, syntax, "2:", "from A to H"},
		{"Aes", german, syntax, "1:es", "Am7"},
		{"Eses7b5x", german, syntax, "7:x", ""},
		{"Fis♯m", german, syntax, "3:♯", ""},
		{"a+", german, impossible, "1:+", "capital"},
		{"aaug7", german, impossible, "1:aug", "capital"},
		{"a5", german, impossible, "1:5", "capital"},
		{"ab5", mixed, impossible, "2:5", "brackets"},
		{"fis4", mixed, impossible, "3:4", "capital"},
		{"asus4", german, impossible, "1:sus4", "add4"},
		{"adom7", german, syntax, "1:dom7", ""},
		{"amaj", german, syntax, "4:", "Cm(maj7)"},
		{"dim", german, syntax, "1:im", ""},
		{"H7", fretboard.English, syntax, "0:H", "German"},
		{"C/h", fretboard.English, syntax, "2:h", "German"},
	} {
		got, err := voicing.ParseChordIn(c.text, c.in)
		var place fretboard.Place
		var s *fretboard.SyntaxError
		var i *fretboard.ImpossibleError
		kind := ""
		switch {
		case errors.As(err, &s):
			kind, place = syntax, s.Place
		case errors.As(err, &i):
			kind, place = impossible, i.Place
		}
		if at := fmt.Sprintf("%d:%s", place.Offset, place.Text()); kind != c.kind || at != c.at || !strings.Contains(place.Mend, c.mend) {
			t.Errorf("%q in %s: %s at %s: %v; want %s at %s, %q", c.text, c.in, kind, at, err, c.kind, c.at, c.mend)
		}
		if got != (voicing.Chord{}) || place.Notation != "chord" || place.Source != c.text {
			t.Errorf("%q: chord %v, place in the %s %q", c.text, got, place.Notation, place.Source)
		}
	}
}

func TestSpellingProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(7)
	parameters.MinSuccessfulTests = 5000
	properties := gopter.NewProperties(parameters)
	spellings := gen.IntRange(0, 2).Map(func(i int) fretboard.Spelling { return fretboard.Spelling(i) })
	head, note := gen.IntRange(0, len(heads)-1), gen.IntRange(0, 34)
	mark := gen.IntRange(1, len(marks)-1)

	properties.Property("a chord printed in a spelling reads there as the same chord", prop.ForAll(
		func(head, root, bass, mark int, s fretboard.Spelling) bool {
			for _, text := range []string{heads[head] + "/" + noteOf(bass).String(), heads[head] + "(" + marks[mark] + ")"} {
				c, err := voicing.ParseChord(noteOf(root).String() + text)
				if err != nil {
					continue
				}
				plain, err := voicing.ParseChordIn(c.StringIn(s), s)
				chart, errChart := voicing.ParseChordIn(c.ChartIn(s), s)
				if err != nil || errChart != nil || plain != c || chart != c {
					return false
				}
			}
			return true
		}, head, note, note, mark, spellings))

	properties.Property("without a B a symbol with a capital root means the same in every spelling", prop.ForAll(
		func(head, root, mark int, s fretboard.Spelling) bool {
			n := noteOf(root)
			if n.Letter == fretboard.B {
				return true
			}
			text := n.String() + heads[head] + "(" + marks[mark] + ")"
			c, err := voicing.ParseChord(text)
			in, errIn := voicing.ParseChordIn(text, s)
			return c == in && (err == nil) == (errIn == nil)
		}, head, note, mark, spellings))

	properties.Property("a small root is the capital with m", prop.ForAll(
		func(root, mark int, number int) bool {
			name := noteOf(root).StringIn(german)
			rest := []string{"", "6", "69", "7", "9", "11", "13", "maj7", "maj9", "7M"}[number] + "(" + marks[mark] + ")"
			if name == "B" || strings.HasSuffix(rest, "(alt)") {
				return true
			}
			capital, err := voicing.ParseChordIn(name+"m"+rest, german)
			small, errSmall := voicing.ParseChordIn(strings.ToLower(name[:1])+name[1:]+rest, german)
			return capital == small && (err == nil) == (errSmall == nil)
		}, note, mark, gen.IntRange(0, 9)))
	properties.TestingRun(t)
}

func FuzzParseChordIn(f *testing.F) {
	for _, text := range []string{"H", "Hm7b5", "B", "Bb7", "bb", "fis7", "Asus4", "Assus4/Es", "a/g", "h°7", "amaj7", "ab5", "a+7", "Heses/H", "C/b9", "b(b5)", "es-"} {
		f.Add(text, uint8(german))
		f.Add(text, uint8(mixed))
	}
	f.Fuzz(func(t *testing.T, text string, spelling uint8) {
		s := fretboard.Spelling(spelling % 3)
		c, err := voicing.ParseChordIn(text, s)
		if err != nil {
			located, ok := err.(fretboard.Located)
			if !ok {
				t.Fatalf("%q: %v has no place", text, err)
			}
			p := located.Where()
			if p.Source != text || p.Notation != "chord" || p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(text) || p.Reason == "" || c != (voicing.Chord{}) {
				t.Fatalf("%q: place %+v, chord %v", text, p, c)
			}
			return
		}
		for in := fretboard.English; in <= mixed; in++ {
			for _, printed := range []string{c.StringIn(in), c.ChartIn(in)} {
				if again, err := voicing.ParseChordIn(printed, in); err != nil || again != c {
					t.Fatalf("%q prints in %s as %q, which reads as %v, %v", text, in, printed, again, err)
				}
			}
		}
	})
}

func ExampleParseChordIn() {
	for _, text := range []string{"Hm7b5", "G/B", "fis7"} {
		chord, err := voicing.ParseChordIn(text, fretboard.German)
		fmt.Println(chord, chord.ChartIn(fretboard.German), err)
	}
	_, err := voicing.ParseChordIn("G/B", fretboard.MixedGerman)
	fmt.Println(err)
	// Output:
	// Bm7b5 Hm7♭5 <nil>
	// G/Bb G/B <nil>
	// F#m7 F♯m7 <nil>
	// chord, byte 2: "B": in doubt, since B is B natural in English and B flat in German; write H or Bb
}
