package api_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	form "weft.example/picking/json"
	"weft.example/picking/midi"
	"weft.example/picking/musicxml"
	"weft.example/picking/svg"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
	"weft.example/picking/text"
	"weft.example/picking/words"
	"weft.example/voicing"
)

// files are the formats with their options, and what the library writes.
func files(t testing.TB, p picking.Passage) map[string]func(w *bytes.Buffer) error {
	return map[string]func(w *bytes.Buffer) error{
		`{"format":"text","width":100,"count":"eighths"}`: func(w *bytes.Buffer) error {
			return text.Encode(w, p, text.Options{Width: 100, Count: picking.CountEighths, Spelling: fretboard.German})
		},
		`{"format":"json"}`:             func(w *bytes.Buffer) error { return form.Encode(w, p, form.Options{}) },
		`{"format":"words","width":50}`: func(w *bytes.Buffer) error { return words.Encode(w, p, words.Options{Width: 50}) },
		`{"format":"html"}`:             func(w *bytes.Buffer) error { return words.Encode(w, p, words.Options{HTML: true}) },
		`{"format":"svg","paper":"Letter","landscape":true,"size":18}`: func(w *bytes.Buffer) error {
			return svg.Encode(w, p, svg.Options{Paper: svg.Letter, Landscape: true, Size: 18, Spelling: fretboard.German})
		},
		`{"format":"musicxml","staves":"tab"}`: func(w *bytes.Buffer) error {
			return musicxml.Encode(w, p, musicxml.Options{Staves: musicxml.TabAlone})
		},
		`{"format":"mxl"}`: func(w *bytes.Buffer) error { return musicxml.EncodeCompressed(w, p, musicxml.Options{}) },
		`{"format":"midi","oneTrack":true,"countIn":1,"click":true}`: func(w *bytes.Buffer) error {
			return midi.Encode(w, p, midi.Options{OneTrack: true, CountIn: 1, Click: true})
		},
		`{"format":"wav","rate":8000,"sample":"float32","material":"nylon","seed":3,"tempo":240,"countIn":1,"click":"beats","from":2,"to":3,"rounds":2,"sounding":1,"silent":1,"hush":true}`: func(w *bytes.Buffer) error {
			return synth.Encode(w, p, wav.Format{Rate: 8000, Sample: wav.Float32}, synth.Options{Material: synth.Nylon, Seed: 3,
				Tempo: 240, CountIn: 1, Click: synth.BeatClick, From: 2, To: 3, Rounds: 2, Sounding: 1, Silent: 1, Hush: true})
		},
	}
}

func TestEveryFormatHasTheBytesOfTheLibrary(t *testing.T) {
	s := song{"chords": "Am=x02210 | Bb=x13331 | D=xx0232 | E=022100", "figures": "6 4 3 2 1 2 3 4", "title": `<"&`, "spelling": "german"}
	s["chords"] = "Am=x02210 | B=x13331 | D=xx0232 | E=022100" // B is B flat
	chart := picking.MustParseProgression("Am=x02210 | Bb=x13331 | D=xx0232 | E=022100")
	p, err := picking.Arrange(chart, picking.Figures{picking.MustParseFigure("6 4 3 2 1 2 3 4")}, picking.Setting{Title: `<"&`})
	if err != nil {
		t.Fatal(err)
	}
	for as, encode := range files(t, p) {
		want := encoded(t, encode)
		request := map[string]any{"song": s, "as": json.RawMessage(as)}
		e, file := ask(t, "file", request)
		if !e.OK || !bytes.Equal(file, want) {
			t.Errorf("%s: %d bytes, want %d; %+v", as, len(file), len(want), e.Error)
		}
		var told struct {
			Format, Media, Extension string
			Pages                    []string
		}
		e, _ = ask(t, "sheet", request)
		if binary := strings.Contains("mxl midi wav", strings.Split(as, `"`)[3]); binary == e.OK {
			t.Errorf("%s as a sheet: %+v", as, e.Error)
		} else if !binary {
			if err := json.Unmarshal(e.Result, &told); err != nil {
				t.Fatal(err)
			}
			if told.Format != "svg" && (len(told.Pages) != 1 || told.Pages[0] != string(want)) {
				t.Errorf("%s: another sheet", as)
			}
		}
	}
}

func TestDrawnPagesAreThoseOfTheLibrary(t *testing.T) {
	chart := strings.Repeat("Am=x02210 | E=022100 | ", 20) + "Am=x02210"
	e, _ := ask(t, "sheet", map[string]any{"song": song{"chords": chart, "figures": "5 3 2 1"}, "as": song{"format": "svg", "size": 20}})
	p, err := picking.Arrange(picking.MustParseProgression(chart), picking.Figures{picking.MustParseFigure("5 3 2 1")}, picking.Setting{})
	if err != nil {
		t.Fatal(err)
	}
	pages, err := svg.Pages(p, svg.Options{Size: 20})
	if err != nil || len(pages) < 2 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	var got struct{ Pages []string }
	if err := json.Unmarshal(e.Result, &got); err != nil {
		t.Fatal(err)
	}
	for i, page := range pages {
		if got.Pages[i] != string(page) {
			t.Errorf("page %d differs", i+1)
		}
	}
}

// The shapes answered are those that the finder yields, in its order.
func TestShapesAreThoseOfTheFinder(t *testing.T) {
	e, _ := ask(t, "shapes", song{"chord": "Dm7", "count": 5, "capo": 2})
	var got struct {
		Shapes []struct{ Shape string }
		More   bool
	}
	if err := json.Unmarshal(e.Result, &got); err != nil {
		t.Fatal(err)
	}
	chord, err := voicing.ParseChord("Dm7")
	if err != nil {
		t.Fatal(err)
	}
	i := 0
	for v := range voicing.Find(fretboard.Instrument{Capo: 2}, chord, voicing.Options{}) {
		if i == 5 {
			break
		}
		if got.Shapes[i].Shape != v.Shape().String() {
			t.Errorf("shape %d is %s, want %s", i, got.Shapes[i].Shape, v.Shape())
		}
		i++
	}
	if !got.More || len(got.Shapes) != 5 {
		t.Errorf("%d shapes, more: %t", len(got.Shapes), got.More)
	}
}
