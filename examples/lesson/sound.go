package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
)

const mostCountIn, mostRounds = 8, 999

// soundEncoder parses what serves sound.
func soundEncoder(r *request, _ fretboard.Spelling) (encoder, error) {
	var o synth.Options
	for _, err := range []error{
		cli.Read(&o.CountIn, cli.Within("countin", 0, mostCountIn), r.countIn),
		cli.Read(&o.Click, synth.ParseClick, r.click),
		cli.Read(&o.Material, synth.ParseMaterial, r.material),
		cli.Read(&o.Rounds, cli.Within("repeat", 1, mostRounds), r.rounds),
		r.readSilentBars(&o),
	} {
		if err != nil {
			return nil, err
		}
	}
	return func(w io.Writer, p picking.Passage) error { return r.encodeSound(w, p, o) }, nil
}

// readSilentBars reads bars with and without the guitar, such as 4+2.
func (r *request) readSilentBars(o *synth.Options) error {
	if !r.given["silent-bars"] {
		if r.hush {
			return cli.Misplaced(r.args, cli.Find(new(request).flags(), r.args, "hush"),
				"no bars are silent", "say which with -silent-bars, such as -silent-bars 4+2")
		}
		return nil
	}
	const notation = "silent-bars"
	with, without, two := strings.Cut(r.silent, "+")
	if !two {
		return &fretboard.SyntaxError{Place: fretboard.Place{Notation: notation, Source: r.silent, Length: len(r.silent),
			Reason: "not two numbers of bars", Mend: "write such as 4+2: 4 bars with the guitar, then 2 without"}}
	}
	number := cli.Within(notation, 1, picking.MaxBars)
	if err := cli.Read(&o.Sounding, number, with); err != nil {
		return fretboard.Within(err, notation, r.silent, 0)
	}
	if err := cli.Read(&o.Silent, number, without); err != nil {
		return fretboard.Within(err, notation, r.silent, len(with)+1)
	}
	if o.Hush = r.hush; o.Hush && o.Click == synth.NoClick {
		return cli.Misplaced(r.args, cli.Find(new(request).flags(), r.args, "hush"),
			"no click is on", "choose one with -click, such as -click beats, or leave -hush out")
	}
	return nil
}

// checkRounds refuses what would change nothing: silent bars after the end, and
// rounds of what is played once.
func (r *request) checkRounds(p picking.Passage, o synth.Options) error {
	if bars := len(p.Bars) * max(1, o.Rounds); o.Silent > 0 && o.Sounding >= bars {
		return cli.Impossible("silent-bars", r.silent, fmt.Sprintf("the sound ends after %s", barCount(bars)),
			"choose fewer bars with the guitar, or more rounds with -repeat")
	}
	if !p.Loop && o.Rounds > 1 {
		return cli.Impossible("repeat", r.rounds, "-once plays the song once", "leave -once or -repeat out")
	}
	return nil
}

func barCount(n int) string {
	if n == 1 {
		return "1 bar"
	}
	return fmt.Sprint(n, " bars")
}

// encodeSound writes sound and says on standard error how far it is, if it
// takes more than a second.
func (r *request) encodeSound(w io.Writer, p picking.Passage, o synth.Options) error {
	if err := r.checkRounds(p, o); err != nil {
		return err
	}
	format, err := wav.Format{}.Normal()
	if err != nil {
		return err
	}
	player, err := synth.New(format.Rate, p, o)
	if err != nil {
		return err
	}
	frames := player.Left()
	size, err := format.Size(frames)
	if err != nil {
		return cli.Impossible("repeat", r.rounds, "a WAV file holds no more than 4 GiB, some 6 hours", "choose fewer rounds or a higher tempo")
	}
	length := time.Duration(frames/int64(format.Rate)) * time.Second
	return synth.Encode(&progress{Writer: w, report: r.stderr, size: size, length: length, now: r.now, last: r.now()}, p, format, o)
}

// A progress says once a second how much of a sound is written.
type progress struct {
	io.Writer
	report     io.Writer
	size, done int64 // in bytes
	length     time.Duration
	now        func() time.Time
	last       time.Time
}

func (p *progress) Write(b []byte) (int, error) {
	n, err := p.Writer.Write(b)
	p.done += int64(n)
	if now := p.now(); err == nil && now.Sub(p.last) >= time.Second {
		p.last = now
		fmt.Fprintf(p.report, "lesson: %d %% of %v of sound\n", p.done*100/p.size, p.length)
	}
	return n, err
}
