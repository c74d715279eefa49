package json

import (
	"bytes"
	std "encoding/json"
	"flag"
	"io"
	"math/rand/v2"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
)

var update = flag.Bool("update", false, "write the goldens anew")

func TestRoundTrip(t *testing.T) {
	properties := gopter.NewProperties(parameters(400))
	properties.Property("what is written comes back equal", prop.ForAll(func(seed int64) string {
		p := randomPassage(t, seed)
		back, err := Decode(bytes.NewReader(encoded(t, p)))
		if err != nil {
			return err.Error()
		}
		return cmp.Diff(p, back, sameAs)
	}, gen.Int64()))
	properties.Property("what comes back is written with the same bytes", prop.ForAll(func(seed int64) string {
		b := encoded(t, randomPassage(t, seed))
		back, err := Decode(bytes.NewReader(b))
		if err != nil {
			return err.Error()
		}
		return cmp.Diff(string(b), string(encoded(t, back)))
	}, gen.Int64()))
	properties.Property("a field changed by itself is refused or comes back changed", prop.ForAll(func(seed int64) string {
		b := encoded(t, randomPassage(t, seed))
		changed := changeOneField(t, b, rand.New(rand.NewPCG(uint64(seed), 1)))
		back, err := Decode(bytes.NewReader(changed))
		if err != nil {
			return ""
		}
		return cmp.Diff(string(changed), string(encoded(t, back)))
	}, gen.Int64()))
	properties.TestingRun(t)
}

// changeOneField returns the object with one of its texts, numbers and truths
// replaced by another.
func changeOneField(t testing.TB, b []byte, r *rand.Rand) []byte {
	t.Helper()
	f := formIn(t, b)
	leaves := leavesOf(nil, reflect.ValueOf(&f).Elem())
	switch leaf := leaves[r.IntN(len(leaves))]; leaf.Kind() {
	case reflect.String:
		leaf.SetString(pick(r, "down", "up", "same", "outside", "Am", "G", "E2", "root", "x02210", "repeat", "own", leaf.String()+"x"))
	case reflect.Bool:
		leaf.SetBool(!leaf.Bool())
	case reflect.Float64:
		leaf.SetFloat(leaf.Float() + pick(r, -1, 0.5, 1))
	default:
		leaf.SetInt(leaf.Int() + pick[int64](r, -480, -1, 1, 2, 480))
	}
	var out bytes.Buffer
	e := std.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(f); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func formIn(t testing.TB, b []byte) (f passageForm) {
	t.Helper()
	if err := std.Unmarshal(b, &f); err != nil {
		t.Fatal(err)
	}
	return f
}

func leavesOf(leaves []reflect.Value, v reflect.Value) []reflect.Value {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			leaves = leavesOf(leaves, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			leaves = leavesOf(leaves, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			leaves = leavesOf(leaves, v.Field(i))
		}
	default:
		leaves = append(leaves, v)
	}
	return leaves
}

// sample is a passage with all that the form has: a capo, silence, a slash
// bass, a chord whose root does not sound, a loss, an own stroke, a repeat, a
// cut figure and a figure that nothing plays.
func sample(t testing.TB) picking.Passage {
	return arrange(t, "|: Am=x02210 | N.C.:1 D=xx0232:3 :| G/B=x20003 | Am=xx0010@2", "1/8: 6 4 3 2u 1 2 3 4; 1/4: 4 2 1; 5",
		picking.Setting{Title: "Two boats & a <jetty>", Tempo: 66, Instrument: fretboard.Instrument{Capo: 3, Frets: 20}})
}

func TestGolden(t *testing.T) {
	const name = "testdata/sample.json"
	var got bytes.Buffer
	if err := std.Indent(&got, encoded(t, sample(t)), "", " "); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(name, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Error(diff)
	}
	back, err := Decode(bytes.NewReader(want))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(sample(t), back, sameAs); diff != "" {
		t.Error(diff)
	}
}

func TestTheLargestPassageFits(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	bars := strings.Repeat("Am=x02210 | G=320003 | ", picking.MaxBars/2-1) + "Am=x02210 | G=320003"
	figure := "1/64: " + strings.Repeat("5 3 2 1 ", picking.MaxSlots/4)
	p := arrange(t, bars, figure, picking.Setting{Meter: picking.Meter{Count: 4, Unit: 1}})
	b := encoded(t, p)
	back, err := Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(encoded(t, back), b) {
		t.Error("it comes back changed")
	}
	t.Logf("%d bytes", len(b))
}

func FuzzDecode(f *testing.F) {
	good := string(encoded(f, sample(f)))
	f.Add(good)
	f.Add(strings.Replace(good, `"loop":true`, `"loop":false`, 1))
	f.Add(strings.Replace(good, `"pass":2`, `"pass":1`, 1))
	for seed := range int64(12) {
		f.Add(string(encoded(f, randomPassage(f, seed))))
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := Decode(strings.NewReader(text))
		if err != nil {
			if !reflect.ValueOf(p).IsZero() {
				t.Fatal("a passage beside the error")
			}
			return
		}
		b := encoded(t, p)
		back, err := Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(p, back, sameAs); diff != "" {
			t.Fatal(diff)
		}
		if !bytes.Equal(encoded(t, back), b) {
			t.Fatal("other bytes the second time")
		}
	})
}

func sixteenBars(b *testing.B) picking.Passage {
	return arrange(b, "|: Am | G | Dm | E7 | C | G/B | F | E7 :|", "5 3 2 1 2 3", picking.Setting{Meter: picking.SixEight})
}

func BenchmarkEncode(b *testing.B) {
	p := sixteenBars(b)
	b.ReportAllocs()
	for b.Loop() {
		if err := Encode(io.Discard, p, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	text := encoded(b, sixteenBars(b))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Decode(bytes.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}
