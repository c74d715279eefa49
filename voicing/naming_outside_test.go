package voicing_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// An outsideShape is a shape of @tombatossals/chords-db 0.5.1 (npm, MIT) with
// the chord that the set files it under, and where tonal 6.4.3 (npm, MIT)
// lists that chord, plainly and when told to assume perfect fifths.
type outsideShape struct {
	chord       voicing.Chord
	shape       voicing.Shape
	tonal       int
	tonalFifths int
}

// outsideShapes reads both tables, but for two chords of the set that hold
// other tones than their names say: alt, which is R 3 b5, and 7sg.
func outsideShapes(t testing.TB) (shapes []outsideShape) {
	t.Helper()
	ranks := map[string][]string{}
	for _, fields := range tableOf(t, "testdata/naming-tonal-6.4.3.tsv") {
		ranks[fields[0]] = fields[1:]
	}
	for _, fields := range tableOf(t, "testdata/chords-db-0.5.1.tsv") {
		name := fields[0]
		if strings.HasSuffix(name, "alt") || strings.HasSuffix(name, "7sg") {
			continue
		}
		for i, entry := range strings.Fields(fields[1]) {
			shape, _, _ := strings.Cut(entry, ":")
			shapes = append(shapes, outsideShape{mustChord(name), mustShape(t, shape),
				int(ranks[name][0][i] - '0'), int(ranks[name][1][i] - '0')})
		}
	}
	return shapes
}

// tableOf reads a table of fields between tabs, without its remarks.
func tableOf(t testing.TB, path string) (rows [][]string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if !strings.HasPrefix(line, "#") {
			rows = append(rows, strings.Split(strings.TrimSpace(line), "\t"))
		}
	}
	return rows
}

// clean reports whether sounding is the chord, or the chord less its fifth.
func (o outsideShape) clean(sounding voicing.ClassSet) bool {
	missing := o.chord.Classes() &^ sounding
	for _, tone := range o.chord.Tones() {
		if tone.Degree == 5 {
			missing &^= voicing.ClassSet(0).With(tone.Note.Class())
		}
	}
	return missing == 0 && sounding&^o.chord.Classes() == 0
}

// key returns the key in which the chord is the tonic's.
func (o outsideShape) key() voicing.Key {
	return keyOn(int(o.chord.Root().Class()), strings.HasPrefix(o.chord.Formula(), "1 b3"))
}

// own reports whether n is the chord under which the set files the shape: same
// root and content, and the same bass where the set names one.
func (o outsideShape) own(n voicing.Name) bool {
	bass, slash := o.chord.Bass()
	itsBass, _ := n.Chord.Bass()
	return n.Chord.Root().Class() == o.chord.Root().Class() && n.Chord.Formula() == o.chord.Formula() &&
		(!slash || bass.Class() == itsBass.Class())
}

// A score counts how often the own name comes first, among the first three and
// anywhere.
type score struct{ of, first, three, listed, exact int }

// add counts a rank, 0 for not listed.
func (s *score) add(rank int) {
	s.of++
	if rank == 1 {
		s.first++
	}
	if rank >= 1 && rank <= 3 {
		s.three++
	}
	if rank >= 1 {
		s.listed++
	}
}

func (s score) String() string {
	share := func(n int) string { return fmt.Sprintf("%d (%.1f %%)", n, 100*float64(n)/float64(s.of)) }
	return fmt.Sprintf("of %d first %s, among three %s, listed %s", s.of, share(s.first), share(s.three), share(s.listed))
}

// figures gathers what the names of the outside shapes come to.
type figures struct {
	clean, tonal, tonalFifths, inKey, slashes, tonalSlashes score

	right, named [voicing.Certain + 1]int
	misses       map[string][]string // by what follows the root in the set's name
}

