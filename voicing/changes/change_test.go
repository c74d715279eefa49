package changes_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// TestWhatTheFingersDo holds changes between named shapes, on 645.16 mm: fret 1
// lies 36.2 mm from the nut, 2 at 70.4, 3 at 102.6, 4 at 133.1, 5 at 161.8; strings lie 7.5,
// 7.6, 7.8 and 8.1 mm apart there (10.8 mm less a third of it times the share of
// the string that sounds).
func TestWhatTheFingersDo(t *testing.T) {
	for _, c := range []struct {
		why, steps string
		want       []string
		cost       changes.Cost
	}{
		{"two anchors, and the ring finger by two strings and a fret: 32.3 along and 15.5 across make 35.8",
			"Am=x02210 C=x32010",
			[]string{"index stays on string 2, fret 1", "middle stays on string 4, fret 2",
				"ring moves 35.8 mm, from string 3, fret 2 to string 5, fret 3"},
			changes.Cost{Moves: 5 + 9}},
		{"three fingers go over one string",
			"Am=x02210 E=022100",
			[]string{"index moves 7.5 mm, from string 2, fret 1 to string 3, fret 1",
				"middle moves 7.6 mm, from string 4, fret 2 to string 5, fret 2",
				"ring moves 7.6 mm, from string 3, fret 2 to string 4, fret 2"},
			changes.Cost{Moves: 3 * (5 + 2)}},
		{"a shape that slides: 102.6 - 36.2 = 66.4",
			"C7=x32310 D7=x54530",
			[]string{"index slides 66.4 mm on string 2 to fret 3", "middle slides 62.7 mm on string 4 to fret 4",
				"ring slides 59.2 mm on string 5 to fret 5", "little slides 59.2 mm on string 3 to fret 5"},
			changes.Cost{Slides: 8 + 8 + 7 + 7}},
		{"from the air, no hand to go along with",
			"Em7/A=x00000 E7=020100",
			[]string{"index is set down on string 3, fret 1", "middle is set down on string 5, fret 2"},
			changes.Cost{SetsDown: 20}},
		{"into the air",
			"E7=020100 Em7/A=x00000",
			[]string{"index lifts off string 3, fret 1", "middle lifts off string 5, fret 2"},
			changes.Cost{Lifts: 4}},
		{"the same grip again", "D7=xx0212 D7=xx0212",
			[]string{"index stays on string 2, fret 1", "middle stays on string 3, fret 2", "ring stays on string 1, fret 2"},
			changes.Cost{}},
	} {
		change := easiest(t, fretboard.Instrument{}, song(t, c.steps), changes.Options{}).Changes[0]
		var got []string
		for _, m := range change.Fingers {
			got = append(got, m.String())
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s, %s (-want +got):\n%s", c.why, c.steps, diff)
		}
		if change.Cost != c.cost {
			t.Errorf("%s, %s: %+v, want %+v", c.why, c.steps, change.Cost, c.cost)
		}
	}
}

// TestSetDownFarOff: the hand takes a finger along from fret 1 to fret 5.
func TestSetDownFarOff(t *testing.T) {
	change := easiest(t, fretboard.Instrument{}, song(t, "F5=133xxx A=577655"), changes.Options{}).Changes[0]
	for _, m := range change.Fingers {
		if m.Act == changes.SetsDown && m.Distance < 100 {
			t.Errorf("%v goes %.1f mm with the hand", m, m.Distance)
		}
	}
	if change.Cost.SetsDown < 10+25 {
		t.Errorf("set down for %d points", change.Cost.SetsDown)
	}
}

// TestAnchors holds what methods for beginners teach (common practice): in
// these changes a finger stays down, and in those a block moves.
func TestAnchors(t *testing.T) {
	for _, c := range []struct{ steps, stay, block string }{
		{"Am=x02210 C=x32010", "index middle", ""},
		{"C=x32010 Am=x02210", "index middle", ""},
		{"Am C", "index middle", ""},
		{"Am=x02210 E=022100", "", "index middle ring"},
		{"E=022100 Am=x02210", "", "index middle ring"},
		{"Am E", "", "index middle ring"},
		{"C=x32010 Am7=x02010", "index middle", ""},
		{"C=x32010 Cmaj7=x32000", "middle ring", ""},
		{"C=x32010 Fmaj7=xx3210", "index", "middle ring"},
		{"Am=x02210 Fmaj7=xx3210", "index", ""},
		{"E7=020100 E=022100", "index middle", ""},
		{"Em=022000 Am7=x02010", "", ""},
		{"Dm=xx0231 Dm7=xx0211", "", ""},
		{"G=320003 G/B=x20003", "", ""},
	} {
		change := easiest(t, fretboard.Instrument{}, song(t, c.steps), changes.Options{}).Changes[0]
		var stay []string
		for _, m := range change.Fingers {
			if m.Act == changes.Stays {
				stay = append(stay, m.Finger.String())
			}
		}
		var block []string
		for _, f := range change.Block() {
			block = append(block, f.String())
		}
		for _, f := range strings.Fields(c.stay) {
			if !slices.Contains(stay, f) {
				t.Errorf("%s: %v stay, want %s: %v", c.steps, stay, c.stay, change.Fingers)
			}
		}
		if strings.Join(block, " ") != c.block {
			t.Errorf("%s: the block is %v, want %q: %v", c.steps, block, c.block, change.Fingers)
		}
	}
}

