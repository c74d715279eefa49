package api

import (
	"weft.example/picking"
	"weft.example/voicing"
	"weft.example/wasm/internal/jsontext"
)

// Lessons checks texts and arranges songs: what a page needs at once.
func Lessons(l *Library) {
	l.operations["check"] = checkText
	l.operations["choices"] = listChoices
	l.operations["arrange"] = arrangeSong
}

// arrangeSong carries the figures over the chords.
func arrangeSong(_ *Library, f *fields) (reply, error) {
	s := readSong(f)
	f.done()
	if f.state.err != nil {
		return reply{}, f.state.err
	}
	p, err := s.arrange()
	if err != nil {
		return reply{}, err
	}
	return reply{members: func(w *jsontext.Writer) { newPart(w, s, p).write() }}, nil
}

// A part is a passage as a page shows it: picks and chords in one list each.
type part struct {
	speaker
	song    song
	passage picking.Passage
	held    []heldChord
	picks   []placedPick
	boxes   []voicing.Voicing
}

type heldChord struct {
	picking.HeldChord
	bar, chord int
	box        int // in boxes; none for silence
}

type placedPick struct {
	picking.Pick
	bar, pick int
	held      int
}

const none = -1

func newPart(w *jsontext.Writer, s song, passage picking.Passage) *part {
	p := &part{speaker: speaker{w, s.spelling}, song: s, passage: passage}
	known := map[voicing.Voicing]int{}
	for i, bar := range passage.Bars {
		for j, c := range bar.Chords {
			h := heldChord{c, i, j, none}
			if !c.Chord.Silent() {
				n, ok := known[c.Voicing]
				if !ok {
					n = len(p.boxes)
					known[c.Voicing] = n
					p.boxes = append(p.boxes, c.Voicing)
				}
				h.box = n
			}
			p.held = append(p.held, h)
		}
		p.place(i, bar)
	}
	return p
}

// place lists the picks of a bar, whose chords are the last ones held.
func (p *part) place(i int, bar picking.Bar) {
	held := len(p.held) - len(bar.Chords)
	for j, pick := range bar.Picks {
		for pick.At >= p.held[held].At+p.held[held].Length {
			held++
		}
		p.picks = append(p.picks, placedPick{pick, i, j, held})
	}
}

func (p *part) write() {
	w := p.Writer
	w.Text("chords", p.song.chart.StringIn(p.spelling))
	w.Text("figures", p.song.figures.String())
	writePassage(w, "passage", p.passage)
	w.Float("seconds", p.seconds(p.passage.Length()))
	w.Int("down", int(p.passage.Instrument.Hand.Toward()))
	w.List("picks", func() {
		for i := range p.picks {
			w.Object("", func() { p.pick(i) })
		}
	})
	w.List("held", func() {
		for _, h := range p.held {
			w.Object("", func() { p.heldChord(h) })
		}
	})
	w.List("boxes", func() {
		for _, v := range p.boxes {
			p.speaker.held("", grip{voicing: v})
		}
	})
	w.List("losses", p.losses)
	texts(w, "remarks", p.passage.Remarks)
}

// seconds returns how long ticks last: one multiplication and one division, so
// that it is the same on every machine.
func (p *part) seconds(t picking.Ticks) float64 {
	return float64(60*int(t)) / float64(p.passage.Tempo*int(p.passage.Meter.Beat()))
}

func (p *part) heldChord(h heldChord) {
	p.Int("bar", h.bar)
	p.Int("chord", h.chord)
	p.chordName("played", h.Chord)
	p.chordName("sounds", h.Sounds)
	if h.box == none {
		p.Null("box")
	} else {
		p.Int("box", h.box)
	}
}

// pick writes the pick of an index, and its piece of the thread.
func (p *part) pick(i int) {
	at := &p.picks[i]
	half := 0.5 * float64(p.passage.Instrument.Hand.Toward())
	if at.Stroke == picking.UpStroke {
		half = -half
	}
	p.Int("bar", at.bar)
	p.Int("pick", at.pick)
	p.Int("held", at.held)
	p.Float("time", p.seconds(at.At))
	p.Float("from", float64(at.String)-half)
	p.Float("to", float64(at.String)+half)
	p.Text("why", p.why(i))
	p.Text("came", p.came(i))
	p.Text("words", p.words(i))
}

// losses writes where the rise and fall of a figure is lost: at each step that
// sounds, from one pick to the next.
func (p *part) losses() {
	for i := range p.picks {
		next, ok := p.next(i)
		if !ok {
			continue
		}
		from, to := &p.picks[i], &p.picks[next]
		held := p.held[from.held]
		for _, loss := range held.Fit.Losses {
			if loss.From == from.Event && loss.To == to.Event && p.held[to.held].Figure == held.Figure &&
				loss.Got == direction(from.Pick, to.Pick) {
				p.loss(loss, i, next)
			}
		}
	}
}

func (p *part) loss(loss picking.Loss, from, to int) {
	p.Object("", func() {
		p.Int("held", p.picks[from].held)
		p.Int("from", from)
		p.Int("to", to)
		p.Text("want", loss.Want.String())
		p.Text("got", loss.Got.String())
		p.Text("words", p.lossWords(loss, from))
	})
}

// next returns the index of the pick after one, round the loop too.
func (p *part) next(i int) (int, bool) {
	if i+1 < len(p.picks) {
		return i + 1, true
	}
	return 0, p.passage.Loop
}

// before returns the index of the pick before one, round the loop too.
func (p *part) before(i int) (int, bool) {
	if i > 0 {
		return i - 1, true
	}
	return len(p.picks) - 1, p.passage.Loop
}

func direction(a, b picking.Pick) picking.Direction {
	switch {
	case a.String > b.String:
		return picking.Up
	case a.String < b.String:
		return picking.Down
	}
	return picking.Same
}
