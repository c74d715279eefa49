package picking

// SecondPlaying returns how many bars the second playing of a repeat has that
// begins at p.Bars[i], or 0 if none begins there. The first playing is as many
// bars before it; the two may differ, since strokes and shapes look at what
// follows.
func (p Passage) SecondPlaying(i int) int {
	n := 0
	for i+n < len(p.Bars) && p.Bars[i+n].Pass == 2 && p.Bars[i+n].Written == p.Bars[i].Written+n {
		n++
	}
	if n > i {
		return 0
	}
	for k := range n {
		if first := p.Bars[i-n+k]; first.Pass == 2 || first.Written != p.Bars[i+k].Written {
			return 0
		}
	}
	return n
}

// ManyFigures reports whether chords of p are played with different figures.
func (p Passage) ManyFigures() bool {
	first := 0
	for _, bar := range p.Bars {
		for _, chord := range bar.Chords {
			if first == 0 {
				first = chord.Figure
			}
			if chord.Figure != 0 && chord.Figure != first {
				return true
			}
		}
	}
	return false
}
