package changes_test

import (
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing/changes"
)

// TestEightShapesSuffice prints how much better paths grow with 24 shapes of
// each chord instead of so many, over songs of eight chords drawn from a list
// by a fixed rule. The usual number is the one that package voicing finds as
// fast as one.
func TestEightShapesSuffice(t *testing.T) {
	if testing.Short() {
		t.Skip("finds all shapes of many chords")
	}
	pool := strings.Fields(`C Am F G Dm Em D A E E7 Bb Bm F#m B7 Cmaj7 G/B D/F# Cm Gm Fm Eb Ab G7 A7 D7 C7 Am7 Dm7 Em7
		Fmaj7 Bm7b5 G#dim7 Dsus4 Asus2 C9 F#7 Db`)
	worse := map[int]int{}
	state := uint32(1)
	const songs = 12
	for range songs {
		var text []string
		for range 8 {
			state = state*1664525 + 1013904223
			text = append(text, pool[int(state>>16)%len(pool)])
		}
		steps := song(t, strings.Join(text, " "))
		best := easiest(t, fretboard.Instrument{}, steps, changes.Options{Shapes: 24}).Total
		for _, n := range []int{1, 2, 4, 8} {
			if easiest(t, fretboard.Instrument{}, steps, changes.Options{Shapes: n}).Total > best {
				worse[n]++
			}
		}
	}
	t.Logf("of %d songs, those with a better path among 24 shapes than among 1: %d, 2: %d, 4: %d, 8: %d",
		songs, worse[1], worse[2], worse[4], worse[8])
	if worse[8] > 1 || worse[1] == 0 {
		t.Errorf("%d songs are worse with 8 shapes, %d with 1", worse[8], worse[1])
	}
}
