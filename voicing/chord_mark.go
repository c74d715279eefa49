package voicing

// takeMark steps over a mark and returns what it does and to which members,
// none if no mark comes next.
func (s *symbol) takeMark(loose bool) (change, formula) {
	switch {
	case s.takeFold("add"):
		return s.addition()
	case s.takeFold("omit"), s.takeFold("no"):
		return s.omission()
	case s.takeFold("sus"):
		return s.suspension()
	case s.takeFold("aug"):
		return altering, sharpFifth
	case loose && isDigit(s.peek()):
		return s.looseNumber()
	}
	return s.alteration()
}

// signedDegrees lists the degrees that may be altered. A sharpened fourth is the
// sharpened eleventh under another name.
var signedDegrees = [...]struct {
	sign   int
	degree string
	member formula
}{
	{-1, "5", flatFifth}, {1, "5", sharpFifth}, {-1, "6", flatSixth},
	{-1, "9", flatNinth}, {1, "9", sharpNinth},
	{1, "11", sharpEleventh}, {1, "4", sharpEleventh}, {-1, "13", flatThirteenth},
}

func signedDegree(sign int, degree string) formula {
	for _, d := range signedDegrees {
		if d.sign == sign && d.degree == degree {
			return d.member
		}
	}
	return 0
}

// plainDegree returns the major or perfect member of a degree among those given.
func plainDegree(degree string, among formula) formula {
	for one, m := range among.all() {
		if m.name == degree {
			return one
		}
	}
	return 0
}

// takeSign steps over a sharp (1) or a flat (-1), or over the plus or minus
// that stands for it, and returns 0 if none comes next.
func (r *reader) takeSign() int {
	switch {
	case r.takeOne("b", "♭") >= 0:
		return -1
	case r.takeOne("#", "♯") >= 0:
		return 1
	}
	return r.takePlusMinus()
}

// takePlusMinus is takeSign for the plus and the minus alone.
func (r *reader) takePlusMinus() int {
	switch {
	case r.takeOne("-", "−", "–", "—", "‐", "‑", "‒") >= 0:
		return -1
	case r.take("+"):
		return 1
	}
	return 0
}

// takeDigits steps over all the digits that come next: 13 is never 1 and 3.
func (r *reader) takeDigits() string {
	start := r.at
	for isDigit(r.peek()) {
		r.at++
	}
	return r.text[start:r.at]
}

// takeDegree reads a degree after a word, with its ordinal ending if it has
// one: no3rd. In brackets a space may stand before it.
func (s *symbol) takeDegree() (sign int, degree string) {
	if s.inside {
		s.spaces()
	}
	sign, degree = s.takeSign(), s.takeDigits()
	if degree != "" {
		_ = s.takeFold("nd") || s.takeFold("rd") || s.takeFold("th")
	}
	return sign, degree
}

// alteration reads a signed degree, or a bare + for the raised fifth.
func (s *symbol) alteration() (change, formula) {
	plus := s.peek() == '+'
	sign, degree := s.takeSign(), s.takeDigits()
	if plus && degree == "" {
		return altering, sharpFifth
	}
	return altering, signedDegree(sign, degree)
}

// looseNumber reads 9, 11 or 13, which are added, or a degree with its plus or
// minus behind it, as in (5-). A sign before a digit belongs to that digit.
func (s *symbol) looseNumber() (change, formula) {
	degree := s.takeDigits()
	end := s.at
	one := signedDegree(s.takePlusMinus(), degree)
	if one != 0 && !isDigit(s.peek()) {
		return altering, one
	}
	s.at = end
	return adding, plainDegree(degree, ninth|eleventh|thirteenth)
}

// addition reads what follows add.
func (s *symbol) addition() (change, formula) {
	sign, degree := s.takeDegree()
	if sign == 0 {
		return adding, plainDegree(degree, second|fourth|sixth|ninth|eleventh|thirteenth)
	}
	return altering, signedDegree(sign, degree) &^ fifths
}

// omission reads what follows no or omit.
func (s *symbol) omission() (change, formula) {
	sign, degree := s.takeDegree()
	if sign != 0 {
		return omitting, 0
	}
	return omitting, plainDegree(degree, majorThird|fifth|ninth|eleventh)
}

// suspension reads what follows sus: 2, 4, 24 or nothing, which means 4. In
// brackets a space may stand before it; another number there is a new mark.
func (s *symbol) suspension() (change, formula) {
	end := s.at
	if s.inside {
		s.spaces()
	}
	spaced := s.at > end
	switch s.takeDigits() {
	case "4":
		return suspending, fourth
	case "2":
		return suspending, second
	case "24":
		return suspending, second | fourth
	case "":
		s.at = end
		return suspending, fourth
	}
	if !spaced {
		return suspending, 0
	}
	s.at = end
	return suspending, fourth
}
