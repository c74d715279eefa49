package voicing_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// first returns the first n shapes that the finder yields, printed; 0 for all.
func first(g fretboard.Instrument, chord voicing.Chord, n int) []string {
	return asked(g, chord, voicing.Options{}, n)
}

// asked is first under options.
func asked(g fretboard.Instrument, chord voicing.Chord, o voicing.Options, n int) []string {
	var shapes []string
	for v := range voicing.Find(g, chord, o) {
		if shapes = append(shapes, v.Shape().String()); len(shapes) == n {
			break
		}
	}
	return shapes
}

// firstShapes holds what must come first. All of it is common practice: the
// guitar's open and barre shapes as every handbook prints them, and the first
// shapes of ukulele and mandolin methods. Where players hold several, each is
// listed.
var firstShapes = []struct{ tuning, shapes string }{
	{"standard", `E=022100 Em=022000 E7=020100 G=320003 A=x02220 Am=x02210 A7=x02020 C=x32010 C7=x32310
		Cmaj7=x32000 B7=x21202 D=xx0232 Dm=xx0231 D7=xx0212 Dsus4=xx0233
		G/B=x20003 C/G=332010 C/E=032010 D/F#=200232`},
	{"standard", `Am7=x02010 Em7=020000|022030 Dm7=xx0211 G7=320001 Fmaj7=xx3210 Asus4=x02230 Asus2=x02200
		Dsus2=xx0230 Esus4=022200 A7sus4=x02030 Bm7=x20202|x24232 E5=022xxx A5=x022xx
		Am/G=302210 Am/C=x32210 Em/D=xx0000 Cadd9=x32030 C9=x32330 E9=020102`},
	{"standard", `F=133211 Fm=133111 F#=244322 F#m=244222 Gm=355333 Ab=466544 Bb=x13331 B=x24442 Bm=x24432
		Cm=x35543 C#m=x46654`},
	{"half step down", "Eb=022100 Gb=320003 B=x32010 Db=xx0232"},
	{"drop D", "D=000232 A=x02220 E7=220100 G5=555xxx Am=x02210 C=x32010"},
	{"open G", "G=x00000|000000 C=x55555|555555"},
	{"DADGAD", "Dsus4=000000 D5=000xxx"},
	{"seven-string", "E=x022100 Am=xx02210 B=0224442"},
	{"baritone", "B=022100 E=x02220 A=xx0232 D=320003 G=x32010 C=133211"},
	{"ukulele", `C=0003 Am=2000 F=2010 G7=0212 G=0232 D7=2223|2020 Dm=2210 D=2220 A=2100 A7=0100 E7=1202
		C7=0001 Bb=3211 Gm=0231 Bm=4222 Am7=0000 Cmaj7=0002 Em=0432|0402`},
	{"mandolin", "G=0023 C=0230 D=2002 Em=0220 Dm=2001 F=5301|2301 A=2240 Am=2230|5200 G7=0021 Bb=3011"},
	{"tenor guitar", "C=0023 G=2002 D=2240"},
	{"G4 D3 G3 B3 D4", "G=00000 C=02012 Em=02002"},
}

func TestKnownShapesComeFirst(t *testing.T) {
	for _, row := range firstShapes {
		g := tuned(t, row.tuning)
		for _, entry := range strings.Fields(row.shapes) {
			chord, shapes, _ := strings.Cut(entry, "=")
			best, err := voicing.Best(g, mustChord(chord), voicing.Options{})
			if err != nil || !slices.Contains(strings.Split(shapes, "|"), best.Shape().String()) {
				t.Errorf("%s, %s: %s, %v; want %s, of %s", row.tuning, chord, best.Shape(), err, shapes,
					first(g, mustChord(chord), 5))
			}
		}
	}
}

// TestTheSecondShapesAreSensible holds shapes that handbooks print beside the
// first ones (common practice): each must be among the first eight.
func TestTheSecondShapesAreSensible(t *testing.T) {
	g := fretboard.Instrument{}
	for chord, shape := range map[string]string{
		"G": "320033", "F": "xx3211", "A7": "x02223", "C": "x35553", "G7": "353433", "B7": "x24242", "Em7": "022030",
		"D": "x57775", "C7": "x35353", "E7": "022130", "Bm": "799777", "Dm7": "x57565", "F#m": "xx4222", "Cmaj7": "x32003",
	} {
		if shapes := first(g, mustChord(chord), 8); !slices.Contains(shapes, shape) {
			t.Errorf("%s: %s is not among %v", chord, shape, shapes)
		}
	}
}

// TestWhatCannotBeSounded holds the refusals: N.C., instruments with too few
// strings for what makes the chord, and instruments that cannot be.
func TestWhatCannotBeSounded(t *testing.T) {
	for _, c := range []struct{ why, tuning, chord, reason, mend string }{
		{"silence", "standard", "N.C.", "silence has no shape", "name a chord"},
		{"a seventh on two strings", "E2 B2", "C13", "no playable shape sounds it on 2 strings", "name the shape: C13=..."},
		{"a triad on one string", "E2", "Em", "no playable shape sounds it on 1 string", "name the shape: Em=..."},
		{"a power chord on one string", "E2", "E5", "no playable shape sounds it on 1 string", "name the shape: E5=..."},
	} {
		v, err := voicing.Best(tuned(t, c.tuning), mustChord(c.chord), voicing.Options{})
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%s: %v, %v; want an ImpossibleError", c.why, v.Shape(), err)
			continue
		}
		if impossible.Text() != c.chord || impossible.Reason != c.reason || !strings.Contains(impossible.Mend, c.mend) {
			t.Errorf("%s: %v; want %s; %s", c.why, err, c.reason, c.mend)
		}
		if shapes := first(tuned(t, c.tuning), mustChord(c.chord), 1); shapes != nil {
			t.Errorf("%s: Find yields %v where Best refuses", c.why, shapes)
		}
	}
	if _, err := voicing.Best(fretboard.Instrument{Frets: 99}, mustChord("C"), voicing.Options{}); err == nil {
		t.Error("an instrument with 99 frets is no error")
	}
	if shapes := first(fretboard.Instrument{Frets: 99}, mustChord("C"), 1); shapes != nil {
		t.Errorf("an instrument with 99 frets has shapes %v", shapes)
	}
}

