package main

import (
	"io"

	"weft.example/examples/internal/cli"
)

// run is the whole program but for the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	var r request
	return cli.Program{
		Name: "lesson",
		About: "Lesson carries a picking figure over the chords of a song and prints the part.\n\n" +
			"  go run ./examples/lesson -chords \"Am | G | Dm | E\" -figure \"5 3 2 1 2 3\" -meter 6/8 -tempo 66",
		Stray: "quote what belongs to one flag, such as -chords \"Am | G\"",
		Flags: r.flags(),
		File:  &r.file,
		Play: func(w io.Writer, given map[string]bool) error {
			r.given = given
			return r.play(stdin, w)
		},
	}.Run(args, stdout, stderr)
}

func (r request) play(stdin io.Reader, w io.Writer) error {
	l, err := r.understand(stdin)
	if err != nil {
		return err
	}
	return l.write(w)
}
