package json

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// A stopper walks backward through a passage and keeps when each string stops
// next: when it is plucked again, or when the chord changes and its fret does.
type stopper struct {
	passage picking.Passage
	picks   []picking.Pick
	at      [fretboard.MaxStrings + 1]picking.Ticks
}

// stops returns for each pick when its string stops sounding at the latest.
// Rests, of which a passage keeps no trace, may stop it sooner.
func (b *builder) stops() []picking.Ticks {
	s := stopper{passage: b.passage, picks: b.picks}
	end := b.passage.Length()
	after := end + b.passage.Meter.Bar() // played once, the last notes ring a bar longer
	if b.passage.Loop {
		after = end
	}
	for i := range s.at {
		s.at[i] = after
	}
	stops := make([]picking.Ticks, len(b.picks))
	if b.passage.Loop {
		s.walk(stops) // a first round finds what stops each string after the join
		for i := range s.at {
			s.at[i] += end
		}
	}
	s.walk(stops)
	return stops
}

func (s *stopper) walk(stops []picking.Ticks) {
	k := len(s.picks) - 1
	for i := len(s.passage.Bars) - 1; i >= 0; i-- {
		chords := s.passage.Bars[i].Chords
		for j := len(chords) - 1; j >= 0; j-- {
			for ; k >= 0 && s.picks[k].At >= chords[j].At; k-- {
				p := s.picks[k]
				stops[k] = s.at[p.String]
				s.at[p.String] = p.At
			}
			s.change(i, j)
		}
	}
}

// change stops the strings that a chord holds otherwise than the one before.
func (s *stopper) change(i, j int) {
	now := s.passage.Bars[i].Chords[j]
	before := now
	switch {
	case j > 0:
		before = s.passage.Bars[i].Chords[j-1]
	case i > 0:
		before = last(s.passage.Bars[i-1].Chords)
	case s.passage.Loop:
		before = last(last(s.passage.Bars).Chords)
	}
	for n := range s.passage.Instrument.Tuning.All().Thinnest() {
		was, sounded := before.Voicing.Shape().Fret(n)
		is, sounds := now.Voicing.Shape().Fret(n)
		if sounded != sounds || was != is {
			s.at[n] = now.At
		}
	}
}

func last[T any](list []T) T { return list[len(list)-1] }
