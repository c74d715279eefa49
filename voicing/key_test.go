package voicing_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

func TestKeyTexts(t *testing.T) {
	for text, want := range map[string]string{
		"C": "C", "Eb": "Eb", "F#m": "F#m", "C minor": "Cm", "C major": "C", "Bb maj": "Bb", "BbM": "Bb", "D min": "Dm",
		" A- ": "Am", "G♯m": "G#m", "D♭": "Db", "E MINOR": "Em", "Cb": "Cb", "C#": "C#", "A#m": "A#m", "Abm": "Abm",
		"Bbm": "Bbm", "B Major": "B", "Fm": "Fm",
	} {
		k, err := voicing.ParseKey(text)
		if err != nil || k.String() != want || k.Minor() != strings.HasSuffix(want, "m") ||
			k.Tonic().String() != strings.TrimSuffix(want, "m") {
			t.Errorf("%q is %v, %v; want %s", text, k, err, want)
		}
	}
	if zero := (voicing.Key{}); zero.String() != "no key" || zero.Minor() || zero.Tonic() != (fretboard.Note{}) {
		t.Errorf("the zero Key is %v", zero)
	}
}

func TestKeyErrors(t *testing.T) {
	for _, c := range []struct {
		text, at, reason, mend string
		impossible             bool
	}{
		{"", "", "no tonic", "write a letter from A to G and m for minor, such as Eb or F#m", false},
		{"Q", "Q", "no tonic", "write a letter from A to G and m for minor, such as Eb or F#m", false},
		{"am", "a", "a tonic is a capital letter", "write A, or Am for minor", false},
		{"H", "H", "H is not a note in English", "write B for H and Bb for B, or read it in a German spelling", false},
		{" C#####m", "#####", "more than four accidentals", "write the note with fewer", true},
		{"C dorian", "dorian", "neither major nor minor", "write m or minor for a minor key, nothing or major for a major one", false},
		{"Cm7", "m7", "neither major nor minor", "write m or minor for a minor key, nothing or major for a major one", false},
		{" G#", "G#", "more than seven sharps or flats in the signature", "write Ab, which sounds the same", true},
		{"Dbm", "Dbm", "more than seven sharps or flats in the signature", "write C#m, which sounds the same", true},
		{"E##m", "E##m", "more than seven sharps or flats in the signature", "write F#m, which sounds the same", true},
		{"Fb", "Fb", "more than seven sharps or flats in the signature", "write E, which sounds the same", true},
		{"C\xff", "\xff", "not valid UTF-8", "save the text as UTF-8", false},
	} {
		k, err := voicing.ParseKey(c.text)
		located, ok := err.(fretboard.Located)
		if !ok {
			t.Errorf("%q: %v, %v", c.text, k, err)
			continue
		}
		var impossible *fretboard.ImpossibleError
		p := located.Where()
		if k != (voicing.Key{}) || p.Notation != "key" || p.Text() != c.at || p.Reason != c.reason || p.Mend != c.mend ||
			errors.As(err, &impossible) != c.impossible {
			t.Errorf("%q: %v, %+v", c.text, k, p)
		}
	}
}

// keySongs holds progressions and their keys (common practice).
var keySongs = [...][2]string{
	{"C", "C F G C"}, {"C", "C G Am F"}, {"C", "C Am F G"}, {"G", "G D Em C"}, {"G", "G Em C D7"}, {"G", "G C D7 G"},
	{"D", "D A Bm G"}, {"D", "D A Bm F#m G D G A"}, {"A", "A D E7 A"}, {"F", "F Bb C7 F"}, {"Eb", "Eb Bb Cm Ab"},
	{"C", "Dm7 G7 Cmaj7"}, {"C", "C C7 F Fm C G7 C"}, {"C", "C A7 D7 G7 C"}, {"C", "Cmaj7 Am7 Dm7 G7"},
	{"E", "E7 A7 E7 B7 A7 E7"}, {"A", "A7 A7 A7 A7 D7 D7 A7 A7 E7 D7 A7 E7"}, {"C", "C E7 F G7 C"},
	{"Am", "Am Dm E7 Am"}, {"Am", "Am G F E"}, {"Am", "Bm7b5 E7 Am"}, {"Am", "Am F C E7"}, {"Em", "Em Am B7 Em"},
	{"Em", "B7 Em Am Em"}, {"Cm", "Cm Fm G7 Cm"}, {"Dm", "Dm Gm A7 Dm"}, {"Am", "Am7 Dm7 G7 Cmaj7 Fmaj7 Bm7b5 E7 Am"},
	{"F#m", "F#m Bm C#7 F#m"}, {"Cm", "Cm Ab Bb G7"}, {"Gm", "Gm Cm D7 Gm"}, {"Dm", "Dm Bb C A7 Dm"},
	{"Gb", "Gb Cb Db7 Gb"}, {"F#", "F# B C#7 F#"}, {"G#m", "G#m C#m D#7 G#m"}, {"Abm", "Abm Dbm Eb7 Abm"},
}

