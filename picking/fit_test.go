package picking

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

// worth is the objective, term by term, as the package comment of Fit states
// it: written out here once more, plainly, to judge the minimum cut by.
type worth struct{ neighbours, pairs, distance int }

func (p problem) worth(strings []fretboard.StringNumber) (w worth) {
	n := len(strings)
	miss := func(i, j int) int {
		between := p.sounding.Rank(strings[i]) - p.sounding.Rank(strings[j])
		switch {
		case p.events[i] > p.events[j]:
			return max(0, 1-between)
		case p.events[i] < p.events[j]:
			return max(0, 1+between)
		}
		return max(between, -between)
	}
	for i := range n {
		if n > 1 {
			w.neighbours += miss(i, (i+1)%n)
		}
		for j := i + 1; j < n; j++ {
			w.pairs += miss(i, j)
		}
		if p.events[i] != p.root {
			d := strings[i] - p.events[i]
			w.distance += int(max(d, -d))
		}
	}
	return w
}

func (w worth) less(v worth) bool {
	if w.neighbours != v.neighbours {
		return w.neighbours < v.neighbours
	}
	if w.pairs != v.pairs {
		return w.pairs < v.pairs
	}
	return w.distance < v.distance
}

// exhaust tries every assignment and returns the best, with the pointwise
// thinnest of all that are as good.
func (p problem) exhaust() (worth, []fretboard.StringNumber) {
	n, k := len(p.events), p.sounding.Len()
	best, found := worth{}, []fretboard.StringNumber(nil)
	try := make([]fretboard.StringNumber, n)
	var walk func(i int)
	walk = func(i int) {
		if i == n {
			switch w := p.worth(try); {
			case found == nil || w.less(best):
				best, found = w, append(found[:0], try...)
			case w == best:
				for e, s := range try {
					found[e] = min(found[e], s)
				}
			}
			return
		}
		if p.events[i] == p.root {
			try[i] = p.start
			walk(i + 1)
			return
		}
		for r := range k {
			try[i] = p.sounding.Nth(r)
			walk(i + 1)
		}
	}
	walk(0)
	return best, found
}

func checkAgainstExhaustion(t *testing.T, c *cutter, p problem) {
	t.Helper()
	best, want := p.exhaust()
	got := p.contour(c)
	if w := p.worth(got); w != best {
		t.Fatalf("%+v: fit %v is worth %v; the best is worth %v: %v", p, got, w, best, want)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Fatalf("%+v: not the pointwise thinnest (-want +got):\n%s", p, diff)
	}
	short, whole := p.levels()
	if exact := best.neighbours == 0 && best.pairs == 0; whole != exact || whole && !cmp.Equal(short, want) {
		t.Fatalf("%+v: by levels %v, %v; want %v, %v", p, short, whole, want, exact)
	}
}

// Every figure up to five events over four strings, with every root string it
// uses, on every set of sounding strings and every start string in it.
func TestContourFitEqualsExhaustiveSearchOnAllSmallFigures(t *testing.T) {
	const strings = 4
	longest := 5
	if testing.Short() {
		longest = 4
	}
	c := new(cutter)
	for n := 1; n <= longest; n++ {
		eachFigure(n, strings, func(events []fretboard.StringNumber) {
			for set := fretboard.StringSet(1); set < 1<<strings; set++ {
				for start := range set.Thinnest() {
					checkAgainstExhaustion(t, c, problem{events, thickest(events), set, start})
				}
			}
		})
	}
}

func eachFigure(n, strings int, visit func([]fretboard.StringNumber)) {
	events := make([]fretboard.StringNumber, n)
	var walk func(i int)
	walk = func(i int) {
		if i == n {
			visit(events)
			return
		}
		for s := 1; s <= strings; s++ {
			events[i] = fretboard.StringNumber(s)
			walk(i + 1)
		}
	}
	walk(0)
}

func thickest(events []fretboard.StringNumber) (root fretboard.StringNumber) {
	for _, s := range events {
		root = max(root, s)
	}
	return root
}

func TestContourFitEqualsExhaustiveSearchOnRandomFigures(t *testing.T) {
	r := random(1)
	c := new(cutter)
	for range 300 {
		p := randomProblem(r, 1+r.IntN(9), 6)
		checkAgainstExhaustion(t, c, p)
	}
}

