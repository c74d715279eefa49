package json

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// Version is the version of the form that this package reads and writes.
const Version = 1

// The types below are the form, field by field in the order of writing. A tag
// with omitempty marks a field that is left out where it does not apply; all
// others must be there.

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

type travelForm struct {
	Spacings    int                   `json:"spacings"`
	Millimetres fretboard.Millimetres `json:"millimetres"`
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

type startForm struct {
	String fretboard.StringNumber `json:"string"`
	Reason string                 `json:"reason"`
}

type fitForm struct {
	Strings  []fretboard.StringNumber `json:"strings"`
	CSIM     float64                  `json:"csim"`
	CPlusSIM float64                  `json:"cplussim"`
	Losses   []lossForm               `json:"losses"`
	Remarks  []string                 `json:"remarks"`
}

type lossForm struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Want string `json:"want"`
	Got  string `json:"got"`
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
