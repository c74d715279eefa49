package json

import (
	"bytes"
	"errors"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"weft.example/fretboard"
	"weft.example/picking"
)

func checkRefused(t *testing.T, r io.Reader, path, reason string) {
	t.Helper()
	p, err := Decode(r)
	var wrong *Error
	if !errors.As(err, &wrong) {
		t.Errorf("%s, %s: got %v, want an Error", path, reason, err)
		return
	}
	if wrong.Path != path || !strings.Contains(wrong.Reason, reason) {
		t.Errorf("got %v, want path %q and reason %q", err, path, reason)
	}
	if !reflect.ValueOf(p).IsZero() {
		t.Errorf("%s, %s: a passage beside the error", path, reason)
	}
}

// Each row changes one thing in the sample as it is written.
func TestMalformedFieldsAreRefused(t *testing.T) {
	good := string(encoded(t, sample(t)))
	for _, test := range []struct{ old, new, path, reason string }{
		{`"version":1`, `"version":2,"colour":"red"`, "version", "reads version 1"},
		{`"version":1,`, ``, "version", "missing"},
		{`"version":1,`, `"version":1.0,`, "version", "a whole number"},
		{`"version":1,`, `"version":true,`, "version", "true or false where a number"},
		{`"version":1,`, `"version":0,`, "version", "0"},
		{`"title":`, `"Title":`, "Title", "no such field"},
		{`"title":"`, `"title":"a","title":"`, "title", "given twice"},
		{`"title":"Two boats & a <jetty>"`, `"title":null`, "title", "null where a text"},
		{`"title":"Two boats & a <jetty>"`, `"title":["a"]`, "title", "a list where a text"},
		{`"title":"Two boats & a <jetty>",`, ``, "title", "missing"},
		{`"tempo":66`, `"tempo":"66"`, "tempo", "a text where a number"},
		{`"tempo":66`, `"tempo":66.5`, "tempo", "whole number"},
		{`"tempo":66`, `"tempo":6.6e1`, "tempo", "whole number"},
		{`"tempo":66`, `"tempo":99999999999999999999999`, "tempo", "out of range"},
		{`"tempo":66`, `"tempo":536870913`, "tempo", "out of range"},
		{`"scaleLength":`, `"scaleLength":1e999,"x":`, "scaleLength", "out of range"},
		{`"loop":true`, `"loop":1`, "loop", "a number where true or false"},
		{`"remarks":["no chord`, `"remarks":[5,"no chord`, "remarks[0]", "a number where a text"},
		{`"spacings"`, `"spaces"`, "travel.spaces", "no such field"},
		{`"bars":[`, `"bars":[[],`, "bars[0]", "a list where an object"},
		{`"chords":[{`, `"chords":[{"name":"x",`, "bars[0].chords[0].name", "no such field"},
		{`"start":{"string":4,"reason":"root"}`, `"start":4`, "bars[1].chords[1].start", "a number where an object"},
		{`"figure":1,`, `"figure":0,`, "bars[0].chords[0].figure", "empty; leave"},
		{`"crossing":"`, `"crossing":"","x":"`, "bars[0].picks[0].crossing", "empty; leave"},
		{`"fret":0,`, ``, "bars[0].picks[0].fret", "missing"},
		{`"losses":[],`, ``, "bars[0].chords[0].fit.losses", "missing"},
		{`"losses":[],`, `"losses":null,`, "bars[0].chords[0].fit.losses", "null where a list"},
		{`"losses":[],`, `"losses":{},`, "bars[0].chords[0].fit.losses", "an object where a list"},
	} {
		text := strings.Replace(good, test.old, test.new, 1)
		if text == good {
			t.Errorf("the sample has no %s", test.old)
		}
		checkRefused(t, strings.NewReader(text), test.path, test.reason)
	}
	checkRefused(t, strings.NewReader("[]"), "", "a list where an object")
	checkRefused(t, strings.NewReader("{}"), "version", "missing")
	checkRefused(t, strings.NewReader(`{"`+strings.Repeat("é", 1000)+`":1}`), `"`+strings.Repeat(`\u00e9`, 12)+`"...`, "no such field")
}

