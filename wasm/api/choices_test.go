package api_test

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking"
	"weft.example/picking/musicxml"
	"weft.example/picking/svg"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
	"weft.example/voicing/changes"
)

// names lists those of a choice, as far as its parser takes them back.
func names[T interface {
	~uint8
	String() string
}](parse func(string) (T, error)) (list []string) {
	for c := T(0); ; c++ {
		if back, err := parse(c.String()); err != nil || back != c {
			return list
		}
		list = append(list, c.String())
	}
}

func TestChoicesAreThoseOfTheViews(t *testing.T) {
	e, _ := ask(t, "choices", map[string]any{})
	var got map[string]json.RawMessage
	if err := json.Unmarshal(e.Result, &got); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string][]string{
		"aim": names(changes.ParseAim), "count": names(picking.ParseCountWords), "paper": names(svg.ParsePaper), "staves": names(musicxml.ParseStaves),
		"material": names(synth.ParseMaterial), "click": names(synth.ParseClick), "sample": names(wav.ParseSample),
	} {
		var list []string
		if err := json.Unmarshal(got[name], &list); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, list); diff != "" || len(want) < 2 {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
