// Package voicing reads chords and the shapes that sound them: chord symbols
// and their spelled tones, shapes of frets over the strings, the voicing that
// a shape makes on an instrument with the string to start on, and the finder
// that searches the fretboard for shapes of a chord.
package voicing
