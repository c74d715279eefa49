package main

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"weft.example/examples/internal/clitest"
)

func TestAFileHoldsWhatStandardOutputWould(t *testing.T) {
	for _, format := range []string{"text", "json", "svg", "mxl", "midi"} {
		name := filepath.Join(t.TempDir(), "sheet")
		for _, before := range []string{"", "an older sheet, longer or not"} {
			if before != "" {
				if err := os.WriteFile(name, []byte(before), 0o600); err != nil {
					t.Fatal(err)
				}
			}
			if out := playedOut(t, "-format", format, "-o", name); out != "" {
				t.Errorf("%s: %d bytes on standard output", format, len(out))
			}
			checkFile(t, name, playedOut(t, "-format", format))
		}
		if entries, _ := os.ReadDir(filepath.Dir(name)); len(entries) != 1 {
			t.Errorf("%s: %d files are left", format, len(entries))
		}
	}
}

func checkFile(t *testing.T, name, want string) {
	t.Helper()
	got, err := os.ReadFile(name)
	if err != nil || string(got) != want {
		t.Errorf("%s holds %d bytes, want %d, %v", name, len(got), len(want), err)
	}
}

func TestAnOlderFileIsKeptOnBadInput(t *testing.T) {
	name := filepath.Join(t.TempDir(), "sheet")
	if err := os.WriteFile(name, []byte("older"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, _, code := play(nil, "-o", name, "-chords", "Hm"); code != 2 {
		t.Errorf("exit code %d", code)
	}
	checkFile(t, name, "older")
}

func TestFilesThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	plain := filepath.Join(dir, "plain")
	if err := os.WriteFile(plain, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for why, name := range map[string]string{
		"no name":                       "",
		"a directory":                   dir,
		"a directory that is not there": filepath.Join(dir, "none", "sheet"),
		"a file in a file":              filepath.Join(plain, "sheet"),
		"NUL in the name":               filepath.Join(dir, "a\x00b"),
	} {
		out, errs, code := play(nil, "-o", name)
		if code != 2 || out != "" {
			t.Errorf("%s: exit code %d and %d bytes out", why, code, len(out))
		}
		clitest.CheckReport(t, "lesson", errs, clitest.Refusal{Why: why, Said: "-o, byte 0: "})
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 1 {
		t.Errorf("%d files are left", len(entries))
	}
}

func TestLinksPermissionsAndOtherPartsAreKept(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "js" {
		t.Skip("no links or permissions to keep")
	}
	dir := t.TempDir()
	real, link, other := filepath.Join(dir, "real"), filepath.Join(dir, "link"), filepath.Join(dir, "real.1.part")
	for name, content := range map[string]string{real: "older", other: "somebody else's"} {
		if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	playedOut(t, "-o", link)
	checkFile(t, real, playedOut(t))
	checkFile(t, other, "somebody else's")
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone, %v", err)
	}
	if info, err := os.Stat(real); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("permissions %v, %v", info.Mode(), err)
	}
}
