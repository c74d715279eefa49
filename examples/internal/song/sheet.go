package song

import (
	"flag"

	"weft.example/examples/internal/cli"
	"weft.example/fretboard"
	"weft.example/picking/svg"
)

// A Sheet is what flags say of a drawn sheet, not yet understood.
type Sheet struct {
	Paper, Size string
	Landscape   bool
}

// Flags adds the flags -paper, -size and -landscape; note tells of each what it
// serves.
func (s *Sheet) Flags(fs *flag.FlagSet, note func(name string) string) {
	fs.StringVar(&s.Paper, "paper", "a4", note("paper")+"`size` of the paper: a4 or letter")
	fs.StringVar(&s.Size, "size", "12", note("size")+"size of the print in `points`, 12 to 36; large print begins at 18")
	fs.BoolVar(&s.Landscape, "landscape", false, note("landscape")+"lay the paper on its long side")
}

// Read reads the flags. Its errors are located in the one that they concern.
func (s Sheet) Read(spelling fretboard.Spelling) (svg.Options, error) {
	o := svg.Options{Landscape: s.Landscape, Spelling: spelling}
	if err := cli.Read(&o.Paper, svg.ParsePaper, s.Paper); err != nil {
		return o, err
	}
	return o, cli.Read(&o.Size, cli.Within("size", 12, 36), s.Size)
}
