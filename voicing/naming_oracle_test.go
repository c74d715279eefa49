package voicing

import (
	"fmt"
	"slices"
	"testing"

	"weft.example/fretboard"
)

// A plain chord is one rated as the comment at [Names] says it, tone by tone.
type plainChord struct {
	Chord
	rarity int
	tones  map[int]Tone // by pitch class
	notes  []int        // what sounds, lowest first
	deep   bool         // whether the lowest is heard as a bass
	key    Key
}

// rate gives the points of c, counts what is missing or added, and says whether
// c is whole.
func (c plainChord) rate() (points, gaps int, whole bool) {
	lost, missing, needed := c.lost()
	added := map[int]bool{}
	for _, p := range c.notes {
		if _, ok := c.tones[p]; !ok && (p != c.notes[0] || !c.deep) {
			added[p] = true
		}
	}
	return c.rarity + c.bass() + lost + 70*len(added) + c.tip(), missing + len(added), needed == 0 && len(added) == 0
}

// lost rates what is missing, and counts it and what of it is needed.
func (c plainChord) lost() (points, missing, needed int) {
	pair := map[int]int{}
	for p, tone := range c.tones {
		if slices.Contains(c.notes, p) {
			continue
		}
		missing++
		switch {
		case tone.Need == Either && pair[tone.Degree] == 0:
			pair[tone.Degree]++
			points += 5
		case tone.Need == Optional && tone.Degree >= 9:
			points += 5
		case tone.Need == Optional && c.deep && c.notes[0] != int(c.root.Class()):
			points += 30
		case tone.Need == Optional:
			points += 15
		default:
			points += 60
			needed++
		}
	}
	return points, missing, needed
}

func (c plainChord) bass() int {
	root, bass := int(c.root.Class()), c.notes[0]
	tone, member := c.tones[bass]
	_, minor := c.tones[(root+3)%12]
	_, major := c.tones[(root+4)%12]
	upper := slices.IndexFunc(c.notes, func(p int) bool { return p != bass })
	inPlace := tone.Degree == 3 || !minor && !major && (tone.Degree == 2 || tone.Degree == 4)
	switch {
	case bass == root:
		return 0
	case member && (c.Formula() == "1 3 #5" || c.Formula() == "1 b3 b5 bb7"):
		return 10
	case !c.deep:
		return 15
	case !member && slices.Contains(c.notes[upper:], bass):
		return 80
	case member && (inPlace || tone.Degree == 5):
		return 30
	case member && tone.Degree == 7:
		return 40
	}
	return 50
}

func (c plainChord) tip() int {
	if c.key == (Key{}) {
		return 0
	}
	degree := (int(c.root.Class()) - int(c.key.tonic.Class()) + 12) % 12
	inside := map[bool][]int{false: {0, 2, 4, 5, 7, 9, 11}, true: {0, 2, 3, 5, 7, 8, 10, 11}}[c.key.Minor()]
	diminished := c.formula.has(minorThird | flatFifth)
	switch {
	case !slices.Contains(inside, degree):
		return 15
	case diminished && degree == 11:
		return -20
	case diminished:
		return 0
	}
	return map[int]int{0: -25, 7: -15, 5: -10}[degree]
}

// TestNamesAreTheBestOfAll compares names and points with those of all names
// there can be, rated plainly and sorted, the whole ones near the first before
// the others.
func TestNamesAreTheBestOfAll(t *testing.T) {
	for i, text := range []string{"x32010", "335553", "x35555", "3x2210", "x32xxx", "012345", "300011", "x30211", "133244", "x3x0x1",
		"x47x5x", "020xxx", "0x43xx", "x-10-12-12-13-9", "xx1212", "6x6776", "0003", "2210", "0000", "4321", "x21x", "3x35"} {
		shape, err := ParseShape(text)
		if err != nil {
			t.Fatal(err)
		}
		g := fretboard.Instrument{}
		if shape.Strings() == 4 {
			g.Tuning = fretboard.MustParseTuning("ukulele")
		}
		for _, key := range []Key{{}, allKeys[i], allKeys[29-i], keyWith(4, majorMode)} {
			g, _ := g.Normal()
			r, err := Names(g, shape, key)
			if err != nil {
				t.Fatal(err)
			}
			ranked := listen(g, shape).rank(key)
			var got []string
			for i, n := range r.Names {
				bass, _ := n.Chord.Bass()
				got = append(got, fmt.Sprint(n.Chord.root.Class(), " ", n.Chord.Formula(), " ", bass.Class(), " ", ranked[i].points))
			}
			if want := plainNames(r, shape.Strings() == 6, key); !slices.Equal(got, want) {
				t.Errorf("%s in %v is\n%q, want\n%q", text, key, got, want)
			}
		}
	}
}

// plainNames rates every name for what r sounds, and sorts them.
func plainNames(r Reading, deep bool, key Key) (names []string) {
	var notes []int
	for _, n := range r.Notes {
		notes = append(notes, int(n.Note.Class()))
	}
	type entry struct {
		order [5]int
		whole bool
		name  string
	}
	var all []entry
	place := 0
	for _, group := range idiomTable {
		for _, suffix := range group.suffixes {
			place++
			for root, name := range [...]string{"C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"} {
				c, err := ParseChord(name + suffix)
				if err != nil {
					panic(err)
				}
				tones := map[int]Tone{}
				for _, tone := range c.Tones() {
					tones[int(tone.Note.Class())] = tone
				}
				points, gaps, whole := plainChord{c, group.rarity, tones, notes, deep, key}.rate()
				inversion, bass := min(1, (root-notes[0]+12)%12), notes[0]
				if !deep {
					bass = root
				}
				all = append(all, entry{[5]int{points, gaps, inversion, place, (root - notes[0] + 12) % 12}, whole,
					fmt.Sprint(root, " ", c.Formula(), " ", bass, " ", points)})
			}
		}
	}
	slices.SortFunc(all, func(a, b entry) int { return slices.Compare(a.order[:], b.order[:]) })
	var remote []string
	for i, e := range all[:8] {
		switch behind := e.order[0] - all[0].order[0]; {
		case i == 0, e.whole && behind <= 30:
			names = append(names, e.name)
		case behind <= 60:
			remote = append(remote, e.name)
		}
	}
	return append(names, remote...)
}
