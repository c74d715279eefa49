package synth_test

import (
	"testing"

	"weft.example/picking"
	"weft.example/picking/synth"
)

// BenchmarkFill plays a second at 48 kHz and reports how many times faster than
// it sounds. The cost grows with the strings that ring, not with the song.
func BenchmarkFill(b *testing.B) {
	const rate = 48000
	six, short := "Em=022000", "1/16: 6 5 4 3 2 1"
	for _, c := range []struct {
		name, chords, figure string
	}{
		{"six-strings", six, short},
		{"one-string", six, "1/16: 6"},
		{"silence", six, "6 . . . . . . ."},
		{"six-strings-256-bars", six + " | %" + song(254), short},
	} {
		b.Run(c.name, func(b *testing.B) {
			p := arranged(b, c.chords, c.figure, picking.Setting{Tempo: 40})
			at := player(b, rate, p, synth.Options{Rounds: synth.Endless})
			left, right := make([]float32, rate), make([]float32, rate)
			at.Fill(left, right)
			b.ReportAllocs()
			for b.Loop() {
				at.Fill(left, right)
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "x-real-time")
		})
	}
}

func song(bars int) (chords string) {
	for range bars {
		chords += " | %"
	}
	return chords
}
