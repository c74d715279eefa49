package synth

import (
	"strconv"

	"weft.example/picking"
)

// A Place says where a player is.
type Place struct {
	Round  int           // from 1
	Bar    int           // as played, from 1; 0 in the count-in
	Pick   int           // the latest to begin, by its index in [picking.Passage.Picks]; -1 before any
	At     picking.Ticks // from the start of the passage; before it in a count-in
	Silent bool          // the guitar is, in this bar
}

// Now returns the place of the last frame written or, after Seek, of the bar
// that was sought. What a page shows should
// lag behind it by what the sound takes from the buffer to the ear.
func (p *Player) Now() Place {
	at := p.at / p.grains()
	if p.at%p.grains() < 0 {
		at--
	}
	now := Place{Round: p.round, Pick: -1, At: picking.Ticks(at), Silent: p.silent}
	bars := p.bar
	if p.sought {
		bars++
	}
	if bars > 0 {
		now.Bar = p.options.From - 1 + bars
	}
	if p.current >= 0 {
		now.Pick = p.score.notes[p.current].index
	}
	return now
}

// Tempo returns the tempo in the meter's beats a minute.
func (p *Player) Tempo() int { return p.tempo }

// SetTempo changes the tempo from the next frame on, and not the pitch. The
// tempo is 10 to 400 beats a minute, else the error is a
// [fretboard.ImpossibleError].
func (p *Player) SetTempo(tempo int) error {
	err := checkTempo(tempo)
	if err == nil {
		p.tempo = tempo
	}
	return err
}

// Seek goes to the start of a bar, numbered as played, of the first round, with
// no count-in. What sounds is faded out. A bar that is not played is a
// [fretboard.ImpossibleError].
func (p *Player) Seek(bar int) error {
	if bar < p.options.From || bar > p.options.To {
		return refuse("bar", strconv.Itoa(bar), "not among the bars played",
			"choose "+strconv.Itoa(p.options.From)+" to "+strconv.Itoa(p.options.To))
	}
	p.goTo(bar-p.options.From, 0)
	p.sought = true
	return nil
}

// rewind goes to the count-in.
func (p *Player) rewind() {
	p.tempo = p.options.Tempo
	p.goTo(0, p.options.CountIn)
}

// goTo goes to bar i of the first round, or some bars before it. It keeps to
// the frames that playing from the start meets at this tempo.
func (p *Player) goTo(i, countIn int) {
	p.stopAll(plectrumFade)
	bar := p.score.bars[i]
	frame := p.frames(int64(bar.at)*p.grains()) - p.frames(int64(countIn)*int64(p.score.bar)*p.grains())
	p.pulse = pulse{at: frame * p.advance(), tempo: p.tempo, round: 1, bar: i - countIn, note: bar.first,
		begun: i, current: -1, clicked: bar.length + p.score.bar, until: p.until}
}

// Left returns how many frames are left at this tempo, until the last string
// and the body are still, or -1 if the player is [Endless]. A new player's are
// its whole length. The time grows with the picks left.
func (p *Player) Left() int64 {
	if p.options.Rounds == Endless {
		return -1
	}
	rest := *p
	rest.mute = true
	frames := int64(0)
	for {
		const any = 1 << 30
		n := rest.stretch(any)
		if n == 0 {
			return frames
		}
		rest.pass(n)
		frames += int64(n)
	}
}
