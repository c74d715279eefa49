package voicing_test

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// This file tries every finger on every string and keeps what the rules allow,
// written as the documentation of Fingering states them, and prices it as that
// of Cost does. Only two rules that speak of pairs of strings turn back early.

// A grip says which finger stops each fretted string of a voicing.
type grip struct {
	voicing.Voicing
	finger map[fretboard.StringNumber]voicing.Finger
}

// everyGrip lists the grips of v that keep the rules.
func everyGrip(v voicing.Voicing) []grip {
	if low, high := ends(held(v)); len(held(v)) > 0 && place(v, high)-place(v, low) > 1500 {
		return nil // the frets held lie at most 150 mm apart
	}
	var kept []grip
	g := grip{v, map[fretboard.StringNumber]voicing.Finger{}}
	strings := slices.Sorted(maps.Keys(held(v)))
	var choose func(i int)
	choose = func(i int) {
		if i == len(strings) {
			if g.keepsTheRulesOfBarres() {
				kept = append(kept, grip{v, maps.Clone(g.finger)})
			}
			return
		}
		for f := voicing.Index; f <= voicing.Little; f++ {
			g.finger[strings[i]] = f
			if g.keepsOrder(strings[i], strings[:i]) {
				choose(i + 1)
			}
		}
		delete(g.finger, strings[i])
	}
	choose(0)
	return kept
}

func (g grip) fret(s fretboard.StringNumber) fretboard.Fret {
	f, _ := g.Shape().Fret(s)
	return f
}

// nearerFloor reports whether string a lies nearer the floor than string b.
func (g grip) nearerFloor(a, b fretboard.StringNumber) bool {
	if g.Instrument().Hand == fretboard.LeftTurned { // string 1 is uppermost
		return a > b
	}
	return a < b
}

// keepsOrder: a finger lies at one fret; a higher finger lies at a higher fret
// or, at the same one, nearer the floor.
func (g grip) keepsOrder(s fretboard.StringNumber, others []fretboard.StringNumber) bool {
	for _, o := range others {
		high, low := s, o
		if g.finger[high] < g.finger[low] {
			high, low = low, high
		}
		same := g.fret(high) == g.fret(low)
		switch {
		case g.finger[high] == g.finger[low] && !same,
			g.finger[high] > g.finger[low] && g.fret(high) < g.fret(low),
			g.finger[high] > g.finger[low] && same && !g.nearerFloor(high, low):
			return false
		}
	}
	return true
}

// crossed lists the strings from the thickest to the thinnest that f stops.
func (g grip) crossed(f voicing.Finger) []fretboard.StringNumber {
	var stopped, crossed []fretboard.StringNumber
	for s, by := range g.finger {
		if by == f {
			stopped = append(stopped, s)
		}
	}
	if len(stopped) == 0 {
		return nil
	}
	for s := slices.Max(stopped); s >= slices.Min(stopped); s-- {
		crossed = append(crossed, s)
	}
	return crossed
}

func (g grip) keepsTheRulesOfBarres() bool {
	for f := voicing.Index; f <= voicing.Little; f++ {
		if crossed := g.crossed(f); len(crossed) > 1 && !(g.mayCross(f, crossed) && g.leavesFree(crossed)) {
			return false
		}
	}
	return true
}

// mayCross: no finger lies on an open string; what the index finger crosses is
// stopped by it, or higher by others, or muted; what another finger crosses is
// two to four strings, all stopped by it.
func (g grip) mayCross(f voicing.Finger, crossed []fretboard.StringNumber) bool {
	for _, s := range crossed {
		by, fretted := g.finger[s]
		own, open := fretted && by == f, !fretted && g.Sounding().Has(s)
		higher := fretted && g.fret(s) > g.fret(crossed[0])
		if open || f != voicing.Index && !own || fretted && !own && !higher {
			return false
		}
	}
	return f == voicing.Index || len(crossed) <= 4
}

// leavesFree: across three strings or more, a barre leaves nothing to sound
// open or at a lower fret on its floor side.
func (g grip) leavesFree(crossed []fretboard.StringNumber) bool {
	for s := range g.Sounding().Thinnest() {
		beside := true
		for _, c := range crossed {
			beside = beside && g.nearerFloor(s, c)
		}
		if len(crossed) >= 3 && beside && g.fret(s) < g.fret(crossed[0]) {
			return false
		}
	}
	return true
}

