// Package clitest supports the tests of the example programs.
package clitest

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Update is the flag -update of the tests.
var Update = flag.Bool("update", false, "write the goldens anew")

// A Main is a program but for the process around it.
type Main func(args []string, stdin io.Reader, stdout, stderr io.Writer) int

// Play runs the program and returns what it wrote, with the exit code.
func (run Main) Play(stdin io.Reader, args ...string) (stdout, stderr string, code int) {
	var out, errs bytes.Buffer
	code = run(args, stdin, &out, &errs)
	return out.String(), errs.String(), code
}

// PlayedOut runs the program and fails the test unless it plays.
func (run Main) PlayedOut(t testing.TB, args ...string) string {
	t.Helper()
	out, errs, code := run.Play(nil, args...)
	if code != 0 || errs != "" {
		t.Fatalf("%q: exit code %d, standard error %q", args, code, errs)
	}
	return out
}

// Golden holds what was printed against a file in testdata.
func Golden(t testing.TB, name, got string) {
	t.Helper()
	name = filepath.Join("testdata", name)
	if *Update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got)\n%s", name, diff)
	}
}

// A Refusal is a command line that cannot be played, the place that the carets
// mark, where it is short enough to show, and part of what is said of it.
type Refusal = struct {
	Why    string
	Args   []string
	Marked string
	Said   string
}

// CheckRefusal runs what is to be refused: it leaves nothing behind but its report.
func (run Main) CheckRefusal(t testing.TB, program string, r Refusal) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "out")
	out, errs, code := run.Play(nil, append([]string{"-o", file}, r.Args...)...)
	if code != 2 || out != "" {
		t.Errorf("%s: exit code %d and %d bytes out", r.Why, code, len(out))
	}
	if entries, err := os.ReadDir(filepath.Dir(file)); err != nil || len(entries) > 0 {
		t.Errorf("%s: %d files left, %v", r.Why, len(entries), err)
	}
	CheckReport(t, program, errs, r)
}

// CheckReport holds the three lines of an error against what is expected: the
// reason with the mend, the text, the carets.
func CheckReport(t testing.TB, program, errs string, r Refusal) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(errs, "\n"), "\n")
	if len(lines) != 3 || !strings.HasPrefix(lines[0], program+": ") || !strings.Contains(lines[0], r.Said) {
		t.Errorf("%s: want three lines, the first with %q:\n%s", r.Why, r.Said, errs)
		return
	}
	if !strings.Contains(lines[0], "; ") {
		t.Errorf("%s: no mend:\n%s", r.Why, errs)
	}
	carets := strings.TrimLeft(lines[2], " ")
	if carets == "" || strings.Trim(carets, "^") != "" {
		t.Errorf("%s: no carets:\n%s", r.Why, errs)
		return
	}
	if len(errs) > 1500 {
		t.Errorf("%s: %d bytes of error", r.Why, len(errs))
	}
	if r.Marked == "" {
		return
	}
	from, n := len(lines[2])-len(carets), len(carets)
	columns := columnsOf(lines[1])
	if to := from + n; to > len(columns) || strings.Join(columns[from:to], "") != r.Marked {
		t.Errorf("%s: the carets do not mark %q:\n%s", r.Why, r.Marked, errs)
	}
}

// columnsOf returns what stands in each column: a wide character has two, the
// second empty.
func columnsOf(line string) (columns []string) {
	for _, r := range line {
		columns = append(columns, string(r))
		if r >= 0x4e00 && r <= 0x9fff {
			columns = append(columns, "")
		}
	}
	return columns
}
