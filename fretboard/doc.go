// Package fretboard knows the instrument: pitches and how they are spelled,
// strings and their two orders, tunings, frets in millimetres, the capo and
// the three ways of holding a guitar.
//
// Two orders of the strings are kept apart. The physical order is the string
// number: 1 is the thinnest, nearest the floor when a right-handed player
// holds a normally strung guitar. The pitch order is which string sounds
// lower; on a re-entrant tuning such as the ukulele's the two disagree.
// [StringNumber] and [StringSet] speak of the first, [LowestFirst] of the
// second, and [Hand.Toward] of what the first means to the picking hand.
//
// Every parser of the module reports its errors in the two types of this
// package: [SyntaxError] for text that cannot be read, [ImpossibleError] for
// text that reads well and asks for what cannot be.
package fretboard
