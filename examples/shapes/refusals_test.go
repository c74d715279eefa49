package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"weft.example/examples/internal/clitest"
)

var refusals = []clitest.Refusal{
	{"nothing asked for", nil, "", "give one of -chord -name -path -capo"},
	{"nothing asked for but how", []string{"-tuning", "ukulele"}, "", "nothing is asked for"},
	{"two things", []string{"-chord", "C", "-name", "x32010"}, "-name", "one of -chord -name -path -capo at a time"},
	{"two things the other way round", []string{"-name=x32010", "-once", "-chord=C"}, "-chord=C", "a second thing"},
	{"three things", []string{"-path", "C", "-capo", "C", "-chord", "C"}, "-chord", "a second thing"},
	{"a value like a flag", []string{"-chord", "-name"}, "-", "no root"},
	{"a flag that does not serve", []string{"-chord", "C", "-key", "G"}, "-key", "it does not serve -chord; leave it out"},
	{"the first of two that do not serve", []string{"-count", "3", "-name", "x32010", "-low", "5"}, "-count", "it does not serve -name"},
	{"a capo for the capo", []string{"-capo", "C", "-behind", "2"}, "-behind", "it does not serve -capo"},
	{"a flag given twice", []string{"-chord", "C", "-chord", "D"}, "-chord", "-chord is given a second time; give it once"},
	{"a truth given twice", []string{"-closed", "-chord", "C", "-closed=false"}, "-closed=false", "-closed is given a second time"},
	{"a limit given twice, and its value a flag's name", []string{"-name", "-count", "-count", "-1", "--count=2"}, "--count=2", "a second time"},
	{"an unknown flag", []string{"-chord", "C", "-speed", "9"}, "-speed", "-h lists the flags"},
	{"a flag without value", []string{"-chord"}, "-chord", "needs an argument"},
	{"a truth that is none", []string{"-chord", "C", "-closed=maybe"}, "-closed=maybe", "neither true nor false"},
	{"a stray argument", []string{"-chord", "C", "G"}, "G", "quote"},
	{"10 MB of a flag", []string{"-" + strings.Repeat("x", 10_000_000)}, "", "not defined"},

	{"no chord", []string{"-chord", ""}, "", "no root"},
	{"an unknown chord", []string{"-chord", "Xm"}, "", "-chord, byte 0"},
	{"a chord with too much", []string{"-chord", "Am7foo"}, "", "-chord"},
	{"a chord that contradicts itself", []string{"-chord", "Cm7sus4"}, "", "-chord"},
	{"silence", []string{"-chord", "N.C."}, "N.C.", "silence has no shape"},
	{"German in English", []string{"-chord", "H7"}, "H", "write B for H"},
	{"a B in doubt", []string{"-chord", "B7", "-spelling", "mixed"}, "B", "write H or Bb"},
	{"10 MB of chord", []string{"-chord", strings.Repeat("C", 10_000_000)}, "", "65536"},
	{"a chord that is not UTF-8", []string{"-chord", "C\xff"}, "?", "UTF-8"},
	{"no playable shape", []string{"-chord", "C13", "-tuning", "E2 E2"}, "C13", "try a chord of fewer tones or another tuning"},
	{"no shape within the limits", []string{"-chord", "Fmaj7", "-closed", "-fingers", "1"}, "Fmaj7", "widen -fingers -closed, or"},
	{"no count", []string{"-chord", "C", "-count", "0"}, "0", "choose 1 to 100"},
	{"a count too high", []string{"-chord", "C", "-count", "101"}, "101", "choose 1 to 100"},
	{"a count in letters", []string{"-chord", "C", "-count", "few"}, "few", "whole number"},
	{"a low fret in letters", []string{"-chord", "C", "-low", "five"}, "five", "whole number"},
	{"a low fret below the nut", []string{"-chord", "C", "-low", "-1"}, "-1", "choose 1 to 24"},
	{"a low fret at the nut", []string{"-chord", "C", "-low", "0"}, "0", "choose 1 to 24"},
	{"a low fret off the neck", []string{"-path", "C", "-low", "25"}, "25", "choose 1 to 24"},
	{"a low fret above the high one", []string{"-chord", "C", "-low", "7", "-high", "5"}, "7", "choose 1 to 5"},
	{"a high fret off the neck", []string{"-chord", "C", "-high", "25"}, "25", "the last fret from the capo is 24"},
	{"a high fret off the neck behind the capo", []string{"-chord", "C", "-high", "23", "-behind", "2"}, "23", "the last fret from the capo is 22; choose 1 to 22"},
	{"no high fret", []string{"-capo", "C", "-high", "0"}, "0", "choose 1 to 24"},
	{"a high fret in parts", []string{"-chord", "C", "-high", "5.5"}, "5.5", "whole number"},
	{"a span below none", []string{"-chord", "C", "-span", "-3"}, "-3", "such as 105"},
	{"no span", []string{"-chord", "C", "-span", "0"}, "0", "choose 1 to 150"},
	{"a span too wide", []string{"-chord", "C", "-span", "150.5"}, "150.5", "choose 1 to 150"},
	{"a span without end", []string{"-chord", "C", "-span", "Inf"}, "Inf", "not a length"},
	{"a span in another base", []string{"-chord", "C", "-span", "0x1p3"}, "0x1p3", "not a length"},
	{"a span with a power", []string{"-chord", "C", "-span", "1e2"}, "1e2", "not a length"},
	{"a span of a million digits", []string{"-chord", "C", "-span", strings.Repeat("9", 1_000_000)}, "", "choose 1 to 150"},
	{"a span in words", []string{"-chord", "C", "-span", "wide"}, "wide", "such as 105"},
	{"a span that is no number", []string{"-chord", "C", "-span", "NaN"}, "NaN", "such as 105"},
	{"no fingers", []string{"-chord", "C", "-fingers", "0"}, "0", "choose 1 to 4"},
	{"five fingers", []string{"-chord", "C", "-fingers", "5"}, "5", "1 to 4"},
	{"a string that is not there", []string{"-chord", "C", "-sounding", "5 4 7"}, "7", "strings 1 to 6"},
	{"string 0", []string{"-chord", "C", "-sounding", "0"}, "0", "strings 1 to 6"},
	{"no string", []string{"-chord", "C", "-sounding", ","}, ",", "no string is named"},
	{"no string at all", []string{"-chord", "C", "-sounding", ""}, "", "no string is named"},
	{"a string with a sign", []string{"-chord", "C", "-sounding", "+4"}, "+4", "not a string number"},
	{"a string by its note", []string{"-chord", "C", "-sounding", "5 D"}, "D", "such as 4 3 2"},
	{"strings that are not UTF-8", []string{"-chord", "C", "-sounding", "5 \xff"}, "?", "UTF-8"},

	{"no shape", []string{"-name", ""}, "", "no strings"},
	{"letters for a shape", []string{"-name", "Am"}, "A", "neither a fret nor x"},
	{"a shape with too few strings", []string{"-name", "02210"}, "02210", "5 strings in the shape, 6"},
	{"a guitar's shape on a ukulele", []string{"-name", "x02210", "-tuning", "ukulele"}, "x02210", "6 strings in the shape, 4"},
	{"a muted shape", []string{"-name", "xxxxxx"}, "xxxxxx", "let one string sound"},
	{"a fret off the neck", []string{"-name", "x-0-2-2-1-30"}, "x-0-2-2-1-30", "the last fret"},
	{"a fret that no instrument has", []string{"-name", "x-0-2-2-1-37"}, "37", "-name"},
	{"no key", []string{"-name", "x02210", "-key", ""}, "", "-key"},
	{"an unknown key", []string{"-name", "x02210", "-key", "Q"}, "Q", "-key"},
	{"a key with too many sharps", []string{"-name", "x02210", "-key", "G#"}, "", "-key"},
	{"a German key in doubt", []string{"-name", "x02210", "-key", "B", "-spelling", "mixed"}, "B", "write H or Bb"},
	{"a German key that is none", []string{"-name", "x02210", "-key", "Hx", "-spelling", "german"}, "", "-key"},
	{"a key that is not UTF-8", []string{"-name", "x02210", "-key", "\xff"}, "?", "-key"},

	{"an empty chart", []string{"-path", ""}, "", "no chords"},
	{"an empty bar", []string{"-path", "Am | | E"}, "|", "an empty bar"},
	{"an unknown chord of a song", []string{"-path", "Am | Hm | E"}, "H", "write B for H"},
	{"nothing but silence", []string{"-path", "N.C. | %"}, "N.C.", "no chord sounds"},
	{"nothing but silence for the capo", []string{"-capo", "N.C."}, "N.C.", "no chord sounds"},
	{"a shape of too few strings in a song", []string{"-path", "Am | G=0003"}, "G=0003", "4 strings in the shape, 6"},
	{"a shape that no hand holds", []string{"-path", "Am | G=356463 C"}, "G=356463", "-path"},
	{"a chord that no shape sounds", []string{"-path", "|: C | C13 :| C", "-tuning", "E2 C3"}, "", "name its shape"},
	{"a chord that no shape within the limits sounds", []string{"-path", "Am|Fmaj7 ", "-fingers", "1", "-closed"}, "Fmaj7", "widen -fingers -closed, or"},
	{"a repeat without an end", []string{"-path", "|: Am | E"}, "|:", "no end"},
	{"600 bars", []string{"-path", strings.Repeat("Am | ", 599) + "Am"}, "Am", "512"},
	{"600 bars by repeats", []string{"-path", "|: " + strings.Repeat("Am | ", 299) + "Am :|"}, "", "512"},
	{"3000 chords", []string{"-path", strings.Repeat("Am C ", 1500)}, "", "more than 2048 chords"},
	{"10 MB of chart", []string{"-path", strings.Repeat("Am | ", 2_000_000)}, "", "65536"},
	{"a chart that is not UTF-8", []string{"-path", "Am | \xff"}, "?", "UTF-8"},
	{"wide characters", []string{"-path", "Am | 和音"}, "和", "-path"},
	{"no such aim", []string{"-path", "Am | C", "-aim", "best"}, "best", "total, worst"},
	{"a figure that plucks nothing", []string{"-path", "Am | C", "-figure", ". -"}, ". -", "plucks no string"},
	{"an empty figure", []string{"-path", "Am | C", "-figure", ""}, "", "plucks no string"},
	{"a figure on a string that is not there", []string{"-path", "C", "-tuning", "ukulele", "-figure", "4 3; 1/8: 5d 3"}, "5d", "no string 5; the instrument has 4"},
	{"a root on a string that is not there", []string{"-path", "C", "-tuning", "ukulele", "-figure", "root 6: 4 3"}, "6", "no string 6"},
	{"a figure that is not given", []string{"-path", "Am | C@2", "-figure", "5 3"}, "C@2", "no figure 2; there are 1"},
	{"no chords for the capo", []string{"-capo", " "}, "", "no chords"},
	{"an unknown chord for the capo", []string{"-capo", "Bb Ebb Xm"}, "X", "-capo"},
	{"a shape for the capo", []string{"-capo", "Bb Eb=xx1343"}, "Eb=xx1343", "leave out =xx1343"},
	{"limits that leave no capo", []string{"-capo", "Bb Fmaj7", "-closed", "-fingers", "1"}, "Fmaj7", "widen -fingers -closed"},

	{"no tuning", []string{"-chord", "C", "-tuning", "sideways"}, "sideways", "drop D"},
	{"a tuning that sounds too high", []string{"-chord", "C", "-tuning", "G9 G9"}, "G9 G9", "-tuning, byte 0: \"G9 G9\": string 1 would sound"},
	{"a tuning that sounds too high for the capo", []string{"-capo", "C", "-tuning", "E2 G9"}, "E2 G9", "; tune it lower"},
	{"thirteen strings", []string{"-chord", "C", "-tuning", strings.Repeat("E2 ", 13)}, "E2", "13 strings"},
	{"a capo off the neck", []string{"-chord", "C", "-behind", "99"}, "99", "the neck has 24"},
	{"a capo before the nut", []string{"-chord", "C", "-behind", "-1"}, "-1", "-behind"},
	{"a capo in letters", []string{"-chord", "C", "-behind", "two"}, "two", "whole number"},
	{"no such hand", []string{"-chord", "C", "-hand", "both"}, "both", "right, left, turned"},
	{"no such spelling", []string{"-chord", "C", "-spelling", "dutch"}, "dutch", "english, german, mixed"},
	{"no such format", []string{"-chord", "C", "-format", "xml"}, "xml", "json"},
}

