// Package wav writes sound as a RIFF/WAVE file: whole numbers of 16 bits, or
// floating point of 32. It needs to know nothing of music.
//
// The length is given in advance, so that the header is exact and the file can
// go down a pipe.
package wav

import (
	"encoding/binary"
	"io"
	"math"
	"strconv"

	"weft.example/fretboard"
)

// A Sample is how one sample is stored.
type Sample uint8

// Samples are whole numbers of 16 bits (Int16), which every player reads, or
// floating point of 32 bits (Float32), which loses nothing.
const (
	Int16 Sample = iota
	Float32
)

var sampleNames = [...]string{"int16", "float32"}

// String returns int16 or float32.
func (s Sample) String() string { return fretboard.NameOf(sampleNames[:], int(s)) }

// ParseSample reads int16 or float32.
func ParseSample(text string) (Sample, error) {
	i, err := fretboard.ParseName("sample", sampleNames[:], text)
	return Sample(i), err
}

func (s Sample) bytes() int {
	if s == Float32 {
		return 4
	}
	return 2
}

// A Format says what a file holds. Every zero field means the usual choice.
type Format struct {
	Rate     int    // frames a second, 1 to 768000; 0 means 48000
	Channels int    // 1 to 16; 0 means 2
	Sample   Sample // zero: Int16
}

const (
	usualRate, mostRate         = 48000, 768000
	usualChannels, mostChannels = 2, 16
)

// Normal returns f with every zero field replaced by what it means, or a
// [fretboard.ImpossibleError] if there is no such format.
func (f Format) Normal() (Format, error) {
	if f.Rate == 0 {
		f.Rate = usualRate
	}
	if f.Channels == 0 {
		f.Channels = usualChannels
	}
	switch {
	case f.Rate < 1 || f.Rate > mostRate:
		return f, refuse("rate", strconv.Itoa(f.Rate), "not a rate of sound", "choose 44100 or 48000 frames a second")
	case f.Channels < 1 || f.Channels > mostChannels:
		return f, refuse("channels", strconv.Itoa(f.Channels), "a file has 1 to 16 channels here", "2 is stereo")
	case f.Sample > Float32:
		return f, refuse("sample", f.Sample.String(), "no such sample", "choose int16 or float32")
	}
	return f, nil
}

// frameBytes returns the size of one sample of every channel.
func (f Format) frameBytes() int64 { return int64(f.Channels * f.Sample.bytes()) }

// Size returns the size in bytes of a file of so many frames. The error is a
// [fretboard.ImpossibleError]: the file's own fields stop at 4 GiB.
func (f Format) Size(frames int64) (int64, error) {
	f, err := f.Normal()
	if err != nil {
		return 0, err
	}
	head := int64(len(f.header(0)))
	most := (math.MaxUint32 + riffHead - head) / f.frameBytes()
	if frames < 0 || frames > most {
		return 0, refuse("length", strconv.FormatInt(frames, 10), "no file of this kind holds so many frames: it stops at 4 GiB",
			"write at most "+strconv.FormatInt(most, 10)+" frames")
	}
	return head + frames*f.frameBytes(), nil
}

const riffHead = 8 // bytes that the size in the RIFF header leaves out

// header returns all that comes before the samples. Floating point is not PCM,
// so its format chunk has an empty extension and a fact chunk follows it
// (Microsoft and IBM, Multimedia Programming Interface 1.0, 1991, and the
// Multimedia Standards Update 3.0, 1994; from memory).
func (f Format) header(frames int64) []byte {
	const pcm, float = 1, 3
	data := uint32(frames * f.frameBytes())
	kind, extension, fact := uint16(pcm), []byte(nil), []byte(nil)
	if f.Sample == Float32 {
		kind, extension = float, []byte{0, 0}
		fact = chunk("fact", binary.LittleEndian.AppendUint32(nil, uint32(frames)))
	}
	body := binary.LittleEndian.AppendUint16(nil, kind)
	body = binary.LittleEndian.AppendUint16(body, uint16(f.Channels))
	body = binary.LittleEndian.AppendUint32(body, uint32(f.Rate))
	body = binary.LittleEndian.AppendUint32(body, uint32(int64(f.Rate)*f.frameBytes()))
	body = binary.LittleEndian.AppendUint16(body, uint16(f.frameBytes()))
	body = binary.LittleEndian.AppendUint16(body, uint16(8*f.Sample.bytes()))
	inside := append([]byte("WAVE"), chunk("fmt ", append(body, extension...))...)
	inside = append(inside, fact...)
	inside = binary.LittleEndian.AppendUint32(append(inside, "data"...), data)
	out := binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(inside))+data)
	return append(out, inside...)
}

