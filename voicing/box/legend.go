package box

import (
	"slices"

	"weft.example/fretboard"
)

// signs records what occurs in boxes, for the legend to explain.
type signs struct {
	muted, open, finger, barre, unheld bool
	nut, capo, higher                  bool
	notes                              []entry
}

func (g *signs) note(b Box, s fretboard.Spelling) {
	first, _ := b.Window()
	capo := b.voicing.Instrument().Capo > 0
	g.nut = g.nut || first == 1
	g.capo = g.capo || capo
	g.higher = g.higher || first > 1
	g.barre = g.barre || len(b.Barres()) > 0
	for _, c := range b.Columns() {
		g.muted = g.muted || c.Muted
		g.open = g.open || !c.Muted && c.Fret == 0
		g.finger = g.finger || c.Finger > 0
	}
	if reason := b.reason(); reason != "" {
		g.unheld = true
		e := entry{"note", b.voicing.Chord().StringIn(s) + " " + b.voicing.Shape().String() + ": " + reason}
		if !slices.Contains(g.notes, e) {
			g.notes = append(g.notes, e)
		}
	}
}

// reason says why the shape cannot be held, or nothing.
func (b Box) reason() string {
	if at, ok := b.Unheld().(fretboard.Located); ok {
		return at.Where().Reason
	}
	return ""
}

// legend explains the signs that occur, from the top of a box to its bottom.
func legend(boxes []Box, s fretboard.Spelling) []entry {
	var g signs
	for _, b := range boxes {
		g.note(b, s)
	}
	nut, from := "the nut", "the nut"
	if g.capo {
		nut, from = "the nut, or the capo where one is named", "the capo where one is named"
	}
	var entries []entry
	for _, e := range []struct {
		occurs bool
		entry
	}{
		{g.muted, entry{"x", "muted"}},
		{g.open, entry{"0", "open"}},
		{g.nut, entry{"===", nut}},
		{g.higher, entry{"left", "the number on the left is the fret of the first row, counted from " + from}},
		{g.finger, entry{"1-4", "the finger that stops the string: 1 index, 2 middle, 3 ring, 4 little"}},
		{g.barre, entry{"1--1", "one finger across several strings"}},
		{g.unheld, entry{"*", "stopped, in a shape that four fingers cannot hold"}},
		{true, entry{"below", "the numbers of the strings"}},
		{true, entry{"^", "the start string, on which a figure begins"}},
	} {
		if e.occurs {
			entries = append(entries, e.entry)
		}
	}
	return append(entries, g.notes...)
}
