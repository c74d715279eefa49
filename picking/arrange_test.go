package picking

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// arrange reads and arranges, or fails the test.
func arrange(t *testing.T, chords, figures string, s Setting) Passage {
	t.Helper()
	p, err := tryArrange(chords, figures, s)
	if err != nil {
		t.Fatalf("%q with %q: %v", chords, figures, err)
	}
	return p
}

func tryArrange(chords, figures string, s Setting) (Passage, error) {
	song, err := ParseProgression(chords)
	if err != nil {
		return Passage{}, err
	}
	fs, err := ParseFigures(figures)
	if err != nil {
		return Passage{}, err
	}
	return Arrange(song, fs, s)
}

// stringsOf prints the strings of each bar; times and lengths where asked.
func stringsOf(p Passage) string {
	var bars []string
	for _, bar := range p.Bars {
		var picks []string
		for _, pick := range bar.Picks {
			picks = append(picks, fmt.Sprint(pick.String))
		}
		bars = append(bars, strings.Join(picks, " "))
	}
	return strings.Join(bars, " | ")
}

func strokesOf(p Passage) string {
	var strokes []Stroke
	for _, pick := range p.Picks() {
		strokes = append(strokes, pick.Stroke)
	}
	return letters(strokes)
}

// timesOf prints each pick as start+length~ringing in parts of a quarter note.
func timesOf(p Passage) string {
	quarters := func(t Ticks) string { return fmt.Sprint(float64(t) / float64(TicksPerQuarter)) }
	var picks []string
	for _, pick := range p.Picks() {
		picks = append(picks, quarters(pick.At)+"+"+quarters(pick.Length)+"~"+quarters(pick.Rings))
	}
	return strings.Join(picks, " ")
}

func tuned(name string) fretboard.Instrument {
	tuning, err := fretboard.ParseTuning(name)
	if err != nil {
		panic(err)
	}
	return fretboard.Instrument{Tuning: tuning}
}

