package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"weft.example/fretboard"
)

// A request is what the command line asks for, not yet understood. given tells
// which flags stand on it.
type request struct {
	chords, figure, meter, tempo, tuning, capo, hand string
	strokes, fit, change, fill, count, spelling      string
	title, format, file                              string
	turn, once                                       bool
	given                                            map[string]bool
}

func (r *request) flags() *flag.FlagSet {
	fs := flag.NewFlagSet("lesson", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.Usage = func() {}
	for _, text := range []struct {
		value             *string
		name, usual, help string
	}{
		{&r.chords, "chords", chords, "`chart` of bars between |; - reads standard input; :beats, =shape and @figure may follow a chord"},
		{&r.figure, "figure", "", "picking `figure`: string numbers, - to let ring, . to rest, d or u for your own stroke; several with ; (default one that suits)"},
		{&r.meter, "meter", "4/4", "time `signature`"},
		{&r.tempo, "tempo", "80", "`beats` a minute, the beat being the meter's, 10 to 400"},
		{&r.tuning, "tuning", "standard", "`name or notes` of the open strings, the thickest first: " + strings.Join(fretboard.TuningNames(), ", ")},
		{&r.capo, "capo", "0", "`fret` of the capo"},
		{&r.hand, "hand", "right", "`way` of holding: right, left (restrung) or turned (not restrung)"},
		{&r.strokes, "strokes", "toward-next", "`tradition`: toward-next, economy, alternate, rest-stroke or jig"},
		{&r.fit, "fit", "contour", "`moulding` of the figure to the strings that sound: contour, bass or shift"},
		{&r.change, "change", "restart", "what a figure does when the chord changes: `restart or carry`"},
		{&r.fill, "fill", "again", "what a figure does that ends before its chord: `again or ring`"},
		{&r.count, "count", "auto", "count `words`: auto, beats, units, eighths or sixteenths"},
		{&r.spelling, "spelling", "english", "`names` of the notes in -chords and on the sheet, not in -tuning or JSON: english, german (H, and B for B flat; a for Am) or mixed (H, and Bb for B flat)"},
		{&r.title, "title", "", "`title` of the song"},
		{&r.format, "format", "text", "`text or json`"},
		{&r.file, "o", "", "write to `file` instead of standard output"},
	} {
		fs.StringVar(text.value, text.name, text.usual, text.help)
	}
	fs.BoolVar(&r.turn, "turn", false, "take the figures in turn, one a chord")
	fs.BoolVar(&r.once, "once", false, "play once and let the last chord ring, rather than loop")
	return fs
}

// readFlags reads the command line. The error is [flag.ErrHelp] or located in
// the arguments, set in a line.
func readFlags(args []string) (request, error) {
	r := request{given: map[string]bool{}}
	fs := r.flags()
	err := fs.Parse(args)
	fs.Visit(func(f *flag.Flag) { r.given[f.Name] = true })
	if err == nil && fs.NArg() > 0 {
		return r, misplaced(args, len(args)-fs.NArg(), "not a flag", "quote what belongs to one flag, such as -chords \"Am | G\"")
	}
	if err != nil && !errors.Is(err, flag.ErrHelp) {
		return r, misplaced(args, len(args)-fs.NArg()-1, fault(err), "-h lists the flags")
	}
	return r, err
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

// misplaced returns an error at argument i.
func misplaced(args []string, i int, reason, mend string) error {
	line := strings.Join(args, " ")
	at := len(strings.Join(args[:i], " "))
	if i > 0 {
		at++
	}
	return &fretboard.SyntaxError{Place: fretboard.Place{Notation: "arguments", Source: line, Offset: at,
		Length: len(args[i]), Reason: reason, Mend: mend}}
}

// usage prints the flags.
func usage(w io.Writer) {
	fmt.Fprint(w, "Lesson carries a picking figure over the chords of a song and prints the part.\n\n"+
		"  go run ./examples/lesson -chords \"Am | G | Dm | E\" -figure \"5 3 2 1 2 3\" -meter 6/8 -tempo 66\n\nFlags:\n")
	fs := new(request).flags()
	fs.SetOutput(w)
	fs.PrintDefaults()
}
