package picking

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// randomSong returns a song of random shapes with a random setting.
func randomSong(r *rand.Rand) (Progression, Figures, Setting) {
	names := fretboard.TuningNames()
	g := tuned(names[r.IntN(len(names))])
	g.Hand, g.Capo = fretboard.Hand(r.IntN(3)), fretboard.Fret(r.IntN(5))
	s := Setting{Instrument: g, Meter: []Meter{FourFour, SixEight, ThreeFour, {7, 8}}[r.IntN(4)],
		Strokes: Tradition(r.IntN(5)), Fit: Moulding(r.IntN(3)), Change: Change(r.IntN(2)), Fill: Fill(r.IntN(2)),
		InTurn: r.IntN(2) == 0, Once: r.IntN(2) == 0}
	strings := int(g.Tuning.Strings())
	var figures Figures
	for range 1 + r.IntN(2) {
		f := randomFigure(r, 1+r.IntN(9), strings)
		f.value = []NoteValue{240, 480, 160, 120}[r.IntN(4)]
		figures = append(figures, f)
	}
	var bars []ChartBar
	for range 1 + r.IntN(6) {
		var bar ChartBar
		for range 1 + r.IntN(2) {
			bar.Chords = append(bar.Chords, randomHeld(r, strings))
		}
		bars = append(bars, bar)
	}
	song, err := NewProgression(bars...)
	if err != nil {
		panic(err)
	}
	return song, figures, s
}

func randomHeld(r *rand.Rand, strings int) ChartChord {
	if r.IntN(8) == 0 {
		return ChartChord{}
	}
	symbols := []string{"Am", "G", "D7", "Fmaj7/C"}
	shape := voicing.NewShape(fretboard.StringNumber(strings)).With(1, fretboard.Fret(r.IntN(4)))
	for s := fretboard.StringNumber(2); s <= shape.Strings(); s++ {
		if r.IntN(5) > 0 {
			shape = shape.With(s, fretboard.Fret(r.IntN(4)))
		}
	}
	return ChartChord{Chord: mustChord(symbols[r.IntN(len(symbols))]), Shape: shape}
}

// ringOf is the sounding length by its definition, going forward pick by pick.
func ringOf(p Passage, at int) Ticks {
	var picks []Pick
	for _, pick := range p.Picks() {
		picks = append(picks, pick)
	}
	pick, length := picks[at], p.Length()
	for t := pick.At + 1; ; t++ {
		now := t
		if p.Loop {
			now %= length
		} else if t == length+p.Meter.Bar() {
			return t - pick.At
		} else if t >= length {
			continue
		}
		for _, other := range picks {
			if other.At == now && other.String == pick.String {
				return t - pick.At
			}
		}
		before, is := heldAt(p, (now-1+length)%length), heldAt(p, now)
		wasFret, was := before.Voicing.Shape().Fret(pick.String)
		fret, sounds := is.Voicing.Shape().Fret(pick.String)
		if (now > 0 || p.Loop) && (was != sounds || wasFret != fret) {
			return t - pick.At
		}
	}
}

func heldAt(p Passage, at Ticks) HeldChord {
	for _, bar := range p.Bars {
		for _, held := range bar.Chords {
			if held.At <= at && at < held.At+held.Length {
				return held
			}
		}
	}
	panic("no chord")
}

