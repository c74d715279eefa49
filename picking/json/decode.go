package json

import (
	"io"
	"strconv"
	"unicode/utf8"

	"weft.example/fretboard"
	"weft.example/picking"
)

// MaxSize is the most bytes that a passage may take: enough for 512 bars of
// 256 notes each.
const MaxSize = 64 << 20

// Decode reads one JSON object of the form and nothing after it. It refuses
// what is not JSON or too large with a [fretboard.SyntaxError] or an
// [fretboard.ImpossibleError] located in the text; a field that is unknown,
// missing, of the wrong type or out of range, and one that contradicts the
// others, with an [Error]; and returns r's own errors as they are. Linear in
// the size of the text.
func Decode(r io.Reader) (picking.Passage, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxSize+1))
	if err != nil {
		return picking.Passage{}, err
	}
	if err := checkSyntax(text); err != nil {
		return picking.Passage{}, err
	}
	var f passageForm
	in := reader{text: text}
	if err := in.object(&f); err != nil {
		return picking.Passage{}, err
	}
	return passageOf(f)
}

// checkSyntax refuses what is not JSON. The version comes first of the fields,
// so that a later form is not refused for the fields that it adds.
func checkSyntax(text []byte) error {
	if len(text) > MaxSize {
		return &fretboard.ImpossibleError{Place: place(text, MaxSize, 0,
			"more than "+digits(MaxSize)+" bytes of JSON", "write fewer bars")}
	}
	if at, size, bad := strayText(text); bad != "" {
		return &fretboard.SyntaxError{Place: place(text, at, size, bad, "save the text as UTF-8")}
	}
	c := checker{text: text}
	c.check()
	if c.reason != "" {
		at := max(0, min(c.at, len(text)-1)) // the end is shown by the last byte
		return &fretboard.SyntaxError{Place: place(text, at, min(1, len(text)), "not JSON: "+c.reason, "")}
	}
	if v, ok := versionIn(text); ok && v != Version && v != 0 {
		return refuse("version", digits(v)+"; this library reads version "+digits(Version))
	}
	return nil
}

// versionIn finds the version of a well-formed passage, or returns false if it
// has none that is a number.
func versionIn(text []byte) (int, bool) {
	r := reader{text: text}
	if r.next() != '{' {
		return 0, false
	}
	for r.at++; r.next() != '}'; r.skip() {
		if string(r.quoted()) == "version" {
			v, err := strconv.Atoi(r.literal())
			return v, err == nil
		}
	}
	return 0, false
}

func place(text []byte, at, size int, reason, mend string) fretboard.Place {
	return fretboard.Place{Notation: "passage", Source: string(text), Offset: at, Length: size, Reason: reason, Mend: mend}
}

// strayText finds bytes that are not UTF-8 and escapes that name half a
// character, which encoding/json would silently replace.
func strayText(text []byte) (at, size int, bad string) {
	for at < len(text) {
		r, size := utf8.DecodeRune(text[at:])
		switch {
		case r == utf8.RuneError && size == 1:
			return at, 1, "not valid UTF-8"
		case r == '\\':
			if size = escape(text[at:]); size == 0 {
				return at, min(6, len(text)-at), "half a character"
			}
		}
		at += size
	}
	return 0, 0, ""
}

// escape returns how many bytes the escape at the front of text takes, or 0 if
// it names half a surrogate pair. Malformed ones are left to encoding/json.
func escape(text []byte) int {
	switch first := unit(text) & 0xfc00; {
	case first == 0xd800 && unit(text[6:])&0xfc00 == 0xdc00:
		return 12
	case first == 0xd800 || first == 0xdc00:
		return 0
	}
	return min(2, len(text))
}

// unit reads an escape of four hexadecimal digits, or returns 0.
func unit(text []byte) uint64 {
	if len(text) < 6 || text[0] != '\\' || text[1] != 'u' {
		return 0
	}
	n, _ := strconv.ParseUint(string(text[2:6]), 16, 16)
	return n
}
