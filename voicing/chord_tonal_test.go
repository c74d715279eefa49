package voicing_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"weft.example/voicing"
)

// otherwise lists, one by one, the suffixes that we read otherwise than tonal
// does, with the reason.
var otherwise = map[string]string{
	"11":       "the 11 chord has its third, as at MusicXML's dominant-11th; it is Optional",
	"11b9":     "the 11 chord has its third; it is Optional",
	"13":       "the 13 chord has its 11th, as at MusicXML's dominant-13th; it is Optional",
	"13b5":     "the 13 chord has its 11th",
	"13b9":     "the 13 chord has its 11th",
	"13#9":     "the 13 chord has its 11th",
	"13no5":    "the 13 chord has its 11th",
	"maj13":    "the 13 chord has its 11th, as at MusicXML's major-13th",
	"Maj13":    "the 13 chord has its 11th",
	"m13":      "the 13 chord has its 11th, as at MusicXML's minor-13th",
	"-13":      "the 13 chord has its 11th",
	"M7add13":  "an added 13th adds no 9th",
	"maj#4":    "maj alone is the triad, and #4 the only tone put to it",
	"7b13":     "b13 adds a tone; only no5 takes the fifth out",
	"9b13":     "b13 adds a tone; only no5 takes the fifth out",
	"M7b6":     "b6 adds a tone; only no5 takes the fifth out",
	"mb6b9":    "b6 adds a tone; only no5 takes the fifth out",
	"m7#5":     "#5 is spelled as a fifth",
	"m9#5":     "#5 is spelled as a fifth",
	"M6b5":     "b5 replaces the fifth; only #11 leaves it",
	"6b5":      "b5 replaces the fifth; only #11 leaves it",
	"7b5b13":   "b5 replaces the fifth; only #11 leaves it",
	"7b5#9":    "b5 replaces the fifth; only #11 leaves it",
	"7#9b5":    "b5 replaces the fifth; only #11 leaves it",
	"7b5b9":    "b5 replaces the fifth; only #11 leaves it",
	"7b9b5":    "b5 replaces the fifth; only #11 leaves it",
	"7b5b9b13": "b5 replaces the fifth; only #11 leaves it",
	"9b5b13":   "b5 replaces the fifth; only #11 leaves it",
	"7alt":     "alt leaves the player the choice of both fifths and both ninths",
	"2":        "a bare 2 stands in place of the third, as a bare 4 does",
	"4":        "a bare 4 is a suspension, not a chord in fourths",
	"b9sus":    "accidentals right after the letter belong to the root",
}

// refused lists, one by one, the suffixes of tonal that we do not read.
var refused = map[string]string{
	"^": "no sign of common practice", "^7": "as ^", "^9": "as ^", "^13": "as ^", "^#5": "as ^", "^7#5": "as ^",
	"^7b6": "as ^", "^7#11": "as ^", "^9#11": "as ^", "-^7": "as ^", "-^9": "as ^",
	"h":       "no sign of common practice; write ø",
	"h7":      "as h",
	"dom":     "a dominant chord names its number",
	"67":      "digits that touch are one number; write 7add6",
	"mb6M7":   "the major seventh stands first: mM7b6",
	"o7M7":    "two sevenths",
	"quartal": "a word, not a symbol",
	"phryg":   "a word, not a symbol",
	"alt7":    "written 7alt",
	"m11A":    "written m11#5",
}

// TestChordsOutside compares all chord types of tonal 6.4.3 (npm, MIT), tone by
// tone and spelling by spelling, by every name it has for them.
func TestChordsOutside(t *testing.T) {
	text, err := os.ReadFile("testdata/tonal-6.4.3.tsv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")[1:]
	agreed, differing := 0, map[string]bool{}
	for _, line := range lines {
		symbol, notes, _ := strings.Cut(line, "\t")
		suffix := strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(symbol, "C"), "Eb"), "F#")
		c, err := voicing.ParseChord(symbol)
		same := err == nil && slices.Equal(sorted(notesOf(c)), sorted(notes))
		switch {
		case same:
			agreed++
		case err != nil && refused[suffix] == "":
			t.Errorf("%s: %v", symbol, err)
		case err == nil && otherwise[suffix] == "":
			t.Errorf("%s: notes %s, by tonal %s", symbol, notesOf(c), notes)
		default:
			differing[suffix] = true
		}
	}
	for _, list := range []map[string]string{otherwise, refused} {
		for suffix := range list {
			if !differing[suffix] {
				t.Errorf("%s is listed as different and is not", suffix)
			}
		}
	}
	t.Logf("%d of %d chord symbols agree with tonal; %d suffixes differ, for the reasons listed", agreed, len(lines), len(differing))
}

func sorted(notes string) []string {
	names := strings.Fields(notes)
	slices.Sort(names)
	return names
}
