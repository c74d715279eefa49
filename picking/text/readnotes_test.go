package text_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking"
)

// expand reads what names bars: bar 1; bars 1, 5 and 9; bars 1 to 4 and 6.
func expand(text string) (numbers []int) {
	_, text, _ = strings.Cut(text, " ")
	for _, piece := range strings.Split(strings.ReplaceAll(text, " and ", ", "), ", ") {
		from, to, isRange := strings.Cut(piece, " to ")
		a, _ := strconv.Atoi(from)
		b := a
		if isRange {
			b, _ = strconv.Atoi(to)
		}
		for n := a; n <= b; n++ {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

const barsPattern = `([Bb]ars? [0-9]+(?:(?:, | and | to )[0-9]+)*)`

var (
	repeatPattern = regexp.MustCompile(`^` + barsPattern + ` repeats? ` + barsPattern + `, with (changes|other strokes)(?: in ` + barsPattern + `)?\.$`)
	twicePattern  = regexp.MustCompile(`^` + barsPattern + ` (?:is|are) played twice, the second time as ` + barsPattern + `\.$`)
	saidPattern   = regexp.MustCompile(`^(\S+), ` + barsPattern + `: (.*)$`)
	lossPattern   = regexp.MustCompile(`^(?:the figure|figure (\d+)) (.*?) (from note .*), but here it (.*)$`)
	stepPattern   = regexp.MustCompile(`from note (\d+)( round)? to note (\d+)`)
)

// repeats compares what the headings say with the passage: every second
// playing of a bar is named, folded or not, with what it does otherwise.
func (r *reader) repeats() error {
	type repeat struct {
		First   int
		Folded  bool
		Changed bool
		Strokes bool // and nothing else, in all the bars that the heading names
	}
	got, want := map[int]repeat{}, map[int]repeat{}
	for _, heading := range r.sheet.headings {
		if m := twicePattern.FindStringSubmatch(heading); m != nil {
			firsts := expand(m[1])
			for i, number := range expand(m[2]) {
				got[number] = repeat{First: firsts[i], Folded: true}
			}
			continue
		}
		m := repeatPattern.FindStringSubmatch(heading)
		if m == nil {
			return fmt.Errorf("heading %q", heading)
		}
		seconds, firsts := expand(m[1]), expand(m[2])
		for i, number := range seconds {
			got[number] = repeat{First: firsts[i], Changed: m[4] == "" || slices.Contains(expand(m[4]), number),
				Strokes: m[3] == "other strokes"}
		}
	}
	for i := 0; i < len(r.Bars); i++ {
		from := i
		for i < len(r.Bars) && r.Bars[i].Pass == 2 {
			i++
		}
		n := i - from
		strokes := true
		for k := from; k < i; k++ {
			strokes = strokes && r.alike(r.Bars[k-n], r.Bars[k], false)
		}
		for k := from; k < i; k++ {
			first, second := r.Bars[k-n], r.Bars[k]
			folded := r.sheet.bars[first.Number] == r.sheet.bars[second.Number]
			want[second.Number] = repeat{first.Number, folded, !r.alike(first, second, true), strokes && !folded}
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		return fmt.Errorf("repeats: %s", diff)
	}
	return nil
}

// alike compares two bars as a player plays them, silences and all, with their
// strokes or without.
func (r *reader) alike(a, b picking.Bar, strokes bool) bool {
	play := func(bar picking.Bar) (text string) {
		for _, p := range bar.Picks {
			text += fmt.Sprintln(p.At-bar.At, p.Length, p.String, p.Fret)
			if strokes {
				text += p.Stroke.String()
			}
		}
		for _, c := range bar.Chords {
			text += fmt.Sprintln(c.At-bar.At, c.Length, c.Chord, c.Voicing.Shape(), c.Figure)
		}
		for t := bar.At; t < bar.At+bar.Length; t += 10 { // divides every note value
			text += fmt.Sprint(r.sounds(t))
		}
		return text
	}
	return play(a) == play(b)
}

// losses compares the losses that the sheet words with the passage's.
func (r *reader) losses() error {
	type lost struct {
		Chord    string
		Bar      int
		From, To int
		Way, Got string
	}
	ways := map[picking.Direction]string{picking.Same: "stays on its string", picking.Up: "goes toward string 1",
		picking.Down: "goes toward string " + strconv.Itoa(int(r.Instrument.Tuning.Strings()))}
	got, want := map[lost]bool{}, map[lost]bool{}
	for _, e := range r.sheet.entries {
		if e.label != "loss" {
			continue
		}
		said := saidPattern.FindStringSubmatch(e.text)
		if said == nil {
			return fmt.Errorf("loss %q", e.text)
		}
		m := lossPattern.FindStringSubmatch(said[3])
		if m == nil {
			return fmt.Errorf("loss %q", said[3])
		}
		for _, step := range stepPattern.FindAllStringSubmatch(m[3], -1) {
			from, _ := strconv.Atoi(step[1])
			to, _ := strconv.Atoi(step[3])
			for _, number := range expand(said[2]) {
				got[lost{said[1], number, from, to, m[2], m[4]}] = true
			}
		}
	}
	for _, bar := range r.Bars {
		for _, chord := range bar.Chords {
			for _, loss := range chord.Fit.Losses {
				want[lost{r.respelled(chord.Chord.String()), bar.Number, loss.From, loss.To, ways[loss.Want], ways[loss.Got]}] = true
			}
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		return fmt.Errorf("losses: %s", diff)
	}
	return nil
}

// remarks compares the remarks on the sheet with the passage's, each once.
func (r *reader) remarks() error {
	type remark struct {
		Chord string
		Bar   int
		Text  string
	}
	got, want := map[remark]int{}, map[remark]int{}
	for _, e := range r.sheet.entries {
		if e.label != "remark" {
			continue
		}
		heads := strings.Split(e.text, "; ")
		if last := saidPattern.FindStringSubmatch(heads[len(heads)-1]); last != nil {
			for _, head := range heads[:len(heads)-1] {
				said := saidPattern.FindStringSubmatch(head + ": " + last[3])
				for _, number := range expand(said[2]) {
					got[remark{said[1], number, said[3]}]++
				}
			}
			for _, number := range expand(last[2]) {
				got[remark{last[1], number, last[3]}]++
			}
			continue
		}
		got[remark{Text: e.text}]++
	}
	for _, bar := range r.Bars {
		for _, chord := range bar.Chords {
			for _, text := range chord.Remarks {
				want[remark{r.respelled(chord.Chord.String()), bar.Number, r.respelled(text)}] = 1
			}
		}
	}
	for _, text := range r.Remarks {
		want[remark{Text: r.respelled(text)}] = 1
	}
	if diff := cmp.Diff(want, got); diff != "" {
		return fmt.Errorf("remarks: %s", diff)
	}
	return nil
}
