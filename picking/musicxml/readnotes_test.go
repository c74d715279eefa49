package musicxml_test

import (
	"fmt"

	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// A struck note is one as it is heard: tied signs together.
type struck struct {
	at, length, pitch, str, fret int
	stroke                       picking.Stroke
	letRing                      bool
}

// wanted lists the notes of p. Each lasts as written, but no longer than to the
// next or to the end.
func wanted(p picking.Passage) (list []struck) {
	for _, pick := range p.Picks() {
		if n := len(list); n > 0 {
			list[n-1].length = min(list[n-1].length, int(pick.At)-list[n-1].at)
		}
		list = append(list, struck{int(pick.At), min(int(pick.Length), int(p.Length()-pick.At)), int(pick.Pitch),
			int(pick.String), int(pick.Fret), pick.Stroke, false})
	}
	i := 0
	for _, pick := range p.Picks() {
		list[i].letRing = int(pick.Rings) > list[i].length
		i++
	}
	return list
}

// readNotes checks the notes of every staff, and that what sounds is what
// tuning, capo and fret say.
func readNotes(p picking.Passage, o musicxml.Options, measures []measure) string {
	want := wanted(p)
	for _, lane := range lanes(o) {
		got, fault := heard(measures, lane[0], lane[1])
		if fault != "" {
			return fault
		}
		if len(got) != len(want) {
			return fmt.Sprintf("voice %s has %d notes, the passage %d", lane[0], len(got), len(want))
		}
		for i := range got {
			if got[i] != want[i] {
				return fmt.Sprintf("voice %s, note %d: %+v, want %+v", lane[0], i+1, got[i], want[i])
			}
		}
	}
	for i, pick := range p.Picks() {
		if open := p.Instrument.Tuning.Open(pick.String).Pitch(); want[i].pitch != int(open)+int(p.Instrument.Capo)+want[i].fret {
			return fmt.Sprintf("note %d: %+v", i+1, want[i])
		}
	}
	return ""
}

// heard reads one voice and joins what is tied.
func heard(measures []measure, voice, staff string) (list []struck, fault string) {
	at, open := 0, false // whether a tie leads on
	for b, m := range measures {
		for _, x := range m.Items {
			if x.XMLName.Local != "note" || x.Voice != voice {
				continue
			}
			start, stop, letRing := tiesOf(x)
			switch {
			case x.Staff != staff:
				return nil, fmt.Sprintf("bar %d: voice %s on staff %q", b+1, voice, x.Staff)
			case x.Rest != nil && (open || start || stop || letRing || x.Pitch != nil):
				return nil, fmt.Sprintf("bar %d: a rest that is tied", b+1)
			case x.Rest == nil && stop != open:
				return nil, fmt.Sprintf("bar %d: a tie that does not join", b+1)
			case x.Rest == nil:
				next, err := sounded(x, at, stop)
				if err != "" {
					return nil, fmt.Sprintf("bar %d: %s", b+1, err)
				}
				next.letRing = letRing
				if stop {
					last := &list[len(list)-1]
					if last.pitch != next.pitch || last.str != next.str || last.fret != next.fret || last.letRing {
						return nil, fmt.Sprintf("bar %d: %+v tied to %+v", b+1, *last, next)
					}
					last.length, last.letRing = last.length+x.Duration, letRing
				} else {
					list = append(list, next)
				}
				open = start
			}
			at += x.Duration
		}
	}
	if open {
		fault = "a tie leads out of the score"
	}
	return list, fault
}

// tiesOf returns the ties of a note, which must be the same as sound and as
// sign.
func tiesOf(x item) (start, stop, letRing bool) {
	count := map[string]int{}
	for _, n := range x.Notations {
		for _, t := range n.Tied {
			count[t.Type]++
		}
	}
	for _, t := range x.Ties {
		start, stop = start || t.Type == "start", stop || t.Type == "stop"
	}
	if count["start"] == 1 != start || count["stop"] == 1 != stop {
		return true, true, true
	}
	return start, stop, count["let-ring"] == 1
}

// sounded reads how one sign is played: exactly one string and one fret, and
// one stroke on the sign that is struck.
func sounded(x item, at int, tied bool) (n struck, fault string) {
	places, strokes := 0, 0
	n = struck{at: at, length: x.Duration, pitch: midi(x.Pitch.Step, x.Pitch.Alter, x.Pitch.Octave)}
	for _, notation := range x.Notations {
		for _, t := range notation.Technical {
			if t.Fret != nil && t.String > 0 {
				n.str, n.fret = t.String, *t.Fret
				places++
			}
			if strokes += len(t.Down) + len(t.Up); len(t.Down) > 0 {
				n.stroke = picking.DownStroke
			} else if len(t.Up) > 0 {
				n.stroke = picking.UpStroke
			}
		}
	}
	if places != 1 || strokes > 1 || tied && strokes != 0 {
		return n, fmt.Sprintf("%d places and %d strokes on a note", places, strokes)
	}
	return n, ""
}

// alterOf is what an accidental says.
var alterOf = map[string]int{"triple-flat": -3, "flat-flat": -2, "flat": -1, "natural": 0, "sharp": 1, "double-sharp": 2, "triple-sharp": 3}

// readAccidentals reads the notation as a musician does: the signature holds
// until an accidental stands before a note in that octave, and that until the
// bar line; a tied note is what it was. It finds too what shows an accidental
// without need, unless a tied note made the reader doubt.
func readAccidentals(s score, measures []measure) string {
	key := signature(s)
	clefs := 0
	for _, x := range s.Measures[0].Items {
		clefs += len(x.Clefs)
	}
	for b, m := range measures {
		shown := map[string]int{}
		doubt := map[string]bool{}
		for _, x := range m.Items {
			if x.Pitch == nil || clefs == 1 || x.Staff == "2" {
				if x.Accidental != "" {
					return fmt.Sprintf("bar %d: an accidental in the tab", b+1)
				}
				continue
			}
			place := fmt.Sprint(x.Pitch.Step, x.Pitch.Octave)
			now, known := shown[place]
			if !known {
				now = key[x.Pitch.Step]
			}
			if _, stop, _ := tiesOf(x); stop {
				doubt[place] = doubt[place] || x.Pitch.Alter != now
				if x.Accidental != "" {
					return fmt.Sprintf("bar %d: an accidental on a tied note", b+1)
				}
				continue
			}
			if alter, known := alterOf[x.Accidental]; known {
				if alter == now && !doubt[place] {
					return fmt.Sprintf("bar %d: a needless %s on %s", b+1, x.Accidental, place)
				}
				now, doubt[place] = alter, false
			}
			if x.Accidental == "other" && (x.Pitch.Alter > 3 || x.Pitch.Alter < -3) {
				now, doubt[place] = x.Pitch.Alter, false
			}
			if shown[place] = now; now != x.Pitch.Alter || doubt[place] {
				return fmt.Sprintf("bar %d: %s reads as altered by %d and is %d", b+1, place, now, x.Pitch.Alter)
			}
		}
	}
	return ""
}

// signature returns what the key signature alters: sharps in the order
// F C G D A E B, flats in the opposite one.
func signature(s score) map[string]int {
	const order = "FCGDAEB"
	key := map[string]int{}
	for _, x := range s.Measures[0].Items {
		for i := range min(max(x.Fifths, -x.Fifths), len(order)) {
			if x.Fifths > 0 {
				key[order[i:i+1]] = 1
			} else {
				key[order[6-i:7-i]] = -1
			}
		}
	}
	return key
}