// TestAStringKeepsItsFinger holds anchors where methods differ about which
// finger it is (common practice): the one on that string stays.
func TestAStringKeepsItsFinger(t *testing.T) {
	for _, c := range []struct {
		steps string
		s     fretboard.StringNumber
	}{
		{"G=320003 Em=022000", 5}, {"Em=022000 G=320003", 5}, {"D=xx0232 A7=x02020", 0}, {"A=x02220 D=xx0232", 0},
		{"G=320033 Cadd9=x32033", 2}, {"Dm=xx0231 F=xx3211", 3}, {"E=022100 B7=x21202", 5},
	} {
		change := easiest(t, fretboard.Instrument{}, song(t, c.steps), changes.Options{}).Changes[0]
		kept := slices.ContainsFunc(change.Fingers, func(m changes.Motion) bool {
			return m.Act == changes.Stays && m.To.Thick == c.s && m.To.Thin == c.s
		})
		if c.s != 0 && !kept {
			t.Errorf("%s: no finger stays on string %d: %v", c.steps, c.s, change.Fingers)
		}
	}
}

// TestWhoIsNeededFirst: the figure tells which finger must not be late.
func TestWhoIsNeededFirst(t *testing.T) {
	steps := song(t, "C=x32010 G=320003")
	steps[1].Plucked = []fretboard.StringNumber{6, 3, 2, 1, 2, 3}
	change := easiest(t, fretboard.Instrument{}, steps, changes.Options{}).Changes[0]
	if change.First != 6 || change.Stopped == 0 {
		t.Errorf("string %d is needed first, stopped by %v; want 6, stopped", change.First, change.Stopped)
	}
	for _, m := range change.Fingers {
		want := map[fretboard.StringNumber]int{6: 0, 5: -1, 1: 3}[m.To.Thin] // string 5 is not plucked
		if m.Act == changes.Lifts {
			want = 2 // string 2, open now, is plucked third
		}
		if m.To.Thin == 5 && m.From.Thin == 5 {
			want = -1
		}
		if m.Spare != want && !(m.From.Thin == 2 && m.Spare == 2) {
			t.Errorf("%v: %d to spare, want %d", m, m.Spare, want)
		}
	}

	steps = song(t, "C=x32010 Em=022000")
	steps[1].Plucked = []fretboard.StringNumber{6, 4, 3}
	open := easiest(t, fretboard.Instrument{}, steps, changes.Options{}).Changes[0]
	if open.First != 6 || open.Stopped != 0 {
		t.Errorf("string %d, stopped by %v; want 6, open", open.First, open.Stopped)
	}

	steps = song(t, "C=x32010 D=xx0232")
	steps[1].Plucked = []fretboard.StringNumber{6, 5, 4}
	if muted := easiest(t, fretboard.Instrument{}, steps, changes.Options{}).Changes[0]; muted.First != 4 {
		t.Errorf("string %d is needed first; want 4, since 6 and 5 are muted", muted.First)
	}
	if plain := easiest(t, fretboard.Instrument{}, song(t, "C D"), changes.Options{}).Changes[0]; plain.First != 0 {
		t.Errorf("string %d is needed first where nothing is plucked", plain.First)
	}
}

func TestRemarks(t *testing.T) {
	steps := song(t, "Am=x02210 C=x32010 E=022100 F=x03211")
	steps[1].Plucked = []fretboard.StringNumber{5, 3, 2, 1, 2, 3}
	steps[2].Plucked = []fretboard.StringNumber{6, 3, 2, 1}
	path := easiest(t, fretboard.Instrument{}, steps, changes.Options{})
	want := []string{"index and middle stay down", "string 5 is plucked first, stopped by ring"}
	if diff := cmp.Diff(want, path.Changes[0].Remarks()); diff != "" {
		t.Errorf("Am to C (-want +got):\n%s", diff)
	}
	second := strings.Join(path.Changes[1].Remarks(), "; ")
	for _, want := range []string{"string 6 is plucked first, open", "index has time: 1 pluck passes before it is needed",
		"no pluck needs ring in time"} {
		if !strings.Contains(second, want) {
			t.Errorf("C to E: %s; want %s", second, want)
		}
	}
	all := strings.Join(path.Remarks(), "; ")
	if !strings.Contains(all, "the hardest change is from ") || !strings.Contains(all, "F x03211: string 5 sounds A, below the root") {
		t.Errorf("remarks: %s", all)
	}
	if block := easiest(t, fretboard.Instrument{}, song(t, "Am=x02210 E=022100"), changes.Options{}).Changes[0].Remarks(); !slices.Contains(block, "index, middle and ring move as one block") {
		t.Errorf("Am to E: %q", block)
	}
}

// TestNamesOfActs fails when an act is added and not named.
func TestNamesOfActs(t *testing.T) {
	for act := changes.Stays; act <= changes.Lifts; act++ {
		if name := act.String(); name == "" || name[0] >= '0' && name[0] <= '9' {
			t.Errorf("act %d has no name", act)
		}
	}
	for aim := changes.LeastTotal; aim <= changes.LeastWorst; aim++ {
		if back, err := changes.ParseAim(aim.String()); err != nil || back != aim {
			t.Errorf("%v: %v, %v", aim, back, err)
		}
	}
	if _, err := changes.ParseAim("best"); err == nil {
		t.Error("an aim called best")
	}
	if voicing.Index.String() != "index" {
		t.Error("fingers have other names")
	}
}
