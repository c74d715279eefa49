package changes

import (
	"slices"
	"strconv"

	"weft.example/voicing"
)

// Remarks says in short clauses what helps a player through c: fingers that
// stay down, fingers that go together, and fingers that may come late.
func (c Change) Remarks() []string {
	var remarks []string
	if anchors := c.doing(Stays); len(anchors) > 0 {
		remarks = append(remarks, named(anchors)+" "+verb(anchors, "stays", "stay")+" down")
	}
	if block := c.Block(); block != nil {
		remarks = append(remarks, named(block)+" move as one block")
	}
	return append(remarks, c.remarkTime()...)
}

// Block lists the fingers that keep their form while they go to other strings
// or frets, all by as much, or nil if fewer than two do or if any finger does
// otherwise than them or stay.
func (c Change) Block() []voicing.Finger {
	var block []voicing.Finger
	var way [3]int
	for _, m := range c.Fingers {
		switch m.Act {
		case Stays:
			continue
		case SetsDown, Lifts:
			return nil
		}
		its := [...]int{int(m.To.Thick - m.From.Thick), int(m.To.Thin - m.From.Thin), int(m.To.Fret - m.From.Fret)}
		if block != nil && its != way {
			return nil
		}
		block, way = append(block, m.Finger), its
	}
	if len(block) < 2 {
		return nil
	}
	return block
}

// doing lists the fingers that do act.
func (c Change) doing(act Act) []voicing.Finger {
	var all []voicing.Finger
	for _, m := range c.Fingers {
		if m.Act == act {
			all = append(all, m.Finger)
		}
	}
	return all
}

// remarkTime speaks of what the first pluck needs, and of the fingers that
// have time.
func (c Change) remarkTime() []string {
	if c.First == 0 || len(c.Fingers) == 0 {
		return nil
	}
	how := "open"
	if c.Stopped != 0 {
		how = "stopped by " + c.Stopped.String()
	}
	remarks := []string{"string " + digits(c.First) + " is plucked first, " + how}
	for _, m := range c.Fingers {
		switch {
		case m.Act == Stays || m.Spare == 0:
		case m.Spare < 0:
			remarks = append(remarks, "no pluck needs "+m.Finger.String()+" in time")
		default:
			remarks = append(remarks, m.Finger.String()+" has time: "+count(m.Spare, "pluck passes", "plucks pass")+" before it is needed")
		}
	}
	return remarks
}

// Remarks says in short clauses which change is the hardest, and what is amiss
// with the voicings; see [voicing.Voicing.Remarks].
func (p Path) Remarks() []string {
	var remarks []string
	if p.Worst >= 0 {
		c := p.Changes[p.Worst]
		remarks = append(remarks, "the hardest change is from "+p.name(c.From)+" to "+p.name(c.To)+
			", chords "+digits(c.From+1)+" and "+digits(c.To+1))
	}
	for i, g := range p.Grips {
		if g == (Grip{}) || slices.Contains(p.Grips[:i], g) {
			continue
		}
		for _, remark := range g.Voicing.Remarks() {
			remarks = append(remarks, p.name(i)+": "+remark)
		}
	}
	return remarks
}

// name names the grip of step i: F 133211.
func (p Path) name(i int) string {
	v := p.Grips[i].Voicing
	return v.Chord().String() + " " + v.Shape().String()
}

// named lists fingers as a sentence does: index, middle and ring.
func named(all []voicing.Finger) string {
	text := ""
	for i, f := range all {
		switch {
		case i == 0:
		case i == len(all)-1:
			text += " and "
		default:
			text += ", "
		}
		text += f.String()
	}
	return text
}

func verb(all []voicing.Finger, one, more string) string {
	if len(all) == 1 {
		return one
	}
	return more
}

// digits prints a count, a string or a fret for a sentence.
func digits[N ~int](n N) string { return strconv.Itoa(int(n)) }

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return digits(n) + " " + more
}
