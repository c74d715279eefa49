package smftest_test

import (
	"bytes"
	"strings"
	"testing"

	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/midi/smftest"
)

// whole returns the bytes of a good file of two tracks.
func whole(t *testing.T) string {
	t.Helper()
	p, err := picking.Arrange(picking.MustParseProgression("Em=022000"), picking.Figures{picking.MustParseFigure("1/2: 1d 1d")}, picking.Setting{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := midi.Encode(&b, p, midi.Options{OneTrack: true}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestReadRefuses spoils a good file, a piece at a time, and lets no fault
// through.
func TestReadRefuses(t *testing.T) {
	const (
		on, off = "\x00\x90\x28\x68", "\x87\x40\x80\x28\x40"
		again   = "\x00\x90\x28\x5c" // at 960, right after off
		end     = "\x00\xff\x2f\x00"
		tempo   = "\x00\xff\x51\x03\x0b\x71\xb0"
		program = "\x00\xc0\x19"
		meter   = "\x00\xff\x58\x04\x04\x02\x18\x08"
	)
	good := whole(t)
	if _, err := smftest.Read([]byte(good)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(good, on+off+again+off+end) {
		t.Fatalf("not the file this test knows: %q", good)
	}
	for _, c := range []struct{ why, old, new, want string }{
		{"no end of track", off + end, off, "no end of track"},
		{"an end too soon", on + off + again + off + end, end + on + off + again + off, "ends before its end"},
		{"a key left down", again + off + end, again + end, "with a key down"},
		{"a key struck while down", on + off, on, "struck while down"},
		{"a key let go twice", off + again, off + "\x00\x80\x28\x40", "let go that is up"},
		{"the end of a note after the next begins", off + again, "\x87\x40\x90\x41\x10\x00\x80\x28\x40\x00\x80\x41\x40", "too late"},
		{"a note of no length", again + off, again + "\x00\x80\x28\x40", "or at once"},
		{"a note of velocity 0", on, "\x00\x90\x28\x00", "at velocity 0"},
		{"running status", again, "\x00\x28\x5c", "no status byte"},
		{"a message of another kind", program, "\x00\xb0\x07\x64" + program, "no status byte of ours"},
		{"a data byte with its top bit set", on, "\x00\x90\xa8\x68", "data byte"},
		{"a long zero", on, "\x80\x00\x90\x28\x68", "more bytes than it needs"},
		{"an endless length", on, "\x81\x81\x81\x81\x00\x90\x28\x68", "without an end"},
		{"a second tempo", tempo, tempo + tempo, "does not belong here"},
		{"a late meter", meter, "\x0a" + meter[1:], "does not belong here"},
		{"a tempo on a string's track", program, program + tempo, "does not belong here"},
		{"a marker on a string's track", program, program + "\x00\xff\x06\x01A", "does not belong here"},
		{"a key signature", tempo, tempo + "\x00\xff\x59\x02\x00\x00", "does not belong here"},
		{"format 0", "\x00\x06\x00\x01", "\x00\x06\x00\x00", "the header"},
		{"frames for ticks", "\x01\xe0MTrk", "\xe7\x28MTrk", "the header"},
		{"a track that is not there", "\x00\x01\x00\x02", "\x00\x01\x00\x03", "no MTrk"},
		{"a track too many", "\x00\x01\x00\x02", "\x00\x01\x00\x01", "after the last track"},
		{"another header", "MThd", "RIFF", "the header"},
	} {
		if !strings.Contains(good, c.old) {
			t.Errorf("%s: nothing to spoil", c.why)
		}
		_, err := smftest.Read([]byte(resized(strings.Replace(good, c.old, c.new, 1))))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: want %q, got %v", c.why, c.want, err)
		}
	}
}

// resized gives the chunks of a spoilt file their sizes again, so that nothing
// but what was spoilt is wrong.
func resized(file string) string {
	parts := strings.Split(file, "MTrk")
	for i := range parts[1:] {
		body := parts[i+1][4:]
		parts[i+1] = string([]byte{0, 0, byte(len(body) >> 8), byte(len(body))}) + body
	}
	return strings.Join(parts, "MTrk")
}

func TestReadRefusesEveryFront(t *testing.T) {
	good := whole(t)
	for n := range good {
		if _, err := smftest.Read([]byte(good[:n])); err == nil {
			t.Errorf("the first %d of %d bytes read well", n, len(good))
		}
	}
	if _, err := smftest.Read([]byte(good + "\x00")); err == nil {
		t.Error("a byte after the end reads well")
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("MThd\x00\x00\x00\x06\x00\x01\x00\x01\x01\xe0MTrk\x00\x00\x00\x04\x00\xff\x2f\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		lines, err := smftest.Read(data)
		if (err == nil) != (len(lines) > 1) {
			t.Errorf("%d lines and %v", len(lines), err)
		}
	})
}
