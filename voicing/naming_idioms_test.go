package voicing

import (
	"testing"

	"weft.example/fretboard"
)

// TestIdioms: each content stands in the table once, by the suffix that its
// chord prints, rarer ones behind commoner ones, and none lacks a class.
func TestIdioms(t *testing.T) {
	seen := map[formula]string{}
	all := idioms()
	n := 0
	for i, group := range idiomTable {
		if i > 0 && group.rarity <= idiomTable[i-1].rarity {
			t.Errorf("rarity %d after %d", group.rarity, idiomTable[i-1].rarity)
		}
		for _, suffix := range group.suffixes {
			d := all[n]
			n++
			if printed := d.formula.suffix(); printed != suffix {
				t.Errorf("C%s prints as C%s", suffix, printed)
			}
			if other, twice := seen[d.formula]; twice {
				t.Errorf("C%s and C%s are one chord", suffix, other)
			}
			seen[d.formula] = suffix
			parts := d.essential | d.spare | d.light | d.either
			if d.rarity != group.rarity || parts != d.tones || d.tones.Len() != d.formula.size() || !d.essential.Has(0) {
				t.Errorf("C%s: %+v", suffix, d)
			}
		}
	}
	if n != len(all) {
		t.Errorf("%d suffixes, %d idioms", n, len(all))
	}
}

// TestPointsAreBoundedBelow: an idiom passed over could not have been better.
func TestPointsAreBoundedBelow(t *testing.T) {
	all := idioms()
	for classes := range ClassSet(1 << 12) {
		if classes == 0 || classes%7 != 0 && classes.Len() > 3 {
			continue
		}
		h := heard{classes: classes, bass: 0, again: classes%2 == 0, deep: classes%3 != 0}
		for !h.classes.Has(h.bass) {
			h.bass++
		}
		for i := range all {
			v := h.from(fretboard.PitchClass((i + int(classes)) % 12))
			if got, least := v.rate(&all[i]).points, v.atLeast(&all[i]); got < least {
				t.Fatalf("classes %b as %s: %d points, at least %d", classes, all[i].formula.suffix(), got, least)
			}
		}
	}
}
