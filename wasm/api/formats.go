package api

import (
	"bytes"
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/wasm/internal/jsontext"
)

func (l *Library) writes() {
	l.operations["sheet"] = writeSheet
	l.operations["file"] = writeFile
}

// A format is a way of writing a passage.
type format struct {
	name, media, extension string
	sheet                  bool // whether it is text
}

var formats = [...]format{
	{"text", "text/plain;charset=utf-8", "txt", true},
	{"json", "application/json", "json", true},
	{"words", "text/plain;charset=utf-8", "txt", true},
	{"html", "text/html;charset=utf-8", "html", true},
	{"svg", "image/svg+xml", "svg", true},
	{"musicxml", "application/vnd.recordare.musicxml+xml", "musicxml", true},
	{"mxl", "application/vnd.recordare.musicxml", "mxl", false},
	{"midi", "audio/midi", "mid", false},
	{"wav", "audio/wav", "wav", false},
}

func (t format) write(w *jsontext.Writer) {
	w.Text("format", t.name)
	w.Text("media", t.media)
	w.Text("extension", t.extension)
}

// The limits of sound.
const (
	MaxFill     = 1 << 16  // frames that a player fills at a time
	MaxSound    = 64 << 20 // bytes of a file: nearly six minutes at 48000 frames a second, in two channels of 16 bits
	mostCountIn = 8        // bars
)

// An encoder writes a passage with the options asked for: as one file, and as
// pages where that differs.
type encoder struct {
	file  func(w io.Writer, p picking.Passage) error
	pages func(p picking.Passage) ([][]byte, error)
}

// An optionReader reads the options of a format.
type optionReader func(as *fields, spelling fretboard.Spelling) encoder

// A writing is a request to write a song.
type writing struct {
	song   song
	format format
	encoder
}

// readWriting reads a song and the field as.
func (l *Library) readWriting(f *fields) (it writing, err error) {
	it.song = readSong(f)
	as := f.object("as")
	name, _ := as.text("format")
	as.need("format")
	for _, known := range formats {
		if known.name == name {
			it.format = known
		}
	}
	if read := l.options[name]; read == nil {
		as.refuse("format", "nothing of that name can be written here")
	} else {
		it.encoder = read(as, it.song.spelling)
	}
	as.done()
	f.done()
	return it, f.state.err
}

// bytes writes the song as one file.
func (it writing) bytes() ([]byte, error) {
	p, err := it.song.arrange()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := it.file(&b, p); err != nil {
		return nil, formatFault(err)
	}
	return b.Bytes(), nil
}

// sheets writes the song as pages.
func (it writing) sheets() ([][]byte, error) {
	if it.pages == nil {
		b, err := it.bytes()
		return [][]byte{b}, err
	}
	p, err := it.song.arrange()
	if err != nil {
		return nil, err
	}
	pages, err := it.pages(p)
	if err != nil {
		return nil, formatFault(err)
	}
	return pages, nil
}

// formatFault says which option an encoder finds fault with, unless the error
// says it already.
func formatFault(err error) error {
	if e, ok := err.(*fault); ok {
		return e
	}
	return faultAt("as."+fieldOf(err), err)
}

// writeSheet writes a song in a format of text.
func writeSheet(l *Library, f *fields) (reply, error) {
	it, err := l.readWriting(f)
	if err != nil {
		return reply{}, err
	}
	if !it.format.sheet {
		return reply{}, requestFault("as.format", "no sheet but a file; ask for it as one")
	}
	pages, err := it.sheets()
	if err != nil {
		return reply{}, err
	}
	return reply{members: func(w *jsontext.Writer) {
		it.format.write(w)
		w.List("pages", func() {
			for _, page := range pages {
				w.Text("", string(page))
			}
		})
	}}, nil
}

// writeFile writes a song as one file.
func writeFile(l *Library, f *fields) (reply, error) {
	it, err := l.readWriting(f)
	if err != nil {
		return reply{}, err
	}
	file, err := it.bytes()
	return reply{members: it.format.write, bytes: file}, err
}
