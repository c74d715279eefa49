package picking

import (
	"strconv"

	"weft.example/fretboard"
)

// CountWords chooses the words of the count. A number counts one beat, and
// between the numbers stand the words of common practice: 1 & for a beat in
// two, 1 & a for a beat in three, 1 e & a for a beat in four. Finer notes than
// these fall between the words, which have no common names.
type CountWords uint8

// The ways of counting.
//
// CountAuto counts the meter's beats, each bar in words as fine as its notes
// need: 1 & 2 & for eighths in 4/4, 1 e & a for sixteenths, 1 & a for
// triplets. 6/8 it counts as six, 1 2 3 4 5 6; longer compound bars by the
// beat, 12/8 as 1 & a 2 & a 3 & a 4 & a, for ten, eleven and twelve are too
// long to say in time.
//
// CountBeats counts the meter's beats, 6/8 as 1 & a 2 & a, and CountUnits the
// notes that the meter's lower figure names, 6/8 as six; both in words as fine
// as the notes need.
//
// CountEighths gives every eighth a word, whatever the notes: 4/4 is 1 & 2 & 3
// & 4 &, 6/8 is 1 & a 2 & a. CountSixteenths gives every sixteenth one: 4/4 is
// 1 e & a 2 e & a, 6/8 is 1 & 2 & 3 & 4 & 5 & 6 &. A beat in triplets keeps
// its three words.
const (
	CountAuto CountWords = iota
	CountBeats
	CountUnits
	CountEighths
	CountSixteenths
)

var countNames = [...]string{"auto", "beats", "units", "eighths", "sixteenths"}

// String returns auto, beats, units, eighths or sixteenths.
func (c CountWords) String() string {
	if int(c) < len(countNames) {
		return countNames[c]
	}
	return strconv.Itoa(int(c))
}

// ParseCountWords reads auto, beats, units, eighths or sixteenths.
func ParseCountWords(text string) (CountWords, error) {
	i, err := fretboard.ParseName("count", countNames[:], text)
	return CountWords(i), err
}

// A counter counts bars aloud.
type counter struct {
	beat  Ticks // from number to number
	fixed int   // words to the beat, or 0 for as many as the notes need
}

// Beat returns how far it is in meter m from one number of the count to the
// next.
func (c CountWords) Beat(m Meter) Ticks { return c.in(m).beat }

func (c CountWords) in(m Meter) counter {
	six := m.Compound() && m.Bar() == 2*m.Beat()
	switch {
	case c == CountEighths:
		return counting(m, TicksPerQuarter/2)
	case c == CountSixteenths:
		return counting(m, TicksPerQuarter/4)
	case c == CountUnits, c == CountAuto && six:
		return counter{beat: m.UnitTicks()}
	}
	return counter{beat: m.Beat()}
}

// counting gives every note of a value a word, as far as there are words: a
// beat in six has none and is counted as three beats in two.
func counting(m Meter, value Ticks) counter {
	words := int(m.Beat() / value)
	if words == 6 {
		return counter{m.UnitTicks(), 2}
	}
	return counter{m.Beat(), min(max(words, 1), 4)}
}

// A CountWord is said at a time from the start of the passage.
type CountWord struct {
	At   Ticks
	Text string
}

// syllables are what is said on a beat's later parts, by how many there are.
var syllables = [5][]string{2: {"&"}, 3: {"&", "a"}, 4: {"e", "&", "a"}}

// Words returns the count of a bar of meter m in which things happen at the
// given times, from the start of the passage.
func (c CountWords) Words(m Meter, bar Bar, times []Ticks) []CountWord {
	return c.in(m).words(bar, times)
}

func (c counter) words(bar Bar, times []Ticks) []CountWord {
	words := make([]CountWord, 0, len(times)+8)
	for k, d := range c.divisions(bar, times) {
		at := bar.At + Ticks(k)*c.beat
		words = append(words, CountWord{at, strconv.Itoa(k + 1)})
		for j, syllable := range syllables[d] {
			words = append(words, CountWord{at + Ticks(j+1)*c.beat/Ticks(d), syllable})
		}
	}
	for words[len(words)-1].At >= bar.At+bar.Length { // of a bar that ends within a beat
		words = words[:len(words)-1]
	}
	return words
}

// divisions returns into how many words each beat goes.
func (c counter) divisions(bar Bar, times []Ticks) []int {
	parts := make([]int, (bar.Length+c.beat-1)/c.beat)
	for k := range parts {
		parts[k] = 1
	}
	for _, t := range times {
		k, off := (t-bar.At)/c.beat, (t-bar.At)%c.beat
		parts[k] = lcm(parts[k], int(c.beat/gcd(c.beat, off)))
	}
	usual := c.usual(parts)
	for k := range parts {
		parts[k] = division(parts[k], usual)
	}
	return parts
}

// usual returns into how many words those beats go in which nothing happens.
func (c counter) usual(parts []int) int {
	usual, triple := 1, false
	for _, n := range parts {
		if n%3 == 0 {
			triple = true
		} else {
			usual = max(usual, even(n))
		}
	}
	switch {
	case c.fixed > 0:
		return c.fixed
	case usual == 1 && triple:
		return 3
	}
	return usual
}

// division returns into how many words a beat goes that falls into n parts.
func division(n, usual int) int {
	switch {
	case n%3 == 0:
		return 3
	case n > 1 && usual == 3:
		return even(n)
	}
	return usual
}

// even returns the most words, 1, 2 or 4, that fit into n parts.
func even(n int) int { return int(gcd(4, Ticks(n))) }

func gcd(a, b Ticks) Ticks {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func lcm(a, b int) int { return a / int(gcd(Ticks(a), Ticks(b))) * b }
