package fretboard

// A namedTuning is a tuning in common use. scale is the usual length of the
// open strings on the instrument that it belongs to, in millimetres; 0 means
// the guitar's. Pitches and lengths are common practice; the tests hold the
// guitar tunings against the Music Encoding Initiative's list and all that they
// can against a public table.
type namedTuning struct {
	name, pitches string
	scale         Millimetres
}

var namedTunings = [...]namedTuning{
	{"standard", "E2 A2 D3 G3 B3 E4", 0},
	{"half step down", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4", 0},
	{"whole step down", "D2 G2 C3 F3 A3 D4", 0},
	{"drop D", "D2 A2 D3 G3 B3 E4", 0},
	{"double drop D", "D2 A2 D3 G3 B3 D4", 0},
	{"DADGAD", "D2 A2 D3 G3 A3 D4", 0},
	{"open G", "D2 G2 D3 G3 B3 D4", 0},
	{"open G minor", "D2 G2 D3 G3 Bb3 D4", 0},
	{"open D", "D2 A2 D3 F#3 A3 D4", 0},
	{"open D minor", "D2 A2 D3 F3 A3 D4", 0},
	{"open E", "E2 B2 E3 G#3 B3 E4", 0},
	{"open A", "E2 A2 E3 A3 C#4 E4", 0},
	{"seven-string", "B1 E2 A2 D3 G3 B3 E4", 0},
	{"baritone", "B1 E2 A2 D3 F#3 B3", 686},
	{"ukulele", "G4 C4 E4 A4", 345},
	{"mandolin", "G3 D4 A4 E5", 350},
	{"tenor guitar", "C3 G3 D4 A4", 585},
	{"bass", "E1 A1 D2 G2", 864},
	{"five-string bass", "B0 E1 A1 D2 G2", 864},
}

// TuningNames lists the names that [ParseTuning] knows.
func TuningNames() []string {
	names := make([]string, len(namedTunings))
	for i, t := range namedTunings {
		names[i] = t.name
	}
	return names
}
