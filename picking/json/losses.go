package json

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// A step leads from one event of a figure to the next, as it sounds.
type step struct {
	from, to int
	got      picking.Direction
}

// losses refuses a loss that does not sound: no pick under its chord takes the
// step that it speaks of. Without the figure, which a passage does not keep,
// what was wanted stays the form's word.
func (b *builder) losses() error {
	k := 0
	for i, bar := range b.passage.Bars {
		for j, c := range bar.Chords {
			from := k
			for k < len(b.picks) && b.picks[k].At < c.At+c.Length {
				k++
			}
			if len(c.Fit.Losses) == 0 {
				continue
			}
			sounded := b.steps(from, k)
			for l, loss := range c.Fit.Losses {
				if !sounded[step{loss.From, loss.To, loss.Got}] {
					return element("bars", i, element("chords", j, element("fit.losses", l,
						refuse("", "under this chord no pick of event "+digits(loss.From)+" leads "+loss.Got.String()+" to event "+digits(loss.To)))))
				}
			}
		}
	}
	return nil
}

// steps returns the steps that begin with the picks from index from up to to.
func (b *builder) steps(from, to int) map[step]bool {
	steps := map[step]bool{}
	n := len(b.picks)
	for k := from; k < to; k++ {
		if k == n-1 && !b.passage.Loop {
			break
		}
		p, next := b.picks[k], b.picks[(k+1)%n]
		steps[step{p.Event, next.Event, leads(p.String, next.String)}] = true
	}
	return steps
}

func leads(from, to fretboard.StringNumber) picking.Direction {
	switch {
	case to < from:
		return picking.Up
	case to > from:
		return picking.Down
	}
	return picking.Same
}