func chunk(kind string, body []byte) []byte {
	out := binary.LittleEndian.AppendUint32([]byte(kind), uint32(len(body)))
	return append(out, body...)
}

// A Writer writes one file. Its error sticks: once a call has failed, so do
// all after it.
type Writer struct {
	out    io.Writer
	format Format
	left   int64 // frames promised and not yet written
	err    error
	buffer [8 << 10]byte
}

// NewWriter writes the header of a file of so many frames to w. The error is
// w's or, for what no file holds, a [fretboard.ImpossibleError].
func NewWriter(w io.Writer, f Format, frames int64) (*Writer, error) {
	if _, err := f.Size(frames); err != nil {
		return nil, err
	}
	f, _ = f.Normal()
	out := &Writer{out: w, format: f, left: frames}
	out.send(f.header(frames))
	return out, out.err
}

// Write writes frames, given as one slice for each channel, all of one length.
// Samples run from -1 to 1; as whole numbers, 1 is 32767, what lies outside is
// clipped and what is not a number is silence. It allocates nothing.
func (w *Writer) Write(channels ...[]float32) error {
	if w.err == nil {
		w.err = w.misfit(channels)
	}
	if w.err != nil {
		return w.err
	}
	frames := len(channels[0])
	w.left -= int64(frames)
	room := len(w.buffer) / int(w.format.frameBytes())
	for at := 0; at < frames && w.err == nil; at += room {
		w.send(w.pack(channels, at, min(at+room, frames)))
	}
	return w.err
}

// misfit refuses what does not fit the header.
func (w *Writer) misfit(channels [][]float32) error {
	if len(channels) != w.format.Channels {
		return refuse("channels", strconv.Itoa(len(channels)), "not the number of channels in the header", "give a slice for each")
	}
	for _, c := range channels {
		if len(c) != len(channels[0]) {
			return refuse("channels", strconv.Itoa(len(c)), "a channel of another length than the first", "give all the same number of frames")
		}
	}
	if int64(len(channels[0])) > w.left {
		return refuse("length", strconv.Itoa(len(channels[0])), "more frames than the header promises",
			strconv.FormatInt(w.left, 10)+" are left")
	}
	return nil
}

// pack returns frames from to to as bytes, in the buffer.
func (w *Writer) pack(channels [][]float32, from, to int) []byte {
	out := w.buffer[:0]
	for i := from; i < to; i++ {
		for _, c := range channels {
			if w.format.Sample == Float32 {
				out = binary.LittleEndian.AppendUint32(out, math.Float32bits(c[i]))
			} else {
				out = binary.LittleEndian.AppendUint16(out, uint16(whole(c[i])))
			}
		}
	}
	return out
}

// whole returns x as the nearest whole number of 16 bits.
func whole(x float32) int16 {
	const most = 32767
	switch scaled := float32(x * most); {
	case scaled >= most:
		return most
	case scaled <= -most-1:
		return -most - 1
	case scaled >= 0:
		return int16(scaled + 0.5)
	case scaled < 0:
		return int16(scaled - 0.5)
	}
	return 0 // not a number
}

func (w *Writer) send(b []byte) {
	n, err := w.out.Write(b)
	if err == nil && n < len(b) {
		err = io.ErrShortWrite
	}
	w.err = err
}

// Close returns the error that stuck, or a [fretboard.ImpossibleError] if
// frames are missing. It does not close what w writes to.
func (w *Writer) Close() error {
	if w.err == nil && w.left > 0 {
		w.err = refuse("length", strconv.FormatInt(w.left, 10), "frames are missing that the header promises", "write them before the end")
	}
	return w.err
}

func refuse(notation, text, reason, mend string) error {
	return &fretboard.ImpossibleError{Place: fretboard.Place{
		Notation: notation, Source: text, Length: len(text), Reason: reason, Mend: mend}}
}
