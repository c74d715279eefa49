package api_test

import (
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"weft.example/wasm/api"
)

// checkEnvelope holds an answer against what a caller relies on, whatever the
// request.
func checkEnvelope(t testing.TB, request, answer string, file []byte) envelope {
	t.Helper()
	if !utf8.ValidString(answer) {
		t.Fatalf("%q: the answer is not UTF-8: %q", request, answer)
	}
	e := open(t, answer)
	if e.OK {
		return e
	}
	if len(file) > 0 {
		t.Fatalf("%q: a file beside an error", request)
	}
	switch e.Error.Code {
	case "syntax", "impossible":
		if e.Error.Place == nil || e.Error.Place.Source == nil || e.Error.Place.Reason == "" {
			t.Fatalf("%q: an error without its place: %s", request, answer)
		}
		checkPlace(t, *e.Error.Place)
	case "request":
		if e.Error.Place != nil {
			t.Fatalf("%q: a place where no text is at fault: %s", request, answer)
		}
	default:
		t.Fatalf("%q: %s", request, answer)
	}
	if e.Error.Message == "" || strings.Contains(e.Error.Message, "\n") {
		t.Fatalf("%q: the message %q", request, e.Error.Message)
	}
	return e
}

func checkPlace(t testing.TB, p place) {
	t.Helper()
	units := utf16.Encode([]rune(*p.Source))
	if p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(units) {
		t.Fatalf("%q has no place %d, %d", *p.Source, p.Offset, p.Length)
	}
	before, after := string(utf16.Decode(units[:p.Offset])), string(utf16.Decode(units[p.Offset+p.Length:]))
	for _, m := range p.Mends {
		if m.Text != before+m.Write+after {
			t.Fatalf("%q mended with %q is %q", *p.Source, m.Write, m.Text)
		}
	}
}

func FuzzAnswer(f *testing.F) {
	for _, file := range []string{"requests.json", "writings.json"} {
		for _, q := range questions(f, file) {
			if text := q.text(); len(text) < 2000 && !strings.Contains(text, `"wav"`) {
				f.Add(text)
			}
		}
	}
	f.Add("{\"version\":1,\"ask\":\"check\",\"request\":{\"notation\":\"chord\",\"text\":\"\xff\"}}")
	f.Add(`{"version":2,"ask":"choices","request":{}}`)
	f.Fuzz(func(t *testing.T, request string) {
		if strings.Contains(request, "wav") || len(request) > 4000 {
			return // takes long, and has tests of its own
		}
		answer, file := all().Answer(request)
		checkEnvelope(t, request, answer, file)
	})
}

// Texts reach the parsers whole, whatever they hold.
func FuzzText(f *testing.F) {
	for _, s := range []string{"Am | Hm", "5 3 2 1 2 3 2", "drop D", "x02210", "🎸", "a | \u2028 |", "F#m", "6/8", "am", "Am | am | H"} {
		for kind := range uint8(7) {
			f.Add(kind, s)
		}
	}
	notations := []string{"chord", "chords", "figures", "tuning", "shape", "key", "meter"}
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		if !utf8.ValidString(text) || len(text) > 2000 {
			return
		}
		notation := notations[int(kind)%len(notations)]
		e := checked(t, notation, text)
		if e.OK {
			return
		}
		if e.Error.Place == nil || *e.Error.Place.Source != text || e.Error.Field != "text" {
			t.Fatalf("%s %q: %+v", notation, text, e.Error)
		}
		for _, m := range e.Error.Place.Mends {
			// Mended, the text is good or at fault only further on.
			after := checked(t, notation, m.Text)
			if !after.OK && after.Error.Place.Offset <= e.Error.Place.Offset {
				t.Fatalf("%s %q: %q mends nothing: %+v", notation, text, m.Write, after.Error.Place)
			}
		}
	})
}

func checked(t testing.TB, notation, text string) envelope {
	t.Helper()
	request := `{"version":1,"ask":"check","request":{"notation":"` + notation + `","text":` + quoted(t, text) + `}}`
	answer, file := all().Answer(request)
	return checkEnvelope(t, request, answer, file)
}

