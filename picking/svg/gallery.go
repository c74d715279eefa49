package svg

// gallery makes the blocks of all chord boxes, in rows at even distances, each
// under its chord's name.
func (s *sheet) gallery() (blocks []block) {
	names := s.galleryNames()
	widest, gap, room := 0, s.scale.dot/4, s.format.column()
	for _, n := range names {
		widest = max(widest, n.width)
	}
	perRow := max(1, (room+gap)/(widest+gap))
	for i := range names {
		names[i].x = margin + i%perRow*(room/perRow)
	}
	for len(names) > 0 {
		n := min(perRow, len(names))
		blocks = append(blocks, s.galleryRow(names[:n]))
		names = names[n:]
	}
	return blocks
}

// galleryNames lists each voicing once, in the order of playing.
func (s *sheet) galleryNames() (names []name) {
	for i, bar := range s.Bars {
		for k, chord := range bar.Chords {
			if s.novelty[i][k] < first {
				continue
			}
			n := name{chord: chord.Chord.ChartIn(s.spelling), box: s.boxOf(chord.Voicing)}
			n.width = max(s.scale.chord.room(n.chord), n.box.width)
			names = append(names, n)
		}
	}
	return names
}

func (s *sheet) galleryRow(row []name) block {
	c := &s.scale
	tallest := 0
	for _, n := range row {
		tallest = max(tallest, n.box.height)
		s.signs.noteBox(n.box)
	}
	return block{height: c.chord.height() + tallest, gap: c.thick(800), draw: func(p *pen, y int) {
		for _, n := range row {
			p.text("chord-box", c.chord, n.x, y+c.chord.up(), start, black, n.chord)
			n.box.draw(s, p, n.x, y+c.chord.height())
		}
	}}
}
