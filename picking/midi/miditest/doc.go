// Package miditest holds the files of package midi against two readers written
// by others: gitlab.com/gomidi/midi/v2 and, in read.py, Mido from Debian's
// python3-mido. It is a module of its own, so that nobody who uses the library
// takes them on.
//
//	cd picking/midi/miditest && go test ./...
//
// Without python3-mido the half that needs it is skipped; where the environment
// variable CI_STRICT is set, that is a failure.
package miditest
