package words_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/pickingtest"
	"weft.example/picking/words"
)

func TestWhatCannotBeTold(t *testing.T) {
	good := arranged(t, songs[0])
	bent := func(change func(p *picking.Passage)) picking.Passage {
		p := arranged(t, songs[0])
		change(&p)
		return p
	}
	for _, c := range []struct {
		why, reason string
		passage     picking.Passage
		options     words.Options
	}{
		{"narrower than any display", "not a width", good, words.Options{Width: 11}},
		{"a negative width", "not a width", good, words.Options{Width: -1}},
		{"a line without end", "not a width", good, words.Options{Width: 1001}},
		{"a page of a width", "breaks its lines itself", good, words.Options{HTML: true, Width: 40}},
		{"a meter by hand", "not a time signature", bent(func(p *picking.Passage) { p.Meter = picking.Meter{Count: 3} }), words.Options{}},
		{"a tradition by hand", "no such choice", bent(func(p *picking.Passage) { p.Strokes = 5 }), words.Options{}},
		{"a fit by hand", "no such choice", bent(func(p *picking.Passage) { p.Fit = 3 }), words.Options{}},
		{"an instrument by hand", "", bent(func(p *picking.Passage) { p.Instrument.Capo = 99 }), words.Options{}},
		{"a bar without length", "no length", bent(func(p *picking.Passage) { p.Bars[1].Length = 0 }), words.Options{}},
		{"a pick before its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].At = 0 }), words.Options{}},
		{"picks out of order", "too late", bent(func(p *picking.Passage) {
			picks := p.Bars[1].Picks
			picks[0], picks[1] = picks[1], picks[0]
		}), words.Options{}},
		{"a pick without length", "no length", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].Length = 0 }), words.Options{}},
		{"a string too many", "lacks", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].String = 7 }), words.Options{}},
		{"a fret below the nut", "lacks", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].Fret = -1 }), words.Options{}},
		{"a chord beyond its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Chords[0].Length *= 2 }), words.Options{}},
	} {
		var b strings.Builder
		err := words.Encode(&b, c.passage, c.options)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: got %v", c.why, err)
		}
		if b.Len() > 0 {
			t.Errorf("%s: wrote %d bytes all the same", c.why, b.Len())
		}
	}
}

func TestAShortWriteIsAnError(t *testing.T) {
	if err := words.Encode(short{}, arranged(t, songs[0]), words.Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("got %v", err)
	}
}

// A short writer takes less than it is given and does not say so.
type short struct{}

func (short) Write(b []byte) (int, error) { return len(b) - 1, nil }

// TestTheEmptyPassage has a title and what holds for all, and no bars.
func TestTheEmptyPassage(t *testing.T) {
	got := encoded(t, picking.Passage{}, words.Options{})
	if !strings.HasPrefix(got, "A part for plectrum\n") || !strings.Contains(got, "\n0 bars.\n") || strings.Contains(got, "\nBars\n") {
		t.Errorf("got\n%s", got)
	}
	if fault := pageFault(got, encoded(t, picking.Passage{}, words.Options{HTML: true})); fault != "" {
		t.Error(fault)
	}
}

// TestWhatIsSaidOfThePart looks for single facts, each of which only some parts
// have.
func TestWhatIsSaidOfThePart(t *testing.T) {
	for _, c := range []struct {
		why, chords, figures, want string
		setting                    picking.Setting
	}{
		{"a lost step", "D=xx0232", "6 4 3 2 1 2 3 4", "From note 1 to note 2 the figure goes on, but here it stays on its string.", picking.Setting{}},
		{"a step lost round the loop", "D=xx0232", "6 4 3 2 1 2 3 4", "From note 8 round to note 1 the figure goes back, but here it stays on its string.", picking.Setting{}},
		{"a remark with notes in it", "C=332010", "5 3 2 1", "String 6 sounds G, below the root on string 5.", picking.Setting{}},
		{"a remark with accidentals", "Cm=x4501x", "5 3 2", "String 5 sounds D flat, which is not in C minor.", picking.Setting{}},
		{"a remark on millimetres", "C=1-3-5-7-9-11", "5 3 2 1", "Four fingers cannot hold this shape: frets 1 and 11 lie 267 millimetres apart, further than hands reach.", picking.Setting{}},
		{"a step lost in some bars", "D=xx0232 | D=xx0232 | D=xx0232 | D=xx0232 | Am=x02210 | D=xx0232 | D=xx0232 | Am=x02210", "6 4 3 2 1 2 3 4",
			"Bars 1 to 3 and 6: from note 8 round to note 1 the figure goes back, but here it stays on its string.", picking.Setting{}},
		{"a figure without a chord", "Am=x02210", "5 3; 5 1", "No chord plays figure 2.", picking.Setting{}},
		{"the root silent", "Am=xx2x10", "5 3 2 1", "Start on string 4. The root does not sound. This string sounds lowest.", picking.Setting{}},
		{"the slash bass", "G/B=x20003", "5 3 2 1", "Start on string 5. It carries the bass that the chord names, B.", picking.Setting{}},
		{"the capo", "Am=x02210", "5 3 2 1", "With the capo it sounds as C minor.", picking.Setting{Instrument: fretboard.Instrument{Capo: 3}}},
		{"one string", "A=0", "1", "Down is toward the floor. Up is away from it.", picking.Setting{Instrument: tuned("A2")}},
		{"turned over", "Am=x02210", "5", "Down is toward the floor and string 6. Up is toward string 1.", picking.Setting{Instrument: fretboard.Instrument{Hand: fretboard.LeftTurned}}},
		{"accidentals of strings", "G=0", "1", "String 1 open: E flat, octave 3.", picking.Setting{Instrument: tuned("Eb3")}},
		{"thirty-seconds", "Am=x02210", "5 3 2 1", "A beat is a thirty second note.", picking.Setting{Meter: picking.Meter{Count: 4, Unit: 32}}},
		{"two shapes", "Am=x02210 | Am=577555", "5 3 2 1", "Chord A minor, shape 2.", picking.Setting{}},
		{"a change within a beat", "Am=x02210:1.5 C=x32010:2.5", "1/8: 5 3", "Chord C major, from beat 2, and.", picking.Setting{}},
		{"silence", "N.C. | Am=x02210", "5 3 2 1", "Beats 1 to 4: rest.", picking.Setting{Once: true}},
		{"a hold over beats", "Am=x02210", "1/4: 5 - - -", "Beats 2 to 4: hold.", picking.Setting{}},
	} {
		text := encoded(t, arranged(t, song{chords: c.chords, figures: c.figures, setting: c.setting}), words.Options{})
		if !strings.Contains(text, "\n"+c.want+"\n") {
			t.Errorf("%s: %q is not in\n%s", c.why, c.want, text)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	for _, c := range pickingtest.List() {
		switch c.Name {
		case "sixteen-bars", "most-bars", "many-chords":
			b.Run(c.Name, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if err := words.Encode(io.Discard, c.Passage, words.Options{}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
