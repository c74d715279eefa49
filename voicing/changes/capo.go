package changes

import (
	"slices"
	"strconv"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// MaxCapo is the highest fret at which [Capos] sets the capo: behind it an
// octave of the usual neck is left, and above it little sounds but the treble.
const MaxCapo fretboard.Fret = 9

// A Capo is a way of playing a song with the capo at one fret.
type Capo struct {
	Fret     fretboard.Fret  // 0 is none
	Chords   []voicing.Chord // what the shapes are called behind the capo
	Sounding []voicing.Chord // what they sound: the chords of the song
	Path     Path            // the easiest with these shapes
	// Cost is what the ranking goes by, in hundredths of a point: what the hand
	// feels of the path's shapes (the terms Stretch, Position, Fingers, Spread,
	// Splay, Barre and Thin), half the changes, and the price of the capo.
	Cost int
}

// The price of the capo: something for putting it on, and a point for each 2 mm
// from the nut, at every chord. A hand moves out once for the whole song, which
// costs less than a shape far out; and the higher the capo, the less of the bass
// is left. It puts those capos first that accompanists choose (common practice):
// for Bb, Eb and F at fret 3 or 1, for G, C and D none.
const (
	capoPrice   = 30
	capoDivisor = 2
)

// Capos lists the frets for the capo, none to [MaxCapo], by how easily chords
// lie behind it in the same sounding key, the easiest first (see [Capo]); of two
// that cost the same, the one with the lower path total and then the lower fret. All chords are
// transposed down by one interval, whose letters are chosen for the fewest
// accidentals in all their tones. A fret that is not on the neck, or behind
// which some chord has no playable shape, is left out.
//
// The capo of g must be 0. Options.Voicing.High, which counts from the capo,
// ends where the neck does. The error is an [fretboard.ImpossibleError] if no
// fret is left, the one that [Easiest] gives without a capo.
//
// It takes the time of [Easiest] for each fret.
func Capos(g fretboard.Instrument, chords []voicing.Chord, o Options) ([]Capo, error) {
	if g.Capo != 0 {
		text := strconv.Itoa(int(g.Capo))
		return nil, &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "capo", Source: text, Length: len(text),
			Reason: "the fret for the capo is to be found", Mend: "name the chords that sound, and no capo"}}
	}
	g, err := g.Normal()
	if err != nil {
		return nil, err
	}
	bare, err := behind(g, chords, o)
	if err != nil && !ofChords(err) {
		return nil, err
	}
	var all []Capo
	if err == nil {
		all = append(all, bare)
	}
	for g.Capo = 1; g.Capo <= min(MaxCapo, g.Frets-1); g.Capo++ {
		if capo, err := behind(g, chords, o); err == nil {
			all = append(all, capo)
		}
		for i := len(all) - 1; i > 0 && all[i].easier(all[i-1]); i-- {
			all[i-1], all[i] = all[i], all[i-1]
		}
	}
	if all == nil {
		return nil, err
	}
	return all, nil
}

// easier reports whether c comes before d.
func (c Capo) easier(d Capo) bool {
	return c.Cost < d.Cost || c.Cost == d.Cost && c.Path.Total < d.Path.Total
}

// ofChords reports whether an error of Easiest speaks of the chords, and not of
// the instrument or the options.
func ofChords(err error) bool {
	located, ok := err.(*fretboard.ImpossibleError)
	return ok && located.Notation == chordsNotation
}

// behind returns the way of playing chords behind the capo of g.
func behind(g fretboard.Instrument, chords []voicing.Chord, o Options) (Capo, error) {
	capo := Capo{Fret: g.Capo, Sounding: slices.Clone(chords), Chords: transposed(chords, down(chords, g.Capo))}
	if g.Capo > 0 {
		o.Voicing.High = min(o.Voicing.High, g.Reach())
	}
	steps := make([]Step, len(chords))
	for i, chord := range capo.Chords {
		steps[i] = Step{Chord: chord}
	}
	var err error
	if capo.Path, err = Easiest(g, steps, o); err != nil {
		return Capo{}, err
	}
	capo.Cost = capo.Path.ease(o.Voicing.Weights) + priceCapo(g, capo.Path)
	return capo, nil
}

// ease adds up what the hand feels of a path. What the shapes lack in sound they
// lack behind every capo: D sounds on four strings wherever it is held.
func (p Path) ease(w voicing.Weights) int {
	total := 0
	for _, grip := range p.Grips {
		if grip != (Grip{}) {
			total += felt(grip.Voicing.CostWith(grip.Fingering), w)
		}
	}
	for _, c := range p.Changes {
		total += changeShare * c.Cost.Total()
	}
	return total
}

// priceCapo prices the capo of g for a path.
func priceCapo(g fretboard.Instrument, p Path) int {
	if g.Capo == 0 {
		return 0
	}
	chords := 0
	for _, grip := range p.Grips {
		if grip != (Grip{}) {
			chords++
		}
	}
	return 100*capoPrice + chords*10*tenths(fretboard.Span(g.Scale, 0, g.Capo))/capoDivisor
}

// letters lists by how many letters chords go down for so many semitones, the
// usual interval first: a minor second before an augmented unison, a fourth
// before a third; of a tritone the diminished fifth.
var letters = [...][]int{{0}, {1, 0}, {1, 2}, {2, 1}, {2, 3}, {3, 2}, {4, 3}, {4, 5}, {5, 4}, {5, 6}}

// down returns the interval by which chords go down behind a capo, spelled for
// the fewest accidentals.
func down(chords []voicing.Chord, capo fretboard.Fret) (best fretboard.Interval) {
	fewest := -1
	for _, n := range letters[capo] {
		i := fretboard.Interval{Letters: -n, Semitones: -int(capo)}
		if signs := accidentals(transposed(chords, i)); fewest < 0 || signs < fewest {
			best, fewest = i, signs
		}
	}
	return best
}

func transposed(chords []voicing.Chord, i fretboard.Interval) []voicing.Chord {
	all := make([]voicing.Chord, len(chords))
	for at, chord := range chords {
		all[at] = chord.Transpose(i)
	}
	return all
}

// accidentals counts the sharps and flats in all tones and slash basses.
func accidentals(chords []voicing.Chord) int {
	signs := 0
	count := func(n fretboard.Note) { signs += int(max(n.Accidental, -n.Accidental)) }
	for _, chord := range chords {
		for _, tone := range chord.Tones() {
			count(tone.Note)
		}
		if bass, slash := chord.Bass(); slash {
			count(bass)
		}
	}
	return signs
}

// String prints the fret and both names of the chords: capo 3: G C D (sounds
// Bb Eb F).
func (c Capo) String() string {
	if c.Fret == 0 {
		return "no capo: " + list(c.Chords)
	}
	return "capo " + digits(c.Fret) + ": " + list(c.Chords) + " (sounds " + list(c.Sounding) + ")"
}

func list(chords []voicing.Chord) string {
	text := ""
	for i, chord := range chords {
		if i > 0 {
			text += " "
		}
		text += chord.String()
	}
	return text
}
