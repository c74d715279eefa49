package musicxml_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"weft.example/picking/musicxml"
	"weft.example/picking/pickingtest"
)

// The schema of MusicXML 4.0 (W3C Music Notation Community Group, repository
// w3c/musicxml, tag v4.0) is no part of the project. It is looked for in a
// folder musicxml-4.0 beside the repository, or where schemaVariable says, and
// xmllint (Debian package libxml2-utils) reads it.
const (
	schemaVariable = "WEFT_MUSICXML_SCHEMA"
	strictVariable = "CI_STRICT" // set where a skipped test is a failure
)

// schemaFolder returns the folder of the schema, or skips the test.
func schemaFolder(t *testing.T) string {
	t.Helper()
	folders := []string{os.Getenv(schemaVariable)}
	if folders[0] == "" {
		folders = nil
		for _, pattern := range []string{"../../../musicxml-4.0", "../../../*/musicxml-4.0"} {
			found, _ := filepath.Glob(pattern)
			folders = append(folders, found...)
		}
	}
	for _, folder := range folders {
		if _, err := os.Stat(filepath.Join(folder, "musicxml.xsd")); err == nil {
			return folder
		}
	}
	skip(t, "there is no schema: put it in a folder musicxml-4.0 beside the repository or name its folder in "+schemaVariable)
	return ""
}

// skip leaves a test out, loudly, or fails it where that is not allowed.
func skip(t *testing.T, why string) {
	t.Helper()
	if os.Getenv(strictVariable) != "" {
		t.Fatalf("NOT CHECKED against the schema, and %s is set: %s", strictVariable, why)
	}
	t.Skipf("SKIPPED, NOT CHECKED against the schema: %s", why)
}

// randoms is how many passages by chance the schema sees.
func randoms() int {
	if os.Getenv(strictVariable) != "" {
		return 1000
	}
	return 100
}

func TestEveryScoreIsValidByTheSchema(t *testing.T) {
	folder := schemaFolder(t)
	if _, err := exec.LookPath("xmllint"); err != nil {
		skip(t, "there is no xmllint: install libxml2-utils")
	}
	scores := t.TempDir()
	for _, c := range pickingtest.List() {
		write(t, filepath.Join(scores, c.Name+".musicxml"), encoded(t, c.Passage, musicxml.Options{}))
		write(t, filepath.Join(scores, c.Name+"-tab.musicxml"), encoded(t, c.Passage, musicxml.Options{Staves: musicxml.TabAlone}))
	}
	for seed := range uint64(randoms()) {
		p := pickingtest.Random(rand.New(rand.NewPCG(seed, 4)))
		o := musicxml.Options{Staves: musicxml.Staves(seed % 2)}
		write(t, filepath.Join(scores, fmt.Sprintf("random-%d.musicxml", seed)), encoded(t, p, o))
	}
	files, err := filepath.Glob(filepath.Join(scores, "*.musicxml"))
	if err != nil {
		t.Fatal(err)
	}
	if invalid := validate(t, folder, files...); invalid != "" {
		t.Error(invalid)
	}
	t.Logf("%d scores are valid", len(files))
}

// TestTheSchemaRefusesWhatIsWrong proves that the test above can fail.
func TestTheSchemaRefusesWhatIsWrong(t *testing.T) {
	folder := schemaFolder(t)
	if _, err := exec.LookPath("xmllint"); err != nil {
		skip(t, "there is no xmllint: install libxml2-utils")
	}
	good := encoded(t, pickingtest.List()[0].Passage, musicxml.Options{})
	for _, change := range [][2]string{
		{"<step>A</step>", "<step>H</step>"}, {"<duration>60</duration>", ""}, {`version="4.0"`, `edition="4.0"`},
		{"<kind", "<sort"}, {"<fret>0</fret>", "<fret>-1</fret>"},
	} {
		bad := strings.Replace(string(good), change[0], change[1], 1)
		file := filepath.Join(t.TempDir(), "bad.musicxml")
		write(t, file, []byte(bad))
		if bad == string(good) || validate(t, folder, file) == "" {
			t.Errorf("%q in place of %q is valid", change[1], change[0])
		}
	}
}

func write(t *testing.T, file string, data []byte) {
	t.Helper()
	if err := os.WriteFile(file, data, 0o666); err != nil {
		t.Fatal(err)
	}
}

// validate returns what xmllint says against files, all in one run.
func validate(t *testing.T, folder string, files ...string) string {
	t.Helper()
	arguments := append([]string{"--nonet", "--noout", "--schema", filepath.Join(folder, "musicxml.xsd")}, files...)
	command := exec.Command("xmllint", arguments...)
	command.Env = append(os.Environ(), "XML_CATALOG_FILES="+filepath.Join(folder, "catalog.xml"))
	said, err := command.CombinedOutput()
	if err == nil {
		return ""
	}
	var lines []string
	for line := range strings.Lines(string(said)) {
		if !bytes.HasSuffix([]byte(line), []byte(" validates\n")) && len(lines) < 20 {
			lines = append(lines, line)
		}
	}
	return err.Error() + "\n" + strings.Join(lines, "")
}
