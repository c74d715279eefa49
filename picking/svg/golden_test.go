package svg_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking/svg"
)

var update = flag.Bool("update", false, "write the golden files anew")

// goldens are the sheets that stand as files, by the names of their passages.
var goldens = []struct {
	passage string
	options svg.Options
}{
	{"usual", svg.Options{}},
	{"repeats", svg.Options{Size: 24, Paper: svg.Letter, Landscape: true}},
	{"alternate", svg.Options{Landscape: true}},
	{"twelve-strings", svg.Options{Paper: svg.Letter}},
	{"losses", svg.Options{Size: 36}},
}

func TestGoldenSheets(t *testing.T) {
	for _, g := range goldens {
		t.Run(g.passage, func(t *testing.T) {
			var b bytes.Buffer
			if err := svg.Encode(&b, listed(t, g.passage), g.options); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join("testdata", g.passage+".svg")
			if *update {
				if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(b.Bytes(), want) {
				t.Error(cmp.Diff(string(want), b.String()))
			}
		})
	}
}

// TestEveryGoldenFileHasAPassage finds files that no test reads any more.
func TestEveryGoldenFileHasAPassage(t *testing.T) {
	files, err := filepath.Glob("testdata/*.svg")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(goldens) {
		t.Errorf("%d golden files, %d passages", len(files), len(goldens))
	}
}
