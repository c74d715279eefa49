package json

import (
	"bytes"
	std "encoding/json"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Each row changes a field, or a few, of the sample. The reasons are worked by
// hand from the notations, the shapes and the tuning.
func TestContradictionsAreRefused(t *testing.T) {
	good := encoded(t, sample(t))
	for _, test := range slices.Concat(wrongHeads, wrongBars, wrongChords, wrongFits, wrongPicks) {
		f := formIn(t, good)
		test.change(&f)
		text, err := std.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		checkRefused(t, bytes.NewReader(text), test.path, test.reason)
	}
}

// The loss from the last event to the first sounds only round the loop.
func TestLossesRoundTheLoopNeedALoop(t *testing.T) {
	f := formIn(t, encoded(t, arrange(t, "D=xx0232", "6 4 3 2 1 2 3 4", picking.Setting{})))
	first := &f.Bars[0].Picks[0]
	f.Loop = false
	f.Travel.Spacings -= first.Travel
	f.Travel.Millimetres = fretboard.Millimetres(f.Travel.Spacings) * f.StringSpacing
	first.Crossing, first.Travel = "", 0
	text, err := std.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	checkRefused(t, bytes.NewReader(text), "bars[0].chords[0].fit.losses[1]", "no pick of event 8 leads same to event 1")
}

type contradiction struct {
	path, reason string
	change       func(f *passageForm)
}

var long = strings.Repeat("a", fretboard.MaxText+1)

var wrongHeads = []contradiction{
	{"title", "65537 bytes", func(f *passageForm) { f.Title = long }},
	{"remarks[0]", "65537 bytes", func(f *passageForm) { f.Remarks[0] = long }},
	{"ticksPerQuarter", "480", func(f *passageForm) { f.TicksPerQuarter = 960 }},
	{"tempo", "10 to 400", func(f *passageForm) { f.Tempo = 9 }},
	{"tempo", "10 to 400", func(f *passageForm) { f.Tempo = 401 }},
	{"meter", "not a time signature", func(f *passageForm) { f.Meter = "4/5" }},
	{"strokes", "no such", func(f *passageForm) { f.Strokes = "sideways" }},
	{"strokes", "write it economy", func(f *passageForm) { f.Strokes = "Economy" }},
	{"fit", "no such", func(f *passageForm) { f.Fit = "" }},
	{"hand", "write it left", func(f *passageForm) { f.Hand = "LEFT" }},
	{"tuning", "no octave", func(f *passageForm) { f.Tuning = "E2 A2 D3 G3 B3 E" }},
	{"tuning", "MIDI range", func(f *passageForm) { f.Tuning = "E2 A2 D3 G3 B3 E9" }},
	{"frets", "1 to 36", func(f *passageForm) { f.Frets = 0 }},
	{"frets", "1 to 36", func(f *passageForm) { f.Frets = 37 }},
	{"capo", "20", func(f *passageForm) { f.Capo = 20 }},
	{"capo", "-1", func(f *passageForm) { f.Capo = -1 }},
	{"scaleLength", "millimetres", func(f *passageForm) { f.ScaleLength = 0 }},
	{"scaleLength", "millimetres", func(f *passageForm) { f.ScaleLength = -1 }},
	{"stringSpacing", "millimetres", func(f *passageForm) { f.StringSpacing = 0 }},
	{"stringSpacing", "millimetres", func(f *passageForm) { f.StringSpacing = 1000 }},
	{"travel.spacings", "the picks travel", func(f *passageForm) { f.Travel.Spacings++ }},
	{"travel.millimetres", "spacings are", func(f *passageForm) { f.Travel.Millimetres++ }},
}

var wrongBars = []contradiction{
	{"bars", "at least one", func(f *passageForm) { f.Bars = []barForm{} }},
	{"bars", "513; the limit is 512", func(f *passageForm) { f.Bars = slices.Repeat(f.Bars[:1], 513) }},
	{"bars[2].number", "4 where bar 3", func(f *passageForm) { f.Bars[2].Number = 4 }},
	{"bars[1].number", "3 where bar 2", func(f *passageForm) { f.Bars = append(f.Bars[:1], f.Bars[2:]...) }},
	{"bars[2].written", "0; bar 3", func(f *passageForm) { f.Bars[2].Written = 0 }},
	{"bars[2].written", "4; bar 3", func(f *passageForm) { f.Bars[2].Written = 4 }},
	{"bars[2].pass", "3; it is 1, or 2", func(f *passageForm) { f.Bars[2].Pass = 3 }},
	{"bars[2].at", "3841 where the bars before take 3840", func(f *passageForm) { f.Bars[2].At++ }},
	{"bars[2].length", "lasts 1920", func(f *passageForm) { f.Bars[2].Length-- }},
	{"bars[0].length", "a bar of 3/4 lasts 1440", func(f *passageForm) { f.Meter = "3/4" }},
	{"bars[1].chords", "480 ticks of the bar's 1920", func(f *passageForm) { f.Bars[1].Chords = f.Bars[1].Chords[:1] }},
	{"bars[1].chords", "0 ticks of the bar's 1920", func(f *passageForm) { f.Bars[1].Chords = []chordForm{} }},
	{"bars[1].chords[1].at", "2401 where the chords before end at 2400", func(f *passageForm) { f.Bars[1].Chords[1].At++ }},
	{"bars[1].chords[1].length", "1441 ticks where 1440 are left", func(f *passageForm) { f.Bars[1].Chords[1].Length++ }},
	{"bars[1].chords[1].length", "0 ticks", func(f *passageForm) { f.Bars[1].Chords[1].Length = 0 }},
	{"bars[1].chords[0].length", "-480 ticks", func(f *passageForm) { f.Bars[1].Chords[0].Length = -480 }},
}

// chordAt returns a change of one chord.
func chordAt(bar, chord int, change func(c *chordForm)) func(f *passageForm) {
	return func(f *passageForm) { change(&f.Bars[bar].Chords[chord]) }
}

// In the sample with the capo on fret 3, Am=x02210 sounds Cm, D sounds F, and
// G/B=x20003 sounds Bb/D; Am=xx0010 sounds no A.
var wrongChords = []contradiction{
	{"bars[0].chords[0].symbol", "H is not a note", chordAt(0, 0, func(c *chordForm) { c.Symbol = "Hm" })},
	{"bars[0].chords[0].symbol", "no root", chordAt(0, 0, func(c *chordForm) { c.Symbol = "" })},
	{"bars[0].chords[0].sounds", "C where Am with the capo on fret 3 sounds Cm", chordAt(0, 0, func(c *chordForm) { c.Sounds = "C" })},
	{"bars[0].chords[0].sounds", "N.C. where", chordAt(0, 0, func(c *chordForm) { c.Sounds = "N.C." })},
	{"bars[0].chords[0].sounds", "Cm where Am with the capo on fret 2 sounds Bm", func(f *passageForm) { f.Capo = 2 }},
	{"bars[1].chords[1].sounds", "E# where D with the capo on fret 3 sounds F", chordAt(1, 1, func(c *chordForm) { c.Sounds = "E#" })},
	{"bars[1].chords[0].sounds", "nothing sounds", chordAt(1, 0, func(c *chordForm) { c.Sounds = "C" })},
	{"bars[1].chords[0].shape", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Shape = "xxxxxx" })},
	{"bars[1].chords[0].figure", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Figure = 1 })},
	{"bars[1].chords[0].start", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Start = &startForm{1, "root"} })},
	{"bars[1].chords[0].bass", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Bass = 1 })},
	{"bars[1].chords[0].root", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Root = 1 })},
	{"bars[1].chords[0].fit", "silence has none", chordAt(1, 0, func(c *chordForm) { c.Fit = &fitForm{[]fretboard.StringNumber{}, 1, 1, []lossForm{}, []string{}} })},
	{"bars[0].picks[0].at", "there is silence", chordAt(0, 0, func(c *chordForm) {
		*c = chordForm{Length: 1920, Symbol: "N.C.", Sounds: "N.C."}
	})},
	{"bars[0].chords[0].figure", "missing", chordAt(0, 0, func(c *chordForm) { c.Figure = 0 })},
	{"bars[0].chords[0].figure", "from 1", chordAt(0, 0, func(c *chordForm) { c.Figure = -1 })},
	{"bars[0].chords[0].shape", "missing", chordAt(0, 0, func(c *chordForm) { c.Shape = "" })},
	{"bars[0].chords[0].start", "missing", chordAt(0, 0, func(c *chordForm) { c.Start = nil })},
	{"bars[0].chords[0].bass", "missing", chordAt(0, 0, func(c *chordForm) { c.Bass = 0 })},
	{"bars[0].chords[0].fit", "missing", chordAt(0, 0, func(c *chordForm) { c.Fit = nil })},
	{"bars[0].chords[0].root", "missing; string 5 of x02210", chordAt(0, 0, func(c *chordForm) { c.Root = 0 })},
	{"bars[0].chords[0].shape", "neither a fret nor x", chordAt(0, 0, func(c *chordForm) { c.Shape = "x0221y" })},
	{"bars[0].chords[0].shape", "fret 18 on string 1", chordAt(0, 0, func(c *chordForm) { c.Shape = "x-0-2-2-1-18" })},
	{"bars[0].chords[0].shape", "every string is muted", chordAt(0, 0, func(c *chordForm) { c.Shape = "xxxxxx" })},
	{"bars[0].chords[0].shape", "7 strings in the shape, 6", chordAt(0, 0, func(c *chordForm) { c.Shape = "xx02210" })},
	{"bars[0].chords[0].shape", "6 strings in the shape, 5", func(f *passageForm) { f.Tuning = "A2 D3 G3 B3 E4" }},
	{"bars[0].chords[0].start.string", "4 where x02210 as Am starts on string 5", chordAt(0, 0, func(c *chordForm) { c.Start.String = 4 })},
	{"bars[0].chords[0].start.string", "5 where x02210 as Am starts on string 3", func(f *passageForm) { f.Tuning = "E2 G#2 D3 G3 B3 E4" }},
	{"bars[0].chords[0].start.reason", `the reason "root"`, chordAt(0, 0, func(c *chordForm) { c.Start.Reason = "bass" })},
	{"bars[4].chords[0].start.reason", `the reason "slash bass"`, chordAt(4, 0, func(c *chordForm) { c.Start.Reason = "root" })},
	{"bars[0].chords[0].bass", "string 5 of x02210 sounds lowest", chordAt(0, 0, func(c *chordForm) { c.Bass = 4 })},
	{"bars[0].chords[0].root", "string 5 of x02210 is the lowest", chordAt(0, 0, func(c *chordForm) { c.Root = 3 })},
	{"bars[5].chords[0].root", "no string of xx0010", chordAt(5, 0, func(c *chordForm) { c.Root = 3 })},
}

