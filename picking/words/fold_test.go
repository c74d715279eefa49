package words_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking"
	"weft.example/picking/words"
	"weft.example/voicing"
)

var barHeading = regexp.MustCompile(`(?m)^(Bars? \d.*)\n(As .*|Chord|No chord)`)

// outline returns the headings of the bars and what they refer to.
func outline(t *testing.T, p picking.Passage) string {
	text := encoded(t, p, words.Options{})
	var lines []string
	for _, m := range barHeading.FindAllStringSubmatch(text[strings.Index(text, "\nBars\n"):], -1) {
		line := m[1] + "."
		if strings.HasPrefix(m[2], "As ") {
			line = m[1] + ": " + m[2]
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, " ")
}

func TestBarsReferToEarlierBars(t *testing.T) {
	for _, c := range []struct{ why, chords, want string }{
		{"nothing alike", "Am=x02210 | G=320003", "Bar 1. Bar 2."},
		{"one chord", "Am=x02210 | % | % | %", "Bar 1. Bars 2 to 4: As bar 1, 3 times."},
		{"two in turn", strings.Repeat("Am=x02210 | G=320003 | ", 3) + "Am=x02210", "Bar 1. Bar 2. Bars 3 to 6: As bars 1 and 2, 2 times. Bar 7: As bar 1."},
		{"a repeat", "|: Am=x02210 | G=320003 | F=133211 :| Am=x02210", "Bar 1. Bar 2. Bar 3. Bars 4 to 6: As bars 1 to 3. Bar 7: As bar 1."},
		{"a verse that has likes in it", "|: Am=x02210 | Am=x02210 | F=133211 | Am=x02210 :|", "Bar 1. Bar 2: As bar 1. Bar 3. Bar 4: As bar 1. Bars 5 to 8: As bars 1 to 4."},
		{"a verse written out", strings.Repeat("Am=x02210 | Am=x02210 | F=133211 | Am=x02210 | ", 2) + "F=133211", "Bar 1. Bar 2: As bar 1. Bar 3. Bar 4: As bar 1. Bars 5 to 8: As bars 1 to 4. Bar 9: As bar 3."},
		{"five bars in turn", strings.Repeat("Am=x02210 | G=320003 | F=133211 | G=320003 | Em=022000 | ", 3) + "Am=x02210",
			"Bar 1. Bar 2. Bar 3. Bar 4: As bar 2. Bar 5. Bars 6 to 15: As bars 1 to 5, 2 times. Bar 16: As bar 1."},
		{"silence", "N.C. | N.C. | Am=x02210", "Bar 1. Bar 2: As bar 1. Bar 3."},
		{"one shape apart", "Am=x02210 | Am=577555", "Bar 1. Bar 2."},
	} {
		if got := outline(t, arranged(t, song{chords: c.chords, figures: "root 6: 6 3 2 1"})); got != c.want {
			t.Errorf("%s: %s", c.why, cmp.Diff(c.want, got))
		}
	}
}

// TestABarRefersOnlyIfNothingDiffers changes one thing at a time in the second
// of two bars.
func TestABarRefersOnlyIfNothingDiffers(t *testing.T) {
	const told, refers = "Bar 1. Bar 2.", "Bar 1. Bar 2: As bar 1."
	other, err := voicing.ParseChord("C")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		why    string
		change func(second *picking.Bar)
		want   string
	}{
		{"nothing", func(*picking.Bar) {}, refers},
		{"a reason", func(b *picking.Bar) { b.Picks[1].Why = picking.Repeat }, refers},
		{"a sweep", func(b *picking.Bar) { b.Picks[0].Crossing = picking.SweepCrossing }, refers},
		{"an inside crossing", func(b *picking.Bar) { b.Picks[0].Crossing = picking.InsideCrossing }, told},
		{"a stroke of one's own", func(b *picking.Bar) { b.Picks[1].Why = picking.OwnStroke }, told},
		{"a stroke", func(b *picking.Bar) { b.Picks[1].Stroke = picking.UpStroke }, told},
		{"a fret", func(b *picking.Bar) { b.Picks[1].Fret = 3 }, told},
		{"a string", func(b *picking.Bar) { b.Picks[1].String = 6 }, told},
		{"a time", func(b *picking.Bar) { b.Picks[1].At += 40 }, told},
		{"a written length", func(b *picking.Bar) { b.Picks[1].Length = 40 }, told},
		{"a pick less", func(b *picking.Bar) { b.Picks = b.Picks[:3] }, told},
		{"a silence", func(b *picking.Bar) {
			for i := range b.Picks {
				b.Picks[i].Rings = 40
			}
		}, told},
		{"a chord's name", func(b *picking.Bar) { b.Chords[0].Chord = other }, told},
		{"a chord's length", func(b *picking.Bar) { b.Chords[0].Length -= 40 }, told},
		{"a figure", func(b *picking.Bar) { b.Chords[0].Figure = 2 }, told},
	} {
		p := arranged(t, song{chords: "|: Am=x02210 :|", figures: "5 3 2 1"})
		c.change(&p.Bars[1])
		if got := outline(t, p); got != c.want {
			t.Errorf("%s differs: %q, want %q", c.why, got, c.want)
		}
		repeat := strings.Contains(encoded(t, p, words.Options{}), "Bar 2: a repeat of bar 1, with changes in bar 2.\n")
		if repeat != (c.want == told) {
			t.Errorf("%s differs: changes said: %v", c.why, repeat)
		}
	}
}
