package voicing

import (
	"slices"
	"strconv"

	"weft.example/fretboard"
)

// A Finger names a finger of the fretting hand as guitarists count them, 1 to
// 4 from the index finger. The zero Finger is none: the string is open or
// muted.
type Finger uint8

// The fingers.
const (
	Index Finger = iota + 1
	Middle
	Ring
	Little
)

var fingerNames = [...]string{"no finger", "index", "middle", "ring", "little"}

// String returns index, middle, ring or little.
func (f Finger) String() string { return fretboard.NameOf(fingerNames[:], int(f)) }

// A Press is one finger on the neck: on one string, or across several as a
// barre, from the thickest to the thinnest of them.
type Press struct {
	Finger      Finger
	Fret        fretboard.Fret // from the capo
	Thick, Thin fretboard.StringNumber
}

// Barre reports whether p lies across more than one string.
func (p Press) Barre() bool { return p.Thick != p.Thin }

// A Fingering says which finger stops which string. It keeps these rules of
// common practice:
//   - the frets held lie at most 150 mm apart;
//   - a finger lies at one fret; a higher finger lies at a higher fret or, at
//     the same one, nearer the floor;
//   - no finger lies on an open string;
//   - a barre of the index finger crosses neighbouring strings of any number;
//     those that are stopped higher belong to other fingers; muted ones are
//     damped by a finger on the next string or, hardly, by easing the barre;
//   - a barre of another finger stops two to four neighbouring strings, all of
//     them at its fret;
//   - a barre across three strings or more leaves nothing to sound open or at a
//     lower fret on its floor side, where the rest of the finger lies. The tip
//     joint takes two strings and keeps the rest off.
//
// Fingerings compare with ==.
type Fingering struct {
	shape   Shape
	presses [maxFingers]Press
	fingers int8
	cost    gripCost
}

// Presses lists the fingers on the neck, the index finger first.
func (f Fingering) Presses() []Press { return slices.Clone(f.presses[:f.fingers]) }

// Cost returns the terms of [Cost] that depend on the fingers: Fingers, Spread,
// Splay and Barre. The others are 0.
func (f Fingering) Cost() Cost {
	return Cost{Fingers: f.cost.fingers, Spread: f.cost.spread, Splay: f.cost.splay, Barre: f.cost.barre}
}

// CostWith returns what v costs when it is held with f, one of its Fingerings.
func (v Voicing) CostWith(f Fingering) Cost {
	c := v.Cost()
	c.Fingers, c.Spread, c.Splay, c.Barre = f.cost.fingers, f.cost.spread, f.cost.splay, f.cost.barre
	return c
}

// Finger returns the finger that stops string s.
func (f Fingering) Finger(s fretboard.StringNumber) Finger {
	fret, sounds := f.shape.Fret(s)
	if !sounds || fret == 0 {
		return 0
	}
	for _, p := range f.presses[:f.fingers] {
		if p.Fret == fret && p.Thin <= s && s <= p.Thick {
			return p.Finger
		}
	}
	return 0
}

// String prints one character a string, from the highest number to string 1:
// the finger, 0 for an open string, x for a muted one. The shape 133211 is
// held with 134211.
func (f Fingering) String() string {
	text := make([]byte, 0, fretboard.MaxStrings)
	for s := f.shape.Strings(); s >= 1; s-- {
		if _, sounds := f.shape.Fret(s); !sounds {
			text = append(text, 'x')
			continue
		}
		text = strconv.AppendInt(text, int64(f.Finger(s)), 10)
	}
	return string(text)
}

// Fingering returns the fingering of v that costs least in the terms Fingers,
// Spread, Splay and Barre of [Cost]; of several the one that lays the lower
// fingers across more strings, then the one with the lower fingers. It is
// exact: all that keep the rules of [Fingering] are tried. The error is a
// [fretboard.ImpossibleError] that says why four fingers cannot hold the shape.
func (v Voicing) Fingering() (Fingering, error) {
	shape := v.shape.held()
	neck := newNeck(v.instrument)
	hand := neck.hand(&shape)
	best := hand.cheapest()
	if !hand.found {
		return Fingering{}, neck.unheld(&shape, v.shape.String())
	}
	return best.fingering(v.shape), nil
}

// Fingerings lists every fingering of v, the one that Fingering returns first,
// by rising cost; none where Fingering gives an error.
func (v Voicing) Fingerings() []Fingering {
	shape := v.shape.held()
	var grips []grip
	neck := newNeck(v.instrument)
	hand := neck.hand(&shape)
	hand.all = &grips
	hand.tryAll()
	sortGrips(grips)
	all := make([]Fingering, len(grips))
	for i := range grips {
		all[i] = grips[i].fingering(v.shape)
	}
	return all
}

// sortGrips puts the few grips of a shape in the order of cost; those that cost
// the same stay as they are.
func sortGrips(grips []grip) {
	for i := range grips {
		for ; i > 0 && grips[i].cost.total() < grips[i-1].cost.total(); i-- {
			grips[i-1], grips[i] = grips[i], grips[i-1]
		}
	}
}

func (g *grip) fingering(sh Shape) Fingering {
	f := Fingering{shape: sh, fingers: g.fingers, cost: g.cost}
	for i, p := range g.presses[:g.fingers] {
		f.presses[i] = Press{Finger(p.finger), fretboard.Fret(p.fret),
			fretboard.StringNumber(max(p.tip, p.base)), fretboard.StringNumber(min(p.tip, p.base))}
	}
	return f
}
