package picking

import "slices"

// reportLosses writes each loss of a fit to the chord on which it sounds: where
// the figure's next event follows on the next pick and its step, as it sounds
// there, does not lead the figure's way.
func (a *arranger) reportLosses() {
	n := len(a.picks)
	for i, p := range a.picks {
		if i == n-1 && a.Once {
			return
		}
		r, next := a.runs[a.details[i].run], (i+1)%n
		loss, lost := r.fit.lossAfter(p.Event)
		follows := a.picks[next].Event == loss.To && a.runs[a.details[next].run].figure == r.figure
		if !lost || !follows {
			continue
		}
		if loss.Got = direction(p.String, a.picks[next].String); loss.Got == loss.Want {
			continue
		}
		if held := a.chordAt(p.At); !slices.Contains(held.Fit.Losses, loss) {
			held.Fit.Losses = append(held.Fit.Losses, loss)
		}
	}
}

// lossAfter returns the loss of the step from an event to the next.
func (f Fit) lossAfter(event int) (Loss, bool) {
	for _, loss := range f.Losses {
		if loss.From == event {
			return loss, true
		}
	}
	return Loss{}, false
}

// chordAt returns the chord that is held at a time.
func (a *arranger) chordAt(at Ticks) *HeldChord {
	chords := a.bars[at/a.Meter.Bar()].Chords
	for i := range chords {
		if at < chords[i].At+chords[i].Length {
			return &chords[i]
		}
	}
	return &chords[len(chords)-1]
}
