// Package box shows a voicing as a chord box: the neck upright, seen from the
// front, with the fingers on it. The box comes as data for a drawing, as text
// for a terminal and as sentences that can be read aloud.
package box

import (
	"slices"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// A Box holds all that a drawing of a voicing needs and nothing about drawing.
// Make one with [Of]. The zero Box has no strings. Boxes compare with ==.
type Box struct {
	voicing   voicing.Voicing
	fingering voicing.Fingering
	mirrored  bool
}

// Of returns the box of v, with the fingering that costs least, on the side
// that the instrument's hand asks for (see [fretboard.Hand.Mirrored]).
func Of(v voicing.Voicing) Box {
	f, _ := v.Fingering() // what is wrong, if anything, Unheld tells
	return Box{v, f, v.Instrument().Hand.Mirrored()}
}

// With returns b with f in place of the fingering that costs least. The error
// is a [fretboard.ImpossibleError] if f is none of the voicing's Fingerings.
func (b Box) With(f voicing.Fingering) (Box, error) {
	if !slices.Contains(b.voicing.Fingerings(), f) {
		text := f.String()
		return Box{}, &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "fingering", Source: text, Length: len(text),
			Reason: "no fingering of the shape " + b.voicing.Shape().String(), Mend: "choose one of the voicing's Fingerings"}}
	}
	b.fingering = f
	return b, nil
}

// Mirror returns b as it is drawn for an instrument strung the other way round.
func (b Box) Mirror() Box {
	b.mirrored = !b.mirrored
	return b
}

// Voicing returns what b shows. Its chord gives the title, named as the shape
// is, without the capo; its instrument knows the capo from which frets count.
func (b Box) Voicing() voicing.Voicing { return b.voicing }

// Unheld says why no fingers are given: a [fretboard.ImpossibleError] where
// four of them cannot hold the shape, otherwise nil.
func (b Box) Unheld() error {
	_, err := b.voicing.Fingering()
	return err
}

// The rows of a window (common practice): four, or five where the shape can
// then be counted from the nut.
const (
	usualRows fretboard.Fret = 4
	nutRows   fretboard.Fret = 5
)

// Window returns the fret of the first row, counted from the capo, and the
// number of rows. The line above fret 1 is the nut or the capo in its place.
// The window begins there if no fret above 5 is held, otherwise at the lowest
// fret held; it has four rows, more where the shape needs them, and never
// leaves the neck.
func (b Box) Window() (first fretboard.Fret, rows int) {
	low, high := b.held()
	reach := b.voicing.Instrument().Reach()
	if high <= nutRows {
		return 1, int(min(max(usualRows, high), reach))
	}
	tall := max(usualRows, high-low+1)
	return min(low, reach-tall+1), int(tall)
}

// held returns the lowest and the highest fret held, open strings apart, or a
// high of 0 if all strings are open or muted.
func (b Box) held() (low, high fretboard.Fret) {
	low = fretboard.MaxFrets
	for s := range b.voicing.Sounding().Thinnest() {
		if f, _ := b.voicing.Shape().Fret(s); f > 0 {
			low, high = min(low, f), max(high, f)
		}
	}
	return low, high
}

// A Column is a string of a box and what happens on it.
type Column struct {
	String fretboard.StringNumber
	Tuned  fretboard.PitchName // the string when open, without the capo
	Muted  bool
	Fret   fretboard.Fret // from the capo; 0 if the string is open or muted
	Row    int            // of the window, 1 on top; 0 if the string is open or muted
	Finger voicing.Finger // none if the string is open or muted, or the shape cannot be held
	Start  bool           // whether a figure starts here
}

// Columns lists the strings from left to right: from the highest number to
// string 1 or, in a mirrored box, from string 1 on.
func (b Box) Columns() []Column {
	first, _ := b.Window()
	columns := make([]Column, b.voicing.Shape().Strings())
	for s := b.voicing.Shape().Strings(); s >= 1; s-- {
		columns[b.column(s)] = b.look(s, first)
	}
	return columns
}

// column returns the place of string s, from 0 on the left.
func (b Box) column(s fretboard.StringNumber) int {
	if b.mirrored {
		return int(s - 1)
	}
	return int(b.voicing.Shape().Strings() - s)
}

// look returns what happens on string s in a window that begins at first.
func (b Box) look(s fretboard.StringNumber, first fretboard.Fret) Column {
	fret, sounds := b.voicing.Shape().Fret(s)
	c := Column{
		String: s,
		Tuned:  b.voicing.Instrument().Tuning.Open(s),
		Muted:  !sounds,
		Fret:   fret,
		Finger: b.fingering.Finger(s),
		Start:  s == b.voicing.Start().String,
	}
	if fret > 0 {
		c.Row = int(fret-first) + 1
	}
	return c
}

// A Barre is a finger that lies across several columns. Between its ends,
// both of which it stops, it may cross strings that are muted or are stopped
// by other fingers in higher rows.
type Barre struct {
	Finger      voicing.Finger
	Row         int // of the window, 1 on top
	Left, Right int // columns, from 0 on the left
}

// Barres lists the barres, the index finger's first.
func (b Box) Barres() []Barre {
	first, _ := b.Window()
	var barres []Barre
	for _, p := range b.fingering.Presses() {
		if p.Barre() {
			one, other := b.column(p.Thick), b.column(p.Thin)
			barres = append(barres, Barre{p.Finger, int(p.Fret-first) + 1, min(one, other), max(one, other)})
		}
	}
	return barres
}
