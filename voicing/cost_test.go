package voicing_test

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestCosts prices shapes by hand, on 645.16 mm: fret 1 lies 36.2 mm from the
// nut, fret 2 70.4, fret 3 102.6, fret 5 161.8; frets 1 to 3 span 66.4 mm,
// 2 to 3 32.3, 4 to 6 55.9, 1 to 5 125.6.
func TestCosts(t *testing.T) {
	guitar := fretboard.Instrument{}
	for _, c := range []struct {
		why, chord, shape string
		want              voicing.Cost
	}{
		{"open strings cost nothing", "Em7/A", "x00000", voicing.Cost{Mutes: 40}},
		{"three fingers, a third doubled and a third at the bottom", "C", "x32010", voicing.Cost{
			Stretch: 44, Position: 36, Fingers: 36, Spread: 36, Mutes: 40, Doubled: 4, Muddy: 30}},
		{"a barre is one finger and crosses six strings", "F", "133211", voicing.Cost{
			Stretch: 44, Position: 36, Fingers: 48, Spread: 36, Barre: 65}},
		{"two strings left out", "D", "xx0232", voicing.Cost{
			Stretch: 10, Position: 70, Fingers: 36, Spread: 36, Mutes: 80}},
		{"a string below the root", "D", "x00232", voicing.Cost{
			Stretch: 10, Position: 70, Fingers: 36, Spread: 36, Mutes: 40, Low: 100}},
		{"a string muted inside", "D/F#", "2x0232", voicing.Cost{
			Stretch: 10, Position: 70, Fingers: 48, Spread: 72, Mutes: 150, Doubled: 4}},
		{"thin strings left out, two short of four", "Em", "02xxxx", voicing.Cost{
			Position: 70, Fingers: 12, Mutes: 400, Thin: 400, Missing: 200}},
		{"the fifth missing", "C7", "x32310", voicing.Cost{
			Stretch: 44, Position: 36, Fingers: 48, Spread: 60, Mutes: 40, Missing: 20, Doubled: 4, Muddy: 30}},
		{"a unison", "C#m", "x46650", voicing.Cost{
			Stretch: 31, Position: 133, Fingers: 48, Spread: 72, Mutes: 40, Doubled: 34}},
		{"a minor third at the bottom is worse than a major one", "Gm", "310033", voicing.Cost{
			Stretch: 44, Position: 36, Fingers: 48, Spread: 72, Muddy: 60}},
		{"a seventh doubled", "A7", "x02023", voicing.Cost{
			Stretch: 10, Position: 70, Fingers: 36, Spread: 36, Mutes: 40, Doubled: 40}},
		{"the 11th against the third", "C11", "x33010", voicing.Cost{
			Stretch: 44, Position: 36, Fingers: 36, Spread: 48, Mutes: 40, Missing: 400, Clash: 40}},
		{"a 13 chord is whole without the 11th", "C13", "x35355", voicing.Cost{
			Stretch: 35, Position: 102, Fingers: 48, Spread: 36, Barre: 50, Mutes: 40, Missing: 20}},
		{"more fingers than a hand has are priced too", "C", "135421", voicing.Cost{
			Stretch: 157, Position: 36, Fingers: 60, Spread: 72, Barre: 65, Low: 100, Missing: 200}},
	} {
		got := mustVoicing(t, guitar, c.chord, c.shape).Cost()
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s as %s (-want +got):\n%s", c.why, c.shape, c.chord, diff)
		}
	}
}

// TestCostsOfOtherInstruments: a capo and a short neck change lengths and
// pitches, and few strings cannot be too few.
func TestCostsOfOtherInstruments(t *testing.T) {
	for _, c := range []struct {
		why          string
		g            fretboard.Instrument
		chord, shape string
		want         voicing.Cost
	}{
		{"on half the length, half the way and a quarter of the stretch", fretboard.Instrument{Scale: 322.58}, "C", "x32010",
			voicing.Cost{Stretch: 11, Position: 18, Fingers: 36, Spread: 36, Mutes: 40, Doubled: 4, Muddy: 30}},
		{"behind a capo at 12 too, where no third is low", fretboard.Instrument{Capo: 12}, "C", "x32010",
			voicing.Cost{Stretch: 11, Position: 18, Fingers: 36, Spread: 36, Mutes: 40, Doubled: 4}},
		{"three strings are all there are", tuned(t, "E2 B2 E3"), "E", "004",
			voicing.Cost{Position: 133, Fingers: 12}},
	} {
		got := mustVoicing(t, c.g, c.chord, c.shape).Cost()
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s as %s (-want +got):\n%s", c.why, c.shape, c.chord, diff)
		}
	}
}

// TestTotalAddsEveryTerm fails when a term is added and forgotten in the sum.
func TestTotalAddsEveryTerm(t *testing.T) {
	var c voicing.Cost
	fields := reflect.ValueOf(&c).Elem()
	want := 0
	for i := range fields.NumField() {
		fields.Field(i).SetInt(1 << i)
		want += 1 << i
	}
	if got := c.Total(); got != want {
		t.Errorf("Total is %d, want %d", got, want)
	}
}
