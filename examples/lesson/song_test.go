package main

import (
	"fmt"
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/json"
)

// decoded runs the program for JSON and reads it back.
func decoded(t *testing.T, args ...string) picking.Passage {
	t.Helper()
	p, err := json.Decode(strings.NewReader(playedOut(t, append(args, "-format", "json")...)))
	if err != nil {
		t.Fatalf("%q: %v", args, err)
	}
	return p
}

func stringsOf(picks []picking.Pick) string {
	var words []string
	for _, p := range picks {
		words = append(words, fmt.Sprint(p.String))
	}
	return strings.Join(words, " ")
}

func strokesOf(picks []picking.Pick) string {
	var letters strings.Builder
	for _, p := range picks {
		letters.WriteString(strings.ToUpper(p.Stroke.String()[:1]))
	}
	return letters.String()
}

func checkBars(t *testing.T, p picking.Passage, strings, strokes []string) {
	t.Helper()
	for i, bar := range p.Bars {
		if got := stringsOf(bar.Picks); got != strings[i] {
			t.Errorf("bar %d: strings %s, want %s", i+1, got, strings[i])
		}
		if got := strokesOf(bar.Picks); strokes != nil && got != strokes[i] {
			t.Errorf("bar %d: strokes %s, want %s", i+1, got, strokes[i])
		}
	}
	if len(p.Bars) != len(strings) {
		t.Errorf("%d bars, want %d", len(p.Bars), len(strings))
	}
}

func checkLosses(t *testing.T, p picking.Passage, want string) {
	t.Helper()
	var all []picking.Loss
	for _, bar := range p.Bars {
		for _, c := range bar.Chords {
			all = append(all, c.Fit.Losses...)
		}
	}
	if got := fmt.Sprint(all); got != want {
		t.Errorf("losses %s, want %s", got, want)
	}
}

// What a teacher expects of the main job, worked by hand.

func TestASongInSixEight(t *testing.T) {
	p := decoded(t, "-chords", "Am | G | Dm | E", "-figure", "5 3 2 1 2 3", "-meter", "6/8")
	checkBars(t, p, []string{"5 3 2 1 2 3", "6 3 2 1 2 3", "4 3 2 1 2 3", "6 3 2 1 2 3"},
		[]string{"DDDUUU", "DDDUUU", "DDDUUU", "DDDUUU"})
	checkLosses(t, p, "[]")
}

func TestAFigureOnFewerStrings(t *testing.T) {
	p := decoded(t, "-chords", "G=320003 | D=xx0232", "-figure", "5 4 3 2 3 4 3 4")
	checkBars(t, p, []string{"6 4 3 2 3 4 3 4", "4 3 2 1 2 3 2 3"}, nil)
	checkLosses(t, p, "[]")
}

func TestAFigureOnTooFewStrings(t *testing.T) {
	p := decoded(t, "-chords", "D=xx0232", "-figure", "6 4 3 2 1 2 3 4")
	checkBars(t, p, []string{"4 4 3 2 1 2 3 4"}, nil)
	checkLosses(t, p, "[{1 2 up same} {8 1 down same}]")
}

func TestTwoChordsInABar(t *testing.T) {
	p := decoded(t, "-chords", "C G/B", "-figure", "5 3 2 1 5 3 2 1")
	checkBars(t, p, []string{"5 3 2 1 5 3 2 1"}, nil)
	for i, c := range p.Bars[0].Chords {
		if s := c.Voicing.Start().String; s != 5 {
			t.Errorf("chord %d starts on string %d, want 5", i+1, s)
		}
	}
	// From string 1 the next is string 5, which lies on the thick side: up.
	if picks := p.Bars[0].Picks; picks[3].Stroke != picking.UpStroke || picks[7].Stroke != picking.UpStroke {
		t.Errorf("strokes %s: a last pick before a change does not go toward the next string", strokesOf(picks))
	}
}

