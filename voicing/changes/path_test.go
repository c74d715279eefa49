package changes_test

import (
	"errors"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// TestOpenShapesStay: in songs of open chords the path takes the shapes that
// handbooks print first (common practice); changes decide the fingers, and no
// shape is traded for an odd one.
func TestOpenShapesStay(t *testing.T) {
	for text, want := range map[string]string{
		"G C D Em":      "320003 x32010 xx0232 022000",
		"Am G C E":      "x02210 320003 x32010 022100",
		"D A Em G":      "xx0232 x02220 022000 320003",
		"E A B7":        "022100 x02220 x21202",
		"C G/B Am N.C.": "x32010 x20003 x02210 -",
		"N.C. Dm":       "- xx0231",
	} {
		for _, loop := range []bool{false, true} {
			if got := held(easiest(t, fretboard.Instrument{}, song(t, text), changes.Options{Loop: loop})); got != want {
				t.Errorf("%s, loop %v: %s, want %s", text, loop, got, want)
			}
		}
	}
}

// TestBeginnersAvoidBarres: the weights of package voicing reach the path.
func TestBeginnersAvoidBarres(t *testing.T) {
	o := changes.Options{Aim: changes.LeastWorst, Voicing: voicing.Options{Weights: voicing.Beginner()}}
	path := easiest(t, fretboard.Instrument{}, song(t, "C F C"), o)
	for _, g := range path.Grips {
		for _, p := range g.Fingering.Presses() {
			if p.Thick-p.Thin > 1 {
				t.Errorf("%s is held with a barre over strings %d to %d", g.Voicing.Shape(), p.Thick, p.Thin)
			}
		}
	}
}

// TestAPositionIsKept: between two chords far up the neck the third follows,
// though its shapes near the nut cost less.
func TestAPositionIsKept(t *testing.T) {
	lowest := func(steps string) fretboard.Fret {
		path := easiest(t, fretboard.Instrument{}, song(t, steps), changes.Options{Voicing: voicing.Options{Closed: true}, Shapes: 40})
		return path.Grips[1].Fingering.Presses()[0].Fret
	}
	if near, far := lowest("F=133211 D F=133211"), lowest("E=12-14-14-13-12-12 D E=12-14-14-13-12-12"); near > 5 || far < 9 {
		t.Errorf("beside fret 1, D is held at fret %d; beside fret 12, at fret %d", near, far)
	}
}

func TestFewSteps(t *testing.T) {
	for _, c := range []struct {
		text    string
		loop    bool
		changes int
	}{{"", true, 0}, {"N.C.", true, 0}, {"C", false, 0}, {"C", true, 0}, {"N.C. C N.C.", true, 0}, {"C C", true, 2}, {"C N.C. G", false, 1}} {
		path := easiest(t, fretboard.Instrument{}, song(t, c.text), changes.Options{Loop: c.loop})
		if len(path.Changes) != c.changes || len(path.Grips) != len(strings.Fields(c.text)) || (path.Worst < 0) != (c.changes == 0) {
			t.Errorf("%q, loop %v: %d changes, worst %d", c.text, c.loop, len(path.Changes), path.Worst)
		}
	}
	path := easiest(t, fretboard.Instrument{}, song(t, "C N.C. G Am"), changes.Options{Loop: true})
	var ends [][2]int
	for _, c := range path.Changes {
		ends = append(ends, [2]int{c.From, c.To})
	}
	if len(ends) != 3 || ends[0] != [2]int{0, 2} || ends[1] != [2]int{2, 3} || ends[2] != [2]int{3, 0} {
		t.Errorf("the changes of a loop lead %v", ends)
	}
	named := song(t, "Am C")
	named[1] = changes.Step{Shape: shape(t, "x32010")}
	if got := held(easiest(t, fretboard.Instrument{}, named, changes.Options{})); got != "x02210 x32010" {
		t.Errorf("a shape without a name is held as %s", got)
	}
	again := easiest(t, fretboard.Instrument{}, song(t, "F F F"), changes.Options{}).Changes
	if again[0].Cost.Total() != 0 || again[1].Effort != 0 {
		t.Errorf("the same chord twice running costs %+v", again)
	}
}

// TestWhatCannotBePlayed holds the refusals, each located in the song.
func TestWhatCannotBePlayed(t *testing.T) {
	guitar := fretboard.Instrument{}
	plucked := song(t, "C G")
	plucked[1].Plucked = []fretboard.StringNumber{6, 7}
	for _, c := range []struct {
		why              string
		g                fretboard.Instrument
		steps            []changes.Step
		o                changes.Options
		notation, text   string
		reason, printed  string
		offset           int
		mended, mentions string
	}{
		{"no shape sounds it", fretboard.Instrument{Tuning: fretboard.MustParseTuning("E2 B2")}, song(t, "E5 C13"), changes.Options{},
			"chords", "C13", "chord 2: no playable shape", "E5 | C13", 5, "name the shape", ""},
		{"five frets out of reach", guitar, song(t, "C G=x13579 Am"), changes.Options{},
			"chords", "x13579", "chord 2: ", "C | G=x13579 | Am", 6, "", "further than hands reach"},
		{"another instrument's shape", guitar, song(t, "C G=0232"), changes.Options{},
			"chords", "0232", "chord 2: 4 strings in the shape, 6 on the instrument", "C | G=0232", 6, "give each string", ""},
		{"a fret off the neck", fretboard.Instrument{Frets: 12}, song(t, "E=x-x-14-13-12-12"), changes.Options{},
			"chords", "x-x-14-13-12-12", "chord 1: fret", "E=x-x-14-13-12-12", 2, "choose a lower shape", ""},
		{"a string it does not have", guitar, plucked, changes.Options{},
			"chords", "G", "chord 2: string 7 is plucked", "C | G", 4, "name strings", ""},
		{"frets", fretboard.Instrument{Frets: 99}, song(t, "C"), changes.Options{}, "frets", "99", "an instrument has", "99", 0, "", ""},
		{"shapes", guitar, song(t, "C"), changes.Options{Shapes: 101}, "shapes", "101", "1 to 100", "101", 0, "0 means 8", ""},
		{"fewer than none", guitar, song(t, "C"), changes.Options{Shapes: -1}, "shapes", "-1", "1 to 100", "-1", 0, "0 means 8", ""},
		{"aim", guitar, song(t, "C"), changes.Options{Aim: 7}, "aim", "7", "no such aim", "7", 0, "total or worst", ""},
		{"fingers", guitar, song(t, "C"), changes.Options{Voicing: voicing.Options{Fingers: 5}}, "fingers", "5", "a hand has", "5", 0, "0 means 4", ""},
	} {
		p, err := changes.Easiest(c.g, c.steps, c.o)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%s: %v, %v; want an ImpossibleError", c.why, held(p), err)
			continue
		}
		if p.Grips != nil || impossible.Notation != c.notation || impossible.Text() != c.text || impossible.Source != c.printed ||
			impossible.Offset != c.offset || !strings.HasPrefix(impossible.Reason, c.reason) ||
			!strings.Contains(impossible.Mend, c.mended) || !strings.Contains(impossible.Reason, c.mentions) {
			t.Errorf("%s: %v\n%+v", c.why, err, impossible.Place)
		}
	}
}

