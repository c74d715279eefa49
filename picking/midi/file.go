package midi

import "weft.example/picking"

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
	header := []byte{0, format, byte(len(tracks) >> 8), byte(len(tracks)), byte(division >> 8), byte(division)}
	out := appendChunk(nil, "MThd", header)
	for _, t := range tracks {
		out = appendChunk(out, "MTrk", t.encode(end))
	}
	return out
}

func appendChunk(out []byte, kind string, body []byte) []byte {
	out = append(out, kind...)
	n := len(body)
	out = append(out, byte(n>>24), byte(n>>16), byte(n>>8), byte(n))
	return append(out, body...)
}

// encode returns the messages of t in the order of time, each after the time
// since the one before. Those at one time stay as they were added: a note that
// ends there was added before any that begins there, and so ends first.
func (t *track) encode(end picking.Ticks) []byte {
	t.meta(end, endOfTrack, "")
	t.sort()
	var out []byte
	at := picking.Ticks(0)
	for _, m := range t.messages {
		out = appendLength(out, int(m.at-at))
		out = append(out, m.bytes...)
		at = m.at
	}
	return out
}

// sort puts the messages in the order of time. Only the end of a note is added
// too early, by no more messages than strings sound on; so a pass is enough.
func (t *track) sort() {
	all := t.messages
	for i := range all {
		for ; i > 0 && all[i].at < all[i-1].at; i-- {
			all[i-1], all[i] = all[i], all[i-1]
		}
	}
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
