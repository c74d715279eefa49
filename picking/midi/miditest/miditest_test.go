package miditest

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gitlab.com/gomidi/midi/v2/smf"

	"weft.example/picking"
	"weft.example/picking/midi"
	"weft.example/picking/midi/smftest"
	"weft.example/picking/pickingtest"
)

// A sample is a file and what readers should find in it.
type sample struct {
	name string
	file []byte
	want []string
}

const byChance = 300

// samples are the files of the listed passages, in several manners, and of
// passages by chance.
func samples(t *testing.T) (all []sample) {
	t.Helper()
	add := func(name string, p picking.Passage, o midi.Options) {
		var b bytes.Buffer
		if err := midi.Encode(&b, p, o); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all = append(all, sample{fmt.Sprintf("%s-%d", name, len(all)), b.Bytes(), smftest.Want(p, o)})
	}
	for _, c := range pickingtest.List() {
		add(c.Name, c.Passage, midi.Options{})
		add(c.Name, c.Passage, midi.Options{OneTrack: true, CountIn: 2, Click: true})
	}
	for seed := range uint64(byChance) {
		r := rand.New(rand.NewPCG(seed, 6))
		add("random", pickingtest.Random(r), midi.Options{OneTrack: r.IntN(2) == 0, CountIn: r.IntN(9), Click: r.IntN(2) == 0})
	}
	return all
}

// difference says where two lists first part.
func difference(want, got []string) string {
	for i := range max(len(want), len(got)) {
		at := func(list []string) string {
			if i < len(list) {
				return list[i]
			}
			return "nothing"
		}
		if at(want) != at(got) {
			return fmt.Sprintf("want %q, got %q", at(want), at(got))
		}
	}
	return ""
}

// TestTheOtherGoReader holds the files against gitlab.com/gomidi/midi/v2.
func TestTheOtherGoReader(t *testing.T) {
	notes := 0
	for _, s := range samples(t) {
		got, err := linesOf(s.file)
		if err != nil {
			t.Errorf("%s: %v", s.name, err)
		} else if fault := difference(s.want, got); fault != "" {
			t.Errorf("%s: %s", s.name, fault)
		}
		notes += strings.Count(strings.Join(got, "\n"), " note ")
	}
	t.Logf("%d notes", notes)
}

// linesOf lists a file as smftest does.
func linesOf(file []byte) ([]string, error) {
	f, err := smf.ReadFrom(bytes.NewReader(file))
	if err != nil {
		return nil, err
	}
	ticks, metric := f.TimeFormat.(smf.MetricTicks)
	if !metric {
		return nil, fmt.Errorf("time in %v", f.TimeFormat)
	}
	lines := []string{smftest.Header(len(f.Tracks), int(ticks.Resolution()))}
	if f.Format() != 1 {
		return nil, fmt.Errorf("format %d", f.Format())
	}
	for n, track := range f.Tracks {
		l := lister{track: n, down: map[[2]byte][2]int{}}
		for _, event := range track {
			l.at += int(event.Delta)
			if err := l.list(event.Message); err != nil {
				return nil, fmt.Errorf("track %d, tick %d: %w", n, l.at, err)
			}
		}
		if len(l.down) > 0 {
			return nil, fmt.Errorf("track %d leaves %d keys down", n, len(l.down))
		}
		lines = append(lines, l.lines...)
	}
	slices.Sort(lines)
	return lines, nil
}

// A lister lists the messages of one track.
type lister struct {
	track, at int
	down      map[[2]byte][2]int // by channel and key: when it went down, and how hard
	lines     []string
}

func (l *lister) list(m smf.Message) error {
	var text string
	var bpm float64
	var channel, key, velocity, count, unit, clocks, thirtySeconds uint8
	switch {
	case m.GetNoteStart(&channel, &key, &velocity):
		if _, is := l.down[[2]byte{channel, key}]; is {
			return fmt.Errorf("key %d struck while down", key)
		}
		l.down[[2]byte{channel, key}] = [2]int{l.at, int(velocity)}
	case m.GetNoteEnd(&channel, &key):
		from, is := l.down[[2]byte{channel, key}]
		if !is {
			return fmt.Errorf("key %d let go that is up", key)
		}
		delete(l.down, [2]byte{channel, key})
		l.say(smftest.Note(l.track, int(channel), int(key), from[0], l.at-from[0], from[1]))
	case m.GetProgramChange(&channel, &key):
		l.say(smftest.Program(l.track, int(channel), int(key), l.at))
	case m.GetMetaTempo(&bpm):
		l.say(smftest.Tempo(int(math.Round(60e6/bpm)), l.at))
	case m.GetMetaTimeSig(&count, &unit, &clocks, &thirtySeconds):
		l.say(smftest.Meter(int(count), int(unit), int(clocks), int(thirtySeconds), l.at))
	case m.GetMetaTrackName(&text):
		l.say(smftest.Name(l.track, []byte(text)))
	case m.GetMetaMarker(&text):
		l.say(smftest.Marker([]byte(text), l.at))
	case bytes.Equal(m.Bytes(), smf.EOT):
		l.say(smftest.End(l.track, l.at))
	default:
		return fmt.Errorf("a stranger: %v", m)
	}
	return nil
}

