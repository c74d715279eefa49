package synth

import (
	"strconv"

	"weft.example/fretboard"
	"weft.example/picking"
)

// The rates at which a [Player] plays, in frames a second.
const (
	MinRate = 8000
	MaxRate = 192000
)

// Options are choices for the sound. The zero Options plays the passage once
// on steel strings, with no click.
type Options struct {
	Material Material // zero: Steel
	Seed     uint64   // of the noise of the plectrum
	Tempo    int      // the meter's beats a minute, 10 to 400; 0 means the passage's
	CountIn  int      // bars of clicks before the first bar, 0 to 8
	Click    Click    // zero: NoClick, except to count in
	// From and To are the first and the last bar, numbered as played; 0 means
	// the passage's own.
	From, To int
	// Rounds is how often these bars are played, up to 999, or Endless; 0 means
	// once. Strings ring on over the join, as the passage says for its own.
	Rounds int
	// Sounding and Silent are bars in turn, over the rounds too: so many with the
	// guitar, then so many without it. If Silent is 0, it plays throughout.
	Sounding, Silent int
	Hush             bool // no click either in silent bars
}

// Endless, as a number of rounds, plays until the caller has enough.
const Endless = -1

const (
	mostCountIn = 8
	mostRounds  = 999
)

// A Click says when the click sounds. The first beat of a bar is accented.
type Click uint8

// No click (NoClick); each beat and, below 60 beats a minute, what divides it
// (AutoClick); each beat (BeatClick); each beat and what divides it, thirds in a
// compound meter, else halves (DividedClick).
const (
	NoClick Click = iota
	AutoClick
	BeatClick
	DividedClick
)

var clickNames = [...]string{"off", "auto", "beats", "divided"}

// String returns off, auto, beats or divided.
func (c Click) String() string { return fretboard.NameOf(clickNames[:], int(c)) }

// ParseClick reads off, auto, beats or divided.
func ParseClick(text string) (Click, error) {
	i, err := fretboard.ParseName("click", clickNames[:], text)
	return Click(i), err
}

// normal fills in what zero fields mean and refuses what cannot be.
func (o Options) normal(p picking.Passage) (Options, error) {
	if o.Tempo == 0 {
		o.Tempo = p.Tempo
	}
	if o.From == 0 {
		o.From = 1
	}
	if o.To == 0 {
		o.To = len(p.Bars)
	}
	if o.Rounds == 0 {
		o.Rounds = 1
	}
	if err := checkTempo(o.Tempo); err != nil {
		return o, err
	}
	return o, o.check(len(p.Bars))
}

func (o Options) check(bars int) error {
	for _, c := range []struct {
		notation           string
		value, least, most int
		reason             string
	}{
		{"material", int(o.Material), 0, len(materials) - 1, "no such strings"},
		{"click", int(o.Click), 0, len(clickNames) - 1, "no such click"},
		{"count-in", o.CountIn, 0, mostCountIn, "not a number of bars to count in"},
		{"first bar", o.From, 1, bars, "no such bar"},
		{"last bar", o.To, o.From, bars, "no such bar after the first"},
		{"rounds", o.Rounds, Endless, mostRounds, "not a number of rounds"},
		{"sounding bars", o.Sounding, 0, picking.MaxBars, "not a number of bars"},
		{"silent bars", o.Silent, 0, picking.MaxBars, "not a number of bars"},
	} {
		if c.value < c.least || c.value > c.most {
			return refuse(c.notation, strconv.Itoa(c.value), c.reason,
				"choose "+strconv.Itoa(c.least)+" to "+strconv.Itoa(c.most))
		}
	}
	return nil
}

func checkTempo(tempo int) error {
	if tempo < picking.MinTempo || tempo > picking.MaxTempo {
		return refuse("tempo", strconv.Itoa(tempo), "not a tempo to practise at", "choose 10 to 400 beats a minute")
	}
	return nil
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
