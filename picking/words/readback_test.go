package words_test

import (
	"fmt"
	"slices"
	"strings"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"weft.example/fretboard"
	"weft.example/picking"
)

// readBack returns what plain words tell otherwise than the passage has it, or
// nothing.
func readBack(p picking.Passage, text string) string {
	r, err := read(text, p.Meter.Bar())
	if err != nil {
		return err.Error()
	}
	if len(r.bars) != len(p.Bars) {
		return fmt.Sprintf("%d bars told of %d", len(r.bars), len(p.Bars))
	}
	sounds := soundingAt(p)
	for i, bar := range p.Bars {
		b := r.bars[i]
		fault := r.chordFault(p, bar, b) + cmp.Diff(picksOf(bar, b.folded), b.unmarked()) + cmp.Diff(statesOf(p, bar, sounds, r.unit), b.states, cmpopts.EquateEmpty())
		if fault != "" {
			return fmt.Sprintf("bar %d: %s", bar.Number, fault)
		}
	}
	return ""
}

// unmarked returns the picks told; of a bar that is told as another without
// the turnarounds, which are reasons and may differ.
func (b *readBar) unmarked() []readPick {
	picks := slices.Clone(b.picks)
	for i := range picks {
		if b.folded {
			picks[i].Marked = strings.TrimPrefix(strings.ReplaceAll(", "+picks[i].Marked, ", turnaround", ""), ", ")
		}
	}
	return picks
}

func picksOf(bar picking.Bar, folded bool) (picks []readPick) {
	for _, q := range bar.Picks {
		var marks []string
		switch {
		case q.Why == picking.OwnStroke:
			marks = append(marks, "own stroke")
		case q.Why == picking.Turnaround && !folded:
			marks = append(marks, "turnaround")
		}
		if q.Crossing == picking.InsideCrossing || q.Crossing == picking.ReturnCrossing {
			marks = append(marks, q.Crossing.String()+" crossing")
		}
		picks = append(picks, readPick{q.At - bar.At, int(q.String), int(q.Fret), q.Stroke.String(), strings.Join(marks, ", ")})
	}
	return picks
}

// chordFault compares the chords of a bar, and under their headings the shapes
// with fingers and start string.
func (r *reading) chordFault(p picking.Passage, bar picking.Bar, b *readBar) string {
	if len(b.chords) != len(bar.Chords) {
		return fmt.Sprintf("%d chords told of %d", len(b.chords), len(bar.Chords))
	}
	several := severalFigures(p)
	for i, held := range bar.Chords {
		got := b.chords[i]
		if got.At != held.At-bar.At || several && got.Figure != held.Figure || !several && got.Figure != 0 {
			return fmt.Sprintf("chord %+v told for %+v", got, held)
		}
		if held.Chord.Silent() != (got.Label == "") {
			return "silence"
		}
		if held.Chord.Silent() {
			continue
		}
		if words := held.Chord.Words(); got.Label != words && !strings.HasPrefix(got.Label, words+", shape ") {
			return fmt.Sprintf("%q told for %q", got.Label, words)
		}
		told := r.chords[got.Label]
		if told == nil {
			return "no chord " + got.Label
		}
		if fault := told.fault(held); fault != "" {
			return fault
		}
	}
	return ""
}

func severalFigures(p picking.Passage) bool {
	seen := map[int]bool{}
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			if held.Figure > 0 {
				seen[held.Figure] = true
			}
		}
	}
	return len(seen) > 1
}

func (c *readChord) fault(held picking.HeldChord) string {
	want := readChord{frets: map[int]int{}, fingers: map[int]string{}, start: int(held.Voicing.Start().String)}
	fingering, err := held.Voicing.Fingering()
	for s := fretboard.StringNumber(1); s <= held.Voicing.Shape().Strings(); s++ {
		fret, sounds := held.Voicing.Shape().Fret(s)
		want.frets[int(s)] = int(fret)
		if !sounds {
			want.frets[int(s)] = -1
		}
		if finger := fingering.Finger(s); err == nil && finger > 0 {
			want.fingers[int(s)] = finger.String()
		}
	}
	return cmp.Diff(want.frets, c.frets) + cmp.Diff(want.fingers, c.fingers) + cmp.Diff(want.start, c.start)
}

// soundingAt returns whether a string sounds at a time, by definition: one was
// plucked before and still rings, round the loop too.
func soundingAt(p picking.Passage) func(picking.Ticks) bool {
	type ring struct{ from, to picking.Ticks }
	var rings []ring
	for _, q := range p.Picks() {
		rings = append(rings, ring{q.At, q.At + q.Rings})
		if p.Loop {
			rings = append(rings, ring{q.At - p.Length(), q.At + q.Rings - p.Length()})
		}
	}
	return func(t picking.Ticks) bool {
		return slices.ContainsFunc(rings, func(r ring) bool { return r.from <= t && t < r.to })
	}
}

// statesOf lists where a hold or a rest is to be told: at a count where nothing
// is plucked, and where the last string falls silent.
func statesOf(p picking.Passage, bar picking.Bar, sounds func(picking.Ticks) bool, unit picking.Ticks) (states []readState) {
	plucked := map[picking.Ticks]bool{}
	for _, q := range bar.Picks {
		plucked[q.At] = true
	}
	told := map[picking.Ticks]bool{}
	for t := bar.At; t < bar.At+bar.Length; t += unit {
		if !plucked[t] {
			states = append(states, readState{t - bar.At, !sounds(t)})
		}
		told[t] = true
	}
	for _, q := range p.Picks() {
		for _, t := range []picking.Ticks{q.At + q.Rings, q.At + q.Rings - p.Length()} {
			inside := bar.At <= t && t < bar.At+bar.Length && (p.Loop || t == q.At+q.Rings)
			if inside && !told[t] && !plucked[t] && !sounds(t) {
				states = append(states, readState{t - bar.At, true})
				told[t] = true
			}
		}
	}
	slices.SortFunc(states, func(a, b readState) int { return int(a.At - b.At) })
	return states
}
