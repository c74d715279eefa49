package svg

import (
	"weft.example/picking"
	"weft.example/voicing"
)

// An entry explains a sign. draw draws it with its middle at x, y.
type entry struct {
	draw func(p *pen, x, y int)
	text string
}

// legend makes the blocks that explain the signs that occur.
func (s *sheet) legend() (blocks []block) {
	if len(s.Bars) == 0 {
		return nil
	}
	entries := append(s.boxEntries(), s.tabEntries()...)
	entries = append(entries, s.threadEntries()...)
	blocks = append(blocks, s.subtitle("The signs"))
	for _, e := range entries {
		blocks = append(blocks, s.entryBlocks(e)...)
	}
	return s.together(blocks)
}

// subtitle makes the block of a heading in bold.
func (s *sheet) subtitle(text string) block {
	f := face{s.scale.body.size, true}
	return block{height: f.leading(), gap: s.scale.thick(1200), keep: true, draw: func(p *pen, y int) {
		p.text("subtitle", f, margin, y+f.size, start, black, text)
	}}
}

// signWidth is the room for a sign of the legend.
func (s *sheet) signWidth() int { return s.scale.body.size * 3 }

// entryBlocks makes the blocks of an entry, a line each.
func (s *sheet) entryBlocks(e entry) []block {
	f := s.scale.body
	lines := s.paragraph("legend", e.text, s.signWidth())
	return signed(lines, f.size*10/100, func(p *pen, y int) {
		p.decoration("sign")
		e.draw(p, margin+s.signWidth()*45/100, y+f.size-f.middle())
		p.close()
	})
}

// signed draws a sign beside the first of some lines and keeps them together.
func signed(lines []block, gap int, sign func(p *pen, y int)) []block {
	words := lines[0].draw
	lines[0].gap = gap
	for i := range len(lines) - 1 {
		lines[i].keep = true
	}
	lines[0].draw = func(p *pen, y int) {
		sign(p, y)
		words(p, y)
	}
	return lines
}

// sign makes an entry of a text that is its own sign.
func (s *sheet) sign(f face, sign, text string) entry {
	return entry{func(p *pen, x, y int) { p.text("sample", f, x, y+f.middle(), middle, black, sign) }, text}
}

func (s *sheet) boxEntries() (entries []entry) {
	c, g := &s.scale, &s.signs
	add := func(occurs bool, text string, draw func(p *pen, x, y int)) {
		if occurs {
			entries = append(entries, entry{draw, text})
		}
	}
	add(g.finger, "a finger on the neck: 1 index, 2 middle, 3 ring, 4 little", func(p *pen, x, y int) {
		p.circle("dot", x, y, c.dot/2, 0)
		p.text("finger", c.finger, x, y+c.finger.middle(), middle, white, "1")
	})
	add(g.barre, "one finger across several strings", func(p *pen, x, y int) {
		half := c.dot * 65 / 100
		p.line("barre", x-half, y, x+half, y, c.dot/2)
		p.circle("dot", x-half, y, c.dot/2, 0)
		p.circle("dot", x+half, y, c.dot/2, 0)
	})
	add(g.unheld, "stopped, in a shape that four fingers cannot hold", func(p *pen, x, y int) { p.circle("dot", x, y, c.dot/2, 0) })
	add(g.open, "open", func(p *pen, x, y int) { p.circle("open", x, y, c.dot*28/100, c.line*3/2) })
	add(g.muted, "does not sound", func(p *pen, x, y int) {
		arm := c.dot * 28 / 100
		p.path("muted").move(x-arm, y-arm).to(x+arm, y+arm).move(x-arm, y+arm).to(x+arm, y-arm).stroke(c.line * 3 / 2)
	})
	nut := "the nut"
	if s.Instrument.Capo > 0 {
		nut = "the capo"
	}
	add(g.nut, nut, func(p *pen, x, y int) { p.line("nut", x-c.dot, y, x+c.dot, y, c.heavy) })
	if g.higher {
		entries = append(entries, s.sign(c.small, "5", "right of a chord box: the fret of that row, counted from "+nut))
	}
	add(g.start, "the start string, which carries "+s.startWords(), func(p *pen, x, y int) { p.diamond("start", x, y, c.dot*32/100) })
	return entries
}

