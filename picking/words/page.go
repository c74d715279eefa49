package words

import (
	"strconv"
	"strings"
)

// The style only keeps lines short and apart; colours are the reader's own.
const style = `:root{color-scheme:light dark}` +
	`body{max-width:40em;margin:1em auto;padding:0 1em;font:1.125em/1.5 sans-serif}`

var tags = [...]string{title: "h1", heading: "h2", subheading: "h3", sentence: "p", item: "li"}

// page writes a document as a page.
func page(d document) []byte {
	w := writer{}
	w.write("<!DOCTYPE html>\n<html lang=\"", english.tag, "\">\n<head>\n<meta charset=\"utf-8\"/>\n",
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n",
		"<title>", escape(d[0].text), "</title>\n<style>", style, "</style>\n</head>\n<body>\n<main>\n")
	listed := false
	for _, b := range d {
		switch {
		case b.kind == item && !listed:
			w.write("<ul>\n")
		case b.kind != item && listed:
			w.write("</ul>\n")
		}
		listed = b.kind == item
		w.block(b)
	}
	if listed {
		w.write("</ul>\n")
	}
	w.write("</main>\n</body>\n</html>\n")
	return w.out
}

type writer struct{ out []byte }

func (w *writer) write(texts ...string) {
	for _, text := range texts {
		w.out = append(w.out, text...)
	}
}

func (w *writer) block(b block) {
	tag := tags[b.kind]
	w.write("<", tag)
	if b.kind == title { // may be in any script
		w.write(` dir="auto"`)
	}
	if b.bar > 0 {
		w.write(` id="`, anchor(b.bar), `"`)
	}
	w.write(">")
	before, after, found := strings.Cut(b.text, b.link.words)
	if found && b.link.bar > 0 {
		w.write(escape(before), `<a href="#`, anchor(b.link.bar), `">`, escape(b.link.words), "</a>", escape(after))
	} else {
		w.write(escape(b.text))
	}
	w.write("</", tag, ">\n")
}

func anchor(bar int) string { return "bar-" + strconv.Itoa(bar) }

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(text string) string { return escaper.Replace(text) }
