package picking

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

func permutation(seed int64) []int { return random(seed).Perm(7) }

// strikesOn returns strikes on the given strings, every second off the beat.
func strikesOn(strings []fretboard.StringNumber) []Strike {
	strikes := make([]Strike, len(strings))
	for i, s := range strings {
		strikes[i] = Strike{String: s, Step: i, Offbeat: i%2 == 1}
	}
	return strikes
}

func letters(strokes []Stroke) string {
	var b strings.Builder
	for _, s := range strokes {
		b.WriteString(strings.ToUpper(s.letter()))
	}
	return b.String()
}

// strainOf adds up what a whole choice costs, travel measured anew from where
// each stroke begins and ends.
func strainOf(strikes []Strike, strokes []Stroke, h fretboard.Hand, loop bool) (sum strain) {
	position := func(s fretboard.StringNumber, k Stroke) (begin, end float64) {
		begin, end = float64(s)+0.5, float64(s)-0.5 // down, toward string 1
		if (k == UpStroke) != (h == fretboard.LeftTurned) {
			begin, end = end, begin
		}
		return begin, end
	}
	for i, k := range strokes {
		if (k == UpStroke) != strikes[i].Offbeat {
			sum.offbeats++
		}
		if i == len(strokes)-1 && !loop {
			continue
		}
		j := (i + 1) % len(strokes)
		s, t := strikes[i].String, strikes[j].String
		_, end := position(s, k)
		begin, _ := position(t, strokes[j])
		sum.travel += int64(max(end-begin, begin-end))
		downward := (t < s) != (h == fretboard.LeftTurned)
		if s == t && k == strokes[j] {
			sum.same++
		}
		if s != t && (k == DownStroke) != downward {
			sum.away++
		}
	}
	return sum
}

// exhaust returns the least strain of all choices that keep the own strokes.
func exhaustStrokes(strikes []Strike, h fretboard.Hand, loop bool) strain {
	best, found := strain{}, false
	strokes := make([]Stroke, len(strikes))
	for choice := range 1 << len(strikes) {
		allowed := true
		for i := range strokes {
			strokes[i] = both[choice>>i&1]
			allowed = allowed && (strikes[i].Own == Free || strikes[i].Own == strokes[i])
		}
		if s := strainOf(strikes, strokes, h, loop); allowed && (!found || s.less(best)) {
			best, found = s, true
		}
	}
	return best
}

func randomStrikes(r *rand.Rand, n, strings int, own float64) []Strike {
	strikes := make([]Strike, n)
	for i := range strikes {
		strikes[i] = Strike{String: fretboard.StringNumber(1 + r.IntN(strings)), Step: i, Offbeat: r.IntN(2) == 1}
		if r.Float64() < own {
			strikes[i].Own = both[r.IntN(2)]
		}
	}
	return strikes
}

func TestLeastTravelEqualsExhaustiveSearch(t *testing.T) {
	r := random(2)
	for trial := range 400 {
		n := 1 + r.IntN(12)
		if trial < 8 {
			n = 14
		}
		strikes := randomStrikes(r, n, 1+r.IntN(6), []float64{0, 0.3}[trial%2])
		hand, loop := fretboard.Hand(r.IntN(3)), trial%3 > 0
		got := strainOf(strikes, ChooseStrokes(strikes, TowardNext, hand, loop), hand, loop)
		if best := exhaustStrokes(strikes, hand, loop); got != best {
			t.Fatalf("%v, %s, loop %v: strain %+v, the least is %+v", strikes, hand, loop, got, best)
		}
	}
}

