package api

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// why says why the stroke of a pick goes its way.
func (p *part) why(i int) string {
	at := &p.picks[i]
	way := capital(at.Stroke.String())
	next := ""
	if n, ok := p.next(i); ok {
		next = stringName(p.picks[n].String)
	}
	switch at.Why {
	case picking.TowardNextString:
		return way + ", toward " + next + ", which is next."
	case picking.Turnaround:
		return way + ", back the way the pick came, toward " + next + ", which is next."
	case picking.Repeat:
		return way + ", since " + next + " is next again and its strokes alternate."
	case picking.RoundLoop:
		return way + ", toward " + next + ", where the loop begins again."
	case picking.LastStroke:
		return way + ", on as the pick came, since nothing follows."
	case picking.OwnStroke:
		return way + ", since the figure asks for it."
	}
	return way + ", by the rule of " + p.passage.Strokes.String() + " strokes."
}

// came says how the pick got to where it is.
func (p *part) came(i int) string {
	at := &p.picks[i]
	n, ok := p.before(i)
	if !ok || at.Crossing == picking.NoCrossing {
		return "The first pick of the part."
	}
	from := stringName(p.picks[n].String)
	return crossingWords(at.Crossing, from) + wayWords(at.Travel)
}

func crossingWords(c picking.Crossing, from string) string {
	switch c {
	case picking.SameString:
		return "On the same string"
	case picking.SweepCrossing:
		return "From " + from + " straight on"
	case picking.OutsideCrossing:
		return "From " + from + " round the outside"
	case picking.InsideCrossing:
		return "From " + from + " back between the two strings"
	}
	return "From " + from + " back over both strings"
}

func wayWords(spacings int) string {
	switch spacings {
	case 0:
		return ", with no way between the strokes."
	case 1:
		return ", 1 string spacing between the strokes."
	}
	return ", " + strconv.Itoa(spacings) + " string spacings between the strokes."
}

// words says a pick as a whole: bar, beat, string, fret, note and stroke.
func (p *part) words(i int) string {
	at := &p.picks[i]
	bar := p.passage.Bars[at.bar]
	return "Bar " + strconv.Itoa(bar.Number) + ", " + beatWords(at.At-bar.At, p.passage.Meter) + ": " +
		stringName(at.String) + ", " + fretWords(at.Fret) + ", " + at.Note.Note.ChartIn(p.spelling) +
		strconv.Itoa(int(at.Note.Octave)) + ", " + at.Stroke.String() + "."
}

// beatWords tells a time in a bar: beat 2, or beat 2 and 1/3.
func beatWords(t picking.Ticks, m picking.Meter) string {
	beat := m.Beat()
	text := "beat " + strconv.Itoa(int(t/beat)+1)
	rest := t % beat
	if rest == 0 {
		return text
	}
	divisor := rest
	for b := beat; b != 0; {
		divisor, b = b, divisor%b
	}
	return text + " and " + strconv.Itoa(int(rest/divisor)) + "/" + strconv.Itoa(int(beat/divisor))
}

func fretWords(f fretboard.Fret) string {
	if f == 0 {
		return "open"
	}
	return "fret " + strconv.Itoa(int(f))
}

// lossWords says where a step of the figure is lost, and what it becomes.
func (p *part) lossWords(loss picking.Loss, from int) string {
	held := p.held[p.picks[from].held]
	bar := p.passage.Bars[p.picks[from].bar]
	last := p.passage.Instrument.Tuning.Strings()
	return held.Chord.ChartIn(p.spelling) + ", bar " + strconv.Itoa(bar.Number) + ": from note " + strconv.Itoa(loss.From) +
		" to note " + strconv.Itoa(loss.To) + " the figure " + way(loss.Want, last) + ", but here it " + way(loss.Got, last) + "."
}

func way(d picking.Direction, last fretboard.StringNumber) string {
	switch d {
	case picking.Up:
		return "goes toward string 1"
	case picking.Down:
		return "goes toward " + stringName(last)
	}
	return "stays on its string"
}

func stringName(s fretboard.StringNumber) string { return "string " + strconv.Itoa(int(s)) }

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
