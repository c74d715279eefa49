package main

import (
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"

	"weft.example/examples/internal/clitest"
)

// played runs the program and fails the test unless it plays.
func played(t testing.TB, args ...string) string {
	t.Helper()
	return clitest.Main(run).PlayedOut(t, args...)
}

func TestGoldens(t *testing.T) {
	for name, args := range map[string][]string{
		"chord":    {"-chord", "Bbmaj7", "-tuning", "DADGAD", "-count", "3"},
		"barre":    {"-chord", "F", "-beginner", "-low", "1", "-count", "3"},
		"altered":  {"-chord", "G7alt/F", "-count", "2", "-hand", "left", "-behind", "2"},
		"words":    {"-chord", "D", "-count", "2", "-words"},
		"ukulele":  {"-chord", "G", "-tuning", "ukulele", "-count", "3"},
		"name":     {"-name", "332011", "-key", "C"},
		"note":     {"-name", "x3xxxx"},
		"unheld":   {"-name", "012345"},
		"path":     {"-path", "Am | F=xx3211 | C G/B | E7", "-figure", "5 3 2 1 2 3 2 1"},
		"repeats":  {"-path", "|: Am | % | N.C. :| F:3 E:1", "-once", "-aim", "worst", "-words"},
		"german":   {"-path", "a | H7", "-spelling", "german"},
		"capo":     {"-capo", "Bb Eb F Gm", "-count", "3"},
		"capolong": {"-capo", "Bbmaj7 | Ebmaj7 | Cm7 F7 | Gm7 C9 | Abmaj7 | Fm7 Bb7 | Dm7 | G7", "-count", "1", "-once"},
	} {
		clitest.Golden(t, name+".txt", played(t, args...))
		clitest.Golden(t, name+".json", played(t, append(args, "-format", "json")...))
	}
}

func TestHelp(t *testing.T) {
	listed := map[string]bool{}
	for _, args := range [][]string{{"-h"}, {"-help"}, {"-chord", "C", "--help"}} {
		out := played(t, args...)
		var names []string
		for _, name := range regexp.MustCompile(`(?m)^  -(\w+)`).FindAllStringSubmatch(out, -1) {
			names = append(names, name[1])
			listed[name[1]] = true
		}
		want := "aim bass beginner behind capo chord closed count figure fingers format hand high key low name o once path sounding span spelling tuning words"
		if got := strings.Join(names, " "); got != want {
			t.Errorf("%q lists %s, want %s", args, got, want)
		}
	}
	for name := range serves {
		if !listed[name] {
			t.Errorf("-%s serves and does not exist", name)
		}
	}
}

// Every flag changes what some verb says, and is refused by the verbs that it
// does not serve.
func TestFlagsReachTheAnswer(t *testing.T) {
	usual := map[string][]string{
		"chord": {"-chord", "F"}, "name": {"-name", "x02210"},
		"path": {"-path", "F | G C | Bm"}, "capo": {"-capo", "F | G C | Bm"},
	}
	flags := map[string]string{
		"tuning": "E2 A2 D3 G3 B3 D4", "behind": "3", "hand": "left", "count": "2", "low": "3", "high": "4", "span": "40", "fingers": "2",
		"sounding": "6 5", "closed": "true", "bass": "true", "beginner": "true", "key": "C#m", "aim": "worst", "figure": "5 3 2",
		"once": "true", "words": "true", "spelling": "german", "format": "json",
	}
	new(request).flags().VisitAll(func(f *flag.Flag) {
		if usual[f.Name] != nil || f.Name == "o" {
			return
		}
		reached := false
		for verb, args := range usual {
			if f.Name == "key" {
				args = []string{"-" + verb, "xx0204"}
			}
			out, errs, code := clitest.Main(run).Play(nil, append([]string{"-" + f.Name + "=" + flags[f.Name]}, args...)...)
			serves := serves[f.Name] == "" || strings.Contains(serves[f.Name], verb)
			if refused := strings.Contains(errs, "does not serve"); refused == serves {
				t.Errorf("-%s with -%s: %s", f.Name, verb, errs)
			}
			if before, _, _ := clitest.Main(run).Play(nil, args...); serves && code == 0 && out != before {
				reached = true
			}
		}
		if !reached {
			t.Errorf("-%s changes nothing", f.Name)
		}
	})
}

// Each default in the help is what leaving the flag out means.
func TestDefaults(t *testing.T) {
	limits := regexp.MustCompile(`(?s)"limits": \[.*?\]`)
	for _, args := range [][]string{{"-chord", "Fmaj7"}, {"-chord", "C", "-tuning", "ukulele", "-closed"}, {"-chord", "Bb", "-tuning", "B1 E2 A2 D3 G3 B3 E4"}} {
		args = append(args, "-format", "json")
		want := limits.ReplaceAllString(played(t, args...), "")
		for _, name := range []string{"low", "span", "fingers", "count", "behind", "hand"} {
			usual := new(request).flags().Lookup(name).DefValue
			if got := limits.ReplaceAllString(played(t, append(args, "-"+name, usual)...), ""); got != want {
				t.Errorf("%q: -%s %s is not the default: %s", args, name, usual, cmp.Diff(want, got))
			}
		}
		if got := limits.ReplaceAllString(played(t, append(args, "-high", "24")...), ""); got != want {
			t.Errorf("%q: -high 24 is not the default: %s", args, cmp.Diff(want, got))
		}
	}
}