// TestFewStringsSoundTheCharacter: where the strings do not suffice, the root,
// the third and the seventh sound, and remarks say what lacks.
func TestFewStringsSoundTheCharacter(t *testing.T) {
	for _, c := range []struct{ tuning, chord, remark string }{
		{"E2 B2 E3", "C13", "the shape lacks the thirteenth"},
		{"E2 B2", "Bdim", "the shape lacks the fifth"},
		{"E2 B2", "Cadd9", "the shape lacks the ninth"},
		{"D3 A3 E4", "Am7/G#", "the shape does not sound the slash bass G#"},
	} {
		v, err := voicing.Best(tuned(t, c.tuning), mustChord(c.chord), voicing.Options{})
		if err != nil || !slices.Contains(v.Remarks(), c.remark) {
			t.Errorf("%s on %s: %s, %v, remarks %q; want %q", c.chord, c.tuning, v.Shape(), err, v.Remarks(), c.remark)
		}
	}
	plain, err := voicing.Best(tuned(t, "E2 B2"), mustChord("C"), voicing.Options{})
	if err != nil || slices.ContainsFunc(plain.Remarks(), func(r string) bool { return strings.Contains(r, "lacks") }) {
		t.Errorf("a triad needs no fifth, but on two strings: %s, %v, %q", plain.Shape(), err, plain.Remarks())
	}
}

// TestABarreNeedsFreeStrings holds the rule of the barre on shapes of five
// strings and more that four fingers hold only with one, all of tones of the
// chord.
func TestABarreNeedsFreeStrings(t *testing.T) {
	for _, c := range []struct {
		why, chord, shape string
		hand              fretboard.Hand
		found             bool
	}{
		{"a full barre", "F", "133211", fretboard.RightHanded, true},
		{"a barre beside a muted thick string", "Bb", "x13331", fretboard.RightHanded, true},
		{"an open thick string beside the tip of the barre", "Em7", "079787", fretboard.RightHanded, true},
		{"the same where the palm lies on that side", "Em7", "079787", fretboard.LeftTurned, false},
		{"an open thin string beside the palm", "C", "875950", fretboard.RightHanded, false},
		{"the same where the tip lies on that side", "C", "875950", fretboard.LeftTurned, true},
		{"a muted one beside the palm", "C", "87595x", fretboard.RightHanded, true},
		{"a fret under the barre", "Am7", "575558", fretboard.RightHanded, true},
		{"an open string under the barre", "Am7", "575058", fretboard.RightHanded, false},
	} {
		g := fretboard.Instrument{Hand: c.hand}
		if v := mustVoicing(t, g, c.chord, c.shape); !soundsOnlyItsTones(v) || !soundsAllItNeeds(v) || !withinReach(v, 0) {
			t.Errorf("%s: %s is not found for another reason", c.why, c.shape)
		}
		if found := slices.Contains(first(g, mustChord(c.chord), 0), c.shape); found != c.found {
			t.Errorf("%s: %s found: %v", c.why, c.shape, found)
		}
	}
}

func TestTwelveStringsTakeNotForever(t *testing.T) {
	for _, tuning := range []string{
		"E2 A2 D3 G3 B3 E4 A4 D5 G5 C6 F6 Bb6",
		"E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4",
		"C2 G2 C3 E3 G3 C4 E4 G4 C5 E5 G5 C6",
	} {
		for _, chord := range []string{"C", "F#m7b5", "Bb13", "E7alt"} {
			if _, err := voicing.Best(tuned(t, tuning), mustChord(chord), voicing.Options{}); err != nil {
				t.Errorf("%s on %s: %v", chord, tuning, err)
			}
		}
	}
}

func BenchmarkBest(b *testing.B) {
	for _, c := range []struct{ tuning, chord string }{
		{"standard", "C"}, {"standard", "Bm"}, {"standard", "F#m7b5"}, {"standard", "C13"}, {"standard", "G/B"},
		{"ukulele", "D7"}, {"E2 A2 D3 G3 B3 E4 A4 D5 G5 C6 F6 Bb6", "C"},
	} {
		g, chord := tuned(b, c.tuning), mustChord(c.chord)
		b.Run(c.chord+" on "+c.tuning, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := voicing.Best(g, chord, voicing.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkFindAllOn15Frets(b *testing.B) {
	for _, symbol := range []string{"C", "Am7", "C13"} {
		b.Run(symbol, func(b *testing.B) {
			b.ReportAllocs()
			chord, shapes := mustChord(symbol), 0
			for b.Loop() {
				shapes = 0
				for range voicing.Find(fretboard.Instrument{Frets: 15}, chord, voicing.Options{}) {
					shapes++
				}
			}
			b.ReportMetric(float64(shapes), "shapes")
		})
	}
}
