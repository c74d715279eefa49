package picking

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"weft.example/fretboard"
)

func TestWhatCannotBeArrangedIsRefusedInPlace(t *testing.T) {
	for _, test := range []struct {
		why, chords, figures string
		setting              Setting
		notation, at, mend   string
	}{
		{"slots that do not divide the bar", "Am", "5 3 2 1 2 3 2", Setting{}, "figure", "5 3 2 1 2 3 2",
			"let a note ring (5 - 3 2 1 2 3 2) or name the slot (1/8: ...)"},
		{"dotted slots", "Am", "5 3 2 1", Setting{Meter: SixEight}, "figure", "5 3 2 1", "let a note ring (5 - 3 - 2 1)"},
		{"a bar of the figure", "Am", "5 3 | 5 3 2 1 2", Setting{}, "figure", "5 3 2 1 2", "let a note ring"},
		{"slots that do not make a bar", "Am", "1/8: 5 3 | 2 1", Setting{}, "figure", "5 3", "bar lines"},
		{"a string too many", "C", "5 3 2 1", Setting{Instrument: tuned("ukulele")}, "figure", "5", "1 to 4"},
		{"a root too many", "C", "root 6: 3 2 1", Setting{Instrument: tuned("ukulele")}, "figure", "3", ""},
		{"a shape with too few strings", "Am | G=32000", "5 3 2 1", Setting{}, "chords", "32000", ""},
		{"a fret beyond the instrument", "Am=x-0-2-2-1-30", "5 3 2 1", Setting{}, "chords", "x-0-2-2-1-30", "lower"},
		{"a fret beyond the capo", "Am=x-0-2-2-1-23", "5 3 2 1", Setting{Instrument: fretboard.Instrument{Capo: 2}}, "chords", "x-0-2-2-1-23", "lower"},
		{"a muted shape", "Am=xxxxxx", "5 3 2 1", Setting{}, "chords", "xxxxxx", "N.C."},
		{"no such figure", "Am | G@3", "5 3 2 1; 5 1 2 3", Setting{}, "chords", "G@3", "semicolon"},
		{"too many beats", "Am:3 G:2", "5 3 2 1", Setting{}, "chords", "G:2", "4 such as Am:2 G:2"},
		{"too few beats", "Am:1 G:2", "5 3 2 1", Setting{}, "chords", "G:2", "4 such as Am:2 G:2"},
		{"too many for one", "Am:5", "5 3 2 1", Setting{}, "chords", "Am:5", "4 such as Am:4"},
		{"no beat left", "Am:4 G", "5 3 2 1", Setting{}, "chords", "G", "4"},
		{"shares that cannot be written", "Am G C D E", "5 3 2 1", Setting{}, "chords", "E", "Am:1 G:1 C:1 D:0.5 E:0.5"},
		{"too few dotted beats", "Am:1 G:2", "5 3 2 1 2 3", Setting{Meter: TwelveEight}, "chords", "G:2", "12, or to 4 dotted ones, such as Am:6 G:6"},
		{"two readings in 6/8", "Am:1 G", "5 3 2 1 2 3", Setting{Meter: SixEight}, "chords", "Am:1", "every chord"},
		{"600 bars", strings.Repeat("Am | ", 599) + "Am", "5 3 2 1", Setting{}, "chords", "Am", "parts"},
		{"300 bars twice", "|: " + strings.Repeat("Am | ", 299) + "Am :|", "5 3 2 1", Setting{}, "chords", "Am", "parts"},
		{"no tempo", "Am", "5 3 2 1", Setting{Tempo: 5}, "tempo", "5", "10 to 400"},
		{"no meter", "Am", "5 3 2 1", Setting{Meter: Meter{4, 5}}, "meter", "4/5", "6/8"},
		{"no tradition", "Am", "5 3 2 1", Setting{Strokes: 9}, "strokes", "9", ""},
		{"no capo", "Am", "5 3 2 1", Setting{Instrument: fretboard.Instrument{Capo: 30}}, "capo", "30", ""},
	} {
		_, err := tryArrange(test.chords, test.figures, test.setting)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) {
			t.Errorf("%s: %T %v", test.why, err, err)
			continue
		}
		p := impossible.Place
		if p.Notation != test.notation || p.Text() != test.at || !strings.Contains(p.Mend, test.mend) {
			t.Errorf("%s: %s %q, mend %q; want %s %q, %q", test.why, p.Notation, p.Text(), p.Mend, test.notation, test.at, test.mend)
		}
	}
	if _, err := Arrange(Progression{}, Figures{MustParseFigure("1")}, Setting{}); err == nil {
		t.Error("no bars are arranged")
	}
	if _, err := Arrange(MustParseProgression("Am"), nil, Setting{}); err == nil {
		t.Error("no figure is arranged")
	}
	if _, err := Arrange(MustParseProgression("Am"), Figures{{}}, Setting{}); err == nil {
		t.Error("an empty figure is arranged")
	}
}

func TestTemposFromTheSlowestToTheFastest(t *testing.T) {
	for tempo, good := range map[int]bool{MinTempo - 1: false, MinTempo: true, MaxTempo: true, MaxTempo + 1: false} {
		if _, err := tryArrange("Am=x02210", "5 3", Setting{Tempo: tempo}); (err == nil) != good {
			t.Errorf("a tempo of %d gives %v", tempo, err)
		}
	}
}

// What badBeats proposes must be taken.
func TestProposedBeatsFillTheBar(t *testing.T) {
	for _, m := range []Meter{FourFour, ThreeFour, SixEight, {7, 8}, {5, 4}, {2, 4}} {
		for n := 1; n <= 8; n++ {
			chords := make([]ChartChord, n)
			for i := range chords {
				chords[i].Chord = mustChord("Am")
			}
			text := Progression{}.withBeats(chords, m)
			if _, err := tryArrange(text, "1/8: 5 3", Setting{Meter: m}); err != nil {
				t.Errorf("%d chords in %s: %s: %v", n, m, text, err)
			}
		}
	}
}

func TestRemarks(t *testing.T) {
	if got := fmt.Sprint(arrange(t, "Am=x02210 G=320003", "1/8: 5 3 2 1", Setting{Meter: Meter{7, 8}}).Bars[0].Chords[0].Remarks); got != "[the figure is cut within slot 4 of 4]" {
		t.Errorf("three eighths and a half: %s", got)
	}
	p := arrange(t, "C=332010 | Am G", "5 3 2 1; 5 1 2 3", Setting{})
	if got := fmt.Sprint(p.Bars[0].Chords[0].Remarks); !strings.Contains(got, "string 6") {
		t.Errorf("C=332010: %s", got)
	}
	if got := fmt.Sprint(p.Bars[1].Chords[0].Remarks); got != "[the figure is cut after slot 2 of 4]" {
		t.Errorf("half a bar: %s", got)
	}
	if got := fmt.Sprint(p.Remarks); got != "[no chord plays figure 2]" {
		t.Errorf("an idle figure: %s", got)
	}
}
