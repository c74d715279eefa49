package musicxml_test

import (
	"fmt"
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// signs prints the signs of the first measure: r for rests, dots, ~ before a
// note that is tied on, brackets around triplets, and after a slash the first
// letters of the beams.
func signs(t *testing.T, p picking.Passage) string {
	t.Helper()
	s, err := parsed(encoded(t, p, musicxml.Options{Staves: musicxml.TabAlone}))
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, x := range s.Measures[0].Items {
		if x.XMLName.Local != "note" {
			continue
		}
		sign := map[bool]string{true: "r"}[x.Rest != nil] + x.Type + strings.Repeat(".", len(x.Dots))
		if _, stop, _ := tiesOf(x); stop {
			sign = "~" + sign
		}
		for i, b := range x.Beams {
			sign += map[bool]string{true: "/"}[i == 0] + map[string]string{"begin": "b", "continue": "c", "end": "e",
				"forward hook": "f", "backward hook": "h"}[b.Word]
		}
		for _, n := range x.Notations {
			for _, tuplet := range n.Tuplets {
				if tuplet.Type == "start" {
					sign = "[" + sign
				} else {
					sign += "]"
				}
			}
		}
		list = append(list, sign)
	}
	return strings.Join(list, " ")
}

// TestTripletsAndBeams holds how a bar is written to usual notation (common
// practice): a triplet takes as little of the bar as it can, beats stay in
// sight, beams go by the beat, and a short last note hooks back.
func TestTripletsAndBeams(t *testing.T) {
	for _, c := range []struct {
		why, chords, figure string
		setting             picking.Setting
		want                string
	}{
		{"triplets by the beat", "Am=x02210", "1/12: 5 3 2 1 2 3", picking.Setting{Meter: picking.TwoFour},
			"[eighth/b eighth/c eighth/e] [eighth/b eighth/c eighth/e]"},
		{"triplet quarters by the half", "Am=x02210", "1/6: 5 3 2", picking.Setting{Meter: picking.TwoFour}, "[quarter quarter quarter]"},
		{"a long note leaves the triplet at the beat", "Am=x02210", "1/12: 5 3 2 - - - - - - - - -", picking.Setting{},
			"[eighth/b eighth/c eighth/e] ~half."},
		{"a long note enters the triplet at the beat", "Am=x02210", "1/12: 5 - - - 3 2", picking.Setting{Meter: picking.TwoFour},
			"quarter [~eighth/b eighth/c eighth/e]"},
		{"a note across two triplets is tied", "Am=x02210", "1/12: 5 - 3 - - 2", picking.Setting{Meter: picking.TwoFour},
			"[quarter eighth] [~quarter eighth]"},
		{"a rest within a triplet", "Am=x02210", "1/12: 5 . 3 2 . .", picking.Setting{Meter: picking.TwoFour},
			"[eighth reighth eighth] [eighth rquarter]"},
		{"dotted eighth and sixteenth", "Am=x02210", "1/16: 5 - - 3 2 1 - -", picking.Setting{Meter: picking.TwoFour},
			"eighth./b 16th/eh 16th/bf eighth./e"},
		{"eighths in 6/8", "Am=x02210", "5 3 2 1 2 3", picking.Setting{Meter: picking.SixEight},
			"eighth/b eighth/c eighth/e eighth/b eighth/c eighth/e"},
		{"eighths in 3/8", "Am=x02210", "5 3 2", picking.Setting{Meter: picking.Meter{Count: 3, Unit: 8}}, "eighth/b eighth/c eighth/e"},
		{"a slot reaches over a change and stops at silence", "Am=x02210:1 G=320003:1 N.C.:1 C=x32010:1", "1/1: 5", picking.Setting{Change: picking.Carry}, "half rquarter quarter"},
	} {
		if got := signs(t, arranged(t, c.chords, c.figure, c.setting)); got != c.want {
			t.Errorf("%s: %s, want %s", c.why, got, c.want)
		}
	}
}

// TestNormalType: a note in a triplet that is none of the three says of which
// notes it is a triplet.
func TestNormalType(t *testing.T) {
	p := arranged(t, "Am=x02210", "1/12: 5 - 3 2 - 1", picking.Setting{Meter: picking.TwoFour})
	var got []string
	for _, x := range items(t, p, musicxml.Options{Staves: musicxml.TabAlone}) {
		if x.Time != nil {
			got = append(got, fmt.Sprintf("%s of %s", x.Type, x.Time.Type))
		}
	}
	if got := strings.Join(got, ", "); got != "quarter of eighth, eighth of , quarter of eighth, eighth of " {
		t.Error(got)
	}
}
