package musicxml

import "weft.example/voicing"

// A tone is a degree of a chord and its semitones above the root.
type tone struct{ degree, semitones int }

// A kind is a chord kind of the standard with the tones that it spells out.
type kind struct {
	name  string
	tones []tone
}

// The degrees of the kinds.
var (
	second            = tone{2, 2}
	minorThird        = tone{3, 3}
	majorThird        = tone{3, 4}
	fourth            = tone{4, 5}
	flatFifth         = tone{5, 6}
	fifth             = tone{5, 7}
	sharpFifth        = tone{5, 8}
	sixth             = tone{6, 9}
	diminishedSeventh = tone{7, 9}
	minorSeventh      = tone{7, 10}
	majorSeventh      = tone{7, 11}
	ninth             = tone{9, 14}
	eleventh          = tone{11, 17}
	thirteenth        = tone{13, 21}
)

// kinds lists the 25 kinds of which the standard spells the tones, in its
// order; the root goes without saying.
var kinds = [...]kind{
	{"major", []tone{majorThird, fifth}},
	{"minor", []tone{minorThird, fifth}},
	{"augmented", []tone{majorThird, sharpFifth}},
	{"diminished", []tone{minorThird, flatFifth}},
	{"dominant", []tone{majorThird, fifth, minorSeventh}},
	{"major-seventh", []tone{majorThird, fifth, majorSeventh}},
	{"minor-seventh", []tone{minorThird, fifth, minorSeventh}},
	{"diminished-seventh", []tone{minorThird, flatFifth, diminishedSeventh}},
	{"augmented-seventh", []tone{majorThird, sharpFifth, minorSeventh}},
	{"half-diminished", []tone{minorThird, flatFifth, minorSeventh}},
	{"major-minor", []tone{minorThird, fifth, majorSeventh}},
	{"major-sixth", []tone{majorThird, fifth, sixth}},
	{"minor-sixth", []tone{minorThird, fifth, sixth}},
	{"dominant-ninth", []tone{majorThird, fifth, minorSeventh, ninth}},
	{"major-ninth", []tone{majorThird, fifth, majorSeventh, ninth}},
	{"minor-ninth", []tone{minorThird, fifth, minorSeventh, ninth}},
	{"dominant-11th", []tone{majorThird, fifth, minorSeventh, ninth, eleventh}},
	{"major-11th", []tone{majorThird, fifth, majorSeventh, ninth, eleventh}},
	{"minor-11th", []tone{minorThird, fifth, minorSeventh, ninth, eleventh}},
	{"dominant-13th", []tone{majorThird, fifth, minorSeventh, ninth, eleventh, thirteenth}},
	{"major-13th", []tone{majorThird, fifth, majorSeventh, ninth, eleventh, thirteenth}},
	{"minor-13th", []tone{minorThird, fifth, minorSeventh, ninth, eleventh, thirteenth}},
	{"suspended-second", []tone{second, fifth}},
	{"suspended-fourth", []tone{fourth, fifth}},
	{"power", []tone{fifth}},
}

// addedTo holds the semitones that an added degree is counted from: the
// standard has them major or perfect, but for the minor seventh.
var addedTo = [...]int{1: 0, 2: 2, 3: 4, 4: 5, 5: 7, 6: 9, 7: 10, 9: 14, 11: 17, 13: 21}

// A degree changes a kind: it adds a tone, alters one of the kind by semitones
// or subtracts it.
type degree struct {
	value, alter int
	change       string
}

// How hard a change is to read: a chord is best named by the kind that it adds
// to or alters least, by one that it takes from only if it must, and by one
// with another third only if there is no other.
const (
	costAdd      = 2
	costAlter    = 2
	costSubtract = 3
	costThird    = 6
)

// kindOf returns the kind that is nearest to c, and the degrees that lead from
// it to the very tones of c. Of several the first in the standard's order goes.
func kindOf(c voicing.Chord) (name string, degrees []degree) {
	var tones []tone
	for _, t := range c.Tones()[1:] {
		tones = append(tones, tone{t.Degree, t.Interval.Semitones})
	}
	least := -1
	for i := range kinds {
		if ds, cost := kinds[i].degreesTo(tones); least < 0 || cost < least {
			name, degrees, least = kinds[i].name, ds, cost
		}
	}
	return name, degrees
}

// degreesTo returns the degrees that make k the chord of tones, and what they
// cost. An alteration takes the first tone on the degree; tones on it that are
// left are added.
func (k *kind) degreesTo(tones []tone) (degrees []degree, cost int) {
	var used [4]tone // altered: at most a kind's third, fifth, seventh and one more
	altered := used[:0]
	for _, own := range k.tones {
		first, there := matching(own, tones)
		switch {
		case !there:
			degrees = append(degrees, degree{own.degree, 0, "subtract"})
			cost += costSubtract
		case first != own:
			degrees = append(degrees, degree{own.degree, first.semitones - own.semitones, "alter"})
			altered = append(altered, first)
			cost += costAlter
			if own.degree == 3 {
				cost += costThird
			}
		}
	}
	for _, t := range tones {
		if !among(t, k.tones) && !among(t, altered) {
			degrees = append(degrees, degree{t.degree, t.semitones - addedTo[t.degree], "add"})
			cost += costAdd
		}
	}
	return degrees, cost
}

// matching returns own if it is one of tones, or else the first tone on its
// degree.
func matching(own tone, tones []tone) (first tone, there bool) {
	if among(own, tones) {
		return own, true
	}
	for _, t := range tones {
		if t.degree == own.degree {
			return t, true
		}
	}
	return tone{}, false
}

func among(one tone, tones []tone) bool {
	for _, t := range tones {
		if t == one {
			return true
		}
	}
	return false
}
