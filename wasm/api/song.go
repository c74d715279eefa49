package api

import (
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/wasm/internal/jsontext"
)

// A song is what is played and how, understood.
type song struct {
	chart    picking.Progression
	figures  picking.Figures
	setting  picking.Setting
	spelling fretboard.Spelling
}

// readSong reads the field song.
func readSong(f *fields) (s song) {
	f = f.object("song")
	readSpelling(f, &s.spelling)
	readChart(f, &s.chart, s.spelling)
	parsed(f, "figures", &s.figures, picking.ParseFigures)
	f.need("figures")
	s.setting.Title, _ = f.text("title")
	parsed(f, "meter", &s.setting.Meter, picking.ParseMeter)
	s.setting.Tempo = f.within("tempo", picking.MinTempo, picking.MaxTempo, 0)
	s.setting.Instrument = readInstrument(f)
	parsed(f, "strokes", &s.setting.Strokes, picking.ParseTradition)
	parsed(f, "fit", &s.setting.Fit, picking.ParseMoulding)
	parsed(f, "change", &s.setting.Change, picking.ParseChange)
	parsed(f, "fill", &s.setting.Fill, picking.ParseFill)
	s.setting.InTurn = f.truth("inTurn")
	s.setting.Once = f.truth("once")
	f.done()
	return s
}

func readSpelling(f *fields, to *fretboard.Spelling) {
	parsed(f, "spelling", to, fretboard.ParseSpelling)
}

func readChart(f *fields, to *picking.Progression, spelling fretboard.Spelling) {
	parsed(f, "chords", to, func(text string) (picking.Progression, error) {
		return picking.ParseProgressionIn(text, spelling)
	})
	f.need("chords")
}

// arrange returns the passage of the song.
func (s song) arrange() (picking.Passage, error) {
	p, err := picking.Arrange(s.chart, s.figures, s.setting)
	if err != nil {
		return p, faultAt("song."+fieldOf(err), err)
	}
	return p, nil
}

// fieldOf names the field that an error about a song or an instrument concerns.
func fieldOf(err error) string {
	located, ok := err.(fretboard.Located)
	if !ok {
		return ""
	}
	switch name := located.Where().Notation; name {
	case "figure":
		return "figures"
	case "scale length":
		return "scaleLength"
	case "string spacing":
		return "stringSpacing"
	case "lowest fret":
		return "low"
	case "highest fret":
		return "high"
	case "chord", "chords", "title", "meter", "tempo", "strokes", "fit", "change", "fill", "tuning",
		"frets", "capo", "hand", "shape", "span", "fingers", "key":
		return name
	default:
		return camel(name)
	}
}

// camel writes words as one: count-in becomes countIn.
func camel(name string) string {
	out := make([]byte, 0, len(name))
	for i := range len(name) {
		c := name[i]
		if c == ' ' || c == '-' {
			continue
		}
		if i > 0 && (name[i-1] == ' ' || name[i-1] == '-') && 'a' <= c && c <= 'z' {
			c -= 'a' - 'A'
		}
		out = append(out, c)
	}
	return string(out)
}

// readInstrument reads the fields that describe what the player holds.
func readInstrument(f *fields) (g fretboard.Instrument) {
	parsed(f, "tuning", &g.Tuning, fretboard.ParseTuning)
	g.Frets = fretboard.Fret(f.within("frets", 1, int(fretboard.MaxFrets), 0))
	capo, _ := f.whole("capo")
	g.Capo = fretboard.Fret(capo)
	g.Scale = f.length("scaleLength")
	g.Spacing = f.length("stringSpacing")
	parsed(f, "hand", &g.Hand, fretboard.ParseHand)
	normal, err := g.Normal()
	if err != nil {
		f.fail(faultAt(f.path+fieldOf(err), err))
	}
	return normal
}

// readLimits reads the fields that say which shapes may be held.
func readLimits(f *fields, g fretboard.Instrument) (o voicing.Options) {
	low, _ := f.whole("low")
	high, _ := f.whole("high")
	o.Low, o.High = fretboard.Fret(low), fretboard.Fret(high)
	o.Span = f.length("span")
	o.Fingers = f.within("fingers", 1, 4, 0)
	o.Closed = f.truth("closed")
	o.BassLow = f.truth("bassLow")
	if f.truth("beginner") {
		o.Weights = voicing.Beginner()
	}
	list, _ := f.get("sounding", jsontext.List)
	for _, v := range list.List {
		if v.Kind != jsontext.Number {
			f.refuse("sounding", v.Kind.String()+" where a string's number is wanted")
			continue
		}
		n, ok := f.wholeOf("sounding", v, true)
		switch s := fretboard.StringNumber(n); {
		case !ok:
		case s < 1 || s > g.Tuning.Strings():
			f.outside("sounding", v.Text, "name strings that the instrument has")
		default:
			o.Sounding = o.Sounding.With(s)
		}
	}
	return o
}