func TestBadInputIsRefusedInPlace(t *testing.T) {
	for _, r := range refusals {
		clitest.Main(run).CheckRefusal(t, "shapes", r)
		_, errs, _ := clitest.Main(run).Play(nil, r.Args...)
		if named := reported(errs); named != "arguments" && !gives(r.Args, named) {
			t.Errorf("%s: an error in %s, which is not given:\n%s", r.Why, named, errs)
		}
	}
}

// reported returns in what an error is located.
func reported(errs string) string {
	named, _, _ := strings.Cut(strings.TrimPrefix(errs, "shapes: "), ",")
	return named
}

func gives(args []string, flag string) bool {
	return strings.HasPrefix(flag, "-") && slices.ContainsFunc(args, func(arg string) bool {
		return arg == flag || strings.HasPrefix(arg, flag+"=")
	})
}

func TestFilesThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	for why, name := range map[string]string{
		"no name":                       "",
		"a directory":                   dir,
		"a directory that is not there": filepath.Join(dir, "none", "sheet"),
	} {
		out, errs, code := clitest.Main(run).Play(nil, "-chord", "C", "-o", name)
		if code != 2 || out != "" {
			t.Errorf("%s: exit code %d and %d bytes out", why, code, len(out))
		}
		clitest.CheckReport(t, "shapes", errs, clitest.Refusal{Why: why, Said: "-o, byte 0: "})
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 0 {
		t.Errorf("%d files are left", len(entries))
	}
}
