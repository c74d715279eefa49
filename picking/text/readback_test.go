package text_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/text"
)

// readBack reads a sheet and compares it with its passage: every pick with its
// string, fret, stroke and place under the count, every silence, every chord's
// names and start string, every loss and remark, and the width of every line.
// It returns what is wrong, or nothing.
func readBack(p picking.Passage, o text.Options, sheetText string) string {
	s, err := readSheet(sheetText)
	if err != nil {
		return err.Error()
	}
	r := reader{Passage: p, sheet: s, beat: beatOf(o.Count, p.Meter), width: o.Width, spelling: o.Spelling}
	if r.width == 0 {
		r.width = 80
	}
	for _, bar := range p.Bars {
		if err := r.bar(bar); err != nil {
			return fmt.Sprintf("bar %d: %v\n%s", bar.Number, err, sheetText)
		}
	}
	for _, check := range []func() error{r.labels, r.countOfBars, r.repeats, r.losses, r.remarks, r.widths} {
		if err := check(); err != nil {
			return fmt.Sprintf("%v\n%s", err, sheetText)
		}
	}
	return ""
}

// beatOf is what a number counts, by the words of the documentation.
func beatOf(c picking.CountWords, m picking.Meter) picking.Ticks {
	switch {
	case c == picking.CountUnits, c == picking.CountAuto && m.Compound() && m.Count == 6,
		c == picking.CountSixteenths && m.Compound() && m.Unit == 8:
		return m.UnitTicks()
	}
	return m.Beat()
}

type reader struct {
	picking.Passage
	sheet    *sheet
	beat     picking.Ticks
	width    int
	spelling fretboard.Spelling
}

// germanB finds the notes named B in chord names and remarks, where no word but
// a name has a capital.
var germanB = regexp.MustCompile(`\bB(b*)`)

// respelled names notes as the sheet should, a B at a time.
func (r *reader) respelled(text string) string {
	return germanB.ReplaceAllStringFunc(text, func(name string) string {
		flats := name[1:]
		switch {
		case r.spelling == fretboard.English, r.spelling == fretboard.MixedGerman && flats != "":
			return name
		case flats == "b":
			return "B"
		}
		return "H" + flats
	})
}

// A moment is a column of a bar with its time from the bar line, known where a
// word or a pick stands.
type moment struct {
	sheetColumn
	part int
	at   picking.Ticks
}

const unknown picking.Ticks = -1

func (r *reader) bar(bar picking.Bar) error {
	found := r.sheet.bars[bar.Number]
	if found == nil {
		return fmt.Errorf("it does not stand on the sheet")
	}
	moments, err := r.moments(bar, found)
	if err != nil {
		return err
	}
	for _, check := range []func(picking.Bar, []moment) error{r.picks, r.silences, r.starts} {
		if err := check(bar, moments); err != nil {
			return err
		}
	}
	return r.names(bar, found, moments)
}

// moments gives the columns of a bar their times by the count.
func (r *reader) moments(bar picking.Bar, found *sheetBar) (moments []moment, err error) {
	for i, p := range found.parts {
		for _, c := range p.columns {
			moments = append(moments, moment{c, i, unknown})
		}
	}
	var words []int
	for i, m := range moments {
		if m.word != "" {
			words = append(words, i)
		}
	}
	number := 0
	for i := 0; i < len(words); {
		group := 1
		for i+group < len(words) && moments[words[i+group]].word[0] > '9' || i+group < len(words) && moments[words[i+group]].word == "&" {
			group++
		}
		number++
		var said []string
		for k := range group {
			moments[words[i+k]].at = picking.Ticks(number-1)*r.beat + picking.Ticks(k)*r.beat/picking.Ticks(group)
			said = append(said, moments[words[i+k]].word)
		}
		want := map[int]string{1: "", 2: " &", 3: " & a", 4: " e & a"}[group]
		if got := strings.Join(said, " "); got != strconv.Itoa(number)+want {
			return nil, fmt.Errorf("counted %q", got)
		}
		i += group
	}
	if want := int(bar.Length / r.beat); number != want {
		return nil, fmt.Errorf("counted to %d, not %d", number, want)
	}
	return moments, nil
}

