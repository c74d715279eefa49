package picking

// A Silence is a time in which no string sounds, from the start of the passage.
type Silence struct{ From, To Ticks }

// Silences lists the silences of p in turn. In a loop, what rings past the end
// sounds at the start.
func (p Passage) Silences() (list []Silence) {
	end, sounds := p.Length(), Ticks(0) // until when
	for _, pick := range p.Picks() {
		if p.Loop {
			sounds = max(sounds, pick.At+pick.Rings-end)
		}
	}
	for _, pick := range p.Picks() {
		if pick.At > sounds {
			list = append(list, Silence{sounds, pick.At})
		}
		sounds = max(sounds, pick.At+pick.Rings)
	}
	if sounds < end {
		list = append(list, Silence{sounds, end})
	}
	return list
}
