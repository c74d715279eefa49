package picking

import (
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

func TestPublishedContourSimilarities(t *testing.T) {
	for _, test := range []struct {
		measure func(a, b []int) float64
		name    string
		a, b    []int
		want    float64
		source  string
	}{
		{CSIM[int], "CSIM", []int{2, 0, 1, 3}, []int{0, 1, 2, 3}, 2. / 3, "Marvin 1988, p. 83"},
		{CSIM[int], "CSIM", []int{2, 0, 1, 3}, []int{1, 3, 0, 2}, 1. / 2, "Marvin 1988, p. 83"},
		{CSIM[int], "CSIM", []int{2, 0, 1, 3}, []int{0, 2, 3, 1}, 1. / 3, "Marvin 1988, p. 83"},
		{CSIM[int], "CSIM", []int{0, 2, 3, 1}, []int{3, 1, 0, 2}, 0, "Marvin & Laprade 1987, fig. 9"},
		{CSIM[int], "CSIM", []int{1, 0, 4, 3, 2}, []int{3, 0, 4, 2, 1}, 0.8, "Marvin & Laprade 1987, fig. 9"},
		{CSIM[int], "CSIM", []int{0, 1, 2, 3, 4, 5, 6}, []int{2, 6, 5, 4, 1, 0, 3}, 6. / 21, "derived"},
		{CPlusSIM[int], "C+SIM", []int{4, 1, 2, 3, 0}, []int{4, 0, 1, 3, 2}, 0.8, "Quinn 1997, fig. 11"},
		{CSIM[int], "CSIM", []int{0, 1}, []int{0, 0}, 0, "a tie against a step costs all"},
		{CPlusSIM[int], "C+SIM", []int{0, 1}, []int{0, 0}, 0.5, "a tie against a step costs half"},
		{CSIM[int], "CSIM", nil, nil, 1, "nothing differs"},
		{CPlusSIM[int], "C+SIM", []int{3}, []int{1}, 1, "nothing differs"},
	} {
		if got := test.measure(test.a, test.b); math.Abs(got-test.want) > 1e-15 {
			t.Errorf("%s(%v, %v) = %v, want %v (%s)", test.name, test.a, test.b, got, test.want, test.source)
		}
	}
}

// The best CSIM that any fit of a six-level figure reaches on fewer strings.
// Derived by exhaustive search.
func TestBestSimilarityOnFewStrings(t *testing.T) {
	for _, test := range []struct {
		strings string
		want    float64
	}{
		{"4 4 3 2 1 2 3 4", 26. / 28},
		{"3 3 2 1 1 1 2 3", 24. / 28},
	} {
		figure, fit := MustParseFigure("6 4 3 2 1 2 3 4").events(), MustParseFigure(test.strings).events()
		if got := CSIM(figure, fit); got != test.want {
			t.Errorf("CSIM with %s = %v, want %v", test.strings, got, test.want)
		}
	}
}

// Polansky & Bassein, Journal of Music Theory 36 (1992): how many contours of
// n elements exist if ties are allowed: 13, 75, 541 for n = 3, 4, 5.
func TestContoursToldApart(t *testing.T) {
	for n, want := range map[int]int{3: 13, 4: 75, 5: 541} {
		var kinds [][]int
		eachSequence(n, func(c []int) {
			for _, k := range kinds {
				if CSIM(k, c) == 1 {
					return
				}
			}
			kinds = append(kinds, append([]int(nil), c...))
		})
		if len(kinds) != want {
			t.Errorf("%d contours of %d elements, want %d", len(kinds), n, want)
		}
	}
}

// eachSequence visits every sequence of n elements from 0 to n-1.
func eachSequence(n int, visit func([]int)) {
	c := make([]int, n)
	var walk func(i int)
	walk = func(i int) {
		if i == n {
			visit(c)
			return
		}
		for c[i] = 0; c[i] < n; c[i]++ {
			walk(i + 1)
		}
		c[i] = 0
	}
	walk(0)
}

func TestContourProperties(t *testing.T) {
	properties := gopter.NewProperties(nil)
	contours := gen.SliceOfN(7, gen.IntRange(0, 5))
	properties.Property("similarity is symmetric and lies between 0 and 1", prop.ForAll(
		func(a, b []int) bool {
			s, plus := CSIM(a, b), CPlusSIM(a, b)
			return s == CSIM(b, a) && plus == CPlusSIM(b, a) && 0 <= s && s <= plus && plus <= 1
		}, contours, contours))
	properties.Property("a contour is like itself at any height and unlike its inversion", prop.ForAll(
		func(a []int) bool {
			higher, inverted, ties := make([]int, len(a)), make([]int, len(a)), 0
			for i, x := range a {
				higher[i], inverted[i] = 2*x+3, -x
				for _, y := range a[:i] {
					if x == y {
						ties++
					}
				}
			}
			return CSIM(a, higher) == 1 && CPlusSIM(a, higher) == 1 && CSIM(a, inverted) == float64(ties)/21
		}, contours))
	properties.Property("without ties the two measures agree", prop.ForAll(
		func(seed int64) bool {
			a, b := permutation(seed), permutation(seed*31+7)
			return math.Abs(CSIM(a, b)-CPlusSIM(a, b)) < 1e-15
		}, gen.Int64()))
	properties.TestingRun(t)
}
