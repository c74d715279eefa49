package svg

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// check refuses a passage made by hand that has no place on a sheet.
func check(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	at := picking.Ticks(0)
	for _, bar := range p.Bars {
		reason := misplaced(bar, p.Meter)
		if bar.At < at {
			reason = "begins before the one before it ends"
		}
		at = bar.At + bar.Length
		if reason == "" {
			reason = unplayable(bar, p.Instrument)
		}
		if reason != "" {
			return refuse("passage", "", "bar "+strconv.Itoa(bar.Number)+" "+reason, "let Arrange make the passage")
		}
	}
	return nil
}

// misplaced says what is wrong with the times of a bar, if anything is.
func misplaced(bar picking.Bar, m picking.Meter) string {
	end := bar.At + bar.Length
	if bar.Length <= 0 || bar.Length > m.Bar() {
		return "has no length, or more than the meter's"
	}
	for i, pick := range bar.Picks {
		if pick.At < bar.At || pick.At >= end || pick.Length <= 0 || i > 0 && pick.At <= bar.Picks[i-1].At {
			return "has a pick that begins outside it, before another or has no length"
		}
	}
	at := bar.At
	for _, chord := range bar.Chords {
		if chord.At < at || chord.Length <= 0 || chord.At+chord.Length > end {
			return "has a chord that reaches outside it or into another"
		}
		at = chord.At + chord.Length
	}
	return ""
}

// unplayable says what of a bar nobody can play, if anything is.
func unplayable(bar picking.Bar, g fretboard.Instrument) string {
	for _, pick := range bar.Picks {
		switch {
		case !g.Tuning.All().Has(pick.String):
			return "plucks a string that the instrument lacks"
		case pick.Fret < 0 || pick.Fret > fretboard.MaxFrets:
			return "has a fret that no neck has"
		case pick.Stroke != picking.DownStroke && pick.Stroke != picking.UpStroke:
			return "has a pick without a stroke"
		}
	}
	return ""
}
