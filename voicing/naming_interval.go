package voicing

import (
	"strings"

	"weft.example/fretboard"
)

var intervalNames = [...]string{"a unison", "a minor second", "a major second", "a minor third", "a major third",
	"a perfect fourth", "a tritone", "a perfect fifth", "a minor sixth", "a major sixth", "a minor seventh", "a major seventh"}

// Plain says what sounds without naming a chord: one note, C; one note in
// octaves, C; a major third, C and E, counted from the lowest note up without
// whole octaves; or C, E, G.
func (r Reading) Plain() string {
	notes := r.distinct()
	names := make([]string, len(notes))
	for i, n := range notes {
		names[i] = n.String()
	}
	switch len(notes) {
	case 0:
		return ""
	case 1:
		return r.oneNote() + ", " + names[0]
	case 2:
		return intervalNames[above(notes[0].Class(), notes[1].Class())] + ", " + strings.Join(names, " and ")
	}
	return strings.Join(names, ", ")
}

// distinct lists each note once, the lowest first.
func (r Reading) distinct() (notes []fretboard.Note) {
	var heard ClassSet
	for _, n := range r.Notes {
		if p := n.Note.Class(); !heard.Has(p) {
			heard = heard.With(p)
			notes = append(notes, n.Note)
		}
	}
	return notes
}

// oneNote says how a single pitch class sounds.
func (r Reading) oneNote() string {
	switch {
	case len(r.Notes) == 1:
		return "one note"
	case r.Notes[0].Pitch() == r.Notes[len(r.Notes)-1].Pitch():
		return "one note in unison"
	}
	return "one note in octaves"
}
