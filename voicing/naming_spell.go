package voicing

import "weft.example/fretboard"

// chord makes the chord of a rated name, spelled for key.
func (h heard) chord(r rated, key Key) Chord {
	c := Chord{formula: r.idiom.formula}
	c.root = spellRoot(c.formula, r.root, h.bass, key)
	if r.root == h.bass || !h.deep {
		return c
	}
	c.bass, c.slash = spellBass(c, r.idiom, h.bass, key), true
	return c
}

// spellRoot names the root p of a chord with formula f. If all else is equal,
// it avoids the letter of the bass: Db5/C, not C#5/C.
func spellRoot(f formula, p, bass fretboard.PitchClass, key Key) fretboard.Note {
	if n, ok := key.spell(p); ok {
		return n
	}
	if n, ok := natural(p); ok {
		return n
	}
	flat, sharp := blackKey(p)
	a, b := strangers(f, flat, key), strangers(f, sharp, key)
	if a == b {
		a, b = accidentals(f, flat), accidentals(f, sharp)
	}
	over := above(bass, p)
	switch {
	case a < b, a == b && over == 1:
		return flat
	case a > b, over == 11:
		return sharp
	case usuallyFlat(p):
		return flat
	}
	return sharp
}

// spellBass names a bass p other than the root of c: as the chord does, but
// Baug/G and not Baug/F##, Eaug/C and not Eaug/B#.
func spellBass(c Chord, d *idiom, p fretboard.PitchClass, key Key) fretboard.Note {
	n, ok := c.Spell(p)
	if !ok || d.symmetric || abs(int(n.Accidental)) > 1 {
		return foreign(c.root, p, key)
	}
	return n
}

func natural(p fretboard.PitchClass) (fretboard.Note, bool) {
	for letter := fretboard.C; letter <= fretboard.B; letter++ {
		if n := (fretboard.Note{Letter: letter}); n.Class() == p {
			return n, true
		}
	}
	return fretboard.Note{}, false
}

// blackKey names a pitch class between two naturals.
func blackKey(p fretboard.PitchClass) (flat, sharp fretboard.Note) {
	flat, _ = natural((p + 1) % 12)
	sharp, _ = natural((p + 11) % 12)
	flat.Accidental, sharp.Accidental = -1, 1
	return flat, sharp
}

// usuallyFlat reports whether a black key is Eb, Ab or Bb, which need fewer
// accidentals in their keys than D#, G# and A#.
func usuallyFlat(p fretboard.PitchClass) bool { return p == 3 || p == 8 || p == 10 }

// strangers counts the tones of f on n that key does not spell as the chord
// does; none without a key.
func strangers(f formula, n fretboard.Note, key Key) (count int) {
	if key.mode == noMode {
		return 0
	}
	for _, m := range f.all() {
		if !key.has(n.Up(m.interval())) {
			count++
		}
	}
	return count
}

// accidentals counts the sharps and flats in f on n, a double one as two.
func accidentals(f formula, n fretboard.Note) (count int) {
	for _, m := range f.all() {
		count += abs(int(n.Up(m.interval()).Accidental))
	}
	return count
}

func abs(n int) int { return max(n, -n) }

// foreign names p, which is no tone of a chord on root: as the key does, or
// without an accidental, or as a degree above the root.
func foreign(root fretboard.Note, p fretboard.PitchClass, key Key) fretboard.Note {
	if n, ok := key.spell(p); ok {
		return n
	}
	if n, ok := natural(p); ok {
		return n
	}
	semitones := int(above(root.Class(), p))
	return transpose(root, fretboard.Interval{Letters: foreignLetters[semitones], Semitones: semitones})
}

// spell names p as the first name does, the slash bass before all, or without
// names as a root.
func (r Reading) spell(p fretboard.PitchClass, key Key) fretboard.Note {
	if len(r.Names) == 0 {
		return spellRoot(root, p, p, key)
	}
	c := r.Names[0].Chord
	if bass, _ := c.Bass(); bass.Class() == p {
		return bass
	}
	if n, ok := c.Spell(p); ok {
		return n
	}
	return foreign(c.Root(), p, key)
}
