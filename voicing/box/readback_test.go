package box_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// facts are what a box says of a voicing, in whichever form it says it.
type facts struct {
	Chord   string
	Capo    int
	Strings map[int]stringFacts
	Barres  []string // finger, fret, thickest and thinnest string
}

type stringFacts struct {
	Muted  bool
	Fret   int
	Finger int
	Start  bool
}

// factsOf takes the facts from the voicing itself and its fingering.
func factsOf(v voicing.Voicing, f voicing.Fingering) facts {
	all := facts{Chord: v.Chord().String(), Capo: int(v.Instrument().Capo), Strings: map[int]stringFacts{}}
	for s := fretboard.StringNumber(1); s <= v.Shape().Strings(); s++ {
		fret, sounds := v.Shape().Fret(s)
		all.Strings[int(s)] = stringFacts{!sounds, int(fret), int(f.Finger(s)), v.Start().String == s}
	}
	for _, p := range f.Presses() {
		if p.Barre() {
			all.Barres = append(all.Barres, barreFact(int(p.Finger), int(p.Fret), int(p.Thick), int(p.Thin)))
		}
	}
	return all
}

func barreFact(finger, fret, thick, thin int) string {
	return fmt.Sprintf("finger %d, fret %d, strings %d to %d", finger, fret, thick, thin)
}

// dataFacts takes the facts from the data of a box.
func dataFacts(b box.Box) facts {
	first, _ := b.Window()
	columns := b.Columns()
	all := facts{Chord: b.Voicing().Chord().String(), Capo: int(b.Voicing().Instrument().Capo), Strings: map[int]stringFacts{}}
	for _, c := range columns {
		fret := 0
		if c.Row > 0 {
			fret = int(first) + c.Row - 1
		}
		all.Strings[int(c.String)] = stringFacts{c.Muted, fret, int(c.Finger), c.Start}
	}
	for _, barre := range b.Barres() {
		one, other := int(columns[barre.Left].String), int(columns[barre.Right].String)
		all.Barres = append(all.Barres, barreFact(int(barre.Finger), int(first)+barre.Row-1, max(one, other), min(one, other)))
	}
	return all
}

// A reading is what a box of text shows.
type reading struct {
	facts
	order       []int // the strings from left to right
	first, rows int
	nut         bool
}

var barreRun = regexp.MustCompile(`[1-4][-1-4]*-[-1-4]*[1-4]`)

// readText reads a box of text, knowing only what its legend says.
func readText(text string) (reading, error) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	top := slices.IndexFunc(lines, func(l string) bool { l = strings.TrimSpace(l); return l != "" && strings.Trim(l, "=+-") == "" })
	if top < 2 || len(lines) < top+5 || (len(lines)-top)%2 == 0 {
		return reading{}, fmt.Errorf("no box")
	}
	r := reading{facts: facts{Strings: map[int]stringFacts{}}, first: 1, nut: strings.Contains(lines[top], "=")}
	r.readHead(lines[:top-1])
	numbers, starts := lines[len(lines)-2], lines[len(lines)-1]
	places := map[int]int{} // of the strings
	for _, at := range regexp.MustCompile(`\d+`).FindAllStringIndex(numbers, -1) {
		s, _ := strconv.Atoi(numbers[at[0]:at[1]])
		r.order = append(r.order, s)
		places[s] = at[0]
		mark := charAt(lines[top-1], at[0])
		r.Strings[s] = stringFacts{Muted: mark == 'x', Fret: map[byte]int{'0': 0, 'x': 0, ' ': -1}[mark], Start: charAt(starts, at[0]) == '^'}
	}
	for i := top + 1; i < len(lines)-2; i += 2 {
		if err := r.readRow(lines[i], places); err != nil {
			return reading{}, err
		}
	}
	slices.Sort(r.Barres)
	return r, nil
}

func charAt(line string, at int) byte {
	if at < len(line) {
		return line[at]
	}
	return ' '
}

func (r *reading) readHead(lines []string) {
	for _, line := range lines {
		if capo, ok := strings.CutPrefix(line, "   capo "); ok {
			r.Capo, _ = strconv.Atoi(capo)
			continue
		}
		r.Chord += strings.TrimSpace(line)
	}
}