func randomProblem(r *rand.Rand, events, strings int) problem {
	p := problem{sounding: fretboard.StringSet(1 + r.IntN(1<<strings-1))}
	for range events {
		p.events = append(p.events, fretboard.StringNumber(1+r.IntN(strings)))
	}
	p.root = p.events[r.IntN(events)]
	p.start = p.sounding.Nth(r.IntN(p.sounding.Len()))
	return p
}

// set reads a set of strings from its numbers.
func set(numbers ...fretboard.StringNumber) (s fretboard.StringSet) {
	for _, n := range numbers {
		s = s.With(n)
	}
	return s
}

// Worked by hand and by exhaustive search.
func TestWorkedFits(t *testing.T) {
	for _, test := range []struct {
		figure   string
		sounding fretboard.StringSet
		start    fretboard.StringNumber
		want     string
		losses   []Loss
	}{
		{"5 3 2 1 2 3", fretboard.StringsUpTo(6), 6, "6 3 2 1 2 3", nil},
		{"5 3 2 1 2 3", fretboard.StringsUpTo(4), 4, "4 3 2 1 2 3", nil},
		{"5 4 3 2 3 4 3 4", fretboard.StringsUpTo(4), 4, "4 3 2 1 2 3 2 3", nil},
		{"5 3 4 2 3 1 2 3", set(2, 3, 4, 6), 6, "6 4 6 3 4 2 3 4", []Loss{}},
		{"6 4 3 2 1 2 3 4", fretboard.StringsUpTo(4), 4, "4 4 3 2 1 2 3 4", []Loss{{1, 2, Up, Same}, {8, 1, Down, Same}}},
		{"6 4 3 2 1 2 3 4", fretboard.StringsUpTo(3), 3, "3 3 2 1 1 1 2 3", []Loss{{1, 2, Up, Same},
			{4, 5, Up, Same}, {5, 6, Down, Same}, {8, 1, Down, Same}}},
	} {
		f := MustParseFigure(test.figure)
		fit := problem{f.events(), f.Root(), test.sounding, test.start}.solve(Contour, new(cutter))
		if got := join2(fit.Strings); got != test.want {
			t.Errorf("%s on %b from %d = %s, want %s", test.figure, test.sounding, test.start, got, test.want)
		}
		if test.losses == nil && fit.Losses != nil || len(test.losses) > 0 && !cmp.Equal(fit.Losses, test.losses) {
			t.Errorf("%s on %b: losses %v, want %v", test.figure, test.sounding, fit.Losses, test.losses)
		}
	}
}

func join2(strings []fretboard.StringNumber) string {
	text := fmt.Sprint(strings)
	return text[1 : len(text)-1]
}

// How many fits keep the whole contour, by enumeration: with m sounding
// strings, k levels in the figure and the start string thickest there are
// C(m-1, k-1). Derived.
func TestNumberOfExactFits(t *testing.T) {
	for _, test := range []struct {
		figure string
		want   map[fretboard.StringNumber]int // by the thickest sounding string
	}{
		{"6 3 2 1 2 3", map[fretboard.StringNumber]int{6: 10, 5: 4, 4: 1}},
		{"6 4 3 2 1 2 3 4", map[fretboard.StringNumber]int{6: 5, 5: 1, 4: 0}},
	} {
		events := MustParseFigure(test.figure).events()
		for start, want := range test.want {
			p := problem{events, 6, fretboard.StringsUpTo(start), start}
			if got := p.countExact(); got != want {
				t.Errorf("%s from string %d: %d exact fits, want %d", test.figure, start, got, want)
			}
			fit := p.contour(new(cutter))
			if w := p.worth(fit); (w.neighbours == 0 && w.pairs == 0) != (want > 0) {
				t.Errorf("%s from string %d: fit %v is worth %v, but %d exact fits exist", test.figure, start, fit, w, want)
			}
		}
	}
}

// countExact counts the assignments that keep every comparison.
func (p problem) countExact() (count int) {
	n := len(p.events)
	try := make([]fretboard.StringNumber, n)
	var walk func(i int)
	walk = func(i int) {
		if i == n {
			if w := p.worth(try); w.neighbours == 0 && w.pairs == 0 {
				count++
			}
			return
		}
		for s := range p.sounding.Thinnest() {
			if p.events[i] != p.root || s == p.start {
				try[i] = s
				walk(i + 1)
			}
		}
	}
	walk(0)
	return count
}

