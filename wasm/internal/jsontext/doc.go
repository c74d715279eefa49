// Package jsontext reads and writes JSON (RFC 8259) without reflection, which
// would make the program for the browser a quarter larger.
//
// It reads strictly: no duplicate names, no text after the value, and within
// limits of size and depth. It keeps every text of JavaScript as it is, also one
// with half a surrogate pair: such a half becomes the three bytes that the rule
// of UTF-8 would give it, which are not valid UTF-8, so that a parser refuses
// them in their place; written again they are the same half.
package jsontext