func TestArrangeProperties(t *testing.T) {
	parameters := gopter.DefaultTestParameters()
	properties := gopter.NewProperties(parameters)
	songs := func(check func(song Progression, figures Figures, s Setting, r *rand.Rand) bool) gopter.Prop {
		return prop.ForAll(func(seed int64) bool {
			r := random(seed)
			song, figures, s := randomSong(r)
			return check(song, figures, s, r)
		}, gen.Int64())
	}
	properties.Property("bars tile the time, chords their bar, and picks begin inside", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			p, err := Arrange(song, figures, s)
			at := Ticks(0)
			for _, bar := range p.Bars {
				if bar.At != at || bar.Length != s.Meter.Bar() {
					return false
				}
				for _, held := range bar.Chords {
					if held.At != at || held.Length <= 0 {
						return false
					}
					at += held.Length
				}
				for i, pick := range bar.Picks {
					if pick.At < bar.At || pick.At >= at || pick.Length <= 0 || pick.Rings <= 0 || i > 0 && pick.At <= bar.Picks[i-1].At {
						return false
					}
				}
				if at != bar.At+bar.Length {
					return false
				}
			}
			return err == nil && at == p.Length()
		}))
	properties.Property("every pick sounds its string of the chord held", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			p, _ := Arrange(song, figures, s)
			for _, pick := range p.Picks() {
				held := heldAt(p, pick.At)
				fret, sounds := held.Voicing.Shape().Fret(pick.String)
				if !sounds || fret != pick.Fret || held.Voicing.Pitch(pick.String) != pick.Pitch ||
					pick.Note.Pitch() != pick.Pitch || held.Fit.Strings[pick.Event-1] != pick.String {
					return false
				}
			}
			return true
		}))
	properties.Property("a string rings until it is plucked, damped or held otherwise", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			for i, f := range figures { // rests are damps: without them the definition is short
				slots := append([]Slot(nil), f.slots...)
				for k := range slots {
					if slots[k].Kind == Rest {
						slots[k].Kind = Hold
					}
				}
				figures[i], _ = NewFigure(f.value, 0, slots)
			}
			p, _ := Arrange(song, figures, s)
			for i, pick := range p.Picks() {
				if want := ringOf(p, i); pick.Rings != want {
					return false
				}
			}
			return true
		}))
	properties.Property("raising the capo shifts pitches and nothing else", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			low, _ := Arrange(song, figures, s)
			by := fretboard.Fret(1 + r.IntN(5))
			s.Instrument.Capo += by
			high, err := Arrange(song, figures, s)
			for b := range low.Bars {
				for i, pick := range low.Bars[b].Picks {
					raised := high.Bars[b].Picks[i]
					if raised.Pitch != pick.Pitch.Up(by) || raised.Note.Pitch() != raised.Pitch {
						return false
					}
					raised.Pitch, raised.Note = pick.Pitch, pick.Note
					if raised != pick {
						return false
					}
				}
			}
			return err == nil && low.Travel == high.Travel
		}))
	properties.Property("a longer progression does not change earlier bars except at the join", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			short, _ := Arrange(song, figures, s)
			bars := append(append([]ChartBar(nil), song.Bars()...), ChartBar{Chords: []ChartChord{randomHeld(r, int(s.Instrument.Tuning.Strings()))}})
			longer, _ := NewProgression(bars...)
			long, err := Arrange(longer, figures, s)
			return err == nil && sameButAtTheJoin(short, long)
		}))
	properties.Property("turning the strings over swaps the strokes that the strings decide", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			s.Strokes, s.Instrument.Hand = TowardNext, fretboard.RightHanded
			right, _ := Arrange(song, withoutOwn(figures), s)
			s.Instrument.Hand = fretboard.LeftTurned
			turned, _ := Arrange(song, withoutOwn(figures), s)
			for b := range right.Bars {
				for i, pick := range right.Bars[b].Picks {
					decided := pick.Why == TowardNextString || pick.Why == Turnaround || pick.Why == RoundLoop
					if decided && turned.Bars[b].Picks[i].Stroke != pick.Stroke.other() {
						return false
					}
				}
			}
			return true
		}))
	properties.Property("rotating a loop of bars rotates its strings", songs(
		func(song Progression, figures Figures, s Setting, r *rand.Rand) bool {
			s.Change, s.Once, s.InTurn = Restart, false, false
			bars := song.Bars()
			if first, last := bars[0].Chords[0], bars[len(bars)-1]; last.Chords[len(last.Chords)-1].String() == first.String() {
				return true // the loop's join is not a change of chord
			}
			by := r.IntN(len(bars))
			for i := range bars { // nor may the new join be one
				before := bars[(i+len(bars)-1)%len(bars)].Chords
				if before[len(before)-1].String() == bars[i].Chords[0].String() {
					return true
				}
			}
			rotated, _ := NewProgression(append(append([]ChartBar(nil), bars[by:]...), bars[:by]...)...)
			a, _ := Arrange(song, figures, s)
			b, err := Arrange(rotated, figures, s)
			for i := range a.Bars {
				if !cmp.Equal(eventsOf(a.Bars[(i+by)%len(bars)]), eventsOf(b.Bars[i])) {
					return false
				}
			}
			return err == nil && (s.Strokes != TowardNext || a.Travel == b.Travel)
		}))
	properties.Property("the same input gives the same passage", songs(
		func(song Progression, figures Figures, s Setting, _ *rand.Rand) bool {
			a, _ := Arrange(song, figures, s)
			b, _ := Arrange(song, figures, s)
			return fmt.Sprintf("%+v", a) == fmt.Sprintf("%+v", b)
		}))
	properties.TestingRun(t)
}

func withoutOwn(figures Figures) Figures {
	var free Figures
	for _, f := range figures {
		slots := append([]Slot(nil), f.slots...)
		for i := range slots {
			slots[i].Own = Free
		}
		g, _ := NewFigure(f.value, 0, slots)
		free = append(free, g)
	}
	return free
}

// eventsOf is what a bar plays, without what the join may change.
func eventsOf(bar Bar) (events []Pick) {
	for _, p := range bar.Picks {
		events = append(events, Pick{At: p.At - bar.At, Length: p.Length, Event: p.Event, String: p.String, Fret: p.Fret, Pitch: p.Pitch})
	}
	return events
}

// sameButAtTheJoin compares strings, frets and times of the shorter passage's
// picks; the last may be written longer where a hold begins the new bar.
func sameButAtTheJoin(short, long Passage) bool {
	for b, bar := range short.Bars {
		other := long.Bars[b]
		if len(other.Picks) != len(bar.Picks) {
			return false
		}
		for i, pick := range bar.Picks {
			if q := other.Picks[i]; q.At != pick.At || q.String != pick.String || q.Fret != pick.Fret || q.Event != pick.Event {
				return false
			}
		}
	}
	return true
}

// TestASlotEndsBeforeSilence: a slot that is carried over changes stops where
// the chords do.
func TestASlotEndsBeforeSilence(t *testing.T) {
	part, err := Arrange(MustParseProgression("Am:1 G:1 N.C.:1 C:1"), Figures{MustParseFigure("1/1: 5")}, Setting{Change: Carry})
	if err != nil {
		t.Fatal(err)
	}
	var got []Ticks
	for _, p := range part.Picks() {
		got = append(got, p.At, p.Length)
	}
	if want := []Ticks{0, 960, 1440, 480}; !slices.Equal(got, want) {
		t.Errorf("picks at and for %v, want %v", got, want)
	}
}