// startWords says what the start strings carry.
func (s *sheet) startWords() string {
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
	text := ""
	for i, c := range carries {
		if i > 0 {
			text += ", or "
		}
		text += c
	}
	return text
}

func (s *sheet) tabEntries() (entries []entry) {
	c, g := &s.scale, &s.signs
	if g.down {
		entries = append(entries, entry{func(p *pen, x, y int) { p.strokeSign(picking.DownStroke, x, y, c) }, "down-stroke, toward " + s.floor()})
	}
	if g.up {
		entries = append(entries, entry{func(p *pen, x, y int) { p.strokeSign(picking.UpStroke, x, y, c) },
			"up-stroke, toward " + s.outermost(-s.Instrument.Hand.Toward())})
	}
	if g.rest {
		entries = append(entries, entry{func(p *pen, x, y int) { p.restSign(x, y, c) }, "silence, all strings damped"})
	}
	if g.rings {
		entries = append(entries, s.sign(c.fret, "0", s.fretLegend()))
		entries = append(entries, entry{func(p *pen, x, y int) { p.line("ring", x-c.sign, y, x+c.sign, y, c.thick(130)) },
			"the string rings on, until it is plucked again or let go"})
	}
	if len(s.notes.list) > 0 {
		entries = append(entries, entry{func(p *pen, x, y int) { p.frame([]int{1}, x-c.frameWidth([]int{1})/2, y, c) }, "see the note of that number at the end"})
	}
	return append(entries, s.sign(c.count, "1", s.countLegend()))
}

func (s *sheet) fretLegend() string {
	if s.Instrument.Capo > 0 {
		return "on a string: the fret to hold, counted from the capo; 0 is open"
	}
	return "on a string: the fret to hold; 0 is open"
}

func (s *sheet) countLegend() string {
	text := "below the tab: a number counts " + article(noteWords(picking.CountAuto.Beat(s.Meter)))
	for d, words := range [5]string{2: `"1 &" is two to a number`, 3: `"1 & a" is three to a number`, 4: `"1 e & a" is four to a number`} {
		if words != "" && s.signs.parts[d] {
			text += "; " + words
		}
	}
	if s.signs.between {
		text += "; finer notes come between the words"
	}
	return text
}

func (s *sheet) threadEntries() (entries []entry) {
	if len(s.picks) == 0 {
		return nil
	}
	c, g := &s.scale, &s.signs
	top := ""
	if s.strings() > 1 {
		top = ", " + s.outermost(-s.Instrument.Hand.Toward()) + " on top"
	}
	entries = append(entries, entry{c.pluckSample, "the thread at the bottom is the way of the pick, the floor below" + top +
		": over a string it plucks it, as the arrow points; under a string it only passes"})
	if g.inside {
		entries = append(entries, entry{func(p *pen, x, y int) {
			p.path("travel").move(x-c.sign, y).to(x+c.sign, y).stroke(c.thread)
			p.knot(x, y, c)
		}, "a knot in the thread: the pick is caught, it turns back between two strings (an inside crossing) or over both"})
	}
	if g.repeat {
		entries = append(entries, s.sign(c.small, "1, 3", "a bar between repeat signs is played twice, and has both numbers"))
	}
	if g.more {
		entries = append(entries, s.sign(c.small, "(2)", "the bar goes on from the line before"))
	}
	return entries
}

// pluckSample draws a piece of the thread over a string.
func (c *scale) pluckSample(p *pen, x, y int) {
	tall, gap := c.lanePitch/2, c.lanePitch*34/100
	p.line("lane-string", x-3*gap, y, x-gap, y, c.hairline)
	p.line("lane-string", x+gap, y, x+3*gap, y, c.hairline)
	p.pluck(turn{x: x, wide: c.thick(260), pick: picking.Pick{Stroke: picking.DownStroke}}, y-tall, y, y+tall, c)
}