func chordsOf(song string) (chords []voicing.Chord) {
	for symbol := range strings.FieldsSeq(song) {
		chords = append(chords, mustChord(symbol))
	}
	return chords
}

// TestKeysOfSongs also moves every song to each of the twelve keys, and sets
// beside our rule the profiles of Krumhansl and Kessler (1982, Psychological
// Review 89: 334), figures from memory, correlated with the songs' tones.
func TestKeysOfSongs(t *testing.T) {
	profiled := 0
	for _, s := range keySongs {
		chords := chordsOf(s[1])
		want := mustKey(t, s[0])
		if got := voicing.KeyOf(chords); got != want {
			t.Errorf("%s is in %v, want %v", s[1], got, want)
		}
		for up := range 12 {
			moved := make([]voicing.Chord, len(chords))
			for i, c := range chords {
				moved[i] = c.Transpose(fretboard.Interval{Letters: up * 4 % 7, Semitones: up * 7 % 12})
			}
			got := voicing.KeyOf(moved)
			if (int(got.Tonic().Class())-int(want.Tonic().Class())+12)%12 != up*7%12 || got.Minor() != want.Minor() {
				t.Errorf("%s, %d fifths up, is in %v", s[1], up, got)
			}
		}
		if class, minor := profiledKey(chords); class == want.Tonic().Class() && minor == want.Minor() {
			profiled++
		}
	}
	t.Logf("%d songs; the profiles agree on %d", len(keySongs), profiled)
	if profiled < 30 {
		t.Error("the profiles hardly agree")
	}
}

// profiledKey returns the key whose profile correlates best with the tones.
func profiledKey(chords []voicing.Chord) (best fretboard.PitchClass, minor bool) {
	profiles := [2][12]float64{
		{6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88},
		{6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17},
	}
	var count [12]float64
	for _, c := range chords {
		for _, tone := range c.Tones() {
			count[tone.Note.Class()]++
		}
	}
	most := math.Inf(-1)
	for mode, profile := range profiles {
		for tonic := range 12 {
			if r := correlation(profile, count, tonic); r > most {
				most, best, minor = r, fretboard.PitchClass(tonic), mode == 1
			}
		}
	}
	return best, minor
}

// correlation is Pearson's, of profile moved up by tonic.
func correlation(profile, count [12]float64, tonic int) float64 {
	var meanP, meanC, pc, pp, cc float64
	for i := range 12 {
		meanP, meanC = meanP+profile[i]/12, meanC+count[i]/12
	}
	for i := range 12 {
		p, c := profile[(i-tonic+12)%12]-meanP, count[i]-meanC
		pc, pp, cc = pc+p*c, pp+p*p, cc+c*c
	}
	return pc / math.Sqrt(pp*cc)
}

func TestKeysOfFewChords(t *testing.T) {
	for song, want := range map[string]string{
		"": "no key", "N.C.": "no key", "N.C. N.C.": "no key", "Am": "Am", "Eb": "Eb", "N.C. G7 N.C. C N.C.": "C", "D7 G": "G", "F#m7": "F#m",
	} {
		if got := voicing.KeyOf(chordsOf(song)).String(); got != want {
			t.Errorf("%q is in %s, want %s", song, got, want)
		}
	}
	if n := testing.AllocsPerRun(10, func() { voicing.KeyOf(nil) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func FuzzParseKey(f *testing.F) {
	for _, text := range []string{"C", "Ebm", "F# minor", "G#", "h", "Cb  major", "A♭-", "Bx"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		k, err := voicing.ParseKey(text)
		if err != nil {
			located, ok := err.(fretboard.Located)
			if !ok || k != (voicing.Key{}) {
				t.Fatalf("%q: %v, %v", text, k, err)
			}
			if p := located.Where(); p.Source != text || p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(text) || p.Reason == "" || p.Mend == "" {
				t.Fatalf("%q: place %+v", text, p)
			}
			return
		}
		if again, err := voicing.ParseKey(k.String()); err != nil || again != k {
			t.Fatalf("%q prints as %v, which reads as %v, %v", text, k, again, err)
		}
		third := map[bool]string{true: "m"}[k.Minor()]
		if got := voicing.KeyOf([]voicing.Chord{mustChord(k.Tonic().String() + third)}); got.Tonic().Class() != k.Tonic().Class() || got.Minor() != k.Minor() {
			t.Fatalf("the tonic chord of %v is in %v", k, got)
		}
	})
}
