package main

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// The built-in song. A class of beginners meets over a rowing club, rain on the
// roof; this is the round that they play while the latecomers tune. It has a
// slash chord to start on the bass of, a chord of four strings to fit the figure
// to, a bar of two chords and a bar to play again.
const (
	title  = "Rain on the Boathouse"
	chords = "Am | Em | G | C G/B | Am | Em | G | % | Dm | Am | E7 | %"
)

// The built-in figures, in eighths and written for a guitar: one fills bars of
// 4/4 or 2/4, the other those that three quarters or a dotted one divide.
const (
	inEights = "5 3 2 1 2 3 2 3"
	inSixes  = "5 3 2 1 2 3"
)

// builtInFigure returns the figure that suits a meter and an instrument with a
// number of strings. With fewer than five the root moves to the thickest, with
// fewer than four the others crowd below it.
func builtInFigure(m picking.Meter, strings fretboard.StringNumber) string {
	figure := inEights
	if m.Bar()%(3*picking.TicksPerQuarter) == 0 || m.Compound() {
		figure = inSixes
	}
	return "1/8: " + crowd(figure, strings)
}

func crowd(figure string, most fretboard.StringNumber) string {
	slots := strings.Fields(figure)
	for i, slot := range slots {
		n, _ := strconv.Atoi(slot)
		highest := int(most)
		if n != 5 {
			highest = max(1, highest-1)
		}
		slots[i] = strconv.Itoa(min(n, highest))
	}
	return strings.Join(slots, " ")
}
