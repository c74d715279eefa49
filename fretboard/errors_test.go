package fretboard_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

func TestMessages(t *testing.T) {
	for _, c := range []struct {
		why   string
		place fretboard.Place
		want  string
	}{
		{"all parts", fretboard.Place{Notation: "shape", Source: "x3z010", Offset: 2, Length: 1, Reason: "neither a fret nor x", Mend: "write x32010"},
			`shape, byte 2: "z": neither a fret nor x; write x32010`},
		{"nothing to quote", fretboard.Place{Notation: "shape", Source: "x3", Offset: 2, Reason: "too short", Mend: "go on"},
			`shape, byte 2: too short; go on`},
		{"no mend", fretboard.Place{Notation: "frets", Source: "99", Length: 2, Reason: "too many"},
			`frets, byte 0: "99": too many`},
		{"invalid UTF-8 is shown, not dropped", fretboard.Place{Notation: "chord", Source: "A\xff\xfe", Offset: 1, Length: 2, Reason: "not UTF-8"},
			`chord, byte 1: "\xff\xfe": not UTF-8`},
		{"a line end is shown", fretboard.Place{Notation: "chord", Source: "A\nB", Length: 3, Reason: "two lines"},
			`chord, byte 0: "A\nB": two lines`},
		{"a long fault is cut at 40 characters", fretboard.Place{Notation: "figure", Source: strings.Repeat("♭", 50), Length: 150, Reason: "long"},
			`figure, byte 0: "` + strings.Repeat("♭", 40) + `"...: long`},
		{"40 characters are not cut", fretboard.Place{Notation: "figure", Source: strings.Repeat("𝄪", 40), Length: 160, Reason: "long"},
			`figure, byte 0: "` + strings.Repeat("𝄪", 40) + `": long`},
	} {
		if got := c.place.Error(); got != c.want {
			t.Errorf("%s:\ngot  %s\nwant %s", c.why, got, c.want)
		}
	}
}

func TestCarets(t *testing.T) {
	for _, c := range []struct {
		why, source    string
		offset, length int
		want           string
	}{
		{"one character", "x3z010", 2, 1, "x3z010\n  ^"},
		{"several", "E2 H2 D3", 3, 2, "E2 H2 D3\n   ^^"},
		{"something missing at the end", "Am |", 4, 0, "Am |\n    ^"},
		{"something missing in an empty text", "", 0, 0, "\n^"},
		{"a fault of several bytes takes one caret a character", "Eb♭𝄪 m", 1, 8, "Eb♭𝄪 m\n ^^^"},
		{"characters of several bytes before it", "♭𝄪é z", 10, 1, "♭𝄪é z\n    ^"},
		{"line ends and tabs become spaces", "Am\t|\r\nH |", 6, 1, "Am |  H |\n      ^"},
		{"so do no-break spaces and line separators", "A\u00a0B\u2028H", 7, 1, "A B H\n    ^"},
		{"invalid UTF-8 is one mark a byte", "A\xff\xfeB", 1, 2, "A??B\n ^^"},
		{"what cannot be printed is one mark", "A\x00\u200bB", 5, 1, "A??B\n   ^"},
		{"East Asian characters take two columns", "和音 H", 7, 1, "和音 H\n     ^"},
		{"under them the caret is as wide", "A 和音 B", 2, 6, "A 和音 B\n  ^^^^"},
		{"half-width forms take one", "ｱｲ H", 7, 1, "ｱｲ H\n   ^"},
		{"full-width letters and marks take two", "Ａ、H", 6, 1, "Ａ、H\n    ^"},
		{"emoji take two", "🎸 H", 5, 1, "🎸 H\n   ^"},
		{"combining marks take none", "e\u0301 H", 4, 1, "e\u0301 H\n  ^"},
		{"a combining mark alone gets a caret", "e\u0301", 1, 2, "e\u0301\n ^"},
		{"30 characters before and after are shown whole", strings.Repeat("a", 30) + "X" + strings.Repeat("b", 30), 30, 1,
			strings.Repeat("a", 30) + "X" + strings.Repeat("b", 30) + "\n" + strings.Repeat(" ", 30) + "^"},
		{"more are cut", strings.Repeat("a", 31) + "X" + strings.Repeat("b", 31), 31, 1,
			"..." + strings.Repeat("a", 30) + "X" + strings.Repeat("b", 30) + "...\n" + strings.Repeat(" ", 33) + "^"},
		{"a long fault is cut and hides what follows", strings.Repeat("X", 31) + "b", 0, 31,
			strings.Repeat("X", 30) + "...\n" + strings.Repeat("^", 30)},
		{"an offset past the end is held there", "abc", 9, 5, "abc\n   ^"},
		{"an offset before the start too", "abc", -9, 1, "abc\n^"},
		{"a length past the end", "abc", 1, math.MaxInt, "abc\n ^^"},
		{"no length below nothing", "abc", 1, -4, "abc\n ^"},
	} {
		place := fretboard.Place{Source: c.source, Offset: c.offset, Length: c.length}
		if diff := cmp.Diff(c.want, place.Caret()); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.why, diff)
		}
	}
}

