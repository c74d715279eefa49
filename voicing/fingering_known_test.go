package voicing_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
)

// handbookFingerings holds the fingers that handbooks print over the shapes
// that every player learns first (common practice, from memory). Where they
// differ each is listed, and so is what the open data set of testdata prints.
// One differs from them all: handbooks print x32000 over Cmaj7, where lower
// fingers cost the same.
var handbookFingerings = []struct{ why, shapes string }{
	{"open triads", "C=x32010:x32010 Am=x02210:x02310 E=022100:023100 Em=022000:023000|012000 D=xx0232:xx0132 Dm=xx0231:xx0231"},
	{"three fingers side by side, and an outer reach", "A=x02220:x01230 G=320003:210003|320004"},
	{"open sevenths", "A7=x02020:x02030|x01020 B7=x21202:x21304 C7=x32310:x32410 D7=xx0212:xx0213 E7=020100:020100 G7=320001:320001"},
	{"more of them", `Am7=x02010:x02010 Em7=022030:023040|012030 Dm7=xx0211:xx0211 Cmaj7=x32000:x21000
		Fmaj7=xx3210:xx3210 Dmaj7=xx0222:xx0123|xx0111`},
	{"suspended", `Asus2=x02200:x02300|x01200 Asus4=x02230:x02340|x01240|x01230 Dsus2=xx0230:xx0130|xx0120
		Dsus4=xx0233:xx0134|xx0123 Esus4=022200:023400|012300`},
	{"index across all strings", "F=133211:134211 Fm=133111:134111 Gm=355333:134111 F#=244322:134211 G=355433:134211"},
	{"index across two strings", "F=xx3211:xx3211"},
	{"index across five strings", "Bm=x24432:x13421 Cm=x35543:x13421 B=x24442:x12341|x13331 Bb=x13331:x12341|x13331"},
	{"slash chords", `G/B=x20003:x20003|x10003|x20004|x10002 D/F#=200232:200132|x00132|100243 C/G=332010:342010
		Am/G=302210:302410|402310`},
	{"power chords", "E5=022xxx:013xxx|012xxx A5=x022xx:x013xx|x012xx G5=355xxx:134xxx"},
}

func TestHandbookFingerings(t *testing.T) {
	for _, row := range handbookFingerings {
		for _, entry := range strings.Fields(row.shapes) {
			chord, held, _ := strings.Cut(entry, "=")
			shape, want, _ := strings.Cut(held, ":")
			got, err := mustVoicing(t, fretboard.Instrument{}, chord, shape).Fingering()
			if err != nil || !slices.Contains(strings.Split(want, "|"), got.String()) {
				t.Errorf("%s: %s as %s is held with %s, %v; handbooks print %s", row.why, shape, chord, got, err, want)
			}
		}
	}
}

// TestFingeringsOfOneShape lists by hand what four fingers can do.
func TestFingeringsOfOneShape(t *testing.T) {
	for _, c := range []struct {
		why, shape string
		hand       fretboard.Hand
		want       string
	}{
		{"open strings need no finger", "000000", 0, "000000"},
		{"any finger stops one string", "000100", 0, "000100 000200 000300 000400"},
		{"at one fret a higher finger lies nearer the floor, or one takes both", "0022xx", 0,
			"0011xx 0012xx 0013xx 0014xx 0022xx 0023xx 0024xx 0033xx 0034xx 0044xx"},
		{"which is the other way round on a turned guitar", "0022xx", fretboard.LeftTurned,
			"0011xx 0021xx 0022xx 0031xx 0032xx 0033xx 0041xx 0042xx 0043xx 0044xx"},
		{"a fret higher never takes a lower finger", "x0012x", 0, "x0012x x0013x x0014x x0023x x0024x x0034x"},
		{"one finger takes two strings of three, not all beside an open one", "x02220", 0,
			"x01120 x01130 x01140 x01220 x01230 x01240 x01330 x01340 x01440 x02230 x02240 x02330 x02340 x02440 x03340 x03440"},
		{"but all where the thin string is muted", "x0222x", 0,
			"x0111x x0112x x0113x x0114x x0122x x0123x x0124x x0133x x0134x x0144x " +
				"x0222x x0223x x0224x x0233x x0234x x0244x x0333x x0334x x0344x x0444x"},
		{"only the index finger crosses what is stopped higher", "x232xx", 0, "x121xx x131xx x132xx x141xx x142xx x143xx x243xx"},
		{"and only it damps", "x2x2xx", 0, "x1x1xx x1x2xx x1x3xx x1x4xx x2x3xx x2x4xx x3x4xx"},
		{"not beside an open string where the palm lies", "x2x20x", 0, "x1x20x x1x30x x1x40x x2x30x x2x40x x3x40x"},
		{"unless that is where the tip lies", "x2x20x", fretboard.LeftTurned, "x1x10x x2x10x x3x10x x3x20x x4x10x x4x20x x4x30x"},
		{"nor beside a lower fret", "xx4442", 0, "xx2341 xx2231 xx2241 xx2331 xx2441 xx3341 xx3441 xx3342 xx3442"},
		{"five strings are too many for another finger than the index", "122222", 0, `
			122223 122224 122233 122234 122244 122333 122334 122344 122444 123333 123334 123344 123444 124444 133334 133344 133444 134444
			233334 233344 233444 234444`},
	} {
		v := mustVoicing(t, fretboard.Instrument{Hand: c.hand}, "C", c.shape)
		want := strings.Fields(c.want)
		slices.Sort(want)
		if diff := cmp.Diff(want, printed(v.Fingerings())); diff != "" {
			t.Errorf("%s: the fingerings of %s (-want +got):\n%s", c.why, c.shape, diff)
		}
	}
}
