package voicing

import "sync"

// An idiom is a formula by which players name what they hear.
type idiom struct {
	formula   formula
	rarity    int // points, see [Names]
	tones     ClassSet
	ordinary  ClassSet // in the bass: the third, or what is in its place, and the fifth
	seventh   ClassSet
	essential ClassSet
	spare     ClassSet // optional and missed
	light     ClassSet // optional and hardly missed
	either    ClassSet
	symmetric bool // any tone may be the root
}

// idiomTable lists the chords that players use by their suffixes, each content
// once, the commoner ones first, in groups of one rarity (common practice).
var idiomTable = [...]struct {
	rarity   int
	suffixes []string
}{
	{0, []string{"", "m"}},
	{10, []string{"7", "m7", "maj7", "5"}},
	{20, []string{"sus4", "dim", "sus2", "dim7", "m7b5", "aug", "6", "m6", "9", "add9", "m9", "maj9", "7sus4"}},
	{30, []string{"6/9", "7#9", "7b9", "13", "11", "m11", "madd9", "m(maj7)", "7#5", "7b5", "m6/9", "7#11", "add4",
		"7no3", "maj7no3"}},
	{40, []string{"maj7#5", "maj7b5", "maj7#11", "9sus4", "13sus4", "m13", "maj13", "9#11", "9b5", "9#5", "m(maj9)",
		"7b13", "madd4"}},
	{50, []string{"7#5#9", "7#5b9", "7b5b9", "7b5#9", "7alt", "13b9", "13#9", "13#11", "7sus4b9", "7b9b13", "7#9b13",
		"7b9#11", "9b13", "m(maj7)b5", "maj9#11", "maj11", "m9b5", "m11b5", "m(maj11)", "maj13#11", "maj7sus4", "7sus2",
		"sus2sus4", "6/9#11", "(b5)", "(#11)", "add4add9"}},
	{80, []string{"m#5", "m7#5", "mb6", "(b6)", "(b9)", "mb9", "6sus4", "6sus2", "maj7sus2", "maj9sus4",
		"7add4", "maj7add4", "6add4", "m6add4", "m(maj13)", "m(maj7)b13", "m7b9", "m7#11", "m#11", "maj7b6", "maj7b9",
		"maj7#9", "maj9#5", "dim7b13", "dim9", "dim7add11", "m(maj9)b5", "9b5b13", "maj7b5b9", "augadd9"}},
}

var idioms = sync.OnceValue(func() (list []idiom) {
	for _, group := range idiomTable {
		for _, suffix := range group.suffixes {
			c, err := ParseChord("C" + suffix)
			if err != nil {
				panic(err)
			}
			list = append(list, newIdiom(c.formula, group.rarity))
		}
	}
	return list
})

func newIdiom(f formula, rarity int) idiom {
	ordinary := f & (thirds | fifths)
	if !f.any(thirds) {
		ordinary |= f & (second | fourth)
	}
	optional, either := f.optional(), f.either()
	light := optional & (ninth | eleventh)
	return idiom{
		formula: f, rarity: rarity,
		tones:    f.classes(),
		ordinary: ordinary.classes(), seventh: (f & sevenths).classes(),
		essential: (f &^ (optional | either)).classes(),
		spare:     (optional &^ light).classes(), light: light.classes(), either: either.classes(),
		symmetric: f == root|majorThird|sharpFifth || f == root|minorThird|flatFifth|diminishedSeventh,
	}
}
