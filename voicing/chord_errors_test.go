package voicing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestChordErrors holds the kind of each error, its place (byte and offending
// text) and a part of its mend.
func TestChordErrors(t *testing.T) {
	syntax, impossible := "syntax", "impossible"
	for _, c := range []struct{ text, kind, at, mend string }{
		{"", syntax, "0:", "from A to G"},
		{"  ", syntax, "0:", "from A to G"},
		{"Hm7", syntax, "0:H", "write B for H and Bb for B"},
		{"am7", syntax, "0:a", "write A, or Am for minor"},
		{"X", syntax, "0:X", "from A to G"},
		{"♭C", syntax, "0:♭", "from A to G"},
		{"C###", impossible, "1:###", "fewer"},
		{"Cm/Ebbb", impossible, "4:bbb", "fewer"},
		{"C/", syntax, "2:", "from A to G"},
		{"C/g", syntax, "2:g", "write G"},
		{"C/b", syntax, "2:b", "write B"},
		{"C/H", syntax, "2:H", "write B for H"},
		{"C7/4", syntax, "3:4", "sus4"},
		{"C/G7", syntax, "3:7", ""},
		{"Cm7xyz9/E", syntax, "3:xyz9", ""},
		{"C/G/E", syntax, "3:/", ""},
		{"Cfoo", syntax, "1:foo", "Am7"},
		{"C8", syntax, "1:8", ""},
		{"C79", syntax, "2:9", ""},
		{"C7 b9", syntax, "2: ", "leave it out"},
		{"C7,b9", syntax, "2:,", ""},
		{"C(", syntax, "1:(", "close it with )"},
		{"C7(b9", syntax, "2:(", "close it with )"},
		{"C()", syntax, "2:)", ""},
		{"C7(b9,)", syntax, "6:)", ""},
		{"C7)", syntax, "2:)", ""},
		{"Cadd7", syntax, "1:add7", "add 2, 4"},
		{"Cno7", syntax, "1:no7", "leave out 3"},
		{"Csus9", syntax, "1:sus9", "C7sus4"},
		{"C7b7", syntax, "2:b7", ""},
		{"C7#13", syntax, "2:#13", ""},
		{"Cdom", syntax, "4:", "7, 9, 11 or 13"},
		{"Cmmaj", syntax, "5:", "Cm(maj7)"},
		{"Cm7(maj7)", syntax, "4:maj7", "Cm(maj7)"},
		{"Cm7sus4", impossible, "3:sus4", "add4"},
		{"CMsus4", impossible, "2:sus4", "add4"},
		{"C2sus2", impossible, "2:sus2", "leave one out"},
		{"C9b9", impossible, "2:b9", "C7b9"},
		{"C11#11", impossible, "3:#11", ""},
		{"C5b5", impossible, "2:b5", ""},
		{"Cdim#5", impossible, "4:#5", ""},
		{"C7b9b9", impossible, "4:b9", "leave one out"},
		{"C7b9add9", impossible, "4:add9", "keep one"},
		{"C7b5#11", impossible, "4:#11", "keep one"},
		{"Cm7#9", impossible, "3:#9", "keep one"},
		{"C13b13", impossible, "3:b13", ""},
		{"Cadd9add2", impossible, "5:add2", "keep one"},
		{"C7#5no5", impossible, "4:no5", "leave that away"},
		{"C7no5b5", impossible, "5:b5", "keep one"},
		{"C7no3no3", impossible, "5:no3", "leave one out"},
		{"Cmno3", impossible, "2:no3", "without it"},
		{"C9no9", impossible, "2:no9", "without it"},
		{"Cdim13", impossible, "1:dim13", "keep one"},
		{"Cmalt", impossible, "2:alt", "C7alt"},
		{"C\xff", syntax, "1:\xff", "UTF-8"},
		{strings.Repeat("C", fretboard.MaxText+1), impossible, "65536:", "split"},
	} {
		got, err := voicing.ParseChord(c.text)
		var place fretboard.Place
		var s *fretboard.SyntaxError
		var i *fretboard.ImpossibleError
		kind := ""
		switch {
		case errors.As(err, &s):
			kind, place = syntax, s.Place
		case errors.As(err, &i):
			kind, place = impossible, i.Place
		}
		if at := fmt.Sprintf("%d:%s", place.Offset, place.Text()); kind != c.kind || at != c.at || !strings.Contains(place.Mend, c.mend) {
			t.Errorf("%.20q: %s at %s: %v; want %s at %s", c.text, kind, at, err, c.kind, c.at)
		}
		if got != (voicing.Chord{}) || place.Notation != "chord" || place.Source != c.text {
			t.Errorf("%.20q: chord %v, place in the %s %.20q", c.text, got, place.Notation, place.Source)
		}
	}
}
