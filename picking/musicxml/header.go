package musicxml

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// header writes all before the first measure. It tells no date: the same
// passage gives the same file.
func (s *score) header() {
	if s.Title != "" {
		s.open("work")
		s.text("work-title", s.Title)
		s.shut("work")
	}
	s.open("identification")
	s.encoding()
	s.miscellaneous()
	s.shut("identification")
	s.partList()
}

// encoding says what a reader need not work out for itself.
func (s *score) encoding() {
	s.open("encoding")
	s.text("software", "Weft")
	s.empty("supports", "element", "accidental", "type", "yes")
	s.empty("supports", "element", "beam", "type", "yes")
	s.empty("supports", "element", "stem", "type", "no")
	s.shut("encoding")
}

// miscellaneous tells what the standard has no element for.
func (s *score) miscellaneous() {
	form := "once through"
	if s.Loop {
		form = "a loop"
	}
	s.open("miscellaneous")
	s.field("form", form)
	s.field("hand", handWords[s.Instrument.Hand])
	s.field("strokes", s.Strokes.String())
	s.field("fit", s.Passage.Fit.String())
	s.field("down-bow", "a down-stroke: toward the floor, where string "+strconv.Itoa(int(s.floorString()))+" lies")
	s.shut("miscellaneous")
}

func (s *score) field(name, text string) { s.text("miscellaneous-field", text, "name", name) }

var handWords = [...]string{
	fretboard.RightHanded:  "right-handed",
	fretboard.LeftRestrung: "left-handed, strung for the left hand",
	fretboard.LeftTurned:   "left-handed, a right-handed instrument turned over",
}

// floorString returns the string nearest to the floor.
func (s *score) floorString() fretboard.StringNumber {
	if s.Instrument.Hand.Toward() > 0 {
		return s.Instrument.Tuning.Strings()
	}
	return 1
}

// steelGuitar is the General MIDI program of a steel-string guitar, counted
// from 1 as the standard does.
const steelGuitar = 26

func (s *score) partList() {
	const instrument = partID + "-I1"
	s.open("part-list")
	s.open("score-part", "id", partID)
	s.text("part-name", "Fretted instrument", "print-object", "no")
	s.open("score-instrument", "id", instrument)
	s.text("instrument-name", "Fretted instrument")
	s.shut("score-instrument")
	s.open("midi-instrument", "id", instrument)
	s.number("midi-channel", 1)
	s.number("midi-program", steelGuitar)
	s.shut("midi-instrument")
	s.shut("score-part")
	s.shut("part-list")
}

// attributes writes what holds for all measures.
func (s *score) attributes() {
	s.open("attributes")
	s.number("divisions", int(picking.TicksPerQuarter))
	s.open("key")
	s.number("fifths", s.key.fifths)
	if s.key.mode != "" {
		s.text("mode", s.key.mode)
	}
	s.shut("key")
	count, unit, _ := strings.Cut(s.Meter.String(), "/")
	s.open("time")
	s.text("beats", count)
	s.text("beat-type", unit)
	s.shut("time")
	number := "1"
	if s.staves == Both {
		number = "2"
		s.number("staves", 2)
		s.clef("1", s.notationClef())
	}
	s.clef(number, clef{sign: "TAB"})
	s.tabDetails(number)
	s.shut("attributes")
}

// A clef is a sign, the line that it stands on, and its octave sign.
type clef struct {
	sign         string
	line, octave int
}

func (s *score) clef(staff string, c clef) {
	s.open("clef", "number", staff)
	s.text("sign", c.sign)
	if c.line != 0 {
		s.number("line", c.line)
	}
	if c.octave != 0 {
		s.number("clef-octave-change", c.octave)
	}
	s.shut("clef")
}

// notationClef returns the clef of a guitar, a G clef that sounds an octave
// lower. An instrument whose open strings lie around middle C or above takes
// the plain G clef, as ukulele and mandolin do, and one that lies as low as a
// bass the F clef an octave lower (common practice).
func (s *score) notationClef() clef {
	low, high := fretboard.MaxPitch, fretboard.MinPitch
	for n := range s.Instrument.Tuning.All().Thinnest() {
		open := s.Instrument.Tuning.Open(n).Pitch()
		low, high = min(low, open), max(high, open)
	}
	switch middle := (low + high) / 2; {
	case middle >= 60:
		return clef{"G", 2, 0}
	case middle < 43:
		return clef{"F", 4, -1}
	}
	return clef{"G", 2, -1}
}

// tabDetails writes the lines of the tab, the lowest line first, which is the
// string with the highest number, and the capo.
func (s *score) tabDetails(staff string) {
	tuning := s.Instrument.Tuning
	s.open("staff-details", "number", staff)
	s.number("staff-lines", int(tuning.Strings()))
	for n := tuning.Strings(); n >= 1; n-- {
		s.open("staff-tuning", "line", strconv.Itoa(int(tuning.Strings()-n)+1))
		s.pitch("", "tuning-", written(tuning.Open(n)))
		s.shut("staff-tuning")
	}
	if s.Instrument.Capo > 0 {
		s.number("capo", int(s.Instrument.Capo))
	}
	s.shut("staff-details")
}
