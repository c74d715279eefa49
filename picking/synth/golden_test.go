package synth_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/pickingtest"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
)

var update = flag.Bool("update", false, "write the golden file anew")

// TestGolden holds the bytes of short files against sums that were made on one
// processor; the tests run on others.
func TestGolden(t *testing.T) {
	p := arranged(t, "Am=x02210 | G=320003 N.C.", "1/16: 5 3 2 1 2 3 . 2", picking.Setting{Tempo: 160})
	var got strings.Builder
	for _, rate := range []int{8000, 44100, 48000} {
		for material := range synth.Material(2) {
			for sample := range wav.Sample(2) {
				o := synth.Options{Material: material, Rounds: 2, CountIn: 1, Click: synth.DividedClick, Seed: 7}
				sum := sha256.New()
				if err := synth.Encode(sum, p, wav.Format{Rate: rate, Sample: sample}, o); err != nil {
					t.Fatal(err)
				}
				fmt.Fprintln(&got, rate, material, sample, hex.EncodeToString(sum.Sum(nil)))
			}
		}
	}
	const path = "testdata/sums.txt"
	if *update {
		if err := os.WriteFile(path, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got.String() {
		t.Errorf("got\n%swant\n%s", got.String(), want)
	}
}

// TestEncodeSurvives tries what every encoder must survive, at a low rate for
// the sake of time.
func TestEncodeSurvives(t *testing.T) {
	if testing.Short() {
		t.Skip("long passages")
	}
	pickingtest.Check(t, func(w io.Writer, p picking.Passage) error {
		f := wav.Format{Rate: 8000, Channels: 1}
		for _, pick := range p.Picks() {
			if pick.Pitch > 100 {
				f.Rate = 32000
			}
		}
		return synth.Encode(w, p, f, synth.Options{Tempo: picking.MaxTempo, To: min(32, len(p.Bars))})
	})
}

func TestEncodeWritesWhatIsRendered(t *testing.T) {
	p := sparse(t)
	left, right, err := synth.Render(11025, p, synth.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, channels := range []int{1, 2} {
		f := wav.Format{Rate: 11025, Channels: channels, Sample: wav.Float32}
		var file, want bytes.Buffer
		if err := synth.Encode(&file, p, f, synth.Options{}); err != nil {
			t.Fatal(err)
		}
		sound := [][]float32{left, right}
		if channels == 1 {
			sound = [][]float32{make([]float32, len(left))}
			for i := range left {
				sound[0][i] = (left[i] + right[i]) / 2
			}
		}
		out, err := wav.NewWriter(&want, f, int64(len(left)))
		if err != nil {
			t.Fatal(err)
		}
		if err := out.Write(sound...); err != nil || out.Close() != nil || !bytes.Equal(file.Bytes(), want.Bytes()) {
			t.Errorf("%d channels: other bytes, %v", channels, err)
		}
	}
	for _, refused := range []error{
		synth.Encode(io.Discard, p, wav.Format{Channels: 3}, synth.Options{}),
		synth.Encode(io.Discard, p, wav.Format{Rate: 7999}, synth.Options{}),
		synth.Encode(io.Discard, p, wav.Format{}, synth.Options{Rounds: synth.Endless}),
		synth.Encode(io.Discard, p, wav.Format{Sample: wav.Float32, Rate: 192000}, synth.Options{Rounds: 999}),
	} {
		if refused == nil {
			t.Error("a file that cannot be is written")
		}
	}
}
