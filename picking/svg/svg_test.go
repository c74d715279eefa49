package svg_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/pickingtest"
	"weft.example/picking/svg"
)

// drawn returns the pages of a passage read back.
func drawn(p picking.Passage, o svg.Options) ([]drawing, error) {
	pages, err := svg.Pages(p, o)
	if err != nil {
		return nil, err
	}
	drawings := make([]drawing, len(pages))
	for i, page := range pages {
		if drawings[i], err = readDrawing(page); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	return drawings, nil
}

// fault says what is wrong with the sheet of a passage, if anything is.
func fault(p picking.Passage, o svg.Options) string {
	pages, err := drawn(p, o)
	if err != nil {
		return err.Error()
	}
	for i, d := range pages {
		for _, fault := range []string{layoutFault(d), markupFault(d), printFault(d, o)} {
			if fault != "" {
				return fmt.Sprintf("page %d: %s", i+1, fault)
			}
		}
	}
	return readBack(p, pages)
}

// printFault says whether large print is not large.
func printFault(d drawing, o svg.Options) string {
	if smallest := smallest(d); o.Size >= 18 && smallest < o.Size && !said(d, "Printed at "+strconv.Itoa(smallest)) {
		return fmt.Sprintf("type of %d points at %d", smallest, o.Size)
	}
	return ""
}

// said reports whether the description of a page says that its size was
// lowered; every page of such a sheet does.
func said(d drawing, text string) bool { return strings.Contains(d.desc, text) }

func random(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 0)) }

// options returns options by chance.
func options(r *rand.Rand) svg.Options {
	return svg.Options{Paper: svg.Paper(r.IntN(2)), Landscape: r.IntN(2) == 0,
		Size: []int{0, 12, 13, 15, 18, 20, 24, 30, 36}[r.IntN(9)], Spelling: fretboard.Spelling(r.IntN(3))}
}

func TestTheListOnEveryPaper(t *testing.T) {
	for _, c := range pickingtest.List() {
		for _, o := range []svg.Options{{}, {Size: 18, Paper: svg.Letter}, {Size: 36}, {Size: 24, Landscape: true}, {Size: 36, Paper: svg.Letter, Landscape: true}} {
			if long := len(c.Passage.Bars) > 100 || len(c.Passage.Title) > 1000; !(testing.Short() || long) || o.Size == 0 {
				if fault := fault(c.Passage, o); fault != "" {
					t.Errorf("%s (%s) %+v: %s", c.Name, c.Why, o, fault)
				}
			}
		}
	}
}

func TestEncodersSurvive(t *testing.T) {
	pickingtest.Check(t, func(w io.Writer, p picking.Passage) error { return svg.Encode(w, p, svg.Options{}) })
}

func TestProperties(t *testing.T) {
	p := gopter.NewProperties(gopter.DefaultTestParametersWithSeed(17))
	p.Property("a sheet reads back as its passage, and nothing on it overlaps or lies in the margin", prop.ForAll(func(seed uint64) string {
		r := random(seed)
		passage, o := pickingtest.Random(r), options(r)
		if fault := fault(passage, o); fault != "" {
			return fmt.Sprintf("%+v: %s", o, fault)
		}
		return ""
	}, gen.UInt64()))
	p.Property("any title keeps to its room", prop.ForAll(func(title string, seed uint64) string {
		passage := pickingtest.List()[0].Passage
		passage.Title = title
		return fault(passage, options(random(seed)))
	}, gen.AnyString(), gen.UInt64()))
	p.Property("one drawing holds the pages one below the other", prop.ForAll(func(seed uint64) bool {
		r := random(seed)
		passage, o := pickingtest.Random(r), options(r)
		pages, err := svg.Pages(passage, o)
		var all bytes.Buffer
		if err != nil || svg.Encode(&all, passage, o) != nil {
			return false
		}
		one, errOne := readDrawing(pages[0])
		whole, errWhole := readDrawing(all.Bytes())
		return errOne == nil && errWhole == nil && whole.width == one.width && whole.height == len(pages)*one.height &&
			bytes.Count(all.Bytes(), []byte(`class="page"`)) == len(pages) &&
			bytes.Count(all.Bytes(), []byte("<style>@page{size:")) == 1
	}, gen.UInt64()))
	p.TestingRun(t)
}

