package smftest

import (
	"fmt"
	"math"
	"slices"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/midi"
)

// Want lists what the file of a passage should hold, straight from the words
// of package midi.
func Want(p picking.Passage, o midi.Options) []string {
	w := want{p, o, int(p.Meter.Bar()) * o.CountIn, 480, 0}
	w.end = w.lead + int(p.Length())
	for _, pick := range p.Picks() {
		if rings := w.lead + int(pick.At+pick.Rings); !p.Loop {
			w.end = max(w.end, rings)
		}
	}
	for w.microseconds() > 0xffffff {
		w.division /= 2
	}
	lines := w.front()
	tracks := 1
	if o.OneTrack {
		lines = append(lines, w.track(1, 0, "strings", p.Instrument.Tuning.All())...)
		tracks++
	}
	for s := 1; s <= int(p.Instrument.Tuning.Strings()) && !o.OneTrack; s++ {
		channel := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12}[s-1]
		name := fmt.Sprintf("string %d %s", s, p.Instrument.Tuning.Open(fretboard.StringNumber(s)))
		lines = append(lines, w.track(s, channel, name, fretboard.StringSet(1)<<(s-1))...)
		tracks++
	}
	if o.Click || o.CountIn > 0 {
		lines = append(lines, w.clicks(tracks)...)
		tracks++
	}
	lines = append(lines, Header(tracks, w.division))
	for n := range tracks {
		lines = append(lines, End(n, w.end))
	}
	slices.Sort(lines)
	return lines
}

type want struct {
	picking.Passage
	midi.Options
	lead, division, end int
}

func (w want) microseconds() int {
	return int(math.Round(60e6 * float64(w.division) / float64(w.Tempo*int(w.Meter.Beat()))))
}

func (w want) front() []string {
	beat, whole := int(w.Meter.Beat()), 4*480
	var count, unit int
	fmt.Sscanf(w.Meter.String(), "%d/%d", &count, &unit)
	lines := []string{Tempo(w.microseconds(), 0),
		Meter(count, unit, beat*24/w.division, w.division*32/whole, 0)}
	if w.Title != "" {
		lines = append(lines, Name(0, []byte(w.Title)))
	}
	for _, bar := range w.Bars {
		for _, c := range bar.Chords {
			lines = append(lines, Marker([]byte(c.Sounds.String()), w.lead+int(c.At)))
		}
	}
	return lines
}

// track lists the notes of a set of strings. A note ends where its key is
// struck again or where none of those strings sounds it any more.
func (w want) track(n, channel int, name string, set fretboard.StringSet) []string {
	lines := []string{Name(n, []byte(name)), Program(n, channel, 25, 0)}
	byKey := map[fretboard.Pitch][]picking.Pick{}
	for _, pick := range w.Picks() {
		if set.Has(pick.String) {
			byKey[pick.Pitch] = append(byKey[pick.Pitch], pick)
		}
	}
	for _, picks := range byKey {
		rings := picking.Ticks(0) // until when the key does
		for i, pick := range picks {
			rings = max(rings, pick.At+pick.Rings)
			until := min(rings, picking.Ticks(w.end-w.lead))
			if i+1 < len(picks) {
				until = min(until, picks[i+1].At)
			}
			lines = append(lines, Note(n, channel, int(pick.Pitch), w.lead+int(pick.At), int(until-pick.At), w.velocity(pick)))
		}
	}
	return lines
}

func (w want) velocity(pick picking.Pick) int {
	v := 80
	for _, bar := range w.Bars {
		switch since := pick.At - bar.At; {
		case since == 0:
			v = 104
		case since > 0 && since < bar.Length && since%w.Meter.Beat() == 0:
			v = 92
		}
	}
	return v - map[picking.Stroke]int{picking.UpStroke: 8}[pick.Stroke]
}

func (w want) clicks(n int) []string {
	lines := []string{Name(n, []byte("click"))}
	beat := int(w.Meter.Beat())
	bar := func(from, length int) {
		for at := 0; at < length; at += beat {
			key, velocity := 77, 88
			if at == 0 {
				key, velocity = 76, 112
			}
			lines = append(lines, Note(n, 9, key, from+at, min(beat/2, w.end-from-at), velocity))
		}
	}
	for i := range w.CountIn {
		bar(i*int(w.Meter.Bar()), int(w.Meter.Bar()))
	}
	for _, b := range w.Bars {
		if w.Click {
			bar(w.lead+int(b.At), int(b.Length))
		}
	}
	return lines
}