func TestPlaceProperties(t *testing.T) {
	bytes := gen.SliceOf(gen.UInt8()).Map(func(b []uint8) string { return string(b) })
	anywhere := gen.IntRange(-3, 200)
	p := properties()
	p.Property("whatever the text and the place, a caret is two printable lines of which the second points", prop.ForAll(
		func(text string, offset, length int) bool {
			lines := strings.Split(fretboard.Place{Source: text, Offset: offset, Length: length}.Caret(), "\n")
			if len(lines) != 2 || !utf8.ValidString(lines[0]) || utf8.RuneCountInString(lines[0]) > 3+30+30+30+3 {
				return false
			}
			carets := strings.TrimLeft(lines[1], " ")
			return carets != "" && strings.Trim(carets, "^") == ""
		}, bytes, anywhere, anywhere))
	p.Property("whatever the text and the place, a message is one valid line", prop.ForAll(
		func(text string, offset, length int) bool {
			message := fretboard.Place{Notation: "chord", Source: text, Offset: offset, Length: length, Reason: "why"}.Error()
			return utf8.ValidString(message) && !strings.ContainsAny(message, "\n\r") && strings.HasSuffix(message, "why")
		}, bytes, anywhere, anywhere))
	p.Property("in a plain text the carets stand under the fault", prop.ForAll(
		func(text string, offset, length int) bool {
			offset, length = offset%(len(text)+1), length%30+1
			place := fretboard.Place{Source: text, Offset: offset, Length: length}
			line, under, _ := strings.Cut(place.Caret(), "\n")
			from := strings.Index(under, "^")
			if offset == len(text) {
				return place.Text() == "" && strings.Count(under, "^") == 1
			}
			return line[from:from+strings.Count(under, "^")] == place.Text()
		}, gen.AlphaString(), gen.IntRange(0, 200), gen.IntRange(0, 200)))
	check(t, p)
}

func TestErrorsSayWhatTheyAre(t *testing.T) {
	var syntax *fretboard.SyntaxError
	var impossible *fretboard.ImpossibleError
	_, err := fretboard.ParseTuning("E2 H2")
	if !errors.As(fmt.Errorf("song: %w", err), &syntax) || errors.As(err, &impossible) {
		t.Errorf("unreadable text gives %T", err)
	}
	_, err = fretboard.ParseTuning("E2 B9")
	if !errors.As(fmt.Errorf("song: %w", err), &impossible) || errors.As(err, &syntax) {
		t.Errorf("readable, impossible text gives %T", err)
	}
	var located fretboard.Located
	if !errors.As(err, &located) || located.Where() != impossible.Place || located.Where().Text() != "B9" {
		t.Errorf("the place of %v", err)
	}
}

func TestAnErrorMovesIntoALongerText(t *testing.T) {
	const song = "capo 2, tuning E2 H2"
	inner := song[15:]
	_, err := fretboard.ParseTuning(inner)
	moved := fretboard.Within(err, "song", song, 15)
	var before, after *fretboard.SyntaxError
	if !errors.As(err, &before) || !errors.As(moved, &after) {
		t.Fatalf("%T became %T", err, moved)
	}
	if after.Text() != "H2" || after.Source != song || after.Notation != "song" || after.Reason != before.Reason || after.Mend != before.Mend {
		t.Errorf("moved to %+v", after.Place)
	}
	if before.Source != inner || before.Offset != 3 {
		t.Errorf("the first error changed: %+v", before.Place)
	}
	_, err = fretboard.ParsePitchName("A9")
	var impossible *fretboard.ImpossibleError
	if !errors.As(fretboard.Within(err, "song", "xA9", 1), &impossible) || impossible.Text() != "A9" {
		t.Errorf("an impossible error moved to %+v", impossible)
	}
	other := errors.New("other")
	if fretboard.Within(other, "song", song, 15) != other || fretboard.Within(nil, "song", song, 15) != nil {
		t.Error("errors of other kinds, and none, come back unchanged")
	}
}

func TestCheckText(t *testing.T) {
	limit := strings.Repeat("♯", fretboard.MaxText/3) + "a" // exactly 64 KiB
	for _, text := range []string{"", "Am", "和音\n", "\ufffd is a character too", limit} {
		if err := fretboard.CheckText("chord", text); err != nil {
			t.Errorf("%.20q: %v", text, err)
		}
	}
	for _, c := range []struct {
		why, text  string
		impossible bool
		offset     int
	}{
		{"one byte too many", limit + "a", true, fretboard.MaxText},
		{"the limit comes before the spelling", limit + "\xff", true, fretboard.MaxText},
		{"a stray byte", "A\xffm", false, 1},
		{"a character cut off at the end", "A♭"[:3], false, 1},
		{"a surrogate in bytes", "A\xed\xa0\x80", false, 1},
		{"an overlong slash", "A\xc0\xaf", false, 1},
	} {
		err := fretboard.CheckText("chord", c.text)
		var located fretboard.Located
		if !errors.As(err, &located) {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		_, impossible := located.(*fretboard.ImpossibleError)
		if place := located.Where(); impossible != c.impossible || place.Offset != c.offset || place.Source != c.text {
			t.Errorf("%s: %T at %d", c.why, err, place.Offset)
		}
		if message := err.Error() + located.Where().Caret(); len(message) > 600 {
			t.Errorf("%s: a message of %d bytes", c.why, len(message))
		}
	}
}

func TestParseName(t *testing.T) {
	names := []string{"contour", "bass", "shift"}
	for i, text := range []string{"contour", "BASS", "Shift"} {
		if got, err := fretboard.ParseName("moulding", names, text); got != i || err != nil {
			t.Errorf("%s is name %d, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "bas", "bass ", "\xff", strings.Repeat("bass", 20000)} {
		_, err := fretboard.ParseName("moulding", names, text)
		var syntax *fretboard.SyntaxError
		if !errors.As(err, &syntax) {
			t.Errorf("%.20q: %v", text, err)
			continue
		}
		if syntax.Text() != text || syntax.Mend != "choose one of contour, bass, shift" || syntax.Reason != "no such moulding" {
			t.Errorf("%.20q: %.200v", text, err)
		}
	}
}