// TestColumnsStandInTime wants the columns of a system in the order of time, and
// equal times as far apart as each other where nothing needs more room.
func TestColumnsStandInTime(t *testing.T) {
	p := listed(t, "sixteen-bars")
	pages, err := drawn(p, svg.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range pages {
		for n := range countSystems(d) {
			for _, bar := range systemOf(d, n).bars() {
				checkSteps(t, bar)
			}
		}
	}
}

// checkSteps wants the figures of a bar of equal slots in equal steps, but
// where two chords share it.
func checkSteps(t *testing.T, bar []element) {
	t.Helper()
	var at []int
	names := 0
	for _, e := range bar {
		if e.class == "fret" {
			at = append(at, e.number("x"))
		}
		if e.class == "chord" {
			names++
		}
	}
	for i := 2; i < len(at); i++ {
		if step, before := at[i]-at[i-1], at[i-1]-at[i-2]; step <= 0 || names == 1 && (step-before > 2 || before-step > 2) {
			t.Errorf("figures at %v", at)
			return
		}
	}
}

func listed(t testing.TB, name string) picking.Passage {
	t.Helper()
	for _, c := range pickingtest.List() {
		if c.Name == name {
			return c.Passage
		}
	}
	t.Fatalf("no case %s", name)
	return picking.Passage{}
}

// TestMirroredBoxes wants the boxes of a restrung guitar as in a mirror, those
// of a turned one as ever, and the tab of both as ever.
func TestMirroredBoxes(t *testing.T) {
	right, restrung, turned := muted(t, fretboard.RightHanded), muted(t, fretboard.LeftRestrung), muted(t, fretboard.LeftTurned)
	if right == 0 || right != turned || restrung <= right {
		t.Errorf("the muted string 6 lies at %d, restrung at %d, turned at %d", right, restrung, turned)
	}
}

// muted returns the place of the first muted string of Am.
func muted(t *testing.T, hand fretboard.Hand) int {
	t.Helper()
	p, err := picking.Arrange(picking.MustParseProgression("Am=x02210"), picking.Figures{picking.MustParseFigure("5 3 2 1")},
		picking.Setting{Instrument: fretboard.Instrument{Hand: hand}})
	if err != nil {
		t.Fatal(err)
	}
	pages, err := drawn(p, svg.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range pages[0].elements {
		if e.class == "muted" && e.system == 0 {
			return middleOf(e)
		}
	}
	return 0
}

// TestKnotsMarkWhatIsCaught wants a knot for each inside crossing and each
// return, and none under strokes toward the next string, which make none.
func TestKnotsMarkWhatIsCaught(t *testing.T) {
	for _, name := range []string{"usual", "alternate", "jig", "own-strokes"} {
		p := listed(t, name)
		want, got := 0, 0
		for _, pick := range p.Picks() {
			if pick.Crossing == picking.InsideCrossing || pick.Crossing == picking.ReturnCrossing {
				want++
			}
		}
		pages, err := drawn(p, svg.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range pages {
			for _, e := range d.elements {
				if e.class == "knot" && e.system >= 0 {
					got++
				}
			}
		}
		if got != want || name == "usual" && want > 0 {
			t.Errorf("%s: %d knots, want %d", name, got, want)
		}
	}
}

func TestWhatCannotBeOnASheet(t *testing.T) {
	good := listed(t, "usual")
	bent := func(change func(p *picking.Passage)) picking.Passage {
		p := listed(t, "usual")
		change(&p)
		return p
	}
	for _, c := range []struct {
		why, reason string
		passage     picking.Passage
		options     svg.Options
	}{
		{"smaller than a sheet", "not a size", good, svg.Options{Size: 11}},
		{"larger than a sheet", "not a size", good, svg.Options{Size: 37}},
		{"a negative size", "not a size", good, svg.Options{Size: -12}},
		{"a paper by hand", "no such paper", good, svg.Options{Paper: 2}},
		{"a spelling by hand", "no such spelling", good, svg.Options{Spelling: 3}},
		{"a meter by hand", "not a time signature", bent(func(p *picking.Passage) { p.Meter = picking.Meter{Count: 3} }), svg.Options{}},
		{"an instrument by hand", "", bent(func(p *picking.Passage) { p.Instrument.Capo = 99 }), svg.Options{}},
		{"a bar without length", "no length", bent(func(p *picking.Passage) { p.Bars[1].Length = 0 }), svg.Options{}},
		{"bars in disorder", "before the one before it ends", bent(func(p *picking.Passage) { p.Bars[1].At -= 10 }), svg.Options{}},
		{"a pick before its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].At = 0 }), svg.Options{}},
		{"two picks at once", "before another", bent(func(p *picking.Passage) { p.Bars[1].Picks[1].At = p.Bars[1].Picks[0].At }), svg.Options{}},
		{"a string too many", "lacks", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].String = 7 }), svg.Options{}},
		{"a fret below the nut", "no neck", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].Fret = -1 }), svg.Options{}},
		{"no stroke", "without a stroke", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].Stroke = picking.Free }), svg.Options{}},
		{"a chord beyond its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Chords[0].Length *= 2 }), svg.Options{}},
	} {
		var b bytes.Buffer
		err := svg.Encode(&b, c.passage, c.options)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || !strings.Contains(err.Error(), c.reason) || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes", c.why, err, b.Len())
		}
		if pages, err := svg.Pages(c.passage, c.options); err == nil || pages != nil {
			t.Errorf("%s: %d pages", c.why, len(pages))
		}
	}
}

