package main

import (
	"io"

	"weft.example/examples/internal/cli"
	"weft.example/examples/internal/song"
	"weft.example/fretboard"
	"weft.example/picking"
)

// understand parses the request flag by flag. Its errors are located in the
// flag that they concern, or in the arguments.
func (r *request) understand(stdin io.Reader) (song.Song, encoder, error) {
	f, err := r.chosenFormat()
	if err != nil {
		return song.Song{}, nil, err
	}
	texts := r.song()
	setting, err := song.ReadSetting(texts)
	if err != nil {
		return setting, nil, err
	}
	encode, err := f.encoder(r, setting.Spelling)
	if err != nil {
		return setting, nil, err
	}
	if err := r.complete(texts, setting.Spelling, stdin); err != nil {
		return setting, nil, err
	}
	s, err := song.Read(texts)
	return s, encode, err
}

// complete fills in the built-in song, or the chart from standard input.
func (r *request) complete(t song.Texts, s fretboard.Spelling, stdin io.Reader) (err error) {
	if r.given["chords"] {
		t["chords"], err = cli.ReadChart("chords", t["chords"], stdin)
		return err
	}
	t["chords"] = chords
	if s != fretboard.English {
		t["chords"] = picking.MustParseProgression(chords).StringIn(s)
	}
	if !r.given["title"] {
		t["title"] = title
	}
	return nil
}
