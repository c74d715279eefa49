// Answers writes what the library answers natively to the requests of the tests,
// and what it sounds like, for the tests of the loader to hold theirs against.
//
//	go run ./wasm/loadertest/answers wasm/api/testdata >answers.json
package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"weft.example/wasm/api"
)

// A question is asked, and answered.
type question struct {
	Name    string          `json:"name"`
	Ask     string          `json:"ask"`
	Request json.RawMessage `json:"request"`
	Answer  json.RawMessage `json:"answer"`
	File    string          `json:"file,omitempty"` // SHA-256
}

type report struct {
	Questions []question `json:"questions"`
	Sound     sound      `json:"sound"`
}

// A sound is what a player fills.
type sound struct {
	Request json.RawMessage   `json:"request"`
	Size    int               `json:"size"` // of each fill
	Filled  []json.RawMessage `json:"filled"`
	Samples string            `json:"samples"` // SHA-256 of the bytes of left and right in turn
}

func main() {
	if err := run(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "answers:", err)
		os.Exit(1)
	}
}

func run(dir string) error {
	l := api.New(api.Lessons, api.Shapes, api.Readings, api.Scores, api.Drawings, api.Sounds)
	var all report
	for _, name := range []string{"requests.json", "writings.json"} {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		var questions []question
		if err := json.Unmarshal(data, &questions); err != nil {
			return err
		}
		for _, q := range questions {
			answer, file := ask(l, q.Ask, q.Request)
			q.Answer = answer
			if len(file) > 0 {
				q.File = sum(file)
			}
			all.Questions = append(all.Questions, q)
		}
	}
	all.Sound = play(l)
	return json.NewEncoder(os.Stdout).Encode(all)
}

func ask(l *api.Library, what string, request json.RawMessage) (json.RawMessage, []byte) {
	answer, file := l.Answer(`{"version":1,"ask":"` + what + `","request":` + string(request) + `}`)
	return json.RawMessage(answer), file
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

// play fills six times with a player of the first sound opened.
func play(l *api.Library) sound {
	s := sound{Size: 5000, Request: json.RawMessage(
		`{"song":{"chords":"Am=x02210 | E=022100","figures":"5 3 2 1"},"rate":22050,"countIn":1,"click":"divided","endless":true,"tempo":240}`)}
	ask(l, "sound", s.Request)
	var samples bytes.Buffer
	for range 12 {
		left, right := make([]float32, s.Size), make([]float32, s.Size)
		s.Filled = append(s.Filled, json.RawMessage(l.Fill(1, left, right)))
		for _, channel := range [][]float32{left, right} {
			binary.Write(&samples, binary.LittleEndian, channel) // into memory, which takes all
		}
	}
	s.Samples = sum(samples.Bytes())
	return s
}
