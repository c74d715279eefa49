package musicxml

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// lowest is C0: the standard has octaves 0 to 9.
const lowest fretboard.Pitch = 12

// check refuses a passage that no score can hold: strings that sound below C0,
// and what only a passage made by hand can have.
func check(p picking.Passage) error {
	if _, err := picking.ParseMeter(p.Meter.String()); err != nil {
		return refuse("meter", p.Meter.String(), "not a time signature", "choose one such as 4/4")
	}
	for s := range p.Instrument.Tuning.All().Thinnest() {
		if p.Instrument.Tuning.Open(s).Pitch() < lowest {
			return refuse("tuning", p.Instrument.Tuning.String(),
				"string "+strconv.Itoa(int(s))+" is tuned below C0, and MusicXML has no lower octave", "tune it higher")
		}
	}
	at, picked := picking.Ticks(0), picking.Ticks(-1)
	for _, bar := range p.Bars {
		reason := misfit(bar, at, picked, p)
		if reason != "" {
			return refuse("passage", "", "bar "+strconv.Itoa(bar.Number)+" "+reason, "let Arrange make the passage")
		}
		at += bar.Length
		if n := len(bar.Picks); n > 0 {
			picked = bar.Picks[n-1].At
		}
	}
	return nil
}

// misfit says what is wrong with a bar that is to begin at a time, after the
// last pick of the bars before, if anything is.
func misfit(bar picking.Bar, at, picked picking.Ticks, p picking.Passage) string {
	switch {
	case bar.At != at:
		return "does not begin where the bar before ends"
	case bar.Length <= 0 || bar.Length > p.Meter.Bar():
		return "has no length, or more than the meter's"
	case bar.Length%finest != 0:
		return "has a length that no notes make"
	}
	for _, chord := range bar.Chords {
		if chord.At < bar.At || chord.Length <= 0 || chord.At+chord.Length > bar.At+bar.Length {
			return "has a chord that reaches outside it"
		}
	}
	for _, pick := range bar.Picks {
		if reason := misplaced(pick, bar, picked, p.Instrument); reason != "" {
			return reason
		}
		picked = pick.At
	}
	return ""
}

// misplaced says what is wrong with a pick.
func misplaced(pick picking.Pick, bar picking.Bar, picked picking.Ticks, g fretboard.Instrument) string {
	switch {
	case pick.At < bar.At || pick.At >= bar.At+bar.Length || pick.Length <= 0:
		return "has a pick that begins outside it or has no length"
	case pick.At <= picked:
		return "has a pick that does not come after the one before"
	case (pick.At-bar.At)%finest != 0 || pick.Length%finest != 0:
		return "has a pick with a time or a length that no note has"
	case !g.Tuning.All().Has(pick.String):
		return "plucks a string that the instrument lacks"
	case pick.Fret < 0:
		return "has a pick below the nut"
	case pick.Note.Note.Letter < fretboard.C || pick.Note.Note.Letter > fretboard.B || pick.Note.Pitch() < lowest || pick.Note.Pitch() > fretboard.MaxPitch:
		return "has a note that no staff has"
	}
	return ""
}
