package main

import (
	"flag"
	"io"
	"time"

	"weft.example/examples/internal/cli"
	"weft.example/examples/internal/song"
)

// A request is what the command line asks for, not yet understood. given tells
// which flags stand on it.
type request struct {
	args                        []string
	texts                       map[string]*string // of the song, by its keys
	truths                      map[string]*bool
	format, count, staves, file string
	sheet                       song.Sheet
	countIn, click, material    string
	rounds, silent              string
	hush                        bool
	given                       map[string]bool
	now                         func() time.Time
	stderr                      io.Writer // for progress
}

// serves tells which formats each flag serves that does not serve them all.
var serves = cli.Serves{
	"count": "text",
	"paper": "svg", "size": "svg", "landscape": "svg",
	"staves":  "musicxml mxl",
	"countin": "midi wav", "click": "midi wav",
	"material": "wav", "repeat": "wav", "silent-bars": "wav", "hush": "wav",
}

func (r *request) flags() *flag.FlagSet {
	fs := cli.Flags("lesson")
	r.songFlags(fs)
	text := func(value *string, name, usual, help string) {
		fs.StringVar(value, name, usual, serves.Help(name)+help)
	}
	text(&r.format, "format", "text", "`form` of what is written: "+formatNames())
	text(&r.file, "o", "", "write to `file` instead of standard output")
	text(&r.count, "count", "auto", "count `words`: auto, beats, units, eighths or sixteenths")
	r.sheet.Flags(fs, serves.Help)
	text(&r.staves, "staves", "both", "`staves` of notation and tab: both, or tab alone")
	text(&r.countIn, "countin", "0", "`bars` of clicks before the first bar, 0 to 8")
	text(&r.click, "click", "off", "`clicks` through all bars: off or beats; in sound also divided, or auto: divided below 60 beats a minute")
	text(&r.material, "material", "steel", "`strings` of steel or nylon")
	text(&r.rounds, "repeat", "1", "play the whole part so many `rounds`, 1 to 999")
	text(&r.silent, "silent-bars", "", "`bars` with the guitar and without it, in turn, such as 4+2")
	fs.BoolVar(&r.hush, "hush", false, serves.Help("hush")+"no click either in the bars of -silent-bars")
	return fs
}

// songFlags adds the flags that say what is played.
func (r *request) songFlags(fs *flag.FlagSet) {
	r.texts, r.truths = map[string]*string{}, map[string]*bool{}
	for _, key := range song.Keys {
		usual, help := key.Usual, key.Help
		if key.Name == "chords" {
			usual, help = chords, help+"; - reads standard input"
		}
		if key.Truth {
			r.truths[key.Name] = fs.Bool(key.Name, false, help)
		} else {
			r.texts[key.Name] = fs.String(key.Name, usual, help)
		}
	}
}

// song returns what the command line says of the song.
func (r *request) song() song.Texts {
	texts := song.Texts{}
	for name, text := range r.texts {
		if r.given[name] {
			texts[name] = *text
		}
	}
	for name, truth := range r.truths {
		if *truth {
			texts[name] = "yes"
		}
	}
	return texts
}
