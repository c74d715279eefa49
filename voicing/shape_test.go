package voicing_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/fretboard/grammartest"
	"weft.example/voicing"
)

// shapeTexts feeds the parser's test and the fuzzer. Each row says why it is
// there; printed is empty where the text is refused at fault.
var shapeTexts = []struct{ why, text, printed, fault string }{
	{"the usual form", "x32010", "x32010", ""},
	{"a capital X", "XX0232", "xx0232", ""},
	{"all muted", "xxxxxx", "xxxxxx", ""},
	{"a fret above 9", "x-10-12-12-12-10", "x-10-12-12-12-10", ""},
	{"hyphens without need", "x-3-2-0-1-0", "x32010", ""},
	{"spaces", " x 3 2 0 1 0 ", "x32010", ""},
	{"commas and a line end", "x,3,2,0,1,0\n", "x32010", ""},
	{"a narrow no-break space", "\u202fx32010", "x32010", ""},
	{"en dashes and minus signs", "x–10−12–12–12–10", "x-10-12-12-12-10", ""},
	{"a leading zero", "x-03-02", "x32", ""},
	{"one string", "3", "3", ""},
	{"one string above fret 9", "12-", "12-", ""},
	{"two strings, though it reads like fret 12", "12", "12", ""},
	{"twelve strings", "012345678900", "012345678900", ""},
	{"the highest fret", "36-0", "36-0", ""},
	{"empty", "", "", ""},
	{"hyphens only", "--", "", ""},
	{"a letter", "x3201o", "", "o"},
	{"a letter among the frets", "x-10-1a-12", "", "1a"},
	{"a sign", "x+2010", "", "+"},
	{"digits of another script", "x٣2010", "", "٣"},
	{"two marks on one string", "x-3x-2", "", "3x"},
	{"a fret too far", "x-37-0", "", "37"},
	{"a fret past any number", "x-99999999999999999999-0", "", "99999999999999999999"},
	{"thirteen strings", "0123456789012", "", "2"},
	{"thirteen strings apart", strings.Repeat("0 ", 12) + "10", "", "10"},
	{"invalid UTF-8", "x3\xff", "", "\xff"},
}

func TestShapeTexts(t *testing.T) {
	for _, c := range shapeTexts {
		sh, err := voicing.ParseShape(c.text)
		if c.printed != "" {
			if err != nil || sh.String() != c.printed {
				t.Errorf("%s: %q is %v, %v; want %s", c.why, c.text, sh, err, c.printed)
			}
			continue
		}
		var located fretboard.Located
		if !errors.As(err, &located) {
			t.Errorf("%s: %q is %v, %v; want a located error", c.why, c.text, sh, err)
		} else if place := located.Where(); place.Text() != c.fault || place.Source != c.text || place.Notation != "shape" {
			t.Errorf("%s: %v points at %q of %q; want %q", c.why, err, place.Text(), place.Source, c.fault)
		}
	}
}

// TestShapeErrorKinds tells what cannot be read from what cannot be.
func TestShapeErrorKinds(t *testing.T) {
	for text, impossible := range map[string]bool{"x3201o": false, "": false, "x-37-0": true, "0123456789012": true} {
		_, err := voicing.ParseShape(text)
		var kind *fretboard.ImpossibleError
		if errors.As(err, &kind) != impossible {
			t.Errorf("%q: %T, want impossible: %v", text, err, impossible)
		}
	}
}

func TestShapeParts(t *testing.T) {
	sh := mustShape(t, "x3201x")
	if sh.Strings() != 6 || sh.Sounding() != fretboard.StringSet(0b011110) {
		t.Errorf("x3201x has %d strings and sounds %b", sh.Strings(), sh.Sounding())
	}
	if f, sounds := sh.Fret(5); f != 3 || !sounds {
		t.Errorf("string 5 is at fret %d, %v", f, sounds)
	}
	if f, sounds := sh.Fret(3); f != 0 || !sounds {
		t.Errorf("an open string is not muted: fret %d, %v", f, sounds)
	}
	for _, s := range []fretboard.StringNumber{-1, 0, 1, 6, 7, 13} {
		if f, sounds := sh.Fret(s); sounds {
			t.Errorf("string %d sounds at fret %d", s, f)
		}
	}
	var zero voicing.Shape
	if zero.Strings() != 0 || zero.Sounding() != 0 || zero.String() != "" || zero != voicing.NewShape(0) {
		t.Errorf("the zero shape is %q, %d strings", zero, zero.Strings())
	}
}

// TestShapesByHandPanic holds the documented panics, which no input reaches.
func TestShapesByHandPanic(t *testing.T) {
	for why, build := range map[string]func(){
		"13 strings":           func() { voicing.NewShape(13) },
		"fewer than none":      func() { voicing.NewShape(-1) },
		"string 0":             func() { voicing.NewShape(6).With(0, 1) },
		"a string that lacks":  func() { voicing.NewShape(6).With(7, 1) },
		"a fret below open":    func() { voicing.NewShape(6).With(1, -1) },
		"a fret past the last": func() { voicing.NewShape(6).With(1, 37) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", why)
				}
			}()
			build()
		}()
	}
}