func TestTextThatIsNotJSONIsRefusedInPlace(t *testing.T) {
	good := string(encoded(t, sample(t)))
	for _, test := range []struct{ text, at, reason string }{
		{"", "", "unexpected end"},
		{"{", "{", "unexpected end"},
		{good[:80], good[79:80], "unexpected end"},
		{"\ufeff{}", "\xef", "invalid character"},
		{`{"version":1,}`, "}", "invalid character"},
		{`{"version":01}`, "1", "invalid character"},
		{`{"version":NaN}`, "N", "invalid character"},
		{`{'version':1}`, "'", "invalid character"},
		{`{"version":1 "title":""}`, `"`, "invalid character"},
		{good + "{}", "{", "after top-level value"},
		{good + "x", "x", "after top-level value"},
		{"{\"title\":\"a\x00\"}", "\x00", "invalid character"},
		{"{\"title\":\"a\xff\"}", "\xff", "not valid UTF-8"},
		{`{"title":"\ud834"}`, `\ud834`, "half a character"},
		{`{"title":"\ud834\u0041"}`, `\ud834`, "half a character"},
		{`{"title":"\udd1e"}`, `\udd1e`, "half a character"},
		{strings.Repeat("[", 20000), "[", "exceeded max depth"},
	} {
		_, err := Decode(strings.NewReader(test.text))
		var wrong *fretboard.SyntaxError
		if !errors.As(err, &wrong) {
			t.Errorf("%.40q: got %v, want a SyntaxError", test.text, err)
			continue
		}
		if wrong.Text() != test.at || !strings.Contains(wrong.Reason, test.reason) {
			t.Errorf("%.40q: %v at %q, want %q at %q", test.text, err, wrong.Text(), test.reason, test.at)
		}
	}
	whole := strings.Replace(good, `"title":"Two boats & a <jetty>"`, `"title":"\\ud834 \ud834\udd1e"`, 1)
	if p, err := Decode(strings.NewReader(whole)); err != nil || p.Title != `\ud834 𝄞` {
		t.Errorf("a whole pair comes back as %q, %v", p.Title, err)
	}
}

func TestTooMuchTextIsNotRead(t *testing.T) {
	_, err := Decode(io.MultiReader(strings.NewReader("{"), endlessSpace{}))
	var wrong *fretboard.ImpossibleError
	if !errors.As(err, &wrong) {
		t.Errorf("got %v, want an ImpossibleError", err)
	}
}

type endlessSpace struct{}

func (endlessSpace) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = ' '
	}
	return len(b), nil
}

func TestTooMuchIsNotWritten(t *testing.T) {
	p := sample(t)
	p.Remarks = slices.Repeat([]string{strings.Repeat("a", fretboard.MaxText)}, MaxSize/fretboard.MaxText)
	var b bytes.Buffer
	err := Encode(&b, p, Options{})
	var wrong *Error
	if !errors.As(err, &wrong) || !strings.HasPrefix(err.Error(), "passage: 67") || b.Len() > 0 {
		t.Errorf("got %v and %d bytes", err, b.Len())
	}
}

func TestErrorsOfReaderAndWriterComeBack(t *testing.T) {
	broken := errors.New("broken")
	if _, err := Decode(iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("Decode: %v", err)
	}
	if err := Encode(brokenWriter{broken}, sample(t), Options{}); !errors.Is(err, broken) {
		t.Errorf("Encode: %v", err)
	}
}

type brokenWriter struct{ err error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.err }

func TestErrorsUnwrapToWhatTheNotationSaid(t *testing.T) {
	text := strings.Replace(string(encoded(t, sample(t))), `"symbol":"Am"`, `"symbol":"Hm"`, 1)
	_, err := Decode(strings.NewReader(text))
	var wrong *fretboard.SyntaxError
	if !errors.As(err, &wrong) || wrong.Source != "Hm" {
		t.Errorf("got %v", err)
	}
}

func TestPassagesThatCannotBeReadAreNotWritten(t *testing.T) {
	for _, test := range []struct {
		why, path string
		change    func(p *picking.Passage)
	}{
		{"the zero passage", "tempo", func(p *picking.Passage) { *p = picking.Passage{} }},
		{"a wrong pitch", "bars[0].picks[2].pitch", func(p *picking.Passage) { p.Bars[0].Picks[2].Pitch++ }},
		{"no such stroke", "bars[0].picks[2].stroke", func(p *picking.Passage) { p.Bars[0].Picks[2].Stroke = 9 }},
		{"a remark on silence", "bars[1].chords[0]", func(p *picking.Passage) { p.Bars[1].Chords[0].Remarks = []string{"hush"} }},
		{"silence with a voicing", "bars[1].chords[0]", func(p *picking.Passage) { p.Bars[1].Chords[0].Voicing = p.Bars[0].Chords[0].Voicing }},
		{"another instrument", "bars[0].chords[0]", func(p *picking.Passage) { p.Instrument.Scale++ }},
		{"another chord", "bars[0].chords[0]", func(p *picking.Passage) { p.Bars[0].Chords[0].Chord = p.Bars[4].Chords[0].Chord }},
		{"a title that is not text", "title", func(p *picking.Passage) { p.Title = "\xff" }},
	} {
		p := sample(t)
		test.change(&p)
		var b bytes.Buffer
		err := Encode(&b, p, Options{})
		var wrong *Error
		if !errors.As(err, &wrong) || wrong.Path != test.path || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes, want an Error at %s", test.why, err, b.Len(), test.path)
		}
	}
}
