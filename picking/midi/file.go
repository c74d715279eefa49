package midi

import (
	"encoding/binary"
	"slices"

	"weft.example/picking"
)

// The messages written, by their first byte, a channel's with the channel in
// its lower half, and the kinds of meta event.
const (
	noteOff       = 0x80
	noteOn        = 0x90
	programChange = 0xc0
	metaEvent     = 0xff

	trackName     = 0x03
	marker        = 0x06
	endOfTrack    = 0x2f
	setTempo      = 0x51
	timeSignature = 0x58

	usualRelease = 64 // of a key, where nothing measures it
)

// A note is a key held down for a time.
type note struct {
	from, to      picking.Ticks
	key, velocity byte
}

// A track is a list of messages, those of one time in their order.
type track struct{ messages []message }

type message struct {
	at    picking.Ticks
	bytes []byte
}

func (t *track) add(at picking.Ticks, bytes ...byte) {
	t.messages = append(t.messages, message{at, bytes})
}

func (t *track) meta(at picking.Ticks, kind byte, data string) {
	t.add(at, append(appendLength([]byte{metaEvent, kind}, len(data)), data...)...)
}

// notes adds notes that are in the order in which they begin.
func (t *track) notes(channel byte, notes []note) {
	for _, n := range notes {
		t.add(n.from, noteOn|channel, n.key, n.velocity)
		t.add(n.to, noteOff|channel, n.key, usualRelease)
	}
}

// file returns the bytes of a file whose tracks all end at the same time. Each
// message carries its status byte, which costs a byte and suits every reader.
func file(tracks []track, division, end picking.Ticks) []byte {
	const format = 1
	header := binary.BigEndian.AppendUint16(nil, format)
	header = binary.BigEndian.AppendUint16(header, uint16(len(tracks)))
	header = binary.BigEndian.AppendUint16(header, uint16(division))
	out := appendChunk(nil, "MThd", header)
	for _, t := range tracks {
		out = appendChunk(out, "MTrk", t.encode(end))
	}
	return out
}

func appendChunk(out []byte, kind string, body []byte) []byte {
	out = append(out, kind...)
	out = binary.BigEndian.AppendUint32(out, uint32(len(body)))
	return append(out, body...)
}

// encode returns the messages of t in the order of time, each after the time
// since the one before. Those at one time stay as they were added: a note that
// ends there was added before any that begins there, and so ends first.
func (t *track) encode(end picking.Ticks) []byte {
	t.meta(end, endOfTrack, "")
	slices.SortStableFunc(t.messages, func(a, b message) int { return int(a.at - b.at) })
	var out []byte
	at := picking.Ticks(0)
	for _, m := range t.messages {
		out = appendLength(out, int(m.at-at))
		out = append(out, m.bytes...)
		at = m.at
	}
	return out
}

// appendLength writes n as the standard's quantity of variable length: seven
// bits a byte, the highest first, all but the last with the top bit set. n is
// below 1 << 28.
func appendLength(out []byte, n int) []byte {
	for shift := 21; shift > 0; shift -= 7 {
		if n >= 1<<shift {
			out = append(out, byte(n>>shift)|0x80)
		}
	}
	return append(out, byte(n)&0x7f)
}
