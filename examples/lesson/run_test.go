package main

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"

	"weft.example/examples/internal/clitest"
	"weft.example/fretboard"
)

// play runs the program and returns what it wrote, with the exit code.
func play(stdin io.Reader, args ...string) (stdout, stderr string, code int) {
	return clitest.Main(run).Play(stdin, args...)
}

// playedOut runs the program and fails the test unless it plays.
func playedOut(t *testing.T, args ...string) string {
	t.Helper()
	return clitest.Main(run).PlayedOut(t, args...)
}

func TestTheBuiltInSong(t *testing.T) { clitest.Golden(t, "song.txt", playedOut(t)) }

func TestHelp(t *testing.T) {
	for _, args := range [][]string{{"-h"}, {"-help"}, {"-capo", "2", "--help"}} {
		out := playedOut(t, args...)
		var names []string
		for _, name := range regexp.MustCompile(`(?m)^  -([\w-]+)`).FindAllStringSubmatch(out, -1) {
			names = append(names, name[1])
		}
		want := "capo change chords click count countin figure fill fit format hand hush landscape material meter o once " +
			"paper repeat silent-bars size spelling staves strokes tempo title tuning turn"
		if got := strings.Join(names, " "); got != want {
			t.Errorf("%q lists %s, want %s", args, got, want)
		}
	}
}

// The spelling holds for the chords given and for the sheet, and for nothing else.
func TestSpelling(t *testing.T) {
	english := []string{"-chords", "Bm=x24432 | Bb=x13331 | G/B=x20003 | Asus4=x02230", "-title", "Round"}
	for _, test := range []struct{ spelling, chords string }{
		{"german", "h=x24432 | B=x13331 | G/h=x20003 | Asus4=x02230"},
		{"german", "Hm=x24432 | Hes=x13331 | G/H=x20003 | Asus4=x02230"},
		{"mixed", "Hm=x24432 | Bb=x13331 | G/H=x20003 | Asus4=x02230"},
	} {
		args := []string{"-spelling", test.spelling, "-chords", test.chords, "-title", "Round"}
		if diff := cmp.Diff(playedOut(t, append(english, "-format", "json")...), playedOut(t, append(args, "-format", "json")...)); diff != "" {
			t.Errorf("%q: JSON differs: %s", args, diff)
		}
		sheet := playedOut(t, args...)
		flat := map[string]string{"german": "B x13331", "mixed": "Bb x13331"}[test.spelling]
		for _, want := range []string{"Hm x24432", flat, "G/H x20003", "Asus4 x02230", "\n2 H ", " H3 "} {
			if !strings.Contains(sheet, want) {
				t.Errorf("%q: the sheet lacks %q:\n%s", args, want, sheet)
			}
		}
		out, _, code := play(strings.NewReader(test.chords), "-spelling", test.spelling, "-chords", "-", "-title", "Round")
		if code != 0 || out != sheet {
			t.Errorf("%s from standard input: exit code %d\n%s", test.chords, code, cmp.Diff(sheet, out))
		}
	}
	if own := playedOut(t, "-spelling", "mixed"); !strings.Contains(own, " G/H ") {
		t.Errorf("the built-in song is not played in another spelling:\n%s", own)
	}
	_, errs, code := play(nil, "-spelling", "german", "-tuning", "E2 A2 D3 G3 H3 E4")
	if code != 2 || !strings.Contains(errs, "H3") {
		t.Errorf("a tuning with H: exit code %d, %s", code, errs)
	}
}

func TestStandardInput(t *testing.T) {
	const chart = "|: Am | G :|\nDm | E\n"
	out, errs, code := play(strings.NewReader(chart), "-chords", "-")
	if want := playedOut(t, "-chords", chart); out != want || code != 0 || errs != "" {
		t.Errorf("exit code %d, %q:\n%s", code, errs, cmp.Diff(want, out))
	}
	_, errs, code = play(iotest.ErrReader(errors.New("broken")), "-chords", "-")
	if code != 2 || errs != "lesson: standard input: broken\n" {
		t.Errorf("a broken input: exit code %d, %q", code, errs)
	}
}

// A chart on standard input may be endless; no more is read than it takes to
// know that.
func TestStandardInputIsBounded(t *testing.T) {
	counter := &countingReader{Reader: endless("Am | ")}
	out, errs, code := play(counter, "-chords", "-")
	if code != 2 || out != "" || !strings.Contains(errs, "more than 65536 bytes") || !strings.Contains(errs, "^") {
		t.Errorf("exit code %d, %d bytes out, %q", code, len(out), errs)
	}
	if counter.read > 2*fretboard.MaxText {
		t.Errorf("%d bytes read", counter.read)
	}
}

type endless string

