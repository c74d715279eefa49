package main

import (
	"fmt"
	"io"
	"strconv"

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
	format  int
	sheet   text.Options
}

const (
	textFormat = iota
	jsonFormat
)

var formats = []string{textFormat: "text", jsonFormat: "json"}

// understand parses the request flag by flag. Its errors are located in the
// flag that they concern.
func (r request) understand(stdin io.Reader) (lesson, error) {
	var l lesson
	s := &l.setting
	var tempo, capo int
	for _, err := range []error{
		read(&s.Meter, picking.ParseMeter, r.meter),
		read(&tempo, number("tempo", "choose 10 to 400 beats a minute"), r.tempo),
		read(&s.Instrument.Tuning, fretboard.ParseTuning, r.tuning),
		read(&capo, number("capo", "choose a fret; 0 means no capo"), r.capo),
		read(&s.Instrument.Hand, fretboard.ParseHand, r.hand),
		read(&s.Strokes, picking.ParseTradition, r.strokes),
		read(&s.Fit, picking.ParseMoulding, r.fit),
		read(&s.Change, picking.ParseChange, r.change),
		read(&s.Fill, picking.ParseFill, r.fill),
		read(&l.sheet.Count, text.ParseCountWords, r.count),
		read(&l.sheet.Spelling, fretboard.ParseSpelling, r.spelling),
		read(&l.format, func(t string) (int, error) { return fretboard.ParseName("format", formats, t) }, r.format),
	} {
		if err != nil {
			return l, err
		}
	}
	if tempo == 0 { // which would mean the usual one
		return l, impossible("tempo", r.tempo, "not a tempo to practise at", "choose 10 to 400 beats a minute")
	}
	s.Tempo, s.Instrument.Capo, s.InTurn, s.Once = tempo, fretboard.Fret(capo), r.turn, r.once
	if s.Title = r.title; !r.given["title"] && !r.given["chords"] {
		s.Title = title
	}
	return l, l.readSong(r, stdin)
}

func (l *lesson) readSong(r request, stdin io.Reader) (err error) {
	chart, spelling := r.chords, l.sheet.Spelling
	if !r.given["chords"] {
		spelling = fretboard.English // that of the song built in
	}
	if chart == "-" {
		if chart, err = readBounded(stdin); err != nil {
			return err
		}
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
	if l.format == jsonFormat {
		return json.Encode(w, part, json.Options{})
	}
	return text.Encode(w, part, l.sheet)
}

// read parses a flag's text into value.
func read[T any](value *T, parse func(string) (T, error), text string) (err error) {
	*value, err = parse(text)
	return err
}

// number returns a parser of whole numbers.
func number(notation, mend string) func(string) (int, error) {
	return func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || strconv.Itoa(n) != text {
			return 0, &fretboard.SyntaxError{Place: fretboard.Place{Notation: notation, Source: text,
				Length: len(text), Reason: "not a whole number", Mend: mend}}
		}
		return n, nil
	}
}

// readBounded reads a chart from standard input, a little more than a chart may
// be long at most.
func readBounded(stdin io.Reader) (string, error) {
	chart, err := io.ReadAll(io.LimitReader(stdin, fretboard.MaxText+1))
	if err != nil {
		return "", fmt.Errorf("standard input: %w", err)
	}
	if len(chart) > fretboard.MaxText {
		return "", &fretboard.ImpossibleError{Place: fretboard.Place{Notation: "chords", Source: string(chart),
			Offset: fretboard.MaxText, Reason: fmt.Sprintf("more than %d bytes of text", fretboard.MaxText), Mend: "split the song"}}
	}
	return string(chart), nil
}

func impossible(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{Notation: notation, Source: text, Length: len(text),
		Reason: reason, Mend: mend}}
}
