package voicing

import "weft.example/fretboard"

// The points of [Names].
const (
	ordinaryBass  = 30
	seventhBass   = 40
	otherBass     = 50
	symmetricBass = 10
	unheardBass   = 15
	doubledBass   = 30

	lostEssential = 60
	lostOptional  = 15
	lostOverBass  = 15 // more for an optional tone of a slash chord
	lostLight     = 5
	addedNote     = 70

	onTonic       = -25
	onDominant    = -15
	onSubdominant = -10
	leadingUp     = -20
	outsideKey    = 15
)

const (
	mostNames = 8
	farBehind = 60 // points behind the first at which the list ends
)

// A rated is a root and an idiom with their points.
type rated struct {
	root   fretboard.PitchClass
	idiom  *idiom
	place  int // of the idiom among all
	points int
	gaps   int  // tones missing or added
	whole  bool // no essential tone missing, none added

	confidence Confidence // once all are ranked
}

// rank lists the names with the fewest points, and judges them.
func (h heard) rank(key Key) []rated {
	best := h.fewest(key)
	end := len(best)
	for best[end-1].points > best[0].points+farBehind {
		end--
	}
	best = best[:end]
	for i := range best {
		best[i].confidence = h.confidence(best, i)
	}
	sortByConfidence(best)
	return best
}

// sortByConfidence puts the few names in order; those of one level stay in that
// of their points.
func sortByConfidence(names []rated) {
	for i := range names {
		for at := i; at > 0 && names[at].confidence > names[at-1].confidence; at-- {
			names[at-1], names[at] = names[at], names[at-1]
		}
	}
}

// fewest lists the names with the fewest points in their order. An idiom that
// cannot get among them is not rated in full, which saves half of the time and
// more.
func (h heard) fewest(key Key) []rated {
	best := make([]rated, 0, mostNames+1)
	all := idioms()
	for up := range fretboard.PitchClass(12) {
		p := (h.bass + up) % 12
		view := h.from(p)
		tips := key.tips(p)
		for i := range all {
			d := &all[i]
			if len(best) == mostNames && view.atLeast(d)+tips.best() > best[mostNames-1].points {
				continue
			}
			r := view.rate(d)
			r.root, r.place = p, i
			r.points += tips.of(d)
			best = h.insert(best, r)
		}
	}
	return best
}

// insert puts r in its place and drops the last of more than eight.
func (h heard) insert(best []rated, r rated) []rated {
	at := len(best)
	for at > 0 && h.before(r, best[at-1]) {
		at--
	}
	if at == mostNames {
		return best
	}
	best = append(best, r)
	copy(best[at+1:], best[at:])
	best[at] = r
	return best[:min(len(best), mostNames)]
}

// before orders names by their points; no two are equal.
func (h heard) before(a, b rated) bool {
	switch {
	case a.points != b.points:
		return a.points < b.points
	case a.gaps != b.gaps:
		return a.gaps < b.gaps
	case (a.root == h.bass) != (b.root == h.bass):
		return a.root == h.bass
	case a.place != b.place:
		return a.place < b.place
	}
	return above(h.bass, a.root) < above(h.bass, b.root)
}

// A view is what is heard as seen from one root, which is pitch class 0.
type view struct {
	heard
	upper ClassSet // what sounds but a bass that is heard as such
}

func (h heard) from(root fretboard.PitchClass) view {
	h.classes, h.bass = h.classes.up(above(root, 0)), above(root, h.bass)
	v := view{h, h.classes}
	if h.deep {
		v.upper &^= ClassSet(0).With(h.bass)
	}
	return v
}

// slash reports whether the chord would have another bass than its root.
func (v view) slash() bool { return v.deep && v.bass != 0 }

// atLeast gives points that d cannot fall below, the key apart.
func (v view) atLeast(d *idiom) int {
	return d.rarity + addedNote*(v.upper&^d.tones).Len() + lostEssential*(d.essential&^v.classes).Len()
}

// rate gives the points of d, the key apart.
func (v view) rate(d *idiom) rated {
	missing, added := d.tones&^v.classes, v.upper&^d.tones
	lost, whole := d.lost(missing)
	if v.slash() {
		lost += lostOverBass * (missing & d.spare).Len()
	}
	return rated{
		idiom:  d,
		points: d.rarity + v.bassPoints(d) + lost + addedNote*added.Len(),
		gaps:   missing.Len() + added.Len(),
		whole:  whole && added == 0,
	}
}

func (v view) bassPoints(d *idiom) int {
	switch {
	case v.bass == 0:
		return 0
	case d.symmetric && d.tones.Has(v.bass):
		return symmetricBass
	case !v.deep:
		return unheardBass
	case d.ordinary.Has(v.bass):
		return ordinaryBass
	case d.seventh.Has(v.bass):
		return seventhBass
	case !d.tones.Has(v.bass) && v.again:
		return otherBass + doubledBass
	}
	return otherBass
}

var (
	alteredFifths = (flatFifth | sharpFifth).classes()
	alteredNinths = (flatNinth | sharpNinth).classes()
)

// lost gives the points of missing tones, and reports whether the chord is
// whole without them.
func (d *idiom) lost(missing ClassSet) (points int, whole bool) {
	if missing == 0 {
		return 0, true
	}
	essential := (missing & d.essential).Len()
	light := (missing & (d.light | d.either)).Len()
	for _, pair := range [...]ClassSet{alteredFifths, alteredNinths} {
		if missing&d.either&pair == pair {
			essential, light = essential+1, light-1
		}
	}
	points = lostEssential*essential + lostOptional*(missing&d.spare).Len() + lostLight*light
	return points, essential == 0
}

// tips are the points by which a key favours a root: for chords with a minor
// third and b5, and for all others.
type tips struct{ diminished, other int }

func (k Key) tips(root fretboard.PitchClass) tips {
	degree := above(k.tonic.Class(), root)
	switch {
	case k.mode == noMode:
		return tips{}
	case degree == 0:
		return tips{0, onTonic}
	case degree == 7:
		return tips{0, onDominant}
	case degree == 5:
		return tips{0, onSubdominant}
	case degree == 11:
		return tips{leadingUp, 0}
	case k.scale().classes().Has(degree):
		return tips{}
	}
	return tips{outsideKey, outsideKey}
}

func (t tips) best() int { return min(t.diminished, t.other) }

func (t tips) of(d *idiom) int {
	if d.formula.has(minorThird | flatFifth) {
		return t.diminished
	}
	return t.other
}
