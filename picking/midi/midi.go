// Package midi writes a passage as a Standard MIDI File 1.0 of format 1, which
// any sequencer or notation program opens.
//
// The first track has the title, the tempo, the meter and, as a marker, each
// chord as it sounds, bar by bar. Track n after it holds string n on a channel
// of its own, the tenth left out, which is for percussion; so each string can
// be bent, muted and heard alone. Repeats are played out. The sound is General
// MIDI's steel guitar, 25 counted from 0. No key is claimed.
//
// A note lasts as long as its string rings, and ends just before its string is
// plucked again. The file of a loop ends with the last bar, so that it can be
// looped, and cuts there what rings on; played once, it ends with the last
// note. On one track, where two strings may sound one pitch, the later pluck
// strikes the key anew, which then rings for as long as either string.
//
// How hard a note is struck says where it stands: 104 at the bar line, 92 on
// another beat, 80 between; an up-stroke is 8 softer. These numbers are ours.
// Clicks are wood blocks, the high one at the bar line.
//
// The standard has 24 bits for the length of a quarter note, 16.8 seconds. For
// a slower one the file counts an eighth or a sixteenth as its quarter and says
// so in the time signature; the notes keep their ticks. Tempo is in whole
// microseconds.
//
// Text is ASCII, as the standard asks, but for the title, which is UTF-8: common
// practice. A title with other characters may look odd in an old program.
package midi

import (
	"io"
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Options are choices for the file. The zero Options works.
type Options struct {
	OneTrack bool // all strings on one track and channel, rather than one for each
	CountIn  int  // bars of clicks before the first bar, 0 to 8
	Click    bool // clicks through all bars
}

const maxCountIn = 8

// Encode writes p to w as a file, in one piece. The error is w's or, for
// options or a passage that cannot be, a [fretboard.ImpossibleError]; then
// nothing is written. The time grows with the picks.
func Encode(w io.Writer, p picking.Passage, o Options) error {
	if o.CountIn < 0 || o.CountIn > maxCountIn {
		return refuse("count-in", strconv.Itoa(o.CountIn), "not a number of bars to count in", "choose 0 to 8")
	}
	if err := check(p); err != nil {
		return err
	}
	out := newScore(p, o).file()
	n, err := w.Write(out)
	if err == nil && n < len(out) {
		err = io.ErrShortWrite
	}
	return err
}

// check refuses a passage made by hand that no file can hold.
func check(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	if p.Tempo < picking.MinTempo || p.Tempo > picking.MaxTempo {
		return refuse("tempo", strconv.Itoa(p.Tempo), "not a tempo to practise at", "choose 10 to 400 beats a minute")
	}
	if len(p.Bars) > picking.MaxBars {
		return refuse("passage", "", strconv.Itoa(len(p.Bars))+" bars; the limit is "+strconv.Itoa(picking.MaxBars), "cut the song in parts")
	}
	at := picking.Ticks(0)
	for i, bar := range p.Bars {
		reason := misfit(bar, p)
		if bar.At != at {
			reason = "does not begin where the bar before ends"
		}
		if reason != "" {
			return refuse("passage", "", "bar "+strconv.Itoa(i+1)+" "+reason, "let Arrange make the passage")
		}
		at += bar.Length
	}
	return nil
}

// misfit says what is wrong with a bar, if anything is.
func misfit(bar picking.Bar, p picking.Passage) string {
	end := bar.At + bar.Length
	if bar.Length <= 0 || bar.Length > p.Meter.Bar() {
		return "has no length, or more than the meter's"
	}
	for _, chord := range bar.Chords {
		if chord.At < bar.At || chord.At >= end {
			return "has a chord that begins outside it"
		}
	}
	before := bar.At - 1
	for _, pick := range bar.Picks {
		switch {
		case pick.At <= before || pick.At >= end:
			return "has a pick that begins outside it, or not after the one before"
		case pick.Rings <= 0 || pick.Rings > p.Length()+p.Meter.Bar():
			return "has a pick that does not sound, or rings longer than the passage"
		case !p.Instrument.Tuning.All().Has(pick.String):
			return "plucks a string that the instrument lacks"
		case pick.Pitch < fretboard.MinPitch || pick.Pitch > fretboard.MaxPitch:
			return "has a pitch outside the MIDI range"
		}
		before = pick.At
	}
	return ""
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
