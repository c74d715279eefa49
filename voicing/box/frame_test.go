package box_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing/box"
)

// A frame is a chord diagram of MusicXML 4.0 (W3C Music Notation Community
// Group, 2021), its elements by their names in the schema. Its notes come here
// by rising string number; string 1 is the highest, and a frame is never
// mirrored.
type frame struct {
	strings, frets int // frame-strings, frame-frets
	firstFret      int // the fret in the top space; 1 where the element is absent
	notes          []frameNote
}

// A frameNote has a fret counted from the first of the neck, not of the window,
// and 0 for an open string. A muted string has none.
type frameNote struct {
	string, fret, fingering int
	barre                   string // start on the lowest string of a barre, stop on the highest
}

// frameOf takes a frame from the data of a box alone.
func frameOf(b box.Box) frame {
	first, rows := b.Window()
	columns := b.Columns()
	f := frame{len(columns), rows, int(first), nil}
	ends := map[fretboard.StringNumber]string{}
	for _, barre := range b.Barres() {
		one, other := columns[barre.Left].String, columns[barre.Right].String
		ends[max(one, other)], ends[min(one, other)] = "start", "stop"
	}
	for s := range fretboard.StringsUpTo(fretboard.StringNumber(len(columns))).Thinnest() {
		for _, c := range columns {
			if c.String == s && !c.Muted {
				f.notes = append(f.notes, frameNote{int(s), int(c.Fret), int(c.Finger), ends[s]})
			}
		}
	}
	return f
}

func TestMusicXMLFrames(t *testing.T) {
	for _, hand := range []fretboard.Hand{fretboard.RightHanded, fretboard.LeftRestrung} {
		b := box.Of(held(t, fretboard.Instrument{Hand: hand}, "Am=577555"))
		want := frame{6, 4, 5, []frameNote{{1, 5, 1, "stop"}, {2, 5, 1, ""}, {3, 5, 1, ""}, {4, 7, 4, ""}, {5, 7, 3, ""}, {6, 5, 1, "start"}}}
		if diff := cmp.Diff(want, frameOf(b), cmp.AllowUnexported(frame{}, frameNote{})); diff != "" {
			t.Errorf("%v hand (-want +got)\n%s", hand, diff)
		}
		b = box.Of(held(t, fretboard.Instrument{Hand: hand}, "C=x32010"))
		want = frame{6, 4, 1, []frameNote{{1, 0, 0, ""}, {2, 1, 1, ""}, {3, 0, 0, ""}, {4, 2, 2, ""}, {5, 3, 3, ""}}}
		if diff := cmp.Diff(want, frameOf(b), cmp.AllowUnexported(frame{}, frameNote{})); diff != "" {
			t.Errorf("%v hand (-want +got)\n%s", hand, diff)
		}
	}
}
