package voicing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

func mustKey(t testing.TB, text string) voicing.Key {
	t.Helper()
	if text == "" {
		return voicing.Key{}
	}
	k, err := voicing.ParseKey(text)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// TestFirstNames holds the names that players give to open shapes, inversions
// and bass runs (common practice).
func TestFirstNames(t *testing.T) {
	for tuning, entries := range map[string]string{
		"standard": `E=022100 Em=022000 E7=020100 Em7=020000 G=320003 G=320033 A=x02220 Am=x02210 A7=x02020
			Am7=x02010 C=x32010 C7=x32310 Cmaj7=x32000 Cadd9=x32030 B7=x21202 D=xx0232 Dm=xx0231 D7=xx0212
			Dm7=xx0211 Dmaj7=xx0222 Dsus4=xx0233 Dsus2=xx0230 Asus2=x02200 Asus4=x02230 Esus4=022200
			F=133211 F=xx3211 Fmaj7=xx3210 Bm=x24432 F#m=244222 E5=022xxx A5=x022xx
			C/G=332010 C/G=335553 C/E=032010 G/B=x20003 D/F#=200232 D/F#=2x0232 D/A=x00232 A/C#=x42220
			Am/G=3x2210 D/C=x30232 C/B=x22010 F/G=3x3211 C/Bb=x12010 Am/E=002210
			E7#9=076780 F#m7b5=2x221x G9sus4=300011 A9=x02423 E7#5=0x011x Bdim7=x2313x Caug=x3211x
			Cm(maj7)=x3544x C6/9=x32233 D13=x54557 G7b9=3x3434 C9sus4=x33333`,
		"ukulele":  "C=0003 F=2010 Am=2000 G7=0212 G=0232 Dm=2210 C7=0001 Em=0432",
		"mandolin": "G=0023 D=2002 C=0230 Am=2235",
		"drop D":   "D5=000xxx D=000232 E5=222xxx",
	} {
		for entry := range strings.FieldsSeq(entries) {
			want, shape, _ := strings.Cut(entry, "=")
			r := reading(t, tuned(t, tuning), mustShape(t, shape), voicing.Key{})
			if got := r.Names[0].Chord.String(); got != want {
				t.Errorf("%s, %s is %s, want %s: %v", tuning, shape, got, want, r.Names)
			}
		}
	}
}

// TestRankedNames holds whole lists: what comes second is an answer too.
func TestRankedNames(t *testing.T) {
	for _, c := range []struct{ why, shape, want string }{
		{"the clear case has one name", "x32010", "C certain"},
		{"a sixth chord on its root", "x35555", "C6 certain; Am7/C possible"},
		{"without its fifth it is rather an inversion", "x32210", "Am/C likely; C6 without G possible"},
		{"a suspension is two chords", "x33011", "Csus4 certain; Fsus2/C possible"},
		{"a bass run names the chord above, as long as its note is only in the bass", "3x2210", "Am/G likely; Am7/G possible; C6/G possible"},
		{"the seventh sounds twice, so the run is an inversion", "3x2213", "Am7/G likely; C6/G possible; Am/G possible"},
		{"with no third at all", "x355xx", "C5 certain"},
		{"any tone of a diminished seventh may be the root", "x3424x", "Cdim7 likely; D#dim7/C possible; F#dim7/C possible; Adim7/C possible"},
		{"any tone of an augmented triad may be the root", "x3211x", "Caug likely; Eaug/C possible; Abaug/C possible"},
		{"root-position half-diminished before the sixth chord", "x3434x", "Cm7b5 certain; Ebm/C possible"},
		{"root, fifth and seventh are the chord on the bass without its third", "020xxx", "E7no3 certain"},
		{"spread over the octaves too", "0x0x0x", "E7no3 certain"},
		{"on any string", "x020xx", "A7no3 certain"},
		{"with the major seventh", "021xxx", "Emaj7no3 certain"},
		{"a slash chord without its fifth is only possible", "0x43xx", "F#/E without C# possible; F#7/E without C# possible"},
		{"so is an inversion", "x352xx", "Am7/C without E possible"},
		{"b5 or #11 without the fifth", "x32332", "C9b5 likely; C9#11 without G possible"},
	} {
		r := reading(t, fretboard.Instrument{}, mustShape(t, c.shape), voicing.Key{})
		var got []string
		for _, n := range r.Names {
			if n.Confidence > voicing.Remote {
				got = append(got, n.String()+" "+n.Confidence.String())
			}
		}
		if text := strings.Join(got, "; "); text != c.want {
			t.Errorf("%s: %s is %s, want %s", c.why, c.shape, text, c.want)
		}
	}
}

// TestFewNotes: one note is no chord, two are an interval, and what else they
// may be is said with what they lack.
func TestFewNotes(t *testing.T) {
	for _, c := range []struct{ shape, key, want string }{
		{"x3xxxx", "", "one note, C"},
		{"x3xx1x", "", "one note in octaves, C"},
		{"55xxxx", "", "a perfect fourth, A and D: D5/A"},
		{"50xxxx", "", "one note in unison, A"},
		{"x4xxxx", "Ab", "one note, Db"},
		{"x4xxxx", "", "one note, C#"},
		{"x32xxx", "", "a major third, C and E: possibly C without G"},
		{"x3xxx0", "", "a major third, C and E: possibly C without G"},
		{"0x2x1x", "", "a minor sixth, E and C: possibly C/E without G"},
		{"x31xxx", "", "a minor third, C and Eb: possibly Cm without G"},
		{"xx21xx", "A", "a major third, E and G#: possibly E without B"},
		{"x35xxx", "", "a perfect fifth, C and G: C5"},
		{"x3x3xx", "", "a minor seventh, C and Bb: possibly C7 without E, G"},
		{"x3xx0x", "", "a major seventh, C and B: possibly Cmaj7 without E, G"},
		{"x34xxx", "", "a tritone, C and Gb: possibly Cdim without Eb"},
		{"x3x2xx", "", "a major sixth, C and A: possibly Am/C without E"},
		{"x30xxx", "", "a major second, C and D: possibly Csus2 without G"},
	} {
		r := reading(t, fretboard.Instrument{}, mustShape(t, c.shape), mustKey(t, c.key))
		if got := r.String(); got != c.want {
			t.Errorf("%s is %q, want %q; %v", c.shape, got, c.want, r.Names)
		}
	}
}

// TestIntervalsAreSpelledByTheirNames: a third spans three letters, and so on,
// whatever two notes sound; a tritone may be a fourth or a fifth.
func TestIntervalsAreSpelledByTheirNames(t *testing.T) {
	numbers := [...]string{1: "second", 2: "third", 3: "fourth", 4: "fifth", 5: "sixth", 6: "seventh"}
	for low := range fretboard.Fret(12) {
		for high := range fretboard.Fret(12) {
			r := reading(t, tuned(t, "E2 E3"), voicing.NewShape(2).With(2, low).With(1, high), voicing.Key{})
			a, b := r.Notes[0].Note, r.Notes[1].Note
			letters := a.IntervalTo(b).Letters
			plain := r.Plain()
			switch {
			case low == high && plain == "one note in octaves, "+a.String():
			case strings.HasPrefix(plain, "a tritone, ") && (letters == 3 || letters == 4):
			case letters > 0 && strings.HasSuffix(plain, " "+numbers[letters]+", "+a.String()+" and "+b.String()):
			default:
				t.Errorf("%v and %v: %s", a, b, plain)
			}
		}
	}
}

// TestTheKeyTips holds pairs of readings that a key decides (common practice:
// the tonic, the dominant and the leading tone are where a chord is looked for).
func TestTheKeyTips(t *testing.T) {
	for _, c := range []struct{ shape, key, want string }{
		{"x35555", "", "C6"}, {"x35555", "C", "C6"}, {"x35555", "G", "C6"}, {"x35555", "Am", "Am7/C"},
		{"x32210", "", "Am/C"}, {"x32210", "C", "C6 without G"}, {"x32210", "Am", "Am/C"},
		{"xx0111", "", "Dm7b5"}, {"xx0111", "Cm", "Dm7b5"}, {"xx0111", "Fm", "Fm/D"},
		{"xx3534", "", "Fm6"}, {"xx3534", "Cm", "Fm6"},
		{"x35533", "", "Csus2"}, {"x35533", "C", "Csus2"}, {"xx0013", "", "D7sus4 without A"}, {"xx0013", "C", "Csus2/D"},
		{"x3424x", "", "Cdim7"}, {"x3424x", "Db", "Cdim7"}, {"x3424x", "G", "F#dim7/C"}, {"x3424x", "Bbm", "Adim7/C"},
		{"x3424x", "Em", "D#dim7/C"},
		{"x3211x", "", "Caug"}, {"x3211x", "F", "Caug"}, {"x3211x", "Am", "Eaug/C"},
		{"x32010", "Em", "C"}, {"x32010", "F#", "C"}, {"x02210", "C", "Am"}, {"032010", "Em", "C/E"}, {"x20003", "Bm", "G/B"},
	} {
		r := reading(t, fretboard.Instrument{}, mustShape(t, c.shape), mustKey(t, c.key))
		if got := r.Names[0].String(); got != c.want {
			t.Errorf("%s in %v is %s, want %s; %v", c.shape, mustKey(t, c.key), got, c.want, r.Names)
		}
	}
}

// TestNamesAreSpelled: by the key, else by fewest accidentals (common practice).
func TestNamesAreSpelled(t *testing.T) {
	for _, c := range []struct{ shape, key, want, notes string }{
		{"x46664", "", "Db", "Db3 Ab3 Db4 F4 Ab4"},
		{"x46664", "F#m", "C#", "C#3 G#3 C#4 E#4 G#4"},
		{"x46654", "", "C#m", "C#3 G#3 C#4 E4 G#4"},
		{"x68886", "", "Eb", "Eb3 Bb3 Eb4 G4 Bb4"},
		{"x68886", "B", "D#", "D#3 A#3 D#4 F##4 A#4"},
		{"244322", "", "F#", "F#2 C#3 F#3 A#3 C#4 F#4"},
		{"244322", "Db", "Gb", "Gb2 Db3 Gb3 Bb3 Db4 Gb4"},
		{"466444", "", "G#m", "G#2 D#3 G#3 B3 D#4 G#4"},
		{"x13331", "", "Bb", "Bb2 F3 Bb3 D4 F4"},
		{"xx3211", "", "F", "F3 A3 C4 F4"},
		{"133211", "C#m", "F", "F2 C3 F3 A3 C4 F4"},
		{"133211", "F#", "E#", "E#2 B#2 E#3 G##3 B#3 E#4"},
		{"x12010", "", "C/Bb", "Bb2 E3 G3 C4 E4"},
		{"x02223", "Em", "A7", "A2 E3 A3 C#4 G4"},
		{"202210", "", "F#m7b5", "F#2 A2 E3 A3 C4 E4"},
		{"4x2210", "", "Am/G#", "G#2 E3 A3 C4 E4"},
		{"3x100x", "", "Gaug", "G2 D#3 G3 B3"},
	} {
		r := reading(t, fretboard.Instrument{}, mustShape(t, c.shape), mustKey(t, c.key))
		var notes []string
		for _, n := range r.Notes {
			notes = append(notes, n.String())
		}
		if got := strings.Join(notes, " "); r.Names[0].Chord.String() != c.want || got != c.notes {
			t.Errorf("%s in %v is %s, %s; want %s, %s", c.shape, mustKey(t, c.key), r.Names[0].Chord, got, c.want, c.notes)
		}
	}
}

// TestClusters: what no chord covers still gets the nearest names, and they
// say what is over.
func TestClusters(t *testing.T) {
	cluster := tuned(t, "C3 C#3 D3 D#3 E3 F3")
	for _, shape := range []string{"000000", "000xxx", "0000xx", "00000x", "x00000"} {
		r := reading(t, cluster, mustShape(t, shape), voicing.Key{})
		if len(r.Names) == 0 || r.Names[0].Confidence > voicing.Possible {
			t.Errorf("%s is %v", shape, r)
		}
	}
	r := reading(t, cluster, mustShape(t, "000000"), voicing.Key{})
	if first := r.Names[0]; len(first.Added) == 0 || first.Confidence != voicing.Possible {
		t.Errorf("six semitones in a row are %v, %v", first, first.Confidence)
	}
}

// TestNamesIgnoreTheCapo, as the names of shapes do.
func TestNamesIgnoreTheCapo(t *testing.T) {
	r := reading(t, fretboard.Instrument{Capo: 3}, mustShape(t, "x32010"), voicing.Key{})
	if r.String() != "C, E, G: C" || r.Notes[0].String() != "C3" {
		t.Errorf("with a capo x32010 is %v on %v", r, r.Notes)
	}
}

func TestWhatCannotBeNamed(t *testing.T) {
	for _, c := range []struct {
		g             fretboard.Instrument
		shape, reason string
	}{
		{fretboard.Instrument{}, "0003", "4 strings in the shape, 6 on the instrument"},
		{fretboard.Instrument{}, "xxxxxx", "every string is muted"},
		{fretboard.Instrument{Frets: 12}, "x-13-12-x-x-x", "fret 13 on string 5; the last fret from the capo is 12"},
		{fretboard.Instrument{Frets: 99}, "x32010", "an instrument has 1 to 36 frets"},
	} {
		r, err := voicing.Names(c.g, mustShape(t, c.shape), voicing.Key{})
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || impossible.Reason != c.reason || r.Names != nil || r.Notes != nil {
			t.Errorf("%s: %v, %v; want %s", c.shape, r, err, c.reason)
		}
	}
}

func TestConfidenceNames(t *testing.T) {
	if got := fmt.Sprint(voicing.Remote, voicing.Possible, voicing.Likely, voicing.Certain, voicing.Confidence(9)); got != "remote possible likely certain 9" {
		t.Error(got)
	}
}

// TestTheEmptyReading prints nothing and does not panic.
func TestTheEmptyReading(t *testing.T) {
	if got := (voicing.Reading{}).String(); got != "" {
		t.Errorf("%q", got)
	}
}

func ExampleNames() {
	for _, text := range []string{"x32010", "335553", "x35555", "3x2210", "x32xxx"} {
		shape, _ := voicing.ParseShape(text)
		r, _ := voicing.Names(fretboard.Instrument{}, shape, voicing.Key{})
		fmt.Print(text, " sounds ", r.Plain(), ":")
		for _, n := range r.Names {
			if n.Confidence > voicing.Remote {
				fmt.Print(" ", n, " (", n.Confidence, ")")
			}
		}
		fmt.Println()
	}
	// Output:
	// x32010 sounds C, E, G: C (certain)
	// 335553 sounds G, C, E: C/G (likely)
	// x35555 sounds C, G, E, A: C6 (certain) Am7/C (possible)
	// 3x2210 sounds G, E, A, C: Am/G (likely) Am7/G (possible) C6/G (possible)
	// x32xxx sounds a major third, C and E: C without G (possible)
}

// A key tips the balance between two names of the same notes.
func ExampleNames_key() {
	shape, _ := voicing.ParseShape("x35555")
	for _, song := range []string{"C F G7 C", "Am Dm E7 Am"} {
		var chords []voicing.Chord
		for symbol := range strings.FieldsSeq(song) {
			chord, _ := voicing.ParseChord(symbol)
			chords = append(chords, chord)
		}
		key := voicing.KeyOf(chords)
		r, _ := voicing.Names(fretboard.Instrument{}, shape, key)
		fmt.Println("in", key, "it is", r.Names[0])
	}
	// Output:
	// in C it is C6
	// in Am it is Am7/C
}

func BenchmarkNames(b *testing.B) {
	for _, text := range []string{"x32010", "x32310", "x3xxx0", "300011", "012345"} {
		shape := mustShape(b, text)
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := voicing.Names(fretboard.Instrument{}, shape, voicing.Key{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
