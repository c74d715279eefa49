package svg

import (
	"strings"
	"unicode"
)

// advances holds the widths of the printing ASCII characters, plain and bold,
// in thousandths of the size of type: of each the greatest found among ten
// sans-serif families with free licences (DejaVu Sans, Liberation Sans, Roboto,
// Open Sans, Lato, Inter, Noto Sans, Cantarell, FreeSans, Nimbus Sans; their
// hmtx tables), and a fortieth more for families not measured. Text set in any
// of them keeps to the room that is made for it.
var advances = [2][95]uint16{
	{ // plain
		330, 420, 480, 860, 660, 1020, 800, 290, 410, 410, 570, 860, 330, 480, 330, 470,
		660, 660, 660, 660, 660, 660, 660, 660, 660, 660, 350, 350, 860, 860, 860, 580,
		1050, 710, 710, 750, 800, 690, 630, 800, 790, 350, 570, 700, 580, 960, 790, 830,
		690, 830, 750, 690, 660, 770, 710, 1070, 710, 700, 710, 410, 470, 410, 860, 580,
		600, 630, 660, 580, 660, 640, 380, 660, 650, 290, 290, 600, 290, 1000, 650, 630,
		660, 660, 430, 540, 410, 650, 610, 840, 610, 610, 560, 660, 570, 660, 860,
	},
	{ // bold
		360, 470, 540, 860, 720, 1040, 900, 320, 470, 470, 580, 860, 390, 490, 390, 480,
		720, 720, 720, 720, 720, 720, 720, 720, 720, 720, 410, 410, 860, 860, 860, 630,
		1060, 800, 790, 780, 860, 710, 710, 850, 860, 400, 590, 800, 660, 1030, 860, 880,
		760, 880, 800, 740, 710, 840, 800, 1140, 800, 750, 750, 470, 480, 470, 860, 580,
		630, 700, 740, 610, 740, 700, 450, 740, 730, 360, 360, 690, 360, 1070, 730, 710,
		740, 740, 510, 620, 500, 730, 670, 950, 670, 670, 600, 730, 570, 730, 860,
	}}

// width returns the room that text needs, and whether every character of it was
// measured. The others, of other scripts, are estimated; such a text is told its
// length, so that it keeps to its room too.
func (f face) width(text string) (units int, measured bool) {
	measured = true
	for _, r := range text {
		advance, known := f.advance(r)
		units += advance
		measured = measured && known
	}
	return (units*f.size + 999) / 1000, measured
}

// room is the width alone.
func (f face) room(text string) int {
	units, _ := f.width(text)
	return units
}

// advance returns the width of a character in thousandths, and whether it was
// measured.
func (f face) advance(r rune) (thousandths int, measured bool) {
	weight := 0
	if f.bold {
		weight = 1
	}
	switch {
	case ' ' <= r && r <= '~':
		return int(advances[weight][r-' ']), true
	case r == '♭' || r == '♯' || r == '♮':
		return 580, true
	case unicode.In(r, unicode.Mn, unicode.Me):
		return 0, true
	case unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic):
		return letter(r)[weight], true
	case r == '𝄪' || r == '𝄫' || r <= 0x203f && unicode.In(r, unicode.P, unicode.S):
		return 1050, true
	case unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul, unicode.S):
		return 1000, false
	}
	return 650, false
}

// letter returns the widths, plain and bold, of letters beyond ASCII: by kind
// the greatest found where advances was found, and a fortieth more.
func letter(r rune) [2]int {
	const wide = "æœŵŉωώϖжшщюфњљ"
	switch lower := unicode.IsLower(r); {
	case r > 0x45f || 0x17f < r && r < 0x370:
		return [2]int{1600, 1600}
	case strings.ContainsRune(wide, r):
		return [2]int{1070, 1140}
	case strings.ContainsRune(wide, unicode.ToLower(r)):
		return [2]int{1170, 1370}
	case lower:
		return [2]int{790, 870}
	}
	return [2]int{960, 1050}
}

// wrap breaks text into lines that have room in width, between words or, where
// a word is longer than a line, within it. It returns at least one line.
func (f face) wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && f.room(line+" "+word) <= width {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for head := f.front(word, width); head != word; head = f.front(word, width) {
			lines, word = append(lines, head), word[len(head):]
		}
		line = word
	}
	return append(lines, line)
}

// front returns as much of text as has room in width, at least a character.
func (f face) front(text string, width int) string {
	thousandths := 0
	for at, r := range text {
		advance, _ := f.advance(r)
		thousandths += advance
		if at > 0 && (thousandths*f.size+999)/1000 > width {
			return text[:at]
		}
	}
	return text
}

// cut returns text, shortened with three dots where it has no room in width.
func (f face) cut(text string, width int) string {
	if f.room(text) <= width {
		return text
	}
	return strings.TrimRight(f.front(text, width-f.room("...")), " ") + "..."
}
