//go:build !sheets && !drawings

package api

import (
	"weft.example/fretboard"
	"weft.example/picking/synth"
	"weft.example/wasm/internal/jsontext"
)

// Sounds plays, and writes files of sound.
func Sounds(l *Library) {
	l.players.open = map[int]*player{}
	l.options["wav"] = readWave
	l.operations["file"] = writeFile
	l.operations["sound"] = openSound
	l.operations["seek"] = seekBar
	l.operations["tempo"] = setTempo
	l.operations["position"] = tellPosition
	l.operations["close"] = closeSound
}

// The limits of players.
const (
	MostPlayers = 16
	mostRounds  = 999
)

// players are those that are open, by their numbers.
type players struct {
	open   map[int]*player
	opened int
}

// A player is a sound that is being played.
type player struct {
	*synth.Player
	frames  int // filled so far
	started bool
	ended   bool
}

// readBand reads how a part is played.
func readBand(f *fields, endless bool) (o synth.Options) {
	parsed(f, "material", &o.Material, synth.ParseMaterial)
	o.Seed = uint64(f.within("seed", 0, largest, 0))
	o.Tempo = f.within("tempo", 10, 400, 0)
	o.CountIn = f.within("countIn", 0, mostCountIn, 0)
	parsed(f, "click", &o.Click, synth.ParseClick)
	o.From = f.within("from", 1, largest, 0)
	o.To = f.within("to", 1, largest, 0)
	o.Rounds = f.within("rounds", 1, mostRounds, 0)
	if endless && f.truth("endless") {
		if o.Rounds != 0 {
			f.refuse("rounds", "both rounds and endless")
		}
		o.Rounds = synth.Endless
	}
	o.Sounding = f.within("sounding", 0, largest, 0)
	o.Silent = f.within("silent", 0, largest, 0)
	o.Hush = f.truth("hush")
	return o
}

const usualRate = 48000

func readRate(f *fields) int { return f.within("rate", synth.MinRate, synth.MaxRate, usualRate) }

// bandField names the field that an error of package synth concerns.
func bandField(err error) string {
	located, ok := err.(fretboard.Located)
	if !ok {
		return ""
	}
	switch name := located.Where().Notation; name {
	case "first bar":
		return "from"
	case "last bar":
		return "to"
	case "sounding bars":
		return "sounding"
	case "silent bars":
		return "silent"
	}
	return fieldOf(err)
}

// openSound opens a player.
func openSound(l *Library, f *fields) (reply, error) {
	song := readSong(f)
	f.need("rate")
	rate := readRate(f)
	options := readBand(f, true)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	if len(l.players.open) == MostPlayers {
		return reply{}, requestFault("", "too many players are open; close those that are done")
	}
	p, err := song.arrange()
	if err != nil {
		return reply{}, err
	}
	made, err := synth.New(rate, p, options)
	if err != nil {
		return reply{}, faultAt(bandField(err), err)
	}
	l.players.opened++
	l.players.open[l.players.opened] = &player{Player: made}
	opened := l.players.opened
	return reply{members: func(w *jsontext.Writer) {
		w.Int("player", opened)
		w.Int("rate", rate)
	}}, nil
}

// playerOf reads the player that a request names.
func (l *Library) playerOf(f *fields) *player {
	n, _ := f.whole("player")
	f.need("player")
	p := l.players.open[n]
	if p == nil {
		f.refuse("player", "no such player is open")
	}
	return p
}

// seekBar goes to a bar.
func seekBar(l *Library, f *fields) (reply, error) {
	p := l.playerOf(f)
	bar, _ := f.whole("bar")
	f.need("bar")
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	if err := p.Seek(bar); err != nil {
		return reply{}, faultAt("bar", err)
	}
	p.started, p.ended = false, false
	return reply{members: p.position}, nil
}

// setTempo changes the tempo.
func setTempo(l *Library, f *fields) (reply, error) {
	p := l.playerOf(f)
	tempo, _ := f.whole("tempo")
	f.need("tempo")
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	if err := p.SetTempo(tempo); err != nil {
		return reply{}, faultAt("tempo", err)
	}
	return reply{members: p.position}, nil
}

// tellPosition says where a player is.
func tellPosition(l *Library, f *fields) (reply, error) {
	p := l.playerOf(f)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	return reply{members: p.position}, nil
}

// closeSound closes a player. One that is not open is closed already.
func closeSound(l *Library, f *fields) (reply, error) {
	n, _ := f.whole("player")
	f.need("player")
	f.done()
	if f.state.err == nil {
		delete(l.players.open, n)
	}
	return reply{members: func(*jsontext.Writer) {}}, f.state.err
}

func (p *player) position(w *jsontext.Writer) {
	now := p.Now()
	w.Int("frame", p.frames)
	w.Int("tick", int(now.At))
	w.Int("bar", now.Bar)
	w.Int("round", now.Round)
	if now.Pick < 0 {
		w.Null("pick")
	} else {
		w.Int("pick", now.Pick)
	}
	w.Bool("silent", now.Silent)
	w.Bool("ended", p.ended)
}

// A begun is a pick that begins in what is filled.
type begun struct{ pick, frame int }

// grain is how many frames are filled between two looks at where the player is.
const grain = 128

// Fill fills two channels of one length with what a player plays next, and
// answers what they hold. What is left of them is silence.
func (l *Library) Fill(number int, left, right []float32) (answer string) {
	defer func() {
		if r := recover(); r != nil {
			answer = refusal(internalFault(r))
		}
	}()
	clear(left)
	clear(right)
	p := l.players.open[number]
	switch {
	case p == nil:
		return refusal(requestFault("player", "no such player is open"))
	case len(left) != len(right):
		return refusal(requestFault("", "two channels of different lengths"))
	case len(left) > MaxFill:
		return refusal(requestFault("", "too many frames at a time"))
	}
	filled, picks := p.fill(left, right)
	return success(func(w *jsontext.Writer) {
		p.position(w)
		w.Int("frames", filled)
		w.List("picks", func() {
			for _, b := range picks {
				w.Object("", func() {
					w.Int("pick", b.pick)
					w.Int("frame", b.frame)
				})
			}
		})
	})
}

func (p *player) fill(left, right []float32) (filled int, picks []begun) {
	for filled < len(left) && !p.ended {
		before := p.Now()
		end := min(filled+grain, len(left))
		n := p.Player.Fill(left[filled:end], right[filled:end])
		now := p.Now()
		if now.Pick >= 0 && (!p.started || now.Pick != before.Pick || now.Round != before.Round) {
			picks = append(picks, begun{now.Pick, filled})
			p.started = true
		}
		p.ended = n < end-filled
		filled += n
	}
	p.frames += filled
	return filled, picks
}
