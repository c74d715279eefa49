package picking

import (
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// ParseProgression reads a chart: bars between bar lines, the chords of a bar
// separated by spaces. A chord may carry the shape to hold (Am=x02210), the
// figure to play (Am@2) and its beats (Am:3), in any order; chords without
// beats share what is left of the bar equally. % plays the bar before again,
// N.C. is silence, |: and :| play what stands between them twice. The end of a
// line of text is a bar line. The grammar is progression.ebnf.
func ParseProgression(text string) (Progression, error) {
	return ParseProgressionIn(text, fretboard.English)
}

// ParseProgressionIn is [ParseProgression] with the notes named as s has them;
// see [voicing.ParseChordIn]. What is wrong with the chart, here or when it is
// arranged, is told in that spelling.
func ParseProgressionIn(text string, s fretboard.Spelling) (Progression, error) {
	if err := fretboard.CheckText("chords", text); err != nil {
		return Progression{}, err
	}
	r := chartReader{text: text, spelling: s}
	for at := 0; ; {
		m, end := nextMark(text, at)
		if err := r.read(m); err != nil {
			return Progression{}, err
		}
		if m.kind == endOfChart {
			return Progression{r.bars, text, s}, r.check()
		}
		at = end
	}
}

// MustParseProgression is [ParseProgression] for text known to be good; it
// panics if not.
func MustParseProgression(text string) Progression {
	p, err := ParseProgression(text)
	if err != nil {
		panic(err)
	}
	return p
}

// A chartReader reads a chart mark by mark.
type chartReader struct {
	text     string
	spelling fretboard.Spelling
	bars     []ChartBar
	bar      ChartBar        // being read
	line     bool            // a bar line stands before, with no chord or line end since
	open     fretboard.Field // the open repeat's sign, if it has text
	opened   int             // the bar at which a repeat begins that ends next
}

func (r *chartReader) read(m mark) error {
	if m.kind == chordMark || m.kind == againMark {
		r.line = false
		return r.readBar(m)
	}
	empty := !r.endBar()
	if empty && r.line && (m.kind == barLine || m.kind == closeLine || m.kind == turnLine) {
		return r.malformed(m.field, "an empty bar", "write a chord, N.C. for silence or % for the bar before")
	}
	r.line = m.kind != lineEnd
	return r.readRepeat(m)
}

// endBar keeps the bar being read, if it holds anything.
func (r *chartReader) endBar() bool {
	full := r.bar.Again || len(r.bar.Chords) > 0
	if full {
		r.bars = append(r.bars, r.bar)
		r.bar = ChartBar{}
	}
	return full
}

// readRepeat opens and closes repeats.
func (r *chartReader) readRepeat(m mark) error {
	if m.kind == closeLine || m.kind == turnLine {
		if r.opened == len(r.bars) {
			return r.malformed(m.field, "the repeat has no bars", "write its bars before :|")
		}
		r.bars[r.opened].Opens, r.bars[len(r.bars)-1].Closes = true, true
		r.open, r.opened = fretboard.Field{}, len(r.bars)
	}
	if m.kind == openLine || m.kind == turnLine {
		if r.open.Text != "" {
			return r.malformed(m.field, "a repeat within a repeat", "end the first with :|")
		}
		r.open, r.opened = m.field, len(r.bars)
	}
	return nil
}

// check refuses a chart that ends too soon.
func (r *chartReader) check() error {
	if r.open.Text != "" {
		return r.malformed(r.open, "the repeat has no end", "write :| after its last bar")
	}
	if len(r.bars) == 0 {
		return r.malformed(fretboard.Field{}, "no chords", "write chords between bar lines, such as Am | G | Dm | E")
	}
	return nil
}

// readBar adds a chord, or the sign for the bar before, to the bar being read.
func (r *chartReader) readBar(m mark) error {
	if r.bar.Again || m.kind == againMark && len(r.bar.Chords) > 0 {
		return r.malformed(m.field, "% shares its bar", "write % alone between bar lines")
	}
	if m.kind == againMark {
		if len(r.bars) == 0 {
			return r.malformed(m.field, "no bar stands before %", "write the first bar's chords")
		}
		r.bar = ChartBar{Again: true, at: m.field}
		return nil
	}
	m.field.Text = strings.TrimSuffix(m.field.Text, ",") // a comma after a chord only separates
	chord, err := r.readChord(m.field)
	if len(r.bar.Chords) == 0 {
		r.bar.at = m.field
	}
	r.bar.Chords = append(r.bar.Chords, chord)
	return err
}

// readChord reads a symbol and what it carries.
func (r *chartReader) readChord(f fretboard.Field) (ChartChord, error) {
	chord := ChartChord{at: f}
	symbol, rest := cutAny(f.Text, "=@:")
	if symbol == "" {
		return chord, r.malformed(f, "no chord stands in front", "write the chord first, without a space, such as Am=x02210, Am@2 or Am:3")
	}
	if reason, mend := mistaken(symbol); mend != "" {
		return chord, r.malformed(f, reason, mend)
	}
	var err error
	if chord.Chord, err = voicing.ParseChordIn(symbol, r.spelling); err != nil {
		return chord, fretboard.Within(err, "chords", r.text, f.At)
	}
	for at := f.At + len(symbol); rest != ""; {
		var part string
		part, rest = cutAny(rest[1:], "=@:")
		if err := r.readPart(&chord, r.text[at], fretboard.Field{Text: part, At: at + 1}); err != nil {
			return chord, err
		}
		at += 1 + len(part)
	}
	return chord, nil
}

// mistaken knows what charts hold that is no chord, and what to write instead.
func mistaken(symbol string) (reason, mend string) {
	if strings.Trim(symbol, "/.") == "" {
		return "not a chord", "write how long the chord before lasts, such as Am:4"
	}
	if digits := strings.Trim(symbol, "xX×"); digits != symbol && digits != "" && len(digits) < 3 && strings.Trim(digits, "0123456789") == "" {
		return "not a chord", "write the bars again, or |: and :| around them to play them twice"
	}
	if _, err := voicing.ParseShape(symbol); err == nil {
		return "a shape without its chord", "write the chord first, such as Am=x02210"
	}
	return "", ""
}

// cutAny cuts text before the first of the characters of set.
func cutAny(text, set string) (before, rest string) {
	if i := strings.IndexAny(text, set); i >= 0 {
		return text[:i], text[i:]
	}
	return text, ""
}

// readPart reads what follows one of the signs =, @ and :.
func (r *chartReader) readPart(chord *ChartChord, sign byte, f fretboard.Field) error {
	switch {
	case sign == '=' && chord.Shape.Strings() == 0:
		shape, err := voicing.ParseShape(f.Text)
		chord.Shape, chord.held = shape, f
		if err == nil && chord.Chord.Silent() {
			return r.malformed(f, "silence has no shape", "write N.C. alone")
		}
		return fretboard.Within(err, "chords", r.text, f.At)
	case sign == '@' && chord.Figure == 0:
		n, err := strconv.ParseUint(f.Text, 10, 16)
		chord.Figure = int(n)
		if err != nil || n == 0 {
			return r.malformed(f, "not the number of a figure", "count the figures from 1, such as Am@2")
		}
		return nil
	case sign == ':' && chord.Beats == 0:
		chord.Beats = parseBeats(f.Text)
		if chord.Beats == 0 {
			return r.malformed(f, "not a number of beats", "write whole beats or quarters of one, such as Am:3 or Am:1.5")
		}
		return nil
	}
	return r.malformed(f, "a second "+string(rune(sign))+" on one chord", "leave one out")
}

// parseBeats reads beats to the quarter, more than 0 and less than 1000, or
// returns 0.
func parseBeats(text string) Beats {
	whole, part, point := strings.Cut(text, ".")
	n, err := strconv.ParseUint("0"+whole, 10, 16)
	quarters, known := map[string]Beats{"25": 1, "5": 2, "50": 2, "75": 3, "0": 0}[part]
	if err != nil || n >= 1000 || point && !known || !point && whole == "" {
		return 0
	}
	return Beats(n)*quartersOfBeat + quarters
}

func (r *chartReader) malformed(at fretboard.Field, reason, mend string) error {
	return &fretboard.SyntaxError{Place: chartPlace(r.text, at, reason, mend)}
}

func chartPlace(text string, at fretboard.Field, reason, mend string) fretboard.Place {
	return fretboard.Place{Notation: "chords", Source: text, Offset: at.At, Length: len(at.Text), Reason: reason, Mend: mend}
}
