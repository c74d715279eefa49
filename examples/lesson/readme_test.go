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
	shown := regexp.MustCompile("(?s)```sh\ngo run ./examples/lesson ([^\n]*)\n```\n\n```text\n(.*?)```").FindSubmatch(text)
	if shown == nil {
		t.Fatal("README.md shows no command with its sheet")
	}
	var args []string
	for _, arg := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(string(shown[1]), -1) {
		args = append(args, strings.Trim(arg, `"`))
	}
	if got := playedOut(t, args...); got != string(shown[2]) {
		t.Errorf("README.md shows another sheet than its command prints:\n%s", got)
	}
}
