package main

import (
	"fmt"
	"strings"

	"weft.example/examples/internal/song"
	"weft.example/fretboard"
)

// A songFile is a file split at its keys, its texts not yet understood.
type songFile struct {
	name, text string
	values     map[string]value
}

// A value is the text of a key and where it begins in the file.
type value struct {
	text string
	at   int
}

// parse splits the text of a file at its keys. Errors are located in a line of
// the file.
func parse(name, text string) (songFile, error) {
	f := songFile{name, text, map[string]value{}}
	if err := f.check(); err != nil {
		return f, err
	}
	plain := withoutRemarks(text)
	key, from, at := "", 0, 0 // the key that is open, where its value begins, where the line does
	for line := range strings.Lines(plain) {
		next, after, isKey := cutKey(line)
		switch {
		case isKey:
			f.keep(key, plain, from, at)
			if err := f.checkKey(next, line, at); err != nil {
				return f, err
			}
			key, from = next, at+after
		case strings.TrimSpace(line) != "" && key != "chords":
			return f, f.stray(line, at)
		}
		at += len(line)
	}
	f.keep(key, plain, from, at)
	if _, given := f.values["chords"]; !given {
		return f, f.fault(false, len(text), 0, "no chords", "add a line such as chords: Am | F | C | E7")
	}
	return f, nil
}

func (f songFile) check() error {
	if len(f.text) > fretboard.MaxText {
		return f.fault(true, fretboard.MaxText, 0, fmt.Sprintf("more than %d bytes of text", fretboard.MaxText), "split the song")
	}
	if err := fretboard.CheckText("song", f.text); err != nil {
		return f.locate(err, value{text: f.text})
	}
	return nil
}

// withoutRemarks turns remarks, and the byte order mark that some editors put in
// front, into spaces, so that what stands after them keeps its place.
func withoutRemarks(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if mark := "\ufeff"; b.Len() == 0 && strings.HasPrefix(line, mark) {
			line = blank(mark) + line[len(mark):]
		}
		if strings.HasPrefix(strings.TrimLeft(line, " \t"), "#") {
			line = blank(line)
		}
		b.WriteString(line)
	}
	return b.String()
}

// blank turns all of a line but its end into spaces, byte by byte.
func blank(line string) string {
	kept := strings.TrimRight(line, "\r\n")
	return strings.Repeat(" ", len(kept)) + line[len(kept):]
}

// keep keeps the value of a key, from one place to another.
func (f songFile) keep(key, plain string, from, to int) {
	if key != "" {
		text := strings.TrimSpace(plain[from:to])
		f.values[key] = value{text, from + strings.Index(plain[from:to], text)}
	}
}

// cutKey splits off the key of a line: a word before a colon and a space, or a
// key of ours before a colon. It returns the key in small letters and where the
// rest begins. In Am:3 and Am :| the colon belongs to the chart.
func cutKey(line string) (key string, after int, ok bool) {
	word, rest, colon := strings.Cut(line, ":")
	key = strings.ToLower(strings.TrimSpace(word))
	if !colon || key == "" || strings.Trim(key, "abcdefghijklmnopqrstuvwxyz-") != "" {
		return "", 0, false
	}
	spaced := rest == "" || strings.ContainsAny(rest[:1], " \t\r\n")
	return key, len(word) + 1, spaced || known(key)
}

func known(name string) bool {
	for _, key := range song.Keys {
		if key.Name == name {
			return true
		}
	}
	return false
}

func (f songFile) checkKey(key, line string, at int) error {
	indent := len(line) - len(strings.TrimLeft(line, " \t"))
	if !known(key) {
		return f.fault(false, at+indent, len(key), "no such key", "choose one of "+keyNames())
	}
	if _, twice := f.values[key]; twice {
		return f.fault(false, at+indent, len(key), "a second "+key, "give each key once")
	}
	return nil
}

func (f songFile) stray(line string, at int) error {
	word := strings.TrimSpace(line)
	return f.fault(false, at+strings.Index(line, word), len(word), "neither a key nor chords",
		"begin the line with a key and a colon, such as title:, or with # for a remark")
}

func keyNames() string {
	var names []string
	for _, key := range song.Keys {
		names = append(names, key.Name)
	}
	return strings.Join(names, ", ")
}

// texts returns what the file says of the song.
func (f songFile) texts() song.Texts {
	texts := song.Texts{}
	for key, value := range f.values {
		texts[key] = value.text
	}
	if _, given := texts["title"]; !given {
		texts["title"] = strings.ToValidUTF8(f.name[:len(f.name)-len(extension)], "?")
	}
	return texts
}

// locateIn moves an error about the text of a key into the file. One about a
// key that is not there concerns the chords.
func (f songFile) locateIn(err error) error {
	located, ok := err.(fretboard.Located)
	if !ok {
		return fmt.Errorf("%s: %w", f.name, err)
	}
	v, given := f.values[located.Where().Notation]
	if !given {
		v = f.values["chords"]
	}
	return f.locate(err, v)
}

func (f songFile) locate(err error, v value) error {
	place := err.(fretboard.Located).Where()
	if place.Source != v.text {
		place.Offset, place.Length = 0, len(v.text)
	}
	_, impossible := err.(*fretboard.ImpossibleError)
	return f.fault(impossible, v.at+place.Offset, place.Length, place.Reason, place.Mend)
}

// fault returns an error at a place of the file, located in its line.
func (f songFile) fault(impossible bool, at, length int, reason, mend string) error {
	begin := strings.LastIndexByte(f.text[:at], '\n') + 1
	line, _, _ := strings.Cut(f.text[begin:], "\n")
	line = strings.TrimSuffix(line, "\r")
	place := fretboard.Place{
		Notation: fmt.Sprintf("%s, line %d", fretboard.Printable(f.name), strings.Count(f.text[:begin], "\n")+1),
		Source:   line, Offset: min(at-begin, len(line)), Length: min(length, max(0, len(line)-(at-begin))),
		Reason: reason, Mend: mend,
	}
	if impossible {
		return &fretboard.ImpossibleError{Place: place}
	}
	return &fretboard.SyntaxError{Place: place}
}
