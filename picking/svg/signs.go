package svg

import "weft.example/picking"

// signs records what occurs on the sheet, for the legend to explain.
type signs struct {
	down, up, rest, rings, inside      bool
	muted, open, finger, barre, unheld bool
	nut, higher, skips, start          bool
	repeat, more                       bool
	parts                              [5]bool // a beat is counted in so many words
	between                            bool    // something happens between the words
}

func (g *signs) noteSystem(s *sheet, line *system) {
	for i := range line.stretches {
		t := &line.stretches[i]
		g.more = g.more || t.more()
		g.repeat = g.repeat || t.opens
		words := 0
		for k := range t.columns {
			c := &t.columns[k]
			g.rest = g.rest || c.rest
			if c.pick != none {
				g.notePick(s.picks[c.pick])
			}
			switch {
			case c.word == "":
				g.between = true
			case c.word[0] >= '1' && c.word[0] <= '9':
				g.parts[words], words = true, 1
			default:
				words++
			}
		}
		g.parts[words] = true
		for _, n := range t.names {
			if n.box != nil {
				g.noteBox(n.box)
			}
		}
	}
}

func (g *signs) notePick(p picking.Pick) {
	g.down = g.down || p.Stroke == picking.DownStroke
	g.up = g.up || p.Stroke == picking.UpStroke
	g.inside = g.inside || knots(p)
	g.rings = g.rings || p.Rings > 0
}

func (g *signs) noteBox(d *boxDrawing) {
	g.barre = g.barre || len(d.Barres()) > 0
	g.unheld = g.unheld || d.Unheld() != nil
	g.nut = g.nut || d.first == 1
	for _, r := range d.rows {
		g.higher = g.higher || r.marked
		g.skips = g.skips || r.skips
	}
	for _, c := range d.columns {
		g.muted = g.muted || c.Muted
		g.open = g.open || !c.Muted && c.Fret == 0
		g.finger = g.finger || c.Finger > 0
		g.start = g.start || c.Start
	}
}
