package synth

import (
	"io"
	"strconv"

	"weft.example/picking"
	"weft.example/picking/synth/wav"
)

// longest is the most frames that [Render] returns, some 3 hours at 48 kHz.
const longest = 1 << 29

// Render returns the two channels of a passage at a rate in frames a second.
// The error is a [fretboard.ImpossibleError]; an [Endless] sound is one. The
// memory grows with the length: 8 bytes a frame.
func Render(rate int, p picking.Passage, o Options) (left, right []float32, err error) {
	player, err := New(rate, p, o)
	if err != nil {
		return nil, nil, err
	}
	frames := player.Left()
	if frames < 0 || frames > longest {
		return nil, nil, refuse("rounds", strconv.Itoa(o.Rounds), "too long to hold at once", "fill one buffer after another")
	}
	left, right = make([]float32, frames), make([]float32, frames)
	player.Fill(left, right)
	return left, right, nil
}

// Encode writes a passage to w as a WAVE file. The format's channels are 2, or
// 1 for both in one. The error is w's or a [fretboard.ImpossibleError]; after
// the latter nothing is written. It holds one small buffer, however long the
// passage; the bytes come in order and [wav.Format.Size] tells how many there
// are.
func Encode(w io.Writer, p picking.Passage, f wav.Format, o Options) error {
	f, err := f.Normal()
	if err != nil {
		return err
	}
	if f.Channels > 2 {
		return refuse("channels", strconv.Itoa(f.Channels), "a guitar in stereo has two", "choose 1 or 2")
	}
	player, err := New(f.Rate, p, o)
	if err != nil {
		return err
	}
	frames := player.Left()
	if frames < 0 {
		return refuse("rounds", strconv.Itoa(o.Rounds), "a file has an end", "choose how many rounds")
	}
	out, err := wav.NewWriter(w, f, frames)
	if err != nil {
		return err
	}
	return player.write(out, f.Channels)
}

func (p *Player) write(out *wav.Writer, channels int) error {
	left, right := make([]float32, 4096), make([]float32, 4096)
	for {
		n := p.Fill(left, right)
		if n == 0 {
			return out.Close()
		}
		err := error(nil)
		if channels == 1 {
			mix(left, right)
			err = out.Write(left[:n])
		} else {
			err = out.Write(left[:n], right[:n])
		}
		if err != nil {
			return err
		}
	}
}

// mix leaves in left the mean of both channels.
func mix(left, right []float32) {
	for i := range left {
		left[i] = float32((left[i] + right[i]) * 0.5)
	}
}
