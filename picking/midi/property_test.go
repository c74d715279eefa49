package midi_test

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/midi/smftest"
	"weft.example/picking/pickingtest"
)

func TestProperties(t *testing.T) {
	properties := gopter.NewProperties(gopter.DefaultTestParametersWithSeed(16))
	passages := func(check func(p picking.Passage, o midi.Options) bool) gopter.Prop {
		return prop.ForAll(func(seed uint64) bool {
			r := rand.New(rand.NewPCG(seed, 3))
			return check(pickingtest.Random(r), options(r))
		}, gen.UInt64())
	}
	properties.Property("a file reads back as its passage", passages(func(p picking.Passage, o midi.Options) bool {
		return fault(t, p, o) == ""
	}))
	properties.Property("one note a pick, whichever tracks hold them", passages(func(p picking.Passage, o midi.Options) bool {
		picks := 0
		for range p.Picks() {
			picks++
		}
		o.CountIn, o.Click = 0, false
		return strings.Count(listed(t, encoded(t, p, o)), " note ") == picks
	}))
	properties.Property("a count-in delays all and changes nothing", passages(func(p picking.Passage, o midi.Options) bool {
		o.CountIn, o.Click = 0, true
		plain := strings.Count(listed(t, encoded(t, p, o)), "\n")
		o.CountIn = 1
		counted := strings.Count(listed(t, encoded(t, p, o)), "\n")
		return counted-plain == int((p.Meter.Bar()+p.Meter.Beat()-1)/p.Meter.Beat())
	}))
	properties.Property("the file of a loop ends with its last bar", passages(func(p picking.Passage, o midi.Options) bool {
		o.CountIn, p.Loop = 0, true
		return strings.Contains(listed(t, encoded(t, p, o)), smftest.End(0, int(p.Length())))
	}))
	properties.Property("a title changes the name of the first track and nothing else", prop.ForAll(func(title string, seed uint64) bool {
		p := pickingtest.Random(rand.New(rand.NewPCG(seed, 4)))
		p.Title = ""
		plain, err := smftest.Read(encoded(t, p, midi.Options{}))
		p.Title = "." + title
		titled, errTitled := smftest.Read(encoded(t, p, midi.Options{}))
		name := slices.Index(titled, smftest.Name(0, []byte(p.Title)))
		return err == nil && errTitled == nil && name >= 0 && slices.Equal(plain, slices.Delete(titled, name, name+1))
	}, gen.AnyString(), gen.UInt64()))
	properties.TestingRun(t)
}

// FuzzEncode bends a passage and wants either a located error or a file that
// reads back as the passage.
func FuzzEncode(f *testing.F) {
	f.Add(uint64(1), 0, false, false, "", uint8(0), 0)
	f.Add(uint64(2), 2, true, false, "Slow Walk", uint8(1), 7)
	f.Add(uint64(3), 8, false, true, "\xff\x00", uint8(5), -3)
	f.Fuzz(func(t *testing.T, seed uint64, countIn int, one, click bool, title string, which uint8, by int) {
		p := pickingtest.Random(rand.New(rand.NewPCG(seed, 5)))
		p.Title = title
		bend(&p, which, by)
		o := midi.Options{OneTrack: one, CountIn: countIn, Click: click}
		var b bytes.Buffer
		if err := midi.Encode(&b, p, o); err != nil {
			if located, ok := err.(fretboard.Located); !ok || located.Where().Reason == "" || b.Len() > 0 {
				t.Fatalf("%d bytes and %T without a place: %v", b.Len(), err, err)
			}
			return
		}
		if fault := fault(t, p, o); fault != "" {
			t.Fatal(fault)
		}
	})
}

// bend changes one thing of a passage as Arrange would not make it.
func bend(p *picking.Passage, which uint8, by int) {
	bar := &p.Bars[int(which)%len(p.Bars)]
	switch ticks := picking.Ticks(by); which % 12 {
	case 1:
		p.Tempo += by
	case 2:
		p.Meter.Count += by
	case 3:
		p.Meter.Unit += by
	case 4:
		bar.Length += ticks
	case 5:
		p.Bars[len(p.Bars)-1].Length += ticks
	case 6:
		bar.Chords[0].At += ticks
	case 7, 8, 9, 10, 11:
		if len(bar.Picks) > 0 {
			pick := &bar.Picks[len(bar.Picks)-1]
			switch which % 12 {
			case 7:
				pick.At += ticks
			case 8:
				pick.Rings += ticks
			case 9:
				pick.String += fretboard.StringNumber(by)
			case 10:
				pick.Pitch += fretboard.Pitch(by)
			case 11:
				pick.Stroke += picking.Stroke(by)
			}
		}
	}
}
