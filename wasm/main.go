//go:build js && wasm

// Command wasm is the library for JavaScript. It hands its functions to the
// module that loads it and then waits for calls. That module is weft.js; the
// file weft.d.ts says what it offers. The tags lessons, sheets and drawings build
// the three files of which that is made.
package main

import (
	"math"
	"syscall/js"

	"weft.example/wasm/api"
)

func main() {
	l := api.New(parts...)
	var s sampler
	js.Global().Call("weftLoaded", map[string]any{
		"version": api.Version,
		"answer":  function(func(args []js.Value) any { return answer(l, args[0].String()) }),
		"fill":    function(func(args []js.Value) any { return s.fill(l, args[0].Int(), args[1], args[2]) }),
	})
	select {}
}

func function(do func(args []js.Value) any) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any { return do(args) })
}

// answer returns an answer and the bytes of a file.
func answer(l *api.Library, request string) any {
	answer, file := l.Answer(request)
	array := js.Global().Get("Uint8Array").New(len(file))
	js.CopyBytesToJS(array, file)
	return []any{answer, array}
}

// A sampler carries samples over to JavaScript, in memory that it keeps.
type sampler struct {
	samples [2][]float32
	bytes   []byte
}

const bytesOfSample = 4

// fill fills the bytes of two arrays with samples, and returns the answer that
// says what they hold.
func (s *sampler) fill(l *api.Library, player int, left, right js.Value) any {
	for channel, array := range [...]js.Value{left, right} {
		// One that is too long is refused whatever its length.
		s.room(channel, min(array.Length()/bytesOfSample, api.MaxFill+1))
	}
	answer := l.Fill(player, s.samples[0], s.samples[1])
	js.CopyBytesToJS(left, s.packed(0))
	js.CopyBytesToJS(right, s.packed(1))
	return answer
}

// room makes a channel so many frames long.
func (s *sampler) room(channel, frames int) {
	if cap(s.samples[channel]) < frames {
		s.samples[channel] = make([]float32, frames)
	}
	s.samples[channel] = s.samples[channel][:frames]
}

// packed returns the bytes of a channel, as typed arrays have them on all the
// machines that browsers run on: the least byte first.
func (s *sampler) packed(channel int) []byte {
	s.bytes = s.bytes[:0]
	for _, sample := range s.samples[channel] {
		b := math.Float32bits(sample)
		s.bytes = append(s.bytes, byte(b), byte(b>>8), byte(b>>16), byte(b>>24))
	}
	return s.bytes
}
