package main

import (
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

func shape(t *testing.T, text string) voicing.Shape {
	t.Helper()
	sh, err := voicing.ParseShape(text)
	if err != nil {
		t.Fatal(err)
	}
	return sh
}

// A chart keeps its repeats while each chord has one shape, and is written out
// where one has not.
func TestTheChartHoldsEveryShape(t *testing.T) {
	const am, high, c = "x02210", "577555", "x32010"
	for _, test := range []struct {
		chart  string
		shapes []string // of the steps
		want   string
	}{
		{"|: Am C :|", []string{am, c, am, c}, "|: Am=x02210 C=x32010 :|"},
		{"|: Am C :|", []string{am, c, high, c}, "Am=x02210 C=x32010 | Am=577555 C=x32010"},
		{"Am:3 C@2 | %", []string{am, c, am, c}, "Am=x02210:3 C=x32010@2 | %"},
		{"Am:3 C | % | Am", []string{am, c, high, c, am}, "Am=x02210:3 C=x32010 | Am=577555:3 C=x32010 | Am=x02210"},
		{"|: Am | % :| N.C. | C", []string{am, "", c}, "|: Am=x02210 | % :| N.C. | C=x32010"},
		{"|: Am=577555 Am | C :|", []string{high, am, c, high, am, c}, "|: Am=577555 Am=x02210 | C=x32010 :|"},
	} {
		s := &setting{}
		it, err := s.readSong("path", test.chart, nil)
		if err != nil || len(it.steps) != len(test.shapes) {
			t.Errorf("%s: %v, %v", test.chart, it, err)
			continue
		}
		shapes := make([]voicing.Shape, len(test.shapes))
		for i, text := range test.shapes {
			if text != "" {
				shapes[i] = shape(t, text)
			}
		}
		if got, err := it.withShapes(shapes); err != nil || got.String() != test.want {
			t.Errorf("%s: %s, %v; want %s", test.chart, got, err, test.want)
		}
	}
}

// The lines of a chart are the chart, however long.
func TestChartLines(t *testing.T) {
	for _, chart := range []string{long(), "|: Am | G :| Dm |: E | % :|", "|: " + long() + " :| C G/B |: F@2:3 E:1 :|"} {
		want := picking.MustParseProgression(chart)
		text := ""
		for _, line := range chartLines(want.String()) {
			if len(line) > width {
				t.Errorf("%d characters: %s", len(line), line)
			}
			text += line + "\n"
		}
		if got, err := picking.ParseProgression(text); err != nil || !got.Equal(want) {
			t.Errorf("%s became %s, %v", want, got, err)
		}
	}
}

// TestHoldWords holds what is called easy, moderate and hard against the order
// in which first books bring the shapes. Common practice.
func TestHoldWords(t *testing.T) {
	for word, shapes := range map[string][]string{
		"easy":     {"022000", "x02210", "022100", "x32010", "320003", "xx0232", "x02220", "xx0231", "xx3210"},
		"moderate": {"x32310", "x21202", "577555"},
		"hard":     {"133211", "x24432", "x13331"},
	} {
		for _, text := range shapes {
			v, err := voicing.New(fretboard.Instrument{}, voicing.Chord{}, shape(t, text))
			if err != nil {
				t.Fatal(err)
			}
			if got := holdWord(v.Cost().Effort()); got != word {
				t.Errorf("%s is %s with effort %d, want %s", text, got, v.Cost().Effort(), word)
			}
		}
	}
}
