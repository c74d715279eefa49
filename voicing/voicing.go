package voicing

import (
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
	sounding := Voicing{instrument: g, shape: shape}
	pitches := sounding.soundings()
	return hold(g, chord, shape, &pitches), nil
}

// hold is [New] for a normal instrument and a shape that it can hold. pitches
// holds what its strings sound without the capo, that of string s at s-1.
func hold(g fretboard.Instrument, chord Chord, shape Shape, pitches *soundings) Voicing {
	v := Voicing{instrument: g, chord: chord, shape: shape}
	v.bass = pitches.lowest(shape.Sounding(), everything)
	v.start = Start{v.bass, Lowest}
	if chord.Silent() {
		return v
	}
	v.root = pitches.lowest(shape.Sounding(), ClassSet(0).With(chord.Root().Class()))
	if v.root != 0 {
		v.start = Start{v.root, RootTone}
	}
	if bass, slash := chord.Bass(); slash {
		if s := pitches.lowest(shape.Sounding(), ClassSet(0).With(bass.Class())); s != 0 {
			v.start = Start{s, SlashBass}
		}
	}
	return v
}

// soundings holds what each string sounds, that of string s at s-1.
type soundings [fretboard.MaxStrings]fretboard.Pitch

func (p *soundings) of(s fretboard.StringNumber) fretboard.Pitch { return p[s-1] }

// lowest returns the string of set that sounds lowest of those that sound a
// class of wanted, or 0.
func (p *soundings) lowest(set fretboard.StringSet, wanted ClassSet) fretboard.StringNumber {
	var carrying fretboard.StringSet
	for s := range set.Thinnest() {
		if wanted.Has(p.of(s).Class()) {
			carrying = carrying.With(s)
		}
	}
	return fretboard.Lowest(carrying, p.of)
}

// soundings returns what the strings of v sound, without the capo.
func (v *Voicing) soundings() (p soundings) {
	for s := range v.Sounding().Thinnest() {
		p[s-1] = v.shapePitch(s)
	}
	return p
}

// fits refuses a shape that cannot be held on g.
func fits(g fretboard.Instrument, shape Shape) error {
	refuse := func(reason, mend string) error {
		text := shape.String()
		return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "shape", Source: text, Length: len(text),
			Reason: reason, Mend: mend}}
	}
	if shape.Strings() != g.Tuning.Strings() {
		return refuse(digits(shape.Strings())+" strings in the shape, "+digits(g.Tuning.Strings())+" on the instrument",
			"give each string a fret, 0 or x, from the thickest")
	}
	if shape.Sounding() == 0 {
		return refuse("every string is muted", "write N.C. for silence")
	}
	for s := range shape.Sounding().Thinnest() {
		if f, _ := shape.Fret(s); f > g.Reach() {
			return refuse("fret "+digits(f)+" on string "+digits(s)+"; the last fret from the capo is "+digits(g.Reach()),
				"choose a lower shape or an instrument with more frets")
		}
	}
	return nil
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
