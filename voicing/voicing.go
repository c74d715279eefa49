package voicing

import (
	"fmt"

	"weft.example/fretboard"
)

// A Voicing is a shape held on an instrument, with the chord it stands for.
// Make one with [New] or find one with [Find]. Voicings compare with ==.
type Voicing struct {
	instrument fretboard.Instrument
	chord      Chord
	shape      Shape
	bass, root fretboard.StringNumber
	start      Start
}

// A Start is the string on which a figure starts, and why.
type Start struct {
	String fretboard.StringNumber
	Reason Reason
}

// A Reason says why a string is the start string.
type Reason uint8

// The reasons, in the order in which they are tried.
const (
	SlashBass Reason = iota + 1 // it carries the bass that the chord names
	RootTone                    // it carries the root, the lowest to do so
	Lowest                      // the root does not sound; it sounds lowest
)

var reasonNames = [...]string{"", "slash bass", "root", "bass"}

// String returns slash bass, root or bass.
func (r Reason) String() string { return fretboard.NameOf(reasonNames[:], int(r)) }

// New returns the voicing that shape makes of chord on instrument g. The shape
// must have the instrument's strings, lie within its frets and sound at least
// one string; otherwise the error is an [fretboard.ImpossibleError] located in
// the printed shape. The chord is named as the shape is, without the capo.
func New(g fretboard.Instrument, chord Chord, shape Shape) (Voicing, error) {
	g, err := g.Normal()
	if err != nil {
		return Voicing{}, err
	}
	if err := fits(g, shape); err != nil {
		return Voicing{}, err
	}
	return hold(g, chord, shape), nil
}

// hold is [New] for a normal instrument and a shape that it can hold.
func hold(g fretboard.Instrument, chord Chord, shape Shape) Voicing {
	v := Voicing{instrument: g, chord: chord, shape: shape}
	order := v.lowestFirst()
	v.bass = order[0]
	v.root = v.lowest(order, chord.Root())
	v.start = v.findStart(order)
	return v
}

// lowestFirst lists the sounding strings in pitch order. Pitches are looked up
// once each, since a voicing is large to copy.
func (v *Voicing) lowestFirst() []fretboard.StringNumber {
	var pitches [fretboard.MaxStrings + 1]fretboard.Pitch
	for s := range v.shape.Sounding().Thinnest() {
		pitches[s] = v.shapePitch(s)
	}
	return fretboard.LowestFirst(v.shape.Sounding(), func(s fretboard.StringNumber) fretboard.Pitch { return pitches[s] })
}

// fits refuses a shape that cannot be held on g.
func fits(g fretboard.Instrument, shape Shape) error {
	refuse := func(reason, mend string) error {
		text := shape.String()
		return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "shape", Source: text, Length: len(text),
			Reason: reason, Mend: mend}}
	}
	if shape.Strings() != g.Tuning.Strings() {
		return refuse(fmt.Sprintf("%d strings in the shape, %d on the instrument", shape.Strings(), g.Tuning.Strings()),
			"give each string a fret, 0 or x, from the thickest")
	}
	if shape.Sounding() == 0 {
		return refuse("every string is muted", "write N.C. for silence")
	}
	for s := range shape.Sounding().Thinnest() {
		if f, _ := shape.Fret(s); f > g.Reach() {
			return refuse(fmt.Sprintf("fret %d on string %d; the last fret from the capo is %d", f, s, g.Reach()),
				"choose a lower shape or an instrument with more frets")
		}
	}
	return nil
}

// lowest returns the first string of order that sounds n, or 0.
func (v *Voicing) lowest(order []fretboard.StringNumber, n fretboard.Note) fretboard.StringNumber {
	if v.chord.Silent() {
		return 0
	}
	for _, s := range order {
		if v.shapePitch(s).Class() == n.Class() {
			return s
		}
	}
	return 0
}

// findStart applies the first promise: slash bass, else root, else bass.
func (v *Voicing) findStart(order []fretboard.StringNumber) Start {
	if bass, slash := v.chord.Bass(); slash {
		if s := v.lowest(order, bass); s != 0 {
			return Start{s, SlashBass}
		}
	}
	if v.root != 0 {
		return Start{v.root, RootTone}
	}
	return Start{v.bass, Lowest}
}

// Instrument returns the instrument, every zero field filled in.
func (v Voicing) Instrument() fretboard.Instrument { return v.instrument }

// Chord returns the chord, named as its shape is, without the capo.
func (v Voicing) Chord() Chord { return v.chord }

// Shape returns the shape held, its frets counted from the capo.
func (v Voicing) Shape() Shape { return v.shape }

// Sounding returns the strings that sound.
func (v Voicing) Sounding() fretboard.StringSet { return v.shape.Sounding() }

// Pitch returns what string s sounds, capo and all; s must sound.
func (v Voicing) Pitch(s fretboard.StringNumber) fretboard.Pitch {
	f, _ := v.shape.Fret(s)
	return v.instrument.Pitch(s, f)
}

// shapePitch is the pitch without the capo, to which the chord's name applies.
func (v *Voicing) shapePitch(s fretboard.StringNumber) fretboard.Pitch {
	f, _ := v.shape.Fret(s)
	return v.instrument.Tuning.Open(s).Pitch().Up(f)
}

// Bass returns the string that sounds lowest.
func (v Voicing) Bass() fretboard.StringNumber { return v.bass }

// Root returns the lowest-sounding string that carries the chord's root, or
// false if none does.
func (v Voicing) Root() (fretboard.StringNumber, bool) { return v.root, v.root != 0 }

// Start returns the string on which a figure starts, and why.
func (v Voicing) Start() Start { return v.start }
