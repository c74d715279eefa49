// Package picking carries a picking figure over a chord progression and says
// how each note is struck.
//
// Its words are the trade's. A figure is a pattern of slots, each a string to
// pluck, a hold or a rest. A fit is a figure moulded to the strings that a
// voicing sounds. A stroke is down or up, down being toward the floor. A
// passage is the finished part. [Arrange] makes a passage from a progression
// and figures; [Figure.Fit] and [ChooseStrokes] serve alone.
//
// Three promises hold for a passage under the zero [Setting]. The figure starts
// on the string that carries the chord's root in the shape held, or the slash
// bass. The rise and fall of the figure is kept as far as the sounding strings
// allow, and each loss is reported. Every stroke that the teacher leaves free
// goes toward the next string to be plucked, over chord changes and round the
// loop, at the least pick travel there is.
package picking
