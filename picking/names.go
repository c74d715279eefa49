package picking

import (
	"strconv"

	"weft.example/fretboard"
)

func parseName(notation string, names []string, text string) (int, error) {
	return fretboard.ParseName(notation, names, text)
}

// nameOf returns names[i], or the bare number where a value was made by hand.
func nameOf(names []string, i int) string {
	if i >= 0 && i < len(names) {
		return names[i]
	}
	return strconv.Itoa(i)
}
