package box_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

func TestProperties(t *testing.T) {
	p := properties(400)
	p.Property("data, text and words say what the voicing and its fingering say", prop.ForAll(func(v voicing.Voicing) string {
		f, _ := v.Fingering()
		b := box.Of(v)
		if fault := disagreement(b, f); fault != "" {
			return fmt.Sprintf("%v %v on %+v: %s\n%s", v.Chord(), v.Shape(), v.Instrument(), fault, b.Text())
		}
		return ""
	}, voicings()))
	p.Property("so they do with every other fingering, and for the other hand", prop.ForAll(func(v voicing.Voicing) string {
		all := v.Fingerings()
		for _, f := range all[:min(len(all), 12)] {
			b, err := box.Of(v).With(f)
			if err != nil {
				return err.Error()
			}
			if fault := disagreement(b, f) + disagreement(b.Mirror(), f); fault != "" {
				return fmt.Sprintf("%v %v held with %v: %s", v.Chord(), v.Shape(), f, fault)
			}
		}
		return ""
	}, voicings()))
	p.Property("a box mirrored has its columns the other way round and the same words, and mirrored again is itself", prop.ForAll(
		func(v voicing.Voicing) bool {
			b := box.Of(v)
			turned := b.Mirror().Columns()
			slices.Reverse(turned)
			return slices.Equal(turned, b.Columns()) && slices.Equal(b.Words(), b.Mirror().Words()) && b.Mirror().Mirror() == b &&
				len(turned) > 0 && (len(turned) == 1 || !slices.Equal(b.Mirror().Columns(), b.Columns()))
		}, voicings()))
	p.Property("string 1 is on the left only on an instrument strung for the left hand", prop.ForAll(func(v voicing.Voicing) bool {
		columns := box.Of(v).Columns()
		left, right := columns[0].String, columns[len(columns)-1].String
		if v.Instrument().Hand == fretboard.LeftRestrung {
			left, right = right, left
		}
		return left == v.Shape().Strings() && right == 1
	}, voicings()))
	p.Property("a window shows every fret held, lies on the neck and begins as low as it may", prop.ForAll(windowFault, voicings()))
	p.Property("text is ASCII without spaces at the end of a line", prop.ForAll(func(v voicing.Voicing) bool {
		return tidy(box.Of(v).Text())
	}, voicings()))
	p.Property("boxes with as many strings stand on a sheet at equal distances, each as its own text", prop.ForAll(sheetFault, gen.UInt64(), gen.IntRange(40, 130)))
	p.Property("words have no signs but full stops, commas and colons", prop.ForAll(func(v voicing.Voicing) bool {
		for _, sentence := range box.Of(v).Words() {
			if !strings.HasSuffix(sentence, ".") || strings.Trim(sentence, "ABCDEFGISMRLabcdefghijklmnopqrstuvwxyz0123456789 ,:.") != "" ||
				strings.Contains(sentence, "  ") || strings.Count(sentence, ".") != 1 {
				return false
			}
		}
		return true
	}, voicings()))
	p.TestingRun(t)
}

// windowFault checks a window against its promises.
func windowFault(v voicing.Voicing) string {
	first, rows := box.Of(v).Window()
	last, reach := first+fretboard.Fret(rows)-1, v.Instrument().Reach()
	low, high := fretboard.MaxFrets, fretboard.Fret(0)
	for s := range v.Sounding().Thinnest() {
		if f, _ := v.Shape().Fret(s); f > 0 {
			low, high = min(low, f), max(high, f)
		}
	}
	switch {
	case high > 0 && (low < first || high > last):
		return fmt.Sprintf("frets %d to %d in a window from %d to %d", low, high, first, last)
	case first < 1 || last > reach:
		return fmt.Sprintf("a window from %d to %d on a neck of %d", first, last, reach)
	case high <= 5 && first != 1:
		return fmt.Sprintf("fret %d in a window from %d", high, first)
	case high > 5 && first != low && last != reach:
		return fmt.Sprintf("frets from %d in a window from %d", low, first)
	case rows < 4 && fretboard.Fret(rows) != reach, rows > 4 && last != high:
		return fmt.Sprintf("%d rows for frets %d to %d", rows, low, high)
	}
	return ""
}

