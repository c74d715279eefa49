package box_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// TestWindows holds windows against common practice: four rows, counted from
// the nut while five reach the highest fret, else from the lowest fret held.
func TestWindows(t *testing.T) {
	short := fretboard.Instrument{Frets: 12}
	for _, c := range []struct {
		g     fretboard.Instrument
		shape string
		first fretboard.Fret
		rows  int
	}{
		{fretboard.Instrument{}, "x32010", 1, 4},
		{fretboard.Instrument{}, "000000", 1, 4},
		{fretboard.Instrument{}, "133211", 1, 4},
		{fretboard.Instrument{}, "x24432", 1, 4},
		{fretboard.Instrument{}, "x35543", 1, 5},
		{fretboard.Instrument{}, "x5555x", 1, 5},
		{fretboard.Instrument{}, "x46654", 4, 4},
		{fretboard.Instrument{}, "577555", 5, 4},
		{fretboard.Instrument{}, "x07650", 5, 4},
		{fretboard.Instrument{}, "x1x6xx", 1, 6},
		{fretboard.Instrument{}, "x2x6xx", 2, 5},
		{fretboard.Instrument{}, "x-10-12-12-12-10", 10, 4},
		{fretboard.Instrument{}, "x-x-24-24-x-22", 21, 4},
		{short, "x-x-12-x-x-11", 9, 4},
		{fretboard.Instrument{Frets: 12, Capo: 4}, "xx8xxx", 5, 4},
		{fretboard.Instrument{Frets: 2}, "xx0110", 1, 2},
		{fretboard.Instrument{Frets: 36}, "1-x-x-x-x-36", 1, 36},
	} {
		first, rows := box.Of(held(t, c.g, "C="+c.shape)).Window()
		if first != c.first || rows != c.rows {
			t.Errorf("%s on %d frets, capo %d: %d rows from fret %d; want %d from %d", c.shape, c.g.Frets, c.g.Capo, rows, first, c.rows, c.first)
		}
	}
}

func TestColumns(t *testing.T) {
	pitch := func(text string) fretboard.PitchName {
		n, err := fretboard.ParsePitchName(text)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	g := tuned("ukulele")
	g.Capo, g.Hand = 2, fretboard.LeftRestrung
	got := box.Of(held(t, g, "C=x-7-8-0")).Columns()
	want := []box.Column{
		{String: 1, Tuned: pitch("A4")},
		{String: 2, Tuned: pitch("E4"), Fret: 8, Row: 2, Finger: voicing.Middle, Start: true},
		{String: 3, Tuned: pitch("C4"), Fret: 7, Row: 1, Finger: voicing.Index},
		{String: 4, Tuned: pitch("G4"), Muted: true},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestUnheld(t *testing.T) {
	b := box.Of(held(t, fretboard.Instrument{}, "Cmaj9=135246"))
	var impossible *fretboard.ImpossibleError
	if err := b.Unheld(); !errors.As(err, &impossible) || impossible.Text() != "135246" {
		t.Errorf("unheld because %v", err)
	}
	for _, c := range b.Columns() {
		if c.Finger != 0 || c.Row == 0 {
			t.Errorf("%+v in a shape that cannot be held", c)
		}
	}
	if err := box.Of(held(t, fretboard.Instrument{}, "C=x32010")).Unheld(); err != nil {
		t.Error(err)
	}
}

func TestTheZeroBoxIsEmpty(t *testing.T) {
	var b box.Box
	if b.Columns() == nil || len(b.Columns())+len(b.Barres()) > 0 || b.Text() != "   N.C.\n" || len(b.Words()) != 1 || b.Unheld() != nil {
		t.Errorf("%v %v %q %q %v", b.Columns(), b.Barres(), b.Text(), b.Words(), b.Unheld())
	}
}

func TestEncodeErrors(t *testing.T) {
	boxes := []box.Box{box.Of(held(t, fretboard.Instrument{}, "C=x32010"))}
	for _, width := range []int{-1, 1, 39, 1001} {
		var out strings.Builder
		err := box.Encode(&out, boxes, box.Options{Width: width})
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || impossible.Notation != "width" || out.Len() > 0 {
			t.Errorf("width %d: %v, %d bytes written", width, err, out.Len())
		}
	}
	for _, width := range []int{0, 40, 1000} {
		if err := box.Encode(io.Discard, boxes, box.Options{Width: width}); err != nil {
			t.Errorf("width %d: %v", width, err)
		}
	}
	if got := encoded(nil, box.Options{}); got != "" {
		t.Errorf("%q for no boxes", got)
	}
	broken := errors.New("broken")
	if err := box.Encode(failing{broken}, boxes, box.Options{}); err != broken {
		t.Errorf("%v from a broken writer", err)
	}
	if err := box.Encode(failing{}, boxes, box.Options{}); err != io.ErrShortWrite {
		t.Errorf("%v from a writer that stops short", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 3, f.err }

// FuzzBox holds every form of a box against its voicing.
func FuzzBox(f *testing.F) {
	f.Add("C", "x32010", "standard", 0, 0)
	f.Add("Bbmaj7#11/D", "x-10-12-12-12-10", "drop D", 3, 1)
	f.Add("N.C.", "0003", "ukulele", 1, 2)
	f.Add("F#m7b5", "36-0", "E1 A1", 0, 1)
	f.Fuzz(func(t *testing.T, name, shape, tuning string, capo, hand int) {
		c, err := voicing.ParseChord(name)
		sh, errShape := voicing.ParseShape(shape)
		tuned, errTuning := fretboard.ParseTuning(tuning)
		if errors.Join(err, errShape, errTuning) != nil {
			return
		}
		g := fretboard.Instrument{Tuning: tuned, Frets: 36, Capo: fretboard.Fret(capo), Hand: fretboard.Hand(hand & 3)}
		v, err := voicing.New(g, c, sh)
		if err != nil {
			return
		}
		fingering, _ := v.Fingering()
		b := box.Of(v)
		if fault := disagreement(b, fingering); fault != "" {
			t.Fatalf("%s\n%s", fault, b.Text())
		}
		if !tidy(encoded([]box.Box{b, b.Mirror()}, box.Options{})) {
			t.Fatalf("untidy sheet\n%s", b.Text())
		}
	})
}
