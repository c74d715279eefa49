package box_test

import (
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// TestSheetsNameChordsInTheirSpelling covers the heads and the notes under the
// boxes; B natural is H in German.
func TestSheetsNameChordsInTheirSpelling(t *testing.T) {
	var boxes []box.Box
	for _, text := range []string{"x24442", "135246"} {
		chord, _ := voicing.ParseChord("Bm/F#")
		shape, _ := voicing.ParseShape(text)
		v, err := voicing.New(fretboard.Instrument{}, chord, shape)
		if err != nil {
			t.Fatal(err)
		}
		boxes = append(boxes, box.Of(v))
	}
	for spelling, want := range map[fretboard.Spelling]string{fretboard.English: "Bm/F#", fretboard.German: "Hm/F#"} {
		var out strings.Builder
		if err := box.Encode(&out, boxes, box.Options{Spelling: spelling}); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(out.String(), want); n != 3 {
			t.Errorf("%v: %s stands %d times, want two heads and a note:\n%s", spelling, want, n, &out)
		}
	}
}
