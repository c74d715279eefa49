package main

// The built-in song. A class of beginners meets over a rowing club, rain on the
// roof; this is the round that they play while the latecomers tune. It has a
// slash chord to start on the bass of, a chord of four strings to fit the figure
// to, a bar of two chords and a bar to play again.
const (
	title  = "Rain on the Boathouse"
	chords = "Am | Em | G | C G/B | Am | Em | G | % | Dm | Am | E7 | %"
)
