package json

import (
	"bytes"
	std "encoding/json"
	"errors"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// checkAsStandard holds the checker against encoding/json of the standard
// library: the same texts are JSON, and of others the same place and reason
// are wrong.
func checkAsStandard(t *testing.T, text []byte) {
	t.Helper()
	c := checker{text: text}
	c.check()
	var into any
	err := std.Unmarshal(text, &into)
	var wrong *std.SyntaxError
	if !errors.As(err, &wrong) {
		if c.reason != "" {
			t.Errorf("%.80q is JSON, got %s", text, c.reason)
		}
		return
	}
	// It counts the bytes read, the offending one too, and not the end.
	if at := min(c.at, len(text)-1); c.reason != wrong.Error() || len(text) > 0 && at != int(wrong.Offset)-1 {
		t.Errorf("%.80q: got byte %d, %s; want byte %d, %s", text, at, c.reason, wrong.Offset-1, wrong)
	}
}

func FuzzSyntax(f *testing.F) {
	for _, text := range []string{"", " ", "[]", "{}", "[1,]", `{"a"`, `{"a":`, `{"a":1,`, `{"a":1,}`, `{"a" 1}`, `{a}`, `[1 2]`, "[[", "]", "1 1",
		"tru", "truE", "nul", "fa", "-", "-a", "01", "1.", "1.x", "1e", "1e+", "1e+x", "-0.5E-7", `"`, `"\`, `"\x"`, `"\u12`, `"\u12g4"`,
		"\"\t\"", `"\"\\\/\b\f\n\r\t\u00e9\ud834\udd1e"`, "[1,-2.5e3 ,\"x\", null,true,false,{\"a\":{\"b\":[]}}] ", "'", "\"a\"b", "\u00e9",
		strings.Repeat("[", maxDepth) + strings.Repeat("]", maxDepth), strings.Repeat("[", maxDepth+1), strings.Repeat(`{"a":`, maxDepth+1)} {
		f.Add([]byte(text))
	}
	f.Add(encoded(f, sample(f)))
	f.Fuzz(checkAsStandard)
}

func TestSyntax(t *testing.T) {
	good := encoded(t, sample(t))
	properties := gopter.NewProperties(parameters(2000))
	properties.Property("a byte changed is a fault where the standard library finds it", prop.ForAll(func(seed int64) bool {
		r := rand.New(rand.NewPCG(uint64(seed), 2))
		text := bytes.Clone(good[:1+r.IntN(len(good))])
		text[r.IntN(len(text))] = pick[byte](r, '{', '}', '[', ']', ',', ':', '"', '\\', '0', '-', '.', 'e', 't', ' ', 'x')
		checkAsStandard(t, text)
		return !t.Failed()
	}, gen.Int64()))
	properties.TestingRun(t)
}

func TestFormsAreWrittenAsTheStandardLibraryDoes(t *testing.T) {
	properties := gopter.NewProperties(parameters(200))
	properties.Property("the same bytes", prop.ForAll(func(seed int64, title string) string {
		if !utf8.ValidString(title) {
			title = ""
		}
		f := formIn(t, encoded(t, randomPassage(t, seed)))
		f.Title += title + "\"\\/<>&\b\f\n\r\t\x00\x1f\x7f\u2028\u2029𝄞"
		f.Remarks = append(f.Remarks, title)
		r := rand.New(rand.NewPCG(uint64(seed), 3))
		for _, n := range []*float64{(*float64)(&f.ScaleLength), (*float64)(&f.StringSpacing), (*float64)(&f.Travel.Millimetres)} {
			*n = pick(r, 0, 1e-9, 9.99e-7, 1e-6, 1e20, 1e21, -1.5e-300, 645.16, r.NormFloat64())
		}
		var want bytes.Buffer
		e := std.NewEncoder(&want)
		e.SetEscapeHTML(false)
		if err := e.Encode(f); err != nil {
			t.Fatal(err)
		}
		var got writer
		got.object(&f)
		if diff := cmp.Diff(strings.TrimSuffix(want.String(), "\n"), string(got.out)); diff != "" {
			return diff
		}
		var back passageForm
		if err := (&reader{text: got.out}).object(&back); err != nil {
			return err.Error()
		}
		return cmp.Diff(formIn(t, want.Bytes()), back, sameAs)
	}, gen.Int64(), gen.AnyString()))
	properties.TestingRun(t)
}