// Loops under the travel model. The columns "toward the next string" and
// "economy" are derived by exhaustive search and by hand; that 3 2 1 gives
// D D U, the flat-picker's roll, is common practice.
func TestKnownLoops(t *testing.T) {
	for _, test := range []struct {
		loop            string
		least           int64
		toward, economy string
		alternate       int64
	}{
		{"6 3 2 1 2 3", 6, "DDDUUU", "UDDDUU", 10},
		{"5 3 2 1 2 3", 4, "DDDUUU", "UDDDUU", 8},
		{"4 3 2 1 2 3", 2, "DDDUUU", "UDDDUU", 6},
		{"6 4 3 2 1 2 3 4", 4, "DDDDUUUU", "UDDDDUUU", 10},
		{"6 3 2 3 1 3 2 3", 12, "DDUDUDUU", "UDDUDUDU", 14},
		{"3 2 1", 3, "DDU", "UDD", 5},
		{"6 2 1 3", 8, "DDUU", "UDDU", 10},
		{"6 6 3 2", 6, "UDDU", "UDDD", 8},
		{"5 5 5 3 2 1", 6, "DUDDDU", "UDUDDD", 8},
		{"6 3 2 1 2 3 5 3 2 1 2 3 4 3 2 1 2 3 6 3 2 1 2 3", 18,
			strings.Repeat("DDDUUU", 4), strings.Repeat("UDDDUU", 4), 34},
	} {
		strikes := strikesOn(MustParseFigure(test.loop).events())
		choose := func(tradition Tradition) ([]Stroke, int64) {
			strokes := ChooseStrokes(strikes, tradition, fretboard.RightHanded, true)
			return strokes, strainOf(strikes, strokes, fretboard.RightHanded, true).travel
		}
		toward, least := choose(TowardNext)
		economy, _ := choose(Economy)
		_, alternate := choose(Alternate)
		if letters(toward) != test.toward || least != test.least || letters(economy) != test.economy || alternate != test.alternate {
			t.Errorf("%s: toward next %s in %d, economy %s, alternate in %d; want %s in %d, %s, %d", test.loop,
				letters(toward), least, letters(economy), alternate, test.toward, test.least, test.economy, test.alternate)
		}
	}
}

// Economy-picked scales, three notes a string: D U D D U D rising, U D U U D U
// falling, as published for the style; common practice. Rising goes from thick
// strings to thin ones, so each string is entered by a down-stroke.
func TestEconomyScales(t *testing.T) {
	rising := strikesOn([]fretboard.StringNumber{5, 5, 5, 4, 4, 4})
	if got := letters(ChooseStrokes(rising, Economy, fretboard.RightHanded, false)); got != "DUDDUD" {
		t.Errorf("rising: %s, want DUDDUD", got)
	}
	falling := strikesOn([]fretboard.StringNumber{4, 4, 4, 5, 5, 5})
	falling[0].Own = UpStroke // a falling scale begins with an up-stroke
	if got := letters(ChooseStrokes(falling, Economy, fretboard.RightHanded, false)); got != "UDUUDU" {
		t.Errorf("falling: %s, want UDUUDU", got)
	}
}

func TestOtherTraditions(t *testing.T) {
	for _, test := range []struct {
		tradition Tradition
		strings   string
		loop      bool
		want      string
	}{
		{RestStroke, "5 3 2 1 2 3", true, "DDDDDD"}, // Bickford's mandolin method, p. 44: the first note on a new string is down
		{RestStroke, "5 5 3 3 3 2", true, "DUDUDD"},
		{RestStroke, "5 3 5 5", true, "DDDU"}, // over the join: the run of 5s begins at the third note
		{Jig, "5 3 2 1 2 3", true, "DUDDUD"},
		{Alternate, "5 3 2 1 2", false, "DUDUD"},
		{Economy, "2 2 2", true, "DUD"},
	} {
		strikes := strikesOn(MustParseFigure(test.strings).events())
		got := ChooseStrokes(strikes, test.tradition, fretboard.RightHanded, test.loop)
		if letters(got) != test.want {
			t.Errorf("%s on %s: %s, want %s", test.tradition, test.strings, letters(got), test.want)
		}
	}
}

// Every loop of eight on six strings without immediate repeats, 390,630 of
// them: toward the next string never crosses inside, economy makes every turn
// inside. Derived; the names of the crossings are common practice.
func TestCrossingsOfAllLoopsOfEight(t *testing.T) {
	if testing.Short() {
		t.Skip("390,630 loops")
	}
	loops := 0
	strikes := make([]Strike, 8)
	var walk func(i int)
	walk = func(i int) {
		if i < 8 {
			for s := fretboard.StringNumber(1); s <= 6; s++ {
				if i == 0 || s != strikes[i-1].String && (i < 7 || s != strikes[0].String) {
					strikes[i].String = s
					walk(i + 1)
				}
			}
			return
		}
		loops++
		checkCrossings(t, strikes)
	}
	walk(0)
	if loops != 390630 {
		t.Errorf("%d loops, want 390630", loops)
	}
}

