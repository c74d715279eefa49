package musicxml_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/musicxml"
	"weft.example/picking/pickingtest"
)

// properties returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func properties() *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(21)
	parameters.MinSuccessfulTests = 60
	return gopter.NewProperties(parameters)
}

var bothWays = []musicxml.Options{{}, {Staves: musicxml.TabAlone}}

// TestListReadsBack holds the scores of all listed passages to what these say.
func TestListReadsBack(t *testing.T) {
	for _, c := range pickingtest.List() {
		for _, o := range bothWays {
			if fault := readBack(c.Passage, o, encoded(t, c.Passage, o)); fault != "" {
				t.Errorf("%s, %s: %s", c.Name, o.Staves, fault)
			}
		}
	}
}

func TestProperties(t *testing.T) {
	p := properties()
	short := pickingtest.List()[0].Passage
	p.Property("a score reads back as its passage", prop.ForAll(func(seed uint64) string {
		passage := pickingtest.Random(rand.New(rand.NewPCG(seed, 0)))
		for _, o := range bothWays {
			if fault := readBack(passage, o, encoded(t, passage, o)); fault != "" {
				return fmt.Sprintf("%s: %s", o.Staves, fault)
			}
		}
		return ""
	}, gen.UInt64()))
	p.Property("a title changes nothing but the title", prop.ForAll(func(title string) bool {
		passage := short
		passage.Title = "Plain"
		plain := string(encoded(t, passage, musicxml.Options{}))
		passage.Title = title
		s, err := parsed(encoded(t, passage, musicxml.Options{}))
		if title == "" {
			return err == nil && s.Title == ""
		}
		before, after, _ := strings.Cut(plain, "Plain")
		whole := string(encoded(t, passage, musicxml.Options{}))
		return err == nil && s.Title == fretboard.Printable(title) && strings.HasPrefix(whole, before) && strings.HasSuffix(whole, after)
	}, gen.AnyString()))
	p.Property("a passage bent by hand gives a score that holds together, or an error and nothing", prop.ForAll(func(seed uint64) bool {
		r := rand.New(rand.NewPCG(seed, 2))
		passage := pickingtest.Random(r)
		for range 1 + r.IntN(3) {
			bend(r, &passage)
		}
		var b bytes.Buffer
		o := bothWays[r.IntN(2)]
		if err := musicxml.Encode(&b, passage, o); err != nil {
			return b.Len() == 0
		}
		s, err := parsed(b.Bytes())
		if err != nil {
			return false
		}
		measures, err := s.played()
		return err == nil && readTime(passage, o, measures) == ""
	}, gen.UInt64()))
	p.TestingRun(t)
}

// bend changes one thing of a passage as Arrange would not make it.
func bend(r *rand.Rand, p *picking.Passage) {
	bar := &p.Bars[r.IntN(len(p.Bars))]
	by := picking.Ticks([]int{-1000, -40, -5, -1, 5, 7, 45, 240, 5000}[r.IntN(9)])
	switch r.IntN(10) {
	case 0:
		bar.Length += by
	case 1:
		bar.At += by
	case 2:
		for i := range bar.Chords {
			bar.Chords[i].At += by
		}
	case 3:
		for i := range bar.Chords {
			bar.Chords[i].Length += by
		}
	case 4:
		p.Meter = picking.Meter{Count: r.IntN(40), Unit: r.IntN(9)}
	case 5:
		p.Strokes, p.Fit, bar.Pass, bar.Written, p.Tempo = 9, 9, 2, r.IntN(5), r.IntN(3)-1
	case 6:
		p.Instrument.Tuning = fretboard.MustParseTuning([]string{"A2", "ukulele", "D####3 A3", "C-1 E2"}[r.IntN(4)])
	case 7:
		bar.Chords = nil
	case 8: // a last bar cut short, which a pickup's complement would be
		p.Bars[len(p.Bars)-1].Length = max(5, p.Bars[len(p.Bars)-1].Length-5*picking.Ticks(r.IntN(100)))
	default:
		if len(bar.Picks) > 0 {
			pick := &bar.Picks[r.IntN(len(bar.Picks))]
			pick.At, pick.Length, pick.Rings = pick.At+by*picking.Ticks(r.IntN(2)), pick.Length+by*picking.Ticks(r.IntN(2)), by
			pick.Fret, pick.Stroke, pick.Note = fretboard.Fret(by), picking.Stroke(r.IntN(4)),
				fretboard.PitchName{Note: fretboard.Note{Letter: fretboard.Letter(r.IntN(9) - 1), Accidental: int8(by)}, Octave: int8(r.IntN(12) - 1)}
		}
	}
}

func FuzzEncode(f *testing.F) {
	for seed := range uint64(8) {
		f.Add(seed, seed, "Evening Water")
	}
	f.Fuzz(func(t *testing.T, seed, stream uint64, title string) {
		p := pickingtest.Random(rand.New(rand.NewPCG(seed, stream)))
		if fretboard.CheckText("title", title) == nil {
			p.Title = title
		}
		for _, o := range bothWays {
			if fault := readBack(p, o, encoded(t, p, o)); fault != "" {
				t.Errorf("%s: %s", o.Staves, fault)
			}
		}
	})
}

func BenchmarkEncodeSixteenBars(b *testing.B) {
	for _, c := range pickingtest.List() {
		if c.Name != "sixteen-bars" {
			continue
		}
		b.ReportAllocs()
		for b.Loop() {
			var out bytes.Buffer
			if err := musicxml.Encode(&out, c.Passage, musicxml.Options{}); err != nil {
				b.Fatal(err)
			}
			b.SetBytes(int64(out.Len()))
		}
	}
}
