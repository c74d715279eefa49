package midi_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/midi/smftest"
	"weft.example/picking/pickingtest"
)

// manners are options to try on every passage.
var manners = []midi.Options{{}, {OneTrack: true}, {CountIn: 2}, {OneTrack: true, CountIn: 1, Click: true}, {Click: true}}

func arranged(t testing.TB, chords, figures string, s picking.Setting) picking.Passage {
	t.Helper()
	parsed, err := picking.ParseFigures(figures)
	if err != nil {
		t.Fatal(err)
	}
	p, err := picking.Arrange(picking.MustParseProgression(chords), parsed, s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func encoded(t testing.TB, p picking.Passage, o midi.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := midi.Encode(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestEncodeSurvives(t *testing.T) {
	for _, o := range []midi.Options{{}, {OneTrack: true, CountIn: 1, Click: true}} {
		pickingtest.Check(t, func(w io.Writer, p picking.Passage) error { return midi.Encode(w, p, o) })
	}
}

// fault says how a file differs from its passage.
func fault(t testing.TB, p picking.Passage, o midi.Options) string {
	t.Helper()
	got, err := smftest.Read(encoded(t, p, o))
	if err != nil {
		return err.Error()
	}
	return cmp.Diff(smftest.Want(p, o), got)
}

func TestTheListReadsBack(t *testing.T) {
	for _, c := range pickingtest.List() {
		for _, o := range manners {
			if fault := fault(t, c.Passage, o); fault != "" {
				t.Errorf("%s, %+v: %s", c.Name, o, fault)
			}
		}
	}
}

func TestPassagesByChanceReadBack(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 2))
		p, o := pickingtest.Random(r), options(r)
		if fault := fault(t, p, o); fault != "" {
			t.Errorf("seed %d, %+v: %s", seed, o, fault)
		}
	}
}

func options(r *rand.Rand) midi.Options {
	return midi.Options{OneTrack: r.IntN(2) == 0, CountIn: max(0, r.IntN(13)-4), Click: r.IntN(2) == 0}
}

// TestASmallFileByteByByte is worked by hand from the standard. A bar of 1/32
// lasts 60 ticks; played once, its note rings a bar longer, to 120.
func TestASmallFileByteByByte(t *testing.T) {
	p := arranged(t, "A=0", "1", picking.Setting{Title: "é", Meter: picking.Meter{Count: 1, Unit: 32}, Once: true, Tempo: 120,
		Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("A2")}})
	want := "MThd\x00\x00\x00\x06\x00\x01\x00\x02\x01\xe0" +
		"MTrk\x00\x00\x00\x1e" +
		"\x00\xff\x03\x02\xc3\xa9" +
		"\x00\xff\x51\x03\x3d\x09\x00" + // 8 beats of half a second are 4000000 microseconds
		"\x00\xff\x58\x04\x01\x05\x03\x08" + // 1/32, 3 clocks of 20 ticks to the click
		"\x00\xff\x06\x01A" +
		"\x78\xff\x2f\x00" +
		"MTrk\x00\x00\x00\x1e" +
		"\x00\xff\x03\x0bstring 1 A2" +
		"\x00\xc0\x19" +
		"\x00\x90\x2d\x68" +
		"\x78\x80\x2d\x40" +
		"\x00\xff\x2f\x00"
	if diff := cmp.Diff(want, string(encoded(t, p, midi.Options{}))); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestWhatTheTempoAndTheMeterBecome(t *testing.T) {
	for _, c := range []struct {
		meter       picking.Meter
		tempo       int
		want, which string
	}{
		// The Standard MIDI File 1.0 gives both of these as examples.
		{picking.FourFour, 120, "\xff\x51\x03\x07\xa1\x20\x00\xff\x58\x04\x04\x02\x18\x08", "\x01\xe0"},
		{picking.SixEight, 80, "\xff\x51\x03\x07\xa1\x20\x00\xff\x58\x04\x06\x03\x24\x08", "\x01\xe0"},
		// Derived: 60 s / (10 * 8 beats to the quarter) is 48 s; a sixteenth of 12 s is 0xb71b00.
		{picking.Meter{Count: 5, Unit: 32}, 10, "\xff\x51\x03\xb7\x1b\x00\x00\xff\x58\x04\x05\x05\x0c\x02", "\x00\x78"},
		// 24 s; an eighth of 12 s.
		{picking.Meter{Count: 5, Unit: 16}, 10, "\xff\x51\x03\xb7\x1b\x00\x00\xff\x58\x04\x05\x04\x0c\x04", "\x00\xf0"},
		// 60 s / 133 / (3/2) is 300751.88 microseconds.
		{picking.TwelveEight, 133, "\xff\x51\x03\x04\x96\xd0\x00\xff\x58\x04\x0c\x03\x24\x08", "\x01\xe0"},
	} {
		file := string(encoded(t, arranged(t, "A=x02220", "1/8: 5", picking.Setting{Meter: c.meter, Tempo: c.tempo}), midi.Options{}))
		if !strings.Contains(file, c.want) || file[12:14] != c.which {
			t.Errorf("%s at %d: want % x with division % x in\n% x", c.meter, c.tempo, c.want, c.which, file[:80])
		}
	}
}

// notesOf lists the notes of a file as its lines have them.
func notesOf(t *testing.T, p picking.Passage, o midi.Options) string {
	t.Helper()
	lines, err := smftest.Read(encoded(t, p, o))
	if err != nil {
		t.Fatal(err)
	}
	var notes []string
	for _, line := range lines {
		if strings.Contains(line, " note ") {
			notes = append(notes, line)
		}
	}
	return strings.Join(notes, "\n")
}

// TestWorkedNotes is worked by hand from the words of the package comment.
func TestWorkedNotes(t *testing.T) {
	half := picking.Meter{Count: 2, Unit: 4}
	for _, c := range []struct {
		why, chords, figures string
		setting              picking.Setting
		options              midi.Options
		want                 []string
	}{
		{"a string plucked again stops just then, and a loop is cut at its end", "B=xxxx00", "1/8: 1d 1u 2d 1u", picking.Setting{Meter: half}, midi.Options{}, []string{
			"track 1 channel 0 at 0 note 64 for 240 velocity 104",
			"track 1 channel 0 at 240 note 64 for 480 velocity 72",
			"track 1 channel 0 at 720 note 64 for 240 velocity 72",
			"track 2 channel 1 at 480 note 59 for 480 velocity 92"}},
		{"played once, it rings a bar longer", "B=xxxx00", "1/4: 1d 2d", picking.Setting{Meter: half, Once: true}, midi.Options{}, []string{
			"track 1 channel 0 at 0 note 64 for 1920 velocity 104",
			"track 2 channel 1 at 480 note 59 for 1440 velocity 92"}},
		{"a rest damps", "B=xxxx00", "1/8: 1d . 2u .", picking.Setting{Meter: half}, midi.Options{}, []string{
			"track 1 channel 0 at 0 note 64 for 240 velocity 104",
			"track 2 channel 1 at 480 note 59 for 240 velocity 84"}},
		{"two strings at one pitch on one track", "Em=x-x-x-x-5-0", "1/8: 1d 2d 1d 2d", picking.Setting{Meter: half}, midi.Options{OneTrack: true}, []string{
			"track 1 channel 0 at 0 note 64 for 240 velocity 104",
			"track 1 channel 0 at 240 note 64 for 240 velocity 80",
			"track 1 channel 0 at 480 note 64 for 240 velocity 92",
			"track 1 channel 0 at 720 note 64 for 240 velocity 80"}},
		{"a key rings for as long as either string", "Em=x-x-x-x-5-0 A=x-x-x-x-2-0", "1/8: 1d 2d - -", picking.Setting{Meter: half, Once: true}, midi.Options{OneTrack: true}, []string{
			"track 1 channel 0 at 0 note 64 for 240 velocity 104",
			"track 1 channel 0 at 240 note 64 for 240 velocity 80",
			"track 1 channel 0 at 480 note 64 for 1440 velocity 92",
			"track 1 channel 0 at 720 note 61 for 1200 velocity 80"}},
		{"string 10 stands past percussion", "A=0-x-0-x-x-x-x-x-x-x", "1/4: 10d 8d", picking.Setting{Meter: half,
			Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("A2 B2 C3 D3 E3 F3 G3 A3 B3 C4")}}, midi.Options{}, []string{
			"track 10 channel 10 at 0 note 45 for 960 velocity 104",
			"track 8 channel 7 at 480 note 48 for 480 velocity 92"}},
		{"a bar is counted in and clicked through", "E=xxxxx0", "1/1: 1d", picking.Setting{Meter: picking.SixEight}, midi.Options{OneTrack: true, CountIn: 1, Click: true}, []string{
			"track 1 channel 0 at 1440 note 64 for 1440 velocity 104",
			"track 2 channel 9 at 0 note 76 for 360 velocity 112",
			"track 2 channel 9 at 1440 note 76 for 360 velocity 112",
			"track 2 channel 9 at 2160 note 77 for 360 velocity 88",
			"track 2 channel 9 at 720 note 77 for 360 velocity 88"}},
	} {
		got := notesOf(t, arranged(t, c.chords, c.figures, c.setting), c.options)
		if diff := cmp.Diff(strings.Join(c.want, "\n"), got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", c.why, diff)
		}
	}
}

