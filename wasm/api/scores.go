//go:build !lessons && !drawings

package api

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// Scores writes scores for notation programs.
func Scores(l *Library) {
	l.options["musicxml"] = readScore
	l.options["mxl"] = readCompressedScore
	l.writes()
}

func readScore(as *fields, _ fretboard.Spelling) encoder {
	o := readStaves(as)
	return encoder{file: func(w io.Writer, p picking.Passage) error { return musicxml.Encode(w, p, o) }}
}

func readCompressedScore(as *fields, _ fretboard.Spelling) encoder {
	o := readStaves(as)
	return encoder{file: func(w io.Writer, p picking.Passage) error { return musicxml.EncodeCompressed(w, p, o) }}
}

func readStaves(as *fields) (o musicxml.Options) {
	parsed(as, "staves", &o.Staves, musicxml.ParseStaves)
	return o
}
