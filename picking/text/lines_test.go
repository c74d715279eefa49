package text_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking/text"
)

// TestLinesBreakWherePhrasesDo wants lines of 1, 2 or 4 bars that begin where
// a phrase of as many does, unless all that is left goes in one line.
func TestLinesBreakWherePhrasesDo(t *testing.T) {
	const figures = "1/8: 5 3 2 1 2 3 2 1; 1/4: 5 3 2 1; 1/16: 5 3 2 1"
	eighths, quarters, sixteenths := "Am=x02210@1", "Am=x02210@2", "Am=x02210@3"
	times := func(n int, chord string) []string { return slices.Repeat([]string{chord}, n) }
	for _, c := range []struct {
		why    string
		chords []string
		width  int
		want   [][]int
	}{
		{"three that fit", times(3, quarters), 0, [][]int{{1, 2, 3}}},
		{"five that fit", times(5, quarters), 0, [][]int{{1, 2, 3, 4, 5}}},
		{"two fit", times(4, eighths), 0, [][]int{{1, 2}, {3, 4}}},
		{"three would fit", times(4, eighths), 90, [][]int{{1, 2}, {3, 4}}},
		{"five would fit", times(9, quarters), 0, [][]int{{1, 2, 3, 4}, {5, 6, 7, 8, 9}}},
		{"seven would fit, then four are left", times(8, quarters), 110, [][]int{{1, 2, 3, 4}, {5, 6, 7, 8}}},
		{"two, then not four out of step", append(times(2, eighths), times(8, quarters)...), 0,
			[][]int{{1, 2}, {3, 4}, {5, 6, 7, 8}, {9, 10}}},
		{"one, then one more to be in step", append(times(1, sixteenths), times(6, quarters)...), 66,
			[][]int{{1}, {2}, {3, 4}, {5, 6, 7}}},
		{"a split bar between", []string{quarters, sixteenths, quarters, quarters}, 40, [][]int{{1}, {2}, {2}, {3, 4}}},
	} {
		p := arranged(t, song{chords: strings.Join(c.chords, " | "), figures: figures})
		s, err := readSheet(encoded(t, p, text.Options{Width: c.width}))
		if err != nil {
			t.Fatal(err)
		}
		lines := map[int][]int{}
		for _, number := range slices.Sorted(maps.Keys(s.bars)) {
			for _, part := range s.bars[number].parts {
				lines[part.line] = append(lines[part.line], number)
			}
		}
		var got [][]int
		for _, line := range slices.Sorted(maps.Keys(lines)) {
			got = append(got, lines[line])
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.why, diff)
		}
	}
}
