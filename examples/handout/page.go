package main

import (
	"bytes"
	_ "embed"
	"html/template"
	"strings"
	"unicode"

	"weft.example/picking"
	"weft.example/picking/svg"
)

const indexName = "index.html"

// An entry is a song that has been drawn.
type entry struct {
	source
	picking.Passage
	Sides int // of paper
}

// Title returns the title for a page: characters that XML cannot hold, or that
// steer a terminal, are spaces.
func (e entry) Title() string {
	title := strings.TrimSpace(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == 0xfffe || r == 0xffff {
			return ' '
		}
		return r
	}, e.Passage.Title))
	if title == "" {
		return "Without a title"
	}
	return title
}

// Sheet and Words return the names of the pages.
func (e entry) Sheet() string { return e.sheet }
func (e entry) Words() string { return e.words }

// Capo and Tuning return what stands in the index.
func (e entry) Capo() int      { return int(e.Instrument.Capo) }
func (e entry) Tuning() string { return e.Instrument.Tuning.Name() }

// A paper is what a page says of its paper in CSS.
type paper struct {
	Width, Height template.CSS
	Points        int
}

func paperOf(o svg.Options) paper {
	p := paper{"210mm", "297mm", o.Size}
	if o.Paper == svg.Letter {
		p.Width, p.Height = "8.5in", "11in"
	}
	if o.Landscape {
		p.Width, p.Height = p.Height, p.Width
	}
	return p
}

type sheetData struct {
	entry
	Paper    paper
	Drawings []template.HTML
}

type indexData struct {
	Songs []entry
	Paper paper
}

// drawingsOf marks drawings as markup, which package svg has made safe.
func drawingsOf(pages [][]byte) []template.HTML {
	drawings := make([]template.HTML, len(pages))
	for i, page := range pages {
		drawings[i] = template.HTML(page)
	}
	return drawings
}

var (
	//go:embed sheet.html
	sheetText string
	//go:embed index.html
	indexText string

	sheetTemplate = template.Must(template.New("sheet").Parse(sheetText))
	indexTemplate = template.Must(template.New("index").Parse(indexText))
)

func render(t *template.Template, data any) ([]byte, error) {
	var page bytes.Buffer
	err := t.Execute(&page, data)
	return page.Bytes(), err
}