func (e endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = e[i%len(e)]
	}
	return len(b), nil
}

type countingReader struct {
	io.Reader
	read int
}

func (r *countingReader) Read(b []byte) (int, error) {
	n, err := r.Reader.Read(b)
	r.read += n
	return n, err
}

func TestABrokenOutputIsReported(t *testing.T) {
	var errs bytes.Buffer
	if code := run(nil, nil, brokenWriter{}, &errs); code != 2 || errs.String() != "lesson: broken\n" {
		t.Errorf("exit code %d, %q", code, errs.String())
	}
}

type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, errors.New("broken") }

// What is built in gives way to what is asked for, and only to that.
func TestTheBuiltInSongAndFigureGiveWay(t *testing.T) {
	for _, test := range []struct {
		why   string
		args  []string
		title string
		has   string // strings of the first bar
	}{
		{"nothing asked for", nil, title, "5 3 2 1 2 3 2 1"},
		{"another figure", []string{"-figure", "5 1 2 1"}, title, "5 1 2 1"},
		{"other chords", []string{"-chords", "Dm"}, "", "4 3 2 1 2 3 2 1"},
		{"other chords with a title", []string{"-chords", "Dm", "-title", "Study"}, "Study", "4 3 2 1 2 3 2 1"},
		{"no title", []string{"-title", ""}, "", "5 3 2 1 2 3 2 1"},
		{"six eighths", []string{"-meter", "6/8"}, title, "5 3 2 1 2 3"},
		{"three quarters", []string{"-meter", "3/4"}, title, "5 3 2 1 2 3"},
		{"twelve eighths", []string{"-meter", "12/8"}, title, "5 3 2 1 2 3 5 3 2 1 2 3"},
		{"two quarters", []string{"-meter", "2/4"}, title, "5 3 2 1"},
		{"five quarters", []string{"-meter", "5/4"}, title, "5 3 2 1 2 3 2 1 2 3"},
		{"four strings", []string{"-tuning", "tenor guitar", "-chords", "C=0023"}, "", "4 3 2 1 2 3 2 1"},
		{"four strings in six eighths", []string{"-tuning", "mandolin", "-chords", "G=0023", "-meter", "6/8"}, "", "4 3 2 1 2 3"},
		{"three strings", []string{"-tuning", "G2 D3 B3", "-chords", "G=000"}, "", "3 2 2 1 2 2 2 1"},
		{"one string", []string{"-tuning", "D3", "-chords", "D5=0"}, "", "1 1 1 1 1 1 1 1"},
		{"twelve strings", []string{"-tuning", "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4", "-chords", "Em=001122000000"}, "", "12 3 2 1 2 3 2 1"},
	} {
		p := decoded(t, test.args...)
		if p.Title != test.title {
			t.Errorf("%s: title %q, want %q", test.why, p.Title, test.title)
		}
		if got := stringsOf(p.Bars[0].Picks); got != test.has {
			t.Errorf("%s: strings %s, want %s", test.why, got, test.has)
		}
	}
}

func TestTheBuiltInSongSuitsEveryNamedTuning(t *testing.T) {
	for _, name := range fretboard.TuningNames() {
		for _, meter := range []string{"4/4", "6/8"} {
			playedOut(t, "-tuning", name, "-meter", meter)
		}
	}
}

// Each flag reaches what it is for.
func TestFlagsReachThePassage(t *testing.T) {
	p := decoded(t, "-meter", "6/8", "-tempo", "66", "-tuning", "drop D", "-capo", "2", "-hand", "turned",
		"-strokes", "economy", "-fit", "shift", "-change", "carry", "-fill", "ring", "-turn", "-once",
		"-chords", "Dm=xx0231 Am=x02210 | G=520003", "-figure", "5 3 2; 1/8: 1 2", "-title", "A study")
	got := []any{p.Meter.String(), p.Tempo, p.Instrument.Tuning.Name(), int(p.Instrument.Capo), p.Instrument.Hand.String(),
		p.Strokes.String(), p.Fit.String(), p.Loop, p.Title, p.Bars[0].Chords[1].Figure}
	want := []any{"6/8", 66, "drop D", 2, "turned", "economy", "shift", false, "A study", 2}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	for _, test := range []struct{ with, without []string }{
		{[]string{"-change", "carry"}, nil},
		{[]string{"-fill", "ring"}, nil},
		{[]string{"-count", "sixteenths"}, nil},
		{[]string{"-format", "json"}, nil},
		{[]string{"-spelling", "german"}, nil},
	} {
		study := []string{"-chords", "Am:3 G:1", "-figure", "1/8: 5 3 2 1"}
		if playedOut(t, append(study, test.with...)...) == playedOut(t, study...) {
			t.Errorf("%q changes nothing", test.with)
		}
	}
}
