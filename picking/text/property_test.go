package text_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/text"
)

// properties returns an empty set of properties with a fixed seed, so that a
// failure comes back on the next run.
func properties() *gopter.Properties {
	return gopter.NewProperties(gopter.DefaultTestParametersWithSeed(16))
}

// An oracle makes songs by chance.
type oracle struct{ *rand.Rand }

func (r oracle) pick(choices ...string) string { return choices[r.IntN(len(choices))] }

func (r oracle) often(percent int) bool { return r.IntN(100) < percent }

// kits are tunings with some chords for each.
var kits = []struct {
	tuning string
	chords []string
}{
	{"standard", []string{"Am=x02210", "G=320003", "D=xx0232", "C=x32010", "E7=020100", "F=133211", "G/B=x20003",
		"F#m7b5=2x2210", "A=x-12-14-14-14-12", "Ebmaj7#11=x65366", "Bm7b5/A=x0423x", "C5=xxx010", "Am=577555", "D=x20232", "Bb/D=x10331"}},
	{"drop D", []string{"D=000232", "A7=x02020", "G=5x0003", "Em7=222030"}},
	{"ukulele", []string{"C=0003", "Am=2000", "F=2010", "G7=0212", "C=x-x-x-15"}},
	{"seven-string", []string{"Am=xx02210", "E=x022100", "B7=0xx1202"}},
	{twelveStrings, []string{"Em=022220000000", "D=x-x-x-x-0-0-2-2-3-3-10-10"}},
	{"A2", []string{"A=0", "D=5", "C=15"}},
}

// song makes a song that Arrange takes.
func (r oracle) song() (song, picking.Passage) {
	for {
		kit := kits[r.IntN(len(kits))]
		s := song{chords: r.chart(kit.chords), setting: r.setting(kit.tuning), options: r.options()}
		figures := make([]string, 1+r.IntN(2))
		for i := range figures {
			figures[i] = r.figure(int(s.setting.Instrument.Tuning.Strings()))
		}
		s.figures = strings.Join(figures, ";")
		chart, errChart := picking.ParseProgression(s.chords)
		parsed, errFigures := picking.ParseFigures(s.figures)
		if errChart != nil || errFigures != nil {
			panic(fmt.Sprint(errChart, errFigures))
		}
		if p, err := picking.Arrange(chart, parsed, s.setting); err == nil {
			return s, p
		}
	}
}

func (r oracle) chart(chords []string) string {
	var b strings.Builder
	open := false
	for n := 1 + r.IntN(12); n > 0; n-- {
		switch {
		case !open && r.often(25):
			b.WriteString("|: ")
			open = true
		case open && r.often(40):
			b.WriteString(":| ")
			open = false
		default:
			b.WriteString("| ")
		}
		if r.often(10) {
			b.WriteString("N.C. ")
			continue
		}
		for k := []int{1, 1, 1, 2, 2, 3, 4}[r.IntN(7)]; k > 0; k-- {
			b.WriteString(r.pick(chords...) + r.pick("", "", "", "@1") + " ")
		}
	}
	if open {
		b.WriteString(":|")
	}
	return strings.TrimPrefix(b.String(), "| ")
}

func (r oracle) figure(strings int) string {
	text := r.pick("", "1/4: ", "1/8: ", "1/8: ", "1/12: ", "1/16: ", "1/32: ", "1/6: ", "3/16: ", "1/24: ")
	for n := 1 + r.IntN(9); n > 0; n-- {
		text += fmt.Sprint(1+r.IntN(strings)) + r.pick("", "", "", "", "u", "d", " -", " .") + " "
	}
	return text
}

func (r oracle) setting(tuning string) picking.Setting {
	meters := []picking.Meter{{}, {}, picking.ThreeFour, picking.SixEight, picking.SixEight, picking.NineEight, picking.TwelveEight,
		{Count: 7, Unit: 8}, {Count: 5, Unit: 4}, {Count: 2, Unit: 2}, {Count: 6, Unit: 4}, {Count: 6, Unit: 16}, {Count: 1, Unit: 1}}
	return picking.Setting{
		Meter:      meters[r.IntN(len(meters))],
		Tempo:      10 + r.IntN(300),
		Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning(tuning), Capo: fretboard.Fret(max(0, r.IntN(6)-2)), Hand: fretboard.Hand(r.IntN(3))},
		Strokes:    picking.Tradition(r.IntN(5)),
		Fit:        picking.Moulding(r.IntN(3)),
		Change:     picking.Change(r.IntN(2)),
		Fill:       picking.Fill(r.IntN(2)),
		InTurn:     r.often(50),
		Once:       r.often(50),
	}
}

