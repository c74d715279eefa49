package picking

import "weft.example/fretboard"

// ring gives each pick its sounding length. Going backward through time it
// keeps, for each string, when the string next stops. In a loop a first round
// finds what stops each string after the join.
func (a *arranger) ring() {
	end := a.runs[len(a.runs)-1].end
	var stops [fretboard.MaxStrings + 1]Ticks
	for s := range stops {
		stops[s] = end + a.Meter.Bar() // played once, the last notes ring a bar longer
	}
	if !a.Once {
		for s := range stops {
			stops[s] = end
		}
		a.ringBack(&stops, false)
		for s := range stops {
			stops[s] += end
		}
	}
	a.ringBack(&stops, true)
}

// ringBack goes from the end to the start, where stops says when each string
// stops after the end, and leaves in stops when each first stops.
func (a *arranger) ringBack(stops *[fretboard.MaxStrings + 1]Ticks, write bool) {
	pick, damp := len(a.picks)-1, len(a.damps)-1
	for i := len(a.runs) - 1; i >= 0; i-- {
		for pick >= 0 && a.details[pick].run == i {
			for ; damp >= 0 && a.damps[damp] > a.picks[pick].At; damp-- {
				stopAll(stops, a.damps[damp])
			}
			p := &a.picks[pick]
			if write {
				p.Rings = stops[p.String] - p.At
			}
			stops[p.String] = p.At
			pick--
		}
		for ; damp >= 0 && a.damps[damp] >= a.runs[i].at; damp-- {
			stopAll(stops, a.damps[damp])
		}
		a.stopChanged(stops, i)
	}
}

func stopAll(stops *[fretboard.MaxStrings + 1]Ticks, at Ticks) {
	for s := range stops {
		stops[s] = at
	}
}

// stopChanged stops the strings that run i holds otherwise than the run before
// it; the first run of a loop comes after the last.
func (a *arranger) stopChanged(stops *[fretboard.MaxStrings + 1]Ticks, i int) {
	if i == 0 && a.Once {
		return
	}
	before, now := a.runs[(i+len(a.runs)-1)%len(a.runs)], a.runs[i]
	for s := range fretboard.StringsUpTo(a.Instrument.Tuning.Strings()).Thinnest() {
		was, sounded := before.held.Shape().Fret(s)
		is, sounds := now.held.Shape().Fret(s)
		if sounded != sounds || was != is {
			stops[s] = now.at
		}
	}
}
