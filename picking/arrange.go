package picking

import (
	"slices"
	"strings"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// Arrange carries figures over a progression. A figure starts again at each
// change of chord, or of figure, and what is held unchanged over bar lines
// counts as one chord. Errors are [fretboard.ImpossibleError] values located in
// the chart, in the figure or in a setting. The time grows with the picks, and
// with the cost of one fit for each pair of a voicing and a figure.
func Arrange(song Progression, figures Figures, s Setting) (Passage, error) {
	s, err := s.normal()
	if err != nil {
		return Passage{}, err
	}
	a := arranger{Setting: s, song: song}
	if err := a.setFigures(figures); err != nil {
		return Passage{}, err
	}
	if err := a.readChart(); err != nil {
		return Passage{}, err
	}
	a.pluck()
	a.strike()
	a.ring()
	a.reportLosses()
	return a.passage(), nil
}

// An arranger works one passage out, step by step: the chart becomes bars of
// chords and runs of one chord each; the runs are plucked; the plucked notes
// get strokes and sounding lengths.
type arranger struct {
	Setting
	song     Progression
	patterns []pattern
	cutter   cutter
	capoBy   fretboard.Interval // from the chords' names to how they sound

	voicings map[voicingKey]voiced
	fits     map[fitKey]Fit
	bars     []Bar
	turn     int // of the figures: how many chords have been read
	runs     []run
	picks    []Pick
	details  []detail // of each pick
	damps    []Ticks  // when a rest stops every string
}

type voicingKey struct {
	chord voicing.Chord
	shape voicing.Shape
}

type voiced struct {
	voicing.Voicing
	remarks []string
}

type fitKey struct {
	voicingKey
	figure int
}

// A run is a chord held for as long as neither it nor its figure changes. The
// zero figure is silence.
type run struct {
	at, end Ticks
	held    voicing.Voicing
	figure  int
	fit     Fit
}

// A detail is what a pick knows of its making.
type detail struct {
	own     Stroke
	step    int // slots from the bar line
	offbeat bool
	run     int
}

func (a *arranger) setFigures(figures Figures) error {
	if len(figures) == 0 {
		return refuse("figure", "", "no figure", "write one, such as 5 3 2 1 2 3")
	}
	a.patterns = make([]pattern, len(figures))
	for i, f := range figures {
		if len(f.slots) == 0 {
			return refuse("figure", "", "the figure has no slots", "write one, such as 5 3 2 1 2 3")
		}
		if err := f.checkStrings(a.Instrument.Tuning.Strings()); err != nil {
			return err
		}
		pattern, err := f.setIn(a.Meter)
		if err != nil {
			return err
		}
		a.patterns[i] = pattern
	}
	return nil
}

// readChart lays out the bars with their chords, and the runs.
func (a *arranger) readChart() error {
	played, err := a.song.played()
	if err != nil {
		return err
	}
	a.voicings, a.fits = map[voicingKey]voiced{}, map[fitKey]Fit{}
	a.bars = make([]Bar, len(played))
	a.capoBy = a.sounding()
	for i, bar := range played {
		a.bars[i] = Bar{Number: i + 1, Written: bar.written, Pass: bar.pass,
			At: Ticks(i) * a.Meter.Bar(), Length: a.Meter.Bar(), Chords: make([]HeldChord, len(bar.chords))}
		if err := a.readBar(&a.bars[i], bar.chords); err != nil {
			return err
		}
	}
	return nil
}

// readBar lays out the chords of one bar.
func (a *arranger) readBar(bar *Bar, chords []ChartChord) error {
	lengths, err := a.song.lengths(chords, a.Meter)
	if err != nil {
		return err
	}
	at := bar.At
	for i, c := range chords {
		held := HeldChord{At: at, Length: lengths[i], Chord: c.Chord, Sounds: c.Chord.Transpose(a.capoBy)}
		if !c.Chord.Silent() {
			if held.Figure, err = a.figureFor(c); err != nil {
				return err
			}
		}
		if err := a.hold(c, &held); err != nil {
			return err
		}
		bar.Chords[i] = held
		at += lengths[i]
	}
	return nil
}

// figureFor returns the figure that a chord names, or the next in turn.
func (a *arranger) figureFor(c ChartChord) (int, error) {
	turn := a.turn
	a.turn++
	switch {
	case c.Figure > len(a.patterns):
		return 0, &fretboard.ImpossibleError{Place: chartPlace(a.song.text, c.at,
			"no figure "+digits(c.Figure)+"; there are "+digits(len(a.patterns)), "put more figures after a semicolon")}
	case c.Figure > 0:
		return c.Figure, nil
	case a.InTurn:
		return turn%len(a.patterns) + 1, nil
	}
	return 1, nil
}

// hold finds the voicing and the fit of a chord and adds it to the run that it
// goes on with, or to a new one.
func (a *arranger) hold(c ChartChord, held *HeldChord) error {
	var fit Fit
	if !c.Chord.Silent() {
		v, err := a.voice(c)
		if err != nil {
			return err
		}
		held.Voicing, held.Remarks = v.Voicing, v.remarks
		fit = a.fitted(held)
		if has, wants := v.Sounding().Len(), a.patterns[held.Figure-1].levels; has < wants {
			held.Remarks = append(slices.Clip(held.Remarks),
				"the figure needs "+digits(wants)+" strings and the shape sounds "+digits(has))
		}
	}
	held.Fit = fit
	held.Fit.Losses = nil
	end := held.At + held.Length
	if n := len(a.runs); n > 0 && a.runs[n-1].figure == held.Figure && a.runs[n-1].held == held.Voicing {
		a.runs[n-1].end = end
		return nil
	}
	a.runs = append(a.runs, run{held.At, end, held.Voicing, held.Figure, fit})
	return nil
}

// voice returns the voicing of the shape that the chart names, or the best.
func (a *arranger) voice(c ChartChord) (voiced, error) {
	key := voicingKey{c.Chord, c.Shape}
	if v, known := a.voicings[key]; known {
		return v, nil
	}
	at := c.at
	find := func() (voicing.Voicing, error) { return voicing.Best(a.Instrument, c.Chord, voicing.Options{}) }
	if c.Shape.Strings() > 0 {
		at = c.held
		find = func() (voicing.Voicing, error) { return voicing.New(a.Instrument, c.Chord, c.Shape) }
	}
	v, err := find()
	if located, ok := err.(fretboard.Located); ok {
		place := located.Where()
		mend := strings.ReplaceAll(place.Mend, c.Chord.String()+"=", c.Chord.StringIn(a.song.spelling)+"=")
		err = &fretboard.ImpossibleError{Place: chartPlace(a.song.text, at, place.Reason, mend)}
	}
	if err != nil {
		return voiced{}, err
	}
	a.voicings[key] = voiced{v, v.Remarks()}
	return a.voicings[key], nil
}

func (a *arranger) fitted(held *HeldChord) Fit {
	key := fitKey{voicingKey{held.Chord, held.Voicing.Shape()}, held.Figure}
	if fit, known := a.fits[key]; known {
		return fit
	}
	p := a.patterns[held.Figure-1]
	fit := problem{p.events, p.root, held.Voicing.Sounding(), held.Voicing.Start().String}.solve(a.Fit, &a.cutter)
	a.fits[key] = fit
	return fit
}

// sounding returns the interval from the chords' names to how they sound.
func (a *arranger) sounding() fretboard.Interval {
	var chords []voicing.Chord
	for _, bar := range a.song.bars {
		for _, c := range bar.Chords {
			chords = append(chords, c.Chord)
		}
	}
	return capoInterval(a.Instrument.Capo, chords)
}

func (a *arranger) passage() Passage {
	p := Passage{Title: a.Title, Meter: a.Meter, Tempo: a.Tempo, Instrument: a.Instrument,
		Strokes: a.Strokes, Fit: a.Setting.Fit, Loop: !a.Once, Bars: a.bars, Remarks: a.unplayed()}
	next := 0
	for i := range a.bars {
		from := next
		for next < len(a.picks) && a.picks[next].At < a.bars[i].At+a.bars[i].Length {
			p.Travel += a.picks[next].Travel
			next++
		}
		a.bars[i].Picks = a.picks[from:next:next]
	}
	return p
}

// unplayed remarks on each figure that no chord plays.
func (a *arranger) unplayed() (remarks []string) {
	played := make([]bool, len(a.patterns)+1)
	for _, r := range a.runs {
		played[r.figure] = true
	}
	for i := range a.patterns {
		if !played[i+1] {
			remarks = append(remarks, "no chord plays figure "+digits(i+1))
		}
	}
	return remarks
}
