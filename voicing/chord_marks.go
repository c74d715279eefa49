package voicing

// marks reads alterations, additions, suspensions and omissions up to the
// slash of a bass or the end.
func (s *symbol) marks() error {
	for {
		var err error
		switch {
		case s.rest() == "" || s.bassFollows():
			return nil
		case s.take("("):
			err = s.bracket()
		default:
			err = s.mark(s.take("/"))
		}
		if err != nil {
			return err
		}
	}
}

// bassFollows reports whether a slash comes next that leads to no mark.
func (s *symbol) bassFollows() bool {
	if s.peek() != '/' {
		return false
	}
	ahead := *s // a copy to look ahead with
	ahead.at++
	took, _ := ahead.takeMajor()
	return !took && !ahead.startsMark()
}

// startsMark reports whether a mark comes next, by its first letters.
func (s *symbol) startsMark() bool {
	for _, word := range [...]string{"add", "omit", "no", "sus", "alt", "aug", "+"} {
		if s.takeFold(word) {
			return true
		}
	}
	if s.takeSign() != 0 {
		return s.takeDigits() != ""
	}
	switch s.takeDigits() {
	case "4", "5", "6":
		return s.takePlusMinus() != 0
	case "9", "11", "13":
		return true
	}
	return false
}

// bracket reads what follows an opening bracket: marks with spaces, commas or
// slashes between them or, unless a bare number comes next, nothing.
func (s *symbol) bracket() error {
	open := s.at - len("(")
	s.inside = true
	s.spaces()
	for apart := true; ; {
		if err := s.mark(apart); err != nil {
			return s.unclosed(open, err)
		}
		end := s.at
		s.spaces()
		if s.take(")") {
			s.inside = false
			return nil
		}
		if s.takeOne(",", "/") >= 0 {
			s.spaces()
		}
		apart = s.at > end
	}
}

// unclosed prefers the open bracket to what is missing at the end of the text.
func (s *symbol) unclosed(open int, err error) error {
	if s.rest() == "" {
		return s.syntax(open, 1, "the bracket is not closed", "close it with )")
	}
	return err
}

func (s *symbol) spaces() {
	for s.takeOne(" ", "\t", "\u00a0") >= 0 {
	}
}

// mark reads one mark. A loose one, in brackets or after a slash, may be a
// bare number, which adds that tone. The first mark may be a major seventh.
func (s *symbol) mark(loose bool) error {
	start := s.at
	first := !s.marked
	s.marked = true
	if first && s.number == nil {
		if done, err := s.takeMajorNumber(); done || err != nil {
			return err
		}
	}
	var f *fault
	if s.takeFold("alt") {
		f = s.alt(first)
	} else {
		do, to := s.takeMark(loose)
		if to == 0 {
			return s.noMark(start)
		}
		f = s.apply(do, to)
	}
	if f != nil {
		return s.contradiction(start, f)
	}
	return nil
}

// alt raises and lowers the fifth and the ninth of a plain seventh chord.
func (s *symbol) alt(first bool) *fault {
	if s.number == nil && s.quality == &bare && first {
		s.formula |= minorSeventh
		s.named |= minorSeventh
		s.number = seven
	}
	if !first || s.formula != root|majorThird|fifth|minorSeventh {
		return &fault{"alt in a chord other than a plain seventh", "write it right after the root or the 7, as in C7alt"}
	}
	return s.apply(altering, alteredTones)
}

// noMark refuses the piece that began at start.
func (s *symbol) noMark(start int) error {
	end := max(s.at, start+pieceLength(s.text[start:]))
	piece := s.text[start:end]
	s.at = start
	if took, _ := s.takeMajor(); took {
		return s.syntax(start, len(piece), "a major seventh after the rest", "write it right after root or quality, as in Cmaj7 or Cm(maj7)")
	}
	for _, m := range markMends {
		s.at = start
		if s.takeFold(m.begins) {
			return s.syntax(start, len(piece), m.reason, m.mend)
		}
	}
	s.at = start
	return s.unreadable(len(piece))
}

var markMends = [...]struct{ begins, reason, mend string }{
	{"add", "no such added tone", "add 2, 4, 6, 9, 11, 13, b6, b9, #9, #11 or b13"},
	{"no", "no such tone to leave out", "leave out 3, 5, 9 or 11"},
	{"omit", "no such tone to leave out", "leave out 3, 5, 9 or 11"},
	{"sus", "no such suspension", "write sus2, sus4 or sus24, and a number in front, as in C7sus4"},
}
