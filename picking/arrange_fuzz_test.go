package picking

import (
	"testing"

	"weft.example/fretboard"
)

func FuzzArrange(f *testing.F) {
	f.Add("Am | G | Dm | E", "5 3 2 1 2 3", 6, 8, uint8(0), uint8(0), "standard")
	f.Add("|: C G/B | N.C. :| F=133211@2:3 G", "1/8: 4 . - 3u; 2 1 | 1 2", 4, 4, uint8(7), uint8(2), "ukulele")
	f.Add("C:1.5 F | %", "1/12 root 3: 1 - 2d", 7, 8, uint8(255), uint8(5), "E2 A2")
	f.Fuzz(func(t *testing.T, chords, figures string, count, unit int, choices, capo uint8, tuning string) {
		song, err1 := ParseProgression(chords)
		fs, err2 := ParseFigures(figures)
		tuned, err3 := fretboard.ParseTuning(tuning)
		if err1 != nil || err2 != nil || err3 != nil || len(song.Bars()) > 40 {
			return
		}
		s := Setting{Meter: Meter{count, unit}, Strokes: Tradition(choices % 5), Fit: Moulding(choices / 5 % 3),
			Change: Change(choices / 15 % 2), Fill: Fill(choices / 30 % 2), InTurn: choices/60%2 == 0, Once: choices/120%2 == 0,
			Instrument: fretboard.Instrument{Tuning: tuned, Capo: fretboard.Fret(capo)}}
		p, err := Arrange(song, fs, s)
		if err != nil {
			if located, ok := err.(fretboard.Located); !ok || located.Where().Reason == "" {
				t.Fatalf("%T without a place: %v", err, err)
			}
			return
		}
		for _, pick := range p.Picks() {
			held := heldAt(p, pick.At)
			if fret, sounds := held.Voicing.Shape().Fret(pick.String); !sounds || fret != pick.Fret {
				t.Fatalf("a pick on string %d, fret %d, which %s does not hold", pick.String, pick.Fret, held.Voicing.Shape())
			}
			if pick.Note.Pitch() != pick.Pitch || pick.Rings < 1 || pick.Length < 1 || pick.Stroke == Free {
				t.Fatalf("a pick that contradicts itself: %+v", pick)
			}
		}
	})
}

// sixteenBars is a song of sixteen bars with nine chords, two of them in half
// bars.
const sixteenBars = "Am | G | Dm | E | Am | C | F | E7 | Am G | F | C G/B | Am | Dm | Am | E7 | Am"

func BenchmarkArrange(b *testing.B) {
	song := MustParseProgression(sixteenBars)
	for _, figure := range []string{"5 3 2 1 2 3 1 3", "6 5 4 3 2 1 2 3"} {
		fs := Figures{MustParseFigure(figure)}
		b.Run(figure, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Arrange(song, fs, Setting{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
