package musicxml_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking/musicxml"
	"weft.example/picking/pickingtest"
)

var update = flag.Bool("update", false, "write the golden files anew")

// goldens are the listed passages whose scores stand as files: between them
// they hold every element that is written.
var goldens = map[string]musicxml.Options{
	"smallest":       {},
	"usual":          {Staves: musicxml.TabAlone},
	"capo":           {},
	"triplets-held":  {},
	"repeat-one-bar": {},
	"silence-within": {Staves: musicxml.TabAlone},
	"turned":         {Staves: musicxml.TabAlone},
	"hold-over":      {},
	"spelled-far":    {},
}

func TestGoldenScores(t *testing.T) {
	compared := 0
	for _, c := range pickingtest.List() {
		o, stands := goldens[c.Name]
		if !stands {
			continue
		}
		compared++
		got := encoded(t, c.Passage, o)
		path := filepath.Join("testdata", c.Name+".musicxml")
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
			t.Errorf("%s: %s", c.Name, cmp.Diff(string(want), string(got)))
		}
	}
	files, err := filepath.Glob("testdata/*.musicxml")
	if err != nil || len(files) != len(goldens) || compared != len(goldens) {
		t.Errorf("%d golden files, %d to be, %d compared, %v", len(files), len(goldens), compared, err)
	}
}
