package pickingtest

import (
	"fmt"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

const (
	usual        = "Am=x02210 | G=320003 | Dm=xx0231 | E=022100"
	usualFigure  = "5 3 2 1 2 3"
	eights       = "5 3 2 1 2 3 2 3"
	doubleCourse = "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4" // counted string by string

	// SixtyTitle has sixty characters, some of which markup gives a meaning.
	SixtyTitle = `Rock & Roll <live> "at five to nine" & 'once more', said he.`
	// MarksTitle has emoji joined to one sign, combining marks that stand for a
	// character of their own and that do not, and letters read from the right.
	MarksTitle = "Cafe\u0301 🎸👩🏽\u200d🎤 Zalgo\u0335\u0321\u0307 שיר 歌 ﬁn"
	// ControlTitle has characters that move the cursor, turn the direction of
	// reading or that no XML may hold. A setting allows them all.
	ControlTitle = "Tab\there,\r\nline\x00 \x1b[31mred\x07 \u202eback\u2028 \ufffe]]>-->\u0085 \\"
)

func tuned(tuning string) fretboard.Instrument {
	return fretboard.Instrument{Tuning: fretboard.MustParseTuning(tuning)}
}

// songs are the cases of [List], the smallest first.
var songs = []song{
	{"smallest", "one string, one fret, a bar of one short note", "A=0", "1",
		picking.Setting{Meter: picking.Meter{Count: 1, Unit: 32}, Once: true,
			Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("A2"), Frets: 1}}},
	{"silence", "nothing is plucked at all", "N.C. | N.C.", usualFigure, picking.Setting{}},
	{"one-pick", "one pick in the whole passage", "Am=x02210", "5", picking.Setting{Once: true}},
	{"one-pick-loop", "the one pick leads to itself", "Am=x02210", "5", picking.Setting{}},
	{"one-slot", "one slot, over and over", usual, "1/8: 5", picking.Setting{}},
	{"usual", "four chords in 6/8", usual, usualFigure, picking.Setting{Title: "Evening Water", Meter: picking.SixEight, Tempo: 66}},
	{"found", "no shape is named", "Am | G | Dm | E7", eights, picking.Setting{}},
	{"sixteen-bars", "as long as songs are", sixteenBars, eights, picking.Setting{Title: "Sixteen Bars", Tempo: 92}},

	{"triplets", "three notes a beat", usual, "1/12: 5 3 2 1 2 3", picking.Setting{}},
	{"triplets-held", "triplets begun and not filled, beside eighths", "Am=x02210@1 | C=x32010@2", "1/12: 5 - 3 - - 2; 1/8: 5 3 2 1", picking.Setting{}},
	{"broken-triplets", "chords change within a group of triplets", "Am=x02210:1.5 C=x32010:2.5", "1/12: 5 3 2 1", picking.Setting{}},
	{"halves-in-three", "triplet halves and wholes", usual, "1/3: 5 3 2", picking.Setting{}},
	{"dotted", "dotted slots that cross beats and bar lines", usual, "3/16: 5 3 2 1 2", picking.Setting{}},
	{"finest", "the shortest slots there are, and four chords a bar", "Am=x02210 G=320003 Dm=xx0231 E=022100",
		"1/96: 5 3 2 1 2 3", picking.Setting{Tempo: 10}},
	{"longest-slots", "slots longer than a bar", usual, "3/2: 5 3", picking.Setting{Meter: picking.TwoFour}},
	{"six-eight", "a compound meter, sixteenths", usual, "1/16: 5 3 2 1 2 3", picking.Setting{Meter: picking.SixEight}},
	{"twelve-eight", "four dotted beats", usual, "6 3 2 1 2 3 5 3 2 1 2 3", picking.Setting{Meter: picking.TwelveEight, Tempo: 54}},
	{"two-against-three", "a dotted beat in two", usual, "3/16: 5 3 2 1", picking.Setting{Meter: picking.SixEight}},
	{"seven-eight", "a bar of no even beats", usual, "1/8: 5 3 2 1 3 2 1", picking.Setting{Meter: picking.Meter{Count: 7, Unit: 8}, Tempo: 160}},
	{"five-four", "five beats", usual, "1/4: 5 3 2 1 2", picking.Setting{Meter: picking.Meter{Count: 5, Unit: 4}}},
	{"cut-time", "the half note is the beat", usual, eights, picking.Setting{Meter: picking.Meter{Count: 2, Unit: 2}}},
	{"longest-bar", "a bar of 32 whole notes", "Am=x02210 | N.C. | G=320003", "1/4: 5 3 2 1", picking.Setting{Meter: picking.Meter{Count: 32, Unit: 1}}},
	{"slowest", "the slowest quarter note: 48 seconds", usual, "1/32: 5 3", picking.Setting{Meter: picking.Meter{Count: 5, Unit: 32}, Tempo: picking.MinTempo}},
	{"fastest", "the fastest quarter note: 37.5 milliseconds", usual, eights, picking.Setting{Meter: picking.Meter{Count: 2, Unit: 1}, Tempo: picking.MaxTempo}},

	{"twelve-strings", "the most strings", "D=x-x-x-x-0-0-2-2-3-3-10-10 | Em=022220000000", "12 10 8 6 4 2 1 3 5 7",
		picking.Setting{Title: "Twelve Strings", Instrument: tuned(doubleCourse), Meter: picking.Meter{Count: 5, Unit: 4}}},
	{"ukulele", "a re-entrant tuning, carried on", "C=0003 | Am=2000 | F=2010 | G7=0212", "4 3 2 1 - 2",
		picking.Setting{Instrument: tuned("ukulele"), Meter: picking.ThreeFour, Change: picking.Carry}},
	{"capo", "flats above the capo, sharps below", "A7=x02020 | D=xx0232 | E=022100", eights,
		picking.Setting{Instrument: fretboard.Instrument{Capo: 3}}},
	{"turned", "turned over for the left hand", usual, usualFigure, picking.Setting{Instrument: fretboard.Instrument{Hand: fretboard.LeftTurned}}},
	{"restrung", "strung for the left hand", usual, usualFigure, picking.Setting{Instrument: fretboard.Instrument{Hand: fretboard.LeftRestrung}}},
	{"bass", "four low strings", "E=0221 | A=x022 | B7=x212", "4 3 2 1", picking.Setting{Instrument: tuned("bass")}},
	{"one-string", "one string, two figures of frets", "A=0- | D=5- | A=12-", "1 1 1 1", picking.Setting{Instrument: tuned("A2")}},
	{"high-frets", "36 frets, from a capo on the eleventh", "E=0-2-2-1-0-0 | E=x-x-x-25-24-24 | A=x-24-25-25-x-25", eights,
		picking.Setting{Instrument: fretboard.Instrument{Frets: 36, Capo: 11}}},
	{"widest", "from D0 to the highest MIDI key", "D=012", "3 2 1 2",
		picking.Setting{Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("D0 C4 F9"), Frets: 2}}},
	{"unisons", "two strings sound one pitch at once", "Em=055453 | A=x07655", "1/16: 5 4 3 2 1 2 3 4", picking.Setting{}},
	{"spelled-far", "double accidentals and long names", "Fbmaj13#11=x02210 Cbm7b5/Gbb=320003 | E#7#9/B#=x32010 F#m7b5=2x2210 | Bbmaj9#11/D=x10331",
		eights, picking.Setting{}},

	{"two-chords", "two chords a bar", "Am=x02210 G=320003 | F=133211 E=022100", eights, picking.Setting{}},
	{"beats", "chords with beats of their own", "Am=x02210:3 G=320003:1 | F=133211:1.5 C=x32010:2 E=022100:0.5", eights, picking.Setting{}},
	{"dotted-beats", "dotted beats, and a change within one", "Am=x02210:1 G=320003:1 | F=133211:4 E=022100:2", usualFigure, picking.Setting{Meter: picking.SixEight}},
	{"crowded", "as many chords in a bar as have room for a name", "Am=x02210 G=320003 F=133211 E=022100 Am=x02210 C=x32010 Dm=xx0231 E=022100",
		"1/8: 5 3 2 1", picking.Setting{}},
	{"silence-within", "N.C. in the middle and at the end of a bar", "Am=x02210 | N.C. | G=320003 N.C. | E=022100", usualFigure, picking.Setting{}},
	{"silence-first", "N.C. before anything sounds, for bars", "N.C. | % | N.C. Am=x02210", usualFigure, picking.Setting{Once: true}},
	{"repeats", "repeats and bars played again", "|: Am=x02210 | % :| C=x32010 | |: F=133211 | E=022100 :|", eights, picking.Setting{}},
	{"repeat-differs", "the second playing has other strokes", "C=x32010 | |: G/B=x20003 | Am=x02210 | C/G=332010 :| F=133211",
		"5 3 2 1 2 3 2 5", picking.Setting{}},
	{"repeat-one-bar", "repeats of one bar", "|: Am=x02210 :| |: E=022100 :|", "6 3 2 1", picking.Setting{Once: true}},
	{"once", "played once: the last notes ring on", usual, usualFigure, picking.Setting{Once: true}},

	{"ring", "the last note of a figure rings", usual, "1/8: 5 3 2", picking.Setting{Fill: picking.Ring}},
	{"carry", "the figure runs on over changes", usual, "1/8: 5 3 2 1 2", picking.Setting{Change: picking.Carry}},
	{"figures-in-turn", "three figures, one a chord", usual, "1/8: 5 3 2 1; 1/12: 5 3 2u; 1/16: 5d 3 2 1 2 3 2u 1", picking.Setting{InTurn: true}},
	{"figure-unplayed", "a figure that no chord plays", "Am=x02210@2 | G=320003@2", usualFigure + "; " + eights, picking.Setting{}},
	{"figure-of-bars", "a figure of three bars over four", usual, "1/8 root 5: 5 3 2 1 2 3 2 3 | 5 - 3 - 2 - 1 - | 5 . . . 1 2 3 4", picking.Setting{}},
	{"own-strokes", "the teacher's own strokes, against the pick's way", usual, "5u 3u 2 1d 2d 3u 2 3", picking.Setting{}},
	{"alternate", "alternate strokes, every crossing", usual, eights, picking.Setting{Strokes: picking.Alternate}},
	{"rest-strokes", "rest strokes: the pick comes back over strings", usual, eights, picking.Setting{Strokes: picking.RestStroke}},
	{"jig", "down, up, down in threes", usual, "5 3 2 1 2 3", picking.Setting{Strokes: picking.Jig, Meter: picking.SixEight}},
	{"economy", "economy strokes, the bass fit", usual, eights, picking.Setting{Strokes: picking.Economy, Fit: picking.Bass}},
	{"rests-and-holds", "rests, holds, and both at the front", usual, ". - 5 - 3 . . 2 - - 1 . 2 - 3 .", picking.Setting{}},
	{"hold-over", "a held note over the bar line and the loop", "Am=x02210 | % | G=320003", "1/4: - 5 3 - -", picking.Setting{}},
	{"losses", "fewer strings than the figure wants", "D=xx0232 | D=xxx232 | D=xxxx3x", "6 4 3 2 1 2 3 4", picking.Setting{}},
	{"unholdable", "six frets, one a string: no fingering", "C=1-3-5-7-9-11 | Am=x02210", eights, picking.Setting{}},
	{"shift", "the shift fit, on few strings", "D=xx0232 | Am=x02210", usualFigure, picking.Setting{Fit: picking.Shift}},

	{"sixty-title", "sixty characters with markup's own in them", usual, usualFigure, picking.Setting{Title: SixtyTitle, Meter: picking.SixEight}},
	{"marks-title", "emoji, combining marks, right to left", usual, usualFigure, picking.Setting{Title: MarksTitle, Meter: picking.SixEight}},
	{"control-title", "characters that do not print", usual, usualFigure, picking.Setting{Title: ControlTitle, Meter: picking.SixEight}},
	{"long-title", "the longest title, without a space", usual, usualFigure, picking.Setting{Title: strings.Repeat("W", fretboard.MaxText), Meter: picking.SixEight}},

	{"most-bars", "the most bars, half of them a repeat", "|: " + strings.Repeat(usual+" | ", 63) + usual + " :|", eights, picking.Setting{}},
	{"many-chords", "300 bars of many chords", manyChords(300), eights, picking.Setting{Title: "Many Chords"}},
}

