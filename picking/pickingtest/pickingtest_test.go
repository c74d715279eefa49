package pickingtest

import (
	"math/rand/v2"
	"reflect"
	"regexp"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
)

func TestNamesAreUniqueAndGoodForFiles(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range List() {
		if seen[c.Name] || !regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(c.Name) || c.Why == "" {
			t.Errorf("case %q, %q", c.Name, c.Why)
		}
		seen[c.Name] = true
	}
}

// A trait is something that a passage may have.
type trait struct {
	name string
	has  func(p picking.Passage) bool
}

func anyChord(has func(c picking.HeldChord) bool) func(picking.Passage) bool {
	return func(p picking.Passage) bool {
		for _, bar := range p.Bars {
			for _, c := range bar.Chords {
				if has(c) {
					return true
				}
			}
		}
		return false
	}
}

func anyPick(has func(q picking.Pick) bool) func(picking.Passage) bool {
	return func(p picking.Passage) bool {
		for _, q := range p.Picks() {
			if has(q) {
				return true
			}
		}
		return false
	}
}

func anyBar(has func(b picking.Bar) bool) func(picking.Passage) bool {
	return func(p picking.Passage) bool {
		for _, bar := range p.Bars {
			if has(bar) {
				return true
			}
		}
		return false
	}
}

// traits are what the list and chance have to show.
var traits = []trait{
	{"silence", anyChord(func(c picking.HeldChord) bool { return c.Chord.Silent() })},
	{"losses", anyChord(func(c picking.HeldChord) bool { return len(c.Fit.Losses) > 0 })},
	{"a second figure", anyChord(func(c picking.HeldChord) bool { return c.Figure > 1 })},
	{"a shape that no hand holds", anyChord(func(c picking.HeldChord) bool {
		if c.Chord.Silent() {
			return false
		}
		_, err := c.Voicing.Fingering()
		return err != nil
	})},
	{"triplets", anyPick(func(q picking.Pick) bool { return q.At%30 != 0 })},
	{"a stroke of the teacher's own", anyPick(func(q picking.Pick) bool { return q.Why == picking.OwnStroke })},
	{"a note held over the bar line", func(p picking.Passage) bool {
		return anyPick(func(q picking.Pick) bool { return q.At/p.Meter.Bar() != (q.At+q.Length-1)/p.Meter.Bar() })(p)
	}},
	{"a note damped before the next", anyPick(func(q picking.Pick) bool { return q.Rings <= q.Length })},
	{"a high fret", anyPick(func(q picking.Pick) bool { return q.Fret > 20 })},
	{"a second playing", anyBar(func(b picking.Bar) bool { return b.Pass == 2 })},
	{"two chords a bar", anyBar(func(b picking.Bar) bool { return len(b.Chords) == 2 })},
	{"no pick in a bar", anyBar(func(b picking.Bar) bool { return len(b.Picks) == 0 })},
	{"a compound meter", func(p picking.Passage) bool { return p.Meter.Compound() }},
	{"an odd meter", func(p picking.Passage) bool { return p.Meter.Count == 7 }},
	{"a capo", func(p picking.Passage) bool { return p.Instrument.Capo > 0 }},
	{"a turned guitar", func(p picking.Passage) bool { return p.Instrument.Hand == fretboard.LeftTurned }},
	{"a restrung guitar", func(p picking.Passage) bool { return p.Instrument.Hand == fretboard.LeftRestrung }},
	{"twelve strings", func(p picking.Passage) bool { return p.Instrument.Tuning.Strings() == 12 }},
	{"one string", func(p picking.Passage) bool { return p.Instrument.Tuning.Strings() == 1 }},
	{"36 frets", func(p picking.Passage) bool { return p.Instrument.Frets == 36 }},
	{"a re-entrant tuning", func(p picking.Passage) bool {
		g := p.Instrument
		return g.Tuning.Strings() > 1 && fretboard.Lowest(g.Tuning.All(), func(s fretboard.StringNumber) fretboard.Pitch { return g.Pitch(s, 0) }) != g.Tuning.Strings()
	}},
	{"the slowest tempo", func(p picking.Passage) bool { return p.Tempo == picking.MinTempo }},
	{"the fastest tempo", func(p picking.Passage) bool { return p.Tempo == picking.MaxTempo }},
	{"a loop", func(p picking.Passage) bool { return p.Loop }},
	{"no loop", func(p picking.Passage) bool { return !p.Loop }},
	{"no pick", func(p picking.Passage) bool { return !anyPick(func(picking.Pick) bool { return true })(p) }},
}

func TestEveryTraitIsInTheListAndComesByChance(t *testing.T) {
	var chances []picking.Passage
	for seed := range uint64(800) {
		chances = append(chances, Random(rand.New(rand.NewPCG(seed, 0))))
	}
	cases := List()
	for _, trait := range traits {
		listed, met := 0, 0
		for _, c := range cases {
			if trait.has(c.Passage) {
				listed++
			}
		}
		for _, p := range chances {
			if trait.has(p) {
				met++
			}
		}
		if listed == 0 || met == 0 {
			t.Errorf("%s: %d times in the list, %d by chance", trait.name, listed, met)
		}
	}
}

func TestTheLargestCases(t *testing.T) {
	bars, shapes := 0, 0
	for _, c := range List() {
		bars = max(bars, len(c.Passage.Bars))
		held := map[string]bool{}
		for _, bar := range c.Passage.Bars {
			for _, chord := range bar.Chords {
				held[chord.Chord.String()] = true
			}
		}
		shapes = max(shapes, len(held))
	}
	if bars != picking.MaxBars || shapes < 60 {
		t.Errorf("%d bars and %d different chords at most", bars, shapes)
	}
	if got := len([]rune(SixtyTitle)); got != 60 {
		t.Errorf("%d characters in the title of sixty", got)
	}
}

func TestTheStateDecidesThePassage(t *testing.T) {
	different := 0
	for seed := range uint64(50) {
		a, b := Random(rand.New(rand.NewPCG(seed, 1))), Random(rand.New(rand.NewPCG(seed, 1)))
		if !reflect.DeepEqual(a, b) {
			t.Errorf("seed %d gives two passages", seed)
		}
		if !reflect.DeepEqual(a, Random(rand.New(rand.NewPCG(seed+1, 1)))) {
			different++
		}
	}
	if different < 45 {
		t.Errorf("only %d of 50 seeds give another passage than the next", different)
	}
}

// TestWrittenNotesFollowEachOther: no pick is written longer than to the next.
func TestWrittenNotesFollowEachOther(t *testing.T) {
	for seed := range uint64(2000) {
		end := picking.Ticks(0)
		part := Random(rand.New(rand.NewPCG(seed, 0)))
		for i, p := range part.Picks() {
			if p.At < end {
				t.Fatalf("seed %d: pick %d at %d begins before %d, where the one before ends", seed, i, p.At, end)
			}
			end = p.At + p.Length
		}
	}
}
