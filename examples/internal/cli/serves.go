package cli

import (
	"flag"
	"slices"
	"strings"
)

// Serves tells, by a flag's name, what the flag serves, names with spaces
// between them. A flag that is not listed serves everything.
type Serves map[string]string

// Help returns what a flag serves, as its help begins.
func (s Serves) Help(name string) string {
	if s[name] == "" {
		return ""
	}
	return "(" + strings.ReplaceAll(s[name], " ", ", ") + ") "
}

// Check refuses the first flag of args that does not serve what is asked for.
// says calls that by its name. The error is located in the arguments.
func (s Serves) Check(fs *flag.FlagSet, args []string, given map[string]bool, asked, says string) error {
	first := len(args)
	for name, served := range s {
		if given[name] && !slices.Contains(strings.Fields(served), asked) {
			first = min(first, Find(fs, args, name))
		}
	}
	if first == len(args) {
		return nil
	}
	return Misplaced(args, first, "it does not serve "+says, "leave it out; -h tells what it serves")
}
