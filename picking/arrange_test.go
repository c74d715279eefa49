package picking

import (
	"fmt"
	"strings"
	"testing"

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
