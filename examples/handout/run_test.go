package main

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"fmt"
	"html"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"weft.example/examples/internal/clitest"
)

// TestMain makes the test program the program itself, for the test that
// interrupts one.
func TestMain(m *testing.M) {
	if os.Getenv("HANDOUT_ITSELF") != "" {
		main()
	}
	os.Exit(m.Run())
}

func play(args ...string) (stdout, stderr string, code int) {
	var out, errs bytes.Buffer
	code = run(context.Background(), args, &out, &errs)
	return out.String(), errs.String(), code
}

// folder returns a folder that holds the files, each a name and a text in turn.
func folder(t testing.TB, files ...string) string {
	t.Helper()
	dir := t.TempDir()
	for i := 0; i < len(files); i += 2 {
		if err := os.WriteFile(filepath.Join(dir, files[i]), []byte(files[i+1]), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func filesOf(t testing.TB, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func content(t testing.TB, path ...string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

var links = regexp.MustCompile(`<a href="([^"]+)"`)

// checkPages holds a folder of pages together: each is whole and well-formed,
// leads only to pages that are there, and stands in the index.
func checkPages(t *testing.T, dir string, songs int) {
	t.Helper()
	names := filesOf(t, dir)
	if len(names) != 2*songs+1 {
		t.Errorf("%d files for %d songs: %q", len(names), songs, names)
	}
	for _, name := range names {
		page := content(t, dir, name)
		if err := checkXML(page); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if !strings.HasSuffix(page, mark) {
			t.Errorf("%s is cut short", name)
		}
		for _, to := range linksOf(page) {
			if !slices.Contains(names, to) {
				t.Errorf("%s leads to %s", name, to)
			}
		}
		if strings.Contains(strings.ReplaceAll(page, "http://www.w3.org/", ""), "://") {
			t.Errorf("%s names something elsewhere", name)
		}
		if name != indexName && !slices.Contains(linksOf(content(t, dir, indexName)), name) {
			t.Errorf("the index lacks %s", name)
		}
	}
}

// linksOf returns the pages that a page leads to.
func linksOf(page string) (to []string) {
	for _, link := range links.FindAllStringSubmatch(page, -1) {
		if name, err := url.PathUnescape(html.UnescapeString(link[1])); err != nil || name[0] != '#' {
			to = append(to, name)
		}
	}
	return to
}

func checkXML(page string) error {
	d := xml.NewDecoder(strings.NewReader(page))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

func TestTheExampleSongs(t *testing.T) {
	for _, args := range [][]string{nil, {"-paper", "letter", "-size", "24", "-landscape"}, {"-size", "36"}} {
		to := filepath.Join(t.TempDir(), "new", "sheets")
		out, errs, code := play(append([]string{"-from", "songs", "-to", to}, args...)...)
		if code != 0 || errs != "" || out != "3 of 3 songs: "+filepath.Join(to, indexName)+"\n" {
			t.Errorf("%q: exit code %d, %q, %q", args, code, out, errs)
		}
		checkPages(t, to, 3)
		sheet := content(t, to, "lantern-walk.html")
		size := "@page { size: 210mm 297mm; margin: 0 }"
		if slices.Contains(args, "letter") {
			size = "@page { size: 11in 8.5in; margin: 0 }"
		}
		if !strings.Contains(sheet, size) {
			t.Errorf("%q: no %s", args, size)
		}
		sides := strings.Count(sheet, "<svg ")
		if want := fmt.Sprintf("%d page", sides); !strings.Contains(content(t, to, indexName), want) || sides == 0 {
			t.Errorf("%q: the index does not say %s", args, want)
		}
	}
}

func TestBadSongsAreReportedAndTheOthersDrawn(t *testing.T) {
	from := folder(t, "a.txt", "chords: Am | Xm\n", "b.txt", "chords: Am\n", "c.txt", "title: C\ncapo: 99\nchords: Am\n",
		"d.txt", "", "notes.doc", "?", ".hidden.txt", "?", "e.TXT", "chords: G")
	to := t.TempDir()
	out, errs, code := play("-from", from, "-to", to)
	if code != 2 || out != "2 of 5 songs: "+filepath.Join(to, indexName)+"\nnot read, as their names do not end in .txt: notes.doc\n" {
		t.Errorf("exit code %d, %q", code, out)
	}
	var at []string
	for _, line := range regexp.MustCompile(`(?m)^handout: (.*?: )`).FindAllStringSubmatch(errs, -1) {
		at = append(at, line[1])
	}
	if got := strings.Join(at, ""); got != "a.txt, line 1, byte 13: c.txt, line 2, byte 6: d.txt, line 1, byte 0: " {
		t.Errorf("reported: %s\n%s", got, errs)
	}
	checkPages(t, to, 2)
}

// Without a song that can be played nothing is written, not even a folder.
func TestNoGoodSong(t *testing.T) {
	from, to := folder(t, "a.txt", "chords: Xm"), filepath.Join(t.TempDir(), "to")
	out, _, code := play("-from", from, "-to", to)
	if _, err := os.Stat(to); code != 2 || out != "" || !errors.Is(err, os.ErrNotExist) {
		t.Errorf("exit code %d, %q, %v", code, out, err)
	}
}

func TestFoldersAndFlagsAreRefusedInPlace(t *testing.T) {
	empty, songs := t.TempDir(), folder(t, "a.txt", "chords: Am")
	foreign := folder(t, "index.html", "my own page")
	in := func(to ...string) []string {
		return append([]string{"-from", songs, "-to", filepath.Join(empty, "to")}, to...)
	}
	for _, r := range []clitest.Refusal{
		{Why: "nothing asked for", Said: "give -from and -to"},
		{Why: "no folder to write to", Args: []string{"-from", songs}, Said: "give -from and -to"},
		{Why: "a folder without a name", Args: []string{"-from", songs, "-to", ""}, Said: "-to, byte 0: no name"},
		{Why: "a folder that is not there", Args: []string{"-from", filepath.Join(empty, "none"), "-to", empty}, Said: "-from, byte 0: "},
		{Why: "a folder without songs", Args: []string{"-from", empty, "-to", empty}, Said: "no song is there"},
		{Why: "a page that is not ours", Args: []string{"-from", songs, "-to", foreign}, Said: "index.html is there, which handout did not write"},
		{Why: "a file as a folder", Args: []string{"-from", songs, "-to", filepath.Join(songs, "a.txt")}, Said: "-to, byte 0: "},
		{Why: "print too large", Args: in("-size", "40"), Marked: "40", Said: "choose 12 to 36"},
		{Why: "no such paper", Args: in("-paper", "a5"), Marked: "a5", Said: "A4, Letter"},
		{Why: "a stray folder", Args: in("sheets"), Marked: "sheets", Said: "name the folders with -from and -to"},
		{Why: "an unknown flag", Args: in("-fast"), Marked: "-fast", Said: "-h lists the flags"},
	} {
		out, errs, code := play(r.Args...)
		if code != 2 || out != "" {
			t.Errorf("%s: exit code %d, %q", r.Why, code, out)
		}
		clitest.CheckReport(t, "handout", errs, r)
	}
	if got := content(t, foreign, "index.html"); got != "my own page" || len(filesOf(t, foreign)) != 1 || len(filesOf(t, empty)) != 0 {
		t.Errorf("%q, %q, %q", got, filesOf(t, foreign), filesOf(t, empty))
	}
}

func TestPagesAreRenewedAndNothingRemoved(t *testing.T) {
	from, to := folder(t, "a.txt", "chords: Am", "b.txt", "chords: G"), t.TempDir()
	play("-from", from, "-to", to)
	old := content(t, to, "b.html")
	if err := os.WriteFile(filepath.Join(to, "mine.txt"), []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	from = folder(t, "a.txt", "title: Another\nchords: Am")
	if out, errs, code := play("-from", from, "-to", to); code != 0 {
		t.Errorf("exit code %d, %s, %s", code, out, errs)
	}
	if content(t, to, "mine.txt") != "mine" || content(t, to, "b.html") != old {
		t.Error("a file is lost")
	}
	if index := content(t, to, indexName); !strings.Contains(index, "Another") || strings.Contains(index, "b.html") {
		t.Errorf("the index is not renewed:\n%s", index)
	}
}

func manySongs(t testing.TB, n int) string {
	var files []string
	for i := range n {
		files = append(files, fmt.Sprintf("song %03d.txt", i),
			fmt.Sprintf("title: Song %d\ntempo: %d\nfigure: 5 3 2 1 2 3 2 1\nchords: Am | Em | G | C G/B |\n Am | F | Dm | E7\n", i, 60+i%60))
	}
	return folder(t, files...)
}

// Each time of the clock is 300 ms after the one before.
func TestALongRunSaysHowFarItIs(t *testing.T) {
	clock := time.Unix(0, 0)
	slow := func() time.Time { clock = clock.Add(300 * time.Millisecond); return clock }
	var out, errs bytes.Buffer
	code := runAt(context.Background(), slow, []string{"-from", manySongs(t, 9), "-to", t.TempDir()}, &out, &errs)
	if code != 0 || errs.String() != "handout: 4 of 9 songs\nhandout: 8 of 9 songs\n" {
		t.Errorf("exit code %d, %q", code, errs.String())
	}
}

func TestAnInterruptLeavesNoPartOfAFile(t *testing.T) {
	ctx, interrupt := context.WithCancel(context.Background())
	asked := 0
	clock := func() time.Time {
		if asked++; asked == 4 { // after the third song
			interrupt()
		}
		return time.Unix(0, 0)
	}
	from, to := manySongs(t, 9), t.TempDir()
	var out, errs bytes.Buffer
	code := runAt(ctx, clock, []string{"-from", from, "-to", to}, &out, &errs)
	if code != 130 || errs.String() != "handout: interrupted after 3 of 9 songs; index.html is not renewed\n" {
		t.Errorf("exit code %d, %q", code, errs.String())
	}
	if names := filesOf(t, to); len(names) != 6 {
		t.Errorf("%q are left", names)
	}
	if _, _, code := play("-from", from, "-to", to); code != 0 {
		t.Errorf("another run: exit code %d", code)
	}
	checkPages(t, to, 9)
}

// The same by a real interrupt, wherever it comes.
func TestAProcessIsInterrupted(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "js" || testing.Short() {
		t.Skip("no interrupt to send, or no process to run")
	}
	from, to := manySongs(t, 400), filepath.Join(t.TempDir(), "to")
	handout := exec.Command(os.Args[0], "-from", from, "-to", to)
	handout.Env = append(os.Environ(), "HANDOUT_ITSELF=1")
	if err := handout.Start(); err != nil {
		t.Fatal(err)
	}
	for range 12000 { // a minute, for slow machines
		if len(filesOf(t, to)) > 10 {
			break
		}
		time.Sleep(5 * time.Millisecond)
	}
	handout.Process.Signal(os.Interrupt)
	handout.Wait()
	if code := handout.ProcessState.ExitCode(); code != 130 {
		t.Errorf("exit code %d", code)
	}
	for _, name := range filesOf(t, to) {
		if !strings.HasSuffix(name, ".html") || !strings.HasSuffix(content(t, to, name), mark) {
			t.Errorf("%s is half written", name)
		}
	}
}

func BenchmarkTwoHundredSongs(b *testing.B) {
	from, to := manySongs(b, 200), b.TempDir()
	for b.Loop() {
		if _, errs, code := play("-from", from, "-to", to); code != 0 {
			b.Fatal(errs)
		}
	}
}