// shapes generates shapes of 1 to 12 strings, -1 standing for muted.
func shapes() gopter.Gen {
	return gen.SliceOfN(fretboard.MaxStrings, gen.IntRange(-1, int(fretboard.MaxFrets))).FlatMap(func(v any) gopter.Gen {
		return gen.IntRange(1, fretboard.MaxStrings).Map(func(n int) voicing.Shape {
			sh := voicing.NewShape(fretboard.StringNumber(n))
			for i, f := range v.([]int)[:n] {
				if f >= 0 {
					sh = sh.With(fretboard.StringNumber(i+1), fretboard.Fret(f))
				}
			}
			return sh
		})
	}, nil)
}

func TestShapeProperties(t *testing.T) {
	p := seeded(1000)
	p.Property("parsing what a shape prints gives the shape", prop.ForAll(func(sh voicing.Shape) bool {
		again, err := voicing.ParseShape(sh.String())
		return err == nil && again == sh
	}, shapes()))
	p.Property("spaces do for hyphens", prop.ForAll(func(sh voicing.Shape) bool {
		again, err := voicing.ParseShape(strings.ReplaceAll(sh.String(), "-", " "))
		return sh.Strings() == 1 || err == nil && again == sh
	}, shapes()))
	p.Property("With changes its string and no other", prop.ForAll(func(sh voicing.Shape, s, fret int) bool {
		at, f := fretboard.StringNumber(s)%sh.Strings()+1, fretboard.Fret(fret)
		after := sh.With(at, f)
		for other := fretboard.StringNumber(1); other <= sh.Strings(); other++ {
			got, sounds := after.Fret(other)
			want, sounded := sh.Fret(other)
			if other == at {
				want, sounded = f, true
			}
			if got != want || sounds != sounded {
				return false
			}
		}
		return after.Sounding() == sh.Sounding().With(at)
	}, shapes(), gen.IntRange(0, 11), gen.IntRange(0, int(fretboard.MaxFrets))))
	p.TestingRun(t)
}

func TestShapeGrammarSentencesAreRead(t *testing.T) {
	grammar := grammartest.Load(t, "shape.ebnf", "shape")
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		text := grammar.Sentence(r)
		sh, err := voicing.ParseShape(text)
		if err != nil {
			t.Fatalf("the grammar writes %q, the parser says: %v", text, err)
		}
		if want := readShape(text); want != fmt.Sprint(fretList(sh)) {
			t.Fatalf("%q is read as %v, want %s", text, fretList(sh), want)
		}
	}
}

var (
	together = regexp.MustCompile(`^[xX0-9]+$`)
	apart    = regexp.MustCompile(`^(?:[xX]|[0-9]+)$`)
)

// readShape reads a canonical text another way: it returns the frets from the
// thickest string, -1 for muted, printed, or the empty string where the text
// is no shape.
func readShape(text string) string {
	var marks []string
	if together.MatchString(text) {
		marks = strings.Split(text, "")
	} else {
		marks = strings.FieldsFunc(text, func(r rune) bool { return r == '-' })
	}
	if len(marks) == 0 || len(marks) > fretboard.MaxStrings {
		return ""
	}
	var frets []int
	for _, mark := range marks {
		f, err := strconv.Atoi(mark)
		switch {
		case !apart.MatchString(mark) || err == nil && f > int(fretboard.MaxFrets):
			return ""
		case strings.EqualFold(mark, "x"):
			f = -1
		case err != nil:
			return ""
		}
		frets = append(frets, f)
	}
	return fmt.Sprint(frets)
}

func fretList(sh voicing.Shape) []int {
	var frets []int
	for s := sh.Strings(); s >= 1; s-- {
		f, sounds := sh.Fret(s)
		if !sounds {
			f = -1
		}
		frets = append(frets, int(f))
	}
	return frets
}

// forgiven reports whether the parser takes r for a space or a hyphen, which
// readShape does not.
func forgiven(r rune) bool {
	return unicode.IsSpace(r) || strings.ContainsRune(",\u2010\u2011\u2012\u2013\u2014\u2212", r)
}

// FuzzParseShape holds the parser against readShape on texts without forgiving
// spacing, and holds that every shape prints to a text that is read the same.
func FuzzParseShape(f *testing.F) {
	for _, c := range shapeTexts {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		sh, err := voicing.ParseShape(text)
		if !strings.ContainsFunc(text, forgiven) {
			want := readShape(text)
			if (err == nil) != (want != "") || err == nil && fmt.Sprint(fretList(sh)) != want {
				t.Fatalf("%q is %v, %v; want %s", text, fretList(sh), err, want)
			}
		}
		if err != nil {
			var located fretboard.Located
			if !errors.As(err, &located) {
				t.Fatalf("%q: %v has no place", text, err)
			}
			place := located.Where()
			if place.Offset < 0 || place.Offset+place.Length > len(text) || place.Source != text || place.Mend == "" {
				t.Fatalf("%q: the place is %+v", text, place)
			}
			return
		}
		if again, err := voicing.ParseShape(sh.String()); err != nil || again != sh {
			t.Fatalf("%q prints as %q, which is %v, %v", text, sh, again, err)
		}
	})
}

func ExampleParseShape() {
	shape, _ := voicing.ParseShape("x32010")
	fret, sounds := shape.Fret(5)
	fmt.Println(fret, sounds, shape.Sounding().Len())
	_, err := voicing.ParseShape("x32o10")
	fmt.Println(err)
	// Output:
	// 3 true 5
	// shape, byte 3: "o": neither a fret nor x; write a fret, 0 or x for each string from the thickest, such as x32010 or x-10-12-12-12-10
}
