package wav_test

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking/synth/wav"
)

func written(t *testing.T, f wav.Format, channels ...[]float32) []byte {
	t.Helper()
	var b bytes.Buffer
	out, err := wav.NewWriter(&b, f, int64(len(channels[0])))
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(out.Write(channels...), out.Close()); err != nil {
		t.Fatal(err)
	}
	if size, err := f.Size(int64(len(channels[0]))); err != nil || size != int64(b.Len()) {
		t.Errorf("%+v: %d bytes, said %d, %v", f, b.Len(), size, err)
	}
	return b.Bytes()
}

// TestHeaders spells the bytes out by the layout of Microsoft and IBM's RIFF.
func TestHeaders(t *testing.T) {
	for _, c := range []struct {
		f    wav.Format
		want string
	}{
		{wav.Format{Rate: 44100, Channels: 1}, "52494646" + "28000000" + "57415645" + "666d7420" + "10000000" +
			"0100" + "0100" + "44ac0000" + "88580100" + "0200" + "1000" + "64617461" + "04000000" + "ff7f" + "00c0"},
		{wav.Format{Rate: 48000, Channels: 1, Sample: wav.Float32}, "52494646" + "3a000000" + "57415645" + "666d7420" + "12000000" +
			"0300" + "0100" + "80bb0000" + "00ee0200" + "0400" + "2000" + "0000" + "66616374" + "04000000" + "02000000" +
			"64617461" + "08000000" + "0000803f" + "000000bf"},
	} {
		if got := hex.EncodeToString(written(t, c.f, []float32{1, -0.5})); got != c.want {
			t.Errorf("%+v:\n%s, want\n%s", c.f, got, c.want)
		}
	}
}

func TestSamples(t *testing.T) {
	nan, inf := float32(math.NaN()), float32(math.Inf(1))
	in := []float32{0, 1, -1, 0.5, 2, -2, inf, -inf, nan, 1e-5, -1e-5, 2e-5, -2e-5}
	want := []int16{0, 32767, -32767, 16384, 32767, -32768, 32767, -32768, 0, 0, 0, 1, -1}
	body := written(t, wav.Format{Channels: 1}, in)[44:]
	for i, want := range want {
		if got := int16(binary.LittleEndian.Uint16(body[2*i:])); got != want {
			t.Errorf("%v is written as %d, want %d", in[i], got, want)
		}
	}
}

func TestChannelsTakeTurns(t *testing.T) {
	left, right := make([]float32, 10000), make([]float32, 10000)
	for i := range left {
		left[i], right[i] = float32(i)/32767, -float32(i)/32767
	}
	body := written(t, wav.Format{}, left, right)[44:]
	for i := range left {
		if l, r := int16(binary.LittleEndian.Uint16(body[4*i:])), int16(binary.LittleEndian.Uint16(body[4*i+2:])); int(l) != i || int(r) != -i {
			t.Fatalf("frame %d is %d, %d", i, l, r)
		}
	}
}

func TestNoFileIsTooLong(t *testing.T) {
	for _, f := range []wav.Format{{}, {Channels: 1}, {Channels: 3}, {Sample: wav.Float32}, {Channels: 16, Sample: wav.Float32}} {
		normal, err := f.Normal()
		if err != nil {
			t.Fatal(err)
		}
		frame, head := int64(2*normal.Channels), int64(44)
		if f.Sample == wav.Float32 {
			frame, head = 2*frame, 58
		}
		most := (math.MaxUint32 - head + 8) / frame
		if size, err := f.Size(most); err != nil || size-8 > math.MaxUint32 || size+frame-8 <= math.MaxUint32 {
			t.Errorf("%+v: %d frames are %d bytes, %v", f, most, size, err)
		}
		for _, frames := range []int64{most + 1, math.MaxInt64, -1} {
			var impossible *fretboard.ImpossibleError
			if _, err := wav.NewWriter(io.Discard, f, frames); !errors.As(err, &impossible) {
				t.Errorf("%+v: %d frames: %v", f, frames, err)
			}
		}
	}
}

