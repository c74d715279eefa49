package musicxml

import "weft.example/picking"

// pulse returns the time over which notes are beamed together: the beat, but a
// quarter at least and a half at most, and the whole bar in 3/8 and the like.
func pulse(m picking.Meter) picking.Ticks {
	switch {
	case m.Compound():
		return m.Beat()
	case m.Bar() < 2*picking.TicksPerQuarter && m.Bar() == 3*m.Beat():
		return m.Bar()
	}
	return min(max(m.Beat(), picking.TicksPerQuarter), 2*picking.TicksPerQuarter)
}

// beam joins neighbouring notes of a group by beams; a rest parts them.
func beam(list []symbol) {
	for i := 0; i < len(list); {
		next := i + 1
		for next < len(list) && beamable(list[next-1]) && beamable(list[next]) && list[next].group == list[i].group {
			next++
		}
		if next > i+1 {
			join(list[i:next])
		}
		i = next
	}
}

func beamable(x symbol) bool { return x.note != nil && x.value.beams() > 0 }

// join sets the beams of a run of two notes or more. A beam that neither
// neighbour shares is a hook, back toward the note before where there is one.
func join(run []symbol) {
	for i := range run {
		for level := range run[i].value.beams() {
			before := i > 0 && run[i-1].value.beams() > level
			after := i+1 < len(run) && run[i+1].value.beams() > level
			run[i].beams[level] = beamWord(before, after, i == 0)
		}
	}
}

func beamWord(before, after, first bool) string {
	switch {
	case before && after:
		return "continue"
	case before:
		return "end"
	case after:
		return "begin"
	case first:
		return "forward hook"
	}
	return "backward hook"
}