// add names one shape.
func (f *figures) add(t testing.TB, o outsideShape) {
	r := reading(t, fretboard.Instrument{}, o.shape, voicing.Key{})
	rank := slices.IndexFunc(r.Names, o.own) + 1
	if _, slash := o.chord.Bass(); slash {
		f.slashes.add(rank)
		f.slashes.exact += exact(r, o)
		f.tonalSlashes.add(o.tonal)
		return
	}
	if !o.clean(classesOf(r)) {
		return
	}
	f.clean.add(rank)
	f.clean.exact += exact(r, o)
	f.tonal.add(o.tonal)
	f.tonalFifths.add(o.tonalFifths)
	f.inKey.add(slices.IndexFunc(reading(t, fretboard.Instrument{}, o.shape, o.key()).Names, o.own) + 1)
	for _, n := range r.Names {
		f.named[n.Confidence]++
		if o.own(n) {
			f.right[n.Confidence]++
		}
	}
	if rank != 1 {
		kind := strings.TrimPrefix(o.chord.String(), o.chord.Root().String())
		f.misses[kind] = append(f.misses[kind], fmt.Sprintf("%s %s is %v", o.chord, o.shape, r.Names[0]))
	}
}

func (f *figures) log(t testing.TB) {
	t.Logf("named by Names:          %v; letter by letter %d", f.clean, f.clean.exact)
	t.Logf("named by tonal:          %v", f.tonal)
	t.Logf("tonal assuming fifths:   %v", f.tonalFifths)
	t.Logf("in the key of the chord: %v", f.inKey)
	t.Logf("slash chords by Names:   %v; letter by letter %d", f.slashes, f.slashes.exact)
	t.Logf("slash chords by tonal:   %v", f.tonalSlashes)
	for _, kind := range slices.Sorted(maps.Keys(f.misses)) {
		t.Logf("%d %s not first, such as %s", len(f.misses[kind]), kind, f.misses[kind][0])
	}
}

// TestNamesOfOutsideShapes names all guitar shapes of a data set that others
// made, and sets the figures beside those of another namer.
func TestNamesOfOutsideShapes(t *testing.T) {
	f := figures{misses: map[string][]string{}}
	for _, o := range outsideShapes(t) {
		f.add(t, o)
	}
	f.log(t)
	if f.clean.of != 1609 || f.slashes.of != 145 {
		t.Errorf("%d clean shapes and %d slash shapes, want 1609 and 145", f.clean.of, f.slashes.of)
	}
	if f.clean.first < 1465 || f.clean.three < 1600 || f.clean.listed != f.clean.of || f.slashes.first < 105 || f.slashes.three < 140 {
		t.Error("fewer right names than before")
	}
	if f.inKey.first <= f.clean.first {
		t.Error("the key helps nothing")
	}
	// The shares that the levels of Confidence promise, in percent.
	for level, share := range [...][2]int{voicing.Remote: {0, 1}, voicing.Possible: {5, 15}, voicing.Likely: {75, 85}, voicing.Certain: {97, 100}} {
		is := 100 * float64(f.right[level]) / float64(f.named[level])
		t.Logf("%v: %d of %d names right, %.1f %%", voicing.Confidence(level), f.right[level], f.named[level], is)
		if f.named[level] < 500 || is < float64(share[0]) || is > float64(share[1]) {
			t.Errorf("%v: %.1f %% right, documented as %d to %d", voicing.Confidence(level), is, share[0], share[1])
		}
	}
}

func exact(r voicing.Reading, o outsideShape) int {
	if r.Names[0].Chord == o.chord {
		return 1
	}
	return 0
}

func reading(t testing.TB, g fretboard.Instrument, shape voicing.Shape, key voicing.Key) voicing.Reading {
	t.Helper()
	r, err := voicing.Names(g, shape, key)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// classesOf returns what sounds.
func classesOf(r voicing.Reading) (set voicing.ClassSet) {
	for _, n := range r.Notes {
		set = set.With(n.Note.Class())
	}
	return set
}
