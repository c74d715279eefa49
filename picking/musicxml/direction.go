package musicxml

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// opening writes what stands over the first measure: the tempo and, where they
// are apart from the usual, tuning, capo and hand.
func (s *score) opening() {
	s.tempo()
	g := s.Instrument
	if g.Tuning != fretboard.Standard() {
		s.words("Tuning: "+tuningWords(g.Tuning), "above", 0)
	}
	if g.Capo > 0 {
		s.words("Capo "+strconv.Itoa(int(g.Capo))+"; in brackets: the shapes, named without it", "above", 0)
	}
	if g.Hand == fretboard.LeftTurned {
		s.words("Turned over: a down-stroke goes toward the floor, where string "+strconv.Itoa(int(s.floorString()))+" lies", "above", 0)
	}
}

func tuningWords(t fretboard.Tuning) string {
	if name := t.Name(); name != "" {
		return name + ", " + t.String()
	}
	return t.String()
}

// tempo writes the tempo, as a sign in the meter's beats and for playing in
// quarters a minute.
func (s *score) tempo() {
	v, ok := plainParts(s.Meter.Beat()).value()
	if s.Tempo <= 0 || !ok {
		return
	}
	s.open("direction", "placement", "above")
	s.open("direction-type")
	s.open("metronome")
	s.text("beat-unit", noteTypes[v.power])
	if v.dotted {
		s.empty("beat-unit-dot")
	}
	s.number("per-minute", s.Tempo)
	s.shut("metronome")
	s.shut("direction-type")
	s.directionStaff()
	s.empty("sound", "tempo", quarters(s.Tempo, s.Meter.Beat()))
	s.shut("direction")
}

// quarters returns a tempo in quarter notes a minute, as a decimal. It is exact:
// every beat is a number of eighths of a quarter.
func quarters(tempo int, beat picking.Ticks) string {
	eighths := tempo * int(beat*8/picking.TicksPerQuarter)
	whole := strconv.Itoa(eighths / 8)
	return whole + [...]string{"", ".125", ".25", ".375", ".5", ".625", ".75", ".875"}[eighths%8]
}

// words writes text over or under the staff, some ticks after the place where
// the next sign stands.
func (s *score) words(text, placement string, after picking.Ticks) {
	s.open("direction", "placement", placement)
	s.open("direction-type")
	s.text("words", text)
	s.shut("direction-type")
	if after != 0 {
		s.number("offset", int(after))
	}
	s.directionStaff()
	s.shut("direction")
}

func (s *score) directionStaff() {
	if s.staves == Both {
		s.text("staff", lanesOf[Both][0].staff)
	}
}
