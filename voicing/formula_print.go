package voicing

import "strings"

// suffix prints f as the part of a symbol between root and bass. Read back, it
// gives f again, for every f that a symbol can give.
func (f formula) suffix() string {
	if f == root|majorThird|minorSeventh|alteredTones {
		return "7alt"
	}
	head, covered := f.head()
	marks := f.suspension() + f.alterations(covered)
	if head == "" && (strings.HasPrefix(marks, "b") || strings.HasPrefix(marks, "#")) {
		marks = "(" + marks + ")" // or the root would take the accidental
	}
	return head + marks + f.additions(covered) + f.omissions(head, covered)
}

// head prints quality and number, and returns the members that they cover.
func (f formula) head() (string, formula) {
	switch {
	case f.has(diminishedSeventh):
		number, stack := f.number()
		return "dim" + number, minorThird | flatFifth | diminishedSeventh | stack
	case f.any(sevenths):
		number, stack := f.number()
		return f.sevenQuality(number), f&(thirds|fifth|sevenths) | stack
	case f.has(sixth | ninth):
		return f.minor() + "6/9", f&(thirds|fifth) | sixth | ninth
	case f.has(sixth):
		return f.minor() + "6", f&(thirds|fifth) | sixth
	}
	return f.triad()
}

func (f formula) minor() string {
	if f.has(minorThird) {
		return "m"
	}
	return ""
}

// sevenQuality prints a number with the words that make its third and seventh.
func (f formula) sevenQuality(number string) string {
	switch {
	case f.has(minorThird | majorSeventh):
		return "m(maj" + number + ")"
	case f.has(majorSeventh):
		return "maj" + number
	}
	return f.minor() + number
}

func (f formula) triad() (string, formula) {
	switch {
	case f.has(minorThird|flatFifth) && !f.has(sharpFifth):
		return "dim", minorThird | flatFifth
	case f.has(majorThird|sharpFifth) && !f.has(flatFifth):
		return "aug", majorThird | sharpFifth
	case !f.any(thirds|second|fourth) && f.has(fifth):
		return "5", fifth
	}
	return f.minor(), f & (thirds | fifth)
}

// number prints the highest number whose stack of thirds f holds, and returns
// the part of the stack above the seventh that f has. An altered 9th or 11th
// stands in for the plain one, and so does the tone of a suspension.
func (f formula) number() (string, formula) {
	suspended := !f.any(thirds)
	nine := f.any(ninths) || suspended && f.has(second)
	eleven := f.any(eleventh|sharpEleventh) || suspended && f.has(fourth)
	switch {
	case nine && eleven && f.has(thirteenth):
		return "13", f & (ninth | eleventh | thirteenth)
	case nine && f.has(eleventh):
		return "11", f & (ninth | eleventh)
	case f.has(ninth):
		return "9", ninth
	}
	return "7", 0
}

func (f formula) suspension() string {
	if f.any(thirds) {
		return ""
	}
	marks := ""
	if f.has(second) {
		marks = "sus2"
	}
	if f.has(fourth) {
		marks += "sus4"
	}
	return marks
}

const alterations = flatFifth | sharpFifth | flatSixth | flatNinth | sharpNinth | sharpEleventh | flatThirteenth

func (f formula) alterations(covered formula) string {
	marks := ""
	for _, m := range (f & alterations &^ covered).all() {
		marks += m.name
	}
	return marks
}

func (f formula) additions(covered formula) string {
	added := f &^ (root | thirds | fifths | sevenths | alterations | covered)
	if !f.any(thirds) {
		added &^= second | fourth
	}
	marks := ""
	for _, m := range added.all() {
		marks += "add" + m.name
	}
	return marks
}

func (f formula) omissions(head string, covered formula) string {
	marks := ""
	if !f.any(thirds|second|fourth) && head != "5" {
		marks = "no3"
	}
	if !f.any(fifths) {
		marks += "no5"
	}
	return marks
}