// What a teacher expects of everyday songs; worked by hand.
func TestSongs(t *testing.T) {
	dropDCapo3 := tuned("drop D")
	dropDCapo3.Capo = 3
	for _, test := range []struct {
		why, chords, figures string
		setting              Setting
		strings, strokes     string
	}{
		{"a song in 6/8", "Am | G | Dm | E", "5 3 2 1 2 3", Setting{Meter: SixEight},
			"5 3 2 1 2 3 | 6 3 2 1 2 3 | 4 3 2 1 2 3 | 6 3 2 1 2 3", strings.Repeat("DDDUUU", 4)},
		{"fewer strings", "G=320003 | D=xx0232", "5 4 3 2 3 4 3 4", Setting{},
			"6 4 3 2 3 4 3 4 | 4 3 2 1 2 3 2 3", ""},
		{"too few strings", "D=xx0232", "6 4 3 2 1 2 3 4", Setting{}, "4 4 3 2 1 2 3 4", ""},
		{"two chords in a bar", "C G/B", "5 3 2 1 5 3 2 1", Setting{}, "5 3 2 1 5 3 2 1", "DDDUDDDU"},
		{"a capo", "A7=x02020", "5 3 2 1", Setting{Instrument: dropDCapo3}, "5 3 2 1", "DDDU"},
		{"a re-entrant tuning", "C | Am | F | G7", "4 3 2 1", Setting{Instrument: tuned("ukulele")},
			"3 3 2 1 | 4 3 2 1 | 2 2 1 1 | 4 3 2 1", ""},
		{"an own stroke", "G", "5 3 2u 1 2 3", Setting{Meter: SixEight}, "6 3 2 1 2 3", "DDUUUU"},
		{"figures named", "Am | Dm@2", "5 3 2 1 2 3; 5 2 3 1 2 3", Setting{Meter: SixEight},
			"5 3 2 1 2 3 | 4 2 3 1 2 3", ""},
		{"figures in turn", "Am | Am | Dm | Am", "5 3 2 1; 5 1 2 3", Setting{InTurn: true},
			"5 3 2 1 | 5 1 2 3 | 4 3 2 1 | 5 1 2 3", ""},
		{"a named figure takes its turn", "Am | Am@1 | Dm", "5 3 2 1; 5 1 2 3", Setting{InTurn: true},
			"5 3 2 1 | 5 3 2 1 | 4 3 2 1", ""},
		{"restart cuts", "Am:3 G:1", "1/8: 5 3 2 1 2 3", Setting{}, "5 3 2 1 2 3 6 3", ""},
		{"carry runs on", "Am:3 G:1", "1/8: 5 3 2 1 2 3 1 2", Setting{Change: Carry}, "5 3 2 1 2 3 1 2", ""},
		{"carry keeps the place", "Am:1 G:1 Am:2", "1/8: 5 3 2 1 2 3", Setting{Change: Carry}, "5 3 2 1 2 3 5 3", ""},
		{"a long figure over bars of one chord", "Am | % | G", "5 3 2 1 | 5 1 2 3", Setting{},
			"5 3 2 1 | 5 1 2 3 | 6 3 2 1", ""},
		{"fill again", "Am", "1/8: 5 3 2", Setting{}, "5 3 2 5 3 2 5 3", ""},
		{"fill ring", "Am", "1/8: 5 3 2", Setting{Fill: Ring}, "5 3 2", ""},
		{"fill ring, again at the bar line", "Am | % | G", "5 3 2 1", Setting{Fill: Ring}, "5 3 2 1 | 5 3 2 1 | 6 3 2 1", ""},
		{"fill ring, a figure of more than a bar", "Am | %", "1/4: 5 3 2 1 2", Setting{Fill: Ring}, "5 3 2 1 | 2", ""},
		{"seven named slots", "Am | G", "1/8: 5 3 2 1 2 3 2", Setting{}, "5 3 2 1 2 3 2 5 | 6 3 2 1 2 3 2 6", ""},
		{"silence", "Am | N.C. | G", "5 3 2 1", Setting{}, "5 3 2 1 |  | 6 3 2 1", ""},
		{"a repeat", "|: Am | G :| C", "5 3 2 1", Setting{},
			"5 3 2 1 | 6 3 2 1 | 5 3 2 1 | 6 3 2 1 | 5 3 2 1", ""},
		{"an inner mute", "G=3x0003", "5 4 3 2", Setting{}, "6 4 3 2", ""},
		{"one string", "A5=0", "1 1 1 1", Setting{Instrument: tuned("A2")}, "1 1 1 1", "DUDU"},
		{"dotted beats of 6/8", "Am:1 G:1", "5 3 2 1 2 3", Setting{Meter: SixEight}, "5 3 2 6 3 2", ""},
		{"units of 6/8", "Am:4 G:2", "5 3 2 1 2 3", Setting{Meter: SixEight}, "5 3 2 1 6 3", ""},
	} {
		p := arrange(t, test.chords, test.figures, test.setting)
		if got := stringsOf(p); got != test.strings {
			t.Errorf("%s: strings %s, want %s", test.why, got, test.strings)
		}
		if got := strokesOf(p); test.strokes != "" && got != test.strokes {
			t.Errorf("%s: strokes %s, want %s", test.why, got, test.strokes)
		}
	}
}

func TestLossesThatSound(t *testing.T) {
	const figure = "6 4 3 2 1 2 3 4"
	for _, test := range []struct {
		why, chords, figure string
		setting             Setting
		want                string // losses of each chord
	}{
		{"round the loop", "D=xx0232", figure, Setting{}, "[{1 2 up same} {8 1 down same}]"},
		{"nothing follows", "D=xx0232", figure, Setting{Once: true}, "[{1 2 up same}]"},
		{"the next chord lies where the step leads", "D=xx0232 | G=320003", figure, Setting{}, "[{1 2 up same}] []"},
		{"the next chord starts on the same string", "D=xx0232 | Dm=xx0231", figure, Setting{},
			"[{1 2 up same} {8 1 down same}] [{1 2 up same} {8 1 down same}]"},
		{"cut before it comes round", "D=xx0232 G=320003", figure, Setting{}, "[{1 2 up same}] []"},
		{"a whole contour", "G=320003 | D=xx0232", "5 4 3 2 3 4 3 4", Setting{}, "[] []"},
	} {
		p := arrange(t, test.chords, test.figure, test.setting)
		var got []string
		for _, bar := range p.Bars {
			for _, held := range bar.Chords {
				got = append(got, fmt.Sprint(held.Fit.Losses))
			}
		}
		if text := strings.Join(got, " "); text != test.want {
			t.Errorf("%s: %s, want %s", test.why, text, test.want)
		}
	}
}

