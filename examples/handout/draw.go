package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"weft.example/examples/internal/cli"
	"weft.example/examples/internal/song"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/svg"
	"weft.example/picking/words"
)

// mark ends every page that handout writes, and no other file.
const mark = "\n<!-- a page of Weft's handout, which may write it anew -->\n"

// checkWay refuses to write where a file that handout did not write is in the
// way.
func (h *handout) checkWay() error {
	names := []string{indexName}
	for _, s := range h.songs {
		names = append(names, s.sheet, s.words)
	}
	for _, name := range names {
		old, err := os.ReadFile(filepath.Join(h.to, name))
		if errors.Is(err, os.ErrNotExist) {
			continue
		}
		if err != nil {
			return cli.Impossible("to", h.to, name+": "+cli.Cause(err).Error(), "choose a folder that can be written to")
		}
		if !bytes.HasSuffix(old, []byte(mark)) {
			return cli.Impossible("to", h.to, name+" is there, which handout did not write", "move it, or choose another folder")
		}
	}
	return nil
}

// draw draws the songs one by one and returns what is wrong with those that it
// leaves out, joined. Where a page cannot be written, it stops.
func (h *handout) draw(ctx context.Context) error {
	var bad []error
	last := h.now()
	for i, s := range h.songs {
		e, pages, err := h.pages(s)
		if ctx.Err() != nil {
			return errors.Join(append(bad, h.interrupted(i))...)
		}
		if err != nil {
			bad = append(bad, err)
		} else if err = h.put(s, pages); err != nil {
			if errors.Is(err, cli.ErrInterrupted) {
				err = h.interrupted(i)
			}
			return errors.Join(append(bad, err)...)
		} else {
			h.drawn = append(h.drawn, e)
		}
		if now := h.now(); now.Sub(last) >= time.Second {
			last = now
			fmt.Fprintf(h.stderr, "handout: %d of %d songs\n", i+1, len(h.songs))
		}
	}
	return errors.Join(bad...)
}

func (h *handout) interrupted(done int) error {
	return fmt.Errorf("%w after %d of %d songs; %s is not renewed", cli.ErrInterrupted, done, len(h.songs), indexName)
}

// pages returns the page with the sheet and the one with the words of a song.
func (h *handout) pages(s source) (e entry, pages [2][]byte, err error) {
	p, spelling, err := s.arrange()
	if err != nil {
		return e, pages, err
	}
	e = entry{source: s, Passage: p}
	if pages[0], err = h.sheetPage(&e, spelling); err != nil {
		return e, pages, err
	}
	var said bytes.Buffer
	err = words.Encode(&said, p, words.Options{HTML: true})
	pages[1], e.Bars = said.Bytes(), nil // which the index does not need
	return e, pages, err
}

// put writes the pages of a song, the sheet last.
func (h *handout) put(s source, pages [2][]byte) error {
	if err := h.write(s.words, pages[1]); err != nil {
		return err
	}
	return h.write(s.sheet, pages[0])
}

// arrange reads a song and carries its figure over its chords. Errors are
// located in the file.
func (s source) arrange() (picking.Passage, fretboard.Spelling, error) {
	text, err := s.read()
	if err != nil {
		return picking.Passage{}, 0, fmt.Errorf("%s: %w", fretboard.Printable(s.file), err)
	}
	f, err := parse(s.file, text)
	if err != nil {
		return picking.Passage{}, 0, err
	}
	music, err := song.Read(f.texts())
	if err != nil {
		return picking.Passage{}, 0, f.locateIn(err)
	}
	p, err := music.Arrange()
	if err != nil {
		return p, 0, f.locateIn(err)
	}
	return p, music.Spelling, nil
}

// sheetPage returns the page with the sheet and counts its sides of paper.
func (h *handout) sheetPage(e *entry, spelling fretboard.Spelling) ([]byte, error) {
	o := h.options
	o.Spelling = spelling
	drawings, err := svg.Pages(e.Passage, o)
	if err != nil {
		return nil, err
	}
	e.Sides = len(drawings)
	return render(sheetTemplate, sheetData{entry: *e, Paper: paperOf(o), Drawings: drawingsOf(drawings)})
}

func (h *handout) writeIndex() error {
	if len(h.drawn) == 0 {
		return nil
	}
	page, err := render(indexTemplate, indexData{h.drawn, paperOf(h.options)})
	if err != nil {
		return err
	}
	return h.write(indexName, page)
}

// write writes a page whole or not at all.
func (h *handout) write(name string, page []byte) error {
	if err := os.MkdirAll(h.to, 0o777); err != nil {
		return cli.Impossible("to", h.to, cli.Cause(err).Error(), "choose a folder that can be written to")
	}
	return cli.WriteFile("to", filepath.Join(h.to, name), append(page, mark...))
}

// tell says on standard output what has been done and which files were no songs.
func (h *handout) tell(w io.Writer, unread []string) {
	if len(h.drawn) > 0 {
		fmt.Fprintf(w, "%d of %d songs: %s\n", len(h.drawn), len(h.songs), filepath.Join(h.to, indexName))
	}
	if len(unread) > 0 {
		fmt.Fprintf(w, "not read, as their names do not end in %s: %s\n", extension, fretboard.Printable(strings.Join(unread, ", ")))
	}
}
