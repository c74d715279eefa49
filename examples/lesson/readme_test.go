package main

import (
	"os"
	"strings"
	"testing"

	"weft.example/examples/internal/clitest"
)

func TestTheReadmeIsCurrent(t *testing.T) { clitest.Main(run).CheckReadme(t, "lesson") }

// TestThePictureInTheReadmeIsCurrent: README.md shows the sheet that the
// command beside it draws.
func TestThePictureInTheReadmeIsCurrent(t *testing.T) {
	const picture = "examples/lesson/sheet.svg"
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"](" + picture + ")", "go run ./examples/lesson -format svg -o " + picture} {
		if !strings.Contains(string(text), want) {
			t.Errorf("README.md does not say %s", want)
		}
	}
	drawn := clitest.Main(run).PlayedOut(t, "-format", "svg")
	if *clitest.Update {
		if err := os.WriteFile("sheet.svg", []byte(drawn), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if shown, err := os.ReadFile("sheet.svg"); err != nil || string(shown) != drawn {
		t.Errorf("sheet.svg is not what -format svg draws, %v", err)
	}
}