// fitAt returns a change of the fit of a bar's last chord.
func fitAt(bar int, change func(fit *fitForm)) func(f *passageForm) {
	return func(f *passageForm) { change(last(f.Bars[bar].Chords).Fit) }
}

// In the sample the D of bar 2 has one loss, {1 2 up same}.
var wrongFits = []contradiction{
	{"bars[0].chords[0].fit.strings", "0 of them", fitAt(0, func(fit *fitForm) { fit.Strings = []fretboard.StringNumber{} })},
	{"bars[0].chords[0].fit.strings", "257 of them", fitAt(0, func(fit *fitForm) { fit.Strings = make([]fretboard.StringNumber, 257) })},
	{"bars[0].chords[0].fit.strings[1]", "6; x02210 does not sound", fitAt(0, func(fit *fitForm) { fit.Strings[1] = 6 })},
	{"bars[0].chords[0].fit.strings[1]", "-1; x02210 does not sound", fitAt(0, func(fit *fitForm) { fit.Strings[1] = -1 })},
	{"bars[0].chords[0].fit.csim", "0 to 1", fitAt(0, func(fit *fitForm) { fit.CSIM = 1.01 })},
	{"bars[0].chords[0].fit.csim", "0 to 1", fitAt(0, func(fit *fitForm) { fit.CSIM = -0.01 })},
	{"bars[0].chords[0].fit.cplussim", "0 to 1", fitAt(0, func(fit *fitForm) { fit.CPlusSIM = 2 })},
	{"bars[0].chords[0].fit.remarks[0]", "65537 bytes", fitAt(0, func(fit *fitForm) { fit.Remarks = []string{long} })},
	{"bars[1].chords[1].fit.losses[0].from", "1 to 8", fitAt(1, func(fit *fitForm) { fit.Losses[0].From = 9 })},
	{"bars[1].chords[1].fit.losses[0].to", "comes 2", fitAt(1, func(fit *fitForm) { fit.Losses[0].To = 3 })},
	{"bars[1].chords[1].fit.losses[0].want", "no such", fitAt(1, func(fit *fitForm) { fit.Losses[0].Want = "left" })},
	{"bars[1].chords[1].fit.losses[0].got", "no such", fitAt(1, func(fit *fitForm) { fit.Losses[0].Got = "" })},
	{"bars[1].chords[1].fit.losses[0].got", "nothing is lost", fitAt(1, func(fit *fitForm) { fit.Losses[0].Got = "up" })},
	{"bars[1].chords[1].fit.losses[0]", "no pick of event 1 leads down to event 2", fitAt(1, func(fit *fitForm) { fit.Losses[0].Got = "down" })},
	{"bars[1].chords[1].fit.losses[1]", "given twice", fitAt(1, func(fit *fitForm) { fit.Losses = append(fit.Losses, fit.Losses[0]) })},
	{"bars[0].chords[0].fit.losses[0]", "no pick of event 1 leads same", fitAt(0, func(fit *fitForm) { fit.Losses = []lossForm{{1, 2, "up", "same"}} })},
}

