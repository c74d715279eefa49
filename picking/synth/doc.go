// Package synth makes a passage sound: plucked strings on a light body, and a
// click. It needs no samples and no network, and does not allocate while it
// plays, so that it can run in an audio callback.
//
// [New] makes a [Player], which fills the caller's buffers. [Render] returns a
// whole passage, [Encode] writes it as a file. For other ways to write files
// see [weft.example/picking/synth/wav], which serves alone.
//
// The string is the extended Karplus-Strong model: a loop of delay and loss,
// tuned by an all-pass, into which a pluck is sent through a comb that says
// where on the string the pick is (Karplus & Strong 1983; Jaffe & Smith 1983,
// Computer Music Journal 7(2); Smith, Physical Audio Signal Processing). An
// up-stroke is duller than a down-stroke by a one-pole filter, as in Jaffe &
// Smith. A pluck is hardest at the bar line, softer on other beats and softest
// between. A string rings as long as the passage says. What its plectrum or
// rest stops fades out in a few milliseconds, so nothing clicks.
//
// The same passage, options and rate give the same samples on every processor,
// however the buffers are cut.
//
// No program can know how loud it is at the ear. Start low, and keep it where
// you can talk over it: the World Health Organization's guide for personal
// players (ITU-T H.870) is 80 dB for 40 hours a week, and each 3 dB more halves
// the time. If ears ring afterwards, it was too loud.
package synth
