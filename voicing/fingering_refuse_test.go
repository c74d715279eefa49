package voicing_test

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestWhatNoHandHolds holds the refusals, each beside a shape that a hand
// holds, so that they are refused for what they say.
func TestWhatNoHandHolds(t *testing.T) {
	const tooMany = " strings to stop, more than four fingers can, with or without a barre"
	for _, c := range []struct{ why, shape, reason, mend, held string }{
		{"five frets", "x54321", "5" + tooMany, "mute a string, or choose another shape", "x54322"},
		{"an open string under the barre", "210213", "it takes a barre, and the finger would damp string 4",
			"mute string 4, or choose another shape", "21x213"},
		{"an open string beside the palm", "232320", "it takes a barre, and the finger would damp string 1",
			"mute string 1, or choose another shape", "23232x"},
		{"two open strings, of which either would be enough to forbid the barre", "202023232",
			"it takes a barre, and the finger would damp strings 8 and 6", "mute strings 8 and 6, or choose another shape", "2x2x23232"},
		{"five strings at one fret where but one finger is free, and not the index", "12222234", "8" + tooMany,
			"mute a string, or choose another shape", "12222x34"},
		{"a reach beyond every hand", "1xxxx6", "frets 1 and 6 lie 152 mm apart, further than hands reach",
			"choose another shape", "1xxxx5"},
		{"and that before anything else", "102346", "frets 1 and 6 lie 152 mm apart, further than hands reach",
			"choose another shape", "2x2346"},
	} {
		v, held := unnamed(t, c.shape), unnamed(t, c.held)
		if f, err := held.Fingering(); err != nil {
			t.Errorf("%s: not so in %s, yet %s, %v", c.why, c.held, f, err)
		}
		f, err := v.Fingering()
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || f.String() != "" || len(v.Fingerings()) > 0 {
			t.Errorf("%s: %s is held with %q, %v; want an ImpossibleError", c.why, c.shape, f, err)
			continue
		}
		if impossible.Notation != "shape" || impossible.Text() != c.shape || impossible.Reason != c.reason || impossible.Mend != c.mend {
			t.Errorf("%s: %v; want %s; %s", c.why, err, c.reason, c.mend)
		}
	}
	if f, err := (voicing.Voicing{}).Fingering(); err != nil || len(f.Presses()) > 0 {
		t.Errorf("the zero Voicing is held with %v, %v", f.Presses(), err)
	}
}

// unnamed holds a shape of any number of strings as if it were a C, on the
// thickest ones of a guitar with more of them than usual.
func unnamed(t testing.TB, text string) voicing.Voicing {
	t.Helper()
	shape := mustShape(t, text)
	tuning := strings.Fields("E2 A2 D3 G3 B3 E4 A4 D5 G5")[:shape.Strings()]
	v, err := voicing.New(tuned(t, strings.Join(tuning, " ")), mustChord("C"), shape)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestWhyNoHandHolds: what a refusal says is true of the shape, and its mend
// mends.
func TestWhyNoHandHolds(t *testing.T) {
	p := seeded(3000)
	seen := map[string]int{}
	p.Property("a refusal names frets too far apart, or open strings without which there is a way, or else five strings and more",
		prop.ForAll(func(v voicing.Voicing) bool {
			_, err := v.Fingering()
			var impossible *fretboard.ImpossibleError
			if !errors.As(err, &impossible) {
				return err == nil
			}
			frets := held(v)
			low, high := ends(frets)
			apart := place(v, high) - place(v, low)
			var stopped int
			if damped := numbers(impossible.Reason); strings.HasPrefix(impossible.Reason, "it takes a barre, and the finger would damp string") {
				seen["open"]++
				open := without(v, damped...)
				return apart <= 1500 && v.Sounding().Len()-open.Sounding().Len() == len(damped) && len(held(open)) == len(frets) &&
					len(everyGrip(open)) > 0
			}
			if n, _ := fmt.Sscanf(impossible.Reason, "%d strings to stop, more than four", &stopped); n == 1 {
				seen["many"]++
				for s := range v.Sounding().Thinnest() {
					if _, fretted := frets[s]; !fretted && len(everyGrip(without(v, s))) > 0 {
						return false
					}
				}
				return apart <= 1500 && stopped == len(frets) && stopped > 4
			}
			seen["far"]++
			return apart > 1500 && impossible.Reason == fmt.Sprintf("frets %d and %d lie %d mm apart, further than hands reach", low, high, apart/10)
		}, handShapes(5, 7)))
	p.TestingRun(t)
	if seen["open"] < 10 || seen["many"] < 10 || seen["far"] < 10 {
		t.Errorf("too few of some reason: %v", seen)
	}
}

// numbers returns the strings that a text names.
func numbers(text string) (all []fretboard.StringNumber) {
	for _, digits := range strings.FieldsFunc(text, func(r rune) bool { return r < '0' || r > '9' }) {
		n, _ := strconv.Atoi(digits)
		all = append(all, fretboard.StringNumber(n))
	}
	return all
}

// without mutes strings of v, which are not the only ones that sound.
func without(v voicing.Voicing, muted ...fretboard.StringNumber) voicing.Voicing {
	shape := voicing.NewShape(v.Shape().Strings())
	for other := range v.Sounding().Thinnest() {
		if f, _ := v.Shape().Fret(other); !slices.Contains(muted, other) {
			shape = shape.With(other, f)
		}
	}
	less, err := voicing.New(v.Instrument(), v.Chord(), shape)
	if err != nil {
		panic(err)
	}
	return less
}
