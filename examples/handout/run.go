package main

import (
	"context"
	"errors"
	"flag"
	"io"
	"time"

	"weft.example/examples/internal/cli"
	"weft.example/examples/internal/song"
	"weft.example/fretboard"
	"weft.example/picking/svg"
)

// A request is what the command line asks for, not yet understood.
type request struct {
	args     []string
	from, to string
	sheet    song.Sheet
	now      func() time.Time
	stderr   io.Writer // for progress
}

func (r *request) flags() *flag.FlagSet {
	fs := cli.Flags("handout")
	fs.StringVar(&r.from, "from", "", "read the songs from this `folder`: text files whose names end in .txt")
	fs.StringVar(&r.to, "to", "", "write the pages to this `folder`, which is made if it is not there")
	r.sheet.Flags(fs, func(string) string { return "" })
	return fs
}

// run is the whole program but for the process around it; ctx ends at an
// interrupt.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	return runAt(ctx, time.Now, args, stdout, stderr)
}

// runAt is run by a clock, which tells only when to say how far it is.
func runAt(ctx context.Context, now func() time.Time, args []string, stdout, stderr io.Writer) int {
	r := request{args: args, now: now, stderr: stderr}
	return cli.Program{
		Name: "handout",
		About: "Handout turns a folder of songs into a folder of sheets to print.\n\n" +
			"  go run ./examples/handout -from songs -to sheets -paper letter -size 24\n\n" +
			"A song is a text file of lines such as\n\n" +
			"  title: Rain on the Boathouse\n" +
			"  chords: Am | Em | G | C G/B\n" +
			"  figure: 5 3 2 1 2 3\n\n" +
			"The other keys are flags of the program lesson, whose -h explains them.",
		Stray: "name the folders with -from and -to",
		Flags: r.flags(),
		Play: func(w io.Writer, given map[string]bool) error {
			return r.play(ctx, w, given)
		},
	}.Run(args, stdout, stderr)
}

func (r *request) play(ctx context.Context, w io.Writer, given map[string]bool) error {
	if !given["from"] || !given["to"] {
		return cli.Misplaced(r.args, len(r.args), "a folder is missing", "give -from and -to, such as -from songs -to sheets")
	}
	if r.to == "" {
		return cli.Impossible("to", "", "no name", "choose a folder")
	}
	o, err := r.sheet.Read(fretboard.English)
	if err != nil {
		return err
	}
	songs, unread, err := list(r.from)
	if err != nil {
		return err
	}
	h := handout{request: r, options: o, songs: songs}
	if err := h.checkWay(); err != nil {
		return err
	}
	wrong := h.draw(ctx)
	if !errors.Is(wrong, cli.ErrInterrupted) {
		wrong = errors.Join(wrong, h.writeIndex())
	}
	h.tell(w, unread)
	return wrong
}

// A handout is a run: what it is to do and what it has done.
type handout struct {
	*request
	options svg.Options
	songs   []source
	drawn   []entry
}
