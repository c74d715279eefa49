package svg

import (
	"slices"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A column is a moment of a bar and what stands under it.
type column struct {
	at    picking.Ticks
	x     int    // of its middle
	word  string // of the count
	rest  bool   // all strings are damped
	pick  int    // the index of what is plucked, or none
	notes []int  // the numbers of what is said at the end
	half  int    // half the room that all this takes
}

const none = -1

// columns returns every moment of a bar. first is the index of its first pick.
func (s *sheet) columns(bar picking.Bar, first int) []column {
	times := s.moments(bar)
	words := picking.CountAuto.Words(s.Meter, bar, times)
	columns := make([]column, 0, len(times)+len(words))
	for _, t := range times {
		columns = append(columns, column{at: t, pick: none})
	}
	for _, w := range words {
		columns = append(columns, column{at: w.At, word: w.Text, pick: none})
	}
	slices.SortStableFunc(columns, func(a, b column) int { return int(a.at - b.at) })
	columns = merge(columns)
	for i, pick := range bar.Picks {
		at(columns, pick.At).pick = first + i
	}
	s.markSilences(bar, columns)
	s.markNotes(bar, columns)
	for i := range columns {
		columns[i].half = s.half(&columns[i])
	}
	return columns
}

// moments lists the times at which something happens, with repetitions.
func (s *sheet) moments(bar picking.Bar) []picking.Ticks {
	times := make([]picking.Ticks, 0, 2*len(bar.Picks)+len(bar.Chords)+1)
	times = append(times, bar.At)
	for _, chord := range bar.Chords {
		times = append(times, chord.At)
	}
	for _, pick := range bar.Picks {
		times = append(times, pick.At)
	}
	for _, quiet := range s.silencesIn(bar) {
		if quiet.From > bar.At {
			times = append(times, quiet.From)
		}
	}
	return times
}

// merge makes one column of those at one time.
func merge(columns []column) []column {
	kept := columns[:0]
	for _, c := range columns {
		if n := len(kept); n > 0 && kept[n-1].at == c.at {
			kept[n-1].word += c.word
			continue
		}
		kept = append(kept, c)
	}
	return kept
}

// at returns the column of a time, which must have one.
func at(columns []column, t picking.Ticks) *column {
	i, _ := slices.BinarySearchFunc(columns, t, func(c column, t picking.Ticks) int { return int(c.at - t) })
	return &columns[i]
}

func (s *sheet) markSilences(bar picking.Bar, columns []column) {
	for _, quiet := range s.silencesIn(bar) {
		for i := range columns {
			if columns[i].at >= quiet.From && columns[i].at < quiet.To {
				columns[i].rest = true
			}
		}
	}
}

// markNotes writes the number of each remark to its chord, and that of each
// lost step to the pick that it leads from.
func (s *sheet) markNotes(bar picking.Bar, columns []column) {
	for _, chord := range bar.Chords {
		c := at(columns, chord.At)
		for _, text := range chord.Remarks {
			c.note(s.notes.remark(s.respell(text)))
		}
		for _, loss := range chord.Fit.Losses {
			where := c
			for _, pick := range bar.Picks {
				if pick.Event == loss.From && pick.At >= chord.At && pick.At < chord.At+chord.Length {
					where = at(columns, pick.At)
					break
				}
			}
			where.note(s.notes.loss(lostStep{chord.Chord.ChartIn(s.spelling), chord.Figure, loss}, s.lossText))
		}
	}
	for i := range columns {
		slices.Sort(columns[i].notes)
	}
}

func (c *column) note(number int) {
	if !slices.Contains(c.notes, number) {
		c.notes = append(c.notes, number)
	}
}

// half returns half the room that a column takes.
func (s *sheet) half(c *column) int {
	need := s.scale.count.room(c.word)
	if c.pick != none {
		need = max(need, s.scale.fret.room(fretText(s.picks[c.pick].Fret)), s.scale.sign)
	}
	if c.rest {
		need = max(need, s.scale.sign)
	}
	return need / 2
}

func fretText(f fretboard.Fret) string { return strconv.Itoa(int(f)) }

// numbersText lists numbers of notes in a frame: 1, 3-5.
func numbersText(numbers []int) string {
	text := ""
	for i := 0; i < len(numbers); {
		j := i + 1
		for j < len(numbers) && numbers[j] == numbers[j-1]+1 {
			j++
		}
		if j == i+2 {
			j--
		}
		if i > 0 {
			text += ", "
		}
		if text += strconv.Itoa(numbers[i]); j-i > 1 {
			text += "-" + strconv.Itoa(numbers[j-1])
		}
		i = j
	}
	return text
}

// frameWidth returns the room for the numbers of notes in their frame.
func (c *scale) frameWidth(numbers []int) int {
	return c.small.room(numbersText(numbers)) + c.small.size*40/100
}
