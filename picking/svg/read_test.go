package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"weft.example/picking/svg"
)

// An element is a drawn thing as the tests' own reader finds it.
type element struct {
	kind, class, text string
	attributes        map[string]string
	system, bar       int // which of the page's it stands in, from 0, or -1
}

func (e element) number(name string) int {
	n, err := strconv.Atoi(e.attributes[name])
	if err != nil {
		panic(fmt.Sprintf("%s of %s is %q", name, e.class, e.attributes[name]))
	}
	return n
}

// A drawing is a page read back.
type drawing struct {
	width, height int
	title, desc   string
	elements      []element
	groups        []element // those with a class, in order
}

// readDrawing reads a page. Anything that is not well-formed is an error.
func readDrawing(page []byte) (drawing, error) {
	decoder := xml.NewDecoder(bytes.NewReader(page))
	r := reader{systems: -1, bars: -1}
	for {
		token, err := decoder.Token()
		switch {
		case errors.Is(err, io.EOF) && len(r.open) > 0:
			return r.drawing, errors.New("elements are left open")
		case errors.Is(err, io.EOF):
			return r.drawing, nil
		case err != nil:
			return r.drawing, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			err = r.begin(token)
		case xml.CharData:
			if n := len(r.open); n > 0 {
				r.open[n-1].text += string(token)
			}
		case xml.EndElement:
			r.end()
		}
		if err != nil {
			return r.drawing, err
		}
	}
}

// A reader is on its way through a page.
type reader struct {
	drawing
	open          []element
	systems, bars int
}

func (r *reader) begin(token xml.StartElement) error {
	e := element{kind: token.Name.Local, attributes: map[string]string{}, system: -1, bar: -1}
	for _, a := range token.Attr {
		if _, twice := e.attributes[a.Name.Local]; twice {
			return fmt.Errorf("%s twice in one element", a.Name.Local)
		}
		e.attributes[a.Name.Local] = a.Value
	}
	e.class = e.attributes["class"]
	r.count(e)
	for _, g := range append(r.open, e) {
		switch g.class {
		case "system":
			e.system = r.systems
		case "bar":
			e.bar = r.bars
		}
	}
	if e.kind == "g" {
		r.groups = append(r.groups, e)
	}
	r.open = append(r.open, e)
	return nil
}

func (r *reader) count(e element) {
	switch {
	case e.kind == "svg":
		fmt.Sscanf(e.attributes["viewBox"], "0 0 %d %d", &r.width, &r.height)
	case e.class == "system":
		r.systems++
	case e.class == "bar":
		r.bars++
	}
}

func (r *reader) end() {
	e := r.open[len(r.open)-1]
	r.open = r.open[:len(r.open)-1]
	switch e.kind {
	case "title":
		r.title = e.text
	case "desc":
		r.desc = e.text
	case "g", "svg":
	default:
		r.elements = append(r.elements, e)
	}
}

// A rectangle is where something is drawn.
type rectangle struct{ left, top, right, bottom int }

func (r rectangle) overlaps(s rectangle) bool {
	return r.left < s.right && s.left < r.right && r.top < s.bottom && s.top < r.bottom
}

// area returns where an element is drawn.
func (e element) area() rectangle {
	switch e.kind {
	case "text":
		return e.textArea()
	case "circle":
		x, y, r := e.number("cx"), e.number("cy"), e.number("r")
		return rectangle{x - r, y - r, x + r, y + r}
	case "rect":
		x, y := e.number("x"), e.number("y")
		return rectangle{x, y, x + e.number("width"), y + e.number("height")}
	}
	points := e.points()
	r := rectangle{points[0][0], points[0][1], points[0][0], points[0][1]}
	for _, p := range points {
		r = rectangle{min(r.left, p[0]), min(r.top, p[1]), max(r.right, p[0]), max(r.bottom, p[1])}
	}
	return r
}

// textArea returns the room of a text by the sheet's own measure: capitals and
// figures reach 76 hundredths of the size above the line, and only some signs
// hang below it.
func (e element) textArea() rectangle {
	size := e.number("font-size")
	x, y, width := e.number("x"), e.number("y"), svg.Room(e.text, size, e.attributes["font-weight"] == "bold")
	switch e.attributes["text-anchor"] {
	case "middle":
		x -= width / 2
	case "end":
		x -= width
	}
	below := 2
	if strings.ContainsFunc(e.text, func(r rune) bool {
		return r > '~' && r != '♯' && r != '♭' || strings.ContainsRune("gjpqyQ,;()[]{}|@$/_", r)
	}) {
		below = 24
	}
	return rectangle{x, y - size*76/100, x + width, y + size*below/100}
}

// points lists the places in a path's data, handles of curves too.
func (e element) points() (points [][2]int) {
	fields := strings.FieldsFunc(e.attributes["d"], func(r rune) bool { return r == ' ' || r >= 'A' && r <= 'Z' })
	for i := 0; i+1 < len(fields); i += 2 {
		x, errX := strconv.Atoi(fields[i])
		y, errY := strconv.Atoi(fields[i+1])
		if errX != nil || errY != nil {
			panic("no whole numbers in " + e.attributes["d"])
		}
		points = append(points, [2]int{x, y})
	}
	return points
}
