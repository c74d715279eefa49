package synth_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/pickingtest"
	"weft.example/picking/synth"
)

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

func player(t testing.TB, rate int, p picking.Passage, o synth.Options) *synth.Player {
	t.Helper()
	player, err := synth.New(rate, p, o)
	if err != nil {
		t.Fatal(err)
	}
	return player
}

func rendered(t testing.TB, rate int, p picking.Passage, o synth.Options) []float32 {
	t.Helper()
	left, _, err := synth.Render(rate, p, o)
	if err != nil {
		t.Fatal(err)
	}
	return left
}

// frameOf returns the frame at which a tick begins, by whole numbers.
func frameOf(rate, tempo int, p picking.Passage, at picking.Ticks) int {
	up, down := int64(at)*60*int64(rate), int64(tempo)*int64(p.Meter.Beat())
	return int((up + down - 1) / down)
}

// sparse is a passage in which every pick begins from silence: it is slow, and
// rests follow each note.
func sparse(t testing.TB) picking.Passage {
	return arranged(t, "Am=x02210 | G=320003 | Dm=xx0231", "1/8: 5 . . . 3 . . .", picking.Setting{Tempo: 40})
}

// manner returns options by chance for a passage of so many bars.
func manner(r *rand.Rand, bars int) synth.Options {
	o := synth.Options{Material: synth.Material(r.IntN(2)), Seed: r.Uint64(), Tempo: 100 + r.IntN(300), CountIn: r.IntN(3),
		Click: synth.Click(r.IntN(4)), Rounds: r.IntN(4), Sounding: r.IntN(3), Silent: r.IntN(3), Hush: r.IntN(2) == 0}
	o.From = 1 + r.IntN(bars)
	o.To = o.From + r.IntN(min(4, bars-o.From+1))
	return o
}

// inPieces fills buffers of sizes by chance and returns what they hold.
func inPieces(p *synth.Player, r *rand.Rand) (left, right []float32) {
	var l, m [700]float32
	for {
		n := 1 + r.IntN(len(l))
		if r.IntN(3) == 0 {
			n = 1 + r.IntN(3)
		}
		got := p.Fill(l[:n], m[:n])
		left, right = append(left, l[:got]...), append(right, m[:got]...)
		if got < n {
			return left, right
		}
	}
}

// fault says what is wrong with the sound of a passage by chance, if anything.
func fault(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 1))
	p := pickingtest.Random(r)
	o := manner(r, len(p.Bars))
	rate := 8000
	for _, pick := range p.Picks() {
		if pick.Pitch > 98 { // that rate has no room for it
			rate = 48000
		}
	}
	player, err := synth.New(rate, p, o)
	if err != nil {
		return err.Error()
	}
	left, right, err := synth.Render(rate, p, o)
	if err != nil {
		return err.Error()
	}
	for i := range left {
		if !(math.Abs(float64(left[i])) <= 1 && math.Abs(float64(right[i])) <= 1) {
			return fmt.Sprintf("frame %d is %v, %v", i, left[i], right[i])
		}
	}
	played := frameOf(rate, o.Tempo, p, p.Bars[o.To-1].At+p.Bars[o.To-1].Length-p.Bars[o.From-1].At)*max(1, o.Rounds) +
		frameOf(rate, o.Tempo, p, p.Meter.Bar())*o.CountIn
	longest := played + frameOf(rate, o.Tempo, p, p.Meter.Bar()) + rate
	if len(left) < played-4 || len(left) > longest {
		return fmt.Sprintf("%d frames long, the bars are %d", len(left), played)
	}
	l, m := inPieces(player, r)
	if !slices.Equal(l, left) || !slices.Equal(m, right) {
		return fmt.Sprintf("%d frames in pieces are other than %d at once", len(l), len(left))
	}
	return ""
}

func TestAnyPassage(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(1)
	parameters.MinSuccessfulTests = 100
	if testing.Short() {
		parameters.MinSuccessfulTests = 10
	}
	properties := gopter.NewProperties(parameters)
	properties.Property("any passage sounds without a fault, is as long as its bars and the same however the buffers are cut",
		prop.ForAll(fault, gen.UInt64()))
	properties.TestingRun(t)
}

func TestOnsetsToTheFrame(t *testing.T) {
	for _, rate := range []int{8000, 44100, 48000} {
		p := sparse(t)
		sound := rendered(t, rate, p, synth.Options{})
		for i, pick := range p.Picks() {
			frame := frameOf(rate, p.Tempo, p, pick.At)
			if sound[frame] == 0 || frame > 0 && sound[frame-1] != 0 {
				t.Errorf("at %d, pick %d does not begin with frame %d", rate, i, frame)
			}
		}
	}
}

