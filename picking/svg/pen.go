package svg

import (
	"strconv"
	"strings"
)

// A pen writes elements, each on a line of its own. Lengths are in units.
type pen struct{ out []byte }

func (p *pen) raw(text string) { p.out = append(p.out, text...) }

func (p *pen) number(n int) { p.out = strconv.AppendInt(p.out, int64(n), 10) }

// attribute writes a name and a number.
func (p *pen) attribute(name string, n int) {
	p.raw(" ")
	p.raw(name)
	p.raw(`="`)
	p.number(n)
	p.raw(`"`)
}

// words writes a name and a text.
func (p *pen) words(name, text string) {
	p.raw(" ")
	p.raw(name)
	p.raw(`="`)
	p.escaped(text)
	p.raw(`"`)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escaped writes text that means itself. It holds no controls: whoever has
// text from a user makes it printable first.
func (p *pen) escaped(text string) { p.raw(escaper.Replace(text)) }

// open begins a group that is read aloud as label and hides what it holds, or
// as a group of that label if it holds more of the kind.
func (p *pen) open(class, role, label string) {
	p.raw(`<g`)
	p.words("class", class)
	p.words("role", role)
	p.words("aria-label", label)
	p.raw(">\n")
}

// decoration begins a group that is not read aloud.
func (p *pen) decoration(class string) {
	p.raw(`<g`)
	p.words("class", class)
	p.raw(" aria-hidden=\"true\">\n")
}

func (p *pen) close() { p.raw("</g>\n") }

// An anchor says which part of a text stands at its place.
type anchor string

const (
	start  anchor = ""
	middle anchor = "middle"
	end    anchor = "end"
)

// ink is what type is printed in.
type ink string

const (
	black ink = ""
	white ink = "#fff"
)

// text writes text in a face, its line of type at y.
func (p *pen) text(class string, f face, x, y int, at anchor, color ink, text string) {
	if text == "" {
		return
	}
	p.raw("<text")
	p.words("class", class)
	p.attribute("x", x)
	p.attribute("y", y)
	p.attribute("font-size", f.size)
	if f.bold {
		p.raw(` font-weight="bold"`)
	}
	if at != start {
		p.words("text-anchor", string(at))
	}
	if color != black {
		p.words("fill", string(color))
	}
	if width, measured := f.width(text); !measured && width > 0 {
		p.attribute("textLength", width)
		p.raw(` lengthAdjust="spacingAndGlyphs"`)
	}
	p.raw(">")
	p.escaped(text)
	p.raw("</text>\n")
}

// rectangle writes a filled one.
func (p *pen) rectangle(class string, x, y, width, height int) {
	p.raw("<rect")
	p.words("class", class)
	p.attribute("x", x)
	p.attribute("y", y)
	p.attribute("width", width)
	p.attribute("height", height)
	p.raw("/>\n")
}

// circle writes one, filled or, with a thickness, as a ring.
func (p *pen) circle(class string, x, y, radius, thick int) {
	p.raw("<circle")
	p.words("class", class)
	p.attribute("cx", x)
	p.attribute("cy", y)
	p.attribute("r", radius)
	if thick > 0 {
		p.raw(` fill="none" stroke="#000"`)
		p.attribute("stroke-width", thick)
	}
	p.raw("/>\n")
}

// A path is a drawing made of moves, lines and curves. It is written by one of
// its two ends: stroke or fill.
type path struct{ *pen }

// path begins one.
func (p *pen) path(class string) *path {
	p.raw("<path")
	p.words("class", class)
	p.raw(` d="`)
	return &path{p}
}

func (p *path) command(letter string, places ...int) *path {
	p.raw(letter)
	for i, n := range places {
		if i > 0 {
			p.raw(" ")
		}
		p.number(n)
	}
	return p
}

func (p *path) move(x, y int) *path { return p.command("M", x, y) }
func (p *path) to(x, y int) *path   { return p.command("L", x, y) }
func (p *path) shut() *path         { return p.command("Z") }

func (p *path) curve(x1, y1, x2, y2, x, y int) *path {
	return p.command("C", x1, y1, x2, y2, x, y)
}

// fill ends a path that is filled.
func (p *path) fill() { p.raw("\"/>\n") }

// stroke ends a path that is a line of some thickness.
func (p *path) stroke(thick int) { p.colored("#000", thick) }

// colored ends a path that is a line in a color.
func (p *path) colored(color string, thick int) {
	p.raw(`" fill="none"`)
	p.words("stroke", color)
	p.attribute("stroke-width", thick)
	p.raw("/>\n")
}

// line writes a straight line.
func (p *pen) line(class string, x1, y1, x2, y2, thick int) {
	p.path(class).move(x1, y1).to(x2, y2).stroke(thick)
}
