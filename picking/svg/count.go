package svg

import (
	"strconv"

	"weft.example/picking"
)

// A counter counts bars aloud, by the meter's beat; 6/8 it counts as six. Each
// bar is counted in words as fine as its notes need: 1 & for a beat in two,
// 1 & a in three, 1 e & a in four (common practice).
type counter struct{ beat picking.Ticks }

func newCounter(m picking.Meter) counter {
	if m.Compound() && m.Bar() == 2*m.Beat() {
		return counter{m.UnitTicks()}
	}
	return counter{m.Beat()}
}

// A word is said at a time.
type word struct {
	at   picking.Ticks
	text string
}

// syllables are what is said on a beat's later parts, by how many there are.
var syllables = [5][]string{2: {"&"}, 3: {"&", "a"}, 4: {"e", "&", "a"}}

// words returns the count of a bar in which things happen at the given times.
func (c counter) words(bar picking.Bar, times []picking.Ticks) []word {
	words := make([]word, 0, len(times)+8)
	for k, d := range c.divisions(bar, times) {
		at := bar.At + picking.Ticks(k)*c.beat
		words = append(words, word{at, strconv.Itoa(k + 1)})
		for j, syllable := range syllables[d] {
			words = append(words, word{at + picking.Ticks(j+1)*c.beat/picking.Ticks(d), syllable})
		}
	}
	for words[len(words)-1].at >= bar.At+bar.Length { // of a bar that ends within a beat
		words = words[:len(words)-1]
	}
	return words
}

// divisions returns into how many words each beat goes.
func (c counter) divisions(bar picking.Bar, times []picking.Ticks) []int {
	parts := make([]int, (bar.Length+c.beat-1)/c.beat)
	for k := range parts {
		parts[k] = 1
	}
	for _, t := range times {
		k, off := (t-bar.At)/c.beat, (t-bar.At)%c.beat
		parts[k] = lcm(parts[k], int(c.beat/gcd(c.beat, off)))
	}
	usual := usualDivision(parts)
	for k := range parts {
		parts[k] = division(parts[k], usual)
	}
	return parts
}

// usualDivision returns into how many words those beats go in which nothing
// happens.
func usualDivision(parts []int) int {
	usual, triple := 1, false
	for _, n := range parts {
		if n%3 == 0 {
			triple = true
		} else {
			usual = max(usual, even(n))
		}
	}
	if usual == 1 && triple {
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
func even(n int) int { return int(gcd(4, picking.Ticks(n))) }

func gcd(a, b picking.Ticks) picking.Ticks {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func lcm(a, b int) int { return a / int(gcd(picking.Ticks(a), picking.Ticks(b))) * b }
