package fretboard_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"weft.example/fretboard"
)

// pitchPattern says independently of the parser what a pitch looks like.
var pitchPattern = regexp.MustCompile(`^([A-Ga-g])((?:#|♯|x|𝄪)*|(?:b|♭|𝄫)*|♮)(-1|[0-9])$`)

// readPitch works out from the pattern what ParsePitchName must say: the MIDI
// key, whether it is in range, and whether the text is a pitch at all.
func readPitch(text string) (key int, inRange, ok bool) {
	parts := pitchPattern.FindStringSubmatch(text)
	if parts == nil {
		return 0, false, false
	}
	count := func(signs ...string) (n int) {
		for _, sign := range signs {
			n += strings.Count(parts[2], sign)
		}
		return n
	}
	shift := count("#", "♯") + 2*count("x", "𝄪") - count("b", "♭") - 2*count("𝄫")
	if shift < -4 || shift > 4 {
		return 0, false, false
	}
	letter := strings.Index("c d ef g a b", strings.ToLower(parts[1])) // its place is its semitone
	octave := strings.Index("0123456789", parts[3])                    // -1 for -1 too
	key = 12*(octave+1) + letter + shift
	return key, key >= 0 && key <= 127, true
}

func FuzzParsePitchName(f *testing.F) {
	for _, seed := range []string{"E2", "bb3", "B#-1", "Cb-1", "G9", "A9", "Fx4", "E𝄫3", "C#b4", "E-0", "E+2", "E02", "C####4", "C#####4", "\xff", "E♮4", ""} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		name, err := fretboard.ParsePitchName(text)
		key, inRange, ok := readPitch(text)
		if (err == nil) != (ok && inRange) {
			t.Fatalf("%q: %v, %v; the pattern says %v, in range %v", text, name, err, ok, inRange)
		}
		if err != nil {
			var impossible *fretboard.ImpossibleError
			if errors.As(err, &impossible) != ok {
				t.Fatalf("%q: the wrong kind of error: %v", text, err)
			}
			checkPlace(t, err, "pitch", text)
			return
		}
		if int(name.Pitch()) != key {
			t.Fatalf("%q sounds %d, want %d", text, name.Pitch(), key)
		}
		if again, err := fretboard.ParsePitchName(name.String()); err != nil || again != name {
			t.Fatalf("%q prints as %q and comes back as %v, %v", text, name, again, err)
		}
		if name.Pitch().Spell(name.Note) != name {
			t.Fatalf("%q: spelled by its own note it is %v", text, name.Pitch().Spell(name.Note))
		}
	})
}

func FuzzParseTuning(f *testing.F) {
	for _, c := range tuningTexts {
		if len(c.text) < 1000 {
			f.Add(c.text)
		}
	}
	for _, name := range fretboard.TuningNames() {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, text string) {
		tuning, err := fretboard.ParseTuning(text)
		if err != nil {
			checkPlace(t, err, "tuning", text)
			return
		}
		if again, err := fretboard.ParseTuning(tuning.String()); err != nil || again != tuning {
			t.Fatalf("%q prints as %q and comes back as %v, %v", text, tuning, again, err)
		}
		if tuning.Name() == "" || readsAsPitches(text) {
			checkOpenStrings(t, text, tuning)
		}
	})
}

func pieces(text string) []string { return strings.Fields(strings.ReplaceAll(text, ",", " ")) }

func readsAsPitches(text string) bool {
	_, _, ok := readPitch(append(pieces(text), "")[0])
	return ok
}

// checkOpenStrings compares a tuning with what the pattern reads in each piece.
func checkOpenStrings(t *testing.T, text string, tuning fretboard.Tuning) {
	t.Helper()
	list := pieces(text)
	if len(list) != int(tuning.Strings()) {
		t.Fatalf("%q has %d strings and was read as %v", text, len(list), tuning)
	}
	for i, piece := range list {
		s := tuning.Strings() - fretboard.StringNumber(i)
		if key, inRange, ok := readPitch(piece); !ok || !inRange || int(tuning.Open(s).Pitch()) != key {
			t.Fatalf("%q: string %d is %v; %q is %d, %v", text, s, tuning.Open(s), piece, key, ok)
		}
	}
}

// checkPlace holds every error to what the package promises of it.
func checkPlace(t *testing.T, err error, notation, source string) {
	t.Helper()
	var located fretboard.Located
	if !errors.As(err, &located) {
		t.Fatalf("%q: an error without a place: %v", source, err)
	}
	p := located.Where()
	if p.Notation != notation || p.Source != source || p.Reason == "" || p.Mend == "" {
		t.Fatalf("%q: an error that says too little: %+v", source, p)
	}
	if p.Offset < 0 || p.Length < 0 || p.Offset+p.Length > len(source) {
		t.Fatalf("%q: the fault lies outside, at %d+%d", source, p.Offset, p.Length)
	}
	if utf8.ValidString(source) && len(source) <= fretboard.MaxText &&
		(!utf8.ValidString(source[:p.Offset]) || !utf8.ValidString(p.Text())) {
		t.Fatalf("%q: the fault at %d+%d cuts a character", source, p.Offset, p.Length)
	}
	if lines := strings.Split(p.Caret(), "\n"); len(lines) != 2 || !strings.HasSuffix(lines[1], "^") {
		t.Fatalf("%q: no caret: %q", source, lines)
	}
}
