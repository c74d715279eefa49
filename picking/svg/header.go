package svg

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// header makes the blocks of the title and of what holds for the whole sheet.
func (s *sheet) header() (blocks []block) {
	blocks = s.titleLines()
	for _, text := range s.facts() {
		blocks = append(blocks, s.paragraph("fact", text, 0)...)
	}
	if len(blocks) > 0 {
		blocks[0].gap = 0
	}
	return s.together(blocks)
}

// together keeps blocks on one page if they have room there.
func (s *sheet) together(blocks []block) []block {
	height := 0
	for _, b := range blocks {
		height += b.gap + b.height
	}
	for i := 0; height <= s.depth() && i < len(blocks)-1; i++ {
		blocks[i].keep = true
	}
	return blocks
}

// titleLines sets the title as large as it has room in a line, down to two
// thirds, or else in several lines.
func (s *sheet) titleLines() (blocks []block) {
	if s.Title == "" {
		return nil
	}
	f := s.scale.title
	width := s.format.column()
	if room := f.room(s.Title); room > width {
		f.size = max(f.size*width/(room+1), f.size*2/3, s.scale.chord.size)
	}
	for _, text := range f.wrap(s.Title, width) {
		blocks = append(blocks, block{height: f.leading(), draw: func(p *pen, y int) {
			p.text("title", f, margin, y+f.size, start, black, text)
		}})
	}
	return blocks
}

// facts says what holds for the whole sheet.
func (s *sheet) facts() []string {
	facts := []string{s.Meter.String() + ", " + s.tempo() + ". Tuning: " + s.tuning() + ". " + s.hand()}
	if s.spelling != fretboard.English {
		facts[0] += " " + spellingWords[s.spelling]
	}
	return append(facts, "Strokes: "+traditionWords(s.Strokes)+". Fit: "+mouldingWords(s.Fit)+". Form: "+s.form()+".")
}

// tempo names the note that the tempo counts, which is the meter's beat.
func (s *sheet) tempo() string {
	return strconv.Itoa(s.Tempo) + " " + noteWords(s.Meter.Beat()) + "s a minute"
}

func (s *sheet) tuning() string {
	t := s.Instrument.Tuning
	text := ""
	for n := t.Strings(); n >= 1; n-- {
		pitch := t.Open(n)
		if text != "" {
			text += " "
		}
		text += pitch.Note.ChartIn(s.spelling) + strconv.Itoa(int(pitch.Octave))
	}
	if n := t.Strings(); n > 1 {
		text += " (string " + strconv.Itoa(int(n)) + " to string 1)"
	}
	if name := t.Name(); name != "" {
		text = name + ", " + text
	}
	if capo := s.Instrument.Capo; capo > 0 {
		text += ". Capo: fret " + strconv.Itoa(int(capo)) + ", from which all frets are counted"
	}
	return text
}

// hand says how the instrument is held.
func (s *sheet) hand() string {
	return [...]string{
		fretboard.RightHanded:  "Right-handed.",
		fretboard.LeftRestrung: "Left-handed, strung for the left hand: chord boxes are mirrored, tab is not.",
		fretboard.LeftTurned:   "Left-handed, a right-handed instrument turned over: string 1 is uppermost.",
	}[s.Instrument.Hand]
}

var spellingWords = [...]string{
	fretboard.German:      "German names: H is B natural, B is B flat.",
	fretboard.MixedGerman: "German names: H is B natural, B♭ is B flat.",
}

func traditionWords(t picking.Tradition) string {
	switch t {
	case picking.TowardNext:
		return "toward the next string"
	case picking.Economy:
		return "economy, onto a new string in the direction the pick comes"
	case picking.Alternate:
		return "alternate, down and up in turn, slot by slot from the bar line"
	case picking.RestStroke:
		return "rest-stroke, the first note on every new string is down"
	case picking.Jig:
		return "jig, down, up, down in each group of three"
	}
	return t.String()
}

func mouldingWords(m picking.Moulding) string {
	switch m {
	case picking.Contour:
		return "contour, the figure keeps its rise and fall over the strings"
	case picking.Bass:
		return "bass, only the figure's root notes move to the start string"
	case picking.Shift:
		return "shift, the whole figure moves with its root"
	}
	return m.String()
}

func (s *sheet) form() string {
	if s.Loop {
		return "a loop, the end leads back to bar 1"
	}
	for _, pick := range s.picks {
		if pick.At+pick.Rings > s.Length() {
			return "once through; the last notes ring on for a bar"
		}
	}
	return "once through"
}

// paragraph makes a block of each line of a text, indented.
func (s *sheet) paragraph(class, text string, indent int) (blocks []block) {
	f := s.scale.body
	for _, line := range f.wrap(text, s.format.column()-indent) {
		blocks = append(blocks, block{height: f.leading(), draw: func(p *pen, y int) {
			p.text(class, f, margin+indent, y+f.size, start, black, line)
		}})
	}
	blocks[0].gap = f.size * 25 / 100
	return blocks
}

// heading makes the blocks of a sentence that introduces the next system.
func (s *sheet) heading(text string) []block {
	lines := s.paragraph("heading", text, 0)
	lines[0].gap = s.scale.thick(1400)
	lines[len(lines)-1].keep = true
	return lines
}
