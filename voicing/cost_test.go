package voicing_test

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestCosts prices shapes by hand, on 645.16 mm: fret 1 lies 36.3 mm from the
// nut, fret 2 70.4, fret 3 102.7, fret 4 133.1, fret 5 161.9; frets 1 to 2
// span 34.1 mm, 1 to 3 66.4, 1 to 4 96.8, 1 to 5 125.6, 2 to 3 32.3, 3 to 4
// 30.4, 3 to 5 59.2, 4 to 5 28.8, 4 to 6 55.9, 5 to 6 27.1, 5 to 7 52.7, 6 to
// 7 25.6. Next fingers splay 24*24/30 = 19 points at one fret, 3 over frets 1
// to 2, 2 over 2 to 3, and none over a fret further up.
func TestCosts(t *testing.T) {
	guitar := fretboard.Instrument{}
	for _, c := range []struct {
		why, chord, shape, fingers string
		want                       voicing.Cost
	}{
		{"open strings cost nothing at the nut", "Em7/A", "x00000", "x00000", voicing.Cost{Mutes: 52}},
		{"three fingers, a third doubled and a third at the bottom", "C", "x32010", "x32010", voicing.Cost{Stretch: 88, Position: 36, Open: 24, Fingers: 34, Spread: 39, Splay: 5, Mutes: 52, Doubled: 2, Muddy: 12}},
		{"three fingers crowd at one fret", "A", "x02220", "x01230", voicing.Cost{Position: 70, Open: 46, Fingers: 36, Spread: 26, Splay: 38, Mutes: 52}},
		{"open strings stand out from frets far up", "A", "x07650", "x03210", voicing.Cost{Stretch: 55, Position: 161, Open: 107, Fingers: 36, Spread: 26, Mutes: 52, Doubled: 28}},
		{"a barre is one finger and crosses six strings", "F", "133211", "134211", voicing.Cost{Stretch: 88, Position: 36, Fingers: 45, Spread: 39, Splay: 24, Barre: 88}},
		{"the tip of a barre beside an open string", "A6", "x02222", "x01111", voicing.Cost{Position: 70, Open: 23, Fingers: 11, Barre: 112, Mutes: 52}},
		{"a string under a barre, damped by the finger beside it", "C6", "8-x-10-9-10-8", "1x3241", voicing.Cost{Stretch: 39, Position: 238, Fingers: 48, Spread: 39, Splay: 19, Barre: 128, Mutes: 250, Missing: 26}},
		{"and one that no finger touches", "G7b9", "3x3434", "1x1213", voicing.Cost{Stretch: 18, Position: 102, Fingers: 35, Spread: 26, Splay: 20, Barre: 230, Mutes: 250}},
		{"which four fingers side by side avoid", "F#m7", "2x222x", "1x234x", voicing.Cost{Position: 70, Fingers: 48, Spread: 52, Splay: 57, Mutes: 385}},
		{"a barre of the ring finger", "Bb6", "x13333", "x13333", voicing.Cost{Stretch: 88, Position: 36, Fingers: 21, Spread: 13, Splay: 11, Barre: 160, Mutes: 52}},
		{"a barre of the little finger", "Abm/Eb", "xx1444", "xx1444", voicing.Cost{Stretch: 187, Position: 36, Fingers: 26, Spread: 13, Splay: 20, Barre: 180, Mutes: 104}},
		{"two strings left out", "D", "xx0232", "xx0132", voicing.Cost{Stretch: 20, Position: 70, Open: 23, Fingers: 39, Spread: 39, Splay: 21, Mutes: 104}},
		{"a string below the root", "D", "x00232", "x00132", voicing.Cost{Stretch: 20, Position: 70, Open: 46, Fingers: 39, Spread: 39, Splay: 21, Mutes: 52, Low: 145}},
		{"a string muted inside", "D/F#", "2x0232", "1x0243", voicing.Cost{Stretch: 20, Position: 70, Open: 23, Fingers: 51, Spread: 78, Splay: 40, Mutes: 250, Doubled: 2}},
		{"thin strings left out, two short of four", "Em", "02xxxx", "01xxxx", voicing.Cost{Position: 70, Open: 23, Fingers: 10, Mutes: 540, Thin: 360, Missing: 200}},
		{"three thick strings make a power chord", "E5", "022xxx", "012xxx", voicing.Cost{Position: 70, Open: 23, Fingers: 21, Spread: 13, Splay: 19}},
		{"but two do not", "E5", "02xxxx", "01xxxx", voicing.Cost{Position: 70, Open: 23, Fingers: 10, Thin: 180}},
		{"the fifth missing", "C7", "x32310", "x32410", voicing.Cost{Stretch: 88, Position: 36, Open: 12, Fingers: 49, Spread: 65, Splay: 24, Mutes: 52, Missing: 26, Doubled: 2, Muddy: 12}},
		{"a unison", "C#m", "x46650", "x13420", voicing.Cost{Stretch: 62, Position: 133, Open: 44, Fingers: 49, Spread: 78, Splay: 19, Mutes: 52, Doubled: 30}},
		{"a minor third at the bottom is worse than a major one", "Gm", "310033", "210034", voicing.Cost{Stretch: 88, Position: 36, Open: 24, Fingers: 49, Spread: 78, Splay: 97, Muddy: 24}},
		{"a seventh doubled", "A7", "x02023", "x01023", voicing.Cost{Stretch: 20, Position: 70, Open: 46, Fingers: 38, Spread: 39, Splay: 21, Mutes: 52, Doubled: 64}},
		{"the 11th against the third", "C11", "x33010", "x34010", voicing.Cost{Stretch: 88, Position: 36, Open: 24, Fingers: 37, Spread: 52, Splay: 30, Mutes: 52, Missing: 400, Clash: 40}},
		{"a 13 chord is whole without the 11th", "C13", "x35355", "x12134", voicing.Cost{Stretch: 70, Position: 102, Fingers: 51, Spread: 39, Splay: 79, Barre: 64, Mutes: 52, Missing: 26}},
		{"more fingers than a hand has are priced too, those beyond the fourth like it", "C", "135421", "", voicing.Cost{Stretch: 315, Position: 36, Fingers: 78, Spread: 156, Splay: 81, Low: 145, Missing: 200}},
	} {
		v := mustVoicing(t, guitar, c.chord, c.shape)
		if diff := cmp.Diff(c.want, v.Cost()); diff != "" {
			t.Errorf("%s: %s as %s (-want +got):\n%s", c.why, c.shape, c.chord, diff)
		}
		if f, _ := v.Fingering(); f.String() != c.fingers {
			t.Errorf("%s: %s is held with %q, want %q", c.why, c.shape, f, c.fingers)
		}
	}
}

