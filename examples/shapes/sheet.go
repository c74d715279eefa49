package main

import (
	"fmt"
	"regexp"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// width is the longest line of a sheet, but for what no line can break.
const width = 80

// A sheet takes the lines of an answer in text.
type sheet struct {
	out      strings.Builder
	spelling fretboard.Spelling
	words    bool // sentences instead of boxes
}

// line writes one line.
func (s *sheet) line(format string, args ...any) {
	s.out.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}

// entry writes a label and a text.
func (s *sheet) entry(indent int, label, text string) {
	const column = 8 // of labels
	s.hang(strings.Repeat(" ", indent)+fmt.Sprintf("%-*s", column, label), text)
}

// hang writes a text behind a front, broken into lines that begin below its own
// beginning.
func (s *sheet) hang(front, text string) {
	for _, line := range broken(text, width-len(front)) {
		s.line("%s%s", front, line)
		front = strings.Repeat(" ", len(front))
	}
}

// broken breaks a text at spaces.
func broken(text string, room int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case len(line)+1+len(word) > room:
			lines, line = append(lines, line), word
		default:
			line += " " + word
		}
	}
	return append(lines, line)
}

// symbols finds what may be a note or a chord in a text: in a sentence of small
// letters, a word that begins with the letter of a note.
var symbols = regexp.MustCompile(`\b[A-G][^\s,;:|=]*`)

// spell turns the notes and chords of an English text into the sheet's spelling.
func (s *sheet) spell(text string) string {
	if s.spelling == fretboard.English {
		return text
	}
	return symbols.ReplaceAllStringFunc(text, func(word string) string {
		if n, err := fretboard.ParseNote(word); err == nil {
			return n.StringIn(s.spelling)
		}
		if c, err := voicing.ParseChord(word); err == nil {
			return c.StringIn(s.spelling)
		}
		return word
	})
}

// pitches prints pitches with their notes in the sheet's spelling.
func (s *sheet) pitches(names []string) string {
	all := make([]string, len(names))
	for i, name := range names {
		all[i] = name
		if p, err := fretboard.ParsePitchName(name); err == nil {
			all[i] = p.Note.StringIn(s.spelling) + fmt.Sprint(p.Octave)
		}
	}
	return strings.Join(all, " ")
}

// heading writes what the answers have in common.
func (s *sheet) heading(h heading) {
	tuning := s.pitches(strings.Fields(h.Tuning))
	if t, err := fretboard.ParseTuning(h.Tuning); err == nil && t.Name() != "" {
		tuning = t.Name() + ", " + tuning
	}
	s.entry(0, "tuning", fmt.Sprintf("%s (string %d to string 1)", tuning, len(strings.Fields(h.Tuning))))
	if h.Capo > 0 {
		s.entry(0, "capo", fmt.Sprintf("at fret %d, from which frets count; all sounds %s higher than named", h.Capo, counted(h.Capo, "semitone")))
	}
	if h.Hand != fretboard.RightHanded.String() {
		s.entry(0, "hand", map[string]string{"left": "left-handed, restrung: boxes are mirrored", "turned": "left-handed, turned over without restringing"}[h.Hand])
	}
	if len(h.Limits) > 0 {
		s.entry(0, "limits", strings.Join(h.Limits, ", "))
	}
}

// shapes shows shapes as boxes, or in sentences, and then one by one what they ask.
func (s *sheet) shapes(all []held) {
	if boxes := drawable(all); !s.words && len(boxes) > 0 {
		s.boxes(boxes)
		s.line("")
	}
	if !s.words && len(all) > 1 {
		s.line("The shapes one by one, in the order of their boxes:")
		s.line("")
	}
	for i, h := range all {
		if i > 0 {
			s.line("")
		}
		s.shape(i+1, h)
	}
}

// tallest is the most rows of a box that still shows a shape at a glance.
const tallest = 10

// rows counts the rows that the box of a shape takes.
func (h held) rows() int {
	_, rows := h.box.Window()
	return rows
}

func drawable(all []held) (boxes []box.Box) {
	for _, h := range all {
		if h.rows() <= tallest {
			boxes = append(boxes, h.box)
		}
	}
	return boxes
}

func (s *sheet) boxes(boxes []box.Box) {
	if err := box.Encode(&s.out, boxes, box.Options{Spelling: s.spelling}); err != nil {
		panic(err) // the options are good, and a builder takes everything
	}
}

// shape writes what there is to know of one shape.
func (s *sheet) shape(number int, h held) {
	fingers := ""
	if h.Fingers != "" {
		fingers = ", fingers " + h.Fingers
	}
	s.hang(fmt.Sprintf("%-2d ", number), fmt.Sprintf("%s %s%s; start on string %d, the %s; cost %d",
		s.spell(h.Chord), h.Shape, fingers, h.Start.String, h.Start.Reason, h.Cost))
	if s.words {
		s.hang("   ", strings.Join(h.Words, " "))
	}
	s.entry(3, "hand", s.hand(h))
	if !s.words && h.rows() > tallest {
		s.entry(3, "box", fmt.Sprintf("none, it would take %d rows", h.rows()))
	}
	if len(h.Sound) > 0 {
		s.entry(3, "sound", s.spell(strings.Join(h.Sound, "; ")))
	}
}

// hand says what a shape asks of the hand. Why one cannot be held is said in the
// sentences or below the box, where there is any.
func (s *sheet) hand(h held) string {
	if h.Fingers != "" {
		return fmt.Sprintf("%s, effort %d: %s", h.Hold, h.Effort, strings.Join(h.Hand, "; "))
	}
	words := h.Hand
	if s.words || h.rows() <= tallest {
		words = words[1:]
	}
	if len(words) == 0 {
		return h.Hold
	}
	return h.Hold + ": " + strings.Join(words, "; ")
}

// legend explains the words and numbers about shapes.
func (s *sheet) legend() {
	s.entry(0, "effort", fmt.Sprintf("what the hand has to do, in points: easy up to %d, moderate up to %d, hard above", easyEffort, moderateEffort))
	s.entry(0, "cost", "what shapes are ranked by: the effort, the place on the neck and the sound; a point is worth a millimetre nearer the nut")
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// list prints string 5, or strings 5 and 3.
func list(noun string, numbers []int) string {
	texts := make([]string, len(numbers))
	for i, n := range numbers {
		texts[i] = fmt.Sprint(n)
	}
	if len(texts) == 1 {
		return noun + " " + texts[0]
	}
	return noun + "s " + together(texts)
}

// together prints two words or more as a sentence does: 5, 4 and 3.
func together(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