func TestNowTellsTheBarThatWasSought(t *testing.T) {
	p := arranged(t, "Am=x02210 | G=320003 | E=022100", "5 3 2 1", picking.Setting{})
	at := player(t, 11025, p, synth.Options{From: 2, CountIn: 1})
	var one, other [1]float32
	for _, bar := range []int{3, 2, 3} {
		if err := at.Seek(bar); err != nil {
			t.Fatal(err)
		}
		before := at.Now()
		at.Fill(one[:], other[:])
		if after := at.Now(); before.Bar != bar || after.Bar != bar || before.Pick != -1 || after.Pick < 0 {
			t.Errorf("sought bar %d: at %+v, then at %+v", bar, before, after)
		}
	}
}

func TestNowTellsThePickAsItBegins(t *testing.T) {
	p := arranged(t, "Am=x02210 | G=320003", "5 3 2 1 2 3 1 2", picking.Setting{Tempo: 213})
	const rate = 11025
	at := player(t, rate, p, synth.Options{CountIn: 1})
	lead := frameOf(rate, p.Tempo, p, p.Meter.Bar())
	var one, other [1]float32
	begins := map[int]int{}
	for frame := 0; at.Fill(one[:], other[:]) == 1; frame++ {
		now := at.Now()
		if _, seen := begins[now.Pick]; !seen {
			begins[now.Pick] = frame - lead
		}
		if want := 0; frame < lead && (now.Bar != want || now.Pick != -1) {
			t.Fatalf("in the count-in it is at %+v", now)
		}
	}
	for i, pick := range p.Picks() {
		if want := frameOf(rate, p.Tempo, p, pick.At); begins[i] != want {
			t.Errorf("pick %d is told at frame %d, want %d", i, begins[i], want)
		}
	}
	if now := at.Now(); now.Bar != 2 || now.Pick != 15 || now.Round != 1 {
		t.Errorf("at the end it is at %+v", now)
	}
}

func TestSeekingIsPlayingFromTheStart(t *testing.T) {
	p := sparse(t)
	const rate = 44100
	whole := rendered(t, rate, p, synth.Options{CountIn: 1, Click: synth.BeatClick})
	lead := frameOf(rate, p.Tempo, p, p.Meter.Bar())
	for bar := 1; bar <= 3; bar++ {
		at := player(t, rate, p, synth.Options{CountIn: 1, Click: synth.BeatClick})
		if err := at.Seek(bar); err != nil {
			t.Fatal(err)
		}
		from := lead + frameOf(rate, p.Tempo, p, p.Bars[bar-1].At)
		left, right := make([]float32, at.Left()), make([]float32, at.Left())
		at.Fill(left, right)
		if !slices.Equal(left, whole[from:]) {
			t.Errorf("from bar %d: %d frames, want %d", bar, len(left), len(whole)-from)
		}
	}
	if err := player(t, rate, p, synth.Options{From: 2}).Seek(1); err == nil {
		t.Error("a bar that is not played can be sought")
	}
}

func TestTempoChangesWhilePlaying(t *testing.T) {
	p := sparse(t)
	const rate = 48000
	at := player(t, rate, p, synth.Options{})
	first, second := make([]float32, frameOf(rate, 40, p, p.Bars[1].At)), make([]float32, 10*rate)
	at.Fill(first, make([]float32, len(first)))
	if err := at.SetTempo(80); err != nil || at.Tempo() != 80 {
		t.Fatal(err)
	}
	at.Fill(second, make([]float32, len(second)))
	for i, pick := range p.Picks() {
		if pick.At <= p.Bars[1].At {
			continue
		}
		frame := frameOf(rate, 80, p, pick.At-p.Bars[1].At)
		if second[frame] == 0 || second[frame-1] != 0 {
			t.Errorf("pick %d does not begin %d frames after the change", i, frame)
		}
	}
	if !slices.Equal(first[:7000], rendered(t, rate, p, synth.Options{Tempo: 200})[:7000]) {
		t.Error("a note sounds otherwise at another tempo")
	}
	if err := at.SetTempo(9); err == nil {
		t.Error("a tempo of 9 is taken")
	}
}

