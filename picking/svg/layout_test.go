package svg_test

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"weft.example/picking/svg"
)

// layoutFault says what of a page lies badly: text over text, signs over text,
// or anything in the margin.
func layoutFault(d drawing) string {
	type placed struct {
		element
		rectangle
	}
	var solid []placed
	for _, e := range d.elements {
		area := e.area()
		if e.class == "paper" {
			continue
		}
		const slack = 150 // half the thickness of a line
		if area.left < svg.Margin-slack || area.right > d.width-svg.Margin+slack ||
			area.top < svg.Margin-slack || area.bottom > d.height-svg.Margin+slack {
			return fmt.Sprintf("%s %q lies in the margin: %v of %d by %d", e.class, e.text, area, d.width, d.height)
		}
		switch e.class {
		case "down", "up", "rest", "frame", "dot", "muted", "open", "start", "nut", "knot":
			solid = append(solid, placed{e, area})
		default:
			if e.kind == "text" {
				solid = append(solid, placed{e, area})
			}
		}
	}
	slices.SortFunc(solid, func(a, b placed) int { return cmp.Compare(a.top, b.top) })
	for i, a := range solid {
		for _, b := range solid[i+1:] {
			if b.top >= a.bottom {
				break
			}
			if a.overlaps(b.rectangle) && !mayTouch(a.class, b.class) {
				return fmt.Sprintf("%s %q %v lies over %s %q %v", a.class, a.text, a.rectangle, b.class, b.text, b.rectangle)
			}
		}
	}
	return ""
}

// mayTouch reports whether one of two belongs on the other.
func mayTouch(a, b string) bool {
	for _, pair := range [][2]string{{"finger", "dot"}, {"note", "frame"}, {"dot", "dot"}, {"dot", "nut"}, {"knot", "knot"}} {
		if a == pair[0] && b == pair[1] || b == pair[0] && a == pair[1] {
			return true
		}
	}
	return false
}

// markupFault says what of a page a screen reader would stumble over.
func markupFault(d drawing) string {
	if d.title == "" || d.desc == "" {
		return "no title or no description"
	}
	for _, g := range d.groups {
		named, hidden := g.attributes["aria-label"] != "" && g.attributes["role"] != "", g.attributes["aria-hidden"] == "true"
		if named == hidden {
			return "a group of class " + g.class + " has neither a name nor is hidden, or both"
		}
	}
	for _, e := range d.elements {
		if e.kind == "script" || e.kind == "style" || e.kind == "image" || e.attributes["href"] != "" || e.attributes["id"] != "" {
			return "there is a " + e.kind + " that should not be"
		}
	}
	return ""
}

// smallest returns the size of the smallest text of a page, in points.
func smallest(d drawing) int {
	least := 1 << 20
	for _, e := range d.elements {
		if size, err := strconv.Atoi(e.attributes["font-size"]); err == nil {
			least = min(least, size)
		}
	}
	return least / 100
}