// readRow reads the space between two frets.
func (r *reading) readRow(line string, places map[int]int) error {
	r.rows++
	if label := strings.TrimSpace(line[:3]); label != "" {
		if r.rows != 1 {
			return fmt.Errorf("a number beside row %d", r.rows)
		}
		r.first, _ = strconv.Atoi(label)
	}
	fret := r.first + r.rows - 1
	for s, at := range places {
		stop := r.Strings[s]
		switch sign := charAt(line, at); {
		case sign == '|' || sign == '-':
			continue
		case sign == '*' && stop.Fret == -1:
			stop.Fret = fret
		case '1' <= sign && sign <= '4' && stop.Fret == -1:
			stop.Fret, stop.Finger = fret, int(sign-'0')
		default:
			return fmt.Errorf("%q on string %d in row %d", sign, s, r.rows)
		}
		r.Strings[s] = stop
	}
	at := func(column int) int {
		for s, place := range places {
			if place == column {
				return s
			}
		}
		return 0
	}
	for _, run := range barreRun.FindAllStringIndex(line, -1) {
		if run[0] < 3 {
			continue // the number on the left
		}
		one, other := at(run[0]), at(run[1]-1)
		r.Barres = append(r.Barres, barreFact(int(line[run[0]]-'0'), fret, max(one, other), min(one, other)))
	}
	return nil
}

var (
	capoSentence   = regexp.MustCompile(`^Frets are counted from the capo at fret (\d+)\.$`)
	barreSentence  = regexp.MustCompile(`^(Index|Middle|Ring|Little) finger across strings (\d+) (to|and) (\d+) at fret (\d+)\.$`)
	stringSentence = regexp.MustCompile(`^String (\d+)( muted| open|, fret (\d+))(, (index|middle|ring|little) finger)?(: start here)?\.$`)
)

// readWords reads the sentences after the chord; each is of a known kind, and
// each string has one.
func readWords(sentences []string) (facts, error) {
	all := facts{Strings: map[int]stringFacts{}}
	fingers := map[string]int{"index": 1, "middle": 2, "ring": 3, "little": 4}
	last := 0
	for _, sentence := range sentences[1:] {
		if m := capoSentence.FindStringSubmatch(sentence); m != nil {
			all.Capo = atoi(m[1])
		} else if m := barreSentence.FindStringSubmatch(sentence); m != nil && last == 0 {
			if (m[3] == "and") != (atoi(m[2]) == atoi(m[4])+1) {
				return all, fmt.Errorf("%q: to and and", sentence)
			}
			all.Barres = append(all.Barres, barreFact(fingers[strings.ToLower(m[1])], atoi(m[5]), atoi(m[2]), atoi(m[4])))
		} else if m := stringSentence.FindStringSubmatch(sentence); m != nil {
			s := atoi(m[1])
			if last != 0 && s != last-1 {
				return all, fmt.Errorf("string %d after string %d", s, last)
			}
			last = s
			all.Strings[s] = stringFacts{m[2] == " muted", atoi(m[3]), fingers[m[5]], m[6] != ""}
		} else if !strings.HasPrefix(sentence, "Four fingers cannot hold this shape: ") {
			return all, fmt.Errorf("what is %q?", sentence)
		}
	}
	return all, nil
}

func atoi(text string) int {
	n, _ := strconv.Atoi(text)
	return n
}

// disagreement says how the forms of b differ from its voicing held with f, or
// nothing.
func disagreement(b box.Box, f voicing.Fingering) string {
	want := factsOf(b.Voicing(), f)
	if diff := cmp.Diff(want, dataFacts(b)); diff != "" {
		return "data: " + diff
	}
	words, err := readWords(b.Words())
	if err != nil {
		return "words: " + err.Error()
	}
	words.Chord = want.Chord // its words have a test of their own
	if diff := cmp.Diff(want, words); diff != "" {
		return "words: " + diff
	}
	text, err := readText(b.Text())
	if err != nil {
		return "text: " + err.Error()
	}
	slices.Sort(want.Barres)
	if diff := cmp.Diff(want, text.facts); diff != "" {
		return "text: " + diff
	}
	first, rows := b.Window()
	if text.first != int(first) || text.rows != rows || text.nut != (first == 1) {
		return fmt.Sprintf("text: window %d, %d, nut %t; data %d, %d", text.first, text.rows, text.nut, first, rows)
	}
	for i, c := range b.Columns() {
		if text.order[i] != int(c.String) {
			return fmt.Sprintf("strings %v in the text", text.order)
		}
	}
	return ""
}
