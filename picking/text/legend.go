package text

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// signs records what occurs on the sheet, for the legend to explain.
type signs struct {
	down, up, rest, held bool
	shape, sounds        bool
	start, more          bool
	parts                [5]bool // a beat is counted in so many words
	between              bool    // something happens between the words
}

// note records what a stretch shows.
func (g *signs) note(t stretch) {
	g.more = g.more || t.more
	for _, n := range t.names {
		g.shape = g.shape || strings.Contains(n.chord, " ")
		g.sounds = g.sounds || n.sounds != ""
	}
	words := 0
	for _, c := range t.columns {
		g.down = g.down || c.mark == downMark
		g.up = g.up || c.mark == upMark
		g.rest = g.rest || c.mark == restMark
		g.held = g.held || c.mark == ""
		g.start = g.start || c.start != ""
		switch {
		case c.word == "":
			g.between = true
		case isNumber(c.word):
			g.parts[words], words = true, 1
		default:
			words++
		}
	}
	g.parts[words] = true
}

func isNumber(word string) bool { return word[0] >= '1' && word[0] <= '9' }

// legend explains the signs that occur, line by line as they stand in a system.
func (s *sheet) legend() {
	if len(s.Bars) == 0 {
		return
	}
	if s.signs.shape {
		s.entry("chord", s.chordLegend())
	}
	if s.signs.sounds {
		s.entry("sounds", "the chord as it sounds with the capo")
	}
	if s.figures {
		s.entry("figure", "the number of the figure that is played")
	}
	s.entry("count", s.countLegend())
	if text := s.strokeLegend(); text != "" {
		s.entry("stroke", text)
	}
	s.entry(s.stringsLabel(), s.tabLegend())
	if s.signs.start {
		s.entry("start", s.startLegend())
	}
}

func (s *sheet) chordLegend() string {
	if s.strings() == 1 {
		return "with its fret, 0 for open"
	}
	return "with its shape, from string " + strconv.Itoa(s.strings()) +
		" to string 1: the fret, 0 for open, x for a string that does not sound"
}

func (s *sheet) countLegend() string {
	text := "a number counts " + article(noteWords(s.count.Beat(s.Meter)))
	var ways []string
	for d, words := range [5]string{2: `"1 &" is two to a number`, 3: `"1 & a" is three to a number`, 4: `"1 e & a" is four to a number`} {
		if words != "" && s.signs.parts[d] {
			ways = append(ways, words)
		}
	}
	if len(ways) > 0 {
		text += "; " + list(ways)
	}
	if s.signs.between {
		text += "; finer notes come between the words"
	}
	return text
}

func article(noun string) string {
	if strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}

func (s *sheet) strokeLegend() string {
	var parts []string
	if s.signs.down {
		parts = append(parts, "D down, toward "+s.floor())
	}
	if s.signs.up {
		parts = append(parts, "U up, toward "+s.outermost(-s.Instrument.Hand.Toward()))
	}
	if s.signs.held {
		parts = append(parts, "no letter, the strings ring on")
	}
	if s.signs.rest {
		parts = append(parts, restMark+" silence, all strings damped")
	}
	return strings.Join(parts, "; ")
}

// floor says where a down-stroke goes, and more where that is unusual.
func (s *sheet) floor() string {
	toward := s.Instrument.Hand.Toward()
	if toward < 0 || s.strings() == 1 {
		return s.outermost(toward)
	}
	text := "the floor, which on a turned instrument is toward " + s.outermost(toward)
	open := func(n fretboard.StringNumber) fretboard.Pitch { return s.Instrument.Tuning.Open(n).Pitch() }
	if fretboard.LowestFirst(s.Instrument.Tuning.All(), open)[0] == s.Instrument.Tuning.Strings() {
		text += ", the thickest"
	}
	return text
}

// outermost names the last string that lies one way.
func (s *sheet) outermost(toward fretboard.StringNumber) string {
	switch {
	case s.strings() == 1 && toward == s.Instrument.Hand.Toward():
		return "the floor"
	case s.strings() == 1:
		return "the ceiling"
	case toward < 0:
		return "string 1"
	}
	return "string " + strconv.Itoa(s.strings())
}

func (s *sheet) stringsLabel() string {
	if s.strings() == 1 {
		return "1"
	}
	return "1-" + strconv.Itoa(s.strings())
}

func (s *sheet) tabLegend() string {
	text := "the strings"
	if s.strings() == 1 {
		text = "the string"
	}
	text += "; a number is the fret of a note"
	if s.Instrument.Capo > 0 {
		text += ", counted from the capo"
	}
	text += ", which rings on until its string is plucked again or let go"
	if s.signs.more {
		text += "; " + string(moreSign) + " the bar goes on in the next line"
	}
	return text
}

func (s *sheet) startLegend() string {
	var occurs [voicing.Lowest + 1]bool
	for _, bar := range s.Bars {
		for _, chord := range bar.Chords {
			occurs[chord.Voicing.Start().Reason] = true
		}
	}
	var carries []string
	if occurs[voicing.RootTone] {
		carries = append(carries, "the chord's root")
	}
	if occurs[voicing.SlashBass] {
		carries = append(carries, "the bass that a slash names")
	}
	if occurs[voicing.Lowest] {
		carries = append(carries, "the lowest note where the root does not sound")
	}
	return "the number of the start string, under its first note; it carries " + strings.Join(carries, ", or ")
}
