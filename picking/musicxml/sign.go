package musicxml

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// sign writes a symbol of a bar into a lane.
func (s *score) sign(x symbol, bar picking.Bar, l lane, shown *accidentals) {
	begins := x.note != nil && bar.At+x.from == x.note.from
	ends := x.note != nil && bar.At+x.to == x.note.to
	s.open("note")
	s.pitchOrRest(x)
	s.number("duration", int(x.to-x.from))
	if x.note != nil {
		s.ties("tie", begins, ends)
	}
	s.text("voice", l.voice)
	s.look(x, l, shown, begins)
	if l.staff != "" {
		s.text("staff", l.staff)
	}
	if !l.second {
		for level, word := range x.beams {
			if word != "" {
				s.text("beam", word, "number", strconv.Itoa(level+1))
			}
		}
	}
	s.notations(x, l, begins, ends)
	s.shut("note")
}

func (s *score) pitchOrRest(x symbol) {
	switch {
	case x.barRest:
		s.empty("rest", "measure", "yes")
	case x.note == nil:
		s.empty("rest")
	default:
		s.pitch("pitch", "", written(x.note.Note))
	}
}

// pitch writes a pitch into an element, or into none, under names with a
// prefix.
func (s *score) pitch(element, prefix string, n fretboard.PitchName) {
	if element != "" {
		s.open(element)
		defer s.shut(element)
	}
	s.noteName(prefix, n.Note)
	s.number(prefix+"octave", int(n.Octave))
}

// noteName writes the step and the alteration of n.
func (s *score) noteName(prefix string, n fretboard.Note) {
	s.text(prefix+"step", fretboard.Note{Letter: n.Letter}.String())
	if n.Accidental != 0 {
		s.number(prefix+"alter", int(n.Accidental))
	}
}

// ties writes the ties to a note's other signs, as sound or as sign.
func (s *score) ties(element string, begins, ends bool) {
	if !begins {
		s.empty(element, "type", "stop")
	}
	if !ends {
		s.empty(element, "type", "start")
	}
}

// look writes how a sign looks: its value, accidental and triplet. A second
// lane leaves stems to the first, and tab has no accidentals.
func (s *score) look(x symbol, l lane, shown *accidentals, begins bool) {
	if !x.barRest {
		s.text("type", noteTypes[x.value.power])
	}
	if x.value.dotted {
		s.empty("dot")
	}
	if x.note != nil && !l.tab {
		s.accidental(written(x.note.Note), x.from == 0 && !begins, begins, shown)
	}
	if x.triplet != nil {
		s.open("time-modification")
		s.number("actual-notes", 3)
		s.number("normal-notes", 2)
		if x.value != x.triplet.unit {
			s.text("normal-type", noteTypes[x.triplet.unit.power])
		}
		s.shut("time-modification")
	}
	if x.note != nil && l.second {
		s.text("stem", "none")
	}
}

// accidental writes the accidental of a note that begins, if it shows one.
func (s *score) accidental(n fretboard.PitchName, tiedIn, begins bool, shown *accidentals) {
	switch {
	case tiedIn:
		shown.tied(n)
	case begins:
		if word := shown.next(n); word != "" {
			s.text("accidental", word)
		}
	}
}

// notations writes ties, the ends of a triplet, and how the note is played.
// Strokes print once, over the notation if there is one, and the place on the
// neck prints in the tab. A lane holds unprinted what it does not print.
func (s *score) notations(x symbol, l lane, begins, ends bool) {
	opens := x.triplet != nil && x.from == x.triplet.from
	closes := x.triplet != nil && x.to == x.triplet.to
	if x.note == nil && !opens && !closes {
		return
	}
	s.open("notations")
	if x.note != nil {
		s.ties("tied", begins, ends)
	}
	if ends && x.note.Rings > x.note.to-x.note.from {
		s.empty("tied", "type", "let-ring")
	}
	s.tuplet(opens, closes, l)
	if x.note != nil {
		s.technical(x.note, begins && !l.second, l.tab)
	}
	s.shut("notations")
	if unprinted := x.note != nil && (!l.tab || l.second && begins); unprinted {
		s.open("notations", "print-object", "no")
		s.technical(x.note, l.second, !l.tab)
		s.shut("notations")
	}
}

// tuplet writes the ends of a triplet. Its number and bracket stand once.
func (s *score) tuplet(opens, closes bool, l lane) {
	switch {
	case opens && l.second:
		s.empty("tuplet", "type", "start", "bracket", "no", "show-number", "none")
	case opens:
		s.empty("tuplet", "type", "start", "bracket", "yes")
	}
	if closes {
		s.empty("tuplet", "type", "stop")
	}
}

// technical writes the stroke of a note, and its place on the neck.
func (s *score) technical(n *note, stroke, place bool) {
	if !stroke && !place {
		return
	}
	s.open("technical")
	switch {
	case stroke && n.Stroke == picking.DownStroke:
		s.empty("down-bow")
	case stroke && n.Stroke == picking.UpStroke:
		s.empty("up-bow")
	}
	if place {
		s.number("string", int(n.String))
		s.number("fret", int(n.Fret))
	}
	s.shut("technical")
}