func TestWhatSurroundsARequestIsStrict(t *testing.T) {
	for _, test := range []struct{ request, field, said string }{
		{``, "", "no JSON"},
		{`{}`, "version", "left out"},
		{`[]`, "", "a list where an object"},
		{`{"version":1}`, "ask", "left out"},
		{`{"version":1,"ask":"choices"}`, "request", "left out"},
		{`{"version":2,"ask":"choices","request":{}}`, "version", "answers version 1"},
		{`{"version":1,"ask":"choices","request":{},"request":{}}`, "", "twice"},
		{`{"version":1,"ask":"choices","request":{}} x`, "", "after the value"},
		{`{"version":1,"ask":"choices","request":{},"more":1}`, "more", "no such field"},
		{`{"version":1,"ask":"choices","request":{"x":1}}`, "x", "no such field"},
		{`{"version":1.0,"ask":"choices","request":{}}`, "version", "1.0"},
		{`{"version":1,"ask":"` + strings.Repeat("x", 1<<20) + `","request":{}}`, "", "the limit is 1048576"},
		{`{"version":1,"ask":"choices","request":` + strings.Repeat("[", 5000), "", "8 levels"},
		{`{"version":1,"ask":"choices","request":[` + strings.Repeat("0,", 5000) + `0]}`, "", "1024 values"},
	} {
		answer, file := all().Answer(test.request)
		e := checkEnvelope(t, test.request, answer, file)
		if e.OK || e.Error.Code != "request" || e.Error.Field != test.field || !strings.Contains(e.Error.Message, test.said) {
			t.Errorf("%.80s: %+v, want %q and %q", test.request, e.Error, test.field, test.said)
		}
		if len(answer) > 500 {
			t.Errorf("%.80s: an answer of %d bytes", test.request, len(answer))
		}
	}
}

// An operation that fails is no end of the library.
func TestAPanicBecomesAnError(t *testing.T) {
	l := api.New(api.Lessons, api.Broken)
	answer, file := l.Answer(`{"version":1,"ask":"broken","request":{}}`)
	e := open(t, answer)
	if e.OK || e.Error.Code != "internal" || !strings.Contains(e.Error.Message, "out of range") || len(file) > 0 {
		t.Errorf("%s", answer)
	}
	if answer, _ := l.Answer(`{"version":1,"ask":"choices","request":{}}`); !open(t, answer).OK {
		t.Errorf("afterwards: %s", answer)
	}
}

// FuzzSong asks everything about a song, and whatever a person typed gets an
// answer that says where the fault is.
func FuzzSong(f *testing.F) {
	f.Add(uint8(0), "Am | F=xx3211 | C G/B | E7", "5 3 2 1 2 3 2 1", "4/4", "standard", "", int32(80), int32(0))
	f.Add(uint8(1), "|: a :| H7@2 | %", "5 3 2 1; 1/12: 5u - . 2", "6/8", "drop D", "german", int32(66), int32(3))
	f.Add(uint8(2), "Am:3 G:2", "5 3 2 1 2 3 2", "3/4", "G4 C4 E4 A4", "mixed", int32(5), int32(-1))
	f.Add(uint8(3), "C=0003 | am", "532123", "x", "nothing", "dutch", int32(400), int32(23))
	f.Add(uint8(4), "N.C. | Bb", "", "4/4", "E2", "", int32(0), int32(0))
	f.Fuzz(func(t *testing.T, kind uint8, chords, figures, meter, tuning, spelling string, tempo, capo int32) {
		if len(chords)+len(figures)+len(tuning) > 300 {
			return // takes long
		}
		player := map[string]any{"tuning": tuning, "capo": capo}
		if spelling != "" {
			player["spelling"] = spelling
		}
		song := map[string]any{"chords": chords, "figures": figures, "meter": meter, "tempo": tempo}
		for name, value := range player {
			song[name] = value
		}
		player["chords"] = chords
		what, request := "arrange", map[string]any{"song": song}
		switch kind % 5 {
		case 1:
			what, request = "path", player
		case 2:
			what, request = "capo", player
		case 3:
			what, request["as"] = "sheet", map[string]any{"format": "text"}
		case 4:
			what, request["as"] = "file", map[string]any{"format": "midi"}
		}
		e, file := ask(t, what, request)
		if e.OK {
			if (what == "file") == (len(file) == 0) {
				t.Fatalf("%s: a file of %d bytes", what, len(file))
			}
			return
		}
		if e.Error.Code == "request" || e.Error.Code == "internal" || e.Error.Place == nil || e.Error.Field == "" {
			t.Fatalf("%s of %v: %+v", what, request, e.Error)
		}
		checkPlace(t, *e.Error.Place)
	})
}
