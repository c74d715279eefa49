package words

import (
	"math"
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A part is a passage on its way to words.
type part struct {
	picking.Passage
	speaker
	counter  counter
	silences []picking.Silence
	kinds    []int // of the bars, the same for those that are played alike
	chords   []*chord
	figures  bool // more than one figure is played
	text     document
}

func newPart(p picking.Passage) *part {
	told := &part{Passage: p, speaker: speaker{&english}, counter: counting(p.Meter), silences: p.Silences(), figures: p.ManyFigures()}
	told.kinds = told.barKinds()
	return told
}

// tell says everything.
func (p *part) tell() document {
	name := strings.Join(strings.Fields(fretboard.Printable(p.Title)), " ")
	if name == "" {
		name = p.say(untitled)
	}
	p.text.add(title, name)
	p.text.add(heading, p.say(aboutPart))
	for _, about := range []struct {
		name phrase
		tell func()
	}{{aboutTime, p.tellTime}, {aboutInstrument, p.tellInstrument}, {aboutStrokes, p.tellStrokes}, {aboutForm, p.tellForm}} {
		p.text.add(subheading, p.say(about.name))
		about.tell()
	}
	p.gatherChords()
	p.tellChords()
	p.tellBars()
	return p.text
}

func (p *part) tellTime() {
	m := p.Meter
	count, unit, _ := strings.Cut(m.String(), "/")
	p.text.items(p.say(meterIs, count, unit))
	if p.Tempo != 0 {
		p.text.items(p.say(tempoIs, number(p.Tempo)))
	}
	p.text.items(p.say(beatIs, p.length(m.Beat())), p.count(countMany, int(m.Bar()/p.counter.unit)))
	if p.counter.unit != m.Beat() {
		p.text.items(p.say(countIs, p.length(p.counter.unit)))
	}
}

func (p *part) tellInstrument() {
	g := p.Instrument
	p.text.items(p.count(stringMany, int(g.Tuning.Strings())))
	if name := g.Tuning.Name(); name != "" {
		p.text.items(p.say(tuningIs, strings.ReplaceAll(name, "-", " ")))
	}
	for s := g.Tuning.Strings(); s >= 1; s-- {
		open := g.Tuning.Open(s)
		p.text.items(p.say(openString, place(s), p.note(open.Note), number(int(open.Octave))))
	}
	capo := p.say(noCapo)
	if g.Capo > 0 {
		capo = p.say(capoAt, number(int(g.Capo)))
	}
	p.text.items(capo, p.say(rightHand+phrase(g.Hand)))
}

func place(s fretboard.StringNumber) string { return strconv.Itoa(int(s)) }

// tellStrokes says what the words of the bars mean, those that occur.
func (p *part) tellStrokes() {
	last := p.Instrument.Tuning.Strings()
	switch {
	case last == 1:
		p.text.items(p.say(downFloor))
	case p.Instrument.Hand.Toward() < 0:
		p.text.items(p.say(downToward, place(1), place(last)))
	default:
		p.text.items(p.say(downToward, place(last), place(1)))
	}
	if last > 1 {
		p.text.items(p.say(onBack, place(last)))
	}
	p.text.items(p.say(towardNext+phrase(p.Strokes)), p.say(byContour+phrase(p.Fit)), p.say(ringOn), p.say(holdIs))
	if len(p.silences) > 0 {
		p.text.items(p.say(restIs))
	}
	var turns, crosses, returns, owns bool
	for _, pick := range p.Picks() {
		turns = turns || pick.Why == picking.Turnaround
		owns = owns || pick.Why == picking.OwnStroke
		crosses = crosses || pick.Crossing == picking.InsideCrossing
		returns = returns || pick.Crossing == picking.ReturnCrossing
	}
	p.explain(turns, turnIs)
	p.explain(crosses, insideIs)
	p.explain(returns, returnIs)
	p.explain(owns, ownIs)
}

func (p *part) explain(occurs bool, meaning phrase) {
	if occurs {
		p.text.items(p.say(meaning))
	}
}

// tellForm says how the bars follow each other, how far the pick travels and
// what else is to be said of the whole.
func (p *part) tellForm() {
	p.text.items(p.count(barMany, len(p.Bars)))
	if p.Loop && len(p.Bars) > 0 {
		p.text.items(p.say(formLoop, number(p.Bars[0].Number)))
	} else {
		p.text.items(p.say(formOnce))
	}
	rings := false
	first, last := picking.Pick{}, picking.Pick{}
	for i, pick := range p.Picks() {
		if i == 0 {
			first = pick
		}
		last, rings = pick, rings || pick.At+pick.Rings > p.Length()
	}
	p.explain(rings && !p.Loop, formRings)
	if last.Why == picking.RoundLoop {
		p.text.items(p.say(loopStroke, place(first.String)))
	}
	p.tellRepeats()
	if first.Length > 0 {
		p.text.items(p.count(travelMany, p.Travel), p.say(travelIs, number(int(math.Round(float64(p.TravelLength()))))))
		p.explain(p.Loop, travelLoop)
	}
	for _, text := range p.Remarks {
		p.text.items(capital(p.spell(text)) + ".")
	}
}
