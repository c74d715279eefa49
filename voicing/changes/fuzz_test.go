package changes_test

import (
	"errors"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// FuzzEasiest holds for any chords and shapes: the sum is that of its parts;
// every finger begins a change where the one before left it; the minimax path
// is no worse at its worst. A refusal is located and leaves nothing.
func FuzzEasiest(f *testing.F) {
	for _, seed := range []string{"C G Am F", "N.C. C N.C.", "Am=x02210 E=022100", "G=x13579", "C=0232", "Bb13 F#m7b5/E", "C C C", ""} {
		f.Add(seed, false)
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, text string, loop bool) {
		fields := strings.Fields(text)
		if len(fields) > 5 {
			t.Skip()
		}
		var steps []changes.Step
		for _, field := range fields {
			symbol, frets, named := strings.Cut(field, "=")
			c, err := voicing.ParseChord(symbol)
			if err != nil {
				t.Skip()
			}
			step := changes.Step{Chord: c}
			if named {
				if step.Shape, err = voicing.ParseShape(frets); err != nil {
					t.Skip()
				}
			}
			steps = append(steps, step)
		}
		o := changes.Options{Shapes: 2, Loop: loop}
		sum, err := changes.Easiest(fretboard.Instrument{}, steps, o)
		if err != nil {
			var impossible *fretboard.ImpossibleError
			if !errors.As(err, &impossible) || impossible.Text() == "" || sum.Grips != nil {
				t.Fatalf("%v, %v", sum, err)
			}
			return
		}
		checkPath(t, sum)
		o.Aim = changes.LeastWorst
		minimax := easiest(t, fretboard.Instrument{}, steps, o)
		checkPath(t, minimax)
		if worst(minimax) > worst(sum) || minimax.Total < sum.Total {
			t.Errorf("worst %d, total %d; the sum path has %d, %d", worst(minimax), minimax.Total, worst(sum), sum.Total)
		}
	})
}

// checkPath holds a path together.
func checkPath(t *testing.T, p changes.Path) {
	t.Helper()
	for _, c := range p.Changes {
		from, to := 0, 0
		for _, m := range c.Fingers {
			if m.Act != changes.SetsDown {
				from++
			}
			if m.Act != changes.Lifts {
				to++
			}
			if m.Act == changes.Stays && m.From != m.To || m.Distance < 0 {
				t.Errorf("%v", m)
			}
		}
		if from != len(p.Grips[c.From].Fingering.Presses()) || to != len(p.Grips[c.To].Fingering.Presses()) {
			t.Errorf("%d fingers before, %d after: %v", from, to, c.Fingers)
		}
	}
}
