// Package json is the interchange form of a passage: one JSON object that
// [Encode] writes and [Decode] reads back as an equal passage.
//
// Every field of an object is written, in the order of these tables, and must
// be there to be read; those marked with a star are left out where they do not
// apply. Other fields, fields given twice and null are refused, and so is what
// contradicts the rest. Times and lengths are whole ticks, 480 to the quarter
// note, counted from the start of the passage. Strings are counted from 1, the
// thinnest, to at most 12; frets from the capo, to at most 36. Texts are in the
// notations of the module, and choices among words are written exactly as here.
//
// The passage:
//
//	version          1
//	title            text of at most 64 KiB
//	meter            such as "6/8": 1 to 32 over 1, 2, 4, 8, 16 or 32
//	tempo            10 to 400, the meter's beats a minute
//	ticksPerQuarter  480
//	tuning           the open strings, the highest string number first: "E2 A2 D3 G3 B3 E4"
//	frets            1 to 36, on the neck, counted from the nut
//	capo             0 to frets-1, counted from the nut; 0 is none
//	scaleLength      millimetres, above 0 and below 5000
//	stringSpacing    millimetres, above 0 and below 1000
//	hand             "right", "left" (restrung) or "turned" (not restrung)
//	strokes          "toward-next", "economy", "alternate", "rest-stroke" or "jig"
//	fit              "contour", "bass" or "shift"
//	loop             true where the last pick leads to the first, false where it is played once
//	travel           spacings: the picks' travel added up; millimetres: spacings * stringSpacing in
//	                 64-bit floating point
//	remarks          list of texts, on the whole passage
//	bars             list of 1 to 512 bars as played, repeats played out
//
// A bar:
//
//	number   1, 2, 3, ... as played
//	written  1 to number: the bar of the chart that it plays
//	pass     1, or 2 in the second playing of a repeat
//	at       where the bar before ends
//	length   ticks, what the meter's bar lasts
//	chords   list; together they fill the bar
//	picks    list of those that begin in the bar, in order
//
// A chord:
//
//	at       where the chord before ends
//	length   ticks, at least 1
//	symbol   as the shape is named, without the capo: "Am7", "G/B", "N.C."
//	sounds   as it sounds with the capo
//	figure*  the figure played, from 1
//	shape*   a fret, 0 or x for each string, the highest number first: "x02210", "x-10-12-12-12-10"
//	start*   string: where the figure starts; reason: "root", "slash bass" or "bass"
//	bass*    the string that sounds lowest
//	root*    the lowest-sounding string that carries the root
//	fit*     how the figure is moulded
//
// Silence is "N.C." in symbol and sounds, without the fields that have a star.
// All other chords have them, except that root is left out where no string
// sounds the root.
//
// A fit, of the whole figure:
//
//	strings   list of 1 to 256 strings that sound, one for each event of the figure
//	csim      0 to 1, contour similarity by all pairs of events
//	cplussim  0 to 1, contour similarity by ascents
//	losses    list of the steps of the figure that sound otherwise under this chord
//	remarks   list of texts, on the chord
//
// A loss:
//
//	from  an event of the figure, counted from 1
//	to    the event after it; after the last comes 1
//	want  "up" (toward string 1), "down" or "same": the step in the figure
//	got   the step that sounds; not the one wanted
//
// A pick:
//
//	at         in its bar, after the pick before
//	length     ticks, at least 1, as written; ends no later than the next pick begins
//	rings      ticks, at least 1, as it sounds: until its string is plucked again or damped or
//	           its fret changes, round the loop too; played once, at most a bar past the end
//	event      of the figure, counted from 1
//	string     where the chord's fit puts the event
//	fret       of the chord's shape on that string, 0 for open
//	pitch      MIDI key number, 0 to 127
//	note       pitch as the sounding chord spells it: "A2"; C4 is middle C
//	stroke     "down" or "up"; down is toward the floor
//	why        "toward the next string", "turnaround", "repeat", "loop", "last", "own" or "tradition"
//	crossing*  from the pick before: "same", "sweep", "outside", "inside" or "return"
//	travel     string spacings from the pick before
//
// The first pick of a passage played once has no crossing and a travel of 0;
// that of a loop has them from the last pick.
//
// A passage does not keep the figures. So csim, cplussim, the want of a loss,
// the choice of strokes and what a rest damps are taken at the form's word.
package json
