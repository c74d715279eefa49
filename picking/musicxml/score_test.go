package musicxml_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"testing"

	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// What the tests read of a score, by the names of the standard.
type score struct {
	Version  string    `xml:"version,attr"`
	Title    string    `xml:"work>work-title"`
	Measures []measure `xml:"part>measure"`
}

type measure struct {
	Number string `xml:"number,attr"`
	Items  []item `xml:",any"`
}

// An item is whatever stands in a measure; its name says which fields count.
type item struct {
	XMLName xml.Name

	Pitch      *pitch `xml:"pitch"`
	Rest       *rest  `xml:"rest"`
	Duration   int    `xml:"duration"`
	Ties       []ends `xml:"tie"`
	Voice      string `xml:"voice"`
	Type       string `xml:"type"`
	Dots       []none `xml:"dot"`
	Accidental string `xml:"accidental"`
	Time       *struct {
		Actual int    `xml:"actual-notes"`
		Normal int    `xml:"normal-notes"`
		Type   string `xml:"normal-type"`
	} `xml:"time-modification"`
	Stem      string      `xml:"stem"`
	Staff     string      `xml:"staff"`
	Beams     []beam      `xml:"beam"`
	Notations []notations `xml:"notations"`

	Root *struct {
		Step struct {
			Text *string `xml:"text,attr"`
			Step string  `xml:",chardata"`
		} `xml:"root-step"`
		Alter int `xml:"root-alter"`
	} `xml:"root"`
	Kind struct {
		Text string `xml:"text,attr"`
		Kind string `xml:",chardata"`
	} `xml:"kind"`
	Bass *struct {
		Step  string `xml:"bass-step"`
		Alter int    `xml:"bass-alter"`
	} `xml:"bass"`
	Degrees []degree `xml:"degree"`
	Frame   *frame   `xml:"frame"`
	Offset  int      `xml:"offset"`

	Words     string `xml:"direction-type>words"`
	Metronome *struct {
		Unit      string `xml:"beat-unit"`
		Dots      []none `xml:"beat-unit-dot"`
		PerMinute int    `xml:"per-minute"`
	} `xml:"direction-type>metronome"`
	Sound *struct {
		Tempo float64 `xml:"tempo,attr"`
	} `xml:"sound"`

	Divisions int    `xml:"divisions"`
	Fifths    int    `xml:"key>fifths"`
	Mode      string `xml:"key>mode"`
	Beats     string `xml:"time>beats"`
	BeatType  string `xml:"time>beat-type"`
	Staves    int    `xml:"staves"`
	Clefs     []struct {
		Number string `xml:"number,attr"`
		Sign   string `xml:"sign"`
		Octave int    `xml:"clef-octave-change"`
	} `xml:"clef"`
	Details []struct {
		Number string   `xml:"number,attr"`
		Lines  int      `xml:"staff-lines"`
		Tuning []tuning `xml:"staff-tuning"`
		Capo   int      `xml:"capo"`
	} `xml:"staff-details"`

	Style  string `xml:"bar-style"`
	Repeat *struct {
		Direction string `xml:"direction,attr"`
	} `xml:"repeat"`
}

type none struct{}

type rest struct {
	Measure string `xml:"measure,attr"`
}

type ends struct {
	Type string `xml:"type,attr"`
}

type beam struct {
	Number int    `xml:"number,attr"`
	Word   string `xml:",chardata"`
}

type pitch struct {
	Step   string `xml:"step"`
	Alter  int    `xml:"alter"`
	Octave int    `xml:"octave"`
}

type tuning struct {
	Line   int    `xml:"line,attr"`
	Step   string `xml:"tuning-step"`
	Alter  int    `xml:"tuning-alter"`
	Octave int    `xml:"tuning-octave"`
}

type notations struct {
	Print     string      `xml:"print-object,attr"`
	Tied      []ends      `xml:"tied"`
	Tuplets   []ends      `xml:"tuplet"`
	Technical []technical `xml:"technical"`
}

type technical struct {
	Down   []none `xml:"down-bow"`
	Up     []none `xml:"up-bow"`
	String int    `xml:"string"`
	Fret   *int   `xml:"fret"`
}

type degree struct {
	Print string `xml:"print-object,attr"`
	Value int    `xml:"degree-value"`
	Alter int    `xml:"degree-alter"`
	Type  string `xml:"degree-type"`
}

type frame struct {
	Strings   int    `xml:"frame-strings"`
	Frets     int    `xml:"frame-frets"`
	FirstFret int    `xml:"first-fret"`
	Unplayed  string `xml:"unplayed,attr"`
	Notes     []struct {
		String int    `xml:"string"`
		Fret   int    `xml:"fret"`
		Finger int    `xml:"fingering"`
		Barre  *ends  `xml:"barre"`
		Extra  []none `xml:",any"`
	} `xml:"frame-note"`
}

// steps holds the semitones of the natural notes above C.
var steps = map[string]int{"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}

// midi returns the MIDI key number: C4 is 60.
func midi(step string, alter, octave int) int { return 12*(octave+1) + steps[step] + alter }

// encoded returns the score of a passage, which must be good.
func encoded(t testing.TB, p picking.Passage, o musicxml.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := musicxml.Encode(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func parsed(data []byte) (s score, err error) {
	err = xml.Unmarshal(data, &s)
	return s, err
}

// played returns the measures in the order of playing.
func (s score) played() (list []measure, err error) {
	opened := 0
	for i, m := range s.Measures {
		if m.Number != strconv.Itoa(i+1) {
			return nil, fmt.Errorf("measure %d has number %s", i+1, m.Number)
		}
		list = append(list, m)
		for _, x := range m.Items {
			switch {
			case x.Repeat == nil:
			case x.Repeat.Direction == "forward":
				opened = i
			case opened < 0:
				return nil, fmt.Errorf("measure %d repeats from nowhere", i+1)
			default:
				list = append(list, s.Measures[opened:i+1]...)
				opened = -1
			}
		}
	}
	return list, nil
}
