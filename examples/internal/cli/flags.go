package cli

import (
	"errors"
	"flag"
	"io"
	"strings"

	"weft.example/fretboard"
)

// Flags returns an empty set of flags that prints nothing by itself.
func Flags(program string) *flag.FlagSet {
	fs := flag.NewFlagSet(program, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.Usage = func() {}
	return fs
}

// parse reads the command line and tells which flags stand on it. The error is
// [flag.ErrHelp] or located in the arguments.
func (p Program) parse(args []string) (map[string]bool, error) {
	err := p.Flags.Parse(args)
	given := map[string]bool{}
	p.Flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	if err == nil && p.Flags.NArg() > 0 {
		return nil, Misplaced(args, len(args)-p.Flags.NArg(), "not a flag", p.Stray)
	}
	if err != nil && !errors.Is(err, flag.ErrHelp) {
		return nil, Misplaced(args, len(args)-p.Flags.NArg()-1, fault(err), "-h lists the flags")
	}
	return given, err
}

// fault returns what the flag package found wrong, without the argument itself,
// which may be long.
func fault(err error) string {
	reason, _, _ := strings.Cut(err.Error(), ": ")
	if strings.HasPrefix(reason, "invalid boolean value") {
		return "neither true nor false"
	}
	return reason
}

// Misplaced returns an error at argument i, or after the last one, located in
// the arguments set in a line.
func Misplaced(args []string, i int, reason, mend string) error {
	at := len(strings.Join(args[:i], " "))
	if i > 0 {
		at++
	}
	length := 0
	if i < len(args) {
		length = len(args[i])
	}
	source := strings.Join(args, " ")
	return &fretboard.SyntaxError{Place: fretboard.Place{Notation: "arguments", Source: source, Offset: min(at, len(source)),
		Length: length, Reason: reason, Mend: mend}}
}

// Find returns which of the arguments, which fs can read, is the flag of that
// name, the last of several, or -1.
func Find(fs *flag.FlagSet, args []string, name string) int {
	found := -1
	for i := 0; i < len(args); i++ {
		flagName, _, valued := strings.Cut(strings.TrimLeft(args[i], "-"), "=")
		if flagName == name {
			found = i
		}
		if !valued && !takesNone(fs.Lookup(flagName)) {
			i++ // its value
		}
	}
	return found
}

func takesNone(f *flag.Flag) bool {
	if f == nil {
		return true
	}
	truth, ok := f.Value.(interface{ IsBoolFlag() bool })
	return ok && truth.IsBoolFlag()
}
