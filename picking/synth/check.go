package synth

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// checkPitch refuses a pitch that the rate has no room for.
func checkPitch(rate float64, p fretboard.Pitch) error {
	if float64(p.Hertz()) > float64(0.4*rate) {
		return refuse("rate", strconv.Itoa(int(rate)), "too low a rate to sound pitch "+strconv.Itoa(int(p)),
			"choose 44100 or 48000 frames a second")
	}
	return nil
}

// checkPassage refuses a passage made by hand that cannot be played.
func checkPassage(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	if len(p.Bars) == 0 || len(p.Bars) > picking.MaxBars {
		return refuse("passage", "", strconv.Itoa(len(p.Bars))+" bars", "give 1 to "+strconv.Itoa(picking.MaxBars))
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
	if bar.Length <= 0 || bar.Length > p.Meter.Bar() {
		return "has no length, or more than the meter's"
	}
	before := bar.At
	for _, pick := range bar.Picks {
		switch {
		case pick.At < before || pick.At >= bar.At+bar.Length:
			return "has a pick that begins outside it, or before the one before"
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
