package synth

import (
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"weft.example/picking"
	"weft.example/picking/pickingtest"
)

// TestTheJoinOfOtherBars: what a join works out for itself agrees with what the
// passage says of its own join, for all bars of passages that loop.
func TestTheJoinOfOtherBars(t *testing.T) {
	met := 0
	for seed := range uint64(1500) {
		p := pickingtest.Random(rand.New(rand.NewPCG(seed, 3)))
		if !p.Loop {
			continue
		}
		j := newJoin(p, Options{From: 1, To: len(p.Bars)})
		j.own = false
		for i, pick := range p.Picks() {
			if pick.At+pick.Rings > p.Length() {
				met++
			}
			if got, want := j.stop(pick), pick.At+pick.Rings; got != want {
				t.Errorf("seed %d, pick %d: stops at %d, the passage says %d of %d", seed, i, got, want, p.Length())
				break
			}
		}
	}
	if met < 150 {
		t.Errorf("only %d picks ring over a join", met)
	}
}

// TestTheLastRound: what rings to the end of a loop's last round rings as long
// as in the same passage arranged to be played once.
func TestTheLastRound(t *testing.T) {
	const chords, figure = "Am=x02210 | F=133211 | E=022100", "5 3 2 1 . 3"
	stops := func(once bool) (stops []picking.Ticks) {
		p, err := picking.Arrange(picking.MustParseProgression(chords), picking.Figures{picking.MustParseFigure(figure)},
			picking.Setting{Meter: picking.SixEight, Once: once})
		if err != nil {
			t.Fatal(err)
		}
		o, _ := Options{}.normal(p)
		s, err := newScore(48000, p, o)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range s.notes {
			stops = append(stops, n.stop)
		}
		return stops
	}
	looped, once := stops(false), stops(true)
	for i := range once {
		if looped[i] != once[i] {
			t.Errorf("note %d stops at %d, played once at %d", i, looped[i], once[i])
		}
	}
}

// TestAStringRingsOverTheJoin plays bars whose string 3 is plucked once a round:
// at the join another string is plucked, and string 3 rings on.
func TestAStringRingsOverTheJoin(t *testing.T) {
	p, err := picking.Arrange(picking.MustParseProgression("Am=x02210 | Am | Am"), picking.Figures{picking.MustParseFigure("1/2: 5 3")},
		picking.Setting{Tempo: 120})
	if err != nil {
		t.Fatal(err)
	}
	const rate, bar = 48000, 2 * 48000
	for _, o := range []Options{{Rounds: 2}, {Rounds: 2, From: 2, To: 2}, {Rounds: 2, From: 1, To: 2}} {
		sound, _ := rendered(t, rate, p, o)
		o, _ = o.normal(p)
		join := (o.To - o.From + 1) * bar
		a := float64(p.Instrument.Pitch(3, 2).Hertz())
		before, after := cmplx.Abs(partial(sound[join-9600:join-4800], a, rate)), cmplx.Abs(partial(sound[join+2400:join+7200], a, rate))
		if !(after > before/2 && before > 1e-3) {
			t.Errorf("%+v: the string goes from %.4f to %.4f", o, before, after)
		}
	}
}
