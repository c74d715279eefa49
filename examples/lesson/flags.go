package main

import (
	"flag"
	"strings"

	"weft.example/examples/internal/cli"
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
	fs := cli.Flags("lesson")
	fs.StringVar(&r.chords, "chords", chords, "`chart` of bars between |; - reads standard input; :beats, =shape and @figure may follow a chord")
	fs.StringVar(&r.figure, "figure", "", "picking `figure`: string numbers, - to let ring, . to rest, d or u for your own stroke; several with ; (default one that suits)")
	fs.StringVar(&r.meter, "meter", "4/4", "time `signature`")
	fs.StringVar(&r.tempo, "tempo", "80", "`beats` a minute, the beat being the meter's, 10 to 400")
	fs.StringVar(&r.tuning, "tuning", "standard", "`name or notes` of the open strings, the thickest first: "+strings.Join(fretboard.TuningNames(), ", "))
	fs.StringVar(&r.capo, "capo", "0", "`fret` of the capo")
	fs.StringVar(&r.hand, "hand", "right", "`way` of holding: right, left (restrung) or turned (not restrung)")
	fs.StringVar(&r.strokes, "strokes", "toward-next", "`tradition`: toward-next, economy, alternate, rest-stroke or jig")
	fs.StringVar(&r.fit, "fit", "contour", "`moulding` of the figure to the strings that sound: contour, bass or shift")
	fs.StringVar(&r.change, "change", "restart", "what a figure does when the chord changes: `restart or carry`")
	fs.StringVar(&r.fill, "fill", "again", "what a figure does that ends before its chord: `again or ring`")
	fs.StringVar(&r.count, "count", "auto", "count `words`: auto, beats, units, eighths or sixteenths")
	fs.StringVar(&r.spelling, "spelling", "english", "`names` of the notes in -chords and on the sheet, not in -tuning or JSON: english, german (H, and B for B flat; a for Am) or mixed (H, and Bb for B flat)")
	fs.StringVar(&r.title, "title", "", "`title` of the song")
	fs.StringVar(&r.format, "format", "text", "`text or json`")
	fs.StringVar(&r.file, "o", "", "write to `file` instead of standard output")
	fs.BoolVar(&r.turn, "turn", false, "take the figures in turn, one a chord")
	fs.BoolVar(&r.once, "once", false, "play once and let the last chord ring, rather than loop")
	return fs
}
