package text_test

import (
	"regexp"
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/text"
)

var countLine = regexp.MustCompile(`(?m)^count +([1-9].*)$`)

// TestTheCount holds the words to common practice: 1 & 2 &, 1 e & a, triplets
// as 1 & a, 6/8 as six or as 1 & a 2 & a, cut time by the half note.
func TestTheCount(t *testing.T) {
	halves, sevens := picking.Meter{Count: 2, Unit: 2}, picking.Meter{Count: 7, Unit: 8}
	for _, c := range []struct {
		why    string
		meter  picking.Meter
		figure string
		count  picking.CountWords
		want   string
	}{
		{"quarters", picking.FourFour, "5 3 2 1", picking.CountAuto, "1 2 3 4"},
		{"eighths", picking.FourFour, "5 3 2 1 2 3 2 3", picking.CountAuto, "1 & 2 & 3 & 4 &"},
		{"eighths, some held", picking.FourFour, "5 - 3 - 1 2 3 -", picking.CountAuto, "1 & 2 & 3 & 4 &"},
		{"sixteenths", picking.TwoFour, "1/16: 5 3 2 1", picking.CountAuto, "1 e & a 2 e & a"},
		{"thirty-seconds have no words", picking.TwoFour, "1/32: 5 3 2 1", picking.CountAuto, "1 e & a 2 e & a"},
		{"triplets", picking.ThreeFour, "1/12: 5 3 2", picking.CountAuto, "1 & a 2 & a 3 & a"},
		{"triplets, some held", picking.TwoFour, "1/12: 5 - - 3 2 1", picking.CountAuto, "1 & a 2 & a"},
		{"quarter triplets", picking.FourFour, "5 3 2 1 2 3", picking.CountAuto, "1 & a 2 & a 3 & a 4 & a"},
		{"sextuplets have no words", picking.TwoFour, "1/24: 5 3 2 1 2 3", picking.CountAuto, "1 & a 2 & a"},
		{"one note a bar", picking.ThreeFour, "3/4: 5", picking.CountAuto, "1 2 3"},
		{"six", picking.SixEight, "5 3 2 1 2 3", picking.CountAuto, "1 2 3 4 5 6"},
		{"six in two notes", picking.SixEight, "3/8: 5 1", picking.CountAuto, "1 2 3 4 5 6"},
		{"nine", picking.NineEight, "1/8: 5 3 2", picking.CountAuto, "1 & a 2 & a 3 & a"},
		{"twelve", picking.TwelveEight, "1/8: 5 3 2", picking.CountAuto, "1 & a 2 & a 3 & a 4 & a"},
		{"seven", sevens, "1/8: 5 3 2 1 3 2 1", picking.CountAuto, "1 2 3 4 5 6 7"},
		{"cut time", halves, "5 3 2 1 2 3 2 1", picking.CountAuto, "1 e & a 2 e & a"},
		{"cut time in quarters", halves, "5 3 2 1", picking.CountAuto, "1 & 2 &"},

		{"six by the beat", picking.SixEight, "5 3 2 1 2 3", picking.CountBeats, "1 & a 2 & a"},
		{"six by the beat, two notes", picking.SixEight, "3/8: 5 1", picking.CountBeats, "1 2"},
		{"two against three", picking.SixEight, "3/16: 5 3 2 1", picking.CountBeats, "1 & 2 &"},
		{"twelve by the unit", picking.TwelveEight, "1/8: 5 3 2", picking.CountUnits, "1 2 3 4 5 6 7 8 9 10 11 12"},
		{"six by the unit, in sixteenths", picking.SixEight, "1/16: 5 3 2 1 2 3", picking.CountUnits, "1 & 2 & 3 & 4 & 5 & 6 &"},
		{"units and beats are one in 4/4", picking.FourFour, "5 3 2 1", picking.CountUnits, "1 2 3 4"},

		{"quarters in eighths", picking.FourFour, "5 3 2 1", picking.CountEighths, "1 & 2 & 3 & 4 &"},
		{"sixteenths in eighths", picking.TwoFour, "1/16: 5 3 2 1", picking.CountEighths, "1 & 2 &"},
		{"triplets in eighths keep their words", picking.TwoFour, "1/12: 5 3 2", picking.CountEighths, "1 & a 2 & a"},
		{"six in eighths", picking.SixEight, "3/8: 5 1", picking.CountEighths, "1 & a 2 & a"},
		{"seven in eighths", sevens, "1/16: 5 3", picking.CountEighths, "1 2 3 4 5 6 7"},
		{"cut time in eighths", halves, "5 3 2 1", picking.CountEighths, "1 e & a 2 e & a"},
		{"eighths in sixteenths", picking.TwoFour, "5 3 2 1", picking.CountSixteenths, "1 e & a 2 e & a"},
		{"six in sixteenths", picking.SixEight, "5 3 2 1 2 3", picking.CountSixteenths, "1 & 2 & 3 & 4 & 5 & 6 &"},
		{"seven in sixteenths", sevens, "1/8: 5 3", picking.CountSixteenths, "1 & 2 & 3 & 4 & 5 & 6 & 7 &"},
	} {
		p := arranged(t, song{chords: "Am=x02210", figures: c.figure, setting: picking.Setting{Meter: c.meter}})
		sheet := encoded(t, p, text.Options{Count: c.count})
		m := countLine.FindStringSubmatch(sheet)
		if m == nil {
			t.Errorf("%s: no count in\n%s", c.why, sheet)
			continue
		}
		if got := strings.Join(strings.Fields(m[1]), " "); got != c.want {
			t.Errorf("%s: counted %q, want %q", c.why, got, c.want)
		}
	}
}

// TestAMixedBarIsCountedBeatByBeat wants triplets and eighths each in its own
// words.
func TestAMixedBarIsCountedBeatByBeat(t *testing.T) {
	p := arranged(t, song{chords: "Am=x02210@1 C=x32010@2", figures: "1/8: 5 3; 1/12: 5 3 2"})
	m := countLine.FindStringSubmatch(encoded(t, p, text.Options{}))
	if m == nil {
		t.Fatal("no count")
	}
	if got := strings.Join(strings.Fields(m[1]), " "); got != "1 & 2 & 3 & a 4 & a" {
		t.Errorf("counted %q", got)
	}
}
