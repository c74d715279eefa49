package voicing_test

import (
	"fmt"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

func notesOf(c voicing.Chord) string {
	var names []string
	for _, tone := range c.Tones() {
		names = append(names, tone.Note.String())
	}
	return strings.Join(names, " ")
}

// TestChordSpellings holds worked spellings: the first six by tonal 6.4.3 (npm,
// MIT), the rest common practice.
func TestChordSpellings(t *testing.T) {
	for _, c := range []struct{ symbol, notes string }{
		{"Em7", "E G B D"},
		{"Cmaj9", "C E G B D"},
		{"Dsus4", "D G A"},
		{"A7sus4", "A D E G"},
		{"F#m7b5", "F# A C E"},
		{"E7#9", "E G# B D F##"},
		{"Bdim7", "B D F Ab"},
		{"Cdim7", "C Eb Gb Bbb"},
		{"C#maj7", "C# E# G# B#"},
		{"Gbm", "Gb Bbb Db"},
		{"Cbb7", "Cbb Ebb Gbb Bbbb"}, // the root takes both flats
		{"B##aug", "B## D### F####"},
		{"Cadd11", "C E G F"},
		{"Cm(maj7)", "C Eb G B"},
	} {
		chord, err := voicing.ParseChord(c.symbol)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := notesOf(chord); got != c.notes {
			t.Errorf("%s: notes %s, want %s", c.symbol, got, c.notes)
		}
	}
}

// TestKindsOutside holds the contents against those that the MusicXML
// 4.0 schema spells out at kind-value.
func TestKindsOutside(t *testing.T) {
	kinds := []struct{ kind, symbols, formula string }{
		{"major", "C CM Cmaj", "1 3 5"},
		{"minor", "Cm Cmin C-", "1 b3 5"},
		{"augmented", "Caug C+", "1 3 #5"},
		{"diminished", "Cdim Co C°", "1 b3 b5"},
		{"dominant", "C7 Cdom7", "1 3 5 b7"},
		{"major-seventh", "Cmaj7 CM7 CΔ CΔ7", "1 3 5 7"},
		{"minor-seventh", "Cm7 C-7", "1 b3 5 b7"},
		{"diminished-seventh", "Cdim7 Co7 C°7", "1 b3 b5 bb7"},
		{"augmented-seventh", "Caug7 C+7 C7+", "1 3 #5 b7"},
		{"half-diminished", "Cø Cø7 Cm7b5", "1 b3 b5 b7"},
		{"major-minor", "Cm(maj7) CmM7 CmΔ", "1 b3 5 7"},
		{"major-sixth", "C6 CM6", "1 3 5 6"},
		{"minor-sixth", "Cm6 C-6", "1 b3 5 6"},
		{"dominant-ninth", "C9", "1 3 5 b7 9"},
		{"major-ninth", "Cmaj9 CΔ9", "1 3 5 7 9"},
		{"minor-ninth", "Cm9", "1 b3 5 b7 9"},
		{"dominant-11th", "C11", "1 3 5 b7 9 11"},
		{"major-11th", "Cmaj11", "1 3 5 7 9 11"},
		{"minor-11th", "Cm11", "1 b3 5 b7 9 11"},
		{"dominant-13th", "C13", "1 3 5 b7 9 11 13"},
		{"major-13th", "Cmaj13", "1 3 5 7 9 11 13"},
		{"minor-13th", "Cm13", "1 b3 5 b7 9 11 13"},
		{"suspended-second", "Csus2", "1 2 5"},
		{"suspended-fourth", "Csus4 Csus", "1 4 5"},
		{"power", "C5", "1 5"},
	}
	if len(kinds) != 25 {
		t.Errorf("%d kinds", len(kinds))
	}
	for _, k := range kinds {
		for _, symbol := range strings.Fields(k.symbols) {
			if c, err := voicing.ParseChord(symbol); err != nil || c.Formula() != k.formula {
				t.Errorf("%s: %s is %s, %v; want %s", k.kind, symbol, c.Formula(), err, k.formula)
			}
		}
	}
	t.Logf("all %d chord kinds of MusicXML 4.0 have the content that it spells", len(kinds))
}

// TestWaysOfWritingAChord lists symbols that mean one chord, the canonical
// print first, and so tells apart all that stand on different lines. Common
// practice.
func TestWaysOfWritingAChord(t *testing.T) {
	seen := map[voicing.Chord]string{}
	for _, line := range []string{
		"N.C.|NC|n.c.|N.C| nc ",
		"C|CM|Cmaj|CMaj|CMA|C♮|Cmajor",
		"Cm|Cmin|Cmi|Cminor|C-|C–|C−|C—|C‐|C‑|C‒|CMin|CMI",
		"Cdim|Co|C°|Cº|Cmb5|C-b5|CDim",
		"Caug|C+|C(#5)|C+5|Cmaj#5",
		"C(b5)|C-5|C(5-)|CMb5|C(♭5)",
		"C5|C(no3)|Cno3|Comit3",
		"C6|CM6|Cmaj6|Cadd6",
		"Cm6|C-6|Cmin6|Cm(add6)",
		"C6/9|C69|C6(9)|C6add9|Cmaj69|C(add6,add9)",
		"Cm6/9|Cm69|C-6/9|Cmadd6add9",
		"C7|Cdom7",
		"Cmaj7|CM7|CΔ|CΔ7|C∆|Cma7|Cmajor7|CMaj7|CMA7|Cj7|C7M|C(maj7)|C/maj7",
		"Cm7|C-7|Cmin7|Cminor7|Cmi7|CMI7|C–7",
		"Cm(maj7)|CmM7|CmΔ|CmΔ7|Cmmaj7|C-maj7|Cmin(maj7)|Cminor(major7)|Cm/maj7|Cm#7|Cm(+7)|Cm7M|CminMaj7",
		"Cm(maj9)|CmM9|Cm(maj7,9)|Cm(maj7)add9",
		"Cdim7|Co7|C°7",
		"Cm(maj7)b5|CdimM7|Cdim(maj7)|CoM7|C°Δ",
		"Cm7b5|Cø|Cø7|C-7b5|Cm7(b5)|Cm7-5|Cm7/b5|Cm7(5-)|CØ7|C∅|Cmin7♭5",
		"C7#5|C+7|Caug7|C7+|C7+5|C7aug|C7(#5)|C7(5+)|C7/5+",
		"C7b5|C7-5|C7(b5)|C7(-5)|C7♭5|C7–5",
		"Cmaj7#5|C+maj7|C+M7|Caug(maj7)|Cmaj7+5|CM7+",
		"C9|C7/9|C7(9)|C7add9|Cdom9",
		"Cadd9|C(add9)|C(9)|C/9|CMadd9|Cmajadd9|C(add 9)|Cadd9th",
		"Cadd2|C(add2)",
		"Cmadd9|Cm(add9)|Cm(9)|C-add9",
		"Csus2|C2|C(sus2)",
		"Csus4|C4|Csus|C(sus)|Csus4no3",
		"Csus2sus4|Csus24|Csus4sus2|Csus4add2",
		"Cadd4|C(add4)",
		"Cadd11|C(11)",
		"C7sus4|C7sus|C7(sus4)|C7(sus 4)",
		"C9sus4|C9sus|C7sus4add9|C11sus4",
		"C11|C9add11",
		"C13sus4|C13sus",
		"C7b9|C7-9|C7(b9)|C7(9-)|C7/b9",
		"C9b5|C9-5",
		"C7#9|C7+9|C7(9+)|C7(♯9)",
		"C9#5|C+9|C9+",
		"C7b9#11|C7(b9,#11)|C7(b9 #11)|C7(b9/#11)|C7#11b9|C7(#11)(b9)|C7( b9 , #11 )",
		"C7#9b13|C7b13#9",
		"Cmaj7#11|Cmaj7(#11)|CΔ#11|Cmaj7#4|CM7+11",
		"C(#11)|Cadd#11|C(#4)|C+4",
		"C(b9)|Caddb9",
		"C9#11|C9+11",
		"C13#11|C13+11",
		"C13b9",
		"Cm11b5|Cø11",
		"Cm11",
		"C7alt|Calt|C7(alt)|C7#5b9#9b5",
		"C7no5|C7omit5|C7(omit 5)|C7(no 5th)",
		"C7no3|C7(no3rd)",
		"C9add13|C13no11|C13(no 11)",
		"Cmb6|Cm(b6)|Cmaddb6",
		"C#9|C♯9",
		"C#(b9)|C#b9",
		"C/Bb|C/B♭",
		"C6/9/G|C69/G|C6(9)/G",
		"Bbb7|B♭♭7|B𝄫7",
		"F##m|Fxm|F𝄪m|F♯♯-",
	} {
		symbols := strings.Split(line, "|")
		first, err := voicing.ParseChord(symbols[0])
		if err != nil || first.String() != symbols[0] {
			t.Errorf("%s: prints as %s, %v", symbols[0], first, err)
		}
		if other, dup := seen[first]; dup {
			t.Errorf("%s is %s", symbols[0], other)
		}
		seen[first] = symbols[0]
		for _, symbol := range symbols[1:] {
			c, err := voicing.ParseChord(symbol)
			if err != nil || c != first {
				t.Errorf("%s: got %s, %v; want %s", symbol, c, err, symbols[0])
			}
		}
	}
}

func TestNeeds(t *testing.T) {
	marks := map[voicing.Need]string{voicing.Essential: "", voicing.Optional: "?", voicing.Either: "|"}
	for _, c := range []struct{ symbol, needs string }{
		{"C", "1 3 5?"},
		{"Cm", "1 b3 5?"},
		{"C5", "1 5"},
		{"Csus4", "1 4 5"},
		{"C7sus4", "1 4 5? b7"},
		{"Cdim7", "1 b3 b5 bb7"},
		{"C7#5", "1 3 #5 b7"},
		{"C6/9", "1 3 5? 6 9"},
		{"Cadd9", "1 3 5? 9"},
		{"C9", "1 3 5? b7 9"},
		{"C11", "1 3? 5? b7 9 11"},
		{"Cm11", "1 b3 5? b7 9? 11"},
		{"Cadd11", "1 3 5? 11"},
		{"C7add11", "1 3 5? b7 11"},
		{"C13", "1 3 5? b7 9? 11? 13"},
		{"Cm13", "1 b3 5? b7 9? 11? 13"},
		{"C13#11", "1 3 5? b7 9? #11 13"},
		{"C13b9", "1 3 5? b7 b9 11? 13"},
		{"C13sus4", "1 4 5? b7 9? 13"},
		{"C9#11", "1 3 5? b7 9 #11"},
		{"C7alt", "1 3 b5| #5| b7 b9| #9|"},
		{"C7b9#9", "1 3 5? b7 b9 #9"},
		{"C7no3", "1 5 b7"},
		{"N.C.", ""},
	} {
		chord := mustChord(c.symbol)
		names := strings.Fields(chord.Formula())
		for i, tone := range chord.Tones() {
			names[i] += marks[tone.Need]
		}
		if got := strings.Join(names, " "); got != c.needs {
			t.Errorf("%s: needs %s, want %s", c.symbol, got, c.needs)
		}
	}
}

func TestChordParts(t *testing.T) {
	c := mustChord("Am7/G#")
	bass, slash := c.Bass()
	spelled, ok := c.Spell(8)
	_, foreign := c.Spell(1)
	got := fmt.Sprintln(c.Root(), bass, slash, spelled, ok, foreign, c.Has(8), c.Has(1), c.Silent(), c.Chart(), c.Classes().Len())
	if want := "A G# true G# true false true false false Am7/G♯ 5\n"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	bass, slash = mustChord("Am7").Bass()
	if bass != c.Root() || slash {
		t.Errorf("the bass of Am7 is %v, %t", bass, slash)
	}
	if n, _ := mustChord("Cm/D#").Spell(3); n.String() != "Eb" {
		t.Errorf("Cm/D# spells its third %v", n)
	}
	var silent voicing.Chord
	up := silent.Transpose(fretboard.Interval{Letters: 1, Semitones: 2})
	if !silent.Silent() || up != silent || len(silent.Tones()) != 0 || silent.Has(0) || silent.Formula() != "" || silent.Chart() != "N.C." {
		t.Errorf("the zero chord is %v", silent)
	}
	if n := testing.AllocsPerRun(100, func() { c.Has(8); c.Classes(); c.Spell(8) }); n != 0 {
		t.Errorf("asking for pitch classes allocates %v times", n)
	}
	want := fretboard.Interval{Letters: 8, Semitones: 14}
	if tones := mustChord("C9").Tones(); tones[4].Interval != want || tones[4].Degree != 9 {
		t.Errorf("the ninth of C9 is %+v", tones[4])
	}
}

func TestTranspose(t *testing.T) {
	minorThird := fretboard.Interval{Letters: 2, Semitones: 3}
	sharp := fretboard.Interval{Letters: 0, Semitones: 1}
	for _, c := range []struct {
		from string
		by   fretboard.Interval
		want string
	}{
		{"A7", minorThird, "C7"},
		{"G/B", minorThird, "Bb/D"},
		{"F#m7b5", minorThird, "Am7b5"},
		{"C", sharp, "C#"},
		{"C##", sharp, "D#"},       // C### has too many
		{"E##/A", sharp, "F##/A#"}, // and so has E###
		{"Cbb", fretboard.Interval{Letters: 0, Semitones: -1}, "Bbb"},
		{"G", fretboard.Interval{Letters: -1, Semitones: -2}, "F"},
		{"G", fretboard.Interval{Letters: 7, Semitones: 12}, "G"},
		{"G", fretboard.Interval{Letters: 0, Semitones: 1200}, "G"},
	} {
		if got := mustChord(c.from).Transpose(c.by).String(); got != c.want {
			t.Errorf("%s up %+v is %s, want %s", c.from, c.by, got, c.want)
		}
	}
}

func ExampleParseChord() {
	chord, err := voicing.ParseChord("F#m7b5/E")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(chord.Chart(), "=", chord.Formula())
	for _, tone := range chord.Tones() {
		fmt.Println(tone.Degree, tone.Note)
	}

	_, err = voicing.ParseChord("C7(b9,sus5)")
	fmt.Println(err)
	// Output:
	// F♯m7♭5/E = 1 b3 b5 b7
	// 1 F#
	// 3 A
	// 5 C
	// 7 E
	// chord, byte 6: "sus5": no such suspension; write sus2, sus4 or sus24, and a number in front, as in C7sus4
}
