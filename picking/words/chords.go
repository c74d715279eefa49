package words

import (
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// A chord is one that the passage holds in one shape, with all that is said of
// it.
type chord struct {
	held    picking.HeldChord // the first
	label   string
	ways    []way
	bars    []int // in which it is held
	remarks []remark
}

// A way is a figure as it runs on a chord.
type way struct {
	figure int
	fit    picking.Fit
}

// A remark is something said of a chord in some of its bars.
type remark struct {
	text string
	bars []int
}

func sameHold(a, b picking.HeldChord) bool {
	return a.Chord == b.Chord && a.Voicing.Shape() == b.Voicing.Shape()
}

// find returns the chord that is held, or nil.
func (p *part) find(held picking.HeldChord) *chord {
	for _, c := range p.chords {
		if sameHold(c.held, held) {
			return c
		}
	}
	return nil
}

// label names a chord as its heading does.
func (p *part) label(held picking.HeldChord) string {
	if c := p.find(held); c != nil {
		return c.label
	}
	return held.Chord.Words()
}

// gatherChords collects the chords in the order in which they come.
func (p *part) gatherChords() {
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			if held.Chord.Silent() {
				continue
			}
			c := p.find(held)
			if c == nil {
				c = &chord{held: held}
				p.chords = append(p.chords, c)
			}
			p.gather(c, held, bar.Number)
		}
	}
	p.labelChords()
}

// labelChords names the chords; those held in several shapes get a number.
func (p *part) labelChords() {
	shapes, seen := map[voicing.Chord]int{}, map[voicing.Chord]int{}
	for _, c := range p.chords {
		shapes[c.held.Chord]++
	}
	for _, c := range p.chords {
		seen[c.held.Chord]++
		c.label = c.held.Chord.Words()
		if shapes[c.held.Chord] > 1 {
			c.label = p.say(shapeNumber, c.label, number(seen[c.held.Chord]))
		}
	}
}

// gather adds what is said of a chord in one bar.
func (p *part) gather(c *chord, held picking.HeldChord, bar int) {
	c.bars = with(c.bars, bar)
	known := false
	for _, w := range c.ways {
		known = known || w.figure == held.Figure
	}
	if !known && len(held.Fit.Strings) > 0 {
		c.ways = append(c.ways, way{held.Figure, held.Fit})
	}
	for _, loss := range held.Fit.Losses {
		c.remark(p.tellLoss(held.Figure, loss), bar)
	}
	for _, text := range held.Remarks {
		c.remark(p.spell(text), bar)
	}
}

func (c *chord) remark(text string, bar int) {
	for i := range c.remarks {
		if r := &c.remarks[i]; r.text == text {
			r.bars = with(r.bars, bar)
			return
		}
	}
	c.remarks = append(c.remarks, remark{text, []int{bar}})
}

// with adds a number to a list that rises.
func with(list []int, n int) []int {
	if len(list) > 0 && list[len(list)-1] == n {
		return list
	}
	return append(list, n)
}

func (p *part) tellChords() {
	if len(p.chords) > 0 {
		p.text.add(heading, p.say(theChords))
	}
	told := map[string]string{} // the label of the chord on which a figure's way is told
	for _, c := range p.chords {
		p.text.add(subheading, capital(c.label))
		p.tellShape(c)
		first := p.say(oneBar, number(c.bars[0]))
		p.text = append(p.text, block{kind: item, text: p.say(firstIn, first), link: link{first, c.bars[0]}})
		for _, w := range c.ways {
			p.tellWay(c, w, told)
		}
		for _, r := range c.remarks {
			text := capital(r.text) + "."
			if len(r.bars) != len(c.bars) {
				text = p.say(inBars, capital(p.bars(r.bars)), r.text)
			}
			p.text.items(text)
		}
	}
}

// tellShape reads the shape string by string and says where to start.
func (p *part) tellShape(c *chord) {
	v := c.held.Voicing
	if v.Shape().Strings() == 0 {
		return
	}
	if p.Instrument.Capo > 0 {
		p.text.items(p.say(soundsAs, c.held.Sounds.Words()))
	}
	skip := 1 // the chord, which is the heading, and the capo, said once
	if v.Instrument().Capo > 0 {
		skip = 2
	}
	for _, text := range box.Of(v).Words()[skip:] {
		p.text.items(p.spell(text))
	}
	switch start := v.Start(); start.Reason {
	case voicing.RootTone:
		p.text.items(p.say(carriesRoot, place(start.String), p.note(v.Chord().Root())))
	case voicing.SlashBass:
		bass, _ := v.Chord().Bass()
		p.text.items(p.say(carriesSlash, place(start.String), p.note(bass)))
	default:
		p.text.items(p.say(soundsLowest, place(start.String)))
	}
}

// tellWay tells how a figure runs on a chord, or names the chord before on
// which it runs alike.
func (p *part) tellWay(c *chord, w way, told map[string]string) {
	text := p.run(w.fit.Strings, c.held.Voicing.Start().String)
	whole, as := wayIs, wayAs
	if p.figures {
		whole, as = figureWayIs, figureWayAs
	}
	key := number(w.figure) + text
	if before, known := told[key]; known {
		p.text.items(p.say(as, before, number(w.figure)))
		return
	}
	told[key] = c.label
	p.text.items(p.say(whole, text, number(w.figure)))
}

// tellLoss says where the figure does not keep its way on a chord.
func (p *part) tellLoss(figure int, l picking.Loss) string {
	name := p.say(theFigure)
	if p.figures {
		name = p.say(figureNumber, number(figure))
	}
	from := stepFrom
	if l.To <= l.From {
		from = stepRound
	}
	return p.say(lossIs, p.say(from, number(l.From), number(l.To)), name, p.direction(l.Want), p.direction(l.Got))
}

func (p *part) direction(d picking.Direction) string {
	switch d {
	case picking.Up:
		return p.say(goesOn)
	case picking.Down:
		return p.say(goesBack)
	}
	return p.say(stays)
}
