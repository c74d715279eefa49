package musicxml_test

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/musicxml"
	"weft.example/picking/pickingtest"
)

func TestSurvivesWhatEveryEncoderMust(t *testing.T) {
	for _, o := range bothWays {
		pickingtest.Check(t, func(w io.Writer, p picking.Passage) error { return musicxml.Encode(w, p, o) })
	}
	pickingtest.Check(t, func(w io.Writer, p picking.Passage) error { return musicxml.EncodeCompressed(w, p, musicxml.Options{}) })
}

// arranged returns the passage of a song, which must be good.
func arranged(t testing.TB, chords, figures string, s picking.Setting) picking.Passage {
	t.Helper()
	p, err := picking.Arrange(picking.MustParseProgression(chords), picking.Figures{picking.MustParseFigure(figures)}, s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// listed returns a listed passage by its name.
func listed(t testing.TB, name string) picking.Passage {
	t.Helper()
	for _, c := range pickingtest.List() {
		if c.Name == name {
			return c.Passage
		}
	}
	t.Fatalf("no passage %s", name)
	return picking.Passage{}
}

// items returns what stands in all measures.
func items(t testing.TB, p picking.Passage, o musicxml.Options) (list []item) {
	t.Helper()
	s, err := parsed(encoded(t, p, o))
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range s.Measures {
		list = append(list, m.Items...)
	}
	return list
}

// TestStringsAndFretsOfTheStandard uses the examples of the MusicXML 4.0
// reference for string and fret: which pitch each place has.
func TestStringsAndFretsOfTheStandard(t *testing.T) {
	for _, c := range []struct {
		shape, figure, pitch string
		str, fret            int
	}{
		{"C=xxx5xx", "3", "C4", 3, 5},
		{"G=xx5xxx", "4", "G3", 4, 5},
		{"C=x3xxxx", "5", "C3", 5, 3},
		{"F#=x-x-x-x-x-14", "1", "F#5", 1, 14},
	} {
		found := 0
		for _, x := range items(t, arranged(t, c.shape, "1/1: "+c.figure, picking.Setting{}), musicxml.Options{}) {
			if x.Pitch == nil {
				continue
			}
			found++
			n, fault := sounded(x, 0, false)
			name := x.Pitch.Step + strings.Repeat("#", x.Pitch.Alter) + fmt.Sprint(x.Pitch.Octave)
			if name != c.pitch || n.str != c.str || n.fret != c.fret || fault != "" {
				t.Errorf("%s: %s on string %d, fret %d. %s", c.shape, name, n.str, n.fret, fault)
			}
		}
		if found != 2 {
			t.Errorf("%s: %d notes on two staves", c.shape, found)
		}
	}
}

// TestCapo: the standard has the tuning without the capo, which changes the
// open strings, and counts an open string as fret 0.
func TestCapo(t *testing.T) {
	p := arranged(t, "Am=x02210", "1/1: 5", picking.Setting{Instrument: fretboard.Instrument{Capo: 3}})
	text := string(encoded(t, p, musicxml.Options{Staves: musicxml.TabAlone}))
	for _, want := range []string{"<capo>3</capo>", "<fret>0</fret>", "<step>C</step>\n          <octave>3</octave>", // A2 and three frets
		`<staff-tuning line="2">
            <tuning-step>A</tuning-step>
            <tuning-octave>2</tuning-octave>`, "<root-step>C</root-step>", "<words>(Am)</words>", "<frame-note>\n            <string>5</string>\n            <fret>0</fret>"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s", want)
		}
	}
}

// TestTurnedGuitar: strings keep numbers and lines; a down-bow is toward the
// floor, which is said.
func TestTurnedGuitar(t *testing.T) {
	p := listed(t, "turned")
	if fault := readBack(p, musicxml.Options{}, encoded(t, p, musicxml.Options{})); fault != "" {
		t.Error(fault)
	}
	text := string(encoded(t, p, musicxml.Options{}))
	if !strings.Contains(text, "toward the floor, where string 6 lies</words>") || !strings.Contains(text, `<staff-tuning line="1">
            <tuning-step>E</tuning-step>
            <tuning-octave>2</tuning-octave>`) {
		t.Error("not said which way is down, or the lines are turned")
	}
	if strings.Contains(string(encoded(t, listed(t, "usual"), musicxml.Options{})), "<words>Turned") {
		t.Error("a usual guitar is not turned")
	}
}

// TestRepeatsFoldOnlyWhereAlike counts measures and repeats.
func TestRepeatsFoldOnlyWhereAlike(t *testing.T) {
	for _, c := range []struct {
		name              string
		measures, repeats int
	}{
		{"repeats", 7, 1}, {"repeat-differs", 8, 0}, {"repeat-one-bar", 3, 1}, {"most-bars", 256, 1}, {"usual", 4, 0},
	} {
		p := listed(t, c.name)
		s, err := parsed(encoded(t, p, musicxml.Options{}))
		if err != nil {
			t.Fatal(err)
		}
		repeats := 0
		for _, m := range s.Measures {
			for _, x := range m.Items {
				if x.Repeat != nil && x.Repeat.Direction == "backward" {
					repeats++
				}
			}
		}
		if len(s.Measures) != c.measures || repeats != c.repeats {
			t.Errorf("%s: %d measures, %d repeats", c.name, len(s.Measures), repeats)
		}
	}
}

// TestEverySignPartsPlayings: whatever a second playing does otherwise, it
// stands in full.
func TestEverySignPartsPlayings(t *testing.T) {
	for what, change := range map[string]func(*picking.Bar){
		"a stroke": func(b *picking.Bar) { b.Picks[1].Stroke = picking.DownStroke + picking.UpStroke - b.Picks[1].Stroke },
		"a fret":   func(b *picking.Bar) { b.Picks[1].Fret++ },
		"a string": func(b *picking.Bar) { b.Picks[1].String++ },
		"a length": func(b *picking.Bar) { b.Picks[1].Length -= 60 },
		"a pitch":  func(b *picking.Bar) { b.Picks[1].Note.Octave++ },
		"a ring":   func(b *picking.Bar) { b.Picks[1].Rings = b.Picks[1].Length },
		"a chord": func(b *picking.Bar) {
			b.Chords[0].Sounds = b.Chords[0].Sounds.Transpose(fretboard.Interval{Letters: 1, Semitones: 2})
		},
		"one pick":  func(b *picking.Bar) { b.Picks = b.Picks[:len(b.Picks)-1] },
		"no change": func(*picking.Bar) {},
	} {
		p := arranged(t, "|: Am=x02210 :|", "5 3 2 1", picking.Setting{Once: true})
		p.Bars[0].Picks[1].Rings, p.Bars[1].Picks[1].Rings = 960, 960
		p.Bars[0].Picks[3].Rings, p.Bars[1].Picks[3].Rings = 960, 960
		for i := range p.Bars[0].Picks { // both playings alike, whatever the arranger thinks of the end
			p.Bars[1].Picks[i].Stroke, p.Bars[1].Picks[i].Rings = p.Bars[0].Picks[i].Stroke, p.Bars[0].Picks[i].Rings
		}
		change(&p.Bars[1])
		s, err := parsed(encoded(t, p, musicxml.Options{}))
		if err != nil {
			t.Fatal(err)
		}
		if want := map[bool]int{true: 1, false: 2}[what == "no change"]; len(s.Measures) != want {
			t.Errorf("%s: %d measures", what, len(s.Measures))
		}
	}
}

// TestAccidentals: an accidental shows where the signature or the bar so far
// says otherwise; a tied note shows none, and the next after it does.
func TestAccidentals(t *testing.T) {
	for _, c := range []struct{ chords, figure, want string }{
		{"E=022100 | Am=x02210", "1/4 root 6: 3 3 2 1", "G# G B E|A A C E"},
		{"A=x02220 | D=xx0232", "1/4 root 6: 5 2 1 2", "A C E C|D D F D"}, // three sharps or two: none shown
		{"G7=320001 | C=x32010", "1/4 root 6: 6 1 1 6", "G F F G|C E E C"},
		{"A7=x02020 | A=x02220", "1/4 root 6: 5 3 3 2", "A Gn G C|A A A C"},
	} {
		p := arranged(t, c.chords, c.figure, picking.Setting{Once: true, Fit: picking.Bass})
		var got []string
		s, err := parsed(encoded(t, p, musicxml.Options{}))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range s.Measures {
			var names []string
			for _, x := range m.Items {
				if x.Pitch != nil && x.Staff == "1" {
					names = append(names, x.Pitch.Step+map[string]string{"sharp": "#", "natural": "n", "flat": "b"}[x.Accidental])
				}
			}
			got = append(got, strings.Join(names, " "))
		}
		if got := strings.Join(got, "|"); got != c.want {
			t.Errorf("%s: %s, want %s", c.chords, got, c.want)
		}
	}
}

// TestClefs: guitars have the G clef with an octave sign, small instruments the
// plain one, basses the F clef with an octave sign (common practice).
func TestClefs(t *testing.T) {
	for name, want := range map[string]string{"usual": "G -1", "ukulele": "G 0", "bass": "F -1"} {
		for _, x := range items(t, listed(t, name), musicxml.Options{}) {
			if len(x.Clefs) == 2 {
				if got := fmt.Sprint(x.Clefs[0].Sign, " ", x.Clefs[0].Octave); got != want {
					t.Errorf("%s: %s", name, got)
				}
			}
		}
	}
}

func TestEmptyPassage(t *testing.T) {
	for _, o := range bothWays {
		if fault := readBack(picking.Passage{}, o, encoded(t, picking.Passage{}, o)); fault != "" {
			t.Error(fault)
		}
	}
}

func TestRefusals(t *testing.T) {
	usual := func() picking.Passage { return listed(t, "usual") }
	for _, c := range []struct {
		want   string
		staves musicxml.Staves
		bend   func(*picking.Passage)
	}{
		{"no such staves", 2, func(*picking.Passage) {}},
		{"not a time signature", 0, func(p *picking.Passage) { p.Meter = picking.Meter{Count: 40, Unit: 4} }},
		{"tuned below C0", 0, func(p *picking.Passage) { p.Instrument.Tuning = fretboard.MustParseTuning("B-1 A2") }},
		{"bar 2 does not begin where", 0, func(p *picking.Passage) { p.Bars[1].At++ }},
		{"bar 4 has no length, or more", 0, func(p *picking.Passage) { p.Bars[3].Length += 15 }},
		{"bar 4 has a length that no notes make", 0, func(p *picking.Passage) { p.Bars[3].Length -= 3 }},
		{"bar 1 has a chord that reaches", 0, func(p *picking.Passage) { p.Bars[0].Chords[0].Length++ }},
		{"bar 1 has a pick that begins outside", 0, func(p *picking.Passage) { p.Bars[0].Picks[0].Length = 0 }},
		{"bar 1 has a pick that does not come after", 0, func(p *picking.Passage) { p.Bars[0].Picks[1].At = 0 }},
		{"bar 2 has a pick with a time", 0, func(p *picking.Passage) { p.Bars[1].Picks[1].Length = 7 }},
		{"bar 1 plucks a string", 0, func(p *picking.Passage) { p.Bars[0].Picks[0].String = 7 }},
		{"bar 1 has a pick below the nut", 0, func(p *picking.Passage) { p.Bars[0].Picks[0].Fret = -1 }},
		{"bar 1 has a note that no staff has", 0, func(p *picking.Passage) { p.Bars[0].Picks[0].Note.Octave = -1 }},
	} {
		p := usual()
		c.bend(&p)
		var out strings.Builder
		err := musicxml.Encode(&out, p, musicxml.Options{Staves: c.staves})
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("want %q, got %v and %d bytes", c.want, err, out.Len())
		}
	}
}

func TestStavesHaveNames(t *testing.T) {
	for _, s := range []musicxml.Staves{musicxml.Both, musicxml.TabAlone} {
		if got, err := musicxml.ParseStaves(strings.ToUpper(s.String())); err != nil || got != s {
			t.Error(s, got, err)
		}
	}
	if _, err := musicxml.ParseStaves("three"); err == nil {
		t.Error("three staves")
	}
}
