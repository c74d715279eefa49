package voicing

// needs say what a voicing must sound: each class of all, and of each set of
// any at least one. No class is in two of them, so that each takes a string of
// its own.
type needs struct {
	all ClassSet
	any []ClassSet
}

// needsOf returns what a voicing of c must sound: each essential tone, of the
// tones of one degree that may replace each other at least one, and the slash
// bass.
func needsOf(c Chord) needs {
	var n needs
	degree := 0
	for _, tone := range c.Tones() {
		class := ClassSet(0).With(tone.Note.Class())
		switch {
		case tone.Need == Essential:
			n.all |= class
		case tone.Need == Either && tone.Degree == degree:
			n.any[len(n.any)-1] |= class
		case tone.Need == Either:
			n.any = append(n.any, class)
			degree = tone.Degree
		}
	}
	if bass, slash := c.Bass(); slash {
		n.add(ClassSet(0).With(bass.Class()))
	}
	return n
}

// add puts a class among those that must sound; it answers for the set that it
// is in.
func (n *needs) add(class ClassSet) {
	n.all |= class
	rest := n.any[:0]
	for _, set := range n.any {
		if set&class == 0 {
			rest = append(rest, set)
		}
	}
	n.any = rest
}

// unmet counts what of n does not sound.
func (n *needs) unmet(sounded ClassSet) int {
	missing := (n.all &^ sounded).Len()
	for _, set := range n.any {
		if set&sounded == 0 {
			missing++
		}
	}
	return missing
}

// within reports whether all that is unmet lies among can.
func (n *needs) within(sounded, can ClassSet) bool {
	if n.all&^(sounded|can) != 0 {
		return false
	}
	for _, set := range n.any {
		if set&(sounded|can) == 0 {
			return false
		}
	}
	return true
}

// character returns what a voicing of c must sound where it cannot sound all of
// its needs: the root, the third or what is suspended in its place, and the
// sixth or seventh. It returns the needs themselves where no such tone is
// essential, since too little would be left.
func character(c Chord) needs {
	var core needs
	tones := c.Tones()
	third := false
	for _, tone := range tones {
		third = third || tone.Degree == 3
	}
	stands := false
	for _, tone := range tones {
		if tone.Need != Essential {
			continue
		}
		inPlace := tone.Degree == 3 || !third && (tone.Degree == 2 || tone.Degree == 4)
		stands = stands || inPlace
		if inPlace || tone.Degree == 1 || tone.Degree == 6 || tone.Degree == 7 {
			core.all = core.all.With(tone.Note.Class())
		}
	}
	if !stands {
		return needsOf(c)
	}
	return core
}
