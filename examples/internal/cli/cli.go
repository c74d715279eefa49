// Package cli is what the example programs have in common: flags that are texts
// until they are understood, errors shown with carets under the place, and
// files that are written whole or not at all.
package cli

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"weft.example/fretboard"
)

// The exit codes. The last is what shells give a program that an interrupt ends.
const (
	Played      = 0
	Refused     = 2
	Interrupted = 130
)

// ErrInterrupted is the error of what an interrupt stopped.
var ErrInterrupted = errors.New("interrupted")

// A Program is a whole program but for the process around it.
type Program struct {
	Name  string // stands in front of errors
	About string // -h prints it above the flags
	Stray string // what to do about an argument that is no flag
	Flags *flag.FlagSet
	File  *string // what the flag -o says; nil without that flag
	// Play writes the output, given which flags stand on the command line. What
	// it refuses, it refuses before it writes. It may join several errors.
	Play func(w io.Writer, given map[string]bool) error
}

// Run runs p and returns the exit code.
func (p Program) Run(args []string, stdout, stderr io.Writer) int {
	given, err := p.parse(args)
	if errors.Is(err, flag.ErrHelp) {
		p.usage(stdout)
		return Played
	}
	if err == nil {
		err = p.play(stdout, given)
	}
	if err == nil {
		return Played
	}
	for _, one := range each(err) {
		p.report(stderr, one)
	}
	if errors.Is(err, ErrInterrupted) {
		return Interrupted
	}
	return Refused
}

func (p Program) play(stdout io.Writer, given map[string]bool) error {
	if given["o"] && *p.File != "-" {
		return writeFile("o", *p.File, func(w io.Writer) error { return p.Play(w, given) })
	}
	out := bufio.NewWriter(stdout)
	err := p.Play(out, given)
	if flushed := out.Flush(); err == nil {
		err = flushed
	}
	return err
}

// each returns the errors that err joins, or err alone.
func each(err error) (all []error) {
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return []error{err}
	}
	for _, one := range joined.Unwrap() {
		all = append(all, each(one)...)
	}
	return all
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
