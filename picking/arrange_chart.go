package picking

import (
	"strings"

	"weft.example/fretboard"
)

// A playedBar is a bar of the chart in the order of playing.
type playedBar struct {
	chords        []ChartChord
	written, pass int
}

// played returns the bars of p in the order of playing: repeats twice, each
// sign for the bar before replaced by that bar's chords.
func (p Progression) played() ([]playedBar, error) {
	if len(p.bars) == 0 {
		return nil, refuse("chords", "", "no chords", "write chords between bar lines, such as Am | G | Dm | E")
	}
	bars := make([]playedBar, 0, len(p.bars))
	opened := 0
	for i, bar := range p.bars {
		if bar.Opens {
			opened = i
		}
		bars = append(bars, playedBar{p.chordsOf(i), i + 1, 1})
		for w := opened; bar.Closes && w <= i; w++ {
			bars = append(bars, playedBar{p.chordsOf(w), w + 1, 2})
		}
		if len(bars) > MaxBars {
			return nil, &fretboard.ImpossibleError{Place: chartPlace(p.text, bar.at,
				"more than "+digits(MaxBars)+" bars, repeats played out", "cut the song in parts")}
		}
	}
	return bars, nil
}

// chordsOf returns the chords of bar i, or of the bar that it plays again.
func (p Progression) chordsOf(i int) []ChartChord {
	for p.bars[i].Again {
		i--
	}
	return p.bars[i].Chords
}

// lengths returns how long each chord of a bar lasts. All are multiples of
// finest, so that every length can be written.
func (p Progression) lengths(chords []ChartChord, m Meter) ([]Ticks, error) {
	lengths := make([]Ticks, len(chords))
	left, sharing := m.Bar(), 0
	unit, err := p.beatUnit(chords, m)
	if err != nil {
		return nil, err
	}
	for i, c := range chords {
		lengths[i] = Ticks(c.Beats) * unit / Ticks(quartersOfBeat)
		left -= lengths[i]
		if c.Beats == 0 {
			sharing++
		}
		if lengths[i]%finest != 0 || left < 0 || left == 0 && sharing > 0 {
			return nil, p.badBeats(c, chords, m)
		}
	}
	if sharing == 0 && left > 0 || sharing > 0 && left%(finest*Ticks(sharing)) != 0 {
		return nil, p.badBeats(chords[len(chords)-1], chords, m)
	}
	for i, c := range chords {
		if c.Beats == 0 {
			lengths[i] = left / Ticks(sharing)
		}
	}
	return lengths, nil
}

// finest divides every note value, plain or in triplets, down to 1/96.
const finest Ticks = 10

// beatUnit returns what a beat of the chords' beats is: the meter's unit or, in
// a compound meter, three of them if so the beats fill the bar.
func (p Progression) beatUnit(chords []ChartChord, m Meter) (Ticks, error) {
	sum, sharing := Beats(0), 0
	for _, c := range chords {
		sum += c.Beats
		if c.Beats == 0 {
			sharing++
		}
	}
	if !m.Compound() || sum == 0 {
		return m.UnitTicks(), nil
	}
	if sharing > 0 {
		return 0, &fretboard.ImpossibleError{Place: chartPlace(p.text, chords[0].at,
			"some chords of a bar of "+m.String()+" have beats and some have none", "give every chord of the bar its beats")}
	}
	if Ticks(sum)*m.Beat() == m.Bar()*Ticks(quartersOfBeat) {
		return m.Beat(), nil
	}
	return m.UnitTicks(), nil
}

// badBeats places the error on the chord where the bar goes wrong and shows
// the whole bar with beats that work.
func (p Progression) badBeats(c ChartChord, chords []ChartChord, m Meter) error {
	sums := digits(m.Count)
	if m.Compound() {
		sums += ", or to " + digits(m.Count/3) + " dotted ones,"
	}
	mend := "give the bar beats that add up to " + sums + " such as " + p.withBeats(chords, m)
	return &fretboard.ImpossibleError{Place: chartPlace(p.text, c.at, "the chords do not fill a bar of "+m.String(), mend)}
}

// withBeats prints the chords with even beats, the first ones longer: whole
// beats or, if there are more chords than beats, halves or quarters of one.
func (p Progression) withBeats(chords []ChartChord, m Meter) string {
	step := quartersOfBeat
	for step > 1 && m.Count*int(quartersOfBeat/step) < len(chords) {
		step /= 2
	}
	steps := m.Count * int(quartersOfBeat/step)
	texts := make([]string, 0, len(chords))
	for i, c := range chords {
		share := steps / len(chords)
		if i < steps%len(chords) {
			share++
		}
		texts = append(texts, ChartChord{Chord: c.Chord, Beats: Beats(share) * step}.StringIn(p.spelling))
	}
	return front(strings.Join(texts, " "), 200)
}
