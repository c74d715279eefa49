package midi

import (
	"fmt"
	"testing"
)

// TestLengths holds quantities of variable length to the table in the Standard
// MIDI File 1.0 (from memory).
func TestLengths(t *testing.T) {
	for _, c := range []struct {
		n    int
		want string
	}{
		{0, "00"}, {0x40, "40"}, {0x7f, "7f"}, {0x80, "8100"}, {0x2000, "c000"}, {0x3fff, "ff7f"}, {0x4000, "818000"},
		{0x100000, "c08000"}, {0x1fffff, "ffff7f"}, {0x200000, "81808000"}, {0x8000000, "c0808000"}, {0xfffffff, "ffffff7f"},
	} {
		if got := fmt.Sprintf("%x", appendLength(nil, c.n)); got != c.want {
			t.Errorf("%x: got %s, want %s", c.n, got, c.want)
		}
	}
}
