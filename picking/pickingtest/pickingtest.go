// Package pickingtest supports the tests of what writes passages: it lists
// passages that are apart from the usual, makes others by chance and checks
// what every encoder must survive.
package pickingtest

import (
	"fmt"

	"weft.example/picking"
)

// A Case is a passage to try an encoder on.
type Case struct {
	Name    string // letters, digits and hyphens, good for a file's name
	Why     string // what is apart from the usual
	Passage picking.Passage
}

// List returns the cases, arranged anew on each call, so that no caller can
// change another's. All name their shapes but the one called found, so that a
// better finder changes no other.
func List() []Case {
	cases := make([]Case, len(songs))
	for i, s := range songs {
		cases[i] = Case{s.name, s.why, s.arrange()}
	}
	return cases
}

// A song is what a case is made of.
type song struct {
	name, why       string
	chords, figures string
	setting         picking.Setting
}

// arrange returns the passage of a song, which must be good.
func (s song) arrange() picking.Passage {
	p, err := arrange(s.chords, s.figures, s.setting)
	if err != nil {
		panic(fmt.Sprintf("pickingtest: %s: %v", s.name, err))
	}
	return p
}

func arrange(chords, figures string, s picking.Setting) (picking.Passage, error) {
	chart, err := picking.ParseProgression(chords)
	if err != nil {
		return picking.Passage{}, err
	}
	parsed, err := picking.ParseFigures(figures)
	if err != nil {
		return picking.Passage{}, err
	}
	return picking.Arrange(chart, parsed, s)
}
