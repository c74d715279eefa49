package voicing_test

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestFindsOutsideShapes holds the finder against the 1609 clean shapes of
// @tombatossals/chords-db 0.5.1 (npm, MIT) and prints what comes out. Each that
// lies within the finder's limits must be found. How early it comes is taste:
// the set lists some four shapes a chord out of a thousand and more. Asked for
// at the four frets of the set's own box, it must come among the first ten.
func TestFindsOutsideShapes(t *testing.T) {
	f := newFinding()
	for _, o := range outsideShapes(t) {
		v := mustVoicing(t, fretboard.Instrument{}, o.chord.String(), o.shape.String())
		if _, slash := o.chord.Bass(); !slash && o.clean(soundedClasses(v)) {
			f.add(t, v)
		}
	}
	t.Log(f)
	if f.all != 1609 {
		t.Errorf("%d clean shapes, want 1609", f.all)
	}
	if got := share(f.boxTen, f.within); got < 85 {
		t.Errorf("%.1f %% among the first ten at the frets of the set's boxes, want 85", got)
	}
}

// A finding counts where the finder lists outside shapes.
type finding struct {
	all, within       int
	first, ten, fifty int                 // in the list of the chord
	boxFirst, boxTen  int                 // in the list at the frets of the set's box
	beyond            map[string][]string // the shapes beyond the limits, by reason
	later             map[string]int      // those not among the first ten, by the term of their cost
	found             map[voicing.Chord][]voicing.Voicing
}

func newFinding() *finding {
	return &finding{beyond: map[string][]string{}, later: map[string]int{}, found: map[voicing.Chord][]voicing.Voicing{}}
}

func share(n, of int) float64 { return 100 * float64(n) / float64(of) }

// add looks for one shape.
func (f *finding) add(t testing.TB, v voicing.Voicing) {
	f.all++
	if why := beyondLimits(v); why != "" {
		f.beyond[why] = append(f.beyond[why], fmt.Sprint(v.Chord(), " ", v.Shape()))
		return
	}
	f.within++
	all := f.list(v.Chord())
	same := func(other voicing.Voicing) bool { return other.Shape() == v.Shape() }
	rank := slices.IndexFunc(all, same)
	if rank < 0 {
		t.Errorf("%s: %s is not found", v.Chord(), v.Shape())
		return
	}
	f.first += below(rank, 1)
	f.ten += below(rank, 10)
	f.fifty += below(rank, 50)
	if rank >= 10 {
		f.later[dearest(v.Cost(), all[9].Cost())]++
	}
	rank = slices.IndexFunc(inBox(all, v), same)
	f.boxFirst += below(rank, 1)
	f.boxTen += below(rank, 10)
}

func below(rank, limit int) int {
	if rank < limit {
		return 1
	}
	return 0
}

// list returns all voicings of a chord.
func (f *finding) list(chord voicing.Chord) []voicing.Voicing {
	if f.found[chord] == nil {
		f.found[chord] = slices.Collect(voicing.Find(fretboard.Instrument{}, chord, voicing.Options{}))
	}
	return f.found[chord]
}

// beyondLimits says which of the limits that [voicing.Find] states keeps v out.
func beyondLimits(v voicing.Voicing) string {
	_, err := v.Fingering()
	switch {
	case !soundsAllItNeeds(v):
		return "lacks a tone that the chord needs"
	case !withinReach(v, 105):
		return "spans more than 105 mm"
	case err != nil:
		return "four fingers cannot hold it"
	}
	return ""
}

// inBox returns the voicings of all that lie at the four frets at which the set
// draws v: from the nut while that shows all of v, else from its lowest fret.
func inBox(all []voicing.Voicing, v voicing.Voicing) (box []voicing.Voicing) {
	low, high := ends(held(v))
	if high <= 4 {
		low, high = 1, 4
	}
	high = max(high, low+3)
	for _, other := range all {
		if from, to := ends(held(other)); len(held(other)) == 0 || from >= low && to <= high {
			box = append(box, other)
		}
	}
	return box
}

// dearest names the term in which a costs most over b.
func dearest(a, b voicing.Cost) (name string) {
	x, y := reflect.ValueOf(a), reflect.ValueOf(b)
	most := int64(0)
	for i := range x.NumField() {
		if over := x.Field(i).Int() - y.Field(i).Int(); over > most {
			most, name = over, x.Type().Field(i).Name
		}
	}
	return name
}

func (f *finding) String() string {
	var b strings.Builder
	line := func(what string, n, of int) { fmt.Fprintf(&b, "%-52s %5d of %d, %.1f %%\n", what, n, of, share(n, of)) }
	b.WriteString("outside shapes, found\n")
	line("within the limits, and found", f.within, f.all)
	line("first of its chord", f.first, f.within)
	line("among the first ten of its chord", f.ten, f.within)
	line("among the first fifty of its chord", f.fifty, f.within)
	line("first at the frets of its box", f.boxFirst, f.within)
	line("among the first ten at the frets of its box", f.boxTen, f.within)
	b.WriteString("not among the first ten of its chord, by the term of the cost that sets it most apart from the tenth:\n")
	for _, term := range slices.SortedFunc(maps.Keys(f.later), func(a, b string) int { return f.later[b] - f.later[a] }) {
		fmt.Fprintf(&b, "  %-10s %d\n", term, f.later[term])
	}
	b.WriteString("beyond the limits:\n")
	for _, why := range slices.Sorted(maps.Keys(f.beyond)) {
		fmt.Fprintf(&b, "  %s: %d, %s\n", why, len(f.beyond[why]), strings.Join(f.beyond[why], ", "))
	}
	return b.String()
}

// soundedClasses returns the pitch classes that v sounds.
func soundedClasses(v voicing.Voicing) (set voicing.ClassSet) {
	for class := range counts(v) {
		set = set.With(class)
	}
	return set
}
