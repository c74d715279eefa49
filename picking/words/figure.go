package words

import (
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// Figure tells f as one player tells another: start on the root, 2 strings on,
// 1 string back, over to string 1. On is toward string 1, back is away from it.
// A step of one or two strings is counted; a wider one goes over to a string
// by its number, and a step onto the root string, however wide, is on or back
// to the root. Each sentence says one thing, in the order of the slots. The
// zero Figure has no sentences.
func Figure(f picking.Figure) []string {
	s := speaker{&english}
	bars := f.Bars()
	slots := 0
	for _, bar := range bars {
		slots += len(bar)
	}
	if slots == 0 {
		return nil
	}
	size := s.say(slotsShare)
	if f.Value() != 0 {
		size = s.say(slotIs, s.length(picking.Ticks(f.Value())))
	}
	told := []string{s.count(slotMany, slots), size}
	if f.Root() > 0 {
		told = append(told, s.say(rootIs, place(f.Root())))
	}
	t := teller{speaker: s, home: f.Root(), homeName: s.say(theRoot), told: told}
	for i, bar := range bars {
		if len(bars) > 1 {
			t.add(s.say(figureBar, number(i+1)))
		}
		t.slots(bar)
	}
	t.add(s.say(figureAgain))
	return t.told
}

// run tells strings plucked in turn, in sentences that go on after a colon.
func (s speaker) run(on []fretboard.StringNumber, home fretboard.StringNumber) string {
	t := teller{speaker: s, home: home, homeName: s.say(stringPlace, place(home))}
	first := t.pluck(on[0]) + "."
	for _, string := range on[1:] {
		t.add(t.pluck(string))
	}
	return strings.Join(append([]string{first}, t.told...), " ")
}

// A teller tells a way over the strings step by step.
type teller struct {
	speaker
	home     fretboard.StringNumber
	homeName string
	at       fretboard.StringNumber // the string before, or 0
	told     []string
}

func (t *teller) add(text string) { t.told = append(t.told, capital(text)+".") }

// slots tells a bar of a figure, holds and rests in a row at once.
func (t *teller) slots(bar []picking.Slot) {
	for i := 0; i < len(bar); {
		slot := bar[i]
		if slot.Kind == picking.Pluck {
			t.add(t.withOwn(t.pluck(slot.String), slot.Own))
			i++
			continue
		}
		from := i
		for i < len(bar) && bar[i].Kind == slot.Kind {
			i++
		}
		if slot.Kind == picking.Hold {
			t.add(t.count(ringMany, i-from))
		} else {
			t.add(t.count(restMany, i-from))
		}
	}
}

func (t *teller) withOwn(text string, own picking.Stroke) string {
	switch own {
	case picking.DownStroke:
		return t.say(withStroke, text, t.say(downStroke))
	case picking.UpStroke:
		return t.say(withStroke, text, t.say(upStroke))
	}
	return text
}

// widest is the widest step that is counted in strings: a hand knows two.
const widest = 2

// pluck tells the step onto a string.
func (t *teller) pluck(on fretboard.StringNumber) string {
	step := int(t.at - on) // above 0 toward string 1
	first := t.at == 0
	t.at = on
	name := t.say(stringPlace, place(on))
	if on == t.home {
		name = t.homeName
	}
	switch {
	case first:
		return t.say(startOn, name)
	case step == 0:
		return t.say(sameAgain)
	case on == t.home && step > 0:
		return t.say(onHome, name)
	case on == t.home:
		return t.say(backHome, name)
	case step > widest || step < -widest:
		return t.say(overTo, name)
	case step > 0:
		return t.count(onMany, step)
	}
	return t.count(backMany, -step)
}
