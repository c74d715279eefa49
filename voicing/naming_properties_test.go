package voicing_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

var allKeys = strings.Fields("C G D A E B F# C# F Bb Eb Ab Db Gb Cb " +
	"Am Em Bm F#m C#m G#m D#m A#m Dm Gm Cm Fm Bbm Ebm Abm")

// keys generates the thirty keys and none.
func keys() gopter.Gen {
	return gen.IntRange(-1, len(allKeys)-1).Map(func(i int) voicing.Key {
		if i < 0 {
			return voicing.Key{}
		}
		key, _ := voicing.ParseKey(allKeys[i])
		return key
	})
}

// keyOn returns the first key on a tonic of the class given, modulo 12.
func keyOn(class int, minor bool) voicing.Key {
	for _, name := range allKeys {
		key, _ := voicing.ParseKey(name)
		if int(key.Tonic().Class()) == class%12 && key.Minor() == minor {
			return key
		}
	}
	return voicing.Key{}
}

// sounded makes a shape of g of random frets; a negative one mutes its string.
func sounded(g fretboard.Instrument, frets []int) voicing.Shape {
	n := g.Tuning.Strings()
	sh := voicing.NewShape(n)
	for i, f := range frets[:n] {
		if f >= 0 {
			sh = sh.With(fretboard.StringNumber(i+1), min(fretboard.Fret(f), g.Reach()))
		}
	}
	if sh.Sounding() == 0 {
		sh = sh.With(1, 0)
	}
	return sh
}

func TestNamingProperties(t *testing.T) {
	p := seeded(2000)
	frets := gen.SliceOfN(fretboard.MaxStrings, gen.IntRange(-2, 12))
	p.Property("what sounds is a tone of the name or added, what is missing does not sound, and every name reads back", prop.ForAll(
		func(g fretboard.Instrument, frets []int, key voicing.Key) bool {
			return accountsForAll(reading(t, g, sounded(g, frets), key)) == ""
		}, instruments(1, 12, 22), frets, keys()))
	p.Property("a shape moved up the neck, and its key with it, has its names moved up", prop.ForAll(
		func(frets []int, up int, key voicing.Key) bool {
			moved := slices.Clone(frets)
			for i := range moved {
				moved[i] = max(-1, moved[i])
				if moved[i] >= 0 {
					moved[i] += up
				}
			}
			movedKey := key
			if key != (voicing.Key{}) {
				movedKey = keyOn(int(key.Tonic().Class())+up, key.Minor())
			}
			if slices.Max(frets[:6]) < 0 {
				return true
			}
			g := fretboard.Instrument{Tuning: fretboard.Standard()}
			return cmp.Equal(facts(reading(t, g, sounded(g, frets), key), up), facts(reading(t, g, sounded(g, moved), movedKey), 0))
		}, frets, gen.IntRange(1, 12), keys()))
	p.TestingRun(t)
}

// TestFoundVoicingsGetTheirNames names what Find yields for chords of songbooks,
// as far as it sounds all that the chord needs.
func TestFoundVoicingsGetTheirNames(t *testing.T) {
	p := seeded(300)
	var all, onRoot score
	p.Property("a voicing with the root in the bass has its own name among the first three", prop.ForAll(
		func(chord voicing.Chord) bool {
			bass, slash := chord.Bass()
			own := outsideShape{chord: chord}.own
			for _, v := range some(fretboard.Instrument{}, chord, 40) {
				if slash || !soundsAllItNeeds(v) {
					continue
				}
				r := reading(t, fretboard.Instrument{}, v.Shape(), voicing.Key{})
				rank := slices.IndexFunc(r.Names, own) + 1
				all.add(rank)
				if r.Notes[0].Note.Class() != bass.Class() {
					continue
				}
				onRoot.add(rank)
				if rank == 0 || rank > 3 {
					t.Log(v.Shape(), chord, r.Names)
					return false
				}
			}
			return true
		}, songChords()))
	p.TestingRun(t)
	t.Logf("root in the bass: %v", onRoot)
	t.Logf("any note in the bass: %v", all)
	if all.listed < all.of*99/100 || all.three < all.of*95/100 || onRoot.first < onRoot.of*85/100 {
		t.Error("fewer own names than before")
	}
}

// facts lists the names of r, root and bass moved up, whatever their spelling.
func facts(r voicing.Reading, up int) (list [][6]any) {
	for _, n := range r.Names {
		bass, slash := n.Chord.Bass()
		moved := func(n fretboard.Note) int { return (int(n.Class()) + up) % 12 }
		list = append(list, [6]any{n.Chord.Formula(), moved(n.Chord.Root()), moved(bass), slash, n.Confidence, len(n.Missing)<<4 + len(n.Added)})
	}
	return list
}

// FuzzNames reads any shape on any number of guitar strings in any key, and
// checks that the names account for all that sounds.
func FuzzNames(f *testing.F) {
	for _, shape := range []string{"x32010", "335553", "x35xxx", "012345", "0003", "7-8-7-8-7-8", "x"} {
		f.Add(shape, "Eb")
		f.Add(shape, "")
	}
	open := []string{"E2", "A2", "D3", "G3", "B3", "E4", "A4", "D5", "G5", "C6", "F6", "Bb6"}
	f.Fuzz(func(t *testing.T, text, song string) {
		shape, err := voicing.ParseShape(text)
		if err != nil || shape.Sounding() == 0 {
			return
		}
		key, _ := voicing.ParseKey(song)
		g := tuned(t, strings.Join(open[:shape.Strings()], " "))
		r, err := voicing.Names(g, shape, key)
		if _, newErr := voicing.New(g, voicing.Chord{}, shape); (err == nil) != (newErr == nil) {
			t.Fatalf("%s: %v, but a voicing %v", shape, err, newErr)
		}
		if err != nil {
			return
		}
		if wrong := accountsForAll(r); wrong != "" || r.String() == "" {
			t.Fatalf("%s in %v: %s: %v %v", shape, key, wrong, r.Notes, r.Names)
		}
	})
}

// accountsForAll returns what is wrong with r, empty if nothing is.
func accountsForAll(r voicing.Reading) string {
	sounding := classesOf(r)
	if (sounding.Len() == 1) != (len(r.Names) == 0) || len(r.Names) > 8 {
		return "too few or too many names"
	}
	for i, n := range r.Names {
		var added, missing voicing.ClassSet
		for _, note := range n.Added {
			added = added.With(note.Class())
		}
		for _, tone := range n.Missing {
			missing = missing.With(tone.Note.Class())
		}
		bass, _ := n.Chord.Bass()
		again, err := voicing.ParseChord(n.Chord.String())
		switch {
		case added != sounding&^n.Chord.Classes() || added.Len() != len(n.Added):
			return "added"
		case missing != n.Chord.Classes()&^sounding || missing.Len() != len(n.Missing):
			return "missing"
		case err != nil || again != n.Chord:
			return "reads back"
		case i > 0 && n.Confidence > r.Names[i-1].Confidence:
			return "not in order of confidence"
		case n.Confidence >= voicing.Likely && len(n.Missing) > 0 && n.Chord.Root().Class() != r.Notes[0].Note.Class():
			return "likely, with a tone missing and its root not the lowest"
		case i > 0 && n.Confidence > voicing.Possible || i == 0 && n.Confidence == voicing.Remote:
			return "confidence"
		case !sounding.Has(bass.Class()) && bass != n.Chord.Root():
			return "a bass that does not sound"
		}
	}
	for i, n := range r.Notes {
		if i > 0 && n.Pitch() < r.Notes[i-1].Pitch() {
			return "notes not from the lowest up"
		}
	}
	return ""
}
