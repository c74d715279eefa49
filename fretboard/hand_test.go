package fretboard_test

import (
	"testing"

	"weft.example/fretboard"
)

// TestHands works each way of holding out from where the strings lie: a
// down-stroke goes toward the floor, and a box shows the neck upright.
func TestHands(t *testing.T) {
	for _, c := range []struct {
		text           string
		hand           fretboard.Hand
		lowestToFloor  fretboard.StringNumber // which string of six is nearest the floor
		leftmostInABox fretboard.StringNumber
	}{
		{"right", fretboard.RightHanded, 1, 6},
		{"left", fretboard.LeftRestrung, 1, 1},
		{"turned", fretboard.LeftTurned, 6, 6},
	} {
		hand, err := fretboard.ParseHand(c.text)
		if err != nil || hand != c.hand || hand.String() != c.text {
			t.Errorf("%s: read as %v, %v", c.text, hand, err)
		}
		last := fretboard.StringNumber(3)
		for last > 1 && last < 6 {
			last += hand.Toward()
		}
		if last != c.lowestToFloor {
			t.Errorf("%s: down-strokes end on string %d, want %d", c.text, last, c.lowestToFloor)
		}
		if got := hand.Mirrored(); got != (c.leftmostInABox == 1) {
			t.Errorf("%s: mirrored: %v", c.text, got)
		}
	}
	if h := fretboard.Hand(9); h.String() != "9" {
		t.Errorf("a hand made by hand prints %q", h)
	}
	var zero fretboard.Hand
	if zero != fretboard.RightHanded {
		t.Error("the zero hand is not the right")
	}
}
