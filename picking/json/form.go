package json

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// Version is the version of the form that this package reads and writes.
const Version = 1

// The types below are the objects of the form. The members of each are listed
// once, in the order of writing, for writing and for reading. (The tags serve
// only the tests, which change passages with the standard library.)

type passageForm struct {
	Version         int                   `json:"version"`
	Title           string                `json:"title"`
	Meter           string                `json:"meter"`
	Tempo           int                   `json:"tempo"`
	TicksPerQuarter picking.Ticks         `json:"ticksPerQuarter"`
	Tuning          string                `json:"tuning"`
	Frets           fretboard.Fret        `json:"frets"`
	Capo            fretboard.Fret        `json:"capo"`
	ScaleLength     fretboard.Millimetres `json:"scaleLength"`
	StringSpacing   fretboard.Millimetres `json:"stringSpacing"`
	Hand            string                `json:"hand"`
	Strokes         string                `json:"strokes"`
	Fit             string                `json:"fit"`
	Loop            bool                  `json:"loop"`
	Travel          travelForm            `json:"travel"`
	Remarks         []string              `json:"remarks"`
	Bars            []barForm             `json:"bars"`
}

func (f *passageForm) members(m members) {
	m.must("version", (*intValue)(&f.Version))
	m.must("title", (*textValue)(&f.Title))
	m.must("meter", (*textValue)(&f.Meter))
	m.must("tempo", (*intValue)(&f.Tempo))
	m.must("ticksPerQuarter", (*intValue)(&f.TicksPerQuarter))
	m.must("tuning", (*textValue)(&f.Tuning))
	m.must("frets", (*intValue)(&f.Frets))
	m.must("capo", (*intValue)(&f.Capo))
	m.must("scaleLength", (*floatValue)(&f.ScaleLength))
	m.must("stringSpacing", (*floatValue)(&f.StringSpacing))
	m.must("hand", (*textValue)(&f.Hand))
	m.must("strokes", (*textValue)(&f.Strokes))
	m.must("fit", (*textValue)(&f.Fit))
	m.must("loop", (*boolValue)(&f.Loop))
	m.must("travel", object{&f.Travel})
	m.must("remarks", (*textsValue)(&f.Remarks))
	m.must("bars", objects(&f.Bars))
}

type travelForm struct {
	Spacings    int                   `json:"spacings"`
	Millimetres fretboard.Millimetres `json:"millimetres"`
}

func (f *travelForm) members(m members) {
	m.must("spacings", (*intValue)(&f.Spacings))
	m.must("millimetres", (*floatValue)(&f.Millimetres))
}

type barForm struct {
	Number  int           `json:"number"`
	Written int           `json:"written"`
	Pass    int           `json:"pass"`
	At      picking.Ticks `json:"at"`
	Length  picking.Ticks `json:"length"`
	Chords  []chordForm   `json:"chords"`
	Picks   []pickForm    `json:"picks"`
}

func (f *barForm) members(m members) {
	m.must("number", (*intValue)(&f.Number))
	m.must("written", (*intValue)(&f.Written))
	m.must("pass", (*intValue)(&f.Pass))
	m.must("at", (*intValue)(&f.At))
	m.must("length", (*intValue)(&f.Length))
	m.must("chords", objects(&f.Chords))
	m.must("picks", objects(&f.Picks))
}

type chordForm struct {
	At     picking.Ticks          `json:"at"`
	Length picking.Ticks          `json:"length"`
	Symbol string                 `json:"symbol"`
	Sounds string                 `json:"sounds"`
	Figure int                    `json:"figure,omitempty"`
	Shape  string                 `json:"shape,omitempty"`
	Start  *startForm             `json:"start,omitempty"`
	Bass   fretboard.StringNumber `json:"bass,omitempty"`
	Root   fretboard.StringNumber `json:"root,omitempty"`
	Fit    *fitForm               `json:"fit,omitempty"`
}

func (f *chordForm) members(m members) {
	m.must("at", (*intValue)(&f.At))
	m.must("length", (*intValue)(&f.Length))
	m.must("symbol", (*textValue)(&f.Symbol))
	m.must("sounds", (*textValue)(&f.Sounds))
	m.may("figure", (*intValue)(&f.Figure))
	m.may("shape", (*textValue)(&f.Shape))
	m.may("start", optional(&f.Start))
	m.may("bass", (*intValue)(&f.Bass))
	m.may("root", (*intValue)(&f.Root))
	m.may("fit", optional(&f.Fit))
}

type startForm struct {
	String fretboard.StringNumber `json:"string"`
	Reason string                 `json:"reason"`
}

func (f *startForm) members(m members) {
	m.must("string", (*intValue)(&f.String))
	m.must("reason", (*textValue)(&f.Reason))
}

type fitForm struct {
	Strings  []fretboard.StringNumber `json:"strings"`
	CSIM     float64                  `json:"csim"`
	CPlusSIM float64                  `json:"cplussim"`
	Losses   []lossForm               `json:"losses"`
	Remarks  []string                 `json:"remarks"`
}

func (f *fitForm) members(m members) {
	m.must("strings", (*stringsValue)(&f.Strings))
	m.must("csim", (*floatValue)(&f.CSIM))
	m.must("cplussim", (*floatValue)(&f.CPlusSIM))
	m.must("losses", objects(&f.Losses))
	m.must("remarks", (*textsValue)(&f.Remarks))
}

type lossForm struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Want string `json:"want"`
	Got  string `json:"got"`
}

func (f *lossForm) members(m members) {
	m.must("from", (*intValue)(&f.From))
	m.must("to", (*intValue)(&f.To))
	m.must("want", (*textValue)(&f.Want))
	m.must("got", (*textValue)(&f.Got))
}

type pickForm struct {
	At       picking.Ticks          `json:"at"`
	Length   picking.Ticks          `json:"length"`
	Rings    picking.Ticks          `json:"rings"`
	Event    int                    `json:"event"`
	String   fretboard.StringNumber `json:"string"`
	Fret     fretboard.Fret         `json:"fret"`
	Pitch    fretboard.Pitch        `json:"pitch"`
	Note     string                 `json:"note"`
	Stroke   string                 `json:"stroke"`
	Why      string                 `json:"why"`
	Crossing string                 `json:"crossing,omitempty"`
	Travel   int                    `json:"travel"`
}

func (f *pickForm) members(m members) {
	m.must("at", (*intValue)(&f.At))
	m.must("length", (*intValue)(&f.Length))
	m.must("rings", (*intValue)(&f.Rings))
	m.must("event", (*intValue)(&f.Event))
	m.must("string", (*intValue)(&f.String))
	m.must("fret", (*intValue)(&f.Fret))
	m.must("pitch", (*intValue)(&f.Pitch))
	m.must("note", (*textValue)(&f.Note))
	m.must("stroke", (*textValue)(&f.Stroke))
	m.must("why", (*textValue)(&f.Why))
	m.may("crossing", (*textValue)(&f.Crossing))
	m.must("travel", (*intValue)(&f.Travel))
}
