package text

import (
	"slices"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// A column is a moment of a bar and what stands under it.
type column struct {
	at    picking.Ticks
	x     int    // characters from the stretch's first column
	word  string // of the count
	mark  string // on the stroke line
	start string // the start string's number, under the pick that begins on it
	need  int    // characters that its longest text takes, with a space
}

// columns returns every moment of a bar, marked with the count, the strokes,
// the silences and the start strings.
func (s *sheet) columns(bar picking.Bar) []column {
	times := s.moments(bar)
	words := s.count.Words(s.Meter, bar, times)
	columns := make([]column, 0, len(times)+len(words))
	for _, t := range times {
		columns = append(columns, column{at: t})
	}
	for _, w := range words {
		columns = append(columns, column{at: w.At, word: w.Text})
	}
	sortColumns(columns)
	columns = merge(columns)
	s.mark(bar, columns)
	for i := range columns {
		c := &columns[i]
		c.need = max(c.need, len(c.word), len(c.mark), len(c.start)) + 1
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

// silencesIn returns the silences that reach into a bar.
func (s *sheet) silencesIn(bar picking.Bar) []picking.Silence {
	from, _ := slices.BinarySearchFunc(s.silences, bar.At, func(q picking.Silence, t picking.Ticks) int { return int(q.To - t - 1) })
	to := from
	for to < len(s.silences) && s.silences[to].From < bar.At+bar.Length {
		to++
	}
	return s.silences[from:to]
}

// sortColumns puts columns in the order of time; those of one time stay as they
// are. They come as a few lists, each in order, most of them short.
func sortColumns(columns []column) {
	for i := range columns {
		for ; i > 0 && columns[i].at < columns[i-1].at; i-- {
			columns[i-1], columns[i] = columns[i], columns[i-1]
		}
	}
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

// mark writes strokes, silences and start strings to their columns.
func (s *sheet) mark(bar picking.Bar, columns []column) {
	for _, quiet := range s.silencesIn(bar) {
		for i := range columns {
			if columns[i].at >= quiet.From && columns[i].at < quiet.To {
				columns[i].mark = restMark
			}
		}
	}
	for _, pick := range bar.Picks {
		c := at(columns, pick.At)
		c.mark = strokeMark(pick.Stroke)
		c.need = max(c.need, len(fretText(pick.Fret)))
	}
	for _, chord := range bar.Chords {
		start := chord.Voicing.Start().String
		first := slices.IndexFunc(bar.Picks, func(p picking.Pick) bool {
			return p.String == start && p.At >= chord.At && p.At < chord.At+chord.Length
		})
		if first >= 0 {
			at(columns, bar.Picks[first].At).start = strconv.Itoa(int(start))
		}
	}
}

// What stands on the stroke line.
const (
	downMark = "D"
	upMark   = "U"
	restMark = "."
)

func strokeMark(s picking.Stroke) string {
	switch s {
	case picking.DownStroke:
		return downMark
	case picking.UpStroke:
		return upMark
	}
	return ""
}

func fretText(f fretboard.Fret) string { return strconv.Itoa(int(f)) }

// at returns the column of a time, which must have one.
func at(columns []column, t picking.Ticks) *column {
	i, _ := slices.BinarySearchFunc(columns, t, func(c column, t picking.Ticks) int { return int(c.at - t) })
	return &columns[i]
}