func (l *lister) say(line string) { l.lines = append(l.lines, line) }

// TestMido holds the files against Mido.
func TestMido(t *testing.T) {
	all := samples(t)
	for i, got := range midoLines(t, all) {
		if fault := difference(all[i].want, got); fault != "" {
			t.Errorf("%s: %s", all[i].name, fault)
		}
	}
}

// midoLines lists files as smftest does, or says that Mido refuses one.
func midoLines(t *testing.T, all []sample) [][]string {
	t.Helper()
	python, dir := strictPython(t), t.TempDir()
	args := []string{"read.py"}
	for _, s := range all {
		path := filepath.Join(dir, s.name)
		if err := os.WriteFile(path, s.file, 0o666); err != nil {
			t.Fatal(err)
		}
		args = append(args, path)
	}
	var complaints bytes.Buffer
	command := exec.Command(python, args...)
	command.Stderr = &complaints
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, complaints.Bytes())
	}
	listings := strings.Split(string(out), "file "+dir+string(filepath.Separator))[1:]
	if len(listings) != len(all) {
		t.Fatalf("%d listings of %d files", len(listings), len(all))
	}
	lists := make([][]string, len(all))
	for i, s := range all {
		list := strings.Split(strings.TrimSuffix(listings[i], "\n"), "\n")
		if list[0] != s.name {
			t.Fatalf("the listing of %s in place of %s", list[0], s.name)
		}
		lists[i] = list[1:]
	}
	return lists
}

// strictPython returns Debian's Python if it has Mido. Other Pythons on the
// way may not see Debian's packages.
func strictPython(t *testing.T) string {
	t.Helper()
	const python = "/usr/bin/python3"
	err := exec.Command(python, "-c", "import mido").Run()
	if err == nil {
		return python
	}
	message := fmt.Sprintf("NOT CHECKED against Mido; install python3-mido (import mido: %v)", err)
	if os.Getenv("CI_STRICT") != "" {
		t.Fatal(message)
	}
	fmt.Fprintln(os.Stderr, message)
	t.Skip(message)
	return ""
}

// TestEveryTrackSaysWhereItEnds looks at the bytes, since neither reader refuses
// a track without its end.
func TestEveryTrackSaysWhereItEnds(t *testing.T) {
	for _, s := range samples(t) {
		rest, tracks := s.file, 0
		for len(rest) > 0 {
			size := 8 + int(binary.BigEndian.Uint32(rest[4:]))
			if kind := string(rest[:4]); kind == "MTrk" {
				tracks++
				if !bytes.HasSuffix(rest[:size], []byte{0xff, 0x2f, 0x00}) {
					t.Errorf("%s: track %d ends with % x", s.name, tracks, rest[size-4:size])
				}
			}
			rest = rest[size:]
		}
		if declared := int(binary.BigEndian.Uint16(s.file[10:])); tracks != declared {
			t.Errorf("%s: %d tracks, and the header says %d", s.name, tracks, declared)
		}
	}
}

// spoilt returns one file spoilt in each way that the comparisons are for.
func spoilt(t *testing.T) (all []sample) {
	t.Helper()
	good := samples(t)[0]
	for _, c := range []struct{ why, old, new string }{
		{"another division", "\x00\x02\x01\xe0", "\x00\x02\x00\xf0"},
		{"another tempo", "\xff\x51\x03\x5b", "\xff\x51\x03\x5c"},
		{"another meter", "\xff\x58\x04\x01\x05", "\xff\x58\x04\x01\x04"},
		{"another click", "\xff\x58\x04\x01\x05\x03", "\xff\x58\x04\x01\x05\x18"},
		{"another chord", "\xff\x06\x01A", "\xff\x06\x01B"},
		{"another name", "string 1", "string 2"},
		{"another program", "\xc0\x19", "\xc0\x18"},
		{"another key", "\x90\x2d", "\x90\x2e"},
		{"a softer note", "\x2d\x68", "\x2d\x67"},
		{"a longer note", "\x78\x80\x2d", "\x79\x80\x2d"},
		{"a later note", "\x00\x90\x2d", "\x01\x90\x2d"},
		{"a later end", "\x78\xff\x2f\x00", "\x79\xff\x2f\x00"},
	} {
		file := bytes.Replace(good.file, []byte(c.old), []byte(c.new), 1)
		if bytes.Equal(file, good.file) {
			t.Errorf("%s: nothing to spoil in % x", c.why, file)
		}
		all = append(all, sample{c.why, file, good.want})
	}
	return all
}

func TestTheOtherGoReaderSeesFaults(t *testing.T) {
	for _, s := range spoilt(t) {
		if got, err := linesOf(s.file); err == nil && difference(s.want, got) == "" {
			t.Errorf("%s is not seen in % x", s.name, s.file)
		}
	}
}

func TestMidoSeesFaults(t *testing.T) {
	all := spoilt(t)
	for i, got := range midoLines(t, all) {
		if difference(all[i].want, got) == "" {
			t.Errorf("%s is not seen in % x", all[i].name, all[i].file)
		}
	}
}
