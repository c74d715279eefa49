package svg

import (
	"slices"
	"strconv"

	"weft.example/picking"
)

// A section is bars that stand together on the sheet, from and to counting
// from 0; what a repeat plays is one.
type section struct {
	from, to int
	heading  string
	twice    bool // the next bars, as many, are the same and do not stand there
}

// sections divides the passage at its repeats.
func (s *sheet) sections() (list []section) {
	done := 0
	plain := func(to int) {
		if done < to {
			list = append(list, section{from: done, to: to})
		}
	}
	for i := 0; i < len(s.Bars); i++ {
		n := s.SecondPlaying(i)
		if n == 0 {
			continue
		}
		plain(i - n)
		list = append(list, s.repeat(i, n)...)
		i += n - 1
		done = i + 1
	}
	plain(len(s.Bars))
	return list
}

// repeat returns the section of n bars that are played again from bar i on, or
// two if the second playing differs.
func (s *sheet) repeat(i, n int) []section {
	first, second := s.Bars[i-n:i], s.Bars[i:i+n]
	if slices.EqualFunc(first, second, s.same) {
		return []section{{from: i - n, to: i, twice: true}}
	}
	return []section{{from: i - n, to: i}, {from: i, to: i + n, heading: capital(barsText(numbers(second))) +
		verb(n, " repeats ", " repeat ") + barsText(numbers(first)) + ", with " + s.changes(first, second) + "."}}
}

// changes says what the second playing of bars does otherwise.
func (s *sheet) changes(first, second []picking.Bar) string {
	what := "other strokes"
	var where []int
	for k := range second {
		if !s.sameNotes(first[k], second[k]) {
			what = "changes"
		}
		if !s.same(first[k], second[k]) {
			where = append(where, second[k].Number)
		}
	}
	if len(where) == len(second) {
		return what
	}
	return what + " in " + barsText(where)
}

func numbers(bars []picking.Bar) []int {
	list := make([]int, len(bars))
	for i, bar := range bars {
		list[i] = bar.Number
	}
	return list
}

// same reports whether a player does the same in two bars.
func (s *sheet) same(a, b picking.Bar) bool {
	return s.sameNotes(a, b) && slices.EqualFunc(a.Picks, b.Picks, func(p, q picking.Pick) bool {
		return p.Stroke == q.Stroke
	})
}

// sameNotes is same but for the strokes.
func (s *sheet) sameNotes(a, b picking.Bar) bool {
	shift := b.At - a.At
	samePicks := slices.EqualFunc(a.Picks, b.Picks, func(p, q picking.Pick) bool {
		return p.At+shift == q.At && p.Length == q.Length && p.String == q.String && p.Fret == q.Fret
	})
	sameChords := slices.EqualFunc(a.Chords, b.Chords, func(c, d picking.HeldChord) bool {
		return c.At+shift == d.At && c.Length == d.Length && c.Chord == d.Chord && c.Voicing == d.Voicing && c.Figure == d.Figure
	})
	sameSilences := slices.EqualFunc(s.silencesIn(a), s.silencesIn(b), func(q, r picking.Silence) bool {
		return max(q.From, a.At)+shift == max(r.From, b.At) && min(q.To, a.At+a.Length)+shift == min(r.To, b.At+b.Length)
	})
	return a.Length == b.Length && samePicks && sameChords && sameSilences
}

// silencesIn returns the silences that reach into a bar.
func (s *sheet) silencesIn(bar picking.Bar) []picking.Silence {
	from, _ := slices.BinarySearchFunc(s.silences, bar.At, func(q picking.Silence, t picking.Ticks) int { return int(q.To - t - 1) })
	to := from
	for to < len(s.silences) && s.silences[to].From < bar.At+bar.Length {
		to++
	}
	return s.silences[from:to]
}

// barNumber returns the number of a bar of a section: both, if it stands for
// two.
func (s *sheet) barNumber(part section, i int) string {
	number := strconv.Itoa(s.Bars[i].Number)
	if part.twice {
		number += ", " + strconv.Itoa(s.Bars[i+part.to-part.from].Number)
	}
	return number
}