// What no hand holds is said once, whether in sentences, below the box or beside
// the shape, and no box is taller than a glance. Fret n is 645.16 mm / 2^(n/12) from
// the bridge.
func TestWhatCannotBeHeldIsSaidOnce(t *testing.T) {
	row := regexp.MustCompile(`(?m)^ +(\d+ )?[|*](  [|*])+$`)
	for _, test := range []struct {
		shape, reason string
		rows          int
	}{
		{"012345", "5 strings to stop", 5},
		{"1-x-x-x-x-11", "lie 267 mm apart, further than hands reach", 0},
		{"1-x-x-x-x-10", "lie 246 mm apart, further than hands reach", 10},
		{"1-x-x-x-x-22", "lie 427 mm apart, further than hands reach", 0},
		{"123401", "the finger would damp string 2", 4},
	} {
		for _, words := range []string{"-words=false", "-words"} {
			text := played(t, "-name", test.shape, words)
			said := strings.Join(strings.Fields(text), " ")
			if strings.Count(said, test.reason) != 1 || strings.Count(said, "mm apart") > 1 || !strings.Contains(said, "hand impossible") {
				t.Errorf("%s %s: %q is not said once:\n%s", test.shape, words, test.reason, text)
			}
			rows := len(row.FindAllString(text, -1))
			if want := test.rows; words == "-words" && rows != 0 || words != "-words" && rows != want {
				t.Errorf("%s %s: %d rows, want %d:\n%s", test.shape, words, rows, want, text)
			}
		}
	}
	if text := played(t, "-name", "x-x-x-12-x-24", "-tuning", "standard"); !strings.Contains(text, "box     none, it would take 13 rows") {
		t.Errorf("not told why there is no box:\n%s", text)
	}
}

// With many strings a hundred shapes are found too.
func TestAHundredShapesOfManyStrings(t *testing.T) {
	text := played(t, "-chord", "Am7", "-count", "100", "-words", "-tuning", strings.TrimSpace(strings.Repeat("E3 A3 D4 ", 4)))
	if shapes := shapesIn(text); len(shapes) != 100 {
		t.Errorf("%d shapes", len(shapes))
	}
}

// What German songbooks write is read, and said in their spelling, but for JSON.
func TestSpelling(t *testing.T) {
	for _, test := range []struct {
		spelling      string
		german, plain []string
		has           string
	}{
		{"german", []string{"-chord", "B7"}, []string{"-chord", "Bb7"}, "1 B, 3 D, 5 F, b7 Ab"},
		{"german", []string{"-chord", "h7"}, []string{"-chord", "Bm7"}, "1 H, b3 D, 5 F#, b7 A"},
		{"mixed", []string{"-chord", "H7/D#"}, []string{"-chord", "B7/D#"}, "H7/D#, in words B seven over D sharp"},
		{"german", []string{"-name", "x24432", "-key", "h"}, []string{"-name", "x24432", "-key", "Bm"}, "key     Hm"},
		{"mixed", []string{"-name", "x13331", "-key", "Bb"}, []string{"-name", "x13331", "-key", "Bb"}, "1  Bb "},
		{"german", []string{"-name", "x24432", "-key", "h-Moll"}, []string{"-name", "x24432", "-key", "Bm"}, "key     Hm"},
		{"german", []string{"-path", "a | H7=x21202"}, []string{"-path", "Am | B7=x21202"}, "| H7=x21202"},
		{"german", []string{"-capo", "B Es F"}, []string{"-capo", "Bb Eb F"}, "sounds  B "},
	} {
		german := append(test.german, "-spelling", test.spelling)
		if diff := cmp.Diff(played(t, append(test.plain, "-format", "json")...), played(t, append(german, "-format", "json")...)); diff != "" {
			t.Errorf("%q: JSON differs: %s", german, diff)
		}
		if out := played(t, german...); !strings.Contains(out, test.has) {
			t.Errorf("%q lacks %q:\n%s", german, test.has, out)
		}
	}
}

func TestStandardInput(t *testing.T) {
	const chart = "|: Am | G :|\nDm | E\n"
	for _, verb := range []string{"-path", "-capo"} {
		out, errs, code := clitest.Main(run).Play(strings.NewReader(chart), verb, "-")
		if want := played(t, verb, chart); out != want || code != 0 || errs != "" {
			t.Errorf("%s: exit code %d, %q:\n%s", verb, code, errs, cmp.Diff(want, out))
		}
	}
	for _, input := range []io.Reader{iotest.ErrReader(errors.New("broken")), strings.NewReader(strings.Repeat("Am | ", 20_000))} {
		if out, errs, code := clitest.Main(run).Play(input, "-path", "-"); code != 2 || out != "" || !strings.HasPrefix(errs, "shapes: ") {
			t.Errorf("exit code %d, %q, %q", code, out, errs)
		}
	}
}

func TestAFileHoldsWhatStandardOutputWould(t *testing.T) {
	name := filepath.Join(t.TempDir(), "shapes")
	if out := played(t, "-chord", "C", "-o", name); out != "" {
		t.Errorf("%q on standard output", out)
	}
	if got, err := os.ReadFile(name); err != nil || string(got) != played(t, "-chord", "C") {
		t.Errorf("%d bytes in the file, %v", len(got), err)
	}
}

// long is a song of 300 bars, none like the one before.
func long() string {
	names := strings.Fields("Bb Eb F Gm Cm7 F7 Abmaj7 D7 G7 C Am Dm E7 A F#m Bm E B7 C#m Edim7")
	bars := make([]string, 300)
	for i := range bars {
		bars[i] = names[(i*7+i/5)%len(names)]
	}
	return strings.Join(bars, " | ")
}

func BenchmarkPathOf300Bars(b *testing.B) {
	for b.Loop() {
		played(b, "-path", long(), "-figure", "5 3 2 1 2 3")
	}
}

func BenchmarkCaposOf300Bars(b *testing.B) {
	for b.Loop() {
		played(b, "-capo", long())
	}
}
