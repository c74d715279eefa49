package text_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/text"
)

// A limited writer takes so many bytes and then fails for good.
type limited struct {
	left int
	err  error
}

func (w *limited) Write(b []byte) (int, error) {
	if len(b) > w.left {
		n := w.left
		w.left = 0
		return n, w.err
	}
	w.left -= len(b)
	return len(b), nil
}

func TestWriteErrorsComeBack(t *testing.T) {
	p := arranged(t, songs[0])
	full := errors.New("the disk is full")
	size := len(encoded(t, p, text.Options{}))
	for _, room := range []int{0, 1, size / 2, size - 1} {
		if err := text.Encode(&limited{room, full}, p, text.Options{}); !errors.Is(err, full) {
			t.Errorf("room for %d of %d bytes: got %v", room, size, err)
		}
		if err := text.Encode(&limited{room, nil}, p, text.Options{}); !errors.Is(err, io.ErrShortWrite) {
			t.Errorf("room for %d of %d bytes, no error said: got %v", room, size, err)
		}
	}
	if err := text.Encode(&limited{size, full}, p, text.Options{}); err != nil {
		t.Errorf("room for all: got %v", err)
	}
}

func TestWhatCannotBeOnASheet(t *testing.T) {
	good := arranged(t, songs[0])
	bent := func(change func(p *picking.Passage)) picking.Passage {
		p := arranged(t, songs[0])
		change(&p)
		return p
	}
	for _, c := range []struct {
		why, reason string
		passage     picking.Passage
		options     text.Options
	}{
		{"narrower than any sheet", "not a width", good, text.Options{Width: 39}},
		{"a negative width", "not a width", good, text.Options{Width: -1}},
		{"a line without end", "not a width", good, text.Options{Width: 1001}},
		{"a spelling by hand", "no such spelling", good, text.Options{Spelling: 3}},
		{"a count by hand", "no such count", good, text.Options{Count: 5}},
		{"a meter by hand", "not a time signature", bent(func(p *picking.Passage) { p.Meter = picking.Meter{Count: 3} }), text.Options{}},
		{"an instrument by hand", "", bent(func(p *picking.Passage) { p.Instrument.Capo = 99 }), text.Options{}},
		{"a bar without length", "no length", bent(func(p *picking.Passage) { p.Bars[1].Length = 0 }), text.Options{}},
		{"a pick before its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].At = 0 }), text.Options{}},
		{"a pick without length", "no length", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].Length = 0 }), text.Options{}},
		{"a string too many", "lacks", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].String = 7 }), text.Options{}},
		{"no string", "lacks", bent(func(p *picking.Passage) { p.Bars[1].Picks[0].String = 0 }), text.Options{}},
		{"a chord beyond its bar", "outside", bent(func(p *picking.Passage) { p.Bars[1].Chords[0].Length *= 2 }), text.Options{}},
	} {
		var b strings.Builder
		err := text.Encode(&b, c.passage, c.options)
		var impossible *fretboard.ImpossibleError
		if !errors.As(err, &impossible) || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: got %v", c.why, err)
		}
		if b.Len() > 0 {
			t.Errorf("%s: wrote %d bytes all the same", c.why, b.Len())
		}
	}
}

// TestTheEmptyPassage has a header and nothing to explain.
func TestTheEmptyPassage(t *testing.T) {
	got := encoded(t, picking.Passage{}, text.Options{})
	if !strings.Contains(got, "meter   4/4") || strings.Contains(got, "count") {
		t.Errorf("got\n%s", got)
	}
}

// TestWhatRingsRoundALoopIsNoSilence starts with a held slot: in a loop the end
// rings into it; played once there is nothing to ring.
func TestWhatRingsRoundALoopIsNoSilence(t *testing.T) {
	for _, once := range []bool{false, true} {
		p := arranged(t, song{chords: "Am=x02210", figures: "- 5 3 2", setting: picking.Setting{Once: once}})
		if got := strings.Contains(encoded(t, p, text.Options{}), "\nstroke  .  D "); got != once {
			t.Errorf("played once: %v; begins with a silence: %v", once, got)
		}
	}
}

func TestEncodeLeavesThePassageAlone(t *testing.T) {
	p, again := arranged(t, songs[2]), arranged(t, songs[2])
	first := encoded(t, p, text.Options{})
	if second := encoded(t, p, text.Options{}); first != second || first != encoded(t, again, text.Options{}) {
		t.Error("the sheet of a passage written twice differs")
	}
}

func BenchmarkEncodeSixteenBars(b *testing.B) {
	for _, s := range songs {
		if s.name != "sixteen-bars" {
			continue
		}
		p := arranged(b, s)
		b.ReportAllocs()
		for b.Loop() {
			if err := text.Encode(io.Discard, p, text.Options{}); err != nil {
				b.Fatal(err)
			}
		}
	}
}