// FuzzHeader reads each header back by the places of its fields.
func FuzzHeader(f *testing.F) {
	f.Add(48000, 2, uint8(0), int64(1000))
	f.Add(44100, 1, uint8(1), int64(1<<30))
	f.Fuzz(func(t *testing.T, rate, channels int, sample uint8, frames int64) {
		var b bytes.Buffer
		format := wav.Format{Rate: rate, Channels: channels, Sample: wav.Sample(sample)}
		size, sizeErr := format.Size(frames)
		_, err := wav.NewWriter(&b, format, frames)
		if (err == nil) != (sizeErr == nil) || err != nil && b.Len() > 0 {
			t.Fatalf("size: %v; writer: %v, %d bytes", sizeErr, err, b.Len())
		}
		if err != nil {
			return
		}
		format, _ = format.Normal()
		h := b.Bytes()
		word := func(at int) int64 { return int64(binary.LittleEndian.Uint32(h[at:])) }
		frame := int64(binary.LittleEndian.Uint16(h[32:]))
		if word(4)+8 != size || word(24) != int64(format.Rate) || word(28) != word(24)*frame || word(len(h)-4) != frames*frame ||
			size != int64(len(h))+frames*frame || frame*8 != int64(format.Channels)*int64(binary.LittleEndian.Uint16(h[34:])) {
			t.Errorf("%+v, %d frames: %x", format, frames, h)
		}
	})
}

func TestRefusals(t *testing.T) {
	two := make([]float32, 2)
	for _, c := range []struct {
		why string
		try func(w *wav.Writer) error
	}{
		{"a channel missing", func(w *wav.Writer) error { return w.Write(two) }},
		{"no channels", func(w *wav.Writer) error { return w.Write() }},
		{"channels of two lengths", func(w *wav.Writer) error { return w.Write(two, two[:1]) }},
		{"more than promised", func(w *wav.Writer) error { return errors.Join(w.Write(two, two), w.Write(two, two)) }},
		{"less than promised", func(w *wav.Writer) error { return errors.Join(w.Write(two, two), w.Close()) }},
	} {
		out, err := wav.NewWriter(io.Discard, wav.Format{}, 3)
		if err != nil {
			t.Fatal(err)
		}
		var impossible *fretboard.ImpossibleError
		if err := c.try(out); !errors.As(err, &impossible) || out.Close() == nil || out.Write(two, two) == nil {
			t.Errorf("%s: %v", c.why, err)
		}
	}
	for _, f := range []wav.Format{{Rate: -1}, {Rate: 768001}, {Channels: -1}, {Channels: 17}, {Sample: 2}} {
		if _, err := wav.NewWriter(io.Discard, f, 0); err == nil {
			t.Errorf("%+v is taken", f)
		}
	}
}

type failing struct{ after int }

var errFull = errors.New("full")

func (f *failing) Write(b []byte) (int, error) {
	if f.after -= len(b); f.after < 0 {
		return 0, errFull
	}
	return len(b), nil
}

func TestTheErrorSticks(t *testing.T) {
	if _, err := wav.NewWriter(&failing{10}, wav.Format{}, 3); !errors.Is(err, errFull) {
		t.Error(err)
	}
	out, err := wav.NewWriter(&failing{46}, wav.Format{}, 3)
	if err != nil {
		t.Fatal(err)
	}
	one := make([]float32, 1)
	if err := out.Write(one, one); !errors.Is(err, errFull) || !errors.Is(out.Write(one, one), errFull) || !errors.Is(out.Close(), errFull) {
		t.Error(err)
	}
}

func TestWritingAllocatesNothing(t *testing.T) {
	out, err := wav.NewWriter(io.Discard, wav.Format{}, 1<<28)
	if err != nil {
		t.Fatal(err)
	}
	block := make([]float32, 4096)
	if n := testing.AllocsPerRun(50, func() { _ = out.Write(block, block) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for s := range wav.Sample(2) {
		if got, err := wav.ParseSample(s.String()); got != s || err != nil {
			t.Errorf("%v: %v, %v", s, got, err)
		}
	}
	if _, err := wav.ParseSample("int24"); err == nil {
		t.Error("int24 is read")
	}
}

func ExampleNewWriter() {
	var file bytes.Buffer
	out, err := wav.NewWriter(&file, wav.Format{Rate: 8000, Channels: 1}, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	_ = out.Write([]float32{0, 1})
	_ = out.Write([]float32{-1})
	fmt.Println(out.Close(), file.Len())
	_, err = wav.NewWriter(&file, wav.Format{}, 2e9)
	fmt.Println(err)
	// Output:
	// <nil> 50
	// length, byte 0: "2000000000": no file of this kind holds so many frames: it stops at 4 GiB; write at most 1073741814 frames
}
