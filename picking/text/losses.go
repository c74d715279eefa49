package text

import (
	"strconv"

	"weft.example/picking"
)

// A lostStep is a step of a figure whose direction a chord loses.
type lostStep struct {
	chord  string
	figure int
	loss   picking.Loss
}

// lostSteps holds each lost step with the bars where it sounds.
type lostSteps struct {
	list []lostStep
	bars map[lostStep][]int
}

func (l *lostSteps) add(chord string, figure int, loss picking.Loss, bar int) {
	step := lostStep{chord, figure, loss}
	said, known := l.bars[step]
	if !known {
		l.list = append(l.list, step)
	}
	if l.bars == nil {
		l.bars = map[lostStep][]int{}
	}
	if len(said) == 0 || said[len(said)-1] != bar {
		l.bars[step] = append(said, bar)
	}
}

// losses says for each chord what the figure wants and what the chord makes of
// it; steps that are lost alike in the same bars share an entry.
func (s *sheet) losses(all lostSteps) {
	type entry struct{ before, after string }
	var entries []entry
	steps := map[entry][]string{}
	for _, step := range all.list {
		name := "the figure"
		if s.figures {
			name = figureName(step.figure)
		}
		e := entry{step.chord + ", " + bars(all.bars[step]) + ": " + name + " " + s.way(step.loss.Want), s.way(step.loss.Got)}
		if steps[e] == nil {
			entries = append(entries, e)
		}
		steps[e] = append(steps[e], stepText(step.loss))
	}
	for _, e := range entries {
		s.entry("loss", e.before+" "+list(steps[e])+", but here it "+e.after)
	}
}

func stepText(loss picking.Loss) string {
	round := ""
	if loss.To <= loss.From {
		round = " round"
	}
	return "from note " + strconv.Itoa(loss.From) + round + " to note " + strconv.Itoa(loss.To)
}
