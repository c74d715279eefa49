package api_test

import (
	"encoding/json"
	"strconv"
	"testing"

	"weft.example/picking"
	"weft.example/picking/synth"
	"weft.example/wasm/api"
)

func quoted(t testing.TB, text string) string {
	t.Helper()
	data, err := json.Marshal(text)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

type position struct {
	Player, Rate, Frame, Tick, Bar, Round, Frames int
	Pick                                          *int
	Silent, Ended                                 bool
	Picks                                         []struct{ Pick, Frame int }
}

const played = `"song":{"chords":"Am=x02210 | E=022100","figures":"5 3 2 1","once":true},"rate":8000`

// told asks for something about a sound and reads what is told.
func told(t *testing.T, l *api.Library, ask, request string) (p position) {
	t.Helper()
	answer, _ := l.Answer(`{"version":1,"ask":"` + ask + `","request":{` + request + `}}`)
	return read(t, answer)
}

func read(t *testing.T, answer string) (p position) {
	t.Helper()
	e := open(t, answer)
	if !e.OK {
		t.Fatalf("%s", answer)
	}
	if err := json.Unmarshal(e.Result, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

// However it is cut, the sound is that of the library, and each pick is told
// once, where it begins.
func TestSoundIsThatOfTheLibrary(t *testing.T) {
	passage, err := picking.Arrange(picking.MustParseProgression("Am=x02210 | E=022100"),
		picking.Figures{picking.MustParseFigure("5 3 2 1")}, picking.Setting{Once: true})
	if err != nil {
		t.Fatal(err)
	}
	wantLeft, wantRight, err := synth.Render(8000, passage, synth.Options{CountIn: 1, Click: synth.BeatClick})
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range []int{1, 127, 1000, 65536} {
		l := all()
		opened := told(t, l, "sound", played+`,"countIn":1,"click":"beats"`)
		if opened.Player != 1 || opened.Rate != 8000 {
			t.Fatalf("opened %+v", opened)
		}
		if size == 1 && testing.Short() {
			continue
		}
		at, picks := 0, []int{}
		for ended := false; !ended; {
			left, right := make([]float32, size), make([]float32, size)
			p := read(t, l.Fill(opened.Player, left, right))
			for i := range p.Frames {
				if left[i] != wantLeft[at+i] || right[i] != wantRight[at+i] {
					t.Fatalf("in %ds: frame %d differs", size, at+i)
				}
			}
			for _, b := range p.Picks {
				picks = append(picks, b.Pick)
				tick := int64(picking.Ticks(at+b.Frame)) * 480 * 80 / 60 / 8000 // with a bar of count-in
				if d := tick - 1920 - int64(480*b.Pick); d > 10 || d < -10 {
					t.Errorf("in %ds: pick %d is told %d ticks late", size, b.Pick, d)
				}
			}
			if at += p.Frames; p.Frame != at {
				t.Fatalf("in %ds: at frame %d, want %d", size, p.Frame, at)
			}
			ended = p.Ended
		}
		if at != len(wantLeft) || len(picks) != 8 {
			t.Errorf("in %ds: %d frames, want %d; picks %v", size, at, len(wantLeft), picks)
		}
	}
}

func TestPlayersAreMovedAndClosed(t *testing.T) {
	l := all()
	n := told(t, l, "sound", played+`,"endless":true`).Player
	player := `"player":` + strconv.Itoa(n)
	left, right := make([]float32, 4000), make([]float32, 4000)
	if p := read(t, l.Fill(n, left, right)); p.Ended || p.Frames != 4000 || len(p.Picks) != 1 || p.Bar != 1 {
		t.Errorf("%+v", p)
	}
	if p := told(t, l, "seek", player+`,"bar":2`); p.Bar != 2 || p.Tick != 1920 {
		t.Errorf("after seeking: %+v", p)
	}
	if p := read(t, l.Fill(n, left, right)); p.Bar != 2 || len(p.Picks) != 1 || p.Picks[0].Pick != 4 || p.Picks[0].Frame != 0 {
		t.Errorf("then %+v", p)
	}
	told(t, l, "tempo", player+`,"tempo":160`)
	before := told(t, l, "position", player)
	after := read(t, l.Fill(n, left, right))
	if ticks := after.Tick - before.Tick; ticks < 635 || ticks > 645 { // half a second at 160 a minute is 640
		t.Errorf("%d ticks in half a second", ticks)
	}
	for range api.MostPlayers - 1 {
		told(t, l, "sound", played)
	}
	if answer, _ := l.Answer(`{"version":1,"ask":"sound","request":{` + played + `}}`); open(t, answer).OK {
		t.Errorf("one player too many: %s", answer)
	}
	told(t, l, "close", player)
	told(t, l, "close", player)
	told(t, l, "sound", played)
	for _, answer := range []string{l.Fill(n, left, right), l.Fill(2, left, right[:1]), l.Fill(2, make([]float32, 70000), make([]float32, 70000))} {
		if e := open(t, answer); e.OK || e.Error.Code != "request" {
			t.Errorf("%s", answer)
		}
	}
}
