package svg

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
)

// barWords says a stretch in words, to be read aloud in place of its signs.
func (d *drawing) barWords(t *stretch) string {
	var b strings.Builder
	b.WriteString("Bar " + strings.Trim(t.number, "()"))
	if t.begun() {
		b.WriteString(", continued")
	}
	b.WriteString(". ")
	if t.opens {
		b.WriteString("The repeat begins. ")
	}
	chord := 0
	for i := range t.columns {
		c := &t.columns[i]
		for chord < len(t.names) && t.names[chord].at <= c.at {
			b.WriteString(d.chordWords(&t.names[chord]))
			chord++
		}
		b.WriteString(d.columnWords(c))
	}
	switch {
	case t.closes:
		b.WriteString("The repeat ends.")
	case t.ends && d.Loop:
		b.WriteString("Go back to bar " + strconv.Itoa(d.Bars[0].Number) + ".")
	case t.ends:
		b.WriteString("The end.")
	}
	return strings.TrimSuffix(b.String(), " ")
}

func (d *drawing) chordWords(n *name) string {
	text := capital(n.held.Chord.Words())
	if n.below != "" {
		text += ", " + n.below
	}
	return text + ". "
}

// columnWords says a moment: the count, what is plucked, and the notes.
func (d *drawing) columnWords(c *column) string {
	if c.pick == none && !c.rest && len(c.notes) == 0 {
		return ""
	}
	var parts []string
	if c.word != "" {
		parts = append(parts, countWord(c.word))
	}
	switch {
	case c.pick != none:
		pick := d.picks[c.pick]
		parts = append(parts, stringNumber(pick.String)+" "+fretWords(pick.Fret), pick.Stroke.String())
		if knots(pick) {
			parts = append(parts, pick.Crossing.String()+" crossing before it")
		}
	case c.rest:
		parts = append(parts, "silence")
	}
	for _, n := range c.notes {
		parts = append(parts, "note "+strconv.Itoa(n))
	}
	return strings.Join(parts, ", ") + ". "
}

// countWord says a word of the count.
func countWord(word string) string {
	if word == "&" {
		return "and"
	}
	return word
}

func fretWords(f fretboard.Fret) string {
	if f == 0 {
		return "open"
	}
	return "fret " + strconv.Itoa(int(f))
}
