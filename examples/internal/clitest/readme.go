package clitest

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// CheckReadme holds what README.md shows below each command of the program, set
// in a block of its own, against what the command prints.
func (run Main) CheckReadme(t testing.TB, program string) {
	t.Helper()
	const path = "../../README.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	command := regexp.MustCompile("(?s)```sh\ngo run ./examples/" + program + " ([^\n]*)\n```\n\n```text\n(.*?)```")
	renewed, at := "", 0
	for _, shown := range command.FindAllSubmatchIndex(text, -1) {
		args := arguments(string(text[shown[2]:shown[3]]))
		got := run.PlayedOut(t, args...)
		if want := string(text[shown[4]:shown[5]]); got != want && !*Update {
			t.Errorf("README.md shows something else than %q prints:\n%s", args, got)
		}
		renewed += string(text[at:shown[4]]) + got
		at = shown[5]
	}
	if at == 0 {
		t.Fatalf("README.md shows no command of %s with what it prints", program)
	}
	if *Update {
		if err := os.WriteFile(path, []byte(renewed+string(text[at:])), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// arguments splits a command line at its spaces, but for those in quotes.
func arguments(line string) (args []string) {
	for _, arg := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(line, -1) {
		args = append(args, strings.Trim(arg, `"`))
	}
	return args
}
