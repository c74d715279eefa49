package changes_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/changes"
)

func capos(t testing.TB, text string, o changes.Options) []changes.Capo {
	t.Helper()
	all, err := changes.Capos(fretboard.Instrument{}, chords(t, text), o)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestCaposThatPlayersChoose holds what accompanists do (common practice): one
// of the ways listed comes first or second, and all are among the first four.
func TestCaposThatPlayersChoose(t *testing.T) {
	for song, want := range map[string][]string{
		"Bb Eb F Gm":   {"capo 3: G C D Em", "capo 1: A D E F#m"},
		"Bb Eb F":      {"capo 1: A D E", "capo 3: G C D"},
		"Eb Ab Bb Cm":  {"capo 3: C F G Am", "capo 1: D G A Bm"},
		"Ab Db Eb Fm":  {"capo 1: G C D Em"},
		"F#m C#m A B":  {"capo 2: Em Bm G A"},
		"B E F#":       {"capo 2: A D E", "capo 4: G C D"},
		"C#m A E B":    {"capo 4: Am F C G"},
		"Fm Db Ab Eb":  {"capo 1: Em C G D"},
		"Ab/C Eb/G Fm": {"capo 1: G/B D/F# Em"},
	} {
		all := capos(t, song, changes.Options{Loop: true})
		var first []string
		for _, c := range all[:4] {
			name, _, _ := strings.Cut(c.String(), " (")
			first = append(first, name)
		}
		if !slices.Contains(want, first[0]) && !slices.Contains(want, first[1]) {
			t.Errorf("%s: %s come first, not %s", song, first[:2], want)
		}
		for _, w := range want {
			if !slices.Contains(first, w) {
				t.Errorf("%s: %s is not among %q", song, w, first)
			}
		}
	}
}

// TestNoCapoWhereNoneIsNeeded: songs of open chords are played without one
// (common practice).
func TestNoCapoWhereNoneIsNeeded(t *testing.T) {
	for _, song := range []string{"G C D Em", "D G A", "A D E", "Em C G D", "Am E", "C G", "C F G Am"} {
		if first := capos(t, song, changes.Options{Loop: true})[0]; first.Fret != 0 {
			t.Errorf("%s: %s", song, first)
		}
	}
}

// TestBeginnersGoToG: with more against barres, the capo goes where there is none
// (common practice).
func TestBeginnersGoToG(t *testing.T) {
	o := changes.Options{Loop: true, Voicing: voicing.Options{Weights: voicing.Beginner()}}
	for song, want := range map[string]string{"Bb Eb F Gm": "capo 3", "Ab Db Eb Fm": "capo 1", "F#m D A E": "capo 2"} {
		if first := capos(t, song, o)[0].String(); !strings.HasPrefix(first, want) {
			t.Errorf("%s: %s, want %s", song, first, want)
		}
	}
}

// TestOneSpelling: all chords go down by one interval, spelled for the fewest
// accidentals.
func TestOneSpelling(t *testing.T) {
	for _, c := range []struct {
		song string
		capo fretboard.Fret
		want string
	}{
		{"Bb Eb F", 1, "A D E"},
		{"Bb Eb F", 2, "Ab Db Eb"},
		{"C F G7", 1, "B E F#7"},
		{"C Am F", 2, "Bb Gm Eb"},
		{"E A B7", 1, "Eb Ab Bb7"},
		{"F#m D A", 4, "Dm Bb F"},
		{"C#m F#m G#", 1, "Cm Fm G"},
		{"D/F# G/B", 2, "C/E F/A"},
		{"N.C. Bb", 3, "N.C. G"},
		{"Gb Db Ebm", 1, "F C Dm"},
		{"F# C# D#m", 1, "F C Dm"},
		{"G/C#", 1, "Gb/C"}, // not F#/B#
	} {
		all := capos(t, c.song, changes.Options{})
		at := slices.IndexFunc(all, func(capo changes.Capo) bool { return capo.Fret == c.capo })
		var got []string
		for _, ch := range all[at].Chords {
			got = append(got, ch.String())
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s behind a capo at %d: %s, want %s", c.song, c.capo, got, c.want)
		}
	}
}

func TestCapos(t *testing.T) {
	songs := guitarSongs(1, 4).Map(func(text string) string {
		var plain []string
		for _, field := range strings.Fields(text) {
			symbol, _, _ := strings.Cut(field, "=")
			plain = append(plain, symbol)
		}
		return strings.Join(plain, " ")
	})
	p := seeded(12)
	p.Property("what sounds is the song, behind every capo", prop.ForAll(
		func(text string) bool {
			want := chords(t, text)
			for _, c := range capos(t, text, changes.Options{Shapes: 3}) {
				for i, g := range c.Path.Grips {
					if want[i].Silent() {
						continue
					}
					for s := range g.Voicing.Sounding().Thinnest() {
						if !want[i].Has(g.Voicing.Pitch(s).Class()) {
							return false
						}
					}
					if g.Voicing.Instrument().Capo != c.Fret || g.Voicing.Chord() != c.Chords[i] || c.Sounding[i] != want[i] {
						return false
					}
				}
			}
			return true
		}, songs))
	p.Property("without a capo both names are the same, and the path is the easiest one", prop.ForAll(
		func(text string) bool {
			for _, c := range capos(t, text, changes.Options{Shapes: 3}) {
				if c.Fret == 0 {
					plain := easiest(t, fretboard.Instrument{}, song(t, text), changes.Options{Shapes: 3})
					return slices.Equal(c.Chords, c.Sounding) && c.Path.Total == plain.Total && held(plain) == held(c.Path)
				}
			}
			return false
		}, songs))
	p.Property("every fret to the ninth is listed once, by rising cost", prop.ForAll(
		func(text string) bool {
			all := capos(t, text, changes.Options{Shapes: 2})
			seen := map[fretboard.Fret]bool{}
			for i, c := range all {
				seen[c.Fret] = true
				if i > 0 && c.Cost < all[i-1].Cost || c.Fret > changes.MaxCapo {
					return false
				}
			}
			return len(seen) == 10 && len(all) == 10
		}, songs))
	p.Property("one interval leads from the song to the shapes", prop.ForAll(
		func(roots []string, capo int) bool {
			text := strings.Join(roots, " ")
			all := capos(t, text, changes.Options{Shapes: 1})
			c := all[capo]
			first := c.Sounding[0].Root().IntervalTo(c.Chords[0].Root())
			for i := range c.Chords {
				step := c.Sounding[i].Root().IntervalTo(c.Chords[i].Root())
				if (step.Letters-first.Letters)%7 != 0 || (step.Semitones-first.Semitones)%12 != 0 {
					return false
				}
				if (step.Semitones+int(c.Fret))%12 != 0 {
					return false
				}
			}
			return true
		}, gen.SliceOfN(3, gen.OneConstOf("C", "Am", "F", "G", "Bb", "Ebm", "F#m", "Db", "B7", "E", "Abmaj7")), gen.IntRange(0, 9)))
	p.TestingRun(t)
}

// TestShortNecks: no capo beyond the neck, and a fret behind which a chord has
// no shape is left out.
func TestShortNecks(t *testing.T) {
	all, err := changes.Capos(fretboard.Instrument{Frets: 5}, chords(t, "C G"), changes.Options{})
	if err != nil || len(all) == 0 || len(all) > 5 {
		t.Errorf("%d capos on 5 frets, %v", len(all), err)
	}
	for _, c := range all {
		for _, g := range c.Path.Grips {
			for _, p := range g.Fingering.Presses() {
				if c.Fret+p.Fret > 5 {
					t.Errorf("capo %d, fret %d on 5 frets", c.Fret, p.Fret)
				}
			}
		}
	}
	high, err := changes.Capos(fretboard.Instrument{Frets: 12}, chords(t, "C G"), changes.Options{Voicing: voicing.Options{High: 12}})
	if err != nil || len(high) != 10 {
		t.Errorf("with all 12 frets allowed: %d capos, %v", len(high), err)
	}
}

func TestCaposRefused(t *testing.T) {
	for _, c := range []struct {
		why            string
		g              fretboard.Instrument
		song           string
		o              changes.Options
		notation, text string
	}{
		{"a capo is there", fretboard.Instrument{Capo: 2}, "C", changes.Options{}, "capo", "2"},
		{"no such instrument", fretboard.Instrument{Frets: 99}, "C", changes.Options{}, "frets", "99"},
		{"no shape behind any", fretboard.Instrument{Tuning: fretboard.MustParseTuning("E2 B2")}, "C13", changes.Options{}, "chords", "C13"},
		{"a window off the neck", fretboard.Instrument{}, "C", changes.Options{Voicing: voicing.Options{High: 30}}, "highest fret", "30"},
		{"too many shapes", fretboard.Instrument{}, "C", changes.Options{Shapes: 1000}, "shapes", "1000"},
	} {
		all, err := changes.Capos(c.g, chords(t, c.song), c.o)
		var impossible *fretboard.ImpossibleError
		if all != nil || !errors.As(err, &impossible) || impossible.Notation != c.notation || impossible.Text() != c.text {
			t.Errorf("%s: %v, %v", c.why, all, err)
		}
	}
	if all, err := changes.Capos(fretboard.Instrument{}, nil, changes.Options{}); err != nil || len(all) != 10 || all[0].Fret != 0 {
		t.Errorf("no chords: %v, %v", all, err)
	}
}

func BenchmarkCapos(b *testing.B) {
	song := chords(b, "Bb Eb F Gm Bb/D Cm F7 Bb")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := changes.Capos(fretboard.Instrument{}, song, changes.Options{Loop: true}); err != nil {
			b.Fatal(err)
		}
	}
}
