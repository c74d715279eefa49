package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"weft.example/fretboard"
)

// The exit codes.
const (
	played  = 0
	refused = 2
)

// run is the whole program but for the process around it. It writes all of its
// output at once, so that an error leaves none behind.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	r, err := readFlags(args)
	if errors.Is(err, flag.ErrHelp) {
		usage(stdout)
		return played
	}
	if err == nil {
		err = r.play(stdin, stdout)
	}
	if err != nil {
		report(stderr, err)
		return refused
	}
	return played
}

func (r request) play(stdin io.Reader, stdout io.Writer) error {
	l, err := r.understand(stdin)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := l.write(&out); err != nil {
		return err
	}
	if r.given["o"] && r.file != "-" {
		return writeFile(r.file, out.Bytes())
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

// report prints the reason and the mend of an error and, if it has a place, the
// text with carets under the place.
func report(w io.Writer, err error) {
	located, ok := err.(fretboard.Located)
	if !ok {
		fmt.Fprintf(w, "lesson: %v\n", err)
		return
	}
	place := located.Where()
	if new(request).flags().Lookup(place.Notation) != nil {
		place.Notation = "-" + place.Notation
	}
	fmt.Fprintf(w, "lesson: %v\n  %s\n", place.Error(), strings.ReplaceAll(place.Caret(), "\n", "\n  "))
}
