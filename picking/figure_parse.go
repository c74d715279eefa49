package picking

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"weft.example/fretboard"
)

// ParseFigure reads a figure: slots separated by spaces or commas, each a
// string number (5), perhaps with the teacher's own stroke (5d, 2u), a hyphen
// to let the note before ring, or a full stop for a damped rest; bar lines
// between bars. In front, before a colon, may stand the slot's note value and
// the root string: "1/8 root 5: 5 3 2 1 2 3". The grammar is figure.ebnf.
func ParseFigure(text string) (Figure, error) {
	if err := fretboard.CheckText("figure", text); err != nil {
		return Figure{}, err
	}
	return parseFigure(text, 0, len(text))
}

// ParseFigures reads figures with semicolons between them.
func ParseFigures(text string) (Figures, error) {
	if err := fretboard.CheckText("figure", text); err != nil {
		return nil, err
	}
	var figures Figures
	for at := 0; at <= len(text); {
		end := at + len(text[at:])
		if i := strings.IndexByte(text[at:], ';'); i >= 0 {
			end = at + i
		}
		f, err := parseFigure(text, at, end)
		if err != nil {
			return nil, err
		}
		figures, at = append(figures, f), end+1
	}
	return figures, nil
}

// MustParseFigure is [ParseFigure] for text known to be good; it panics if not.
func MustParseFigure(text string) Figure {
	f, err := ParseFigure(text)
	if err != nil {
		panic(err)
	}
	return f
}

// A figureReader reads the figure that stands in part of a text.
type figureReader struct {
	text   string
	figure Figure
}

func parseFigure(text string, from, to int) (Figure, error) {
	r := figureReader{text: text}
	r.figure.source.text = text
	if colon := strings.IndexByte(text[from:to], ':'); colon >= 0 {
		if err := r.readHead(from, from+colon); err != nil {
			return Figure{}, err
		}
		from += colon + 1
	}
	if err := r.readBars(from, to); err != nil {
		return Figure{}, err
	}
	return r.figure, r.check(from, to)
}

func (r *figureReader) fields(from, to int) []fretboard.Field {
	fields := fretboard.Fields(r.text[from:to], " ,")
	for i := range fields {
		fields[i].At += from
	}
	return fields
}

// readHead reads what stands before the colon: a note value, a root, or both.
func (r *figureReader) readHead(from, to int) error {
	fields := r.fields(from, to)
	if len(fields) == 0 {
		return r.malformed(fretboard.Field{At: from}, "nothing before the colon",
			"name the slot, the root string or both, such as 1/8 root 5:")
	}
	for i := 0; i < len(fields); i++ {
		field := fields[i]
		if strings.EqualFold(field.Text, "root") && i+1 < len(fields) && r.figure.root == 0 {
			i++
			n, err := r.stringNumber(fields[i], fields[i].Text)
			if err != nil {
				return err
			}
			r.figure.root = n
			continue
		}
		value := parseNoteValue(field.Text)
		if value == 0 || r.figure.value != 0 {
			return r.malformed(field, "neither a note value nor a root string",
				"write a value from 1/1 to 1/64, 3/8 for a dotted quarter or 1/12 for a triplet eighth, and the root as: root 5")
		}
		r.figure.value = value
	}
	return nil
}

func (r *figureReader) readBars(from, to int) error {
	for {
		end := to
		if line := strings.IndexByte(r.text[from:to], '|'); line >= 0 {
			end = from + line
		}
		fields := r.fields(from, end)
		if len(fields) == 0 && (end < to || len(r.figure.bars) > 0) {
			return r.malformed(fretboard.Field{At: end, Text: r.text[end:min(end+1, to)]}, "an empty bar",
				"write a full stop for a rest or a hyphen to let the note ring")
		}
		for _, field := range fields {
			if err := r.readSlot(field); err != nil {
				return err
			}
		}
		r.figure.bars = append(r.figure.bars, len(r.figure.slots))
		if end == to {
			return nil
		}
		from = end + 1
	}
}

// readSlot reads one slot, or a run of hyphens as so many holds.
func (r *figureReader) readSlot(field fretboard.Field) error {
	if strings.Trim(field.Text, dashes) == "" {
		for at, dash := range field.Text {
			r.add(Slot{Kind: Hold}, fretboard.Field{Text: string(dash), At: field.At + at})
		}
		return nil
	}
	if field.Text == "." {
		r.add(Slot{}, field)
		return nil
	}
	slot := Slot{Kind: Pluck}
	number := field.Text
	switch number[len(number)-1] {
	case 'd', 'D':
		slot.Own = DownStroke
	case 'u', 'U':
		slot.Own = UpStroke
	}
	if slot.Own != Free {
		number = number[:len(number)-1]
	}
	n, err := r.stringNumber(field, number)
	slot.String = n
	r.add(slot, field)
	return err
}

// dashes are the characters that people type for a hyphen.
const dashes = "-\u2010\u2011\u2012\u2013\u2014\u2212"

func (r *figureReader) add(slot Slot, at fretboard.Field) {
	r.figure.slots = append(r.figure.slots, slot)
	r.figure.source.places = append(r.figure.source.places, at)
}

func (r *figureReader) stringNumber(field fretboard.Field, digits string) (fretboard.StringNumber, error) {
	n, err := strconv.Atoi(digits)
	switch {
	case digits == "" || strings.Trim(digits, "0123456789") != "":
		return 0, r.malformed(field, "not a slot", slotMend(field.Text))
	case err != nil || n < 1 || n > fretboard.MaxStrings:
		return 0, &fretboard.ImpossibleError{Place: r.place(field,
			"no string "+front(digits, 8)+"; strings are 1 to "+strconv.Itoa(fretboard.MaxStrings), slotMend(field.Text))}
	}
	return fretboard.StringNumber(n), nil
}

// slotMend guesses what was meant: notes written without spaces, most often.
func slotMend(text string) string {
	const help = "write a string number, a hyphen to let ring, or a full stop to rest"
	if len(text) > 1 && len(text) <= 16 && strings.Trim(text, "123456789"+dashes) == "" {
		notes := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(dashes, r) })
		return "put spaces between the slots: " + strings.Join(strings.Split(strings.Join(notes, ""), ""), " ")
	}
	if strings.Contains(text, "/") {
		return "write a colon after the slot's note value, such as 1/8: 5 3 2 1"
	}
	return help
}

// check refuses a figure that reads well and cannot be played at all.
func (r *figureReader) check(from, to int) error {
	f := r.figure
	if len(f.slots) > MaxSlots {
		return &fretboard.ImpossibleError{Place: r.place(f.source.places[MaxSlots],
			digits(len(f.slots))+" slots; the limit is "+digits(MaxSlots), "cut the figure in two: a; b")}
	}
	if len(f.events()) == 0 {
		return r.malformed(fretboard.Field{Text: r.text[from:to], At: from}, "the figure plucks no string",
			"write string numbers, such as 5 3 2 1 2 3")
	}
	return nil
}

func (r *figureReader) malformed(at fretboard.Field, reason, mend string) error {
	return &fretboard.SyntaxError{Place: r.place(at, reason, mend)}
}

func (r *figureReader) place(at fretboard.Field, reason, mend string) fretboard.Place {
	return fretboard.Place{Notation: "figure", Source: r.text, Offset: at.At, Length: len(at.Text), Reason: reason, Mend: mend}
}

// front cuts text to at most n bytes, at a character's edge.
func front(text string, n int) string {
	if len(text) <= n {
		return text
	}
	for n > 0 && !utf8.RuneStart(text[n]) {
		n--
	}
	return text[:n] + "..."
}
