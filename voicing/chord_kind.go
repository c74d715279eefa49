package voicing

// A quality is what the word between root and number gives a chord.
type quality struct {
	third, fifth, seventh formula
	named                 formula  // which of its members the word says outright
	numbers               []number // those that may follow
	major                 bool     // maj7 may follow, bracketed or not
	after                 after
}

// after says what a quality is without a number.
type after uint8

const (
	triad      after = iota
	implied          // a seventh chord, as in CΔ and Cø
	unfinished       // nothing: the number must follow
)

// A number gives the members above the triad.
type number struct {
	word    string
	seventh bool
	stack   formula // the thirds above the seventh, up to the number
	named   formula // what the number says outright
}

var allNumbers = [...]number{ // none begins a later one
	{"13", true, ninth | eleventh | thirteenth, thirteenth},
	{"11", true, ninth | eleventh, eleventh},
	{"9", true, ninth, ninth},
	{"7", true, 0, 0},
	{"69", false, 0, sixth | ninth},
	{"6", false, 0, sixth}, // 6/9 is 6 with the mark /9
	{"5", false, 0, fifth},
	{"2", false, 0, second},
	{"4", false, 0, fourth},
}

var (
	sevenNumbers = allNumbers[:4]
	highNumbers  = allNumbers[:6]
	seven        = &allNumbers[3]
)

var (
	bare           = quality{majorThird, fifth, minorSeventh, 0, allNumbers[:], true, triad}
	major          = quality{majorThird, fifth, majorSeventh, majorThird, highNumbers, false, triad}
	triangle       = quality{majorThird, fifth, majorSeventh, 0, sevenNumbers, false, implied}
	jSeven         = quality{majorThird, fifth, majorSeventh, 0, sevenNumbers, false, unfinished}
	minor          = quality{minorThird, fifth, minorSeventh, minorThird, highNumbers, true, triad}
	diminished     = quality{minorThird, flatFifth, diminishedSeventh, minorThird | flatFifth, sevenNumbers, true, triad}
	halfDiminished = quality{minorThird, flatFifth, minorSeventh, minorThird | flatFifth, sevenNumbers, false, implied}
	augmented      = quality{majorThird, sharpFifth, minorSeventh, sharpFifth, sevenNumbers, true, triad}
	dominant       = quality{majorThird, fifth, minorSeventh, 0, sevenNumbers, false, unfinished}
)

// qualityWords lists the words in the order in which they are tried. A word of
// two or more plain letters may be in capitals. unless says what must not
// follow: Cmadd9 is no Cma, Comit3 no Co, C-5 no C minor. A hyphen may be any
// of the dashes that a word processor makes of it.
var qualityWords = [...]struct {
	word    string
	unless  []string
	quality *quality
}{
	{"major", nil, &major}, {"maj", nil, &major}, {"ma", unlessMa, &major},
	{"Δ", nil, &triangle}, {"∆", nil, &triangle}, {"△", nil, &triangle},
	{"minor", nil, &minor}, {"min", unlessMin, &minor}, {"mi", nil, &minor}, {"m", nil, &minor}, {"M", nil, &major},
	{"-", five, &minor}, {"−", five, &minor}, {"–", five, &minor}, {"—", five, &minor},
	{"‐", five, &minor}, {"‑", five, &minor}, {"‒", five, &minor},
	{"dim", nil, &diminished}, {"o", []string{"mit"}, &diminished}, {"°", nil, &diminished}, {"º", nil, &diminished},
	{"ø", nil, &halfDiminished}, {"Ø", nil, &halfDiminished}, {"∅", nil, &halfDiminished},
	{"aug", nil, &augmented}, {"+", []string{"4", "5"}, &augmented},
	{"dom", nil, &dominant}, {"j", nil, &jSeven},
}

var (
	unlessMa  = []string{"dd", "lt", "ug"}       // add, alt and aug after m
	unlessMin = []string{"o3", "o5", "o9", "o1"} // no3 and the like after mi
	five      = []string{"5"}
)

// takeQuality steps over a quality, none for a bare one.
func (s *symbol) takeQuality() *quality {
	for i := range qualityWords {
		if w := &qualityWords[i]; s.takeWord(w.word, w.unless) {
			return w.quality
		}
	}
	return &bare
}