func TestACapoOnADroppedTuning(t *testing.T) {
	args := []string{"-chords", "A7=x02020", "-tuning", "drop D", "-figure", "5 4 3 2 1 2 3 4"}
	open := decoded(t, args...).Bars[0]
	up := decoded(t, append(args, "-capo", "3")...).Bars[0]
	if got := up.Chords[0].Sounds.String(); got != "C7" {
		t.Errorf("it sounds %s, want C7", got)
	}
	for i, p := range up.Picks {
		if was := open.Picks[i]; p.Fret != was.Fret || p.String != was.String || p.Pitch != was.Pitch+3 {
			t.Errorf("pick %d: string %d, fret %d, pitch %d with the capo; %d, %d, %d without",
				i+1, p.String, p.Fret, p.Pitch, was.String, was.Fret, was.Pitch)
		}
	}
}

// On G4 C4 E4 A4 the lowest pitch is string 3's: 0003 starts there as C, 2010 as
// F on string 2, and of 0212 as G7 string 4 sounds G4, the only G. 2000 as Am
// has A4 on strings 4 and 1; of two that sound alike the thicker comes first.
func TestAUkulele(t *testing.T) {
	p := decoded(t, "-chords", "C | Am | F | G7", "-figure", "4 3 2 1", "-tuning", "ukulele")
	want := []struct {
		shape string
		start int
	}{{"0003", 3}, {"2000", 4}, {"2010", 2}, {"0212", 4}}
	for i, bar := range p.Bars {
		v := bar.Chords[0].Voicing
		if v.Shape().String() != want[i].shape || int(v.Start().String) != want[i].start {
			t.Errorf("%s: %s starting on string %d, want %s on %d",
				v.Chord(), v.Shape(), v.Start().String, want[i].shape, want[i].start)
		}
		if first := bar.Picks[0]; first.String != v.Start().String {
			t.Errorf("%s: the figure starts on string %d", v.Chord(), first.String)
		}
		for _, pick := range bar.Picks {
			if pick.String < 1 || pick.String > 4 {
				t.Errorf("%s: string %d", v.Chord(), pick.String)
			}
		}
	}
}

func TestAnOwnStrokeIsKept(t *testing.T) {
	args := []string{"-chords", "G", "-figure", "5 3 2u 1 2 3", "-meter", "6/8"}
	p := decoded(t, args...)
	checkBars(t, p, []string{"6 3 2 1 2 3"}, nil)
	for i, pick := range p.Bars[0].Picks {
		if own := pick.Why == picking.OwnStroke; own != (i == 2) {
			t.Errorf("pick %d is struck for the reason %q", i+1, pick.Why)
		}
	}
	if s := p.Bars[0].Picks[2].Stroke; s != picking.UpStroke {
		t.Errorf("the own stroke is %s, want up", s)
	}
	if out := playedOut(t, args...); !strings.Contains(out, "own") {
		t.Errorf("the sheet does not speak of the own stroke:\n%s", out)
	}
}

func TestAFigureNamedByItsChord(t *testing.T) {
	p := decoded(t, "-chords", "Am | Dm@2", "-figure", "5 3 2 1 2 3; 5 2 3 1 2 3", "-meter", "6/8")
	checkBars(t, p, []string{"5 3 2 1 2 3", "4 2 3 1 2 3"}, nil)
}

func TestSevenSlots(t *testing.T) {
	const figure = "5 3 2 1 2 3 2"
	_, errs, code := play(nil, "-chords", "Am", "-figure", figure)
	if code != 2 || !strings.Contains(errs, "let a note ring (5 - 3 2 1 2 3 2)") || !strings.Contains(errs, "1/8: ") {
		t.Errorf("exit code %d, %s", code, errs)
	}
	checkBars(t, decoded(t, "-chords", "Am", "-figure", "1/8: "+figure), []string{"5 3 2 1 2 3 2 5"}, nil)
	checkBars(t, decoded(t, "-chords", "Am", "-figure", "5 - 3 2 1 2 3 2"), []string{"5 3 2 1 2 3 2"}, nil)
}

// The two forms tell of the same passage.
func TestTheSheetAgreesWithTheForm(t *testing.T) {
	p := decoded(t)
	sheet := playedOut(t)
	for _, bar := range p.Bars {
		for _, c := range bar.Chords {
			if want := fmt.Sprint(c.Chord, " ", c.Voicing.Shape()); !strings.Contains(sheet, want) {
				t.Errorf("the sheet lacks %s", want)
			}
		}
	}
	if want := fmt.Sprintf("%d string spacings", p.Travel); !strings.Contains(sheet, want) {
		t.Errorf("the sheet lacks %s", want)
	}
}