// Worked by hand, in quarter notes: start+written~sounding.
func TestLengths(t *testing.T) {
	for _, test := range []struct {
		why, chords, figure string
		setting             Setting
		want                string
	}{
		{"until plucked again, round the loop", "Am=x02210", "5 3 2 3", Setting{}, "0+1~4 1+1~2 2+1~4 3+1~2"},
		{"played once, the last notes ring a bar longer", "Am=x02210", "5 3 2 3", Setting{Once: true}, "0+1~8 1+1~2 2+1~6 3+1~5"},
		{"until the fret changes", "Am=x02210 | E=022100", "5 - 1 -", Setting{}, "0+2~4 2+2~4 4+2~4 6+2~4"},
		{"the fret stays", "Am=x02210 | A7=x02020", "5 - 4 -", Setting{Once: true}, "0+2~4 2+2~4 4+2~8 6+2~6"},
		{"until a rest", "Am=x02210", "5 3 . 1", Setting{}, "0+1~2 1+1~1 3+1~3"},
		{"silence damps", "Am=x02210 N.C.", "5 3 2 1", Setting{}, "0+1~2 1+1~1"},
		{"a hold writes the note longer", "Am=x02210", "5 - - 1", Setting{}, "0+3~4 3+1~4"},
		{"a hold in front rings on round the turn", "Am=x02210 | %", "- 5", Setting{}, "2+4~4 6+2~4"},
		{"a change cuts the slot", "Am=x02210:1 G=320003:3", "1/2: 5 3", Setting{}, "0+1~1 1+2~3 3+1~1"},
		{"carry lets the slot reach over the change", "Am=x02210:1 G=320003:3", "1/2: 5 3", Setting{Change: Carry}, "0+2~1 2+2~2"},
		{"the last note rings to the change", "Am=x02210 | G=320003", "1/4: 5 3", Setting{Fill: Ring}, "0+1~4 1+3~3 4+1~4 5+3~3"},
	} {
		if got := timesOf(arrange(t, test.chords, test.figure, test.setting)); got != test.want {
			t.Errorf("%s: %s, want %s", test.why, got, test.want)
		}
	}
}

func TestReasonsAndCrossings(t *testing.T) {
	story := func(chords, figure string, s Setting) string {
		var words []string
		for _, pick := range arrange(t, chords, figure, s).Picks() {
			words = append(words, fmt.Sprintf("%d %s %s, %s %d", pick.String, pick.Stroke, pick.Why, pick.Crossing, pick.Travel))
		}
		return strings.Join(words, "; ")
	}
	for _, test := range []struct {
		chords, figure string
		setting        Setting
		want           string
	}{
		{"Am=x02210", "5 3 2 1", Setting{}, "5 down turnaround, outside 4; 3 down toward the next string, sweep 1; " +
			"2 down toward the next string, sweep 0; 1 up loop, outside 1"},
		{"Am=x02210", "5 3 3 1", Setting{Once: true}, "5 down toward the next string,  0; 3 up repeat, outside 2; " +
			"3 down toward the next string, same 0; 1 down last, sweep 1"},
		{"Am=x02210", "5 3u 2 1", Setting{Once: true}, "5 down toward the next string,  0; 3 up own, outside 2; " +
			"2 down toward the next string, inside 1; 1 down last, sweep 0"},
		{"Am=x02210", "5 3", Setting{Strokes: RestStroke}, "5 down tradition, return 3; 3 down tradition, sweep 1"},
	} {
		if got := story(test.chords, test.figure, test.setting); got != test.want {
			t.Errorf("%s with %s:\n%s, want\n%s", test.chords, test.figure, got, test.want)
		}
	}
}

