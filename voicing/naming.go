package voicing

import "weft.example/fretboard"

// A Reading is what a shape sounds and the chords that it may be.
type Reading struct {
	// Notes holds what each string sounds, the lowest first, without the capo,
	// spelled as the first name spells it.
	Notes []fretboard.PitchName
	// Names ranks the chord names, the best first: by Confidence, then by points
	// as [Names] rates them. It holds those with the fewest points, at most eight
	// and none more than 60 behind the first, and is empty only where a single
	// pitch class sounds, which is no chord.
	Names []Name
}

// A Name is one chord that a shape may be.
type Name struct {
	Chord      Chord
	Confidence Confidence
	Missing    []Tone           // tones of Chord that do not sound, in rising degree
	Added      []fretboard.Note // what sounds and is not in Chord, in rising order above its root
}

// Names names what shape sounds on instrument g, without the capo, as shapes
// are named. The zero Key will do where none is known. The errors are those of
// [New].
//
// Every root is tried with every chord that players use, and rated in points;
// the fewest are best. What is rated how is common practice:
//
//   - Rarity: 0 for a major or minor chord, 10 for 7, m7, maj7 and 5, 20 for 6,
//     9, sus4, dim, aug and the like, 30 for such as 13 or 7b9, 40 for such as
//     9#11, 50 for such as 7b5b9, 80 for what is seldom written, such as m#5.
//   - Bass: 0 for the root. Any other makes a slash chord: 30 for the third, or
//     what is in its place, and for the fifth; 40 for the seventh; 50 for another
//     tone or a note foreign to the chord, and 30 more if a foreign one sounds
//     higher up too. In aug and dim7 any tone may be the root: 10. On a
//     re-entrant tuning, and where no string is below G3, no lowest note is heard
//     as a bass: 15 for one that is not the root, and no slash.
//   - Missing: 60 for each essential tone (see [Need]); 15 for an optional one,
//     30 in a slash chord, where the fifth tells which chord is over the bass;
//     but 5 for a 9th or 11th, and for one of b5 and #5 or of b9 and #9 in 7alt.
//   - Added: 70 for each note that the name does not cover.
//   - Key: 25 less for a chord on the tonic, 15 less on the fifth degree, 10
//     less on the fourth; but for one with a minor third and b5 20 less on the
//     leading tone instead; 15 more for a root outside the scale.
//
// So an inversion of a common chord goes before a rare chord on the bass. Of
// names with as many points, the one with fewer tones missing or added goes
// first, then the one with its root in the bass, then the commoner chord, then
// the one with its root the nearer above the bass. The name with the fewest
// points is the first; the others are then put in order of their [Confidence],
// so that a whole name goes before one that lacks an essential tone.
//
// Roots of the key's scale are spelled as the key spells them. Of others, a
// white key of the piano is a natural, and a black one takes the name that
// gives the chord fewer notes foreign to the key, then fewer accidentals, then
// a letter other than the bass's, then the usual one of C# Eb F# Ab Bb.
//
// Some 1200 names are rated, which takes some ten microseconds.
func Names(g fretboard.Instrument, shape Shape, key Key) (Reading, error) {
	g, err := g.Normal()
	if err != nil {
		return Reading{}, err
	}
	if err := fits(g, shape); err != nil {
		return Reading{}, err
	}
	h := listen(g, shape)
	r := Reading{Names: h.names(key), Notes: make([]fretboard.PitchName, len(h.pitches))}
	for i, p := range h.pitches {
		r.Notes[i] = p.Spell(r.spell(p.Class(), key))
	}
	return r, nil
}

// heard is what sounds, ready for naming.
type heard struct {
	pitches []fretboard.Pitch // lowest first
	classes ClassSet
	bass    fretboard.PitchClass
	again   bool // the bass sounds higher up too, above another note
	deep    bool // the lowest note is heard as a bass
}

func listen(g fretboard.Instrument, shape Shape) heard {
	h := heard{pitches: make([]fretboard.Pitch, 0, fretboard.MaxStrings), deep: hearsBass(g.Tuning)}
	sounds := func(s fretboard.StringNumber) fretboard.Pitch {
		f, _ := shape.Fret(s)
		return g.Tuning.Open(s).Pitch().Up(f)
	}
	for _, s := range fretboard.LowestFirst(shape.Sounding(), sounds) {
		h.pitches = append(h.pitches, sounds(s))
	}
	h.bass = h.pitches[0].Class()
	for _, p := range h.pitches {
		h.again = h.again || p.Class() == h.bass && h.classes.Len() > 1
		h.classes = h.classes.With(p.Class())
	}
	return h
}

// names makes the ranked names.
func (h heard) names(key Key) []Name {
	if h.classes.Len() == 1 {
		return nil
	}
	ranked := h.rank(key)
	names := make([]Name, len(ranked))
	for i, r := range ranked {
		names[i] = Name{Chord: h.chord(r, key), Confidence: r.confidence}
		names[i].gaps(h.classes, key)
	}
	return names
}

// gaps fills in what is missing and what is added.
func (n *Name) gaps(sounding ClassSet, key Key) {
	if n.Chord.Classes()&^sounding != 0 {
		for _, tone := range n.Chord.Tones() {
			if !sounding.Has(tone.Note.Class()) {
				n.Missing = append(n.Missing, tone)
			}
		}
	}
	added := sounding &^ n.Chord.Classes()
	root := n.Chord.Root()
	for p := root.Class(); added != 0; p = (p + 1) % 12 {
		if added.Has(p) {
			n.Added = append(n.Added, foreign(root, p, key))
			added &^= ClassSet(0).With(p)
		}
	}
}

// String prints n with what is missing and added, such as C9 without G or
// F5/C with Gb added.
func (n Name) String() string {
	text := n.Chord.String()
	before := " without "
	for _, tone := range n.Missing {
		text += before + tone.Note.String()
		before = ", "
	}
	before = " with "
	for _, note := range n.Added {
		text += before + note.String()
		before = ", "
	}
	if len(n.Added) > 0 {
		text += " added"
	}
	return text
}

// String prints what sounds and the first name: C, E, G: C. It says where that
// is no more than possible: a major third, C and E: possibly C without G.
func (r Reading) String() string {
	text := r.Plain()
	if len(r.Names) == 0 {
		return text
	}
	text += ": "
	if r.Names[0].Confidence <= Possible {
		text += "possibly "
	}
	return text + r.Names[0].String()
}
