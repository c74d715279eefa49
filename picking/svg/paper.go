package svg

import "weft.example/fretboard"

// A Paper is a sheet's size: A4 (ISO 216, 210 mm by 297 mm) or Letter (8.5 in
// by 11 in).
type Paper uint8

// The two papers.
const (
	A4 Paper = iota
	Letter
)

var paperNames = [...]string{"A4", "Letter"}

// String returns A4 or Letter.
func (p Paper) String() string { return fretboard.NameOf(paperNames[:], int(p)) }

// ParsePaper reads A4 or Letter, in any case.
func ParsePaper(text string) (Paper, error) {
	i, err := fretboard.ParseName("paper", paperNames[:], text)
	return Paper(i), err
}

// A format is a page: its size as a viewer reads it and in units.
type format struct {
	widthText, heightText string
	width, height         int
}

// A unit is a hundredth of a point; a point is 1/72 in.
const point = 100

var formats = [...]format{
	A4:     {"210mm", "297mm", 59528, 84189},
	Letter: {"8.5in", "11in", 61200, 79200},
}

// margin is what stays white on every side, more than printers need.
const margin = 42 * point

func (o Options) format() format {
	f := formats[o.Paper]
	if o.Landscape {
		f = format{f.heightText, f.widthText, f.height, f.width}
	}
	return f
}

// column returns the width of what is printed.
func (f format) column() int { return f.width - 2*margin }

// depth returns the height of what is printed.
func (f format) depth() int { return f.height - 2*margin }