func TestSpellingOfWhatSounds(t *testing.T) {
	for _, test := range []struct {
		chords string
		capo   fretboard.Fret
		sounds string // the chords as they sound
		notes  string // of the first chord
	}{
		{"Am=x02210", 0, "Am", "A2 E3 A3 C4 E4"},
		{"A7=x02020", 3, "C7", "C3 G3 Bb3 E4 G4"},
		{"Eb=x65343", 0, "Eb", "Eb3 G3 Bb3 Eb4 G4"},
		{"G=320003 | C/G=332010", 1, "Ab Db/Ab", "Ab2 C3 Eb3 Ab3 C4 Ab4"},
		{"E=022100 | A=x02220 | B7=x21202", 1, "F Bb C7", "F2 C3 F3 A3 C4 F4"},
		{"E=022100 | A=x02220", 12, "E A", "E3 B3 E4 G#4 B4 E5"},
		{"E=022100 | A=x02220 | B7=x21202", 4, "Ab Db Eb7", "Ab2 Eb3 Ab3 C4 Eb4 Ab4"},
		{"Em=022000", 2, "F#m", "F#2 C#3 F#3 A3 C#4 F#4"}, // the minor third decides: not Gbm with Bbb
		{"Am=x02210 | Dm=xx0231 | E=022100", 4, "C#m F#m G#", "C#3 G#3 C#4 E4 G#4"},
		{"F#m7b5=2x221x", 0, "F#m7b5", "F#2 E3 A3 C4"}, // nor respelled where flats are as few
		{"C=x35553", 0, "C", "C3 G3 C4 E4 G4"},
		{"C=x32013", 0, "C", "C3 E3 G3 C4 G4"},
		{"F=133212", 0, "F", "F2 C3 F3 A3 C4 Gb4"}, // string 1 is foreign to the chord
	} {
		p := arrange(t, test.chords, "1/4: 6 5 4 3 2 1", Setting{Instrument: fretboard.Instrument{Capo: test.capo}, Fit: Bass})
		var sounds []string
		for _, bar := range p.Bars {
			sounds = append(sounds, bar.Chords[0].Sounds.String())
		}
		if got := strings.Join(sounds, " "); got != test.sounds {
			t.Errorf("%s, capo %d: sounds %s, want %s", test.chords, test.capo, got, test.sounds)
		}
		held := p.Bars[0].Chords[0].Voicing
		var notes []string
		for s := held.Shape().Strings(); s >= 1; s-- {
			if held.Sounding().Has(s) {
				notes = append(notes, spell(held.Chord(), capoInterval(test.capo, chordsOf(p)), held.Pitch(s)).String())
			}
		}
		if got := strings.Join(notes, " "); got != test.notes {
			t.Errorf("%s, capo %d: notes %s, want %s", test.chords, test.capo, got, test.notes)
		}
	}
}

func chordsOf(p Passage) (chords []voicing.Chord) {
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			chords = append(chords, held.Chord)
		}
	}
	return chords
}

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
			text := withBeats(chords, m)
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

// randomSong returns a song of random shapes with a random setting.
func randomSong(r *rand.Rand) (Progression, Figures, Setting) {
	names := fretboard.TuningNames()
	g := tuned(names[r.IntN(len(names))])
	g.Hand, g.Capo = fretboard.Hand(r.IntN(3)), fretboard.Fret(r.IntN(5))
	s := Setting{Instrument: g, Meter: []Meter{FourFour, SixEight, ThreeFour, {7, 8}}[r.IntN(4)],
		Strokes: Tradition(r.IntN(5)), Fit: Moulding(r.IntN(3)), Change: Change(r.IntN(2)), Fill: Fill(r.IntN(2)),
		InTurn: r.IntN(2) == 0, Once: r.IntN(2) == 0}
	strings := int(g.Tuning.Strings())
	var figures Figures
	for range 1 + r.IntN(2) {
		f := randomFigure(r, 1+r.IntN(9), strings)
		f.value = []NoteValue{240, 480, 160, 120}[r.IntN(4)]
		figures = append(figures, f)
	}
	var bars []ChartBar
	for range 1 + r.IntN(6) {
		var bar ChartBar
		for range 1 + r.IntN(2) {
			bar.Chords = append(bar.Chords, randomHeld(r, strings))
		}
		bars = append(bars, bar)
	}
	song, err := NewProgression(bars...)
	if err != nil {
		panic(err)
	}
	return song, figures, s
}