// TestCostsOfOtherInstruments: a capo and a short neck change lengths and
// pitches, few strings cannot be too few, and on a turned guitar the tip of a
// barre lies on the thin side.
func TestCostsOfOtherInstruments(t *testing.T) {
	for _, c := range []struct {
		why          string
		g            fretboard.Instrument
		chord, shape string
		want         voicing.Cost
	}{
		{"on half the length, half the way and a quarter of the stretch", fretboard.Instrument{Scale: 322.58}, "C", "x32010",
			voicing.Cost{Stretch: 22, Position: 18, Open: 12, Fingers: 34, Spread: 39, Splay: 3, Mutes: 52, Doubled: 2, Muddy: 12}},
		{"behind a capo at 12 too, where no third is low", fretboard.Instrument{Capo: 12}, "C", "x32010",
			voicing.Cost{Stretch: 22, Position: 18, Open: 12, Fingers: 34, Spread: 39, Splay: 3, Mutes: 52, Doubled: 2}},
		{"three strings are all there are", tuned(t, "E2 B2 E3"), "E", "004",
			voicing.Cost{Position: 133, Open: 88, Fingers: 11}},
		{"an open string on the side of the palm leaves no barre of four, but four fingers",
			fretboard.Instrument{Hand: fretboard.LeftTurned}, "A6", "x02222",
			voicing.Cost{Position: 70, Open: 23, Fingers: 45, Spread: 39, Splay: 57, Mutes: 52}},
		{"and beside the tip, there on the thin side, the barre is dearer", fretboard.Instrument{Hand: fretboard.LeftTurned}, "A/B", "x22220",
			voicing.Cost{Position: 70, Open: 23, Fingers: 10, Barre: 112, Mutes: 52}},
	} {
		got := mustVoicing(t, c.g, c.chord, c.shape).Cost()
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s as %s (-want +got):\n%s", c.why, c.shape, c.chord, diff)
		}
	}
}