func checkCrossings(t *testing.T, strikes []Strike) {
	t.Helper()
	n := len(strikes)
	for _, tradition := range []Tradition{TowardNext, Economy} {
		strokes := ChooseStrokes(strikes, tradition, fretboard.RightHanded, true)
		for i := range strikes {
			j, k := (i+1)%n, (i+2)%n
			turn := (strikes[j].String > strikes[i].String) != (strikes[k].String > strikes[j].String)
			// Toward the next string, a turn shows in how the pick comes onto the
			// turning string; in economy, in how it leaves it.
			onto, _ := Cross(fretboard.RightHanded, strikes[i].String, strokes[i], strikes[j].String, strokes[j])
			off, _ := Cross(fretboard.RightHanded, strikes[j].String, strokes[j], strikes[k].String, strokes[k])
			want, got := SweepCrossing, onto
			switch {
			case tradition == TowardNext && turn:
				want = OutsideCrossing
			case tradition == Economy:
				got = off
				if turn {
					want = InsideCrossing
				}
			}
			if got != want {
				t.Fatalf("%s on %v: crossing at %d is %s, want %s", tradition, strikes, j, got, want)
			}
		}
	}
}

// The names of the crossings: to a thinner string D then U is outside, U then
// D inside; to a thicker one U then D outside, D then U inside. Common practice.
func TestCrossings(t *testing.T) {
	for _, test := range []struct {
		from, to fretboard.StringNumber
		strokes  string
		want     Crossing
		travel   int
	}{
		{3, 2, "DU", OutsideCrossing, 1}, {3, 2, "UD", InsideCrossing, 1},
		{2, 3, "UD", OutsideCrossing, 1}, {2, 3, "DU", InsideCrossing, 1},
		{3, 2, "DD", SweepCrossing, 0}, {2, 3, "UU", SweepCrossing, 0},
		{3, 2, "UU", ReturnCrossing, 2}, {2, 3, "DD", ReturnCrossing, 2},
		{6, 1, "DD", SweepCrossing, 4}, {1, 6, "UD", OutsideCrossing, 5},
		{4, 4, "DU", SameString, 0}, {4, 4, "DD", SameString, 1},
	} {
		stroke := func(i int) Stroke {
			if test.strokes[i] == 'U' {
				return UpStroke
			}
			return DownStroke
		}
		got, travel := Cross(fretboard.RightHanded, test.from, stroke(0), test.to, stroke(1))
		if got != test.want || travel != test.travel {
			t.Errorf("%d to %d %s: %s over %d, want %s over %d", test.from, test.to, test.strokes, got, travel, test.want, test.travel)
		}
	}
}