func TestMarkersNameChordsAsTheySound(t *testing.T) {
	p := arranged(t, "A7=x02020 N.C. | A7=x02020", "5 3 2 1", picking.Setting{Instrument: fretboard.Instrument{Capo: 1}})
	lines, err := smftest.Read(encoded(t, p, midi.Options{CountIn: 1}))
	if err != nil {
		t.Fatal(err)
	}
	file := strings.Join(lines, "\n")
	for at, name := range map[int]string{1920: "Bb7", 2880: "N.C.", 3840: "Bb7"} {
		if !strings.Contains(file, smftest.Marker([]byte(name), at)) {
			t.Errorf("no marker %s at %d in\n%s", name, at, file)
		}
	}
}

func TestShortWritesComeBack(t *testing.T) {
	err := midi.Encode(short{}, arranged(t, "Am=x02210", "5", picking.Setting{}), midi.Options{})
	if !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("got %v", err)
	}
}

// A short writer takes one byte of each piece and does not say why.
type short struct{}

func (short) Write([]byte) (int, error) { return 1, nil }

func TestWhatCannotBeAFile(t *testing.T) {
	pick := func(change func(q *picking.Pick)) func(p *picking.Passage) {
		return func(p *picking.Passage) { change(&p.Bars[0].Picks[1]) }
	}
	for _, c := range []struct {
		why, reason string
		options     midi.Options
		bend        func(p *picking.Passage)
	}{
		{"a negative count-in", "not a number of bars", midi.Options{CountIn: -1}, func(*picking.Passage) {}},
		{"a count-in without end", "not a number of bars", midi.Options{CountIn: 9}, func(*picking.Passage) {}},
		{"no meter", "not a time signature", midi.Options{}, func(p *picking.Passage) { p.Meter.Unit = 3 }},
		{"no tempo", "not a tempo", midi.Options{}, func(p *picking.Passage) { p.Tempo = 0 }},
		{"too fast", "not a tempo", midi.Options{}, func(p *picking.Passage) { p.Tempo = 401 }},
		{"too many bars", "513 bars; the limit is 512", midi.Options{}, func(p *picking.Passage) { p.Bars = make([]picking.Bar, 513) }},
		{"a gap between bars", "bar 2 does not begin", midi.Options{}, func(p *picking.Passage) { p.Bars[0].Length-- }},
		{"a bar of no length", "bar 2 has no length", midi.Options{}, func(p *picking.Passage) { p.Bars[1].Length = 0 }},
		{"a bar too long", "bar 2 has no length, or more", midi.Options{}, func(p *picking.Passage) { p.Bars[1].Length++ }},
		{"a chord of another bar", "a chord that begins outside it", midi.Options{}, func(p *picking.Passage) { p.Bars[0].Chords[0].At = 1920 }},
		{"a pick of another bar", "begins outside it", midi.Options{}, pick(func(q *picking.Pick) { q.At = 1920 })},
		{"two picks at once", "not after the one before", midi.Options{}, pick(func(q *picking.Pick) { q.At = 0 })},
		{"no sound", "does not sound", midi.Options{}, pick(func(q *picking.Pick) { q.Rings = 0 })},
		{"sound without end", "rings longer", midi.Options{}, pick(func(q *picking.Pick) { q.Rings = 3*1920 + 1 })},
		{"no string 7", "a string that the instrument lacks", midi.Options{}, pick(func(q *picking.Pick) { q.String = 7 })},
		{"no string", "a string that the instrument lacks", midi.Options{}, pick(func(q *picking.Pick) { q.String = 0 })},
		{"no such key", "outside the MIDI range", midi.Options{}, pick(func(q *picking.Pick) { q.Pitch = 128 })},
		{"no key below", "outside the MIDI range", midi.Options{}, pick(func(q *picking.Pick) { q.Pitch = -1 })},
	} {
		p := arranged(t, "Am=x02210 | G=320003", "5 3 2 1", picking.Setting{})
		c.bend(&p)
		var b bytes.Buffer
		err := midi.Encode(&b, p, c.options)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || !strings.Contains(err.Error(), c.reason) || impossible.Mend == "" || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes", c.why, err, b.Len())
		}
	}
}

