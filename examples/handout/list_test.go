package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestNamesAreSafeAndUnique(t *testing.T) {
	names := namer{"index.html": true}
	for _, test := range [][2]string{
		{"Rain on the Boathouse", "rain-on-the-boathouse"},
		{"rain on the boathouse", "rain-on-the-boathouse-2"},
		{"Rain, on the (Boathouse)!", "rain-on-the-boathouse-3"},
		{"../../etc/passwd", "etc-passwd"},
		{"Grüße & Küsse", "grüße-küsse"},
		{"Cafe\u0301 de nuit", "cafe-de-nuit"},
		{"夜の歌", "夜の歌"},
		{"🎸", "song"},
		{"!!!", "song-2"},
		{"", "song-3"},
		{"\xff\xfe", "song-4"},
		{"index", "index-2"},
		{"a", "a"},
		{"a-words", "a-words-2"},
		{"b-words", "b-words"},
		{"b", "b-2"},
		{"CON", "song-con"},
		{"lpt1", "song-lpt1"},
		{"com", "com"},
		{"a.html", "a-html"},
		{strings.Repeat("ab ", 40), strings.TrimSuffix(strings.Repeat("ab-", 20), "-")},
	} {
		sheet, words := names.pages(test[0])
		if sheet != test[1]+".html" || words != test[1]+"-words.html" {
			t.Errorf("%q: %s and %s, want %s.html", test[0], sheet, words, test[1])
		}
	}
}

// Songs with such file names come out whole, with links that lead there.
func TestOddFileNames(t *testing.T) {
	dir := t.TempDir()
	songs := 0
	for _, name := range []string{"a&b <c>", `"quoted" 'song'`, "100 % #1?", "Grüße", "夜の歌", "tab\there", "new\nline", "\xff", "index", "con", strings.Repeat("x", 240)} {
		if err := os.WriteFile(filepath.Join(dir, name+".txt"), []byte("chords: Am"), 0o644); err != nil {
			t.Log(err) // which not every file system takes
			continue
		}
		songs++
	}
	to := t.TempDir()
	if _, errs, code := play("-from", dir, "-to", to); code != 0 {
		t.Fatalf("exit code %d, %s", code, errs)
	}
	checkPages(t, to, songs)
}

func TestOddTitles(t *testing.T) {
	for _, title := range []string{"", "A\x00\x1b[31m & <b>\ufffe \"x\"", "\u202eback", "</title><script>", "{{.Title}}"} {
		from, to := folder(t, "a.txt", "title: "+title+"\nchords: N.C."), t.TempDir()
		if _, errs, code := play("-from", from, "-to", to); code != 0 {
			t.Errorf("%q: exit code %d, %s", title, code, errs)
			continue
		}
		checkPages(t, to, 1)
		if strings.Contains(content(t, to, "a.html"), "<script") {
			t.Errorf("%q is markup", title)
		}
	}
}
