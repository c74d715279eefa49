package voicing_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// heads spells every quality with every number once.
var heads = func() []string {
	heads := []string{"", "5", "2", "4", "6", "69", "m", "m6", "m69", "maj", "maj6", "maj69", "dim", "ø", "aug"}
	for _, quality := range []string{"", "maj", "m", "mmaj", "dim", "dimmaj", "ø", "aug", "augmaj"} {
		for _, number := range []string{"7", "9", "11", "13"} {
			if quality+number != "dim13" { // its 13th would sound like its seventh
				heads = append(heads, quality+number)
			}
		}
	}
	return heads
}()

// marks spells every change once.
var marks = []string{"alt", "sus2", "sus4", "b5", "#5", "b6", "b9", "#9", "#11", "b13",
	"add2", "add4", "add6", "add9", "add11", "add13", "no3", "no5", "no9", "no11"}

// TestEveryContentPrintsAndReadsBack goes through every set of marks on every
// head; no chord has any other content. A set that is refused is not extended,
// since marks never mend a contradiction.
func TestEveryContentPrintsAndReadsBack(t *testing.T) {
	contents := map[voicing.Chord]string{}
	prints := map[string]voicing.Chord{}
	symbols := 0
	var extend func(head string, chosen []string, from int)
	extend = func(head string, chosen []string, from int) {
		text := symbolOf(head, chosen)
		c, err := voicing.ParseChord(text)
		if err != nil {
			return
		}
		symbols++
		if _, known := contents[c]; !known {
			contents[c] = text
			checkReadsBack(t, text, c)
			if other, taken := prints[c.String()]; taken {
				t.Fatalf("%q and %q both print as %s", text, contents[other], c)
			}
			prints[c.String()] = c
		}
		for i := from; i < len(marks); i++ {
			extend(head, append(chosen, marks[i]), i+1)
		}
	}
	for _, head := range heads {
		extend(head, nil, 0)
	}
	t.Logf("%d symbols of %d contents", symbols, len(contents))
	if len(contents) < 1000 {
		t.Errorf("only %d contents", len(contents))
	}
}

func symbolOf(head string, marks []string) string {
	if len(marks) == 0 {
		return "C" + head
	}
	return "C" + head + "(" + strings.Join(marks, ",") + ")"
}

// checkReadsBack reads back what c prints: as it is, on another root and over
// a bass.
func checkReadsBack(t *testing.T, text string, c voicing.Chord) {
	t.Helper()
	moved := c.Transpose(fretboard.Interval{Letters: 5, Semitones: 8})
	for printed, want := range map[string]voicing.Chord{c.String(): c, c.Chart(): c, moved.String(): moved, moved.Chart(): moved} {
		if again, err := voicing.ParseChord(printed); err != nil || again != want {
			t.Fatalf("%q prints as %q, which reads as %v, %v", text, printed, again, err)
		}
	}
	slashed, err := voicing.ParseChord(c.String() + "/F#")
	bass, slash := slashed.Bass()
	if err != nil || slashed.Formula() != c.Formula() || !slash || bass.String() != "F#" || slashed.String() != c.String()+"/F#" {
		t.Fatalf("%q over F# reads as %v, %v", c, slashed, err)
	}
}

func TestChordProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(6)
	parameters.MinSuccessfulTests = 5000
	properties := gopter.NewProperties(parameters)
	head := gen.IntRange(0, len(heads)-1)
	some := gen.SliceOfN(3, gen.IntRange(1, len(marks)-1))
	note := gen.IntRange(0, 34)

	properties.Property("the order of marks decides neither the chord nor whether there is one", prop.ForAll(
		func(head int, some []int) bool {
			texts := make([]string, len(some))
			for i, m := range some {
				texts[i] = marks[m]
			}
			c, err := voicing.ParseChord(symbolOf(heads[head], texts))
			texts[0], texts[1], texts[2] = texts[1], texts[2], texts[0]
			turned, turnedErr := voicing.ParseChord(symbolOf(heads[head], texts))
			slices.Reverse(texts)
			reversed, reversedErr := voicing.ParseChord(symbolOf(heads[head], texts))
			return (err == nil) == (turnedErr == nil) && (err == nil) == (reversedErr == nil) && c == turned && c == reversed
		}, head, some))

	properties.Property("a chord moved up and down again is the same chord", prop.ForAll(
		func(head, root, bass, letters, semitones int) bool {
			c := mustChord(noteOf(root).String() + heads[head] + "/" + noteOf(bass).String())
			i := fretboard.Interval{Letters: letters, Semitones: semitones}
			up := c.Transpose(i)
			down := up.Transpose(fretboard.Interval{Letters: -letters, Semitones: -semitones})
			return down.Formula() == c.Formula() && up.Formula() == c.Formula() &&
				down.Root().Class() == c.Root().Class() && down.Classes() == c.Classes() &&
				(up.Root() != c.Root().Up(i) || down.Root() == c.Root()) && mustChord(up.String()) == up
		}, head, note, note, gen.IntRange(-15, 15), gen.IntRange(-30, 30)))

	properties.Property("tones are spelled by their degrees and sound by their intervals", prop.ForAll(
		func(head, root int) bool {
			c := mustChord(noteOf(root).String() + heads[head])
			degree := 0
			for _, tone := range c.Tones() {
				letter := (int(c.Root().Letter) + tone.Degree - 1) % 7
				class := (int(c.Root().Class()) + tone.Interval.Semitones) % 12
				spelled, ok := c.Spell(tone.Note.Class())
				if int(tone.Note.Letter) != letter || int(tone.Note.Class()) != class || tone.Degree < degree ||
					!ok || spelled != tone.Note || !c.Has(tone.Note.Class()) {
					return false
				}
				degree = tone.Degree
			}
			return c.Classes().Len() == len(c.Tones())
		}, head, note))
	properties.TestingRun(t)
}

// noteOf counts through all roots: seven letters, double flat to double sharp.
func noteOf(i int) fretboard.Note {
	return fretboard.Note{Letter: fretboard.Letter(i % 7), Accidental: int8(i/7 - 2)}
}

func mustChord(text string) voicing.Chord {
	c, err := voicing.ParseChord(text)
	if err != nil {
		panic(err)
	}
	return c
}

func FuzzParseChord(f *testing.F) {
	for _, text := range []string{"C", "F#m7b5", "Bb13(#11,b9)/Ab", "n.c.", "C6/9/G", "Dm(maj9)", "E7alt", "G°7/5+", "A–7sus4", "H", "Cx♭9", "C(no 3rd"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := voicing.ParseChord(text)
		if err != nil {
			located, ok := err.(fretboard.Located)
			if !ok {
				t.Fatalf("%q: %v has no place", text, err)
			}
			p := located.Where()
			if p.Source != text || p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(text) || p.Reason == "" || c != (voicing.Chord{}) {
				t.Fatalf("%q: place %+v, chord %v", text, p, c)
			}
			return
		}
		for _, printed := range []string{c.String(), c.Chart()} {
			if again, err := voicing.ParseChord(printed); err != nil || again != c {
				t.Fatalf("%q prints as %q, which reads as %v, %v", text, printed, again, err)
			}
		}
		var set voicing.ClassSet
		for _, tone := range c.Tones() {
			if n, ok := c.Spell(tone.Note.Class()); !ok || n != tone.Note {
				t.Fatalf("%v: its tone %v is spelled %v", c, tone.Note, n)
			}
			set = set.With(tone.Note.Class())
		}
		if bass, slash := c.Bass(); slash {
			set = set.With(bass.Class())
		}
		if set != c.Classes() || c.Silent() != (set == 0) {
			t.Fatalf("%v: classes %b, tones %b", c, c.Classes(), set)
		}
	})
}

func BenchmarkParseChord(b *testing.B) {
	for _, text := range []string{"C", "Am7", "F#m7b5", "Ebmaj7/Bb", "C7(b9,#11)"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := voicing.ParseChord(text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkChordTones(b *testing.B) {
	c := mustChord("F#m7b5")
	b.ReportAllocs()
	for b.Loop() {
		if len(c.Tones()) != 4 {
			b.Fatal("not four tones")
		}
	}
}

func BenchmarkChordHas(b *testing.B) {
	c := mustChord("F#m7b5")
	b.ReportAllocs()
	for b.Loop() {
		if !c.Has(0) {
			b.Fatal("no C")
		}
	}
}