// takeWord steps over word unless one of unless follows it.
func (r *reader) takeWord(word string, unless []string) bool {
	start := r.at
	if !r.takeFold(word) {
		return false
	}
	for _, after := range unless {
		if r.takeFold(after) {
			r.at = start
			return false
		}
	}
	return true
}

// takeMajor steps over a word for the major seventh, and reports whether it is
// the triangle, which needs no number.
func (r *reader) takeMajor() (took, triangle bool) {
	if r.takeOne("Δ", "∆", "△") >= 0 {
		return true, true
	}
	return r.takeFold("major") || r.takeFold("maj") || r.takeWord("ma", unlessMa) || r.take("M"), false
}

// takeRootQuality steps over the quality after the root. A small root means
// minor: there a word for minor or diminished may follow, while maj and the like
// are left, since they speak of the seventh.
func (s *symbol) takeRootQuality() (*quality, error) {
	start := s.at
	q := s.takeQuality()
	switch {
	case !s.small, q == &minor, q == &diminished, q == &halfDiminished:
		return q, nil
	case q == &augmented:
		return q, s.impossible(start, s.at-start, "augmented on a small root, which means minor", smallMend)
	}
	s.at = start
	if digits := s.takeDigits(); digits == "2" || digits == "4" || digits == "5" {
		return q, s.impossible(start, len(digits), "a bare "+digits+" on a small root, which means minor", smallMend)
	}
	s.at = start
	return &minor, nil
}

const smallMend = "write the root as a capital letter, or put an altered tone in brackets"

// kind reads all between root and bass.
func (s *symbol) kind() (err error) {
	start := s.at
	if s.quality, err = s.takeRootQuality(); err != nil {
		return err
	}
	q := s.quality
	s.formula, s.named = root|q.third|q.fifth, q.named
	if err := s.takeNumber(start); err != nil {
		return err
	}
	return s.marks()
}

// takeNumber reads the number after the quality, if there is one.
func (s *symbol) takeNumber(start int) error {
	q := s.quality
	if done, err := s.takeMajorNumber(); done || err != nil {
		return err
	}
	for i := range q.numbers {
		if n := &q.numbers[i]; s.take(n.word) {
			return s.setNumber(n, s.sevenMajor(n), start)
		}
	}
	switch q.after {
	case implied:
		return s.setNumber(seven, q.seventh, start)
	case unfinished:
		return s.syntax(s.at, 0, "no number", "write 7, 9, 11 or 13 here, such as in Cmaj7 or C9")
	}
	return nil
}

// sevenMajor returns the seventh of number n, a major one if M follows, as in
// C7M.
func (s *symbol) sevenMajor(n *number) formula {
	q := s.quality
	if n == seven && q.major && q.seventh == minorSeventh && (s.takeFold("maj") || s.take("M")) {
		return majorSeventh
	}
	return q.seventh
}

// takeMajorNumber reads maj7 to maj13, Δ or, in a minor chord, #7 where they
// follow a quality or begin the marks, and reports whether one was there.
func (s *symbol) takeMajorNumber() (bool, error) {
	if !s.quality.major {
		return false, nil
	}
	start := s.at
	if s.quality == &minor && s.takeOne("#7", "♯7", "+7") >= 0 {
		return true, s.setNumber(seven, majorSeventh, start)
	}
	took, triangle := s.takeMajor()
	if !took {
		return false, nil
	}
	for i := range sevenNumbers {
		if n := &sevenNumbers[i]; s.take(n.word) {
			return true, s.setNumber(n, majorSeventh, start)
		}
	}
	if triangle {
		return true, s.setNumber(seven, majorSeventh, start)
	}
	return true, s.syntax(s.at, 0, "no number", "write 7, 9, 11 or 13 here, such as in Cm(maj7)")
}

// setNumber puts the members of a number in. A major that goes with a number
// speaks of the seventh and no longer names the third.
func (s *symbol) setNumber(n *number, seventh formula, start int) error {
	s.number = n
	s.named = s.named&^majorThird | n.named
	s.stack = n.stack
	if n.seventh {
		s.named |= seventh
	}
	if n.named.any(second | fourth | fifth) {
		s.formula &^= majorThird
	}
	for one := range ((n.stack | s.named) &^ s.formula).all() {
		if f := s.add(one); f != nil {
			return s.contradiction(start, f)
		}
	}
	return nil
}

// contradiction places f in the text from start to here.
func (s *symbol) contradiction(start int, f *fault) error {
	return s.impossible(start, s.at-start, f.reason, f.mend)
}
