//go:build !sheets && !drawings

package api

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
)

// readWave reads the options of a file of sound.
func readWave(as *fields, _ fretboard.Spelling) encoder {
	f := wav.Format{Rate: readRate(as)}
	parsed(as, "sample", &f.Sample, wav.ParseSample)
	options := readBand(as, false)
	return encoder{file: func(w io.Writer, p picking.Passage) error {
		player, err := synth.New(f.Rate, p, options)
		if err != nil {
			return faultAt("as."+bandField(err), err)
		}
		if err := checkSize(f, player.Left()); err != nil {
			return err
		}
		return synth.Encode(w, p, f, options)
	}}
}

// checkSize refuses a file that would be too large.
func checkSize(f wav.Format, frames int64) error {
	size, err := f.Size(frames)
	if err == nil && size > MaxSound {
		err = &fault{code: impossible, field: "as", place: &fretboard.Place{Notation: "sound",
			Reason: "the file would be too large", Mend: "choose fewer bars or rounds, or a lower rate"}}
	}
	return err
}
