// Package changes finds the way through the changes, the chords of a song one
// after another: for each chord the shape and the fingers that make the whole
// song easiest ([Easiest]), what every finger does from one chord to the next
// ([Change]), and the capo behind which the song lies best ([Capos]).
//
// A path is priced in the unit of package voicing: one point is what a player
// would pay to stay a millimetre nearer the nut. It costs what its shapes cost
// ([voicing.Cost]) and half of what its changes cost ([Cost]): changes choose the
// fingers and, of shapes that are about as good, the shape, and do not lead to
// odd ones. All sums are of whole numbers, so every machine finds the same path.
package changes