// TestWhatThePricesAreFor holds the pairs of shapes for which each price was
// set: the first is to go before the second.
func TestWhatThePricesAreFor(t *testing.T) {
	for _, c := range []struct{ price, chord, first, second string }{
		{"finger", "G", "320003", "320033"},
		{"spread", "Bm", "x24432", "x20432"},
		{"barre", "B7", "x21202", "x24242"},
		{"thick mute", "F", "133211", "xx3211"},
		{"thin mute", "G/B", "x20003", "x2000x"},
		{"inner mute", "D/F#", "200232", "2x0232"},
		{"low", "A", "x02220", "002220"},
		{"low", "D", "xx0232", "x00232"},
		{"optional", "C7", "x32310", "x35353"},
		{"unison", "C#m", "x46654", "x46650"},
		{"colour", "Esus4", "022200", "002200"},
		{"muddy", "Gm", "355333", "310033"},
	} {
		a, b := mustVoicing(t, fretboard.Instrument{}, c.chord, c.first), mustVoicing(t, fretboard.Instrument{}, c.chord, c.second)
		if a.Cost().Total() >= b.Cost().Total() {
			t.Errorf("the %s price: %s costs %d, %s costs %d", c.price, c.first, a.Cost().Total(), c.second, b.Cost().Total())
		}
	}
}

// TestTotalAddsEveryTerm fails when a term is added and forgotten in a sum.
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
	if got := c.Weighed(voicing.Weights{}); got != 100*want {
		t.Errorf("without weights, Weighed is %d, want %d", got, 100*want)
	}
	for i := range fields.NumField() {
		var w voicing.Weights
		reflect.ValueOf(&w).Elem().Field(i).SetInt(25)
		if got := c.Weighed(w); got != 100*want+25<<i {
			t.Errorf("with %s a quarter dearer, Weighed is %d, want %d", fields.Type().Field(i).Name, got, 100*want+25<<i)
		}
	}
}

// TestWeighedByHand: who pays twice for stretch, fingers and splay, five times
// for a barre, and half for what sounds below the root.
func TestWeighedByHand(t *testing.T) {
	w := voicing.Weights{Stretch: 100, Fingers: 100, Splay: 100, Barre: 400, Low: -50}
	for _, c := range []struct {
		chord, shape string
		want         int
	}{
		{"C", "x32010", 100 * (2*88 + 36 + 24 + 2*34 + 39 + 2*5 + 52 + 2 + 12)},
		{"F", "133211", 100 * (2*88 + 36 + 2*45 + 39 + 2*24 + 5*88)},
		{"D", "x00232", 50*145 + 100*(2*20+70+46+2*39+39+2*21+52)},
	} {
		if got := mustVoicing(t, fretboard.Instrument{}, c.chord, c.shape).Cost().Weighed(w); got != c.want {
			t.Errorf("%s costs %d, want %d", c.shape, got, c.want)
		}
	}
}

// TestEffortOutside holds the effort against a published model of the
// fretting hand, which finds these loads: C 26.6 N, E 30.3, Am 32.8, G7 41.0
// (Proceedings of the Human Factors and Ergonomics Society, 2013, doi
// 10.1177/1541931213571367). That order is what its weights were chosen for;
// the points are by hand.
func TestEffortOutside(t *testing.T) {
	last := 0
	for _, c := range []struct {
		chord, shape string
		want         int
	}{
		{"C", "x32010", 34 + 39 + 2*5 + 88/4},
		{"E", "022100", 33 + 39 + 2*22 + 23/4},
		{"Am", "x02210", 36 + 39 + 2*22 + 23/4},
		{"G7", "320001", 33 + 65 + 2*5 + 88/4},
	} {
		got := mustVoicing(t, fretboard.Instrument{}, c.chord, c.shape).Cost().Effort()
		if got != c.want || got <= last {
			t.Errorf("%s takes an effort of %d, want %d, and more than %d", c.shape, got, c.want, last)
		}
		t.Logf("%s, %s: effort %d", c.chord, c.shape, got)
		last = got
	}
	if f := mustVoicing(t, fretboard.Instrument{}, "F", "133211").Cost().Effort(); f != 45+39+2*24+88+88/4 {
		t.Errorf("133211 takes an effort of %d", f)
	}
}
