package musicxml_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// readBack holds a score against its passage and says what differs, if
// anything does.
func readBack(p picking.Passage, o musicxml.Options, data []byte) string {
	s, err := parsed(data)
	if err != nil {
		return err.Error()
	}
	measures, err := s.played()
	if err != nil {
		return err.Error()
	}
	if len(measures) != max(1, len(p.Bars)) {
		return fmt.Sprintf("%d measures as played, %d bars", len(measures), len(p.Bars))
	}
	for _, check := range []func() string{
		func() string { return readHeader(p, o, s) },
		func() string { return readTime(p, o, measures) },
		func() string { return readNotes(p, o, measures) },
		func() string { return readAccidentals(s, measures) },
		func() string { return readChords(p, measures) },
		func() string { return readForm(p, s) },
	} {
		if fault := check(); fault != "" {
			return fault
		}
	}
	return ""
}

// lanes lists the voices that a score has, with their staves.
func lanes(o musicxml.Options) [][2]string {
	if o.Staves == musicxml.TabAlone {
		return [][2]string{{"1", ""}}
	}
	return [][2]string{{"1", "1"}, {"2", "2"}}
}

// readHeader checks what holds for the whole score.
func readHeader(p picking.Passage, o musicxml.Options, s score) string {
	if got := s.Title; got != strings.Join(strings.Fields(fretboard.Printable(p.Title)), " ") && got != fretboard.Printable(p.Title) {
		return fmt.Sprintf("title %q for %q", got, p.Title)
	}
	var a, tempo *item
	for i, x := range s.Measures[0].Items {
		switch {
		case x.XMLName.Local == "attributes":
			a = &s.Measures[0].Items[i]
		case x.Metronome != nil:
			tempo = &s.Measures[0].Items[i]
		}
	}
	if a == nil || s.Version != "4.0" || a.Divisions != 480 || a.Beats+"/"+a.BeatType != p.Meter.String() || a.Fifths < -7 || a.Fifths > 7 {
		return fmt.Sprintf("attributes %+v", a)
	}
	if tempo != nil {
		beat := cmp.Compare(len(tempo.Metronome.Dots), 0)*240 + 480
		if want := float64(p.Tempo) * float64(p.Meter.Beat()) / 480; tempo.Sound == nil || tempo.Sound.Tempo != want ||
			tempo.Metronome.PerMinute != p.Tempo || ticksOf[tempo.Metronome.Unit]*beat/480 != int(p.Meter.Beat()) {
			return fmt.Sprintf("tempo %+v %+v", tempo.Metronome, tempo.Sound)
		}
	} else if p.Tempo > 0 {
		return "no tempo"
	}
	return readStaves(p, o, a)
}

// readStaves checks clefs, tuning and capo. Line 1 is the lowest.
func readStaves(p picking.Passage, o musicxml.Options, a *item) string {
	g, err := p.Instrument.Normal()
	if err != nil {
		return err.Error()
	}
	tab := a.Clefs[len(a.Clefs)-1]
	if tab.Sign != "TAB" || len(a.Clefs) != len(lanes(o)) || len(a.Details) != 1 || tab.Number != a.Details[0].Number {
		return fmt.Sprintf("clefs %+v, details %+v", a.Clefs, a.Details)
	}
	d := a.Details[0]
	if d.Lines != int(g.Tuning.Strings()) || len(d.Tuning) != d.Lines || d.Capo != int(g.Capo) {
		return fmt.Sprintf("%d lines, capo %d", d.Lines, d.Capo)
	}
	for i, line := range d.Tuning {
		n := fretboard.StringNumber(d.Lines - i)
		if line.Line != i+1 || midi(line.Step, line.Alter, line.Octave) != int(g.Tuning.Open(n).Pitch()) {
			return fmt.Sprintf("tuning of line %d: %+v", i+1, line)
		}
	}
	return ""
}

// ticksOf says how long the note of each name is, at 480 ticks to the quarter
// (twice as many for the two shortest would be whole).
var ticksOf = map[string]int{"breve": 3840, "whole": 1920, "half": 960, "quarter": 480, "eighth": 240, "16th": 120, "32nd": 60, "64th": 30, "128th": 15}

