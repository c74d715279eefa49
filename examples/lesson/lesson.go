package main

import (
	"io"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/json"
	"weft.example/picking/text"
)

// A lesson is a request understood.
type lesson struct {
	song    picking.Progression
	figures picking.Figures
	setting picking.Setting
	format  cli.Format
	sheet   text.Options
}

// understand parses the request flag by flag. Its errors are located in the
// flag that they concern.
func (r request) understand(stdin io.Reader) (lesson, error) {
	var l lesson
	s := &l.setting
	var tempo, capo int
	for _, err := range []error{
		cli.Read(&s.Meter, picking.ParseMeter, r.meter),
		cli.Read(&tempo, cli.Number("tempo", "choose 10 to 400 beats a minute"), r.tempo),
		cli.Read(&s.Instrument.Tuning, fretboard.ParseTuning, r.tuning),
		cli.Read(&capo, cli.Number("capo", "choose a fret; 0 means no capo"), r.capo),
		cli.Read(&s.Instrument.Hand, fretboard.ParseHand, r.hand),
		cli.Read(&s.Strokes, picking.ParseTradition, r.strokes),
		cli.Read(&s.Fit, picking.ParseMoulding, r.fit),
		cli.Read(&s.Change, picking.ParseChange, r.change),
		cli.Read(&s.Fill, picking.ParseFill, r.fill),
		cli.Read(&l.sheet.Count, text.ParseCountWords, r.count),
		cli.Read(&l.sheet.Spelling, fretboard.ParseSpelling, r.spelling),
		cli.Read(&l.format, cli.ParseFormat, r.format),
	} {
		if err != nil {
			return l, err
		}
	}
	if tempo == 0 { // which would mean the usual one
		return l, cli.Impossible("tempo", r.tempo, "not a tempo to practise at", "choose 10 to 400 beats a minute")
	}
	s.Tempo, s.Instrument.Capo, s.InTurn, s.Once = tempo, fretboard.Fret(capo), r.turn, r.once
	if s.Title = r.title; !r.given["title"] && !r.given["chords"] {
		s.Title = title
	}
	return l, l.readSong(r, stdin)
}

func (l *lesson) readSong(r request, stdin io.Reader) error {
	spelling := l.sheet.Spelling
	if !r.given["chords"] {
		spelling = fretboard.English // that of the song built in
	}
	chart, err := cli.ReadChart("chords", r.chords, stdin)
	if err != nil {
		return err
	}
	if l.song, err = picking.ParseProgressionIn(chart, spelling); err != nil {
		return err
	}
	figure := r.figure
	if !r.given["figure"] {
		figure = builtInFigure(l.setting.Meter, l.setting.Instrument.Tuning.Strings())
	}
	l.figures, err = picking.ParseFigures(figure)
	return err
}

// write arranges the lesson and writes it in its format.
func (l lesson) write(w io.Writer) error {
	part, err := picking.Arrange(l.song, l.figures, l.setting)
	if err != nil {
		return err
	}
	if l.format == cli.JSONFormat {
		return json.Encode(w, part, json.Options{})
	}
	return text.Encode(w, part, l.sheet)
}
