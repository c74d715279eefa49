package api_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	form "weft.example/picking/json"
	"weft.example/picking/pickingtest"
	"weft.example/voicing/box"
)

// A song is a request's song, with what the tests need of it.
type song map[string]any

func ask(t testing.TB, what string, request any) (envelope, []byte) {
	t.Helper()
	data, err := json.Marshal(map[string]any{"version": api1, "ask": what, "request": request})
	if err != nil {
		t.Fatal(err)
	}
	answer, file := all().Answer(string(data))
	return open(t, answer), file
}

const api1 = 1

// arranged is what a test reads of a part.
type arranged struct {
	Chords, Figures string
	Passage         json.RawMessage
	Seconds         float64
	Down            int
	Picks           []struct {
		Bar, Pick, Held  int
		Time, From, To   float64
		Why, Came, Words string
	}
	Held []struct {
		Bar, Chord int
		Played     struct{ Symbol, Name, Words string }
		Sounds     struct{ Symbol, Name, Words string }
		Box        *int
	}
	Boxes []struct {
		Shape, Fingers string
		Box            struct {
			First, Rows int
			Words       []string
		}
	}
	Losses []struct {
		Held, From, To   int
		Want, Got, Words string
	}
	Remarks []string
}

// songOf returns the request that gives a passage back, shapes and all: the
// bars as played, once each.
func songOf(p picking.Passage, figures string) song {
	var chart []string
	for _, bar := range p.Bars {
		var chords []string
		for _, c := range bar.Chords {
			chord := picking.ChartChord{Chord: c.Chord, Figure: c.Figure}
			if !c.Chord.Silent() {
				chord.Shape = c.Voicing.Shape()
			}
			chords = append(chords, chord.String())
		}
		chart = append(chart, strings.Join(chords, " "))
	}
	g := p.Instrument
	return song{"chords": strings.Join(chart, " | "), "figures": figures, "title": p.Title, "meter": p.Meter.String(),
		"tempo": p.Tempo, "tuning": g.Tuning.String(), "frets": int(g.Frets), "capo": int(g.Capo), "hand": g.Hand.String(),
		"scaleLength": float64(g.Scale), "stringSpacing": float64(g.Spacing), "strokes": p.Strokes.String(),
		"fit": p.Fit.String(), "once": !p.Loop}
}

// arrangement reads a song as a Go program would.
func arrangement(t testing.TB, s song) (picking.Passage, error) {
	t.Helper()
	text := func(name string) string { v, _ := s[name].(string); return v }
	chart, err := picking.ParseProgression(text("chords"))
	if err != nil {
		return picking.Passage{}, err
	}
	figures, err := picking.ParseFigures(text("figures"))
	if err != nil {
		return picking.Passage{}, err
	}
	setting := picking.Setting{Title: text("title"), Tempo: s["tempo"].(int), Once: s["once"].(bool)}
	g := &setting.Instrument
	g.Frets, g.Capo = fretboard.Fret(s["frets"].(int)), fretboard.Fret(s["capo"].(int))
	g.Scale, g.Spacing = fretboard.Millimetres(s["scaleLength"].(float64)), fretboard.Millimetres(s["stringSpacing"].(float64))
	var errs [6]error
	setting.Meter, errs[0] = picking.ParseMeter(text("meter"))
	g.Tuning, errs[1] = fretboard.ParseTuning(text("tuning"))
	g.Hand, errs[2] = fretboard.ParseHand(text("hand"))
	setting.Strokes, errs[3] = picking.ParseTradition(text("strokes"))
	setting.Fit, errs[4] = picking.ParseMoulding(text("fit"))
	if err := errors.Join(errs[:]...); err != nil {
		t.Fatal(err)
	}
	return picking.Arrange(chart, figures, setting)
}

