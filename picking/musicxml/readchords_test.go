package musicxml_test

import (
	"fmt"
	"slices"
	"strings"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// readChords checks that every held chord stands where it begins: root, kind,
// bass and frame, and no other does.
func readChords(p picking.Passage, measures []measure) string {
	var before voicing.Voicing
	for b, bar := range p.Bars {
		held := slices.Clone(bar.Chords)
		at, words := 0, map[string]bool{}
		for _, x := range measures[b].Items {
			switch x.XMLName.Local {
			case "note":
				at += x.Duration
			case "direction":
				words[fmt.Sprint(at+x.Offset, x.Words)] = true
			case "harmony":
				if len(held) == 0 || at+x.Offset != int(held[0].At-bar.At) {
					return fmt.Sprintf("bar %d: a chord at %d, chords left %d", b+1, at+x.Offset, len(held))
				}
				if fault := readChord(held[0], x); fault != "" {
					return fmt.Sprintf("bar %d, %s: %s", b+1, held[0].Sounds, fault)
				}
				news := !held[0].Chord.Silent() && held[0].Voicing != before
				if news != (x.Frame != nil) && bar.Pass == 1 { // a second playing may be read off the first

					return fmt.Sprintf("bar %d, %s: frame %v, new %v", b+1, held[0].Sounds, x.Frame != nil, news)
				}
				if !held[0].Chord.Silent() {
					before = held[0].Voicing
				}
				held = held[1:]
			}
		}
		for _, c := range bar.Chords {
			if name := fmt.Sprint(int(c.At-bar.At), "("+c.Chord.Chart()+")"); c.Chord != c.Sounds && !words[name] {
				return fmt.Sprintf("bar %d: the shape's name %s is missing", b+1, name)
			}
		}
		if len(held) > 0 {
			return fmt.Sprintf("bar %d: %s is missing", b+1, held[0].Sounds)
		}
	}
	return ""
}

// readChord checks one chord symbol.
func readChord(held picking.HeldChord, x item) string {
	c := held.Sounds
	if c.Silent() {
		if x.Kind.Kind != "none" || x.Kind.Text != "N.C." || x.Root.Step.Text == nil || *x.Root.Step.Text != "" || x.Frame != nil {
			return fmt.Sprintf("%+v %+v", x.Root, x.Kind)
		}
		return ""
	}
	printed := fretboard.Note{Letter: c.Root().Letter, Accidental: int8(x.Root.Alter)}.Chart() + x.Kind.Text
	if x.Root.Step.Step != c.Root().String()[:1] {
		return "root " + x.Root.Step.Step
	}
	if bass, slash := c.Bass(); slash != (x.Bass != nil) {
		return fmt.Sprintf("bass %+v", x.Bass)
	} else if slash {
		if x.Bass.Step != bass.String()[:1] || x.Bass.Alter != int(bass.Accidental) {
			return fmt.Sprintf("bass %+v", x.Bass)
		}
		printed += "/" + bass.Chart()
	}
	if printed != c.Chart() {
		return "prints " + printed
	}
	if got, err := spelled(x.Kind.Kind, x.Degrees); err != "" || got != c.Formula() {
		return fmt.Sprintf("kind %s, degrees %+v: %s, want %s. %s", x.Kind.Kind, x.Degrees, got, c.Formula(), err)
	}
	if x.Frame != nil {
		return readFrame(held.Voicing, x.Frame)
	}
	return ""
}

// formulas are the 25 kinds that the standard spells, as degrees of the major
// scale. TestKindsAreThoseOfTheSchema reads them in the schema.
var formulas = map[string]string{
	"major": "1 3 5", "minor": "1 b3 5", "augmented": "1 3 #5", "diminished": "1 b3 b5",
	"dominant": "1 3 5 b7", "major-seventh": "1 3 5 7", "minor-seventh": "1 b3 5 b7", "diminished-seventh": "1 b3 b5 bb7",
	"augmented-seventh": "1 3 #5 b7", "half-diminished": "1 b3 b5 b7", "major-minor": "1 b3 5 7",
	"major-sixth": "1 3 5 6", "minor-sixth": "1 b3 5 6",
	"dominant-ninth": "1 3 5 b7 9", "major-ninth": "1 3 5 7 9", "minor-ninth": "1 b3 5 b7 9",
	"dominant-11th": "1 3 5 b7 9 11", "major-11th": "1 3 5 7 9 11", "minor-11th": "1 b3 5 b7 9 11",
	"dominant-13th": "1 3 5 b7 9 11 13", "major-13th": "1 3 5 7 9 11 13", "minor-13th": "1 b3 5 b7 9 11 13",
	"suspended-second": "1 2 5", "suspended-fourth": "1 4 5", "power": "1 5",
}

// spelled applies degrees to a kind, as the standard has it: what is added is
// relative to a dominant chord, what is altered to the kind.
func spelled(kind string, degrees []degree) (formula, fault string) {
	if formulas[kind] == "" {
		return "", "no such kind"
	}
	tones := strings.Fields(formulas[kind])
	for _, d := range degrees {
		i := slices.IndexFunc(tones, func(t string) bool { return strings.TrimLeft(t, "b#") == fmt.Sprint(d.Value) })
		if d.Print != "no" {
			return "", "a degree prints"
		}
		switch {
		case d.Type == "add":
			if d.Value == 7 {
				d.Alter-- // a dominant chord has the minor seventh
			}
			tones = append(tones, signed(d.Value, d.Alter))
		case i < 0:
			return "", "no such degree in the kind"
		case d.Type == "alter" && d.Alter != 0:
			tones[i] = signed(d.Value, d.Alter+strings.Count(tones[i], "#")-strings.Count(tones[i], "b"))
		case d.Type == "subtract" && d.Alter == 0:
			tones = slices.Delete(tones, i, i+1)
		default:
			return "", "a degree that does nothing"
		}
	}
	slices.SortFunc(tones, func(a, b string) int { return rank(a) - rank(b) })
	return strings.Join(tones, " "), ""
}

func signed(value, alter int) string {
	return strings.Repeat("b", max(0, -alter)) + strings.Repeat("#", max(0, alter)) + fmt.Sprint(value)
}

// rank sorts degrees by number, then by height.
func rank(tone string) int {
	var value int
	_, _ = fmt.Sscan(strings.TrimLeft(tone, "b#"), &value)
	return 8*value + strings.Count(tone, "#") - strings.Count(tone, "b")
}

// readFrame checks a chord box: every sounding string at its fret, within the
// window, with the fingers of the fingering that costs least.
func readFrame(v voicing.Voicing, f *frame) string {
	fingering, _ := v.Fingering()
	if f.Unplayed != "x" || f.Strings != int(v.Shape().Strings()) || len(f.Notes) != v.Sounding().Len() {
		return fmt.Sprintf("frame %+v", f)
	}
	first := max(1, f.FirstFret)
	ends := map[[2]int]string{}
	for _, p := range fingering.Presses() {
		if p.Barre() {
			ends[[2]int{int(p.Thick), int(p.Fret)}], ends[[2]int{int(p.Thin), int(p.Fret)}] = "start", "stop"
		}
	}
	for _, n := range f.Notes {
		s := fretboard.StringNumber(n.String)
		fret, sounds := v.Shape().Fret(s)
		barre := ""
		if n.Barre != nil {
			barre = n.Barre.Type
		}
		if !sounds || n.Fret != int(fret) || n.Finger != int(fingering.Finger(s)) || barre != ends[[2]int{n.String, n.Fret}] ||
			n.Fret != 0 && (n.Fret < first || n.Fret >= first+f.Frets) {
			return fmt.Sprintf("frame of %s: %+v", v.Shape(), n)
		}
	}
	return ""
}
