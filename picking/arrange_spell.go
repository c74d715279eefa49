package picking

import (
	"weft.example/fretboard"
	"weft.example/voicing"
)

// chromatic is how tones foreign to a chord are spelled from its root, by the
// intervals of its scale and the commonest alterations between them.
var chromatic = [12]fretboard.Interval{
	{Letters: 0, Semitones: 0}, {Letters: 1, Semitones: 1}, {Letters: 1, Semitones: 2}, {Letters: 2, Semitones: 3},
	{Letters: 2, Semitones: 4}, {Letters: 3, Semitones: 5}, {Letters: 3, Semitones: 6}, {Letters: 4, Semitones: 7},
	{Letters: 5, Semitones: 8}, {Letters: 5, Semitones: 9}, {Letters: 6, Semitones: 10}, {Letters: 6, Semitones: 11},
}

// spell names a pitch with the spelling of the chord, moved by the capo.
func spell(chord voicing.Chord, by fretboard.Interval, p fretboard.Pitch) fretboard.PitchName {
	sounds := chord.Transpose(by)
	note, member := sounds.Spell(p.Class())
	if !member {
		above := (int(p.Class()) - int(sounds.Root().Class()) + 12) % 12
		note = sounds.Root().Up(chromatic[above])
	}
	return p.Spell(note)
}

// capoInterval returns the interval from the chords' names to how they sound
// with a capo: the spelling of that many semitones that is the easiest to read,
// flats rather than sharps where both are as easy. By whole octaves, and
// without a capo, names stay as they are.
func capoInterval(capo fretboard.Fret, chords []voicing.Chord) fretboard.Interval {
	octaves, rest := int(capo)/12, int(capo)%12
	best, fewest := fretboard.Interval{}, -1
	for letters := 6; letters >= 0 && rest > 0; letters-- {
		by := fretboard.Interval{Letters: letters, Semitones: rest}
		if n := unease(chords, by); fewest < 0 || n < fewest {
			best, fewest = by, n
		}
	}
	best.Letters += 7 * octaves
	best.Semitones += 12 * octaves
	return best
}

// unease adds up the accidentals of every tone and bass, each squared, so that
// one double is worse than three single ones.
func unease(chords []voicing.Chord, by fretboard.Interval) (sum int) {
	for _, c := range chords {
		for _, tone := range c.Tones() {
			sum += squared(tone.Note.Up(by).Accidental)
		}
		if bass, slash := c.Bass(); slash {
			sum += squared(bass.Up(by).Accidental)
		}
	}
	return sum
}

func squared(a int8) int { return int(a) * int(a) }