func encoded(t testing.TB, encode func(w *bytes.Buffer) error) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := encode(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// checkPart holds a part against the passage that the library arranges.
func checkPart(t testing.TB, p picking.Passage, e envelope) {
	t.Helper()
	var part arranged
	if err := json.Unmarshal(e.Result, &part); err != nil {
		t.Fatal(err)
	}
	want := encoded(t, func(w *bytes.Buffer) error { return form.Encode(w, p, form.Options{}) })
	if got := append(bytes.Clone(part.Passage), '\n'); !bytes.Equal(got, want) {
		t.Fatalf("another passage: %s", cmp.Diff(string(want), string(got)))
	}
	var all []picking.Pick
	for _, pick := range p.Picks() {
		all = append(all, pick)
	}
	if len(part.Picks) != len(all) {
		t.Fatalf("%d picks, want %d", len(part.Picks), len(all))
	}
	for i, got := range part.Picks {
		pick := p.Bars[got.Bar].Picks[got.Pick]
		if pick != all[i] {
			t.Fatalf("pick %d is %+v, want %+v", i, pick, all[i])
		}
		held := part.Held[got.Held]
		chord := p.Bars[held.Bar].Chords[held.Chord]
		if held.Bar != got.Bar || pick.At < chord.At || pick.At >= chord.At+chord.Length {
			t.Fatalf("pick %d is not under chord %d", i, got.Held)
		}
		// A down-stroke goes down the numbers, but up on a turned guitar.
		step := map[bool]float64{true: -1, false: 1}[(pick.Stroke == picking.DownStroke) != (p.Instrument.Hand == fretboard.LeftTurned)]
		if got.To-got.From != step || (got.From+got.To)/2 != float64(pick.String) {
			t.Fatalf("pick %d goes from %v to %v", i, got.From, got.To)
		}
		// The way between two strokes is what the passage says it is.
		if n := (i + 1) % len(all); n > 0 || p.Loop {
			way := part.Picks[n].From - got.To
			if int(max(way, -way)) != all[n].Travel {
				t.Fatalf("from pick %d to %d it is %v, want %d", i, n, way, all[n].Travel)
			}
		}
		minutes := float64(pick.At) / float64(p.Meter.Beat()) / float64(p.Tempo)
		if d := got.Time - 60*minutes; d > 1e-9 || d < -1e-9 {
			t.Fatalf("pick %d sounds at %v s, want %v", i, got.Time, 60*minutes)
		}
		for _, said := range []string{got.Why, got.Came, got.Words} {
			if !strings.HasSuffix(said, ".") || strings.Contains(said, "string 0") || strings.Contains(said, ", ,") {
				t.Fatalf("pick %d: %q", i, said)
			}
		}
	}
	checkBoxes(t, p, part)
	checkLosses(t, p, part, all)
}

func checkBoxes(t testing.TB, p picking.Passage, part arranged) {
	t.Helper()
	i := 0
	for n, bar := range p.Bars {
		for m, c := range bar.Chords {
			got := part.Held[i]
			if got.Bar != n || got.Chord != m || got.Played.Symbol != c.Chord.String() || got.Sounds.Words != c.Sounds.Words() ||
				(got.Box == nil) != c.Chord.Silent() {
				t.Fatalf("chord %d is %+v, want %s", i, got, c.Chord)
			}
			if got.Box != nil {
				shown := part.Boxes[*got.Box]
				if diff := cmp.Diff(box.Of(c.Voicing).Words(), shown.Box.Words); diff != "" || shown.Shape != c.Voicing.Shape().String() {
					t.Fatalf("chord %d has the box of %s: %s", i, shown.Shape, diff)
				}
			}
			i++
		}
	}
	if i != len(part.Held) {
		t.Fatalf("%d chords, want %d", len(part.Held), i)
	}
}

// checkLosses holds the placed losses against those of the chords: every loss of
// a chord is placed under it, and what is placed is a loss of its chord.
func checkLosses(t testing.TB, p picking.Passage, part arranged, all []picking.Pick) {
	t.Helper()
	placed := map[int]map[picking.Loss]bool{}
	for _, l := range part.Losses {
		loss := picking.Loss{From: all[l.From].Event, To: all[l.To].Event}
		loss.Want, _ = picking.ParseDirection(l.Want)
		loss.Got, _ = picking.ParseDirection(l.Got)
		if placed[l.Held] == nil {
			placed[l.Held] = map[picking.Loss]bool{}
		}
		placed[l.Held][loss] = true
		sounds := picking.Same
		if step := all[l.From].String - all[l.To].String; step != 0 {
			sounds = map[bool]picking.Direction{true: picking.Up, false: picking.Down}[step > 0]
		}
		if part.Picks[l.From].Held != l.Held || l.To != (l.From+1)%len(all) || loss.Got != sounds || loss.Want == sounds {
			t.Fatalf("a loss at a strange place: %+v", l)
		}
	}
	for i, held := range part.Held {
		losses := p.Bars[held.Bar].Chords[held.Chord].Fit.Losses
		for _, loss := range losses {
			if !placed[i][loss] {
				t.Fatalf("chord %d: the loss %+v has no place", i, loss)
			}
			delete(placed[i], loss)
		}
		if len(placed[i]) > 0 {
			t.Fatalf("chord %d: what is no loss is placed: %+v", i, placed[i])
		}
	}
}

// The list has what is apart from the usual: repeats, triplets, twelve strings.
func TestEveryListedPassageIsArrangedAsTheLibraryDoes(t *testing.T) {
	for _, c := range pickingtest.List() {
		if testing.Short() && len(c.Passage.Bars) > 100 {
			continue
		}
		s := songOf(c.Passage, "1/8: 5 3 2 1 2 3; 1/12: 5 3 2 1; 1/8: 4 3 2 1")
		if c.Passage.Instrument.Tuning.Strings() < 5 {
			s["figures"] = "1/8: 1; 1/12: 1 1; 1/8: 1 - 1"
		}
		p, err := arrangement(t, s)
		e, _ := ask(t, "arrange", map[string]any{"song": s})
		if (err == nil) != e.OK {
			t.Errorf("%s: %v, but the answer is %+v", c.Name, err, e.Error)
			continue
		}
		if err == nil {
			checkPart(t, p, e)
		}
	}
}

// A step from the end of a figure to its start is lost within a chord and not at
// the change to the next, or the other way round.
func TestLossesArePlacedWhereTheySound(t *testing.T) {
	s := song{"chords": "D=xxxxx2 | G=320003 | D=xxxxx2 | Am=x02210", "figures": "1/8: 6 4 3 2",
		"meter": "4/4", "tuning": "standard", "hand": "right", "strokes": "toward-next", "fit": "contour", "tempo": 80,
		"once": false, "frets": 24, "capo": 0, "scaleLength": 645.16, "stringSpacing": 10.8}
	p, err := arrangement(t, s)
	if err != nil {
		t.Fatal(err)
	}
	e, _ := ask(t, "arrange", map[string]any{"song": s})
	checkPart(t, p, e)
	round := 0
	for i, bar := range p.Bars {
		for _, loss := range bar.Chords[0].Fit.Losses {
			if last := bar.Picks[len(bar.Picks)-1]; loss.From == last.Event {
				next := p.Bars[(i+1)%len(p.Bars)].Picks[0]
				if last.String < next.String && loss.Got == picking.Same {
					round++
				}
			}
		}
	}
	if round == 0 {
		t.Error("no loss within a chord that is none at the change")
	}
}

func TestArrangingProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(6)
	parameters.MinSuccessfulTests = 60
	properties := gopter.NewProperties(parameters)
	figures := []string{"1/8: 5 3 2 1 2 3", "6 4 3 2 1 2 3 4", "1/12: 5u 3 . 2 - 1; 1/8: 1 2 3 4; 1/16: 6 1 5 2"}
	properties.Property("a random passage is arranged as the library does", prop.ForAll(
		func(seed int64, figure int) bool {
			p := pickingtest.Random(rand.New(rand.NewPCG(uint64(seed), 6)))
			s := songOf(p, figures[figure])
			p, err := arrangement(t, s)
			e, _ := ask(t, "arrange", map[string]any{"song": s})
			if err == nil && e.OK {
				checkPart(t, p, e)
			}
			return (err == nil) == e.OK
		}, gen.Int64Range(0, 1<<40), gen.IntRange(0, len(figures)-1)))
	properties.TestingRun(t)
}
