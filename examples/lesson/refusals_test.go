package main

import (
	"strings"
	"testing"

	"weft.example/examples/internal/clitest"
)

var refusals = []clitest.Refusal{
	{"an unknown chord", []string{"-chords", "Am | Hm | E"}, "H", "write B for H"},
	{"a B in doubt", []string{"-spelling", "mixed", "-chords", "Am | G/B"}, "B", "write H or Bb"},
	{"a small b in doubt", []string{"-spelling", "mixed", "-chords", "Am | b7"}, "b", "write h or bb"},
	{"a flat on a German B", []string{"-spelling", "german", "-chords", "Am | Bb7"}, "Bb", "write B or Hbb"},
	{"a fret that no instrument has", []string{"-chords", "Am=x-0-2-2-1-37"}, "37", "-chords"},
	{"a fret beyond the instrument", []string{"-chords", "G | Am=x-0-2-2-1-30"}, "x-0-2-2-1-30", "the last fret"},
	{"a fret beyond the capo's reach", []string{"-chords", "Am=x-0-2-2-1-20", "-capo", "5"}, "x-0-2-2-1-20", "19"},
	{"a shape with too few strings", []string{"-chords", "Am=02210"}, "02210", "5 strings in the shape, 6"},
	{"a shape with too many strings", []string{"-chords", "Am=xx02210"}, "xx02210", "7 strings in the shape, 6"},
	{"a muted shape", []string{"-chords", "Am=xxxxxx"}, "xxxxxx", "N.C."},
	{"a shape of silence", []string{"-chords", "N.C.=x02210"}, "x02210", "silence"},
	{"an empty bar", []string{"-chords", "Am | | E"}, "|", "an empty bar"},
	{"an empty chart", []string{"-chords", ""}, "", "no chords"},
	{"a blank chart", []string{"-chords", " \n "}, "", "no chords"},
	{"a repeat without an end", []string{"-chords", "|: Am | E"}, "|:", "no end"},
	{"nothing to repeat", []string{"-chords", "% | Am"}, "%", "before"},
	{"beats that do not fill the bar", []string{"-chords", "Am:3 G:2"}, "G:2", "4/4"},
	{"beats without number", []string{"-chords", "Am:99999999999999999999"}, "99999999999999999999", "beats"},
	{"a figure that is not there", []string{"-chords", "Am@5"}, "Am@5", "no figure 5"},
	{"600 bars", []string{"-chords", strings.Repeat("Am | ", 599) + "Am"}, "Am", "512"},
	{"600 bars by repeats", []string{"-chords", "|: " + strings.Repeat("Am | ", 299) + "Am :|"}, "", "512"},
	{"10 MB of chords", []string{"-chords", strings.Repeat("Am | ", 2_000_000)}, "", "65536"},
	{"10 MB of figure", []string{"-figure", strings.Repeat("5 3 ", 2_500_000)}, "", "65536"},
	{"10 MB of title", []string{"-title", strings.Repeat("la", 5_000_000)}, "", "65536"},
	{"10 MB of tuning", []string{"-tuning", strings.Repeat("E2 ", 3_000_000)}, "", "65536"},
	{"10 MB of meter", []string{"-meter", strings.Repeat("4", 10_000_000)}, "", "65536"},
	{"10 MB of tempo", []string{"-tempo", strings.Repeat("4", 10_000_000)}, "", "whole number"},
	{"10 MB of strokes", []string{"-strokes", strings.Repeat("jig", 3_000_000)}, "", "choose one of"},
	{"10 MB of a flag", []string{"-" + strings.Repeat("x", 10_000_000)}, "", "not defined"},
	{"chords that are not UTF-8", []string{"-chords", "Am | \xff"}, "?", "UTF-8"},
	{"a figure that is not UTF-8", []string{"-figure", "5 3 \xc3 2"}, "?", "UTF-8"},
	{"a title that is not UTF-8", []string{"-title", "Rain \xed\xa0\x80"}, "?", "UTF-8"},
	{"a tuning that is not UTF-8", []string{"-tuning", "E2 \xff"}, "?", "UTF-8"},
	{"NUL in a chord", []string{"-chords", "A\x00m | E"}, "?", "-chords"},
	{"NUL in a figure", []string{"-figure", "5 \x00 3"}, "?", "-figure"},
	{"NUL in a number", []string{"-capo", "1\x00"}, "1?", "-capo"},
	{"wide characters", []string{"-chords", "Am | 和音"}, "和", "-chords"},

	{"a string that the instrument lacks", []string{"-figure", "5 3 7 2"}, "7", "no string 7; the instrument has 6"},
	{"a string that a ukulele lacks", []string{"-tuning", "ukulele", "-figure", "5 3 2 1"}, "5", "the instrument has 4"},
	{"a root that the instrument lacks", []string{"-figure", "root 7: 5 3 2 1"}, "", "7"},
	{"an empty figure", []string{"-figure", ""}, "", "plucks no string"},
	{"a figure of rests", []string{"-figure", ". - ."}, ". - .", "plucks no string"},
	{"an empty bar of a figure", []string{"-figure", "5 3 | | 2"}, "|", "an empty bar"},
	{"no figure after the semicolon", []string{"-figure", "5 3;"}, "", "plucks no string"},
	{"257 slots", []string{"-figure", "1/8: " + strings.Repeat("5 ", 257)}, "5", "256"},
	{"notes without spaces", []string{"-figure", "532123"}, "532123", "5 3 2 1 2 3"},
	{"seven slots", []string{"-figure", "5 3 2 1 2 3 2"}, "5 3 2 1 2 3 2", "7 slots do not divide"},

	{"no tempo", []string{"-tempo", "0"}, "0", "10 to 400"},
	{"a tempo below none", []string{"-tempo", "-5"}, "-5", "10 to 400"},
	{"a tempo too high", []string{"-tempo", "401"}, "401", "10 to 400"},
	{"a tempo in letters", []string{"-tempo", "abc"}, "abc", "whole number"},
	{"a tempo in parts", []string{"-tempo", "66.5"}, "66.5", "whole number"},
	{"an empty tempo", []string{"-tempo", ""}, "", "whole number"},
	{"a tempo without number", []string{"-tempo", "99999999999999999999"}, "99999999999999999999", "whole number"},
	{"a capo off the neck", []string{"-capo", "99"}, "99", "the neck has 24"},
	{"a capo before the nut", []string{"-capo", "-1"}, "-1", "0 means no capo"},
	{"a capo in letters", []string{"-capo", "two"}, "two", "whole number"},
	{"a capo without number", []string{"-capo", "9999999999999999999999"}, "9999999999999999999999", "whole number"},
	{"no meter", []string{"-meter", "fast"}, "fast", "6/8"},
	{"a meter of nothing", []string{"-meter", "0/4"}, "0/4", "6/8"},
	{"a meter without end", []string{"-meter", "4/99999999999999999999"}, "4/99999999999999999999", "6/8"},
	{"no tuning", []string{"-tuning", "sideways"}, "sideways", "drop D"},
	{"thirteen strings", []string{"-tuning", strings.Repeat("E2 ", 13)}, "E2", "13 strings"},
	{"a string too high", []string{"-tuning", "E2 A2 D3 G3 B3 G9"}, "", "MIDI"},
	{"no such hand", []string{"-hand", "both"}, "both", "right, left, turned"},
	{"no such strokes", []string{"-strokes", "sideways"}, "sideways", "rest-stroke"},
	{"no such fit", []string{"-fit", "tight"}, "tight", "contour"},
	{"no such change", []string{"-change", "stop"}, "stop", "restart"},
	{"no such fill", []string{"-fill", "up"}, "up", "again"},
	{"no such count", []string{"-count", "sheep"}, "sheep", "eighths"},
	{"no such format", []string{"-format", "xml"}, "xml", "json"},
	{"no such spelling", []string{"-spelling", "dutch"}, "dutch", "english, german, mixed"},
	{"an empty choice", []string{"-hand", ""}, "", "right, left, turned"},

	{"an unknown flag", []string{"-capo", "2", "-speed", "9"}, "-speed", "-h lists the flags"},
	{"a flag without value", []string{"-once", "-capo"}, "-capo", "needs an argument"},
	{"a truth that is none", []string{"-once=maybe"}, "-once=maybe", "neither true nor false"},
	{"10 MB of a truth", []string{"-once=" + strings.Repeat("y", 10_000_000)}, "", "neither true nor false"},
	{"a stray argument", []string{"-once", "Am", "-capo", "2"}, "Am", "quote"},
	{"a chart without quotes", []string{"-chords", "Am", "|", "G"}, "|", "quote"},
}

func TestBadInputIsRefusedInPlace(t *testing.T) {
	for _, r := range refusals {
		clitest.Main(run).CheckRefusal(t, "lesson", r)
	}
}