func randomHeld(r *rand.Rand, strings int) ChartChord {
	if r.IntN(8) == 0 {
		return ChartChord{}
	}
	symbols := []string{"Am", "G", "D7", "Fmaj7/C"}
	shape := voicing.NewShape(fretboard.StringNumber(strings)).With(1, fretboard.Fret(r.IntN(4)))
	for s := fretboard.StringNumber(2); s <= shape.Strings(); s++ {
		if r.IntN(5) > 0 {
			shape = shape.With(s, fretboard.Fret(r.IntN(4)))
		}
	}
	return ChartChord{Chord: mustChord(symbols[r.IntN(len(symbols))]), Shape: shape}
}

// ringOf is the sounding length by its definition, going forward pick by pick.
func ringOf(p Passage, damps []Ticks, at int) Ticks {
	var picks []Pick
	for _, pick := range p.Picks() {
		picks = append(picks, pick)
	}
	pick, length := picks[at], p.Length()
	for t := pick.At + 1; ; t++ {
		now := t
		if p.Loop {
			now %= length
		} else if t == length+p.Meter.Bar() {
			return t - pick.At
		} else if t >= length {
			continue
		}
		for _, other := range picks {
			if other.At == now && other.String == pick.String {
				return t - pick.At
			}
		}
		for _, damp := range damps {
			if damp == now {
				return t - pick.At
			}
		}
		before, is := heldAt(p, (now-1+length)%length), heldAt(p, now)
		wasFret, was := before.Voicing.Shape().Fret(pick.String)
		fret, sounds := is.Voicing.Shape().Fret(pick.String)
		if (now > 0 || p.Loop) && (was != sounds || wasFret != fret) {
			return t - pick.At
		}
	}
}

func heldAt(p Passage, at Ticks) HeldChord {
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			if held.At <= at && at < held.At+held.Length {
				return held
			}
		}
	}
	panic("no chord")
}