// pickAt returns a change of one pick.
func pickAt(bar, pick int, change func(p *pickForm)) func(f *passageForm) {
	return func(f *passageForm) { change(&f.Bars[bar].Picks[pick]) }
}

var wrongPicks = []contradiction{
	{"bars[0].picks[1].at", "the next pick may begin at 1", pickAt(0, 1, func(p *pickForm) { p.At = 0 })},
	{"bars[0].picks[7].at", "the bar ends at 1920", pickAt(0, 7, func(p *pickForm) { p.At = 1920 })},
	{"bars[2].picks[0].at", "begin at 3840", pickAt(2, 0, func(p *pickForm) { p.At = 0 })},
	{"bars[1].picks[0].at", "there is silence", pickAt(1, 0, func(p *pickForm) { p.At = 2000 })},
	{"bars[0].picks[0].length", "241 ticks where the next pick or the end is 240 away", pickAt(0, 0, func(p *pickForm) { p.Length++ })},
	{"bars[0].picks[0].length", "0 ticks", pickAt(0, 0, func(p *pickForm) { p.Length = 0 })},
	{"bars[5].picks[2].length", "20000 ticks where the next pick or the end", pickAt(5, 2, func(p *pickForm) { p.Length = 20000 })},
	{"bars[0].picks[0].rings", "stopped after 1920", pickAt(0, 0, func(p *pickForm) { p.Rings++ })},
	{"bars[0].picks[0].rings", "0 ticks", pickAt(0, 0, func(p *pickForm) { p.Rings = 0 })},
	{"bars[0].picks[0].event", "1 to 8", pickAt(0, 0, func(p *pickForm) { p.Event = 9 })},
	{"bars[0].picks[0].event", "1 to 8", pickAt(0, 0, func(p *pickForm) { p.Event = 0 })},
	{"bars[0].picks[1].string", "puts event 2 on string 4", pickAt(0, 1, func(p *pickForm) { p.String = 3 })},
	{"bars[0].picks[1].fret", "x02210 has 2 on string 4", pickAt(0, 1, func(p *pickForm) { p.Fret = 3 })},
	{"bars[0].picks[1].pitch", "54 where string 4, fret 2 sounds 55", pickAt(0, 1, func(p *pickForm) { p.Pitch-- })},
	{"bars[0].picks[4].pitch", "67 where string 1, fret 0 sounds 66", func(f *passageForm) { f.Tuning = "E2 A2 D3 G3 B3 Eb4" }},
	{"bars[0].picks[1].note", "G4 is pitch 67; the pick sounds 55", pickAt(0, 1, func(p *pickForm) { p.Note = "G4" })},
	{"bars[0].picks[1].note", "F##3 where Cm has G3", pickAt(0, 1, func(p *pickForm) { p.Note = "F##3" })},
	{"bars[0].picks[1].note", "no octave", pickAt(0, 1, func(p *pickForm) { p.Note = "G" })},
	{"bars[0].picks[1].stroke", "no such", pickAt(0, 1, func(p *pickForm) { p.Stroke = "free" })},
	{"bars[0].picks[1].stroke", "write it down", pickAt(0, 1, func(p *pickForm) { p.Stroke = "Down" })},
	{"bars[0].picks[1].why", "no such", pickAt(0, 1, func(p *pickForm) { p.Why = "luck" })},
	{"bars[0].picks[1].crossing", `"sweep" where the strokes make it "outside"`, pickAt(0, 1, func(p *pickForm) { p.Stroke = "up" })},
	{"bars[0].picks[1].crossing", `"inside" where the strokes make it "sweep"`, pickAt(0, 1, func(p *pickForm) { p.Crossing = "inside" })},
	{"bars[0].picks[1].crossing", "no such", pickAt(0, 1, func(p *pickForm) { p.Crossing = "under" })},
	{"bars[0].picks[0].crossing", "missing", pickAt(0, 0, func(p *pickForm) { p.Crossing = "" })},
	{"bars[0].picks[0].crossing", "nothing was struck before", func(f *passageForm) { f.Loop = false }},
	{"bars[0].picks[1].travel", "lie 0 apart", pickAt(0, 1, func(p *pickForm) { p.Travel = 1 })},
}
