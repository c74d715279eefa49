package text

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
		return []section{{from: i - n, to: i, twice: true, heading: capital(bars(numbers(first))) +
			verb(n, " is", " are") + " played twice, the second time as " + bars(numbers(second)) + "."}}
	}
	return []section{{from: i - n, to: i}, {from: i, to: i + n, heading: capital(bars(numbers(second))) +
		verb(n, " repeats ", " repeat ") + bars(numbers(first)) + ", with " + s.changes(first, second) + "."}}
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
	return what + " in " + bars(where)
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
		return c.At+shift == d.At && c.Length == d.Length && s.name(c) == s.name(d)
	})
	sameSilences := slices.EqualFunc(s.silencesIn(a), s.silencesIn(b), func(q, r picking.Silence) bool {
		return max(q.From, a.At)+shift == max(r.From, b.At) && min(q.To, a.At+a.Length)+shift == min(r.To, b.At+b.Length)
	})
	return a.Length == b.Length && samePicks && sameChords && sameSilences
}

// writeSection writes the bars of a section, line by line.
func (s *sheet) writeSection(part section) {
	if part.heading != "" {
		s.paragraph("", part.heading)
		s.newLine()
	}
	size := part.to - part.from
	laid := make([][]stretch, size)
	for i, bar := range s.Bars[part.from:part.to] {
		number := strconv.Itoa(bar.Number)
		if part.twice {
			number += ", " + strconv.Itoa(s.Bars[part.to+i].Number)
		}
		laid[i] = s.layOut(bar, number)
	}
	for done := 0; done < size; {
		n := s.fitting(laid[done:], done)
		s.writeBars(laid[done : done+n])
		done += n
	}
}

// layOut lays a bar out, as one stretch if it goes in one line, else split.
func (s *sheet) layOut(bar picking.Bar, number string) []stretch {
	end := bar.At + bar.Length
	for _, spacing := range []spacing{inTime, tight} {
		if t := s.stretch(bar, number, bar.At, end, spacing); s.fits(t.width) {
			return []stretch{t}
		}
	}
	return s.split(bar, number)
}

// split cuts a bar at beats, each part as long as a line allows.
func (s *sheet) split(bar picking.Bar, number string) (parts []stretch) {
	beat, end := s.Meter.Beat(), bar.At+bar.Length
	for from := bar.At; from < end; {
		to := from + beat
		part := s.stretch(bar, number, from, min(to, end), inTime)
		if !s.fits(part.width) {
			part = s.stretch(bar, number, from, min(to, end), tight)
		}
		for ; to < end; to += beat {
			longer := s.stretch(bar, number, from, min(to+beat, end), inTime)
			if !s.fits(longer.width) {
				break
			}
			part = longer
		}
		parts, from = append(parts, part), to
	}
	return parts
}

// fits reports whether columns of a width go in one line.
func (s *sheet) fits(width int) bool { return s.margin+lead+width+1 <= s.width }

// fitting returns how many bars the next line takes: all, or as many as make
// up a phrase of 2, 4 or more, so that the lines break where phrases do. done
// bars of the section stand already.
func (s *sheet) fitting(bars [][]stretch, done int) int {
	n, width := 0, s.margin+1
	for n < len(bars) && len(bars[n]) == 1 && width+lead+bars[n][0].width <= s.width {
		width += lead + bars[n][0].width
		n++
	}
	if n == len(bars) {
		return n
	}
	phrase := 1
	for phrase*2 <= n && done%(phrase*2) == 0 {
		phrase *= 2
	}
	return phrase
}
