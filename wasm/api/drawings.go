//go:build !lessons && !sheets

package api

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/svg"
)

// Drawings writes drawn sheets, and notes for sequencers.
func Drawings(l *Library) {
	l.options["svg"] = readDrawing
	l.options["midi"] = readMIDI
	l.writes()
}

func readDrawing(as *fields, spelling fretboard.Spelling) encoder {
	o := svg.Options{Spelling: spelling, Landscape: as.truth("landscape"), Size: as.within("size", 12, 36, 0)}
	parsed(as, "paper", &o.Paper, svg.ParsePaper)
	return encoder{
		file:  func(w io.Writer, p picking.Passage) error { return svg.Encode(w, p, o) },
		pages: func(p picking.Passage) ([][]byte, error) { return svg.Pages(p, o) },
	}
}

func readMIDI(as *fields, _ fretboard.Spelling) encoder {
	o := midi.Options{OneTrack: as.truth("oneTrack"), CountIn: as.within("countIn", 0, mostCountIn, 0), Click: as.truth("click")}
	return encoder{file: func(w io.Writer, p picking.Passage) error { return midi.Encode(w, p, o) }}
}
