package voicing

import "weft.example/fretboard"

// held is a shape opened for arithmetic: held[s-1] is the fret of string s.
type held [fretboard.MaxStrings]int8

const muted = -1

func (sh Shape) held() held {
	h := sh.stops
	for s := range h {
		if !sh.sounds.Has(fretboard.StringNumber(s + 1)) {
			h[s] = muted
		}
	}
	return h
}

func (h *held) shape(strings int) Shape {
	sh := Shape{count: int8(strings)}
	for s := range strings {
		if h[s] != muted {
			sh.stops[s] = h[s]
			sh.sounds = sh.sounds.With(fretboard.StringNumber(s + 1))
		}
	}
	return sh
}
