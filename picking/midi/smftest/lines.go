package smftest

import "fmt"

// Header is the line of a file's header; division is ticks to the quarter.
func Header(tracks, division int) string {
	return fmt.Sprintf("format 1, %d tracks, %d ticks", tracks, division)
}

// Name is the line of a track's name.
func Name(track int, text []byte) string { return fmt.Sprintf("track %d name %x", track, text) }

// Marker is the line of a marker, which stands in the first track.
func Marker(text []byte, at int) string { return fmt.Sprintf("track 0 at %d marker %x", at, text) }

// Tempo is the line of a tempo in microseconds to the quarter.
func Tempo(microseconds, at int) string {
	return fmt.Sprintf("track 0 at %d tempo %d", at, microseconds)
}

// Meter is the line of a time signature: clocks to the click, of which the
// quarter has 24, and thirty-seconds to the quarter.
func Meter(count, unit, clocks, thirtySeconds, at int) string {
	return fmt.Sprintf("track 0 at %d meter %d/%d, %d clocks, %d thirty-seconds", at, count, unit, clocks, thirtySeconds)
}

// Program is the line of a change of program.
func Program(track, channel, program, at int) string {
	return fmt.Sprintf("track %d channel %d at %d program %d", track, channel, at, program)
}

// Note is the line of a note.
func Note(track, channel, key, at, length, velocity int) string {
	return fmt.Sprintf("track %d channel %d at %d note %d for %d velocity %d", track, channel, at, key, length, velocity)
}

// End is the line of a track's end.
func End(track, at int) string { return fmt.Sprintf("track %d at %d end", track, at) }
