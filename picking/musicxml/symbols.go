package musicxml

import (
	"slices"

	"weft.example/picking"
)

// A note is a pick with the time that it is written for, over bar lines.
type note struct {
	*picking.Pick
	from, to picking.Ticks
}

// notesOf lists the notes of p and, for each bar, the first that sounds in it
// or later.
func notesOf(p picking.Passage) (notes []note, first []int) {
	end := p.Length()
	for b := range p.Bars {
		picks := p.Bars[b].Picks
		for i := range picks {
			notes = append(notes, note{&picks[i], picks[i].At, min(picks[i].At+picks[i].Length, end)})
		}
	}
	first = make([]int, len(p.Bars))
	next := 0
	for b, bar := range p.Bars {
		for next < len(notes) && notes[next].to <= bar.At {
			next++
		}
		first[b] = next
	}
	return notes, first
}

// A stretch is a note, or silence, in one bar. Times count from the bar line.
type stretch struct {
	from, to picking.Ticks
	note     *note // nil for silence
}

// stretches cuts bar b into notes and silences.
func (s *score) stretches(b int) (list []stretch) {
	bar := s.Bars[b]
	done := picking.Ticks(0)
	for i := s.first[b]; i < len(s.notes) && s.notes[i].from < bar.At+bar.Length; i++ {
		n := &s.notes[i]
		from, to := max(n.from-bar.At, 0), min(n.to-bar.At, bar.Length)
		if from > done {
			list = append(list, stretch{done, from, nil})
		}
		list = append(list, stretch{from, to, n})
		done = to
	}
	if done < bar.Length {
		list = append(list, stretch{done, bar.Length, nil})
	}
	return list
}

// uneven reports whether a time in a bar needs a triplet.
func uneven(t picking.Ticks) bool { return t%plainest != 0 }

// eased cuts what begins or ends within a triplet and is too long for a single
// sign there, so that the triplet does not swallow the bar.
func eased(list []stretch) (cut []stretch) {
	whole := shortestTriplet(list)
	for _, x := range list {
		if whole > 0 && !tripletParts(x.to-x.from).single() {
			if t := (x.from + whole - 1) / whole * whole; uneven(x.from) && t < x.to {
				cut = append(cut, stretch{x.from, t, x.note})
				x.from = t
			}
			if t := x.to / whole * whole; uneven(x.to) && t > x.from {
				cut = append(cut, stretch{x.from, t, x.note})
				x.from = t
			}
		}
		cut = append(cut, x)
	}
	return cut
}

// shortestTriplet returns how long the shortest triplet of a bar is as a whole,
// or 0 if there is none. Each note of a triplet lasts 5 ticks times a power of
// two; the greatest power that divides an uneven time is that of the longest
// such note that the time can be counted in.
func shortestTriplet(list []stretch) (whole picking.Ticks) {
	for _, x := range list {
		for _, t := range [...]picking.Ticks{x.from, x.to} {
			if length := (t & -t) * plainest; uneven(t) && (whole == 0 || length < whole) {
				whole = length
			}
		}
	}
	return whole
}

// A symbol is one sign on the staff: a note, a note tied to one before, or a
// rest.
type symbol struct {
	from, to picking.Ticks // from the bar line
	note     *note         // nil for a rest
	value    value
	triplet  *triplet // nil outside
	group    int      // beams join symbols of one group
	beams    [quarterPower]string
	barRest  bool // rests for the whole bar
}

// A triplet is notes of which three last as long as two.
type triplet struct {
	from, to picking.Ticks
	unit     value // one of the three, or nearest to it
}

// symbols returns the signs of bar b.
func (s *score) symbols(b int) (list []symbol) {
	stretches := s.stretches(b)
	if len(stretches) == 1 && stretches[0].note == nil {
		return []symbol{{to: stretches[0].to, barRest: true}}
	}
	stretches = eased(stretches)
	for i := 0; i < len(stretches); {
		next := i + 1
		for next < len(stretches) && uneven(stretches[next].from) {
			next++
		}
		list = s.lay(list, stretches[i:next])
		i = next
	}
	beam(list)
	return list
}

// lay adds the signs of stretches that end where the next need no triplet.
func (s *score) lay(list []symbol, stretches []stretch) []symbol {
	if len(stretches) == 1 && !uneven(stretches[0].to) {
		return s.plain(list, stretches[0])
	}
	if i, middle := crossed(stretches); middle != 0 {
		left, right := slices.Clone(stretches[:i+1]), slices.Clone(stretches[i:])
		left[i].to, right[0].from = middle, middle
		return s.lay(s.lay(list, left), right)
	}
	return s.tripled(list, stretches)
}

// plain adds the signs of a stretch outside triplets.
func (s *score) plain(list []symbol, x stretch) []symbol {
	pulse := pulse(s.Meter)
	s.meter.split(plainParts(x.from), plainParts(x.to), x.note == nil, func(from, to parts) {
		v, _ := (to - from).value()
		start := picking.Ticks(from) * plainest / 2
		list = append(list, symbol{from: start, to: picking.Ticks(to) * plainest / 2, note: x.note, value: v, group: int(start / pulse)})
	})
	return list
}

// tripled adds the signs of stretches that make a triplet together.
func (s *score) tripled(list []symbol, stretches []stretch) []symbol {
	t := &triplet{from: stretches[0].from, to: stretches[len(stretches)-1].to}
	all := tripletParts(t.to - t.from)
	g := tripletGrid(all)
	t.unit, _ = g[1].value()
	beamed := all
	if t.to-t.from > pulse(s.Meter) {
		beamed = g[1]
	}
	for _, x := range stretches {
		g.split(tripletParts(x.from-t.from), tripletParts(x.to-t.from), x.note == nil, func(from, to parts) {
			v, _ := (to - from).value()
			start := t.from + picking.Ticks(from)*finest
			list = append(list, symbol{from: start, to: t.from + picking.Ticks(to)*finest, note: x.note, value: v, triplet: t,
				group: -1 - int(t.from) - int(from/beamed)}) // of no other group: a triplet has more ticks than parts
		})
	}
	return list
}

// crossed returns the stretch that hides where one triplet ends and the next
// begins, and that time, or no time: stretches may last as long as two triplets
// of their shortest notes with a note across the middle.
func crossed(stretches []stretch) (i int, middle picking.Ticks) {
	from, to := stretches[0].from, stretches[len(stretches)-1].to
	unit := to - from
	for _, x := range stretches[1:] {
		unit = min(unit, (x.from-from)&(from-x.from))
	}
	if to-from != 2*unit*plainest {
		return 0, 0
	}
	middle = from + unit*plainest
	for stretches[i].to < middle {
		i++
	}
	return i, middle
}
