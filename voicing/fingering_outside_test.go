package voicing_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/voicing"
)

// TestFingersOfOutsideShapes holds our fingerings against those of the 2018
// shapes of @tombatossals/chords-db 0.5.1 (npm, MIT) and prints what comes out:
// for at least 95 % ours costs no more, and none of ours breaks a rule. Where
// the set's fingering breaks one, the table says which.
func TestFingersOfOutsideShapes(t *testing.T) {
	f := fingers{broken: map[string][]string{}}
	for _, fields := range tableOf(t, "testdata/chords-db-0.5.1.tsv") {
		if strings.HasSuffix(fields[0], "alt") || strings.HasSuffix(fields[0], "7sg") {
			continue
		}
		for _, entry := range strings.Fields(fields[1]) {
			shape, theirs, _ := strings.Cut(entry, ":")
			f.add(t, mustVoicing(t, fretboard.Instrument{}, fields[0], shape), theirs)
		}
	}
	t.Log(f)
	if f.all != 2018 {
		t.Errorf("%d fingerings, want 2018", f.all)
	}
	if got := share(f.same+f.cheaper+f.theirsBroken, f.all); got < 95 {
		t.Errorf("ours costs no more than theirs for %.1f %%, want 95", got)
	}
}

// fingers counts how our fingerings compare with outside ones.
type fingers struct {
	all, same, cheaper, dearer, theirsBroken, none int
	broken                                         map[string][]string // theirs, by the rule that they break
}

// add compares one fingering, which gives each string of v a finger or 0.
func (f *fingers) add(t testing.TB, v voicing.Voicing, theirs string) {
	f.all++
	ours, err := v.Fingering()
	if err != nil {
		f.none++
	} else if !isAmong(everyGrip(v), ours.String()) {
		t.Errorf("%s: %s breaks a rule", v.Shape(), ours)
	}
	outside := outsideGrip(v, theirs)
	if rule := outside.breaks(); rule != "" {
		f.theirsBroken++
		f.broken[rule] = append(f.broken[rule], fmt.Sprint(v.Shape(), " ", theirs))
		return
	}
	switch over := outside.cost().Total() - ours.Cost().Total(); {
	case err != nil || over < 0:
		f.dearer++
		t.Errorf("%s: %s costs less than %s", v.Shape(), theirs, ours)
	case ours.String() == outside.String():
		f.same++
	default:
		f.cheaper++
	}
}

func isAmong(grips []grip, text string) bool {
	return slices.ContainsFunc(grips, func(g grip) bool { return g.String() == text })
}

// outsideGrip reads a finger for each string of v.
func outsideGrip(v voicing.Voicing, theirs string) grip {
	g := grip{v, map[fretboard.StringNumber]voicing.Finger{}}
	for i, digit := range theirs {
		if digit != '0' {
			g.finger[v.Shape().Strings()-fretboard.StringNumber(i)] = voicing.Finger(digit - '0')
		}
	}
	return g
}

// breaks names the first rule that g breaks, or nothing.
func (g grip) breaks() string {
	if !maps.EqualFunc(g.finger, held(g.Voicing), func(voicing.Finger, fretboard.Fret) bool { return true }) {
		return "a finger on an open or muted string, or none on a fretted one"
	}
	used := slices.Collect(maps.Keys(g.finger))
	for _, s := range used {
		if !g.keepsOrder(s, used) {
			return "the order of the fingers"
		}
	}
	for f := voicing.Index; f <= voicing.Little; f++ {
		crossed := g.crossed(f)
		switch {
		case len(crossed) < 2:
		case !g.mayCross(f, crossed):
			return "what a barre may cross"
		case !g.leavesFree(crossed):
			return "what a barre leaves free on its floor side"
		}
	}
	return ""
}

func (f fingers) String() string {
	var b strings.Builder
	line := func(what string, n int) { fmt.Fprintf(&b, "%-44s %5d, %.1f %%\n", what, n, share(n, f.all)) }
	fmt.Fprintf(&b, "outside fingerings: %d\n", f.all)
	line("ours is the same", f.same)
	line("ours costs no more than theirs", f.cheaper)
	line("theirs costs less", f.dearer)
	line("theirs breaks a rule that ours keep", f.theirsBroken)
	line("of these, four fingers cannot hold the shape", f.none)
	for _, rule := range slices.Sorted(maps.Keys(f.broken)) {
		fmt.Fprintf(&b, "  %s: %d, %s\n", rule, len(f.broken[rule]), strings.Join(f.broken[rule], ", "))
	}
	return b.String()
}
