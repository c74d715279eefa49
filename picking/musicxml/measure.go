package musicxml

import (
	"strconv"

	"weft.example/picking"
)

const partID = "P1"

// A lane is a voice on a staff.
type lane struct {
	voice, staff string // staff is empty where there is but one
	tab          bool
	second       bool // it repeats the lane above in another way of writing
}

var lanesOf = [...][]lane{
	Both:     {{voice: "1", staff: "1"}, {voice: "2", staff: "2", tab: true, second: true}},
	TabAlone: {{voice: "1", tab: true}},
}

// measure writes bar b as the measure of a number, within a section.
func (s *score) measure(b, number int, part section) {
	s.open("measure", "number", strconv.Itoa(number))
	if part.twice && b == part.from {
		s.barline("left", "heavy-light", "forward")
	}
	if number == 1 {
		s.attributes()
		s.opening()
	}
	s.body(b, true)
	end := b == part.to-1
	if end && part.last && s.Loop {
		s.words("Loop: go back to the first bar", "below", 0)
	}
	switch {
	case end && part.twice:
		s.barline("right", "light-heavy", "backward")
	case end && part.last:
		s.barline("right", "light-heavy", "")
	}
	s.shut("measure")
}

// emptyMeasure stands for a passage without bars: a part has at least one.
func (s *score) emptyMeasure() {
	s.open("measure", "number", "1")
	s.attributes()
	s.opening()
	s.signs([]symbol{{to: s.Meter.Bar(), barRest: true}}, picking.Bar{Length: s.Meter.Bar()}, nil)
	s.shut("measure")
}

func (s *score) barline(location, style, repeat string) {
	s.open("barline", "location", location)
	s.text("bar-style", style)
	if repeat != "" {
		s.empty("repeat", "direction", repeat)
	}
	s.shut("barline")
}

// body writes all notes and chords of bar b, and the frames of new chords if
// asked. Without frames, two bars are written alike if and only if they read
// alike.
func (s *score) body(b int, frames bool) {
	bar := s.Bars[b]
	s.signs(s.symbols(b), bar, func(x symbol) {
		for i, held := range bar.Chords {
			if at := held.At - bar.At; at >= x.from && at < x.to {
				s.chord(held, at-x.from, frames && s.changes(b, i))
			}
		}
	})
}

// signs writes symbols into every lane, before each of the first lane's what
// above writes.
func (s *score) signs(symbols []symbol, bar picking.Bar, above func(symbol)) {
	for _, l := range lanesOf[s.staves] {
		if l.second {
			s.open("backup")
			s.number("duration", int(bar.Length))
			s.shut("backup")
		}
		shown := s.key.accidentals()
		for _, x := range symbols {
			if above != nil && !l.second {
				above(x)
			}
			s.sign(x, bar, l, shown)
		}
	}
}

// changes reports whether chord i of bar b is held otherwise than the one
// before it.
func (s *score) changes(b, i int) bool {
	now := s.Bars[b].Chords[i].Voicing
	for i--; ; i-- {
		for ; i < 0; i = len(s.Bars[b].Chords) - 1 {
			if b--; b < 0 {
				return true
			}
		}
		if before := s.Bars[b].Chords[i]; !before.Chord.Silent() {
			return before.Voicing != now
		}
	}
}