// readTime checks that every voice fills every bar, each note is as long as it
// looks, and beams and triplets open and close.
func readTime(p picking.Passage, o musicxml.Options, measures []measure) string {
	for b, m := range measures {
		length := p.Meter.Bar()
		if b < len(p.Bars) {
			length = p.Bars[b].Length
		}
		filled := map[string]int{}
		for _, x := range m.Items {
			switch x.XMLName.Local {
			case "note":
				filled[x.Voice] += x.Duration
				if fault := readLook(x, int(length)); fault != "" {
					return fmt.Sprintf("bar %d: %s", b+1, fault)
				}
			case "backup":
				if x.Duration != int(length) {
					return fmt.Sprintf("bar %d: backup %d", b+1, x.Duration)
				}
			}
		}
		for _, lane := range lanes(o) {
			if filled[lane[0]] != int(length) {
				return fmt.Sprintf("bar %d: voice %s lasts %d of %d", b+1, lane[0], filled[lane[0]], length)
			}
			voice := slices.DeleteFunc(slices.Clone(m.Items), func(x item) bool { return x.XMLName.Local != "note" || x.Voice != lane[0] })
			if fault := readGroups(voice); fault != "" {
				return fmt.Sprintf("bar %d: %s", b+1, fault)
			}
		}
		if len(filled) != len(lanes(o)) {
			return fmt.Sprintf("bar %d: voices %v", b+1, filled)
		}
	}
	return ""
}

// readLook checks the length that a note shows: type, dots and triplet.
func readLook(x item, bar int) string {
	if x.Rest != nil && x.Rest.Measure == "yes" {
		if x.Type != "" || x.Duration != bar {
			return fmt.Sprintf("a bar's rest of %d, %q", x.Duration, x.Type)
		}
		return ""
	}
	ticks := float64(ticksOf[x.Type])
	if x.Type == "256th" {
		ticks = 7.5
	}
	if len(x.Dots) == 1 {
		ticks *= 1.5
	}
	if x.Time != nil {
		if x.Time.Actual != 3 || x.Time.Normal != 2 {
			return fmt.Sprintf("a triplet of %+v", x.Time)
		}
		ticks = ticks * 2 / 3
	}
	if ticks != float64(x.Duration) || len(x.Dots) > 1 {
		return fmt.Sprintf("a note of %d looks like %s with %d dots, %v", x.Duration, x.Type, len(x.Dots), ticks)
	}
	return ""
}

// readGroups checks that triplets open and close around all their notes, and
// that each beam begins before it goes on or ends, over no rest.
func readGroups(voice []item) string {
	open := false
	var beamed [9]bool
	for _, x := range voice {
		var starts, stops int
		for _, n := range x.Notations {
			for _, t := range n.Tuplets {
				if t.Type == "start" {
					starts++
				} else {
					stops++
				}
			}
		}
		if starts > 1 || stops > 1 || starts == 1 && open {
			return "triplets overlap"
		}
		open = open || starts == 1
		if open != (x.Time != nil) {
			return "a triplet's note stands alone"
		}
		open = open && stops == 0
		if fault := readBeams(x, &beamed); fault != "" {
			return fault
		}
	}
	if open || slices.Contains(beamed[:], true) {
		return "a triplet or a beam does not end"
	}
	return ""
}

func readBeams(x item, beamed *[9]bool) string {
	words := map[int]string{}
	for _, b := range x.Beams {
		words[b.Number] = b.Word
	}
	for level := range beamed {
		word := words[level]
		want := map[string]bool{"begin": false, "continue": true, "end": true, "": false, "forward hook": false, "backward hook": false}
		if before, known := want[word]; !known || before != beamed[level] {
			return fmt.Sprintf("beam %d: %q", level, word)
		}
		beamed[level] = word == "begin" || word == "continue"
	}
	if len(x.Beams) > 0 && (x.Rest != nil || ticksOf[x.Type] >= 480 || words[1] == "") {
		return "a beam where none can be"
	}
	return ""
}

// readForm checks the bar lines at the end and what is said of a loop.
func readForm(p picking.Passage, s score) string {
	said := strings.Count(fmt.Sprintf("%+v", s.Measures[len(s.Measures)-1].Items), "Loop:") > 0
	if len(p.Bars) > 0 && said != p.Loop {
		return fmt.Sprintf("loop %v, said %v", p.Loop, said)
	}
	return ""
}
