package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// The sheet that README.md shows is what the command above it prints.
func TestTheSheetInTheReadmeIsCurrent(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := regexp.MustCompile("(?s)```sh\ngo run ./examples/lesson ([^\n]*)\n```\n\n```text\n(.*?)```").FindSubmatchIndex(text)
	if shown == nil {
		t.Fatal("README.md shows no command with its sheet")
	}
	command, sheet := string(text[shown[2]:shown[3]]), string(text[shown[4]:shown[5]])
	var args []string
	for _, arg := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(command, -1) {
		args = append(args, strings.Trim(arg, `"`))
	}
	got := playedOut(t, args...)
	if *update {
		renewed := string(text[:shown[4]]) + got + string(text[shown[5]:])
		if err := os.WriteFile("../../README.md", []byte(renewed), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if got != sheet {
		t.Errorf("README.md shows another sheet than its command prints:\n%s", got)
	}
}