func TestArrangeProperties(t *testing.T) {
	parameters := gopter.DefaultTestParameters()
	properties := gopter.NewProperties(parameters)
	songs := func(check func(song Progression, figures Figures, s Setting, r *rand.Rand) bool) gopter.Prop {
		return prop.ForAll(func(seed int64) bool {
			r := random(seed)
			song, figures, s := randomSong(r)
			return check(song, figures, s, r)
		}, gen.Int64())
	}
	properties.Property("bars tile the time, chords their bar, and picks begin inside", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			p, err := Arrange(song, figures, s)
			at := Ticks(0)
			for _, bar := range p.Bars {
				if bar.At != at || bar.Length != s.Meter.Bar() {
					return false
				}
				for _, held := range bar.Chords {
					if held.At != at || held.Length <= 0 {
						return false
					}
					at += held.Length
				}
				for i, pick := range bar.Picks {
					if pick.At < bar.At || pick.At >= at || pick.Length <= 0 || pick.Rings <= 0 || i > 0 && pick.At <= bar.Picks[i-1].At {
						return false
					}
				}
				if at != bar.At+bar.Length {
					return false
				}
			}
			return err == nil && at == p.Length()
		}))
	properties.Property("every pick sounds its string of the chord held", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			p, _ := Arrange(song, figures, s)
			for _, pick := range p.Picks() {
				held := heldAt(p, pick.At)
				fret, sounds := held.Voicing.Shape().Fret(pick.String)
				if !sounds || fret != pick.Fret || held.Voicing.Pitch(pick.String) != pick.Pitch ||
					pick.Note.Pitch() != pick.Pitch || held.Fit.Strings[pick.Event-1] != pick.String {
					return false
				}
			}
			return true
		}))
	properties.Property("a string rings until it is plucked, damped or held otherwise", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			for i, f := range figures { // rests are damps: without them the definition is short
				slots := append([]Slot(nil), f.slots...)
				for k := range slots {
					if slots[k].Kind == Rest {
						slots[k].Kind = Hold
					}
				}
				figures[i], _ = NewFigure(f.value, 0, slots)
			}
			p, _ := Arrange(song, figures, s)
			for i, pick := range p.Picks() {
				if want := ringOf(p, nil, i); pick.Rings != want {
					return false
				}
			}
			return true
		}))
	properties.Property("raising the capo shifts pitches and nothing else", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			low, _ := Arrange(song, figures, s)
			by := fretboard.Fret(1 + r.IntN(5))
			s.Instrument.Capo += by
			high, err := Arrange(song, figures, s)
			for b := range low.Bars {
				for i, pick := range low.Bars[b].Picks {
					raised := high.Bars[b].Picks[i]
					if raised.Pitch != pick.Pitch.Up(by) || raised.Note.Pitch() != raised.Pitch {
						return false
					}
					raised.Pitch, raised.Note = pick.Pitch, pick.Note
					if raised != pick {
						return false
					}
				}
			}
			return err == nil && low.Travel == high.Travel
		}))
	properties.Property("a longer progression does not change earlier bars except at the join", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			more, _, _ := randomSong(r)
			short, _ := Arrange(song, figures, s)
			bars := append(append([]ChartBar(nil), song.Bars()...), ChartBar{Chords: []ChartChord{randomHeld(r, int(s.Instrument.Tuning.Strings()))}})
			_ = more
			longer, _ := NewProgression(bars...)
			long, err := Arrange(longer, figures, s)
			return err == nil && sameButAtTheJoin(short, long)
		}))
	properties.Property("turning the strings over swaps the strokes that the strings decide", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			s.Strokes, s.Instrument.Hand = TowardNext, fretboard.RightHanded
			right, _ := Arrange(song, withoutOwn(figures), s)
			s.Instrument.Hand = fretboard.LeftTurned
			turned, _ := Arrange(song, withoutOwn(figures), s)
			for b := range right.Bars {
				for i, pick := range right.Bars[b].Picks {
					decided := pick.Why == TowardNextString || pick.Why == Turnaround || pick.Why == RoundLoop
					if decided && turned.Bars[b].Picks[i].Stroke != pick.Stroke.other() {
						return false
					}
				}
			}
			return true
		}))
	properties.Property("rotating a loop of bars rotates its strings", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			s.Change, s.Once, s.InTurn = Restart, false, false
			bars := song.Bars()
			if first, last := bars[0].Chords[0], bars[len(bars)-1]; last.Chords[len(last.Chords)-1].String() == first.String() {
				return true // the loop's join is not a change of chord
			}
			by := r.IntN(len(bars))
			for i := range bars { // nor may the new join be one
				before := bars[(i+len(bars)-1)%len(bars)].Chords
				if before[len(before)-1].String() == bars[i].Chords[0].String() {
					return true
				}
			}
			rotated, _ := NewProgression(append(append([]ChartBar(nil), bars[by:]...), bars[:by]...)...)
			a, _ := Arrange(song, figures, s)
			b, err := Arrange(rotated, figures, s)
			for i := range a.Bars {
				if !cmp.Equal(eventsOf(a.Bars[(i+by)%len(bars)]), eventsOf(b.Bars[i])) {
					return false
				}
			}
			return err == nil && (s.Strokes != TowardNext || a.Travel == b.Travel)
		}))
	properties.Property("the same input gives the same passage", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			a, _ := Arrange(song, figures, s)
			b, _ := Arrange(song, figures, s)
			return fmt.Sprintf("%+v", a) == fmt.Sprintf("%+v", b)
		}))
	properties.TestingRun(t)
}

func withoutOwn(figures Figures) Figures {
	var free Figures
	for _, f := range figures {
		slots := append([]Slot(nil), f.slots...)
		for i := range slots {
			slots[i].Own = Free
		}
		g, _ := NewFigure(f.value, 0, slots)
		free = append(free, g)
	}
	return free
}

// eventsOf is what a bar plays, without what the join may change.
func eventsOf(bar Bar) (events []Pick) {
	for _, p := range bar.Picks {
		events = append(events, Pick{At: p.At - bar.At, Length: p.Length, Event: p.Event, String: p.String, Fret: p.Fret, Pitch: p.Pitch})
	}
	return events
}

// sameButAtTheJoin compares strings, frets and times of the shorter passage's
// picks; the last may be written longer where a hold begins the new bar.
func sameButAtTheJoin(short, long Passage) bool {
	for b, bar := range short.Bars {
		other := long.Bars[b]
		if len(other.Picks) != len(bar.Picks) {
			return false
		}
		for i, pick := range bar.Picks {
			if q := other.Picks[i]; q.At != pick.At || q.String != pick.String || q.Fret != pick.Fret || q.Event != pick.Event {
				return false
			}
		}
	}
	return true
}

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
