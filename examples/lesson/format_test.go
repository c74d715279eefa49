package main

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"weft.example/examples/internal/clitest"
	"weft.example/picking/json"
	"weft.example/picking/pickingtest"
)

// What is apart from the usual, each a bar or two long.
var oddSongs = []struct {
	why  string
	args []string
}{
	{"a figure of one slot", []string{"-chords", "Am=x02210", "-figure", "5"}},
	{"twelve strings", []string{"-chords", "Em=001122000000", "-tuning", "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4", "-figure", "12 1 6 2"}},
	{"a title with marks", []string{"-chords", "Am=x02210", "-title", pickingtest.SixtyTitle}},
	{"a title with control characters", []string{"-chords", "Am=x02210", "-title", strings.ReplaceAll(pickingtest.ControlTitle, "\x00", "")}},
	{"a ukulele", []string{"-chords", "C=0003 G7=0212", "-tuning", "ukulele"}},
	{"nothing but silence", []string{"-chords", "N.C. | %"}},
	{"a repeat behind a capo, turned", []string{"-chords", "|: F#m=244222 :|", "-capo", "3", "-hand", "turned", "-meter", "6/8", "-spelling", "german"}},
}

// Each format with its flags, and what reads the output again.
var formatCases = []struct {
	name  string
	args  []string
	check func(out string) error
}{
	{"text", []string{"-count", "beats"}, readText},
	{"json", nil, func(out string) error { _, err := json.Decode(strings.NewReader(out)); return err }},
	{"svg", nil, readXML("svg")},
	{"svg", []string{"-size", "36", "-paper", "letter"}, readXML("svg")},
	{"svg", []string{"-size", "36", "-landscape"}, readXML("svg")},
	{"words", nil, readText},
	{"html", nil, readXML("html")},
	{"musicxml", nil, readXML("score-partwise")},
	{"musicxml", []string{"-staves", "tab"}, readXML("score-partwise")},
	{"mxl", []string{"-staves", "both"}, readMXL},
	{"midi", []string{"-countin", "1", "-click", "beats"}, readMIDI},
	{"wav", []string{"-countin", "1", "-click", "divided", "-repeat", "2", "-silent-bars", "1+1", "-hush", "-material", "nylon"}, readWAV},
}

func TestEveryFormatOfOddSongs(t *testing.T) {
	for _, f := range formatCases {
		for _, song := range oddSongs {
			args := slices.Concat(song.args, []string{"-format", f.name, "-tempo", "200"}, f.args)
			out, errs, code := play(nil, args...)
			if code != 0 || errs != "" && f.name != "wav" { // a slow machine may say how far the sound is
				t.Errorf("%s: %q: exit code %d, %s", song.why, args, code, errs)
				continue
			}
			if err := f.check(out); err != nil {
				t.Errorf("%s: %q: %v", song.why, args, err)
			}
		}
	}
}

func TestEveryFormatIsTried(t *testing.T) {
	var tried []string
	for _, f := range formatCases {
		tried = append(tried, f.name)
	}
	if tried = slices.Compact(tried); !slices.Equal(tried, names()) {
		t.Errorf("tried %v of %v", tried, names())
	}
}

func readText(out string) error {
	if !utf8.ValidString(out) || !strings.Contains(out, "tring") || !strings.HasSuffix(out, "\n") {
		return fmt.Errorf("no sheet: %.200q", out)
	}
	return nil
}

// readXML returns a reader of well-formed XML that has the given root.
func readXML(root string) func(string) error {
	return func(out string) error {
		d := xml.NewDecoder(strings.NewReader(out))
		first := ""
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) && first == root {
				return nil
			}
			if err != nil {
				return fmt.Errorf("root %q: %w", first, err)
			}
			if start, ok := token.(xml.StartElement); ok && first == "" {
				first = start.Name.Local
			}
		}
	}
}

func readMXL(out string) error {
	archive, err := zip.NewReader(strings.NewReader(out), int64(len(out)))
	if err != nil {
		return err
	}
	container, err := readEntry(archive, "META-INF/container.xml")
	if err != nil {
		return err
	}
	full := regexp.MustCompile(`full-path="([^"]+)"`).FindStringSubmatch(container)
	if full == nil {
		return errors.New("the container names no score")
	}
	score, err := readEntry(archive, full[1])
	if err != nil {
		return err
	}
	return readXML("score-partwise")(score)
}

func readEntry(archive *zip.Reader, name string) (string, error) {
	entry, err := archive.Open(name)
	if err != nil {
		return "", err
	}
	content, err := io.ReadAll(entry)
	return string(content), err
}

// readMIDI walks the chunks of a Standard MIDI File: a header of 6 bytes that
// counts the tracks, and tracks that fill the file.
func readMIDI(out string) error {
	b := []byte(out)
	if len(b) < 14 || string(b[:4]) != "MThd" || binary.BigEndian.Uint32(b[4:]) != 6 {
		return fmt.Errorf("no header: %.20q", out)
	}
	tracks := int(binary.BigEndian.Uint16(b[10:]))
	for at := 14; ; tracks-- {
		if at == len(b) && tracks == 0 {
			return nil
		}
		if at+8 > len(b) || tracks == 0 || string(b[at:at+4]) != "MTrk" {
			return fmt.Errorf("byte %d of %d is no track, with %d to come", at, len(b), tracks)
		}
		at += 8 + int(binary.BigEndian.Uint32(b[at+4:]))
	}
}

