package midi

import (
	"math/bits"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

const (
	percussion = 9  // channel 10, counted from 0
	steel      = 25 // General MIDI's acoustic guitar with steel strings, counted from 0

	// Common practice: General MIDI's wood blocks, which all percussion sets have.
	highBlock, lowBlock = 76, 77
	accented, plain     = 112, 88

	atBarLine, onBeat, between = 104, 92, 80 // how hard a down-stroke strikes
	softer                     = 8           // by which an up-stroke strikes less hard
)

// A score is a passage on its way to a file.
type score struct {
	picking.Passage
	Options
	lead picking.Ticks // the count-in
	end  picking.Ticks // of every track
}

func newScore(p picking.Passage, o Options) *score {
	s := &score{p, o, picking.Ticks(o.CountIn) * p.Meter.Bar(), 0}
	s.end = s.lead + p.Length()
	for _, pick := range p.Picks() {
		if !p.Loop {
			s.end = max(s.end, s.lead+pick.At+pick.Rings)
		}
	}
	return s
}

func (s *score) file() []byte {
	tracks := []track{s.conductor()}
	tracks = append(tracks, s.strings()...)
	if s.Click || s.CountIn > 0 {
		tracks = append(tracks, s.clicks())
	}
	_, split := s.tempo()
	return file(tracks, picking.TicksPerQuarter/split, s.end)
}

// tempo returns the microseconds that the file's quarter note lasts, and the
// part of a written quarter that it is: the whole or, where that has too many
// microseconds, a half or a quarter.
func (s *score) tempo() (microseconds int64, split picking.Ticks) {
	const minute, most = 60_000_000, 1<<24 - 1
	for split = 1; ; split *= 2 {
		beats := int64(s.Tempo) * int64(s.Meter.Beat()) * int64(split)
		microseconds = (minute*int64(picking.TicksPerQuarter) + beats/2) / beats
		if microseconds <= most {
			return microseconds, split
		}
	}
}

// conductor returns the track that says what holds for all the others.
func (s *score) conductor() (t track) {
	if s.Title != "" {
		t.meta(0, trackName, s.Title)
	}
	microseconds, split := s.tempo()
	t.meta(0, setTempo, string([]byte{byte(microseconds >> 16), byte(microseconds >> 8), byte(microseconds)}))
	t.meta(0, timeSignature, s.signature(split))
	for _, bar := range s.Bars {
		for _, chord := range bar.Chords {
			t.meta(s.lead+chord.At, marker, chord.Sounds.String())
		}
	}
	return t
}

// signature returns the four bytes of a time signature: the count, the power
// of two that is the unit, the clocks from click to click, of which the file's
// quarter has 24, and the thirty-seconds in the file's quarter.
func (s *score) signature(split picking.Ticks) string {
	const clocks, thirtySeconds = 24, 8
	count, unit := s.Meter.Bar()/s.Meter.UnitTicks(), picking.WholeNote/s.Meter.UnitTicks()
	return string([]byte{byte(count), byte(bits.TrailingZeros(uint(unit))),
		byte(clocks * split * s.Meter.Beat() / picking.TicksPerQuarter), byte(thirtySeconds / split)})
}

// strings returns a track for each string, or one for all.
func (s *score) strings() []track {
	if s.OneTrack {
		t := opened("strings", 0)
		t.notes(0, s.notes(s.Instrument.Tuning.All()))
		return []track{t}
	}
	var tracks []track
	for n := range s.Instrument.Tuning.All().Thinnest() {
		t := opened("string "+strconv.Itoa(int(n))+" "+s.Instrument.Tuning.Open(n).String(), channel(n))
		t.notes(channel(n), s.notes(fretboard.StringSet(0).With(n)))
		tracks = append(tracks, t)
	}
	return tracks
}

func opened(name string, channel byte) (t track) {
	t.meta(0, trackName, name)
	t.add(0, programChange|channel, steel)
	return t
}

// channel returns the channel of a string, counted from 0, past percussion's.
func channel(n fretboard.StringNumber) byte {
	if n > percussion {
		return byte(n)
	}
	return byte(n) - 1
}

// notes returns the notes of a set of strings, in turn. A key is struck anew
// where it still sounds.
func (s *score) notes(set fretboard.StringSet) []note {
	var notes []note
	var latest [fretboard.MaxPitch + 1]int // the last note of each key, from 1
	for _, bar := range s.Bars {
		for _, pick := range bar.Picks {
			if !set.Has(pick.String) {
				continue
			}
			n := note{s.lead + pick.At, min(s.lead+pick.At+pick.Rings, s.end), byte(pick.Pitch), s.velocity(pick, bar)}
			if i := latest[pick.Pitch]; i > 0 && notes[i-1].to > n.from {
				n.to = max(n.to, notes[i-1].to)
				notes[i-1].to = n.from
			}
			notes = append(notes, n)
			latest[pick.Pitch] = len(notes)
		}
	}
	return notes
}

func (s *score) velocity(pick picking.Pick, bar picking.Bar) byte {
	v := byte(between)
	switch since := pick.At - bar.At; {
	case since == 0:
		v = atBarLine
	case since%s.Meter.Beat() == 0:
		v = onBeat
	}
	if pick.Stroke == picking.UpStroke {
		v -= softer
	}
	return v
}

// clicks returns the track of the metronome: a click on each beat of the
// count-in and, if asked for, of every bar.
func (s *score) clicks() (t track) {
	t.meta(0, trackName, "click")
	var notes []note
	add := func(from, length picking.Ticks) {
		for at := picking.Ticks(0); at < length; at += s.Meter.Beat() {
			n := note{from + at, min(from+at+s.Meter.Beat()/2, s.end), lowBlock, plain}
			if at == 0 {
				n.key, n.velocity = highBlock, accented
			}
			notes = append(notes, n)
		}
	}
	for i := range s.CountIn {
		add(picking.Ticks(i)*s.Meter.Bar(), s.Meter.Bar())
	}
	for _, bar := range s.Bars {
		if s.Click {
			add(s.lead+bar.At, bar.Length)
		}
	}
	t.notes(percussion, notes)
	return t
}
