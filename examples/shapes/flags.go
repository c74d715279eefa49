package main

import (
	"flag"
	"slices"
	"strings"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
)

// A request is what the command line asks for, not yet understood. given tells
// which flags stand on it.
type request struct {
	args                                   []string
	chord, name, path, capo                string
	count, low, high, span, fingers        string
	sounding, key, aim, figure             string
	tuning, behind, hand, spelling, format string
	file                                   string
	closed, bass, beginner, words, once    bool
	given                                  map[string]bool
}

// The four things that may be asked for, each a flag of that name.
var verbs = []string{"chord", "name", "path", "capo"}

// serves tells what each flag serves that does not serve everything.
var serves = map[string]string{
	"count": "chord capo", "words": "chord name path", "behind": "chord name path",
	"low": "chord path capo", "high": "chord path capo", "span": "chord path capo", "fingers": "chord path capo",
	"sounding": "chord path capo", "closed": "chord path capo", "bass": "chord path capo", "beginner": "chord path capo",
	"key": "name", "aim": "path capo", "once": "path capo", "figure": "path",
}

func (r *request) flags() *flag.FlagSet {
	fs := cli.Flags("shapes")
	text := func(value *string, name, usual, help string) { fs.StringVar(value, name, usual, servant(name)+help) }
	truth := func(value *bool, name, help string) { fs.BoolVar(value, name, false, servant(name)+help) }

	text(&r.chord, "chord", "", "find the shapes of a chord: its `symbol`")
	text(&r.name, "name", "", "name a `shape`: a fret, 0 or x for each string, the thickest first, such as x02210 or x-10-12-12-12-10")
	text(&r.path, "path", "", "find the shapes for a song: a `chart` of bars between |; - reads standard input; :beats, =shape and @figure may follow a chord")
	text(&r.capo, "capo", "", "find the fret for the capo: `chords` as they are to sound, or a chart; - reads standard input")

	text(&r.tuning, "tuning", "standard", "`name or notes` of the open strings, the thickest first: "+strings.Join(fretboard.TuningNames(), ", "))
	text(&r.behind, "behind", "0", "play behind a capo at this `fret`, from which the others then count")
	text(&r.hand, "hand", "right", "`way` of holding: right, left (restrung) or turned (not restrung)")
	text(&r.count, "count", "6", "list so `many` at the most, 1 to 100")
	text(&r.low, "low", "1", "hold no lower `fret`, open strings apart")
	text(&r.high, "high", "", "hold no higher `fret` (default the last)")
	text(&r.span, "span", "105", "hold no frets further apart than so many `millimetres`, 1 to 150")
	text(&r.fingers, "fingers", "4", "use so `many` fingers at the most, 1 to 4")
	text(&r.sounding, "sounding", "", "`strings` that may not be muted, such as \"4 3 2\"")
	truth(&r.closed, "closed", "no string may be open")
	truth(&r.bass, "bass", "the root, or the bass after a slash, must sound lowest")
	truth(&r.beginner, "beginner", "rank for hands that are new to the neck")
	text(&r.key, "key", "", "`key` that the shape is played in, such as G or F#m, which may tip the balance")
	text(&r.aim, "aim", "total", "what is to be least: the `total or worst` change, which is right for beginners")
	text(&r.figure, "figure", "", "picking `figure`, to tell which string is plucked first; several with ;")
	truth(&r.once, "once", "play once, rather than loop: no change leads back to the first chord")
	truth(&r.words, "words", "sentences to be read aloud instead of boxes")
	text(&r.spelling, "spelling", "english", "`names` of the notes in chords, keys and text, not in -tuning or JSON: english, german (H, and B for B flat; a for Am) or mixed (H, and Bb for B flat)")
	text(&r.format, "format", "text", "`text or json`")
	text(&r.file, "o", "", "write to `file` instead of standard output")
	return fs
}

// servant tells in a flag's help what the flag serves.
func servant(name string) string {
	if serves[name] == "" {
		return ""
	}
	return "(" + dashed(serves[name]) + ") "
}

func dashed(names string) string { return "-" + strings.ReplaceAll(names, " ", " -") }

// verb returns which one thing is asked for. The error is located in the
// arguments, also for a flag that does not serve it.
func (r *request) verb() (string, error) {
	fs := new(request).flags()
	if err := r.checkOnce(fs); err != nil {
		return "", err
	}
	verb := ""
	for _, name := range verbs {
		if !r.given[name] {
			continue
		}
		if verb != "" {
			second := max(cli.Find(fs, r.args, name), cli.Find(fs, r.args, verb))
			return "", cli.Misplaced(r.args, second, "a second thing to ask for", "ask for one of "+dashed(strings.Join(verbs, " "))+" at a time")
		}
		verb = name
	}
	if verb == "" {
		return "", cli.Misplaced(r.args, len(r.args), "nothing is asked for", "give one of "+dashed(strings.Join(verbs, " "))+"; -h explains them")
	}
	return verb, r.checkServants(fs, verb)
}

// checkOnce refuses a flag that is given again, of which one value would be
// passed over.
func (r *request) checkOnce(fs *flag.FlagSet) error {
	given := map[string]bool{}
	for i := 0; i < len(r.args); i++ {
		name, _, valued := strings.Cut(strings.TrimLeft(r.args[i], "-"), "=")
		if given[name] {
			return cli.Misplaced(r.args, i, "-"+name+" is given a second time", "give it once")
		}
		given[name] = true
		if f := fs.Lookup(name); !valued && f != nil && !isTruth(f) {
			i++ // its value
		}
	}
	return nil
}

func isTruth(f *flag.Flag) bool {
	truth, ok := f.Value.(interface{ IsBoolFlag() bool })
	return ok && truth.IsBoolFlag()
}

func (r *request) checkServants(fs *flag.FlagSet, verb string) error {
	for name := range r.given {
		if serves[name] != "" && !slices.Contains(strings.Fields(serves[name]), verb) {
			return cli.Misplaced(r.args, r.firstIdle(fs, verb), "it does not serve -"+verb, "leave it out; -h tells what it serves")
		}
	}
	return nil
}

// firstIdle returns the first argument that is a flag which does not serve verb.
func (r *request) firstIdle(fs *flag.FlagSet, verb string) int {
	first := len(r.args)
	for name, served := range serves {
		if r.given[name] && !slices.Contains(strings.Fields(served), verb) {
			first = min(first, cli.Find(fs, r.args, name))
		}
	}
	return first
}