// TestFewFingers: no grip takes more fingers than the options allow, though
// more would make the next change easier.
func TestFewFingers(t *testing.T) {
	for most, text := range map[int]string{1: "Am E Am F Em F Dm A7", 2: "Em Am7 E7 A7", 3: "G Am E D"} {
		path := easiest(t, fretboard.Instrument{}, song(t, text), changes.Options{Voicing: voicing.Options{Fingers: most}})
		for _, g := range path.Grips {
			if n := len(g.Fingering.Presses()); n > most {
				t.Errorf("%s is held with %s, of %d fingers allowed", g.Voicing.Shape(), g.Fingering, most)
			}
		}
	}
}

// TestManyStrings: more strings and odd instruments take not forever, and no
// length is too small.
func TestManyStrings(t *testing.T) {
	for _, g := range []fretboard.Instrument{
		{Tuning: fretboard.MustParseTuning("E2 A2 D3 G3 B3 E4 A4 D5 G5 C6 F6 Bb6")},
		{Tuning: fretboard.MustParseTuning("ukulele")}, {Scale: 0.001, Spacing: 0.001}, {Scale: 1200, Spacing: 999},
		{Hand: fretboard.LeftTurned},
	} {
		if _, err := changes.Easiest(g, song(t, "C G"), changes.Options{Loop: true, Voicing: voicing.Options{Span: 150}}); err != nil {
			t.Errorf("%v: %v", g, err)
		}
	}
}

const sixteen = "G D/F# Em Em7 C Cmaj7 Am7 D7 Bm E7 Am F Dm7 G7 C D"

func BenchmarkEasiest(b *testing.B) {
	for _, c := range []struct {
		name, song string
		o          changes.Options
	}{
		{"16 chords", sixteen, changes.Options{}},
		{"16 chords, loop", sixteen, changes.Options{Loop: true}},
		{"16 chords, loop, worst", sixteen, changes.Options{Loop: true, Aim: changes.LeastWorst}},
		{"16 chords of 16 shapes, loop", sixteen, changes.Options{Loop: true, Shapes: 16}},
		{"16 chords of 4 shapes, loop", sixteen, changes.Options{Loop: true, Shapes: 4}},
		{"4 chords", "G C D Em", changes.Options{}},
	} {
		steps := song(b, c.song)
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			total := 0
			for b.Loop() {
				total = easiest(b, fretboard.Instrument{}, steps, c.o).Total
			}
			b.ReportMetric(float64(total)/100, "points")
		})
	}
}
