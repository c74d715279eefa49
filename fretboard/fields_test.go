package fretboard_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
)

func TestFields(t *testing.T) {
	for _, c := range []struct {
		why, text, separators string
		want                  []fretboard.Field
	}{
		{"nothing", "", " ", nil},
		{"separators only", " , ,", " ,", nil},
		{"one field to the end", "E2", " ", []fretboard.Field{{Text: "E2", At: 0}}},
		{"empty pieces are left out", ",a,,b ", " ,", []fretboard.Field{{Text: "a", At: 1}, {Text: "b", At: 4}}},
		{"offsets count bytes", "♭ 𝄪 a", " ", []fretboard.Field{{Text: "♭", At: 0}, {Text: "𝄪", At: 4}, {Text: "a", At: 9}}},
		{"tabs, line ends and wide spaces always cut", "a\tb\r\nc\u00a0d\u2003e\u3000f", "|",
			[]fretboard.Field{{Text: "a", At: 0}, {Text: "b", At: 2}, {Text: "c", At: 5}, {Text: "d", At: 8}, {Text: "e", At: 12}, {Text: "f", At: 16}}},
		{"a plain space only where it is asked for", "a b|c", "|", []fretboard.Field{{Text: "a b", At: 0}, {Text: "c", At: 4}}},
		{"a separator of several bytes", "1–2", "–", []fretboard.Field{{Text: "1", At: 0}, {Text: "2", At: 4}}},
		{"invalid bytes stay in their field", "a\xff b", " ", []fretboard.Field{{Text: "a\xff", At: 0}, {Text: "b", At: 3}}},
	} {
		if diff := cmp.Diff(c.want, fretboard.Fields(c.text, c.separators)); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.why, diff)
		}
	}
}

func TestFieldProperties(t *testing.T) {
	p := properties()
	p.Property("fields and the separators between them make up the whole text", prop.ForAll(func(pieces []string) bool {
		text := strings.Join(pieces, " ,")
		at := 0
		for _, f := range fretboard.Fields(text, " ,") {
			if strings.Trim(text[at:f.At], " ,") != "" || text[f.At:f.At+len(f.Text)] != f.Text || strings.ContainsAny(f.Text, " ,") {
				return false
			}
			at = f.At + len(f.Text)
		}
		return strings.Trim(text[at:], " ,") == ""
	}, gen.SliceOf(gen.OneConstOf("", "a", "E2", "♭", "x,y", " "))))
	check(t, p)
}
