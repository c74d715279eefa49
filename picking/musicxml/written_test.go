package musicxml

import (
	"fmt"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/picking"
)

// cut splits a time in a bar and prints the signs, dots and all.
func cut(m picking.Meter, from, to picking.Ticks, rest bool) string {
	var signs []string
	meterGrid(m).split(plainParts(from), plainParts(to), rest, func(from, to parts) {
		v, _ := (to - from).value()
		signs = append(signs, noteTypes[v.power]+strings.Repeat(".", map[bool]int{true: 1}[v.dotted]))
	})
	return strings.Join(signs, " ")
}

// TestSignsKeepBeatsInSight holds how lengths are cut to the usual rules of
// rhythmic notation (common practice).
func TestSignsKeepBeatsInSight(t *testing.T) {
	four, three, six, seven := picking.FourFour, picking.ThreeFour, picking.SixEight, picking.Meter{Count: 7, Unit: 8}
	for _, c := range []struct {
		why      string
		meter    picking.Meter
		from, to picking.Ticks
		rest     bool
		want     string
	}{
		{"a whole bar", four, 0, 1920, false, "whole"},
		{"a quarter across a beat", four, 240, 720, false, "quarter"},
		{"a half from the second beat", four, 480, 1440, false, "half"},
		{"a dotted half from the second beat", four, 480, 1920, false, "half."},
		{"across the middle from off the beat", four, 720, 1440, false, "eighth quarter"},
		{"five eighths", four, 0, 1200, false, "half eighth"},
		{"seven eighths", four, 0, 1680, false, "half quarter."},
		{"from off the first beat to the middle", four, 240, 960, false, "quarter."},
		{"a sixteenth before the beat", four, 120, 600, false, "eighth. 16th"},
		{"a rest never crosses a beat", four, 240, 720, true, "eighth eighth"},
		{"nor the middle", four, 480, 1440, true, "quarter quarter"},
		{"a rest of half a bar", four, 960, 1920, true, "half"},
		{"dotted rests are for compound meters", four, 0, 720, true, "quarter eighth"},
		{"two beats of three", three, 480, 1440, false, "half"},
		{"off the beat over two more", three, 240, 1200, false, "eighth quarter."},
		{"a bar of three", three, 0, 1440, false, "half."},
		{"a dotted beat", six, 0, 720, false, "quarter."},
		{"a rest of a dotted beat", six, 720, 1440, true, "quarter."},
		{"within a dotted beat", six, 240, 720, false, "quarter"},
		{"over the dotted beat", six, 480, 960, false, "eighth eighth"},
		{"a bar of two dotted beats", six, 0, 1440, false, "half."},
		{"a bar of seven", seven, 0, 1680, false, "half. eighth"},
		{"a breve", picking.Meter{Count: 4, Unit: 2}, 0, 3840, false, "breve"},
		{"the longest bar", picking.Meter{Count: 32, Unit: 1}, 0, 32 * 1920, false, strings.TrimSpace(strings.Repeat("breve ", 16))},
	} {
		if got := cut(c.meter, c.from, c.to, c.rest); got != c.want {
			t.Errorf("%s: %s, want %s", c.why, got, c.want)
		}
	}
}

func TestSplitProperties(t *testing.T) {
	p := gopter.NewProperties(gopter.DefaultTestParametersWithSeed(22))
	p.Property("the signs of any stretch of any bar are single and fill it without a gap", prop.ForAll(func(count, unit, a, b int, rest, triplet bool) string {
		g := meterGrid(picking.Meter{Count: count, Unit: 1 << unit})
		if triplet {
			g = tripletGrid(parts(count * 7))
		}
		from, to := parts(a)%g[0], parts(b)%g[0]
		if !triplet { // plain times are even
			from, to = from&^1, to&^1
		}
		if from > to {
			from, to = to, from
		}
		at := from
		if from == to {
			return ""
		}
		fault := ""
		g.split(from, to, rest, func(x, y parts) {
			if x != at || y <= x || !(y - x).single() || !triplet && (y-x)%2 != 0 {
				fault = fmt.Sprint(g, from, to, x, y)
			}
			at = y
		})
		if at != to {
			return fmt.Sprint(g, from, to, at)
		}
		return fault
	}, gen.IntRange(1, 32), gen.IntRange(0, 5), gen.IntRange(0, 10000), gen.IntRange(0, 10000), gen.Bool(), gen.Bool()))
	p.TestingRun(t)
}

// TestTempoInQuarters: sound tempo is in quarter notes a minute, whatever the beat.
func TestTempoInQuarters(t *testing.T) {
	for _, c := range []struct {
		tempo int
		meter picking.Meter
		want  string
	}{
		{80, picking.FourFour, "80"}, {66, picking.SixEight, "99"}, {61, picking.SixEight, "91.5"}, {60, picking.Meter{Count: 2, Unit: 2}, "120"},
		{11, picking.Meter{Count: 5, Unit: 32}, "1.375"}, {7, picking.Meter{Count: 6, Unit: 16}, "5.25"}, {400, picking.Meter{Count: 2, Unit: 1}, "1600"},
	} {
		if got := quarters(c.tempo, c.meter.Beat()); got != c.want {
			t.Errorf("%d in %s: %s, want %s", c.tempo, c.meter, got, c.want)
		}
	}
}
