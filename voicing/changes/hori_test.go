package changes_test

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

// A form is what Hori, Kameoka & Sagayama 2013 (Journal of Information
// Processing 21(2)) know of a grip: the fret of the index finger, the width in
// frets and the number of fingers.
type form struct{ index, width, fingers int }

// transition is their probability, up to a factor, of going from one form to
// another in time d.
func transition(from, to form, d float64) float64 {
	return 1 / (2 * d) * math.Exp(-math.Abs(float64(from.index-to.index))/d) /
		float64((1+to.index)*(1+to.width)*(1+to.fingers))
}

func formOf(f voicing.Fingering) form {
	presses := f.Presses()
	low, high := fretboard.MaxFrets, fretboard.Fret(0)
	for _, p := range presses {
		low, high = min(low, p.Fret), max(high, p.Fret)
	}
	index := int(presses[0].Fret) - int(presses[0].Finger-voicing.Index)
	return form{max(1, index), int(high - low), len(presses)}
}

// TestTransitionFormula: 1/2 * e^-3 / (5 * 3 * 4), derived.
func TestTransitionFormula(t *testing.T) {
	if p := transition(form{index: 1}, form{4, 2, 3}, 1); math.Abs(p-4.149e-4) > 1e-7 {
		t.Errorf("%.4g, want 4.149e-4", p)
	}
}

// commonShapes holds open and barre shapes as handbooks print them (common
// practice).
const commonShapes = `C=x32010 C=x35553 C=8-10-10-9-8-8 D=xx0232 D=x57775 Dm=xx0231 Dm=x57765 E=022100 Em=022000 F=133211
	F=xx3211 G=320003 G=355433 Gm=355333 A=x02220 A=577655 Am=x02210 Am=577555 Bb=x13331 Bm=x24432 Bm=799777 B7=x21202 B7=x24242
	Cm=x35543 C#m=x46654 F#m=244222 A7=x02020 D7=xx0212 E7=020100 G7=320001 Am7=x02010 Dm7=xx0211 Cmaj7=x32000 Fmaj7=xx3210
	F#=244322 Ab=466544 Eb=x68886`

// TestHoriOutside prints how well our effort of a change agrees in rank with
// the published model's, over all changes between common shapes, and with its
// time stretched, since one fret there outweighs a whole barre.
func TestHoriOutside(t *testing.T) {
	fields := strings.Fields(commonShapes)
	for _, c := range []struct{ d, floor float64 }{{1, 0.65}, {4, 0.8}} {
		var ours, theirs []float64
		for _, from := range fields {
			for _, to := range fields {
				if from == to {
					continue
				}
				p := easiest(t, fretboard.Instrument{}, song(t, from+" "+to), changes.Options{})
				ours = append(ours, float64(p.Changes[0].Effort))
				theirs = append(theirs, -math.Log(transition(formOf(p.Grips[0].Fingering), formOf(p.Grips[1].Fingering), c.d)))
			}
		}
		r := correlation(ranks(ours), ranks(theirs))
		t.Logf("d = %g: rank correlation %.3f over %d changes", c.d, r, len(ours))
		if r < c.floor {
			t.Errorf("d = %g: rank correlation %.3f, want %.2f", c.d, r, c.floor)
		}
	}
}

// ranks returns the rank of each value, ties sharing the middle.
func ranks(values []float64) []float64 {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	all := make([]float64, len(values))
	for i := 0; i < len(order); {
		end := i
		for end < len(order) && values[order[end]] == values[order[i]] {
			end++
		}
		for _, at := range order[i:end] {
			all[at] = float64(i+end-1) / 2
		}
		i = end
	}
	return all
}

func correlation(a, b []float64) float64 {
	mean := func(v []float64) (m float64) {
		for _, x := range v {
			m += x / float64(len(v))
		}
		return m
	}
	ma, mb := mean(a), mean(b)
	var ab, aa, bb float64
	for i := range a {
		ab += (a[i] - ma) * (b[i] - mb)
		aa += (a[i] - ma) * (a[i] - ma)
		bb += (b[i] - mb) * (b[i] - mb)
	}
	return ab / math.Sqrt(aa*bb)
}
