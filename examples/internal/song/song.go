package song

import (
	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking"
)

// A Song is its texts understood.
type Song struct {
	Chart    picking.Progression
	Figures  picking.Figures
	Setting  picking.Setting
	Spelling fretboard.Spelling
}

// Read reads a song. Its errors are located in the text whose key is their
// notation.
func Read(t Texts) (Song, error) {
	s, err := ReadSetting(t)
	if err != nil {
		return s, err
	}
	if s.Chart, err = picking.ParseProgressionIn(t.get("chords"), s.Spelling); err != nil {
		return s, err
	}
	figure, given := t["figure"]
	if !given {
		figure = BuiltInFigure(s.Setting.Meter, s.Setting.Instrument.Tuning.Strings())
	}
	s.Figures, err = picking.ParseFigures(figure)
	return s, err
}

// ReadSetting reads all but the chords and the figure, text by text.
func ReadSetting(t Texts) (Song, error) {
	var song Song
	s := &song.Setting
	var capo int
	for _, err := range []error{
		cli.Read(&s.Meter, picking.ParseMeter, t.get("meter")),
		cli.Read(&s.Tempo, readTempo, t.get("tempo")),
		cli.Read(&s.Instrument.Tuning, fretboard.ParseTuning, t.get("tuning")),
		cli.Read(&capo, cli.Number("capo", "choose a fret; 0 means no capo"), t.get("capo")),
		cli.Read(&s.Instrument.Hand, fretboard.ParseHand, t.get("hand")),
		cli.Read(&s.Strokes, picking.ParseTradition, t.get("strokes")),
		cli.Read(&s.Fit, picking.ParseMoulding, t.get("fit")),
		cli.Read(&s.Change, picking.ParseChange, t.get("change")),
		cli.Read(&s.Fill, picking.ParseFill, t.get("fill")),
		cli.Read(&song.Spelling, fretboard.ParseSpelling, t.get("spelling")),
		cli.Read(&s.InTurn, readTruth("turn"), t.get("turn")),
		cli.Read(&s.Once, readTruth("once"), t.get("once")),
	} {
		if err != nil {
			return song, err
		}
	}
	s.Instrument.Capo, s.Title = fretboard.Fret(capo), t.get("title")
	return song, nil
}

// readTempo reads what Arrange checks, but for 0, which means the usual there.
func readTempo(text string) (int, error) {
	const mend = "choose 10 to 400 beats a minute"
	n, err := cli.Number("tempo", mend)(text)
	if err == nil && n == 0 {
		err = cli.Impossible("tempo", text, "not a tempo to practise at", mend)
	}
	return n, err
}

func readTruth(key string) func(string) (bool, error) {
	return func(text string) (bool, error) {
		i, err := fretboard.ParseName(key, []string{"no", "yes"}, text)
		return i == 1, err
	}
}

// Arrange carries the song's figures over its chords. Its errors are located as
// those of [Read] are.
func (s Song) Arrange() (picking.Passage, error) {
	return picking.Arrange(s.Chart, s.Figures, s.Setting)
}
