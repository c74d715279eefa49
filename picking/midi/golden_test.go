package midi_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/midi/smftest"
	"weft.example/picking/pickingtest"
)

var update = flag.Bool("update", false, "write the golden files anew")

// goldens are the cases that stand as files, to be listened to.
var goldens = map[string]midi.Options{
	"usual":           {CountIn: 1},
	"twelve-strings":  {},
	"unisons":         {OneTrack: true},
	"rests-and-holds": {Click: true},
	"slowest":         {},
	"once":            {},
}

func TestGoldenFiles(t *testing.T) {
	met := 0
	for _, c := range pickingtest.List() {
		o, golden := goldens[c.Name]
		if !golden {
			continue
		}
		met++
		got, path := encoded(t, c.Passage, o), filepath.Join("testdata", c.Name+".mid")
		if *update {
			if err := os.WriteFile(path, got, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s (-want +got)\n%s", path, cmp.Diff(listed(t, want), listed(t, got)))
		}
	}
	if files, _ := filepath.Glob("testdata/*.mid"); met != len(goldens) || len(files) != met {
		t.Errorf("%d golden files, %d cases, %d names", len(files), met, len(goldens))
	}
}

func listed(t *testing.T, file []byte) string {
	t.Helper()
	lines, err := smftest.Read(file)
	if err != nil {
		return err.Error()
	}
	return strings.Join(lines, "\n")
}

func caseNamed(t testing.TB, name string) picking.Passage {
	t.Helper()
	for _, c := range pickingtest.List() {
		if c.Name == name {
			return c.Passage
		}
	}
	t.Fatal("no case ", name)
	return picking.Passage{}
}

func BenchmarkEncode(b *testing.B) {
	for _, name := range []string{"sixteen-bars", "most-bars"} {
		p := caseNamed(b, name)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var out bytes.Buffer
				if err := midi.Encode(&out, p, midi.Options{}); err != nil {
					b.Fatal(err)
				}
				b.SetBytes(int64(out.Len()))
			}
		})
	}
}