func TestStrokeProperties(t *testing.T) {
	properties := gopter.NewProperties(nil)
	free := gen.Int64().Map(func(seed int64) []Strike {
		r := random(seed)
		return randomStrikes(r, 1+r.IntN(60), 1+r.IntN(12), 0)
	})
	owned := gen.Int64().Map(func(seed int64) []Strike {
		r := random(seed)
		return randomStrikes(r, 1+r.IntN(60), 1+r.IntN(6), 0.2)
	})
	loops := gen.Bool()

	properties.Property("without own strokes, each change goes toward the next string and never inside", prop.ForAll(
		func(strikes []Strike, loop bool) bool {
			strokes := ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, loop)
			for i, j := range joins(len(strikes), loop) {
				crossing, _ := Cross(fretboard.RightHanded, strikes[i].String, strokes[i], strikes[j].String, strokes[j])
				lead := toward(fretboard.RightHanded, strikes[i].String, strikes[j].String)
				if lead != Free && lead != strokes[i] || crossing == InsideCrossing || crossing == ReturnCrossing {
					return false
				}
			}
			return true
		}, free, loops))
	properties.Property("a repeated string alternates, backward from the last", prop.ForAll(
		func(strikes []Strike) bool {
			strokes := ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, true)
			if new(cycle).of(strikes).oneString() {
				return true // there is no last
			}
			for i, j := range joins(len(strikes), true) {
				if strikes[i].String == strikes[j].String && strokes[i] == strokes[j] {
					return false
				}
			}
			return true
		}, free))
	properties.Property("the closed form gives a loop's travel", prop.ForAll(
		func(strikes []Strike) bool {
			if new(cycle).of(strikes).oneString() {
				return true
			}
			strokes := ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, true)
			return strainOf(strikes, strokes, fretboard.RightHanded, true).travel == new(cycle).of(strikes).travel()
		}, free))
	properties.Property("own strokes are kept, whatever the tradition", prop.ForAll(
		func(strikes []Strike, loop bool) bool {
			for tradition := TowardNext; tradition <= Jig; tradition++ {
				for i, s := range ChooseStrokes(strikes, tradition, fretboard.LeftTurned, loop) {
					if strikes[i].Own != Free && strikes[i].Own != s {
						return false
					}
				}
			}
			return true
		}, owned, loops))
	properties.Property("toward the next string never travels further than another tradition", prop.ForAll(
		func(strikes []Strike, loop bool) bool {
			travel := func(t Tradition) int64 {
				return strainOf(strikes, ChooseStrokes(strikes, t, fretboard.RightHanded, loop), fretboard.RightHanded, loop).travel
			}
			least := travel(TowardNext)
			return least <= travel(Economy) && least <= travel(Alternate) && least <= travel(RestStroke) && least <= travel(Jig)
		}, owned, loops))
	properties.Property("turning the strings over swaps the strokes that the strings decide", prop.ForAll(
		func(strikes []Strike, loop bool) bool {
			for i := range strikes {
				strikes[i].Offbeat = false
			}
			turned := append([]Strike(nil), strikes...)
			for i := range turned {
				turned[i].Offbeat = true // the grid is swapped with them
			}
			a := ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, loop)
			b := ChooseStrokes(turned, TowardNext, fretboard.LeftTurned, loop)
			for i := range a {
				if a[i] != b[i].other() && !new(cycle).of(strikes).oneString() {
					return false
				}
			}
			return true
		}, free, loops))
	properties.Property("rotating a loop rotates its strokes", prop.ForAll(
		func(strikes []Strike, by int) bool {
			by %= len(strikes)
			rotated := append(append([]Strike(nil), strikes[by:]...), strikes[:by]...)
			if new(cycle).of(strikes).oneString() {
				return true
			}
			a := ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, true)
			b := ChooseStrokes(rotated, TowardNext, fretboard.RightHanded, true)
			return fmt.Sprint(b) == fmt.Sprint(append(append([]Stroke(nil), a[by:]...), a[:by]...))
		}, free, gen.IntRange(0, 1000)))
	properties.TestingRun(t)
}

// joins yields each strike with the one after it.
func joins(n int, loop bool) func(yield func(i, j int) bool) {
	return func(yield func(i, j int) bool) {
		for i := range n {
			if i == n-1 && !loop || !yield(i, (i+1)%n) {
				return
			}
		}
	}
}

// A cycle is a loop of strikes as runs of one string.
type cycle struct{ strings, lengths []int }

func (c *cycle) of(strikes []Strike) *cycle {
	n, first := len(strikes), chainStart(strikes, true)
	for k := range n {
		s := int(strikes[(first+k)%n].String)
		if last := len(c.strings) - 1; last >= 0 && c.strings[last] == s {
			c.lengths[last]++
			continue
		}
		c.strings, c.lengths = append(c.strings, s), append(c.lengths, 1)
	}
	return c
}

func (c *cycle) oneString() bool { return len(c.strings) == 1 }

// travel is the closed form: the sum of (step - 1) over string changes, and one
// for each run of the wrong parity: odd is needed where the pick goes on, even
// where it turns.
func (c *cycle) travel() (sum int64) {
	n := len(c.strings)
	for i, s := range c.strings {
		before, next := c.strings[(i+n-1)%n], c.strings[(i+1)%n]
		sum += int64(max(next-s, s-next) - 1)
		turns := (s > before) != (next > s)
		if turns != (c.lengths[i]%2 == 0) {
			sum++
		}
	}
	return sum
}

func BenchmarkChooseStrokes(b *testing.B) {
	strikes := randomStrikes(random(3), 128, 6, 0.05)
	for b.Loop() {
		ChooseStrokes(strikes, TowardNext, fretboard.RightHanded, true)
	}
}
