package changes_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// guitarSongs generates songs of common chords for six strings.
func guitarSongs(least, most int) gopter.Gen {
	texts := gen.OneConstOf("C", "Am", "F", "G", "Dm", "Em", "D", "A", "E", "E7", "Bb", "Bm", "F#m", "B7", "Cmaj7", "G/B",
		"D/F#", "N.C.", "F=xx3211", "C=x35553", "Am=577555", "G=320033")
	return gen.IntRange(least, most).FlatMap(func(n any) gopter.Gen { return gen.SliceOfN(n.(int), texts) }, nil).
		Map(func(all []string) string { return strings.Join(all, " ") })
}

func TestPaths(t *testing.T) {
	guitar := fretboard.Instrument{}
	p := seeded(60)
	path := func(text string, o changes.Options) changes.Path { return easiest(t, guitar, song(t, text), o) }

	p.Property("the minimax path's worst change is never worse than the sum path's, nor its total better", prop.ForAll(
		func(text string, loop bool) bool {
			sum := path(text, changes.Options{Loop: loop, Shapes: 4})
			minimax := path(text, changes.Options{Loop: loop, Shapes: 4, Aim: changes.LeastWorst})
			return worst(minimax) <= worst(sum) && minimax.Total >= sum.Total
		}, guitarSongs(0, 8), gen.Bool()))

	p.Property("more shapes to choose from never make a path worse", prop.ForAll(
		func(text string, few, more int, loop bool) bool {
			a := path(text, changes.Options{Shapes: few, Loop: loop})
			b := path(text, changes.Options{Shapes: few + more, Loop: loop})
			c := path(text, changes.Options{Shapes: few, Loop: loop, Aim: changes.LeastWorst})
			d := path(text, changes.Options{Shapes: few + more, Loop: loop, Aim: changes.LeastWorst})
			return b.Total <= a.Total && worst(d) <= worst(c)
		}, guitarSongs(0, 5), gen.IntRange(1, 3), gen.IntRange(1, 3), gen.Bool()))

	p.Property("a shape that is named is held, a rest has none, and every chord is the song's", prop.ForAll(
		func(text string, loop bool, aim int) bool {
			steps := song(t, text)
			got := easiest(t, guitar, steps, changes.Options{Loop: loop, Aim: changes.Aim(aim), Shapes: 4})
			for i, step := range steps {
				v := got.Grips[i].Voicing
				if v.Chord() != step.Chord || step.Shape != (voicing.Shape{}) && v.Shape() != step.Shape {
					return false
				}
				if step.Chord.Silent() != (got.Grips[i] == changes.Grip{}) {
					return false
				}
			}
			return len(got.Grips) == len(steps)
		}, guitarSongs(0, 8), gen.Bool(), gen.IntRange(0, 1)))

	p.Property("fixing the shapes that were found changes no total", prop.ForAll(
		func(text string) bool {
			steps := song(t, text)
			free := easiest(t, guitar, steps, changes.Options{Shapes: 4})
			for i, g := range free.Grips {
				steps[i].Shape = g.Voicing.Shape()
			}
			return easiest(t, guitar, steps, changes.Options{}).Total == free.Total
		}, guitarSongs(0, 8)))

	p.Property("rests change nothing but the numbers of the steps", prop.ForAll(
		func(text string, loop bool) bool {
			chords := strings.Fields(strings.ReplaceAll(text, "N.C.", ""))
			rested := "N.C. " + strings.Join(chords, " N.C. N.C. ") + " N.C."
			a := path(strings.Join(chords, " "), changes.Options{Loop: loop, Shapes: 3})
			b := path(rested, changes.Options{Loop: loop, Shapes: 3})
			return a.Total == b.Total && worst(a) == worst(b) && strings.ReplaceAll(held(b), "- ", "") == strings.TrimSpace(held(a)+" -")
		}, guitarSongs(1, 5), gen.Bool()))

	p.Property("a loop may begin anywhere", prop.ForAll(
		func(text string, by int, aim int) bool {
			all := strings.Fields(text)
			by %= len(all)
			turned := strings.Join(append(slices.Clone(all[by:]), all[:by]...), " ")
			o := changes.Options{Loop: true, Aim: changes.Aim(aim), Shapes: 4}
			a, b := path(text, o), path(turned, o)
			return a.Total == b.Total && worst(a) == worst(b)
		}, guitarSongs(1, 6), gen.IntRange(0, 5), gen.IntRange(0, 1)))

	p.Property("going round costs no less than going through", prop.ForAll(
		func(text string) bool {
			return path(text, changes.Options{Loop: true, Shapes: 4}).Total >= path(text, changes.Options{Shapes: 4}).Total
		}, guitarSongs(0, 6)))

	p.Property("the total is that of the grips and the changes", prop.ForAll(
		func(text string, loop bool) bool {
			steps := song(t, text)
			got := easiest(t, guitar, steps, changes.Options{Loop: loop, Shapes: 4})
			total := 0
			for i, g := range got.Grips {
				if !steps[i].Chord.Silent() {
					c, own := g.Voicing.Cost(), g.Fingering.Cost()
					c.Fingers, c.Spread, c.Splay, c.Barre = own.Fingers, own.Spread, own.Splay, own.Barre
					total += 100 * c.Total()
				}
			}
			for _, c := range got.Changes {
				total += 50 * c.Cost.Total()
			}
			return got.Total == total
		}, guitarSongs(0, 8), gen.Bool()))
	p.TestingRun(t)
}

// TestThereAndBack: what a finger does on the way back is what it did on the
// way there, turned round.
func TestThereAndBack(t *testing.T) {
	p := seeded(100)
	p.Property("on the way back the same fingers stay, and go as far; those set down lift", prop.ForAll(
		func(text string) bool {
			steps := song(t, text)
			path := easiest(t, fretboard.Instrument{}, steps, changes.Options{Loop: true, Shapes: 4})
			if len(path.Changes) != 2 {
				return len(path.Changes) == 0
			}
			there, back := path.Changes[0], path.Changes[1]
			for i, m := range there.Fingers {
				n := back.Fingers[i]
				opposite := m.Act == changes.SetsDown && n.Act == changes.Lifts || m.Act == changes.Lifts && n.Act == changes.SetsDown
				if m.Finger != n.Finger || m.From != n.To || m.To != n.From {
					return false
				}
				if !opposite && (m.Act != n.Act || m.Distance != n.Distance) {
					return false
				}
			}
			return len(there.Fingers) == len(back.Fingers)
		}, guitarSongs(2, 2)))
	p.TestingRun(t)
}