func TestFitProperties(t *testing.T) {
	properties := gopter.NewProperties(nil)
	problems := gen.Int64().Map(func(seed int64) problem {
		r := random(seed)
		return randomProblem(r, 1+r.IntN(40), 1+r.IntN(fretboard.MaxStrings))
	})
	c := new(cutter)

	properties.Property("a fit uses only sounding strings and starts where it should", prop.ForAll(
		func(p problem) bool {
			for m := Contour; m <= Shift; m++ {
				for i, s := range p.mould(m, c) {
					if !p.sounding.Has(s) || p.events[i] == p.root && s != p.start {
						return false
					}
				}
			}
			return true
		}, problems))
	properties.Property("a figure whose levels fit loses nothing", prop.ForAll(
		func(p problem) bool {
			levels := fretboard.StringSet(0)
			for _, s := range p.events {
				levels = levels.With(s)
			}
			below, above := levels.Rank(p.root), levels.Len()-1-levels.Rank(p.root)
			rank := p.sounding.Rank(p.start)
			room := rank >= below && p.sounding.Len()-1-rank >= above
			fit := p.solve(Contour, c)
			return room == (fit.CSIM == 1) && (!room || fit.Losses == nil)
		}, problems))
	properties.Property("a figure on its own strings stays there", prop.ForAll(
		func(p problem) bool {
			p.sounding, p.start = fretboard.StringsUpTo(12), p.root
			for m := Contour; m <= Shift; m++ {
				if !cmp.Equal(p.mould(m, c), p.events) {
					return false
				}
			}
			return true
		}, problems))
	properties.Property("where nothing is lost, the cut and the levels agree", prop.ForAll(
		func(p problem) bool {
			short, whole := p.levels()
			return !whole || cmp.Equal(short, p.contour(c))
		}, problems))
	properties.Property("a cutter remembers nothing of the problem before", prop.ForAll(
		func(p problem) bool { return cmp.Equal(p.contour(c), p.contour(new(cutter))) }, problems))
	properties.TestingRun(t)
}

func TestBassAndShiftMouldings(t *testing.T) {
	for _, test := range []struct {
		moulding Moulding
		figure   string
		sounding fretboard.StringSet
		start    fretboard.StringNumber
		want     string
	}{
		{Bass, "5 3 2 1 2 3", fretboard.StringsUpTo(6), 6, "6 3 2 1 2 3"},
		{Bass, "5 4 3 2 3 4 3 4", fretboard.StringsUpTo(4), 4, "4 4 3 2 3 4 3 4"},
		{Bass, "5 3 2 1", set(1, 3, 4, 6), 6, "6 3 1 1"}, // string 2 is muted: 1 and 3 are as near
		{Shift, "5 3 2 1 2 3", fretboard.StringsUpTo(6), 6, "6 4 3 2 3 4"},
		{Shift, "5 3 2 1 2 3", fretboard.StringsUpTo(4), 4, "4 2 1 1 1 2"},
		{Shift, "5 3 2 1", fretboard.StringsUpTo(12), 12, "12 10 9 8"},
	} {
		f := MustParseFigure(test.figure)
		got := problem{f.events(), f.Root(), test.sounding, test.start}.solve(test.moulding, nil)
		if text := join2(got.Strings); text != test.want {
			t.Errorf("%s of %s on %b from %d = %s, want %s", test.moulding, test.figure, test.sounding, test.start, text, test.want)
		}
	}
}

func BenchmarkFit(b *testing.B) {
	for _, n := range []int{8, 64, 256} {
		for _, kind := range []string{"lossless", "lossy"} {
			r := random(int64(n))
			p := problem{sounding: fretboard.StringsUpTo(6), start: 6, root: 6}
			if kind == "lossy" {
				p.sounding, p.start = fretboard.StringsUpTo(4), 4
			}
			p.events = append(p.events, 6, 5, 4, 3, 2, 1)
			for len(p.events) < n {
				p.events = append(p.events, fretboard.StringNumber(1+r.IntN(6)))
			}
			c := new(cutter)
			b.Run(fmt.Sprintf("%s/events=%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					p.mould(Contour, c)
				}
			})
		}
	}
}
