package main

import (
	"encoding/json"
	"io"

	"weft.example/examples/internal/cli"
)

// run is the whole program but for the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	r := request{args: args}
	return cli.Program{
		Name: "shapes",
		About: "Shapes finds, names and strings together the shapes of chords. Ask for one of\n\n" +
			"  go run ./examples/shapes -chord Bbmaj7 -tuning DADGAD\n" +
			"  go run ./examples/shapes -name x02210\n" +
			"  go run ./examples/shapes -path \"Am | F | C G/B | E7\" -figure \"5 3 2 1 2 3\"\n" +
			"  go run ./examples/shapes -capo \"Bb Eb F Gm\"",
		Stray: "quote what belongs to one flag, such as -path \"Am | G\"",
		Flags: r.flags(),
		File:  &r.file,
		Play: func(w io.Writer, given map[string]bool) error {
			r.given = given
			return r.play(stdin, w)
		},
	}.Run(args, stdout, stderr)
}

// An answer is all that is to be said, as JSON has it; write says it in text.
type answer interface{ write(*sheet) }

func (r *request) play(stdin io.Reader, w io.Writer) error {
	verb, err := r.verb()
	if err != nil {
		return err
	}
	s, err := r.understand(verb)
	if err != nil {
		return flagged(err)
	}
	a, err := s.answer(r, stdin)
	if err != nil {
		return flagged(err)
	}
	if s.format == cli.JSONFormat {
		return encode(w, a)
	}
	page := sheet{spelling: s.spelling, words: r.words}
	a.write(&page)
	_, err = io.WriteString(w, page.out.String())
	return err
}

func (s *setting) answer(r *request, stdin io.Reader) (answer, error) {
	switch s.verb {
	case "chord":
		return s.findChord(r)
	case "name":
		return s.nameShape(r.name)
	case "path":
		return s.findPath(r, stdin)
	}
	return s.findCapos(r, stdin)
}

// encode writes an answer as JSON, its symbols as they are: G# and not an escape.
func encode(w io.Writer, a answer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(a)
}
