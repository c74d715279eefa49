package api_test

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/wasm/api"
)

var update = flag.Bool("update", false, "write the goldens anew")

// A question is a request of the files in testdata, which the tests of the
// loader ask as well.
type question struct {
	Name    string          `json:"name"`
	Ask     string          `json:"ask"`
	Request json.RawMessage `json:"request"`
}

func (q question) text() string {
	return `{"version":1,"ask":"` + q.Ask + `","request":` + string(q.Request) + `}`
}

func questions(t testing.TB, file string) (list []question) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", file))
	if err == nil {
		err = json.Unmarshal(data, &list)
	}
	if err != nil || len(list) == 0 {
		t.Fatalf("%d questions, %v", len(list), err)
	}
	return list
}

func all() *api.Library {
	return api.New(api.Lessons, api.Shapes, api.Readings, api.Scores, api.Drawings, api.Sounds)
}

// An envelope is an answer as a caller reads it, whatever the result.
type envelope struct {
	Version int             `json:"version"`
	OK      bool            `json:"ok"`
	Result  json.RawMessage `json:"result"`
	Error   *failure        `json:"error"`
}

type failure struct {
	Code    string `json:"code"`
	Message string `json:"message"`
	Field   string `json:"field"`
	Place   *place `json:"place"`
}

type place struct {
	Notation string  `json:"notation"`
	Source   *string `json:"source"`
	Offset   int     `json:"offset"`
	Length   int     `json:"length"`
	Reason   string  `json:"reason"`
	Mend     string  `json:"mend"`
	Mends    []struct {
		Write string `json:"write"`
		Text  string `json:"text"`
	} `json:"mends"`
}

// open reads an answer, which must be an envelope and nothing else.
func open(t testing.TB, answer string) (e envelope) {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(answer))
	d.DisallowUnknownFields()
	if err := d.Decode(&e); err != nil || d.More() {
		t.Fatalf("no envelope: %v\n%s", err, answer)
	}
	if e.Version != api.Version || e.OK != (e.Error == nil) || e.OK == (len(e.Result) == 0) {
		t.Fatalf("an envelope that contradicts itself: %s", answer)
	}
	return e
}

func TestAnswersAreTheGoldens(t *testing.T) {
	for _, q := range questions(t, "requests.json") {
		answer, file := all().Answer(q.text())
		e := open(t, answer)
		if strings.Contains(q.Name, "-no-") == e.OK && q.Ask != "tune" {
			t.Errorf("%s: %.300s", q.Name, answer)
		}
		if len(file) > 0 {
			t.Errorf("%s: a file of %d bytes", q.Name, len(file))
		}
		name := filepath.Join("testdata", "answers", q.Name+".json")
		answer += "\n"
		if *update {
			if err := os.WriteFile(name, []byte(answer), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), answer); diff != "" {
			t.Errorf("%s: %s", q.Name, diff)
		}
	}
}

// A golden that no request leads to tells nothing.
func TestEveryGoldenIsAsked(t *testing.T) {
	asked := map[string]bool{}
	for _, q := range questions(t, "requests.json") {
		asked[q.Name+".json"] = true
	}
	files, err := os.ReadDir(filepath.Join("testdata", "answers"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !asked[f.Name()] {
			t.Errorf("nothing asks for %s", f.Name())
		}
	}
}
