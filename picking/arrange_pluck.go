package picking

import (
	"slices"

	"weft.example/fretboard"
)

// A hand walks through the slots of the figures and plucks.
type hand struct {
	now  Ticks // when the next slot begins
	step int   // of the pattern
}

// pluck lays the picks of every run.
func (a *arranger) pluck() {
	size := a.countPicks()
	a.picks, a.details = make([]Pick, 0, size), make([]detail, 0, size)
	var h hand
	for i := range a.runs {
		if !a.carries(i) {
			h = hand{now: a.runs[i].at}
		}
		if a.runs[i].figure > 0 {
			a.pluckRun(i, &h)
		}
	}
}

// countPicks returns an upper bound of the number of picks.
func (a *arranger) countPicks() int {
	n := 0
	for _, r := range a.runs {
		if r.figure > 0 {
			p := a.patterns[r.figure-1]
			n += int(r.end-r.at)*len(p.events)/int(p.length()) + len(p.events) + 1
		}
	}
	return n
}

func (p pattern) length() (sum Ticks) {
	for _, step := range p.steps {
		sum += step.length
	}
	return sum
}

// carries reports whether the figure runs on into run i from the one before.
func (a *arranger) carries(i int) bool {
	return a.Change == Carry && i > 0 && a.runs[i].figure > 0 && a.runs[i-1].figure == a.runs[i].figure
}

// carriedTo returns where the figure of run i must stop at the latest, as far as
// that lies before a limit: a slot may reach over changes into runs that the
// figure carries on into.
func (a *arranger) carriedTo(i int, limit Ticks) Ticks {
	for i+1 < len(a.runs) && a.carries(i+1) && a.runs[i].end < limit {
		i++
	}
	return a.runs[i].end
}

// pluckRun plays slots until the run ends.
func (a *arranger) pluckRun(i int, h *hand) {
	r := a.runs[i]
	pattern := a.patterns[r.figure-1]
	steps := pattern.steps
	last := a.carriedTo(i, r.end+pattern.length())
	part := "after"
	for h.now < r.end {
		s := steps[h.step]
		length := min(s.length, last-h.now)
		if length < s.length {
			part = "within"
		}
		a.play(i, s, h.now, length)
		h.now += length
		if h.step = (h.step + 1) % len(steps); h.step == 0 && a.Fill == Ring {
			a.restTurn(h, r.end)
		}
	}
	if whole := h.step == 0 && part == "after"; !whole && last == r.end {
		slot := (h.step+len(steps)-1)%len(steps) + 1
		a.remark(r.end-1, "the figure is cut "+part+" slot "+digits(slot)+" of "+digits(len(steps)))
	}
}

// restTurn lets the last note of a figure that is over ring to the bar line or
// to the end of its run.
func (a *arranger) restTurn(h *hand, end Ticks) {
	bar := a.Meter.Bar()
	to := min((h.now+bar-1)/bar*bar, end)
	if to > h.now {
		a.letRing(h.now, to)
		h.now = to
	}
}

// remark adds words to the chord held at a time. The list may be shared.
func (a *arranger) remark(at Ticks, text string) {
	held := a.chordAt(at)
	held.Remarks = append(slices.Clip(held.Remarks), text)
}

// play adds what one slot does.
func (a *arranger) play(i int, s step, at, length Ticks) {
	switch s.slot.Kind {
	case Rest:
		a.damps = append(a.damps, at)
	case Hold:
		a.letRing(at, at+length)
	default:
		r := a.runs[i]
		on := r.fit.Strings[s.event]
		fret, _ := r.held.Shape().Fret(on)
		a.picks = append(a.picks, Pick{At: at, Length: length, Event: s.event + 1,
			String: on, Fret: fret, Pitch: r.held.Pitch(on)})
		slot := int(at % a.Meter.Bar() / s.length)
		a.details = append(a.details, detail{s.slot.Own, slot, s.length < pulse(a.Meter) && slot%2 == 1, i})
	}
}

// pulse returns the beat by which strokes go down and up: the meter's, but not
// shorter than a quarter, or all eighths of 7/8 would be down.
func pulse(m Meter) Ticks { return max(m.Beat(), TicksPerQuarter) }

// letRing writes the note before longer, if it reaches as far as from.
func (a *arranger) letRing(from, to Ticks) {
	if n := len(a.picks); n > 0 && a.picks[n-1].At+a.picks[n-1].Length == from {
		a.picks[n-1].Length = to - a.picks[n-1].At
	}
}

// strike chooses the strokes and measures the way between them.
func (a *arranger) strike() {
	strikes := make([]Strike, len(a.picks))
	for i, p := range a.picks {
		strikes[i] = Strike{p.String, a.details[i].own, a.details[i].offbeat, a.details[i].step}
	}
	h, loop := a.Instrument.Hand, !a.Once
	strokes := ChooseStrokes(strikes, a.Strokes, h, loop)
	for i := range a.picks {
		p := &a.picks[i]
		p.Stroke, p.Why = strokes[i], why(strikes, i, a.Strokes, h, loop)
		if before := i - 1; i > 0 || loop {
			before = (before + len(strikes)) % len(strikes)
			p.Crossing, p.Travel = Cross(h, strikes[before].String, strokes[before], p.String, p.Stroke)
		}
		p.Note = spell(a.runs[a.details[i].run].held.Chord(), a.capoBy, p.Pitch)
	}
}

// why returns the reason for the stroke of strike i.
func why(strikes []Strike, i int, t Tradition, h fretboard.Hand, loop bool) Why {
	n := len(strikes)
	last := i == n-1
	next, before := strikes[(i+1)%n].String, strikes[(i+n-1)%n].String
	switch s := strikes[i]; {
	case s.Own != Free:
		return OwnStroke
	case t != TowardNext:
		return ByTradition
	case last && !loop:
		return LastStroke
	case next == s.String:
		return Repeat
	case last:
		return RoundLoop
	case (i > 0 || loop) && toward(h, before, s.String) == toward(h, next, s.String):
		return Turnaround
	}
	return TowardNextString
}
