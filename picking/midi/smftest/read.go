// Package smftest supports the tests of MIDI files. It lists what a file holds
// and what the file of a passage should hold, a line for each thing, so that
// readers of any origin can be held against each other.
//
// Times and lengths are ticks. Tracks and channels are counted from 0. Texts
// stand as the digits of their bytes. The lines are sorted.
package smftest

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// Read lists a file. It is stricter than the standard, as strict as the files
// of this module are meant to be: format 1, every message with its status
// byte, lengths in as few bytes as they can have, no key struck while it is
// down nor left down, ends of notes before what else happens at their time,
// tempo and meter once at the front, and the end of each track just there.
func Read(data []byte) ([]string, error) {
	header, rest, err := chunk(data, "MThd")
	if err != nil || len(header) != 6 {
		return nil, fmt.Errorf("the header: %d bytes, %v", len(header), err)
	}
	format, tracks, division := binary.BigEndian.Uint16(header), binary.BigEndian.Uint16(header[2:]), binary.BigEndian.Uint16(header[4:])
	if format != 1 || tracks == 0 || division == 0 || division >= 1<<15 {
		return nil, fmt.Errorf("the header: % x", header)
	}
	lines := []string{Header(int(tracks), int(division))}
	for n := range int(tracks) {
		var body []byte
		if body, rest, err = chunk(rest, "MTrk"); err != nil {
			return nil, fmt.Errorf("track %d: %w", n, err)
		}
		r := reader{track: n, rest: body}
		if err := r.read(); err != nil {
			return nil, fmt.Errorf("track %d, tick %d, before % .12x: %w", n, r.at, r.rest, err)
		}
		lines = append(lines, r.lines...)
	}
	if len(rest) > 0 {
		return nil, fmt.Errorf("%d bytes after the last track", len(rest))
	}
	slices.Sort(lines)
	return lines, nil
}

func chunk(data []byte, kind string) (body, rest []byte, err error) {
	if len(data) < 8 || string(data[:4]) != kind {
		return nil, nil, fmt.Errorf("no %s in % .8x", kind, data)
	}
	size := int64(binary.BigEndian.Uint32(data[4:]))
	if size > int64(len(data)-8) {
		return nil, nil, fmt.Errorf("%s of %d bytes, %d left", kind, size, len(data)-8)
	}
	return data[8 : 8+size], data[8+size:], nil
}

// A reader reads the messages of one track.
type reader struct {
	track int
	rest  []byte
	at    int
	busy  bool // something other than the end of a note was read at this time
	down  [16][128]held
	keys  int // how many are down
	meter bool
	tempo bool
	lines []string
}

// held is a key that is down.
type held struct{ from, velocity int }

var errShort = errors.New("the track ends within a message")

func (r *reader) read() error {
	for {
		if len(r.rest) == 0 {
			return errors.New("no end of track")
		}
		delta, err := r.length()
		if err != nil {
			return err
		}
		r.at += delta
		r.busy = r.busy && delta == 0
		if len(r.rest) == 0 {
			return errShort
		}
		status := r.rest[0]
		r.rest = r.rest[1:]
		if status == 0xff {
			if end, err := r.meta(); end || err != nil {
				return err
			}
			continue
		}
		if err := r.channelMessage(status>>4, int(status&0xf)); err != nil {
			return err
		}
	}
}

// length reads a quantity of variable length.
func (r *reader) length() (n int, err error) {
	for i, b := range r.rest[:min(len(r.rest), 4)] {
		n = n<<7 | int(b&0x7f)
		if i == 0 && b == 0x80 {
			return 0, errors.New("a length with more bytes than it needs")
		}
		if b < 0x80 {
			r.rest = r.rest[i+1:]
			return n, nil
		}
	}
	return 0, errors.New("a length without an end")
}

func (r *reader) channelMessage(kind byte, channel int) error {
	size := map[byte]int{0x8: 2, 0x9: 2, 0xc: 1}[kind]
	if size == 0 {
		return fmt.Errorf("no status byte of ours: %x", kind)
	}
	if len(r.rest) < size {
		return errShort
	}
	data := r.rest[:size]
	for _, b := range data {
		if b > 0x7f {
			return fmt.Errorf("data byte %x", b)
		}
	}
	r.rest = r.rest[size:]
	if kind == 0x8 {
		return r.noteOff(channel, data[0])
	}
	r.busy = true
	if kind == 0xc {
		r.say(Program(r.track, channel, int(data[0]), r.at))
		return nil
	}
	return r.noteOn(channel, data[0], data[1])
}

func (r *reader) noteOn(channel int, key, velocity byte) error {
	k := &r.down[channel][key]
	if k.velocity > 0 || velocity == 0 {
		return fmt.Errorf("key %d struck while down, or at velocity 0", key)
	}
	*k = held{r.at, int(velocity)}
	r.keys++
	return nil
}

func (r *reader) noteOff(channel int, key byte) error {
	k := &r.down[channel][key]
	if k.velocity == 0 || r.busy || k.from == r.at {
		return fmt.Errorf("key %d let go that is up, or too late, or at once", key)
	}
	r.say(Note(r.track, channel, int(key), k.from, r.at-k.from, k.velocity))
	*k = held{}
	r.keys--
	return nil
}

// meta reads a meta event and reports whether it ends the track.
func (r *reader) meta() (end bool, err error) {
	if len(r.rest) == 0 {
		return false, errShort
	}
	kind := r.rest[0]
	r.rest = r.rest[1:]
	size, err := r.length()
	if err != nil || size > len(r.rest) {
		return false, errShort
	}
	data := r.rest[:size]
	r.rest, r.busy = r.rest[size:], true
	switch {
	case kind == 0x2f && size == 0 && len(r.rest) == 0 && r.keys == 0:
		r.say(End(r.track, r.at))
		return true, nil
	case kind == 0x2f:
		return false, errors.New("the track ends before its end, or with a key down")
	case kind == 0x03 && r.at == 0:
		r.say(Name(r.track, data))
	case kind == 0x06 && r.track == 0:
		r.say(Marker(data, r.at))
	case kind == 0x51 && size == 3 && r.first(&r.tempo):
		r.say(Tempo(int(data[0])<<16|int(data[1])<<8|int(data[2]), r.at))
	case kind == 0x58 && size == 4 && r.first(&r.meter):
		r.say(Meter(int(data[0]), 1<<data[1], int(data[2]), int(data[3]), r.at))
	default:
		return false, fmt.Errorf("meta event %x of %d bytes does not belong here", kind, size)
	}
	return false, nil
}

// first reports whether what stands once in the first track stands there.
func (r *reader) first(seen *bool) bool {
	was := *seen
	*seen = true
	return !was && r.track == 0 && r.at == 0
}

func (r *reader) say(line string) { r.lines = append(r.lines, line) }
