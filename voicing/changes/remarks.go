package changes

import (
	"fmt"
	"slices"

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
	first := fmt.Sprintf("string %d is plucked first, open", c.First)
	if c.Stopped != 0 {
		first = fmt.Sprintf("string %d is plucked first, stopped by %s", c.First, c.Stopped)
	}
	remarks := []string{first}
	for _, m := range c.Fingers {
		switch {
		case m.Act == Stays || m.Spare == 0:
		case m.Spare < 0:
			remarks = append(remarks, fmt.Sprintf("no pluck needs %s in time", m.Finger))
		default:
			remarks = append(remarks, fmt.Sprintf("%s has time: %s before it is needed", m.Finger, count(m.Spare, "pluck passes", "plucks pass")))
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
		remarks = append(remarks, fmt.Sprintf("the hardest change is from %s to %s, chords %d and %d",
			p.name(c.From), p.name(c.To), c.From+1, c.To+1))
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

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
