package text_test

import (
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/text"
	"weft.example/voicing"
)

// TestARepeatStandsOnceOnlyIfNothingDiffers changes one thing at a time in the
// second playing of a bar.
func TestARepeatStandsOnceOnlyIfNothingDiffers(t *testing.T) {
	const twice, strokes, changes = "Bar 1 is played twice, the second time as bar 2.",
		"Bar 2 repeats bar 1, with other strokes.", "Bar 2 repeats bar 1, with changes."
	other, err := voicing.ParseChord("C")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		why    string
		change func(second *picking.Bar)
		want   string
	}{
		{"nothing", func(*picking.Bar) {}, twice},
		{"a reason", func(b *picking.Bar) { b.Picks[1].Why = picking.OwnStroke }, twice},
		{"a stroke", func(b *picking.Bar) { b.Picks[1].Stroke = picking.UpStroke }, strokes},
		{"a stroke and a fret", func(b *picking.Bar) { b.Picks[1].Stroke, b.Picks[2].Fret = picking.UpStroke, 3 }, changes},
		{"a fret", func(b *picking.Bar) { b.Picks[1].Fret = 3 }, changes},
		{"a string", func(b *picking.Bar) { b.Picks[1].String = 6 }, changes},
		{"a time", func(b *picking.Bar) { b.Picks[1].At += 40 }, changes},
		{"a written length", func(b *picking.Bar) { b.Picks[1].Length = 40 }, changes},
		{"a pick less", func(b *picking.Bar) { b.Picks = b.Picks[:3] }, changes},
		{"a silence", func(b *picking.Bar) {
			for i := range b.Picks {
				b.Picks[i].Rings = 40
			}
		}, changes},
		{"a chord's name", func(b *picking.Bar) { b.Chords[0].Chord = other }, changes},
		{"a chord's length", func(b *picking.Bar) { b.Chords[0].Length -= 40 }, changes},
		{"a written bar that is another", func(b *picking.Bar) { b.Written = 2 }, ""},
	} {
		p := arranged(t, song{chords: "|: Am=x02210 :|", figures: "5 3 2 1"})
		c.change(&p.Bars[1])
		heading := ""
		for _, line := range strings.Split(encoded(t, p, text.Options{}), "\n") {
			if strings.HasPrefix(line, "Bar") {
				heading = line
			}
		}
		if heading != c.want {
			t.Errorf("%s differs: %q, want %q", c.why, heading, c.want)
		}
	}
}
