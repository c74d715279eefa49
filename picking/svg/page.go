package svg

import (
	"strconv"
)

// A page holds the blocks that stand on it.
type page struct {
	number, of int
	blocks     []block
	places     []int // of each block, from the top of the paper
}

// paginate puts blocks onto pages.
func (s *sheet) paginate(blocks []block) (pages []page) {
	y, bottom := 0, s.format.height-margin
	for len(blocks) > 0 {
		n, need := s.group(blocks)
		if len(pages) == 0 || y+blocks[0].gap+need > bottom {
			pages = append(pages, page{number: len(pages) + 1})
			y = margin + s.headDepth() - blocks[0].gap
		}
		last := &pages[len(pages)-1]
		for _, b := range blocks[:n] {
			y += b.gap
			last.blocks, last.places = append(last.blocks, b), append(last.places, y)
			y += b.height
		}
		blocks = blocks[n:]
	}
	for i := range pages {
		pages[i].of = len(pages)
	}
	return pages
}

// group returns how many blocks stand together on a page, as many as are kept
// together and have room on one, and their height without the gap above.
func (s *sheet) group(blocks []block) (n, height int) {
	n, height = 1, blocks[0].height
	for n < len(blocks) && blocks[n-1].keep && height+blocks[n].gap+blocks[n].height <= s.depth() {
		height += blocks[n].gap + blocks[n].height
		n++
	}
	return n, height
}

// headDepth returns the room for the running head.
func (s *sheet) headDepth() int { return s.scale.small.leading() + s.scale.thick(650) }

// document returns pages as one drawing, one below the other. A drawing to be
// printed as it is tells a browser the size of its paper; in one to be put into
// a page of someone else's that would change how all of that is printed.
func (s *sheet) document(pages []page, printed bool) []byte {
	p := &pen{out: make([]byte, 0, len(pages)<<15)}
	f := s.format
	n := len(pages)
	p.raw(`<svg xmlns="http://www.w3.org/2000/svg"`)
	p.words("width", f.widthText)
	p.words("height", times(f.heightText, n))
	p.words("viewBox", "0 0 "+strconv.Itoa(f.width)+" "+strconv.Itoa(n*f.height))
	p.raw(" role=\"graphics-document\" lang=\"en\" font-family=\"sans-serif\">\n<title>")
	p.escaped(s.documentTitle(pages))
	p.raw("</title>\n<desc>")
	p.escaped(s.description(pages))
	p.raw("</desc>\n")
	if printed {
		p.raw("<style>@page{size:" + f.widthText + " " + f.heightText + ";margin:0}</style>\n")
	}
	for i := range pages {
		s.drawPage(p, &pages[i], i*f.height)
	}
	p.raw("</svg>\n")
	return p.out
}

// times multiplies a length as a viewer reads it, such as 8.5in.
func times(length string, n int) string {
	digits := len(length) - 2
	tenths, whole := 0, true
	for _, r := range length[:digits] {
		if r == '.' {
			whole = false
			continue
		}
		tenths = 10*tenths + int(r-'0')
	}
	if whole {
		tenths *= 10
	}
	tenths *= n
	text := strconv.Itoa(tenths / 10)
	if tenths%10 != 0 {
		text += "." + strconv.Itoa(tenths%10)
	}
	return text + length[digits:]
}

func (s *sheet) documentTitle(pages []page) string {
	title := s.Title
	if title == "" {
		title = "Picking part"
	}
	if len(pages) == 1 && pages[0].of > 1 {
		title += ", " + pages[0].name()
	}
	return title
}

func (p *page) name() string { return "page " + strconv.Itoa(p.number) + " of " + strconv.Itoa(p.of) }

func (s *sheet) description(pages []page) string {
	text := "A part to pluck with a plectrum, on " + strconv.Itoa(int(s.strings())) + verb(int(s.strings()), " string", " strings") +
		": chords, strokes, tab, count and the path of the pick over the strings"
	var bars []int
	for i := range pages {
		for _, b := range pages[i].blocks {
			for _, n := range b.bars {
				if len(bars) == 0 || bars[len(bars)-1] != n {
					bars = append(bars, n)
				}
			}
		}
	}
	if len(bars) > 0 {
		text += ". Here " + verb(len(bars), "stands ", "stand ") + barsText(bars)
	}
	text += "."
	if s.scale.points < s.asked {
		text += " " + s.shrunk()
	}
	return text
}

// drawPage draws a page whose top is at y.
func (s *sheet) drawPage(p *pen, page *page, y int) {
	p.raw(`<g class="page"`)
	if y > 0 {
		p.words("transform", "translate(0 "+strconv.Itoa(y)+")")
	}
	p.words("role", "group")
	p.words("aria-label", capital(page.name()))
	p.raw(">\n")
	p.raw(`<rect class="paper" aria-hidden="true" x="0" y="0"`)
	p.attribute("width", s.format.width)
	p.attribute("height", s.format.height)
	p.raw(" fill=\"#fff\"/>\n")
	s.drawHead(p, page)
	for i, b := range page.blocks {
		b.draw(p, page.places[i])
	}
	p.close()
}

// drawHead draws the running head: the title from page 2 on, and the number of
// the page where there are several.
func (s *sheet) drawHead(p *pen, page *page) {
	if page.of == 1 {
		return
	}
	f := s.scale.small
	number := strconv.Itoa(page.number) + " / " + strconv.Itoa(page.of)
	base := margin + f.up()
	if page.number > 1 {
		p.text("head", f, margin, base, start, black, f.cut(s.Title, s.format.column()-f.room(number)-f.size))
	}
	p.text("number", f, s.format.width-margin, base, end, black, number)
}
