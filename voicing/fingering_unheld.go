package voicing

import (
	"weft.example/fretboard"
)

// unheld says why four fingers cannot hold a shape: an open string is in the
// way of the barre that it needs, or it takes more fingers than that.
func (n *neck) unheld(shape *held, text string) error {
	place := fretboard.Place{Notation: "shape", Source: text, Length: len(text),
		Reason: digits(n.size(shape)) + " strings to stop, more than four fingers can, with or without a barre",
		Mend:   "mute a string, or choose another shape"}
	if hand := n.hand(shape); hand.span() > tenths(widestSpan) {
		place.Reason = farApart(fretboard.Fret(hand.stops[0].fret), fretboard.Fret(hand.stops[hand.size-1].fret), hand.span()) + ", further than hands reach"
		place.Mend = "choose another shape"
		return &fretboard.ImpossibleError{Place: place}
	}
	if open := n.inTheWay(shape); open != 0 {
		place.Reason = "it takes a barre, and the finger would damp " + stringsOf(open)
		place.Mend = "mute " + stringsOf(open) + ", or choose another shape"
	}
	return &fretboard.ImpossibleError{Place: place}
}

// inTheWay returns the open string without which fingers could hold a shape, or
// all of them if it takes more than one; none if that does not help.
func (n *neck) inTheWay(shape *held) fretboard.StringSet {
	var open fretboard.StringSet
	closed := *shape
	for s := fretboard.StringNumber(n.strings); s >= 1; s-- {
		if shape[s-1] != 0 {
			continue
		}
		without := *shape
		without[s-1], closed[s-1] = muted, muted
		if hand := n.hand(&without); hand.cheapest().fingers > 0 {
			return fretboard.StringSet(0).With(s)
		}
		open = open.With(s)
	}
	if hand := n.hand(&closed); hand.cheapest().fingers > 0 {
		return open
	}
	return 0
}

// stringsOf names the strings of set.
func stringsOf(set fretboard.StringSet) string {
	text, word := "", "string "
	for s := range set.Thinnest() {
		if text != "" {
			text, word = " and "+text, "strings "
		}
		text = digits(s) + text
	}
	return word + text
}

// size counts the fretted strings.
func (n *neck) size(shape *held) int {
	size := 0
	for _, fret := range shape[:n.strings] {
		if fret > 0 {
			size++
		}
	}
	return size
}
