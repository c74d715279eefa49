package main

import (
	"io"
	"strings"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/json"
	"weft.example/picking/midi"
	"weft.example/picking/musicxml"
	"weft.example/picking/svg"
	"weft.example/picking/synth"
	"weft.example/picking/text"
	"weft.example/picking/words"
)

// An encoder writes a passage in a format, its options chosen.
type encoder func(w io.Writer, p picking.Passage) error

// A format is a form of output. encoder parses the flags that serve it; its
// errors are located in the flag that they concern.
type format struct {
	name    string
	encoder func(r *request, s fretboard.Spelling) (encoder, error)
}

// formats are listed by a function, as they need the request, whose flags list
// them.
func formats() []format {
	return []format{
		{"text", textEncoder}, {"json", jsonEncoder}, {"svg", svgEncoder},
		{"words", wordsEncoder(words.Options{})}, {"html", wordsEncoder(words.Options{HTML: true})},
		{"musicxml", scoreEncoder(musicxml.Encode)}, {"mxl", scoreEncoder(musicxml.EncodeCompressed)},
		{"midi", midiEncoder}, {"wav", soundEncoder},
	}
}

func names() (names []string) {
	for _, f := range formats() {
		names = append(names, f.name)
	}
	return names
}

func formatNames() string { return strings.Join(names(), ", ") }

// chosenFormat returns the format asked for, and refuses flags that do not
// serve it.
func (r *request) chosenFormat() (format, error) {
	i, err := fretboard.ParseName("format", names(), r.format)
	if err != nil {
		return format{}, err
	}
	f := formats()[i]
	return f, serves.Check(new(request).flags(), r.args, r.given, f.name, "-format "+f.name)
}

// with returns an encoder that has its options.
func with[O any](encode func(io.Writer, picking.Passage, O) error, o O) encoder {
	return func(w io.Writer, p picking.Passage) error { return encode(w, p, o) }
}

func textEncoder(r *request, s fretboard.Spelling) (encoder, error) {
	o := text.Options{Spelling: s}
	err := cli.Read(&o.Count, picking.ParseCountWords, r.count)
	return with(text.Encode, o), err
}

func jsonEncoder(*request, fretboard.Spelling) (encoder, error) {
	return with(json.Encode, json.Options{}), nil
}

func svgEncoder(r *request, s fretboard.Spelling) (encoder, error) {
	o, err := r.sheet.Read(s)
	return with(svg.Encode, o), err
}

func wordsEncoder(o words.Options) func(*request, fretboard.Spelling) (encoder, error) {
	return func(*request, fretboard.Spelling) (encoder, error) { return with(words.Encode, o), nil }
}

func scoreEncoder(encode func(io.Writer, picking.Passage, musicxml.Options) error) func(*request, fretboard.Spelling) (encoder, error) {
	return func(r *request, _ fretboard.Spelling) (encoder, error) {
		var o musicxml.Options
		err := cli.Read(&o.Staves, musicxml.ParseStaves, r.staves)
		return with(encode, o), err
	}
}

func midiEncoder(r *request, _ fretboard.Spelling) (encoder, error) {
	var o midi.Options
	var click synth.Click
	for _, err := range []error{
		cli.Read(&o.CountIn, cli.Within("countin", 0, mostCountIn), r.countIn),
		cli.Read(&click, synth.ParseClick, r.click),
	} {
		if err != nil {
			return nil, err
		}
	}
	if click != synth.NoClick && click != synth.BeatClick {
		return nil, cli.Impossible("click", r.click, "a MIDI file clicks on the beats", "choose beats or off")
	}
	o.Click = click == synth.BeatClick
	return with(midi.Encode, o), nil
}