// picks compares what is plucked, in turn, and when.
func (r *reader) picks(bar picking.Bar, moments []moment) error {
	k := 0
	for i := range moments {
		m := &moments[i]
		if (m.stroke == "D" || m.stroke == "U") != (len(m.frets) == 1) || len(m.frets) > 1 {
			return fmt.Errorf("stroke %q over frets %v", m.stroke, m.frets)
		}
		if len(m.frets) == 0 {
			continue
		}
		if k == len(bar.Picks) {
			return fmt.Errorf("more picks than %d", k)
		}
		pick := bar.Picks[k]
		k++
		if want := strings.ToUpper(pick.Stroke.String()[:1]); m.strings[0] != int(pick.String) || m.frets[0] != int(pick.Fret) || m.stroke != want {
			return fmt.Errorf("pick %d: string %d, fret %d, %s; want %d, %d, %s", k, m.strings[0], m.frets[0], m.stroke, pick.String, pick.Fret, want)
		}
		at := pick.At - bar.At
		if m.word != "" && m.at != at {
			return fmt.Errorf("pick %d stands under the count at %d, not at %d", k, m.at, at)
		}
		if before, after := around(moments, i, bar.Length); at <= before && m.word == "" || at >= after {
			return fmt.Errorf("pick %d at %d stands between %d and %d", k, at, before, after)
		}
		m.at = at
	}
	if k != len(bar.Picks) {
		return fmt.Errorf("%d picks, not %d", k, len(bar.Picks))
	}
	return nil
}

// around returns the times of the words before and after moment i.
func around(moments []moment, i int, end picking.Ticks) (before, after picking.Ticks) {
	before, after = unknown, end
	for _, m := range moments[:i] {
		if m.word != "" {
			before = m.at
		}
	}
	for _, m := range slices.Backward(moments[i+1:]) {
		if m.word != "" {
			after = m.at
		}
	}
	return before, after
}

// silences looks for the full stop wherever nothing sounds, and only there.
func (r *reader) silences(bar picking.Bar, moments []moment) error {
	for _, m := range moments {
		if len(m.frets) == 0 && m.at != unknown && (m.stroke == ".") == r.sounds(bar.At+m.at) {
			return fmt.Errorf("%q at %d", m.stroke, m.at)
		}
	}
	return nil
}

func (r *reader) sounds(t picking.Ticks) bool {
	for _, pick := range r.Picks() {
		before := pick.At - r.Length()
		if pick.At <= t && t < pick.At+pick.Rings || r.Loop && before <= t && t < before+pick.Rings {
			return true
		}
	}
	return false
}

// starts looks for each start string's number under the first pick on it.
func (r *reader) starts(bar picking.Bar, moments []moment) error {
	for i, m := range moments {
		want := ""
		for _, chord := range bar.Chords {
			s, from := int(chord.Voicing.Start().String), chord.At-bar.At
			first := slices.IndexFunc(moments, func(n moment) bool {
				return len(n.frets) == 1 && n.strings[0] == s && n.at >= from && n.at < from+chord.Length
			})
			if first == i {
				want = strconv.Itoa(s)
			}
		}
		if m.start != want {
			return fmt.Errorf("start string %q at %d, not %q", m.start, m.at, want)
		}
	}
	return nil
}

// names compares the lines of names, character by character.
func (r *reader) names(bar picking.Bar, found *sheetBar, moments []moment) error {
	for i, p := range found.parts {
		chord, sounds := line(p.width), line(p.width)
		for _, c := range bar.Chords {
			name := r.respelled(c.Chord.String())
			if shape := c.Voicing.Shape(); shape.Strings() > 0 {
				name += " " + shape.String()
			}
			x, here := place(moments, i, c.At-bar.At, c.Length)
			if !here {
				continue
			}
			if x < 0 { // the chord begins where nothing else stands
				x = len(chord.String()) + strings.Index(p.rows["chord"][len(chord.String()):], name)
			}
			if !chord.put(x, name) || r.Instrument.Capo > 0 && !c.Chord.Silent() && !sounds.put(x, r.respelled(c.Sounds.String())) {
				return fmt.Errorf("no room for %s", name)
			}
		}
		if got := strings.TrimRight(p.rows["chord"], " "); got != chord.String() {
			return fmt.Errorf("chord names %q, not %q", got, chord)
		}
		if got := strings.TrimRight(p.rows["sounds"], " "); got != sounds.String() {
			return fmt.Errorf("sounding names %q, not %q", got, sounds)
		}
	}
	return nil
}

