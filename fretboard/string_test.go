package fretboard_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

// A plainSet does slowly and plainly what StringSet does with bits.
type plainSet map[fretboard.StringNumber]bool

func (set plainSet) thinnest() []fretboard.StringNumber {
	var list []fretboard.StringNumber
	for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
		if set[s] {
			list = append(list, s)
		}
	}
	return list
}

func (set plainSet) rank(s fretboard.StringNumber) int {
	n := 0
	for member := range set {
		if member < s {
			n++
		}
	}
	return n
}

func (set plainSet) nearest(s fretboard.StringNumber) fretboard.StringNumber {
	var best fretboard.StringNumber
	for _, member := range set.thinnest() {
		if best == 0 || distance(member, s) < distance(best, s) {
			best = member
		}
	}
	return best
}

func distance(a, b fretboard.StringNumber) fretboard.StringNumber { return max(a-b, b-a) }

// TestEverySetOfStrings compares all 4096 sets with a plain map.
func TestEverySetOfStrings(t *testing.T) {
	for bits := range 1 << fretboard.MaxStrings {
		plain, set := plainSet{}, fretboard.StringSet(0)
		for s := fretboard.StringNumber(fretboard.MaxStrings); s >= 1; s-- {
			if bits>>(s-1)&1 == 1 {
				plain[s], set = true, set.With(s)
			}
		}
		compareSets(t, plain, set)
	}
}

func compareSets(t *testing.T, plain plainSet, set fretboard.StringSet) {
	t.Helper()
	list := plain.thinnest()
	if got := slices.Collect(set.Thinnest()); !slices.Equal(got, list) {
		t.Fatalf("%v holds %v", list, got)
	}
	if set.Len() != len(list) {
		t.Fatalf("%v: %d strings", list, set.Len())
	}
	for n, s := range list {
		if got := set.Nth(n); got != s {
			t.Fatalf("%v: string %d of it is %d, want %d", list, n, got, s)
		}
	}
	for s := fretboard.StringNumber(1); s <= fretboard.MaxStrings; s++ {
		if set.Has(s) != plain[s] || set.Rank(s) != plain.rank(s) || set.Nearest(s) != plain.nearest(s) {
			t.Fatalf("%v, string %d: has %v, rank %d, nearest %d; want %v, %d, %d", list, s,
				set.Has(s), set.Rank(s), set.Nearest(s), plain[s], plain.rank(s), plain.nearest(s))
		}
		if again := set.With(s); again.Has(s) != true || again.Len() != set.Len()+1 && !plain[s] || plain[s] && again != set {
			t.Fatalf("%v with string %d is %v", list, s, slices.Collect(again.Thinnest()))
		}
	}
}

func TestTheEdgesOfASet(t *testing.T) {
	var none fretboard.StringSet
	all := fretboard.StringsUpTo(fretboard.MaxStrings)
	if none.Nearest(3) != 0 || none.Len() != 0 {
		t.Error("the zero set is not empty")
	}
	if all.Len() != fretboard.MaxStrings || fretboard.StringsUpTo(99) != all {
		t.Error("no set holds more than the strings that there are")
	}
	if fretboard.StringsUpTo(0) != none || fretboard.StringsUpTo(-1) != none {
		t.Error("a set of no strings is not empty")
	}
	for _, s := range []fretboard.StringNumber{-1, 0, 13, 17, 99} {
		if all.Has(s) {
			t.Errorf("a set has string %d", s)
		}
	}
	if all.Rank(0) != 0 || all.Rank(1) != 0 || all.Rank(13) != 12 {
		t.Error("ranks at the ends")
	}
	for s := range all.Thinnest() { // a loop may be left
		if s == 3 {
			break
		}
	}
}

func TestThePitchOrderIsNotTheStringOrder(t *testing.T) {
	for _, c := range []struct {
		tuning string
		want   []fretboard.StringNumber
	}{
		{"standard", []fretboard.StringNumber{6, 5, 4, 3, 2, 1}},
		{"ukulele", []fretboard.StringNumber{3, 2, 4, 1}}, // re-entrant: G4 C4 E4 A4
		{"G4 D3 G3 B3 D4", []fretboard.StringNumber{4, 3, 2, 1, 5}},
		{"E2 E2 E2", []fretboard.StringNumber{3, 2, 1}}, // in unison the thicker comes first
	} {
		tuning := parsed(t, fretboard.ParseTuning, c.tuning)
		got := fretboard.LowestFirst(tuning.All(), func(s fretboard.StringNumber) fretboard.Pitch { return tuning.Open(s).Pitch() })
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.tuning, diff)
		}
	}
}

func TestPitchOrderProperties(t *testing.T) {
	p := properties()
	p.Property("the pitch order holds each string once, never falls, and puts the thicker of two alike first",
		prop.ForAll(func(bits int, pitches []int) bool {
			set := fretboard.StringSet(bits)
			pitch := func(s fretboard.StringNumber) fretboard.Pitch { return fretboard.Pitch(pitches[s-1]) }
			order := fretboard.LowestFirst(set, pitch)
			var seen fretboard.StringSet
			for i, s := range order {
				seen = seen.With(s)
				if i == 0 {
					continue
				}
				before := order[i-1]
				if pitch(before) > pitch(s) || pitch(before) == pitch(s) && before < s {
					return false
				}
			}
			return seen == set && len(order) == set.Len()
		}, gen.IntRange(0, 1<<fretboard.MaxStrings-1), sameLength(gen.IntRange(40, 45))))
	check(t, p)
}

// sameLength generates one value for each string there can be.
func sameLength(g gopter.Gen) gopter.Gen { return gen.SliceOfN(fretboard.MaxStrings, g) }
