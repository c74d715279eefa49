package jsontext_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"weft.example/wasm/internal/jsontext"
)

// plain is a value as encoding/json reads it, numbers as they are written.
func plain(v jsontext.Value) any {
	switch v.Kind {
	case jsontext.Bool:
		return v.True
	case jsontext.Number:
		return json.Number(v.Text)
	case jsontext.Text:
		return v.Text
	case jsontext.List:
		list := []any{}
		for _, e := range v.List {
			list = append(list, plain(e))
		}
		return list
	case jsontext.Object:
		members := map[string]any{}
		for _, m := range v.Members {
			members[m.Name] = plain(m.Value)
		}
		return members
	}
	return nil
}

// FuzzRead holds the reader against the standard library's: it reads no text
// that the other refuses, reads the same from one that both take, and refuses
// only what is against its stricter rules.
func FuzzRead(f *testing.F) {
	for _, text := range []string{`{"a":[1,-2.5e+3,0.1,true,false,null,"x\u00e4\ud83c\udfb8\n"]}`, `{"a":1,"a":2}`, `[`, `01`, `1.`, `-`, `"\q"`,
		"\"\x01\"", `"` + "\xff" + `"`, ` [ ] `, `{"a" 1}`, `{"a":1,}`, `nul`, `"\ud800"`, `"\ud800\u0041"`, `1 2`, `[[[[[[[[[]]]]]]]]]`, `"\uD83C\uDFB8"`} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := jsontext.Read(text)
		d := json.NewDecoder(strings.NewReader(text))
		d.UseNumber()
		var want any
		valid := json.Valid([]byte(text)) && d.Decode(&want) == nil
		if err != nil {
			var e *jsontext.Error
			if !errors.As(err, &e) || e.Offset < 0 || e.Offset > len(text) {
				t.Fatalf("%q: %v", text, err)
			}
			strict := strings.Contains(e.Reason, "twice") || strings.Contains(e.Reason, "levels") || strings.Contains(e.Reason, "values") || !utf8.ValidString(text)
			if valid && !strict {
				t.Fatalf("%q is refused: %v", text, err)
			}
			return
		}
		if !valid {
			t.Fatalf("%q is read as %+v", text, v)
		}
		if strings.Contains(strings.ToLower(text), `\ud`) {
			return // halves of surrogate pairs, which the other does not keep
		}
		if diff := cmp.Diff(want, plain(v)); diff != "" {
			t.Fatalf("%q: %s", text, diff)
		}
	})
}

func standard(t testing.TB, v any) string {
	t.Helper()
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		t.Fatal(err)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func FuzzText(f *testing.F) {
	for _, text := range []string{"", "a\"b\\c/\b\f\n\r\t\x00\x7f", "<&>", "\u2028\u2029", "🎸ä", "\xff\xc3", "\xed\xa0\xbc"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var w jsontext.Writer
		w.Text("", text)
		if want := standard(t, text); utf8.ValidString(text) && string(w.Bytes()) != want {
			t.Fatalf("%q is written %s, want %s", text, w.Bytes(), want)
		}
		v, err := jsontext.Read(string(w.Bytes()))
		if err != nil || utf8.ValidString(text) && v.Text != text {
			t.Fatalf("%q is read back as %q, %v", text, v.Text, err)
		}
		// The standard library makes one unit of each half of a pair as well.
		var back string
		if err := json.Unmarshal(w.Bytes(), &back); err != nil {
			t.Fatal(err)
		}
		units := 0
		for _, r := range back {
			units++
			if r > 0xffff {
				units++
			}
		}
		if got := jsontext.Units(text); got != units {
			t.Fatalf("%q has %d units, want %d", text, got, units)
		}
	})
}

// A text of JavaScript may hold half a surrogate pair; it comes back as it is.
func TestHalvesOfPairsAreKept(t *testing.T) {
	for _, text := range []string{`"a\ud800b"`, `"\udfff"`, `"\udc00\ud800"`, `"\ud800\ud83c\udfb8"`} {
		v, err := jsontext.Read(text)
		if err != nil || utf8.ValidString(v.Text) {
			t.Errorf("%s is read as %q, %v", text, v.Text, err)
		}
		var w jsontext.Writer
		w.Text("", v.Text)
		if got := strings.ReplaceAll(string(w.Bytes()), "🎸", `\ud83c\udfb8`); got != text {
			t.Errorf("%s is written again as %s", text, got)
		}
	}
}

func FuzzFloat(f *testing.F) {
	for _, v := range []float64{0, 1, -2.5, 645.16, 1e21, 9.99e20, 1e-6, 9.9e-7, 1e-10, math.MaxFloat64, math.SmallestNonzeroFloat64, 1.0 / 3} {
		f.Add(v)
	}
	f.Fuzz(func(t *testing.T, v float64) {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return
		}
		var w jsontext.Writer
		w.Float("", v)
		if want := standard(t, v); string(w.Bytes()) != want {
			t.Fatalf("%v is written %s, want %s", v, w.Bytes(), want)
		}
	})
}

func TestWriter(t *testing.T) {
	var w jsontext.Writer
	w.Object("", func() {
		w.Text("open", "{")
		w.List("list", func() {
			w.Int("", -1)
			w.Bool("", true)
			w.Null("")
			w.List("", func() {})
			w.Object("", func() {})
		})
		w.Float("half", 0.5)
	})
	if got, want := string(w.Bytes()), `{"open":"{","list":[-1,true,null,[],{}],"half":0.5}`; got != want || w.Over() {
		t.Errorf("%s, want %s", got, want)
	}
}

func TestTheLimitOfAWriterHolds(t *testing.T) {
	w := jsontext.Writer{Limit: 100}
	w.List("", func() {
		for range 1000 {
			w.Text("", "ten bytes!")
		}
	})
	if !w.Over() || len(w.Bytes()) > 130 {
		t.Errorf("%d bytes, over: %t", len(w.Bytes()), w.Over())
	}
	w = jsontext.Writer{Limit: 100}
	w.Text("", "few")
	if w.Over() {
		t.Error("a short text is over the limit")
	}
}

func TestWithText(t *testing.T) {
	v, err := jsontext.Read(`{"a":{"b":"old","c":1},"d":"kept"}`)
	if err != nil {
		t.Fatal(err)
	}
	changed, ok := v.WithText("new", "a", "b")
	a, _ := changed.Member("a")
	b, _ := a.Member("b")
	before, _ := v.Member("a")
	old, _ := before.Member("b")
	if d, _ := changed.Member("d"); !ok || b.Text != "new" || old.Text != "old" || d.Text != "kept" {
		t.Errorf("%+v of %+v", changed, v)
	}
	if _, ok := v.WithText("new", "a", "x"); ok {
		t.Error("a member that is not there is changed")
	}
}