// cost prices g by the words of Cost.
func (g grip) cost() voicing.Cost {
	var c voicing.Cost
	var last voicing.Finger
	for f := voicing.Index; f <= voicing.Little; f++ {
		crossed := g.crossed(f)
		if crossed == nil {
			continue
		}
		c.Fingers += voicing.FingerPrice + voicing.CurlPrice*g.above(crossed)
		if f == voicing.Little {
			c.Fingers += voicing.LittlePrice
		}
		if len(crossed) > 1 {
			c.Barre += g.barre(f, crossed)
		}
		if last > 0 {
			before := g.crossed(last)
			c.Spread += voicing.SpreadPrice * spacings(before, crossed)
			off := float64(place(g.Voicing, g.fret(crossed[0]))-place(g.Voicing, g.fret(before[0]))) -
				voicing.RestTenths*float64(f-last)
			c.Splay += int(off * off / 100 / voicing.SplayShare)
		}
		last = f
	}
	return c
}

func (g grip) barre(f voicing.Finger, crossed []fretboard.StringNumber) int {
	n := len(crossed)
	price := voicing.BarrePrice + voicing.CrossingPrice*n
	for _, s := range crossed {
		if g.Sounding().Has(s) {
			continue
		}
		touched := g.fret(s+1) > g.fret(crossed[0]) || g.fret(s-1) > g.fret(crossed[0])
		if touched {
			price += voicing.DampedPrice
		} else {
			price += voicing.SlackPrice
		}
	}
	if f > voicing.Index {
		price = voicing.OtherBarrePrice + voicing.OtherCrossingPrice*n
	}
	if f == voicing.Little {
		price += voicing.LittleCrossingPrice * n
	}
	beyond := crossed[0] + 1
	if g.Instrument().Hand == fretboard.LeftTurned {
		beyond = crossed[n-1] - 1
	}
	if fret, sounds := g.Shape().Fret(beyond); sounds && fret == 0 {
		price += voicing.TipPrice
	}
	return price
}

// above counts the strings between a finger and the ceiling.
func (g grip) above(crossed []fretboard.StringNumber) int {
	n := 0
	for s := g.Shape().Strings(); s >= 1; s-- {
		if !slices.ContainsFunc(crossed, func(c fretboard.StringNumber) bool { return !g.nearerFloor(c, s) }) {
			n++
		}
	}
	return n
}

// spacings counts the string spacings between two fingers, 0 where one reaches
// past the other.
func spacings(a, b []fretboard.StringNumber) int {
	least := math.MaxInt
	for _, s := range a {
		for _, t := range b {
			least = min(least, max(int(s-t), int(t-s)))
		}
	}
	return least
}

// place returns how far fret f lies from the capo, in tenths of a millimetre.
// Each fret is rounded from the bridge, as everything is that ranks.
func place(v voicing.Voicing, f fretboard.Fret) int {
	from := func(f fretboard.Fret) int {
		return int(math.Round(float64(fretboard.FromBridge(v.Instrument().Scale, v.Instrument().Capo+f)) * 10))
	}
	return from(0) - from(f)
}

// compare orders grips by cost; of two that cost the same, first the one that
// lays the lower fingers across more strings, then the one with the lower
// fingers.
func (g grip) compare(h grip) int {
	return cmp.Or(cmp.Compare(g.cost().Total(), h.cost().Total()),
		slices.Compare(h.across(), g.across()), slices.Compare(g.used(), h.used()))
}

// across lists how many strings each finger on the neck stops.
func (g grip) across() []int {
	var across []int
	for _, f := range g.used() {
		n := 0
		for _, by := range g.finger {
			if by == f {
				n++
			}
		}
		across = append(across, n)
	}
	return across
}

// used lists the fingers on the neck.
func (g grip) used() []voicing.Finger {
	var used []voicing.Finger
	for f := voicing.Index; f <= voicing.Little; f++ {
		if g.crossed(f) != nil {
			used = append(used, f)
		}
	}
	return used
}

// ofFingers returns the terms of c that depend on the fingers.
func ofFingers(c voicing.Cost) voicing.Cost {
	return voicing.Cost{Fingers: c.Fingers, Spread: c.Spread, Splay: c.Splay, Barre: c.Barre}
}

// String prints g as a Fingering prints.
func (g grip) String() string {
	text := ""
	for s := g.Shape().Strings(); s >= 1; s-- {
		switch f, fretted := g.finger[s]; {
		case fretted:
			text += string('0' + rune(f))
		case g.Sounding().Has(s):
			text += "0"
		default:
			text += "x"
		}
	}
	return text
}