func tidy(text string) bool {
	for _, line := range strings.Split(text, "\n") {
		if strings.HasSuffix(line, " ") || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
			return false
		}
	}
	return strings.HasSuffix(text, "\n")
}

// sheetFault cuts a sheet into its boxes and holds each against its own text.
func sheetFault(seed uint64, width int) string {
	r := newOracle(seed)
	g := r.instrument()
	boxes := make([]box.Box, 1+r.IntN(7))
	for i := range boxes {
		boxes[i] = box.Of(r.shaped(g, r.chord()))
	}
	sheet := encoded(boxes, box.Options{Width: width})
	if !tidy(sheet) || slices.ContainsFunc(strings.Split(sheet, "\n"), func(l string) bool { return len(l) > width }) {
		return "untidy or too wide:\n" + sheet
	}
	wide := max(10, 3*int(g.Tuning.Strings())+2)
	across := (width + 1) / (wide + 1)
	lines := strings.Split(sheet, "\n")
	for row := range slices.Chunk(boxes, across) {
		heads, bodies := 0, 0
		for _, b := range row {
			head, body := heights(b)
			heads, bodies = max(heads, head), max(bodies, body)
		}
		for i, b := range row {
			head, body := heights(b)
			got := cut(lines[heads-head:heads+body], i*(wide+1), wide)
			if got != b.Text() || cut(lines[:heads-head], i*(wide+1), wide)+cut(lines[heads+body:heads+bodies], i*(wide+1), wide) != "" {
				return fmt.Sprintf("box %d of its row:\n%s\nnot\n%s", i+1, got, b.Text())
			}
		}
		if lines = lines[heads+bodies:]; lines[0] != "" {
			return "no empty line after a row"
		}
		lines = lines[1:]
	}
	if !slices.ContainsFunc(lines, func(l string) bool { return l == "below the numbers of the strings" }) {
		return "no legend after the last row"
	}
	return ""
}

// heights returns the lines above the nut's marks and the others of a box.
func heights(b box.Box) (head, body int) {
	_, rows := b.Window()
	body = 4 + 2*rows
	return strings.Count(b.Text(), "\n") - body, body
}

// cut takes a piece out of each line, nothing at all if they are empty.
func cut(lines []string, from, wide int) string {
	text := ""
	for _, line := range lines {
		text += strings.TrimRight(line[min(from, len(line)):min(from+wide, len(line))], " ") + "\n"
	}
	if strings.Trim(text, "\n") == "" {
		return ""
	}
	return text
}

// TestChanceHasAll proves that the properties meet what they speak of.
func TestChanceHasAll(t *testing.T) {
	met := map[string]int{}
	for _, v := range pool() {
		b := box.Of(v)
		first, rows := b.Window()
		for what, yes := range map[string]bool{
			"capo": v.Instrument().Capo > 0, "mirrored": v.Instrument().Hand.Mirrored(), "unheld": b.Unheld() != nil,
			"barre": len(b.Barres()) > 0, "two barres": len(b.Barres()) > 1, "two digits": first > 9, "tall": rows > 5,
			"short neck": rows < 4, "twelve strings": len(b.Columns()) == 12, "one string": len(b.Columns()) == 1,
			"held": b.Unheld() == nil, "higher": first > 1, "name on two lines": strings.Count(b.Text(), "\n") > 2*rows+5,
		} {
			if yes {
				met[what]++
			}
		}
	}
	for _, what := range []string{"capo", "mirrored", "unheld", "barre", "two barres", "two digits", "tall", "short neck",
		"twelve strings", "one string", "held", "higher", "name on two lines"} {
		if met[what] < 5 {
			t.Errorf("%s: only %d", what, met[what])
		}
	}
}

func TestWithRefusesAStrangeFingering(t *testing.T) {
	c, f := held(t, fretboard.Instrument{}, "C=x32010"), held(t, fretboard.Instrument{}, "F=133211")
	strange, err := f.Fingering()
	if err != nil {
		t.Fatal(err)
	}
	b, err := box.Of(c).With(strange)
	located, ok := err.(*fretboard.ImpossibleError)
	if !ok || located.Text() != strange.String() || b != (box.Box{}) {
		t.Errorf("%v, %v", b, err)
	}
	if _, err := box.Of(c).With(voicing.Fingering{}); err == nil {
		t.Error("no fingering is taken for one")
	}
}
