//go:build !lessons && !drawings

package api

import (
	"io"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/text"
	"weft.example/picking/words"
	"weft.example/wasm/internal/jsontext"
)

// Readings writes sheets to read as text and by machines.
func Readings(l *Library) {
	l.options["text"] = readText
	l.options["json"] = readForm
	l.options["words"] = readWords
	l.options["html"] = readPage
	l.writes()
}

func readWidth(as *fields) int {
	width, _ := as.whole("width")
	return width
}

func readText(as *fields, spelling fretboard.Spelling) encoder {
	o := text.Options{Width: readWidth(as), Spelling: spelling}
	parsed(as, "count", &o.Count, picking.ParseCountWords)
	return encoder{file: func(w io.Writer, p picking.Passage) error { return text.Encode(w, p, o) }}
}

func readWords(as *fields, _ fretboard.Spelling) encoder {
	o := words.Options{Width: readWidth(as)}
	return encoder{file: func(w io.Writer, p picking.Passage) error { return words.Encode(w, p, o) }}
}

func readPage(*fields, fretboard.Spelling) encoder {
	return encoder{file: func(w io.Writer, p picking.Passage) error { return words.Encode(w, p, words.Options{HTML: true}) }}
}

func readForm(*fields, fretboard.Spelling) encoder { return encoder{file: writeForm} }

// writeForm writes the interchange form with the newline that ends its file.
func writeForm(w io.Writer, p picking.Passage) error {
	var form jsontext.Writer
	writePassage(&form, "", p)
	_, err := w.Write(append(form.Bytes(), '\n'))
	return err
}
