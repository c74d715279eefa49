package words_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/words"
)

func TestFigure(t *testing.T) {
	for _, c := range []struct{ figure, want string }{
		{"5 3 4 1", "4 slots. The slots of a bar share it evenly. The root is on string 5. " +
			"Start on the root. 2 strings on. 1 string back. Over to string 1. Then from the start again."},
		{"1/8: 6 3 - 3 . . 6", "7 slots. A slot is an eighth note. The root is on string 6. " +
			"Start on the root. Over to string 3. Let it ring for 1 slot. The same string again. Rest for 2 slots. Back to the root. Then from the start again."},
		{"1/12 root 4: 1u 4d 5", "3 slots. A slot is an eighth note in triplets. The root is on string 4. " +
			"Start on string 1, with an up stroke. Back to the root, with a down stroke. 1 string back. Then from the start again."},
		{"3/8 root 2: 5 | 2", "2 slots. A slot is a dotted quarter note. The root is on string 2. " +
			"Bar 1. Start on string 5. Bar 2. On to the root. Then from the start again."},
		{"1/4: 1", "1 slot. A slot is a quarter note. The root is on string 1. Start on the root. Then from the start again."},
	} {
		if got := strings.Join(words.Figure(picking.MustParseFigure(c.figure)), " "); got != c.want {
			t.Errorf("%s: %s", c.figure, cmp.Diff(c.want, got))
		}
	}
	if got := words.Figure(picking.Figure{}); got != nil {
		t.Errorf("the zero figure: %q", got)
	}
}

func randomFigure(r *rand.Rand) picking.Figure {
	most := 1 + r.IntN(12)
	text := []string{"", "1/8: ", "1/12: ", "3/16: ", fmt.Sprintf("root %d: ", 1+r.IntN(most)), fmt.Sprintf("1/64 root %d: ", 1+r.IntN(most))}[r.IntN(6)]
	text += []string{"", "- ", ". . "}[r.IntN(3)]
	for n := 1 + r.IntN(12); n > 0; n-- {
		text += fmt.Sprint(1+r.IntN(most)) + []string{"", "", "u", "d", " -", " . - -", " |"}[r.IntN(7)] + " "
	}
	return picking.MustParseFigure(strings.TrimSuffix(text, "| "))
}

var (
	stepPattern = regexp.MustCompile(`^(Start on|On to|Back to|Over to) (?:the (root)|string (\d+))|^(\d+) strings? (on|back)|^(The same) string again`)
	waitPattern = regexp.MustCompile(`^(Rest|Let it ring) for (\d+) slots?\.$`)
	rootPattern = regexp.MustCompile(`^The root is on string (\d+)\.$`)
)

// figureFault walks over the strings as a figure is told and returns where that
// leads elsewhere than the figure.
func figureFault(f picking.Figure, told []string) string {
	var want, got []picking.Slot
	for _, bar := range f.Bars() {
		want = append(want, bar...)
	}
	at, root := 0, 0
	for _, sentence := range told {
		if m := rootPattern.FindStringSubmatch(sentence); m != nil {
			root = atoi(m[1])
		}
		if m := waitPattern.FindStringSubmatch(sentence); m != nil {
			for range atoi(m[2]) {
				got = append(got, picking.Slot{Kind: map[string]picking.SlotKind{"Rest": picking.Rest, "Let it ring": picking.Hold}[m[1]]})
			}
		}
		m := stepPattern.FindStringSubmatch(sentence)
		if m == nil {
			continue
		}
		next, err := walk(m, at, root)
		if err != nil {
			return fmt.Sprintf("%v: %q: %v", f, sentence, err)
		}
		at = next
		got = append(got, ownSlot(at, sentence))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		return fmt.Sprintf("%v: %s", f, diff)
	}
	return ""
}

// walk takes a step from a string; an on or a back that leads the other way is
// an error.
func walk(m []string, at, root int) (int, error) {
	to := atoi(m[3])
	switch {
	case m[6] != "":
		return at, nil
	case m[5] == "on":
		return at - atoi(m[4]), nil
	case m[5] == "back":
		return at + atoi(m[4]), nil
	case m[2] == "root":
		to = root
	}
	if m[1] == "On to" && to >= at || m[1] == "Back to" && to <= at || (m[1] == "Start on") != (at == 0) {
		return 0, fmt.Errorf("from string %d to string %d", at, to)
	}
	return to, nil
}

func ownSlot(at int, sentence string) picking.Slot {
	slot := picking.Slot{Kind: picking.Pluck, String: fretboard.StringNumber(at)}
	switch {
	case strings.HasSuffix(sentence, "a down stroke."):
		slot.Own = picking.DownStroke
	case strings.HasSuffix(sentence, "an up stroke."):
		slot.Own = picking.UpStroke
	}
	return slot
}
