package song

import (
	"fmt"
	"strconv"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
)

// BuiltInFigure returns a figure that fills the bars of a meter, in eighths or
// shorter units of its own: from the root down to string 1 and up and down from
// there, in sixes where they divide the bar. It is written for a guitar; with
// fewer than five strings the root moves to the thickest, with fewer than four
// the others crowd below it.
func BuiltInFigure(m picking.Meter, strings fretboard.StringNumber) string {
	value := max(8, m.Unit)
	slots := m.Count * value / m.Unit
	if slots%6 == 0 {
		slots = 6
	}
	figure := "5"
	for i := range slots - 1 {
		figure += " " + [...]string{"3", "2", "1", "2"}[i%4]
	}
	return fmt.Sprintf("1/%d: %s", value, crowd(figure, strings))
}

func crowd(figure string, most fretboard.StringNumber) string {
	slots := strings.Fields(figure)
	for i, slot := range slots {
		n, _ := strconv.Atoi(slot)
		highest := int(most)
		if n != 5 {
			highest = max(1, highest-1)
		}
		slots[i] = strconv.Itoa(min(n, highest))
	}
	return strings.Join(slots, " ")
}
