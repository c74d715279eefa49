// Package cli is what the example programs have in common: flags that are texts
// until they are understood, errors shown with carets under the place, and
// output that is written whole or not at all.
package cli

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
	Played  = 0
	Refused = 2
)

// A Program is a whole program but for the process around it.
type Program struct {
	Name  string // stands in front of errors
	About string // -h prints it above the flags
	Stray string // what to do about an argument that is no flag
	Flags *flag.FlagSet
	File  *string // what the flag -o says
	// Play writes the output, given which flags stand on the command line.
	Play func(w io.Writer, given map[string]bool) error
}

// Run runs p and returns the exit code. It writes all output at once, so that
// an error leaves none behind.
func (p Program) Run(args []string, stdout, stderr io.Writer) int {
	given, err := p.parse(args)
	if errors.Is(err, flag.ErrHelp) {
		p.usage(stdout)
		return Played
	}
	if err == nil {
		err = p.play(stdout, given)
	}
	if err != nil {
		p.report(stderr, err)
		return Refused
	}
	return Played
}

func (p Program) play(stdout io.Writer, given map[string]bool) error {
	var out bytes.Buffer
	if err := p.Play(&out, given); err != nil {
		return err
	}
	if given["o"] && *p.File != "-" {
		return writeFile(*p.File, out.Bytes())
	}
	_, err := stdout.Write(out.Bytes())
	return err
}

// report prints the reason and the mend of an error and, if it has a place, the
// text with carets under the place.
func (p Program) report(w io.Writer, err error) {
	located, ok := err.(fretboard.Located)
	if !ok {
		fmt.Fprintf(w, "%s: %v\n", p.Name, err)
		return
	}
	place := located.Where()
	if p.Flags.Lookup(place.Notation) != nil {
		place.Notation = "-" + place.Notation
	}
	fmt.Fprintf(w, "%s: %v\n  %s\n", p.Name, place.Error(), strings.ReplaceAll(place.Caret(), "\n", "\n  "))
}

// usage prints the flags.
func (p Program) usage(w io.Writer) {
	fmt.Fprintf(w, "%s\n\nFlags:\n", p.About)
	p.Flags.SetOutput(w)
	p.Flags.PrintDefaults()
}
