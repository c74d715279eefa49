package voicing

import "weft.example/fretboard"

// A note is a place on a string that sounds a tone of the chord.
type note struct {
	fret  int8
	class ClassSet // the one that it sounds
	pitch fretboard.Pitch
}

// A window is the shapes whose lowest fret held is the same, low: strings are
// open or stopped from there to high. A low of 0 is the shapes of open strings
// alone.
type window struct {
	low, high int8
	notes     [fretboard.MaxStrings][]note // on each string, rising
	// What strings 1 to i can do: the classes they sound, those of them that
	// need no finger above low, and the lowest bass.
	classes [fretboard.MaxStrings + 1]ClassSet
	easy    [fretboard.MaxStrings + 1]ClassSet
	bass    [fretboard.MaxStrings + 1]fretboard.Pitch
}

// silentBass stands above every pitch, for a bass that does not sound.
const silentBass = fretboard.MaxPitch + 1

// listNotes finds the notes of the chord that lie within the options.
func (s *search) listNotes() {
	classes := s.chord.Classes()
	high := s.options.High
	all := make([]note, 0, s.strings*int(high+1))
	for i := range s.strings {
		from := len(all)
		for f := range high + 1 {
			pitch := s.open[i].Up(f)
			wanted := f >= s.options.Low && f > 0 || f == 0 && !s.options.Closed
			if wanted && classes.Has(pitch.Class()) {
				all = append(all, note{int8(f), ClassSet(0).With(pitch.Class()), pitch})
			}
		}
		s.notes[i] = all[from:len(all):len(all)]
	}
}

// enter opens the window whose lowest fret is low.
func (s *search) enter(low int8) {
	w := &s.window
	w.low, w.high = low, low
	for low > 0 && w.high < int8(s.options.High) && s.places[w.high+1]-s.places[low] <= s.span {
		w.high++
	}
	w.bass[0] = silentBass
	bass := ClassSet(0).With(s.bass)
	for i := range s.strings {
		w.classes[i+1], w.easy[i+1], w.bass[i+1] = w.classes[i], w.easy[i], w.bass[i]
		w.notes[i] = w.notes[i][:0]
		for _, n := range s.notes[i] {
			if n.fret != 0 && (n.fret < w.low || w.high < n.fret) {
				continue
			}
			w.notes[i] = append(w.notes[i], n)
			w.classes[i+1] |= n.class
			if n.fret <= w.low {
				w.easy[i+1] |= n.class
			}
			if n.class == bass {
				w.bass[i+1] = min(w.bass[i+1], n.pitch)
			}
		}
	}
}

// along returns the classes that strings 1 to i sound at one fret, where a
// finger that lies there already may go on.
func (w *window) along(i int, fret int8) (set ClassSet) {
	for _, notes := range w.notes[:i] {
		for _, n := range notes {
			if n.fret == fret {
				set |= n.class
			}
		}
	}
	return set
}