// readWAV holds the sizes in the header of a RIFF file against its length, and
// looks for sound after it.
func readWAV(out string) error {
	b := []byte(out)
	if len(b) < 44 || string(b[:4]) != "RIFF" || string(b[8:16]) != "WAVEfmt " || string(b[36:40]) != "data" {
		return fmt.Errorf("no header: %.50q", out)
	}
	if riff, data := int(binary.LittleEndian.Uint32(b[4:])), int(binary.LittleEndian.Uint32(b[40:])); riff != len(b)-8 || data != len(b)-44 {
		return fmt.Errorf("RIFF of %d bytes, data of %d, in a file of %d", riff, data, len(b))
	}
	if len(bytes.Trim(b[44:], "\x00")) == 0 {
		return errors.New("no sound")
	}
	return nil
}

func TestTheWordsOfASong(t *testing.T) {
	clitest.Golden(t, "words.txt", playedOut(t, "-format", "words", "-chords", "Am=x02210 D=xx0232", "-figure", "5 3 2 1", "-title", "Two Oars"))
}

// Each flag that serves some formats only changes what they write.
func TestFlagsReachTheirFormats(t *testing.T) {
	flags := map[string][]string{
		"count": {"sixteenths"}, "paper": {"letter"}, "size": {"30"}, "landscape": {"true"}, "staves": {"tab"},
		"countin": {"2"}, "click": {"beats"}, "material": {"nylon"}, "repeat": {"2"}, "silent-bars": {"1+1"}, "hush": {"true", "-silent-bars=1+1", "-click=beats"},
	}
	for name, served := range serves {
		if flags[name] == nil {
			t.Errorf("-%s is not tried", name)
			continue
		}
		for _, format := range strings.Fields(served) {
			study := []string{"-chords", "Am=x02210 | %", "-tempo", "300", "-format", format}
			if format == "mxl" {
				study[1] += " | G=320003" // another chord, another size
			}
			without, _, _ := play(nil, append(study, flags[name][1:]...)...)
			with, errs, code := play(nil, slices.Concat(study, []string{"-" + name + "=" + flags[name][0]}, flags[name][1:])...)
			if code != 0 || with == without {
				t.Errorf("-%s changes nothing of %s: exit code %d, %s", name, format, code, errs)
			}
		}
	}
}

// A sound goes on for as long as the clock is asked: here each time is 400 ms
// after the one before.
func TestALongSoundSaysHowFarItIs(t *testing.T) {
	clock := time.Unix(0, 0)
	slow := func() time.Time { clock = clock.Add(400 * time.Millisecond); return clock }
	var out, errs bytes.Buffer
	if code := runAt(slow, []string{"-format", "wav", "-chords", "Am=x02210", "-tempo", "120"}, nil, &out, &errs); code != 0 {
		t.Fatalf("exit code %d, %s", code, errs.String())
	}
	if err := readWAV(out.String()); err != nil {
		t.Error(err)
	}
	lines := strings.Split(strings.TrimSuffix(errs.String(), "\n"), "\n")
	last := -1
	for _, line := range lines {
		var share, seconds int
		if n, err := fmt.Sscanf(line, "lesson: %d %% of %ds of sound", &share, &seconds); n != 2 || share <= last || share > 100 {
			t.Errorf("%q after %d %%: %v", line, last, err)
		}
		last = share
	}
	if len(lines) < 10 {
		t.Errorf("%d lines: %s", len(lines), errs.String())
	}
	quick := func() time.Time { return clock }
	errs.Reset()
	if code := runAt(quick, []string{"-format", "wav", "-chords", "Am=x02210"}, nil, io.Discard, &errs); code != 0 || errs.Len() > 0 {
		t.Errorf("a quick one: exit code %d, %s", code, errs.String())
	}
}

func TestAnInterruptLeavesNoPartOfAFile(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "js" {
		t.Skip("no interrupt to send to oneself")
	}
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	name := filepath.Join(dir, "round.wav")
	if err := os.WriteFile(name, []byte("older"), 0o644); err != nil {
		t.Fatal(err)
	}
	asked := 0
	interrupting := func() time.Time {
		if asked++; asked > 60 { // some of the file is written by then
			if parts, _ := filepath.Glob(name + ".*"); len(parts) == 1 && asked == 61 {
				self.Signal(os.Interrupt)
			}
			time.Sleep(10 * time.Millisecond)
		}
		return time.Unix(0, 0)
	}
	var errs bytes.Buffer
	code := runAt(interrupting, []string{"-format", "wav", "-repeat", "99", "-o", name}, nil, io.Discard, &errs)
	if code != 130 || errs.String() != "lesson: interrupted\n" {
		t.Errorf("exit code %d, %q", code, errs.String())
	}
	checkFile(t, name, "older")
	if entries, _ := os.ReadDir(dir); len(entries) != 1 {
		t.Errorf("%d files are left", len(entries))
	}
}