func TestNothingIsAllocatedWhilePlaying(t *testing.T) {
	p := arranged(t, "Am=x02210 | G=320003", "1/16: 5 3 2 1 2 3 1 2", picking.Setting{Tempo: 200})
	at := player(t, 48000, p, synth.Options{Rounds: synth.Endless, Click: synth.AutoClick, Sounding: 3, Silent: 1})
	left, right := make([]float32, 4800), make([]float32, 4800)
	tempo := 50
	if n := testing.AllocsPerRun(200, func() {
		at.Fill(left, right)
		at.Now()
		tempo = 50 + (tempo+7)%300
		_ = at.SetTempo(tempo)
		_ = at.Seek(1 + tempo%2)
		at.Left()
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
	if at.Left() != -1 {
		t.Error("an endless player has an end")
	}
}

// TestTwelveStringsRinging plays twelve strings as fast as may be and asks that
// even the sum stays below the knee from which the sound is bent.
func TestTwelveStringsRinging(t *testing.T) {
	tuning := fretboard.MustParseTuning("E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4")
	p := arranged(t, "Em=022220000000 | E=022220000000", "1/32: 12 11 10 9 8 7 6 5 4 3 2 1",
		picking.Setting{Instrument: fretboard.Instrument{Tuning: tuning}, Tempo: 120})
	for material := range synth.Material(2) {
		peak := float32(0)
		for seed := range uint64(5) {
			left, right, err := synth.Render(48000, p, synth.Options{Material: material, Seed: seed, Rounds: 2})
			if err != nil {
				t.Fatal(err)
			}
			for i := range left {
				peak = max(peak, left[i], -left[i], right[i], -right[i])
			}
		}
		t.Logf("%s: peak %.3f", material, peak)
		if !(peak < 0.8 && peak > 0.2) {
			t.Errorf("%s: peak %v", material, peak)
		}
	}
}

func TestRefusals(t *testing.T) {
	good := sparse(t)
	changed := func(change func(*picking.Passage)) picking.Passage {
		p := sparse(t)
		change(&p)
		return p
	}
	high := arranged(t, "D=012", "3 2 1 2", picking.Setting{Instrument: fretboard.Instrument{Tuning: fretboard.MustParseTuning("D0 C4 F9"), Frets: 2}})
	for _, c := range []struct {
		why      string
		rate     int
		p        picking.Passage
		o        synth.Options
		notation string
	}{
		{"no rate", 0, good, synth.Options{}, "rate"},
		{"a rate too high", 192001, good, synth.Options{}, "rate"},
		{"a rate too low for the pitch", 22050, high, synth.Options{}, "rate"},
		{"a material that is not", 48000, good, synth.Options{Material: 2}, "material"},
		{"a click that is not", 48000, good, synth.Options{Click: 4}, "click"},
		{"a tempo too low", 48000, good, synth.Options{Tempo: 9}, "tempo"},
		{"a count-in below none", 48000, good, synth.Options{CountIn: -1}, "count-in"},
		{"a count-in too long", 48000, good, synth.Options{CountIn: 9}, "count-in"},
		{"bars below the first", 48000, good, synth.Options{From: -1}, "first bar"},
		{"bars past the last", 48000, good, synth.Options{To: 4}, "last bar"},
		{"bars backward", 48000, good, synth.Options{From: 3, To: 2}, "last bar"},
		{"rounds", 48000, good, synth.Options{Rounds: -2}, "rounds"},
		{"silent bars", 48000, good, synth.Options{Silent: -1}, "silent bars"},
		{"sounding bars", 48000, good, synth.Options{Sounding: 513}, "sounding bars"},
		{"no passage", 48000, picking.Passage{Tempo: 60}, synth.Options{}, "passage"},
		{"no meter", 48000, changed(func(p *picking.Passage) { p.Meter.Unit = 3 }), synth.Options{}, "meter"},
		{"no tempo", 48000, changed(func(p *picking.Passage) { p.Tempo = 0 }), synth.Options{}, "tempo"},
		{"a bar out of place", 48000, changed(func(p *picking.Passage) { p.Bars[1].At++ }), synth.Options{}, "passage"},
		{"a pick out of its bar", 48000, changed(func(p *picking.Passage) { p.Bars[1].Picks[0].At = 0 }), synth.Options{}, "passage"},
		{"a string that is not there", 48000, changed(func(p *picking.Passage) { p.Bars[1].Picks[0].String = 7 }), synth.Options{}, "passage"},
		{"a pick without sound", 48000, changed(func(p *picking.Passage) { p.Bars[1].Picks[0].Rings = 0 }), synth.Options{}, "passage"},
		{"a pitch outside", 48000, changed(func(p *picking.Passage) { p.Bars[1].Picks[0].Pitch = 128 }), synth.Options{}, "passage"},
	} {
		_, err := synth.New(c.rate, c.p, c.o)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || impossible.Notation != c.notation {
			t.Errorf("%s: %v", c.why, err)
		}
	}
	if _, _, err := synth.Render(48000, good, synth.Options{Rounds: synth.Endless}); err == nil {
		t.Error("an endless sound is rendered")
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for m := range synth.Material(2) {
		if got, err := synth.ParseMaterial(m.String()); got != m || err != nil {
			t.Errorf("%v: %v, %v", m, got, err)
		}
	}
	for c := range synth.Click(4) {
		if got, err := synth.ParseClick(c.String()); got != c || err != nil {
			t.Errorf("%v: %v, %v", c, got, err)
		}
	}
	if _, err := synth.ParseMaterial("gut"); err == nil {
		t.Error("gut is read")
	}
}

// TestStrokesAndSeedsAreHeard: the other stroke, and another seed, sound
// otherwise.
func TestStrokesAndSeedsAreHeard(t *testing.T) {
	p, other := sparse(t), sparse(t)
	other.Bars[0].Picks[0].Stroke = picking.UpStroke + picking.DownStroke - p.Bars[0].Picks[0].Stroke
	usual := rendered(t, 8000, p, synth.Options{})
	if slices.Equal(usual, rendered(t, 8000, other, synth.Options{})) || slices.Equal(usual, rendered(t, 8000, p, synth.Options{Seed: 1})) {
		t.Error("they sound alike")
	}
}
