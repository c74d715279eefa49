package changes_test

import (
	"math"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A rival is a grip as the oracle sees it, priced from the comments alone.
type rival struct {
	voicing   voicing.Voicing
	fingering voicing.Fingering
	price     int
	more      int
	felt      int
}

// rivals lists the grips that may hold a step.
func rivals(g fretboard.Instrument, step changes.Step, o changes.Options) []rival {
	var voicings []voicing.Voicing
	if step.Shape != (voicing.Shape{}) {
		v, err := voicing.New(g, step.Chord, step.Shape)
		if err != nil {
			return nil
		}
		voicings = append(voicings, v)
	} else {
		for v := range voicing.Find(g, step.Chord, o.Voicing) {
			if voicings = append(voicings, v); len(voicings) == o.Shapes {
				break
			}
		}
	}
	var all []rival
	for i, v := range voicings {
		for n, f := range v.Fingerings() {
			c := v.Cost()
			own := f.Cost()
			c.Fingers, c.Spread, c.Splay, c.Barre = own.Fingers, own.Spread, own.Splay, own.Barre
			r := rival{voicing: v, fingering: f, price: c.Weighed(o.Voicing.Weights)}
			r.felt = voicing.Cost{Stretch: c.Stretch, Position: c.Position, Fingers: c.Fingers, Spread: c.Spread,
				Splay: c.Splay, Barre: c.Barre, Thin: c.Thin}.Weighed(o.Voicing.Weights)
			all = append(all, r)
			if i == 0 && all[0].price > r.price {
				all[0], all[n] = all[n], all[0]
			}
		}
	}
	for i := range all {
		all[i].more = max(0, all[i].price-all[0].price)
		all[i].felt = all[0].felt
	}
	return all
}

// pressAt lists the fingers on the neck.
func pressAt(r rival) map[voicing.Finger]voicing.Press {
	all := map[voicing.Finger]voicing.Press{}
	for _, p := range r.fingering.Presses() {
		all[p.Finger] = p
	}
	return all
}

func tenth(mm fretboard.Millimetres) float64 { return math.Round(float64(mm * 10)) }

// along is where a fret lies from the nut or capo.
func along(g fretboard.Instrument, f fretboard.Fret) float64 {
	return tenth(fretboard.FromBridge(g.Scale, g.Capo)) - tenth(fretboard.FromBridge(g.Scale, g.Capo+f))
}

// across is where the middle of a press lies from the middle of the neck.
func across(g fretboard.Instrument, p voicing.Press) float64 {
	spacing := tenth(g.Spacing)
	gap := spacing - math.Floor(spacing*tenth(fretboard.FromBridge(g.Scale, g.Capo+p.Fret))/(3*tenth(g.Scale)))
	return math.Trunc(float64(int(p.Thick+p.Thin)-int(g.Tuning.Strings())-1) * gap / 2)
}

// base is where the index finger lies or would rest.
func base(g fretboard.Instrument, r rival) float64 {
	first := r.fingering.Presses()[0]
	return along(g, first.Fret) - 240*float64(first.Finger-voicing.Index)
}

// moved prices a change in points.
func moved(g fretboard.Instrument, a, b rival) int {
	from, to := pressAt(a), pressAt(b)
	total := 0.0
	share := func(distance, by float64) float64 { return math.Floor(distance/by + 0.5) }
	for f := voicing.Index; f <= voicing.Little; f++ {
		was, before := from[f]
		is, after := to[f]
		switch {
		case !before && !after || before && after && was == is:
		case before && !after:
			total += 2
		case !before && after:
			shift := 0.0
			if len(from) > 0 {
				shift = math.Abs(base(g, a) - base(g, b))
			}
			total += 10 + share(shift, 40)
		case was.Thick == is.Thick && was.Thin == is.Thin:
			total += share(math.Abs(along(g, was.Fret)-along(g, is.Fret)), 80)
		default:
			x, y := along(g, was.Fret)-along(g, is.Fret), across(g, was)-across(g, is)
			total += 5 + share(math.Floor(math.Sqrt(x*x+y*y)), 40)
		}
	}
	return int(total)
}

func effort(g fretboard.Instrument, a, b rival) int {
	cost := moved(g, a, b)
	if cost == 0 && a.fingering == b.fingering {
		return a.more + b.more
	}
	return a.more + b.more + 100*cost + b.felt
}

// A trial tries every path: the least total and the least worst effort, and the
// least total among the paths of the least worst effort.
type trial struct {
	g           fretboard.Instrument
	stages      [][]rival
	loop        bool
	total       int
	worst       int
	totalAtBest int
}

func (t *trial) run(chosen []rival, total, hardest int) {
	n := len(chosen)
	if n < len(t.stages) {
		for _, r := range t.stages[n] {
			more, hard := r.price, hardest
			if n > 0 {
				more += 50 * moved(t.g, chosen[n-1], r)
				hard = max(hard, effort(t.g, chosen[n-1], r))
			}
			t.run(append(chosen, r), total+more, hard)
		}
		return
	}
	if t.loop && n > 1 {
		total += 50 * moved(t.g, chosen[n-1], chosen[0])
		hardest = max(hardest, effort(t.g, chosen[n-1], chosen[0]))
	}
	t.total = min(t.total, total)
	if hardest < t.worst || hardest == t.worst && total < t.totalAtBest {
		t.worst, t.totalAtBest = hardest, total
	}
}

// tried returns the trial of all paths, or false where some step has no grip.
func tried(g fretboard.Instrument, steps []changes.Step, o changes.Options) (trial, bool) {
	g, _ = g.Normal()
	t := trial{g: g, loop: o.Loop, total: math.MaxInt, worst: math.MaxInt, totalAtBest: math.MaxInt}
	for _, step := range steps {
		if step.Chord.Silent() {
			continue
		}
		all := rivals(g, step, o)
		if all == nil {
			return t, false
		}
		t.stages = append(t.stages, all)
	}
	t.run(nil, 0, 0)
	return t, true
}

func TestPathsOutside(t *testing.T) {
	p := seeded(150)
	whole := 0
	p.Property("no path has a lower total or a lower worst effort", prop.ForAll(
		func(g fretboard.Instrument, text string, loop, beginner bool) bool {
			steps := song(t, text)
			o := changes.Options{Shapes: 2, Loop: loop}
			if beginner {
				o.Voicing.Weights = voicing.Beginner()
			}
			all, possible := tried(g, steps, o)
			sum, err := changes.Easiest(g, steps, o)
			if !possible || err != nil {
				return !possible && err != nil
			}
			whole++
			o.Aim = changes.LeastWorst
			minimax := easiest(t, g, steps, o)
			if len(all.stages) == 0 {
				return sum.Total == 0 && minimax.Total == 0 && sum.Worst == -1
			}
			return sum.Total == all.total && worst(minimax) == all.worst && minimax.Total == all.totalAtBest
		}, smalls(), songs(0, 4), gen.Bool(), gen.Bool()))
	p.TestingRun(t)
	if whole < 100 {
		t.Errorf("only %d of the songs could be played", whole)
	}
	t.Logf("%d songs: total, worst change and total at the worst are those of exhaustive search", whole)
}

// TestEveryPathTriedOnAGuitar does so on six strings, with three chords.
func TestEveryPathTriedOnAGuitar(t *testing.T) {
	for _, text := range []string{"Am C", "G C D", "Am F E", "C N.C. G7", "Bm G A7", "F=xx3211 C Dm"} {
		for _, loop := range []bool{false, true} {
			g, steps, o := fretboard.Instrument{}, song(t, text), changes.Options{Shapes: 3, Loop: loop}
			all, _ := tried(g, steps, o)
			if p := easiest(t, g, steps, o); p.Total != all.total {
				t.Errorf("%s, loop %v: total %d, want %d", text, loop, p.Total, all.total)
			}
			o.Aim = changes.LeastWorst
			if p := easiest(t, g, steps, o); worst(p) != all.worst || p.Total != all.totalAtBest {
				t.Errorf("%s, loop %v: worst %d, total %d; want %d, %d", text, loop, worst(p), p.Total, all.worst, all.totalAtBest)
			}
		}
	}
}