func (r oracle) options() text.Options {
	return text.Options{Count: picking.CountWords(r.IntN(5)), Width: []int{0, 0, 40, 50, 64, 100, 132, 300}[r.IntN(8)],
		Spelling: fretboard.Spelling(max(0, r.IntN(4)-1))}
}

// bend changes one thing of a passage as Arrange would not make it.
func (r oracle) bend(p *picking.Passage) {
	bar := &p.Bars[r.IntN(len(p.Bars))]
	chord := &bar.Chords[r.IntN(len(bar.Chords))]
	by := picking.Ticks([]int{-1000, -40, -1, 7, 240, 5000}[r.IntN(6)])
	switch r.IntN(9) {
	case 0:
		bar.Length += by
	case 1:
		bar.At += by
	case 2:
		chord.At += by
	case 3:
		chord.Length += by
	case 4:
		p.Meter = picking.Meter{Count: r.IntN(40), Unit: r.IntN(9)}
	case 5:
		p.Strokes, p.Fit, bar.Pass, bar.Written = 9, 9, 2, r.IntN(5)
	case 6:
		p.Instrument.Tuning = fretboard.MustParseTuning(r.pick("A2", "ukulele", "D####3 A3"))
	default:
		if len(bar.Picks) > 0 {
			pick := &bar.Picks[r.IntN(len(bar.Picks))]
			pick.At, pick.Length, pick.Rings = pick.At+by*picking.Ticks(r.IntN(2)), pick.Length+by*picking.Ticks(r.IntN(2)), by
			pick.Fret, pick.Stroke, pick.Event = fretboard.Fret(by), picking.Stroke(r.IntN(4)), int(by)
		}
	}
}

func TestProperties(t *testing.T) {
	p := properties()
	p.Property("a sheet reads back as its passage", prop.ForAll(func(seed uint64) string {
		s, passage := oracle{rand.New(rand.NewPCG(seed, 0))}.song()
		if fault := readBack(passage, s.options, encoded(t, passage, s.options)); fault != "" {
			return fmt.Sprintf("%q %q %+v %+v\n%s", s.chords, s.figures, s.setting, s.options, fault)
		}
		return ""
	}, gen.UInt64()))
	p.Property("but for the title, a sheet is ASCII", prop.ForAll(func(seed uint64) bool {
		s, passage := oracle{rand.New(rand.NewPCG(seed, 1))}.song()
		return !strings.ContainsFunc(encoded(t, passage, s.options), func(r rune) bool { return r > '~' || r < ' ' && r != '\n' })
	}, gen.UInt64()))
	p.Property("a title never changes the rest of the sheet", prop.ForAll(func(title string, width int) bool {
		passage := arranged(t, songs[1])
		plain := encoded(t, passage, text.Options{Width: width})
		passage.Title = title
		titled := encoded(t, passage, text.Options{Width: width})
		return title == "" || strings.HasSuffix(titled, "\n\n"+plain) && clean(strings.TrimSuffix(titled, plain), width)
	}, gen.AnyString(), gen.IntRange(40, 100)))
	p.Property("a passage bent by hand gives a sheet or an error", prop.ForAll(func(seed uint64) bool {
		r := oracle{rand.New(rand.NewPCG(seed, 2))}
		s, passage := r.song()
		for range 1 + r.IntN(3) {
			r.bend(&passage)
		}
		var b strings.Builder
		err := text.Encode(&b, passage, s.options)
		return (err == nil) == (b.Len() > 0)
	}, gen.UInt64()))
	p.Property("the names of the counts and their words are inverse", prop.ForAll(func(n int) bool {
		c, err := picking.ParseCountWords(strings.ToUpper(picking.CountWords(n).String()))
		return (err == nil) == (n <= 4) && (err != nil || c == picking.CountWords(n))
	}, gen.IntRange(0, 9)))
	p.TestingRun(t)
}

// clean reports whether lines hold nothing that moves the cursor or hides, and
// keep to a width.
func clean(lines string, width int) bool {
	for _, line := range strings.Split(lines, "\n") {
		if len([]rune(line)) > width || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r == 0x7f || 0x202a <= r && r <= 0x202e }) {
			return false
		}
	}
	return true
}