const sixteenBars = `Am=x02210 | G=320003 | F=133211 | E7=020100
	Am=x02210 | C=x32010 | Dm=xx0231 | E7=020100
	F=133211 | C=x32010 | G=320003 | Am=x02210
	Dm=xx0231 | Am=x02210 | E7=020100 | Am=x02210 E7=020100`

// manyChords returns a chart in which barre chords climb the neck, one or two
// a bar, so that hardly a neighbour is like another.
func manyChords(bars int) string {
	roots := []string{"E", "F", "F#", "G", "Ab", "A", "Bb", "B", "C", "C#", "D", "Eb"}
	kinds := []struct {
		suffix string
		root   int // of the open shape, from E
		frets  []int
	}{{"", 0, []int{0, 2, 2, 1, 0, 0}}, {"m7", 5, []int{-1, 0, 2, 0, 1, 0}}, {"7", 0, []int{0, 2, 0, 1, 0, 0}},
		{"m", 5, []int{-1, 0, 2, 2, 1, 0}}, {"maj7", 5, []int{-1, 0, 2, 1, 2, 0}}, {"m7b5", 0, []int{0, -1, 0, 0, -1, -1}}, {"6", 10, []int{-1, -1, 0, 2, 0, 2}}}
	chord := func(i int) string {
		kind, at := kinds[i%len(kinds)], i*5%11+1
		frets := make([]string, len(kind.frets))
		for s, fret := range kind.frets {
			if frets[s] = "x"; fret >= 0 {
				frets[s] = fmt.Sprint(fret + at)
			}
		}
		return roots[(kind.root+at)%12] + kind.suffix + "=" + strings.Join(frets, "-")
	}
	chart := make([]string, bars)
	for i := range chart {
		chart[i] = chord(2 * i)
		if i%3 == 0 {
			chart[i] += " " + chord(2*i+1)
		}
	}
	return strings.Join(chart, " | ")
}
