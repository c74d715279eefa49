package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
)

// A source is a file with a song, and the names of the pages that it becomes.
type source struct {
	path         string
	file         string // the path's last part
	sheet, words string
}

const extension = ".txt"

// list returns the songs of a folder by name, and the names of the files that
// are none. The error is located in the flag -from.
func list(folder string) (songs []source, unread []string, err error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, nil, cli.Impossible("from", folder, cli.Cause(err).Error(), "choose a folder of songs")
	}
	names := namer{"index.html": true}
	for _, e := range entries {
		name := e.Name()
		switch {
		case e.IsDir() || strings.HasPrefix(name, "."):
		case strings.EqualFold(filepath.Ext(name), extension):
			sheet, words := names.pages(name[:len(name)-len(extension)])
			songs = append(songs, source{filepath.Join(folder, name), name, sheet, words})
		default:
			unread = append(unread, name)
		}
	}
	if len(songs) == 0 {
		err = cli.Impossible("from", folder, "no song is there", "give songs names that end in "+extension)
	}
	return songs, unread, err
}

// read returns the text of the file, of which it reads a byte more than a song
// may be long.
func (s source) read() (string, error) {
	info, err := os.Stat(s.path)
	if err != nil {
		return "", cli.Cause(err)
	}
	if !info.Mode().IsRegular() { // it might never end
		return "", errors.New("not a plain file")
	}
	f, err := os.Open(s.path)
	if err != nil {
		return "", cli.Cause(err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, fretboard.MaxText+1))
	return string(text), err
}

// A namer knows the names that are taken, in small letters, as some file systems
// do not tell them from large ones.
type namer map[string]bool

// pages returns two names that are free, and takes them.
func (n namer) pages(song string) (sheet, words string) {
	base := safe(song)
	for i := 1; ; i++ {
		name := base
		if i > 1 {
			name += "-" + strconv.Itoa(i)
		}
		sheet, words = name+".html", name+"-words.html"
		if !n[sheet] && !n[words] {
			n[sheet], n[words] = true, true
			return sheet, words
		}
	}
}

const longestName = 40 // characters, so that no file system finds it too long

// safe returns a name that every file system and address holds: small letters
// and digits, with single hyphens for what lies between.
func safe(song string) string {
	var b strings.Builder
	length, gap := 0, false
	for _, r := range song {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) || r == unicode.ReplacementChar {
			gap = b.Len() > 0
			continue
		}
		if length++; length > longestName {
			break
		}
		if gap {
			b.WriteByte('-')
			gap = false
		}
		b.WriteRune(unicode.ToLower(r))
	}
	if name := b.String(); name != "" && !device(name) {
		return name
	}
	return strings.TrimSuffix("song-"+b.String(), "-")
}

// device reports whether Windows keeps a name for a device, whatever follows
// after a full stop (Microsoft, Naming Files, Paths, and Namespaces).
func device(name string) bool {
	switch name {
	case "con", "prn", "aux", "nul":
		return true
	}
	port := strings.TrimPrefix(strings.TrimPrefix(name, "com"), "lpt")
	return port != name && len(port) == 1 && '0' <= port[0] && port[0] <= '9'
}
