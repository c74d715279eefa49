package synth_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
)

// program returns the path of a program from a package of Debian. Where it is
// missing, the test is skipped, or fails if CI_STRICT is set.
func program(t *testing.T, name, from string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI_STRICT") != "" {
		t.Fatalf("NOT CHECKED: no %s here; install %s", name, from)
	}
	if err != nil {
		t.Skipf("NOT CHECKED: no %s here; install %s", name, from)
	}
	return path
}

func file(t *testing.T, p picking.Passage, f wav.Format, o synth.Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := synth.Encode(&b, p, f, o); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "x.wav")
	if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

func output(t *testing.T, name string, arguments ...string) string {
	t.Helper()
	out, err := exec.Command(name, arguments...).Output()
	if err != nil {
		t.Fatalf("%s %v: %v", name, arguments, err)
	}
	return string(out)
}

// column returns the numbers in a column of lines of output.
func column(t *testing.T, out string, i int) (numbers []float64) {
	t.Helper()
	for line := range strings.Lines(out) {
		fields := strings.Fields(line)
		if len(fields) <= i {
			continue
		}
		x, err := strconv.ParseFloat(fields[i], 64)
		if err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		numbers = append(numbers, x)
	}
	return numbers
}

// TestAubioHearsThePitches: aubiopitch of Debian's aubio-tools, by the YIN
// method, hears every string and fret 0 to 20 within 5 cents.
func TestAubioHearsThePitches(t *testing.T) {
	aubio := program(t, "aubiopitch", "aubio-tools")
	guitar, _ := fretboard.Instrument{}.Normal()
	worst := 0.0
	for s := fretboard.StringNumber(1); s <= 6; s++ {
		path := file(t, climb(guitar, s), wav.Format{Rate: 44100, Channels: 1}, synth.Options{})
		out := output(t, aubio, "-p", "yin", "-B", "4096", "-H", "2048", "-u", "midi", "-i", path)
		times, heard := column(t, out, 0), column(t, out, 1)
		for f := fretboard.Fret(0); f <= 20; f++ {
			var of []float64
			for i, at := range times {
				if since := at - float64(f); since > 0.2 && since < 0.85 {
					of = append(of, heard[i])
				}
			}
			slices.Sort(of)
			off := 100 * (of[len(of)/2] - float64(guitar.Pitch(s, f)))
			if worst = max(worst, math.Abs(off)); !(math.Abs(off) < 5) {
				t.Errorf("string %d, fret %d: %+.1f cents", s, f, off)
			}
		}
	}
	t.Logf("within %.1f cents", worst)
}

// climb returns a passage that plucks a string at fret 0 to 20, a second each.
func climb(guitar fretboard.Instrument, s fretboard.StringNumber) picking.Passage {
	p := picking.Passage{Meter: picking.Meter{Count: 1, Unit: 4}, Tempo: 60, Instrument: guitar}
	for f := fretboard.Fret(0); f <= 20; f++ {
		at := 480 * picking.Ticks(f)
		pick := picking.Pick{At: at, Length: 480, Rings: 470, String: s, Fret: f, Pitch: guitar.Pitch(s, f), Stroke: picking.DownStroke}
		p.Bars = append(p.Bars, picking.Bar{Number: int(f) + 1, Written: int(f) + 1, Pass: 1, At: at, Length: 480, Picks: []picking.Pick{pick}})
	}
	return p
}

// TestAubioHearsTheOnsets: aubioonset hears each pick within 10 ms, and nothing
// else but the count-in. Its window has to be longer than the period of the
// lowest string, or it hears every turn of the string as a pluck.
func TestAubioHearsTheOnsets(t *testing.T) {
	aubio := program(t, "aubioonset", "aubio-tools")
	const lead = 3 // beats of count-in; aubio misses what begins the file
	for _, material := range []synth.Material{synth.Steel, synth.Nylon} {
		p := arranged(t, "Am=x02210 | G=320003", "1/4: 5 3 2", picking.Setting{Tempo: 75, Meter: picking.ThreeFour})
		path := file(t, p, wav.Format{Rate: 44100, Channels: 1}, synth.Options{Material: material, CountIn: 1})
		heard := column(t, output(t, aubio, "-O", "hfc", "-B", "1024", "-H", "128", "-i", path), 0)
		for i, pick := range p.Picks() {
			at := (lead + float64(pick.At)/480) * 60 / 75
			near := slices.ContainsFunc(heard, func(x float64) bool { return math.Abs(x-at) <= 0.010 })
			if !near {
				t.Errorf("%s: pick %d at %.3f s is not among %v", material, i, at, heard)
			}
		}
		if len(heard) != 6+lead {
			t.Errorf("%s: %d onsets heard of 9: %v", material, len(heard), heard)
		}
	}
}

func TestOtherProgramsReadTheFiles(t *testing.T) {
	soxi, ffprobe := program(t, "soxi", "sox"), program(t, "ffprobe", "ffmpeg")
	p := sparse(t)
	for _, rate := range []int{44100, 192000} {
		for _, channels := range []int{1, 2} {
			for sample := range wav.Sample(2) {
				f := wav.Format{Rate: rate, Channels: channels, Sample: sample}
				at := player(t, rate, p, synth.Options{To: 1})
				path, frames := file(t, p, f, synth.Options{To: 1}), at.Left()
				bits, codec := "16", "pcm_s16le"
				if sample == wav.Float32 {
					bits, codec = "32", "pcm_f32le"
				}
				var said []string
				for _, what := range []string{"-r", "-c", "-s", "-b"} {
					said = append(said, strings.TrimSpace(output(t, soxi, what, path)))
				}
				want := []string{fmt.Sprint(rate), fmt.Sprint(channels), fmt.Sprint(frames), bits}
				if sample == wav.Float32 {
					said[3], want[3] = "", "" // soxi gives a float's precision, 25 or 24
				}
				if !slices.Equal(said, want) {
					t.Errorf("%+v: soxi says %v, want %v", f, said, want)
				}
				out := output(t, ffprobe, "-v", "error", "-show_entries", "stream=codec_name,sample_rate,channels,duration_ts", "-of", "csv=p=0", path)
				if got, want := strings.TrimSpace(out), fmt.Sprintf("%s,%d,%d,%d", codec, rate, channels, frames); got != want {
					t.Errorf("%+v: ffprobe says %s, want %s", f, got, want)
				}
			}
		}
	}
}
