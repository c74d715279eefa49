package synth

import (
	"weft.example/fretboard"
	"weft.example/picking"
)

// A score is what a player plays, prepared. It does not change. Its times are
// ticks from the start of the passage.
type score struct {
	from, to            picking.Ticks // of the bars played
	bar, beat, division picking.Ticks // lengths of a usual bar, of a beat and of what divides it
	bars                []span
	notes               []note
	room, pluckRoom     int // the most frames that any note's loop and pluck take
}

// A span is a bar.
type span struct {
	at, length picking.Ticks
	first      int // its first note, or where that would be
}

// A note is a pick, ready to sound.
type note struct {
	tone         *tone
	at           picking.Ticks
	stop, joined picking.Ticks // when it stops in the last round and in those before
	index        int           // of the pick in the passage
	string       fretboard.StringNumber
	strike       strike
}

// How hard a string is struck says where the pick stands: common practice; the
// figures are ours.
const atBarLine, onBeat, between = 1, 0.84, 0.7

// newScore prepares bars of p, which are good.
func newScore(rate float64, p picking.Passage, o Options) (*score, error) {
	first, last := p.Bars[o.From-1], p.Bars[o.To-1]
	s := &score{from: first.At, to: last.At + last.Length, bar: p.Meter.Bar(), beat: p.Meter.Beat(), division: p.Meter.Beat() / 2}
	if p.Meter.Compound() {
		s.division = s.beat / 3
	}
	index := 0
	for _, bar := range p.Bars[:o.From-1] {
		index += len(bar.Picks)
	}
	join, tones := newJoin(p, o), tuned{rate, o.Material, p.Instrument, map[[2]fretboard.Pitch]*tone{}}
	for _, bar := range p.Bars[o.From-1 : o.To] {
		s.bars = append(s.bars, span{bar.At, bar.Length, len(s.notes)})
		for _, pick := range bar.Picks {
			tone, err := tones.tone(pick)
			if err != nil {
				return nil, err
			}
			s.add(note{tone: tone, at: pick.At, stop: s.lastStop(pick), joined: join.stop(pick), index: index,
				string: pick.String, strike: tone.strike(pick, bar, s.beat, o.Seed, index)})
			index++
		}
	}
	return s, nil
}

// A tuned instrument keeps the tones that it has made.
type tuned struct {
	rate       float64
	material   Material
	instrument fretboard.Instrument
	tones      map[[2]fretboard.Pitch]*tone
}

// tone returns the tone of a pick, or an error where the rate has no room for
// its pitch.
func (u tuned) tone(p picking.Pick) (*tone, error) {
	open := min(p.Pitch, u.instrument.Tuning.Open(p.String).Pitch())
	key := [2]fretboard.Pitch{p.Pitch, open}
	if known := u.tones[key]; known != nil {
		return known, nil
	}
	if err := checkPitch(u.rate, p.Pitch); err != nil {
		return nil, err
	}
	u.tones[key] = newTone(u.rate, u.material, p.Pitch, open)
	return u.tones[key], nil
}

// lastStop returns when a pick stops in the last round. What rings to the end
// has nothing there to stop it, and rings a bar longer, as in a passage that is
// played once.
func (s *score) lastStop(p picking.Pick) picking.Ticks {
	if stop := p.At + p.Rings; stop < s.to {
		return stop
	}
	return s.to + s.bar
}

func (s *score) add(n note) {
	s.notes = append(s.notes, n)
	s.room = max(s.room, n.tone.n)
	s.pluckRoom = max(s.pluckRoom, n.tone.length())
}

// strike returns how a pick strikes its string.
func (t *tone) strike(pick picking.Pick, bar picking.Bar, beat picking.Ticks, seed uint64, index int) strike {
	s := strike{between, t.soft, pick.Stroke == picking.UpStroke, seed + uint64(index)*0x2545f4914f6cdd1d}
	switch since := pick.At - bar.At; {
	case since == 0:
		s.gain, s.edge = atBarLine, t.hard
	case since%beat == 0:
		s.gain, s.edge = onBeat, t.middle
	}
	return s
}