// TestTheEmptyPassage has one page and nothing to explain.
func TestTheEmptyPassage(t *testing.T) {
	pages, err := drawn(picking.Passage{}, svg.Options{})
	if err != nil || len(pages) != 1 || countSystems(pages[0]) != 0 {
		t.Errorf("%d pages, %v", len(pages), err)
	}
}

// TestPaperSizes holds the pages to ISO 216 and to 8.5 by 11 inches, in points
// of 1/72 inch.
func TestPaperSizes(t *testing.T) {
	head := regexp.MustCompile(`width="([0-9.]+)(mm|in)" height="([0-9.]+)(mm|in)" viewBox="0 0 ([0-9]+) ([0-9]+)"`)
	inches := map[string]float64{"mm": 1 / 25.4, "in": 1}
	for _, o := range []svg.Options{{}, {Landscape: true}, {Paper: svg.Letter}, {Paper: svg.Letter, Landscape: true}} {
		pages, err := svg.Pages(listed(t, "usual"), o)
		if err != nil {
			t.Fatal(err)
		}
		m := head.FindStringSubmatch(string(pages[0]))
		if m == nil {
			t.Fatalf("%+v: no size in %.200s", o, pages[0])
		}
		for i := range 2 {
			size, _ := strconv.ParseFloat(m[1+2*i], 64)
			units, _ := strconv.ParseFloat(m[5+i], 64)
			if off := size*inches[m[2+2*i]]*7200 - units; off > 1 || off < -1 {
				t.Errorf("%+v: %s%s in %s units", o, m[1+2*i], m[2+2*i], m[5+i])
			}
		}
		if wide := m[5] > m[6]; wide != o.Landscape {
			t.Errorf("%+v: %s by %s", o, m[5], m[6])
		}
	}
}

func TestParsePaper(t *testing.T) {
	for _, p := range []svg.Paper{svg.A4, svg.Letter} {
		if got, err := svg.ParsePaper(strings.ToLower(p.String())); err != nil || got != p {
			t.Errorf("%v, %v", got, err)
		}
	}
	if _, err := svg.ParsePaper("A5"); err == nil {
		t.Error("A5 is read")
	}
}

// FuzzTitle holds any title to the layout and to XML.
func FuzzTitle(f *testing.F) {
	for _, title := range []string{pickingtest.SixtyTitle, pickingtest.MarksTitle, pickingtest.ControlTitle, "", strings.Repeat("W", 300)} {
		f.Add(title, 36, true)
	}
	base := pickingtest.List()[0].Passage
	f.Fuzz(func(t *testing.T, title string, size int, wide bool) {
		p := base
		p.Title = title
		o := svg.Options{Size: 12 + (size&0xff)%25, Landscape: wide}
		if fault := fault(p, o); fault != "" {
			t.Fatalf("%+v: %s", o, fault)
		}
	})
}

func BenchmarkPagesSixteenBars(b *testing.B) {
	p := listed(b, "sixteen-bars")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := svg.Pages(p, svg.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
