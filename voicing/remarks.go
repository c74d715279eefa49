package voicing

import (
	"strconv"

	"weft.example/fretboard"
)

// Remarks says in short clauses what is amiss with v: frets further apart than
// a hand reaches, and where it departs from its chord: strings that
// sound below the bass that the chord wants, a root or slash bass that does
// not sound, essential tones that lack, and notes that are not in the chord.
// Notes are named as the chord spells them, without the capo. A faultless
// voicing and N.C. have no remarks. What sounds below the root is no fault
// where players disregard it; see [Find].
func (v Voicing) Remarks() []string {
	if v.chord.Silent() {
		return nil
	}
	remarks := append(v.remarkReach(), v.remarkBelow()...)
	remarks = append(remarks, v.remarkMissing()...)
	return append(remarks, v.remarkForeign()...)
}

// remarkReach speaks of frets further apart than the finder allows.
func (v Voicing) remarkReach() []string {
	low, high := fretboard.MaxFrets+1, fretboard.Fret(0)
	for s := range v.Sounding().Thinnest() {
		if f, _ := v.shape.Fret(s); f > 0 {
			low, high = min(low, f), max(high, f)
		}
	}
	if high == 0 {
		return nil
	}
	capo := v.instrument.Capo
	span := tenths(fretboard.FromBridge(v.instrument.Scale, capo+low)) - tenths(fretboard.FromBridge(v.instrument.Scale, capo+high))
	if span <= tenths(usualSpan) {
		return nil
	}
	return []string{farApart(low, high, span) + ", further than most hands reach"}
}

// farApart says how far apart two frets lie; span is in tenths of a millimetre.
func farApart(low, high fretboard.Fret, span int) string {
	return "frets " + digits(low) + " and " + digits(high) + " lie " + digits(span/10) + " mm apart"
}

// digits prints a count, a string or a fret for a sentence.
func digits[N ~int](n N) string { return strconv.Itoa(int(n)) }

// remarkBelow speaks of strings below the slash bass or else the root.
func (v Voicing) remarkBelow() []string {
	note, slash := v.chord.Bass()
	pitches := v.soundings()
	wanted := pitches.lowest(v.Sounding(), ClassSet(0).With(note.Class()))
	if wanted == 0 || !slash && !hearsBass(v.instrument.Tuning) {
		return nil
	}
	name := "root"
	if slash {
		name = "slash bass"
	}
	var remarks []string
	for _, s := range fretboard.LowestFirst(v.Sounding(), pitches.of) {
		if v.Pitch(s) == v.Pitch(wanted) {
			break
		}
		remarks = append(remarks, v.sounded(s)+", below the "+name+" on string "+digits(wanted))
	}
	return remarks
}

// remarkMissing speaks of what should sound and does not.
func (v Voicing) remarkMissing() []string {
	sounded := v.classes()
	missing := func(n fretboard.Note) bool { return !sounded.Has(n.Class()) }
	var remarks []string
	if bass, slash := v.chord.Bass(); slash && missing(bass) {
		remarks = append(remarks, "the shape does not sound the slash bass "+bass.String())
	}
	if root := v.chord.Root(); missing(root) {
		remarks = append(remarks, "the shape does not sound the root "+root.String())
	}
	told := 1
	for _, tone := range v.chord.Tones() {
		lacks := tone.Need == Essential && missing(tone.Note) || tone.Need == Either && v.lacksDegree(tone.Degree, sounded)
		if lacks && tone.Degree != told {
			remarks = append(remarks, "the shape lacks the "+ordinals[tone.Degree])
			told = tone.Degree
		}
	}
	return remarks
}

// ordinals names the degrees.
var ordinals = [...]string{2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth", 7: "seventh",
	9: "ninth", 11: "eleventh", 13: "thirteenth"}

// lacksDegree reports whether no tone of a degree is among sounded.
func (v Voicing) lacksDegree(degree int, sounded ClassSet) bool {
	for _, tone := range v.chord.Tones() {
		if tone.Degree == degree && sounded.Has(tone.Note.Class()) {
			return false
		}
	}
	return true
}

// remarkForeign speaks of notes that are not in the chord, the thickest string
// first.
func (v Voicing) remarkForeign() []string {
	var remarks []string
	for s := v.shape.Strings(); s >= 1; s-- {
		if v.Sounding().Has(s) && !v.chord.Has(v.shapePitch(s).Class()) {
			remarks = append(remarks, v.sounded(s)+", which is not in "+v.chord.String())
		}
	}
	return remarks
}

// sounded says what string s sounds.
func (v Voicing) sounded(s fretboard.StringNumber) string {
	return "string " + digits(s) + " sounds " + v.spell(s).String()
}

// classes returns the pitch classes that sound, without the capo.
func (v Voicing) classes() ClassSet {
	var set ClassSet
	for s := range v.Sounding().Thinnest() {
		set = set.With(v.shapePitch(s).Class())
	}
	return set
}

// spell names what string s sounds: as the chord does or, where the note is
// not in the chord, without an accidental or else as a degree above its root.
func (v Voicing) spell(s fretboard.StringNumber) fretboard.Note {
	class := v.shapePitch(s).Class()
	if n, ok := v.chord.Spell(class); ok {
		return n
	}
	return foreign(v.chord.Root(), class, Key{})
}

// foreignLetters holds how many letters above the root a foreign note is
// named, by its semitones: 1 b2 2 b3 3 4 #4 5 b6 6 b7 7.
var foreignLetters = [...]int{0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6}
