package json

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/leanovate/gopter"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// sameAs compares passages. What is not exported compares with ==, and lists
// of nothing are alike whether nil or empty.
var sameAs = cmp.Options{
	cmpopts.EquateEmpty(),
	cmp.Comparer(func(a, b fretboard.Tuning) bool { return a == b }),
	cmp.Comparer(func(a, b voicing.Chord) bool { return a == b }),
	cmp.Comparer(func(a, b voicing.Voicing) bool { return a == b }),
}

func parameters(runs int) *gopter.TestParameters {
	p := gopter.DefaultTestParametersWithSeed(1)
	p.MinSuccessfulTests = runs
	return p
}

func encoded(t testing.TB, p picking.Passage) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Encode(&b, p, Options{}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func arrange(t testing.TB, chords, figures string, s picking.Setting) picking.Passage {
	t.Helper()
	song, err := picking.ParseProgression(chords)
	if err != nil {
		t.Fatal(err)
	}
	fs, err := picking.ParseFigures(figures)
	if err != nil {
		t.Fatal(err)
	}
	p, err := picking.Arrange(song, fs, s)
	if err != nil {
		t.Fatalf("%q with %q: %v", chords, figures, err)
	}
	return p
}

// randomPassage arranges a song that the seed decides.
func randomPassage(t testing.TB, seed int64) picking.Passage {
	r := rand.New(rand.NewPCG(uint64(seed), 0))
	tuning := fretboard.MustParseTuning(pick(r, "standard", "drop D", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4", "ukulele", "mandolin",
		"seven-string", "baritone", "A2", "G4 D3", "F#1 B1 E2 A2 D3 G3 B3 E4", "E3 E2 A3 A2 D4 D3 G4 G3 B3 B3 E4 E4"))
	s := picking.Setting{
		Title: pick(r, "", "Slow walk", "\"<Línea> & \\ \u2028\""),
		Meter: pick(r, picking.FourFour, picking.ThreeFour, picking.SixEight, picking.Meter{Count: 7, Unit: 8}),
		Tempo: 10 + r.IntN(391),
		Instrument: fretboard.Instrument{Tuning: tuning, Frets: 14 + fretboard.Fret(r.IntN(11)), Capo: pick[fretboard.Fret](r, 0, 0, 1, 3, 8),
			Spacing: fretboard.Millimetres(7 + r.Float64()*5), Scale: fretboard.Millimetres(300 + r.Float64()*500), Hand: fretboard.Hand(r.IntN(3))},
		Strokes: picking.Tradition(r.IntN(5)), Fit: picking.Moulding(r.IntN(3)),
		Change: picking.Change(r.IntN(2)), Fill: picking.Fill(r.IntN(2)), InTurn: r.IntN(2) == 0, Once: r.IntN(2) == 0,
	}
	var figures []string
	for range 1 + r.IntN(3) {
		figures = append(figures, randomFigure(r, tuning.Strings()))
	}
	return arrange(t, randomChart(r, tuning.Strings(), len(figures)), strings.Join(figures, "; "), s)
}

func pick[T any](r *rand.Rand, from ...T) T { return from[r.IntN(len(from))] }

func randomFigure(r *rand.Rand, strings fretboard.StringNumber) string {
	slot := func() string { return fmt.Sprint(1+r.IntN(int(strings)), pick(r, "", "", "", "", "d", "u")) }
	figure := pick(r, "1/8: ", "1/16: ", "1/12: ", "1/4: ") + pick(r, "", "", "- ") + slot()
	for range r.IntN(9) {
		figure += " " + pick(r, slot(), slot(), slot(), slot(), "-", ".")
	}
	return figure
}

func randomChart(r *rand.Rand, strings fretboard.StringNumber, figures int) string {
	chord := func() string {
		if r.IntN(8) == 0 {
			return "N.C."
		}
		symbol := pick(r, "Am", "G", "F#m7b5", "Db", "C#m", "E7#9", "Bbmaj7", "G/B", "C/D", "D5", "Ebdim7")
		shape := voicing.NewShape(strings)
		for s := range fretboard.StringsUpTo(strings).Thinnest() {
			if r.IntN(4) > 0 || shape.Sounding() == 0 && s == strings {
				shape = shape.With(s, fretboard.Fret(r.IntN(6)))
			}
		}
		return symbol + "=" + shape.String() + pick(r, "", "", fmt.Sprint("@", 1+r.IntN(figures)))
	}
	var bars []string
	for range 1 + r.IntN(4) {
		bars = append(bars, pick(r, chord(), chord(), chord()+" "+chord(), "|: "+chord()+" | % :|"))
		if r.IntN(6) == 0 {
			bars = append(bars, "%")
		}
	}
	return joinBars(bars)
}

// joinBars puts bar lines between bars where no repeat sign stands.
func joinBars(bars []string) string {
	var b strings.Builder
	for i, bar := range bars {
		if i > 0 && !strings.HasSuffix(bars[i-1], ":|") && !strings.HasPrefix(bar, "|:") {
			b.WriteString(" |")
		}
		b.WriteString(" " + bar)
	}
	return b.String()
}
