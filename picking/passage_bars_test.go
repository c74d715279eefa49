package picking

import (
	"slices"
	"testing"
)

func arrangedFor(t *testing.T, chords, figures string, s Setting) Passage {
	t.Helper()
	f, err := ParseFigures(figures)
	if err != nil {
		t.Fatal(err)
	}
	part, err := Arrange(MustParseProgression(chords), f, s)
	if err != nil {
		t.Fatal(err)
	}
	return part
}

func TestSecondPlaying(t *testing.T) {
	for chords, want := range map[string][]int{
		"Am | G":                   {0, 0},
		"|: Am | G :| E":           {0, 0, 2, 0, 0},
		"E |: Am :| G |: F | C :|": {0, 0, 1, 0, 0, 0, 2, 0},
		"Am | % | %":               {0, 0, 0},
	} {
		part := arrangedFor(t, chords, "5 3 2 1", Setting{})
		var got []int
		for i := range part.Bars {
			got = append(got, part.SecondPlaying(i))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: second playings %v, want %v", chords, got, want)
		}
	}
}

// TestSilences: strings ring on over the end of a loop, and so into its start,
// but not over a rest.
func TestSilences(t *testing.T) {
	const quarter = TicksPerQuarter
	for _, c := range []struct {
		why, chords, figure string
		once                bool
		want                []Silence
	}{
		{"none", "Am", "5 3 2 1", false, nil},
		{"a rest", "Am", "5 . 2 1", false, []Silence{{quarter, 2 * quarter}}},
		{"no chord", "Am | N.C.", "5 3 2 1", false, []Silence{{4 * quarter, 8 * quarter}}},
		{"a rest at the start, over which the end does not ring", "Am", ". 3 2 1", false, []Silence{{0, quarter}}},
		{"no chord first", "N.C. | Am", "5 3 2 1", true, []Silence{{0, 4 * quarter}}},
	} {
		got := arrangedFor(t, c.chords, c.figure, Setting{Once: c.once}).Silences()
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.why, got, c.want)
		}
	}
}

func TestManyFigures(t *testing.T) {
	for chords, want := range map[string]bool{"Am | G": false, "Am@2 | G@2": false, "Am | N.C. | G@2": true} {
		if got := arrangedFor(t, chords, "5 3 2 1; 5 2 3 1", Setting{}).ManyFigures(); got != want {
			t.Errorf("%s: %v, want %v", chords, got, want)
		}
	}
}
