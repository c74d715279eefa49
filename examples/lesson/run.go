package main

import (
	"io"
	"time"

	"weft.example/examples/internal/cli"
)

// run is the whole program but for the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return runAt(time.Now, args, stdin, stdout, stderr)
}

// runAt is run by a clock, which tells only when to say how far a sound is.
func runAt(now func() time.Time, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	r := request{args: args, now: now, stderr: stderr}
	return cli.Program{
		Name: "lesson",
		About: "Lesson carries a picking figure over the chords of a song and writes the part,\n" +
			"to read, to hear or for other programs.\n\n" +
			"  go run ./examples/lesson -chords \"Am | G | Dm | E\" -figure \"5 3 2 1 2 3\" -meter 6/8 -tempo 66\n" +
			"  go run ./examples/lesson -format svg -size 24 -o sheet.svg",
		Stray: "quote what belongs to one flag, such as -chords \"Am | G\"",
		Flags: r.flags(),
		File:  &r.file,
		Play: func(w io.Writer, given map[string]bool) error {
			r.given = given
			return r.play(stdin, w)
		},
	}.Run(args, stdout, stderr)
}

func (r *request) play(stdin io.Reader, w io.Writer) error {
	s, encode, err := r.understand(stdin)
	if err != nil {
		return err
	}
	p, err := s.Arrange()
	if err != nil {
		return err
	}
	return encode(w, p)
}
