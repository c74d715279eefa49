package voicing_test

import (
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

func TestChordWords(t *testing.T) {
	for symbol, want := range map[string]string{
		"C":              "C major",
		"A/C#":           "A major over C sharp",
		"Am":             "A minor",
		"C#m7b5":         "C sharp minor seven flat five",
		"Ebmaj7/Bb":      "E flat major seven over B flat",
		"Bbm(maj9)":      "B flat minor major nine",
		"F##dim7":        "F double sharp diminished seven",
		"Dbbaug":         "D double flat augmented",
		"E7#9":           "E seven sharp nine",
		"G7alt":          "G seven altered",
		"D5":             "D five",
		"Dsus4":          "D suspended four",
		"D7sus2sus4":     "D seven suspended two and four",
		"G6/9":           "G six nine",
		"G6/9/D":         "G six nine over D",
		"C(#11)":         "C major sharp eleven",
		"C#11":           "C sharp eleven",
		"Cadd9":          "C major add nine",
		"C(b5)no3":       "C, flat five no three",
		"C5b13":          "C five flat thirteen",
		"F13(#11,b9)no5": "F thirteen flat nine sharp eleven no five",
		"C(b5)":          "C major flat five",
		"Cb5":            "C flat five",
		"N.C.":           "no chord",
		"Cm(b6)add9/F##": "C minor flat six add nine over F double sharp",
		"Bmaj13#11":      "B major thirteen sharp eleven",
		"Abmaj7sus2/Ebb": "A flat major seven suspended two over E double flat",
	} {
		c, err := voicing.ParseChord(symbol)
		if err != nil {
			t.Errorf("%s: %v", symbol, err)
			continue
		}
		if got := c.Words(); got != want {
			t.Errorf("%s: %q, want %q", symbol, got, want)
		}
	}
}

// TestChordWordsOfMusicXMLKinds holds the words against the names that
// MusicXML 4.0 (the type kind-value) has for kinds of chords: every word of
// such a name is among ours. A seventh is spoken as a seven, and so on.
func TestChordWordsOfMusicXMLKinds(t *testing.T) {
	spoken := strings.NewReplacer("-", " ", "sixth", "six", "seventh", "seven", "ninth", "nine", "13th", "thirteen",
		"11th", "eleven", "second", "two", "fourth", "four")
	for kind, symbol := range map[string]string{
		"major": "C", "minor": "Cm", "augmented": "Caug", "diminished": "Cdim",
		"major-seventh": "Cmaj7", "minor-seventh": "Cm7", "diminished-seventh": "Cdim7",
		"major-minor": "Cm(maj7)", "minor-sixth": "Cm6", "major-ninth": "Cmaj9", "minor-ninth": "Cm9",
		"major-11th": "Cmaj11", "minor-11th": "Cm11", "major-13th": "Cmaj13", "minor-13th": "Cm13",
		"suspended-second": "Csus2", "suspended-fourth": "Csus4",
	} {
		words := strings.Fields(mustChord(symbol).Words())
		for _, word := range strings.Fields(spoken.Replace(kind)) {
			if !slices.Contains(words, word) {
				t.Errorf("%s is spoken %q, without %s", kind, words, word)
			}
		}
	}
}

// writtenWords turns the words of a chord back into a symbol.
var writtenWords = strings.NewReplacer(" over ", "/", " two and four", "2sus4", " double ", " ",
	" major", "maj", " minor", "m", " diminished", "dim", " augmented", "aug", " altered", "alt", " suspended", "sus",
	" flat", "b", " sharp", "#", " thirteen", "13", " eleven", "11", " nine", "9", " seven", "7", " six", "6",
	" five", "5", " four", "4", " three", "3", " two", "2")

// TestEveryContentIsSpoken goes through every content that a symbol can have:
// its words read back as the chord, so that no two sound alike.
func TestEveryContentIsSpoken(t *testing.T) {
	seen := map[voicing.Chord]bool{}
	var extend func(head string, chosen []string, from int)
	extend = func(head string, chosen []string, from int) {
		c, err := voicing.ParseChord(symbolOf(head, chosen))
		if err != nil {
			return
		}
		if !seen[c] {
			seen[c] = true
			checkSpoken(t, c)
			checkSpoken(t, c.Transpose(fretboard.Interval{Letters: 5, Semitones: 8}))
		}
		for i := from; i < len(marks); i++ {
			extend(head, append(chosen, marks[i]), i+1)
		}
	}
	for _, head := range heads {
		extend(head, nil, 0)
	}
	if len(seen) < 1000 {
		t.Errorf("only %d contents", len(seen))
	}
}

func checkSpoken(t *testing.T, c voicing.Chord) {
	t.Helper()
	words := c.Words()
	if strings.ContainsAny(words, "0123456789#()/.") || strings.Contains(words, "  ") {
		t.Fatalf("%s is spoken %q", c, words)
	}
	symbol := strings.ReplaceAll(writtenWords.Replace(strings.ReplaceAll(words, ",", " (")), " ", "")
	root := c.Root().String()
	if rest, plain := strings.CutPrefix(symbol, root+"maj"); plain && (rest == "" || !strings.ContainsAny(rest[:1], "179")) {
		symbol = root + "(" + rest // major said for what is not written
	}
	if strings.Contains(symbol, "(") {
		symbol = strings.TrimSuffix(symbol, "(")
		if strings.Contains(symbol, "(") {
			symbol += ")"
		}
	}
	if again, err := voicing.ParseChord(symbol); err != nil || again != c {
		t.Fatalf("%s is spoken %q, which reads %q: %v, %v", c, words, symbol, again, err)
	}
}
