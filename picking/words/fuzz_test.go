package words_test

import (
	"testing"

	"weft.example/picking"
	"weft.example/picking/words"
)

// FuzzEncode holds the words of a passage by chance, under any title, to
// everything that the properties hold them to.
func FuzzEncode(f *testing.F) {
	f.Add(uint64(1), "Evening Water")
	f.Add(uint64(7), "<h1>&amp;\x00\t\u202e]]>\n\nBars")
	f.Fuzz(func(t *testing.T, seed uint64, name string) {
		p := random(seed)
		p.Title = name
		if fault := faults(t, p); fault != "" {
			t.Error(fault)
		}
	})
}

// FuzzFigure tells figures and walks over the strings as they are told.
func FuzzFigure(f *testing.F) {
	f.Add("1/8 root 5: 5d 3 - . 2u | 1 1")
	f.Add("- 12 1")
	f.Fuzz(func(t *testing.T, text string) {
		figure, err := picking.ParseFigure(text)
		if err != nil {
			return
		}
		if fault := figureFault(figure, words.Figure(figure)); fault != "" {
			t.Error(fault)
		}
	})
}