// TestTheLowestAndTheHighestKey tries what no other standard for files names.
func TestTheLowestAndTheHighestKey(t *testing.T) {
	p := arranged(t, "C=0-0-1", "3 2 1", picking.Setting{Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("C-1 C4 F#9"), Frets: 1}})
	if fault := fault(t, p, midi.Options{}); fault != "" {
		t.Error(fault)
	}
	if notes := notesOf(t, p, midi.Options{}); !strings.Contains(notes, "note 0 ") || !strings.Contains(notes, "note 127 ") {
		t.Error(notes)
	}
}

// TestNoBars gives the file of a passage made by hand its tracks all the same.
func TestNoBars(t *testing.T) {
	for _, o := range manners {
		if fault := fault(t, picking.Passage{Tempo: 80}, o); fault != "" {
			t.Errorf("%+v: %s", o, fault)
		}
	}
}

func ExampleEncode() {
	song := picking.MustParseProgression("Am=x02210 | G=320003")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Meter: picking.SixEight, Tempo: 66})
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	if err := midi.Encode(&file, part, midi.Options{CountIn: 1}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d bytes: %q\n", file.Len(), file.Bytes()[:14])
	// Output:
	// 394 bytes: "MThd\x00\x00\x00\x06\x00\x01\x00\b\x01\xe0"
}
