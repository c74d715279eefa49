package voicing_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/fretboard"
	"weft.example/voicing"
)

func TestRemarks(t *testing.T) {
	capo := fretboard.Instrument{Capo: 3}
	guitar := fretboard.Instrument{}
	for _, c := range []struct {
		why          string
		g            fretboard.Instrument
		chord, shape string
		want         []string
	}{
		{"faultless", guitar, "C", "x32010", nil},
		{"faultless without its fifth", guitar, "C7", "x32310", nil},
		{"a slash bass below the root is asked for", guitar, "C/G", "332010", nil},
		{"a slash bass that is no tone of the chord", guitar, "Am/G", "302210", nil},
		{"frets too far apart", guitar, "A", "x-0-2-2-2-7", []string{
			"frets 2 and 7 lie 144 mm apart, further than most hands reach", "string 1 sounds B, which is not in A"}},
		{"the fifth below the root", guitar, "C", "332010", []string{"string 6 sounds G, below the root on string 5"}},
		{"two strings below the root, the lowest first", guitar, "D", "200232", []string{
			"string 6 sounds F#, below the root on string 4", "string 5 sounds A, below the root on string 4"}},
		{"below the slash bass", guitar, "G/B", "320003", []string{"string 6 sounds G, below the slash bass on string 5"}},
		{"no root", guitar, "C", "xxx05x", []string{"the shape does not sound the root C"}},
		{"no slash bass, nor the third that it is", guitar, "G/B", "3x003x", []string{
			"the shape does not sound the slash bass B", "the shape lacks the third"}},
		{"no third", guitar, "Am", "x022x0", []string{"the shape lacks the third"}},
		{"no suspended tone", guitar, "Dsus4", "xx023x", []string{"the shape lacks the fourth"}},
		{"no seventh", guitar, "Am7", "x02210", []string{"the shape lacks the seventh"}},
		{"no altered fifth", guitar, "Bdim", "x20400", []string{"the shape lacks the fifth", "string 1 sounds E, which is not in Bdim"}},
		{"neither ninth of an altered chord, told once", guitar, "C7alt", "x323xx", []string{
			"the shape lacks the fifth", "the shape lacks the ninth"}},
		{"one ninth of two is enough", guitar, "C7alt", "x34340", nil},
		{"an extension missing", guitar, "C13", "x32310", []string{"the shape lacks the thirteenth"}},
		{"foreign notes, the thickest string first", guitar, "C", "x32232", []string{
			"string 3 sounds A, which is not in C", "string 2 sounds D, which is not in C", "string 1 sounds F#, which is not in C"}},
		{"a foreign note is spelled from the root", guitar, "Db", "x46662", []string{
			"frets 2 and 6 lie 118 mm apart, further than most hands reach", "string 1 sounds Gb, which is not in Db"}},
		{"but without an accidental where it needs none", guitar, "Db", "x46660", []string{
			"string 1 sounds E, which is not in Db"}},
		{"a flat one by the chord", guitar, "Ebm", "xx1342", nil},
		{"the capo does not rename", capo, "C", "332010", []string{"string 6 sounds G, below the root on string 5"}},
		{"below the root is no fault on a ukulele", tuned(t, "ukulele"), "F", "2010", nil},
		{"nor on a mandolin", tuned(t, "mandolin"), "D", "2002", nil},
		{"but below a slash bass it is", tuned(t, "ukulele"), "C/E", "0003", []string{
			"string 3 sounds C, below the slash bass on string 2"}},
		{"N.C. asks for nothing", guitar, "N.C.", "000000", nil},
	} {
		got := mustVoicing(t, c.g, c.chord, c.shape).Remarks()
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s as %s (-want +got):\n%s", c.why, c.shape, c.chord, diff)
		}
	}
}

func ExampleVoicing_Remarks() {
	c, _ := voicing.ParseChord("C")
	shape, _ := voicing.ParseShape("332010")
	v, _ := voicing.New(fretboard.Instrument{}, c, shape)
	fmt.Println(v.Start().String, v.Remarks())
	// Output: 5 [string 6 sounds G, below the root on string 5]
}
