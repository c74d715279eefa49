package main

import (
	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// A heading begins every answer.
type heading struct {
	Version int      `json:"version"`
	Asked   string   `json:"asked"`
	Tuning  string   `json:"tuning"`
	Capo    int      `json:"capo"`
	Hand    string   `json:"hand"`
	Limits  []string `json:"limits"`
}

func (s *setting) heading() heading {
	return heading{1, s.verb, s.instrument.Tuning.String(), int(s.instrument.Capo), s.instrument.Hand.String(), s.told}
}

// A held is a shape with the fingers that hold it.
type held struct {
	Chord   string   `json:"chord"`
	Shape   string   `json:"shape"`
	Fingers string   `json:"fingers"`
	Start   start    `json:"start"`
	Hold    string   `json:"hold"`
	Effort  int      `json:"effort"`
	Cost    int      `json:"cost"`
	Hand    []string `json:"hand"`
	Sound   []string `json:"sound"`
	Words   []string `json:"words"`

	box box.Box
}

type start struct {
	String int    `json:"string"`
	Reason string `json:"reason"`
}

// hold describes a voicing held with a fingering, or with none where it cannot
// be held. Which fingering it is changes the price.
func (s *setting) hold(v voicing.Voicing, f voicing.Fingering) held {
	b := box.Of(v)
	cost := v.Cost()
	if with, err := b.With(f); err == nil {
		b = with
		own := f.Cost()
		cost.Fingers, cost.Spread, cost.Splay, cost.Barre = own.Fingers, own.Spread, own.Splay, own.Barre
	}
	h := held{
		Chord: v.Chord().String(), Shape: v.Shape().String(), Fingers: f.String(),
		Start:  start{int(v.Start().String), v.Start().Reason.String()},
		Effort: cost.Effort(), Hold: holdWord(cost.Effort()), Hand: handWords(v, f, cost),
		Cost: points(cost.Weighed(s.limits.Weights)), Sound: soundWords(v, cost), Words: b.Words(), box: b,
	}
	if unheld, ok := b.Unheld().(fretboard.Located); ok {
		h.Fingers, h.Hold, h.Hand = "", "impossible", unheldWords(v, unheld.Where().Reason)
	}
	return h
}

// points rounds hundredths of a point.
func points(hundredths int) int { return (hundredths + 50) / 100 }