// place returns where the name of a chord stands in a part of its bar: over
// its beginning, or where the part begins if the chord is held from before; -1
// if no moment tells. here is false if the chord is not in the part.
func place(moments []moment, part int, at, length picking.Ticks) (x int, here bool) {
	first := slices.IndexFunc(moments, func(m moment) bool { return m.part == part })
	next := slices.IndexFunc(moments, func(m moment) bool { return m.part == part+1 })
	switch {
	case next >= 0 && at >= moments[next].at, at+length <= moments[first].at:
		return 0, false
	case at < moments[first].at:
		return moments[first].x, true
	}
	if begins := slices.IndexFunc(moments, func(m moment) bool { return m.at == at }); begins >= 0 {
		return moments[begins].x, true
	}
	return -1, true
}

// A row is a line to put names on; they need a space between them.
type row []byte

func line(width int) row { return row(strings.Repeat(" ", width)) }

func (w row) put(x int, text string) bool {
	if x+len(text) > len(w) || x > 0 && w[x-1] != ' ' || strings.TrimSpace(string(w[x:])) != "" {
		return false
	}
	copy(w[x:], text)
	return true
}

func (w row) String() string { return strings.TrimRight(string(w), " ") }

// labels compares the open strings at the systems and in the header with the
// tuning.
func (r *reader) labels() error {
	t := r.Instrument.Tuning
	for s := t.Strings(); s >= 1; s-- {
		want := fmt.Sprint(s) + " " + r.respelled(t.Open(s).Note.String())
		found := slices.ContainsFunc(r.sheet.lines, func(line string) bool {
			return strings.HasPrefix(strings.TrimSpace(line), want+" ") || strings.HasPrefix(strings.TrimSpace(line), want+"|")
		})
		if !found && len(r.Bars) > 0 {
			return fmt.Errorf("no string labelled %q", want)
		}
	}
	notes := 0
	for _, e := range r.sheet.entries {
		if e.label == "tuning" && !strings.Contains(e.text, r.respelled(t.String())) {
			return fmt.Errorf("tuning %q, not %q", e.text, r.respelled(t.String()))
		}
		if e.label == "notes" {
			notes++
		}
	}
	if (notes == 1) != (r.spelling != fretboard.English) {
		return fmt.Errorf("%d entries on the spelling %s", notes, r.spelling)
	}
	return nil
}

func (r *reader) countOfBars() error {
	if len(r.sheet.bars) != len(r.Bars) {
		return fmt.Errorf("%d bars on the sheet, %d in the passage", len(r.sheet.bars), len(r.Bars))
	}
	return nil
}

// widths allows a line longer than the sheet only where a single beat or a
// chord's name needs it, and splits only bars that no line takes.
func (r *reader) widths() error {
	long := map[int]bool{} // the systems that may be long
	for number, bar := range r.sheet.bars {
		total := 0
		for _, p := range bar.parts {
			total += p.width
			numbers := 0
			for _, c := range p.columns {
				if c.word != "" && c.word[0] <= '9' && c.word != "&" {
					numbers++
				}
			}
			beats := picking.Ticks(numbers) * r.beat
			long[p.line] = p.single && (beats <= r.Meter.Beat() || len(p.rows["chord"]) > r.width-10)
		}
		if len(bar.parts) > 1 && total+7 <= r.width {
			return fmt.Errorf("bar %d is split without need", number)
		}
	}
	system := 0
	for i, line := range r.sheet.lines {
		if strings.HasPrefix(line, "bar ") {
			system = i
		} else if line == "" {
			system = -1
		}
		if n := utf8.RuneCountInString(line); n > r.width && !long[system] {
			return fmt.Errorf("line %d has %d characters", i+1, n)
		}
		if strings.TrimRight(line, " ") != line {
			return fmt.Errorf("line %d ends in spaces", i+1)
		}
	}
	return nil
}
