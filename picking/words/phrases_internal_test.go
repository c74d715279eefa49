package words

import (
	"strconv"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
)

// TestEveryPhraseIsThere wants every phrase said and its arguments numbered
// without a gap, so that none of them is lost.
func TestEveryPhraseIsThere(t *testing.T) {
	for i, text := range english.phrases {
		if strings.TrimSpace(text) == "" {
			t.Errorf("phrase %d is missing", i)
		}
		holes := strings.Count(text, "{")
		for n := 1; n <= holes; n++ {
			if !strings.Contains(text, "{"+strconv.Itoa(n)+"}") {
				t.Errorf("%q has no {%d}", text, n)
			}
		}
	}
}

// TestAnotherOrderOfWords fills a phrase in as another language might.
func TestAnotherOrderOfWords(t *testing.T) {
	other := english
	other.phrases[stepFrom] = "zu {2} von {1}"
	if got := (speaker{&other}).say(stepFrom, "eins", "{2}"); got != "zu {2} von eins" {
		t.Errorf("got %q", got)
	}
}

// TestPhrasesStandInTheOrderOfTheirValues guards what is reached by adding.
func TestPhrasesStandInTheOrderOfTheirValues(t *testing.T) {
	for i, same := range []bool{
		rightHand+phrase(fretboard.LeftRestrung) == leftHand, rightHand+phrase(fretboard.LeftTurned) == turnedHand,
		towardNext+phrase(picking.Economy) == economy, towardNext+phrase(picking.Alternate) == alternate,
		towardNext+phrase(picking.RestStroke) == restStroke, towardNext+phrase(picking.Jig) == jig,
		byContour+phrase(picking.Bass) == byBass, byContour+phrase(picking.Shift) == byShift,
		sharp+3 == quadrupleSharp, flat+3 == quadrupleFlat,
		countMany-1 == countOne, stringMany-1 == stringOne, barMany-1 == barOne, travelMany-1 == travelOne, slotMany-1 == slotOne,
		onMany-1 == onOne, backMany-1 == backOne, ringMany-1 == ringOne, restMany-1 == restOne,
	} {
		if !same {
			t.Errorf("pair %d is out of order", i)
		}
	}
}
