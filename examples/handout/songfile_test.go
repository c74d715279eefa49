package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/examples/internal/clitest"
	"weft.example/examples/internal/song"
	"weft.example/fretboard"
)

func TestSongFiles(t *testing.T) {
	for _, test := range []struct {
		why, text string
		want      song.Texts
	}{
		{"chords alone", "chords: Am | G", song.Texts{"chords": "Am | G"}},
		{"all in any order, large and small", "Figure:5 3 2 1\n\n  TITLE : Oars: two \nchords:\tAm\ncapo: 2\n",
			song.Texts{"title": "Oars: two", "figure": "5 3 2 1", "chords": "Am", "capo": "2"}},
		{"chords that go on", "chords: Am |\n  G:3 C:1\nAm:2 E:2\n|: Dm :|\n\n  E7\nmeter: 4/4\n",
			song.Texts{"chords": "Am |\n  G:3 C:1\nAm:2 E:2\n|: Dm :|\n\n  E7", "meter": "4/4"}},
		{"chords from the next line on", "chords:\n  Am\n  G\n", song.Texts{"chords": "Am\n  G"}},
		{"remarks, of which their place is left", "# one\nchords: F#m\n # two: é\nG\ntitle: # not a remark\n",
			song.Texts{"chords": "F#m\n          \nG", "title": "# not a remark"}},
		{"lines of other systems, a byte order mark", "\ufeffchords: Am |\r\n G\r\nmeter: 3/4\r\n", song.Texts{"chords": "Am |\r\n G", "meter": "3/4"}},
		{"an empty title", "title:\nchords: Am", song.Texts{"title": "", "chords": "Am"}},
	} {
		f, err := parse("Two Oars.txt", test.text)
		if err != nil {
			t.Errorf("%s: %v", test.why, err)
			continue
		}
		if _, given := test.want["title"]; !given {
			test.want["title"] = "Two Oars"
		}
		if diff := cmp.Diff(test.want, f.texts()); diff != "" {
			t.Errorf("%s: %s", test.why, diff)
		}
	}
}

func TestBadSongFilesAreRefusedInPlace(t *testing.T) {
	for _, r := range []struct{ why, text, marked, said string }{
		{"nothing", "", "", "bad.txt, line 1, byte 0: no chords; add a line"},
		{"no chords", "title: Oars\nmeter: 6/8\n", "", "bad.txt, line 3, byte 0: no chords"},
		{"empty chords", "chords:\ntitle: Oars\n", "", "bad.txt, line 1, byte 7: no chords"},
		{"an unknown key", "chords: Am\n  tempi: 90\n", "tempi", "bad.txt, line 2, byte 2: \"tempi\": no such key; choose one of title, chords"},
		{"a second key", "title: A\nchords: Am\nTitle: B\n", "Title", "bad.txt, line 3, byte 0: \"Title\": a second title; give each key once"},
		{"a line that is nothing", "title: Oars\n  and more of it\nchords: Am", "and more of it", "line 2, byte 2"},
		{"a chord", "chords: Am |\n  G | Xm\n", "X", "line 2, byte 6"},
		{"a chord after a remark", "chords: Am |\n# ä remark\n  Xm\n", "X", "line 3, byte 2"},
		{"a chord behind a byte order mark", "\ufeffchords: Xm", "X", "line 1"},
		{"a chord with the lines of another system", "title: A\r\nchords: Am |\r\n  Xm\r\n", "X", "line 3, byte 2"},
		{"a repeat without an end", "chords:\n |: Am\n G\n", "|:", "line 2, byte 1"},
		{"no figure of that number", "figure: 5 3\nchords: Am | G@2", "G@2", "line 2, byte 13"},
		{"a string that the instrument lacks", "chords: C\ntuning: ukulele\nfigure: 4 5 3 2\n", "5", "line 3, byte 10"},
		{"a shape that does not suit", "tuning: ukulele\nchords: C=x32010\n", "x32010", "line 2"},
		{"a capo off the neck", "chords: Am\ncapo:   77", "77", "line 2, byte 8"},
		{"a tempo", "chords: Am\ntempo: fast", "fast", "line 2, byte 7"},
		{"no tempo", "chords: Am\ntempo: 0", "0", "10 to 400"},
		{"a tempo too high", "chords: Am\ntempo: 401", "401", "10 to 400"},
		{"a meter", "chords: Am\nmeter: 5/5", "", "line 2"},
		{"a meter that is not there", "chords: Am\nmeter:\n", "", "line 2, byte 6"},
		{"a tuning", "chords: Am\ntuning: E2 X2", "X2", "line 2"},
		{"a truth", "chords: Am\nonce: true", "true", "choose one of no, yes"},
		{"a hand", "chords: Am\nhand: both", "both", "right, left, turned"},
		{"a spelling", "chords: Am\nspelling: dutch", "dutch", "english, german, mixed"},
		{"an English B in German chords", "spelling: german\nchords: Bb", "Bb", "line 2"},
		{"not UTF-8", "chords: Am\ntitle: \xff\n", "?", "line 2, byte 7"},
		{"too long", "chords: Am\n" + strings.Repeat("# remark\n", 8000), "", "more than 65536 bytes"},
	} {
		from, to := folder(t, "bad.txt", r.text), filepath.Join(t.TempDir(), "to")
		out, errs, code := play("-from", from, "-to", to)
		if code != 2 || out != "" {
			t.Errorf("%s: exit code %d, %q", r.why, code, out)
		}
		clitest.CheckReport(t, "handout", errs, clitest.Refusal{Why: r.why, Marked: r.marked, Said: r.said})
	}
}

func TestFilesThatAreNoPlainFiles(t *testing.T) {
	from := folder(t, "a.txt", "chords: Am")
	if err := os.Symlink(filepath.Join(from, "none"), filepath.Join(from, "b.txt")); err != nil {
		t.Skip(err)
	}
	_, errs, code := play("-from", from, "-to", t.TempDir())
	if code != 2 || !strings.HasPrefix(errs, "handout: b.txt: ") || strings.Contains(errs, from) {
		t.Errorf("exit code %d, %q", code, errs)
	}
}

func TestTheDocumentationHasEveryKey(t *testing.T) {
	doc, err := os.ReadFile("main.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range song.Keys {
		if !strings.Contains(string(doc), "\n//\t"+key.Name+" ") {
			t.Errorf("main.go does not explain %s", key.Name)
		}
	}
}

// Whatever a file says, a value stands in it where it is said to, remarks apart,
// and an error shows a line of the file.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"chords: Am | G", "\ufefftitle: x\r\nchords:\n # y\n  Am:3 G:1\n", "# \xff", "tempi: 3", "title:\ntitle:", ":", "a: b\nchords"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file, err := parse("a.txt", text)
		if err != nil {
			place := err.(fretboard.Located).Where()
			if !strings.Contains(text, place.Source) || place.Offset < 0 || place.Offset+place.Length > len(place.Source) || place.Mend == "" {
				t.Errorf("%q: %#v", text, place)
			}
			return
		}
		for key, v := range file.values {
			if v.at+len(v.text) > len(text) {
				t.Fatalf("%s ends at %d of %d", key, v.at+len(v.text), len(text))
			}
			for i := range v.text {
				if v.text[i] != ' ' && v.text[i] != text[v.at+i] {
					t.Errorf("%s: %q is not at byte %d of %q", key, v.text, v.at, text)
				}
			}
		}
	})
}
