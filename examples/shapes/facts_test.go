package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"weft.example/examples/internal/clitest"
	"weft.example/fretboard"
	"weft.example/picking"
	"weft.example/voicing"
)

// decoded reads JSON that holds no other fields than a, and that a writes again
// to the byte.
func decoded[A answer](text string) (a A, err error) {
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&a); err != nil {
		return a, err
	}
	var again bytes.Buffer
	if err := encode(&again, a); err != nil || again.String() != text {
		return a, fmt.Errorf("%v, %s", err, cmp.Diff(text, again.String()))
	}
	var plain any
	if err := json.Unmarshal([]byte(text), &plain); err != nil {
		return a, err
	}
	return a, plainFault(plain)
}

// plainFault finds null and fractions.
func plainFault(value any) error {
	switch v := value.(type) {
	case nil:
		return fmt.Errorf("null")
	case float64:
		if v != float64(int(v)) {
			return fmt.Errorf("the fraction %v", v)
		}
	case []any:
		for _, it := range v {
			if err := plainFault(it); err != nil {
				return err
			}
		}
	case map[string]any:
		for name, it := range v {
			if err := plainFault(it); err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
		}
	}
	return nil
}

// both runs a command for text and JSON; ok is false where it is refused, alike.
func both(args ...string) (text, object string, ok bool) {
	text, errs, code := clitest.Main(run).Play(nil, args...)
	object, errs2, code2 := clitest.Main(run).Play(nil, append(args, "-format", "json")...)
	if code != code2 {
		panic(errs + errs2)
	}
	return text, object, code == 0
}

var shapeLine = regexp.MustCompile(`^\d+ (\S+) (\S+?)(?:, fingers (\S+))?; start on string (\d+), the (root|slash bass|bass); cost (\d+) (?:.*?)hand (\w+)(?:, effort (\d+))?`)

// shapesIn reads the shapes out of a text, where each is a paragraph.
func shapesIn(text string) (lines []string) {
	for _, paragraph := range strings.Split(text, "\n\n") {
		if m := shapeLine.FindStringSubmatch(strings.Join(strings.Fields(paragraph), " ")); m != nil {
			lines = append(lines, strings.Join(m[1:], " "))
		}
	}
	return lines
}

func shapesOf(all []held) (lines []string) {
	for _, h := range all {
		effort := fmt.Sprint(h.Effort)
		if h.Fingers == "" {
			effort = ""
		}
		lines = append(lines, strings.Join([]string{h.Chord, h.Shape, h.Fingers, fmt.Sprint(h.Start.String), h.Start.Reason,
			fmt.Sprint(h.Cost), h.Hold, effort}, " "))
	}
	return lines
}

// narrow reports whether every line but those of no space is within the width.
func narrow(text string) bool {
	for line := range strings.Lines(text) {
		if len(strings.TrimRight(line, "\n")) > width && strings.Contains(strings.TrimSpace(line), " ") {
			return false
		}
	}
	return true
}

var (
	anyChord = gen.OneConstOf("C", "Am", "F#m7b5", "Bbmaj7", "E7#9", "G/B", "D", "C13", "Ebm", "Asus4", "E5", "Db6/9/F", "G7alt", "Bdim7", "Caug")
	anyTuned = gen.OneConstOf("standard", "DADGAD", "ukulele", "mandolin", "drop D", "B1 E2 A2 D3 G3 B3 E4", "C3 G3", "E3 E2 A3 A2 D4 D3 G4 G3 B3 B3 E4 E4")
	anyLimit = gen.OneConstOf("-once=false", "-beginner", "-closed", "-bass", "-high=5", "-low=3", "-fingers=3", "-span=80", "-aim=worst")
)

func TestTextAndJSONTellTheSame(t *testing.T) {
	parameters := gopter.DefaultTestParameters()
	parameters.MinSuccessfulTests = 40
	parameters.Rng.Seed(1)
	properties := gopter.NewProperties(parameters)
	properties.Property("a chord has the same shapes in text and JSON",
		prop.ForAll(sameChord, anyChord, anyTuned, anyLimit, gen.IntRange(1, 8), gen.IntRange(0, 5)))
	properties.Property("a shape has the same names in text and JSON",
		prop.ForAll(sameName, gen.SliceOfN(6, gen.IntRange(0, 7))))
	properties.Property("a song has the same shapes and changes in text and JSON, and a chart that holds them",
		prop.ForAll(samePath, gen.SliceOfN(4, anyChord), anyTuned, anyLimit))
	properties.Property("a capo has the same chords and shapes in text and JSON",
		prop.ForAll(sameCapo, gen.SliceOfN(3, anyChord), anyLimit))
	properties.TestingRun(t)
}

func sameChord(chord, tuning, limit string, count, capo int) (string, error) {
	if strings.HasPrefix(limit, "-once") || strings.HasPrefix(limit, "-aim") {
		limit = "-closed=false"
	}
	text, object, ok := both("-chord", chord, "-tuning", tuning, limit, "-count", fmt.Sprint(count), "-behind", fmt.Sprint(capo))
	if !ok {
		return "", nil
	}
	a, err := decoded[chordAnswer](object)
	return fault(text, a.Shapes, len(a.Shapes) > 0 && len(a.Shapes) <= count), err
}

func sameName(frets []int) (string, error) {
	shape := voicing.NewShape(6)
	for s, fret := range frets {
		if fret < 6 {
			shape = shape.With(fretboard.StringNumber(s+1), fretboard.Fret(fret))
		}
	}
	text, object, ok := both("-name", shape.String())
	if !ok {
		return "", nil
	}
	a, err := decoded[nameAnswer](object)
	same := true
	for i, n := range a.Names {
		same = same && regexp.MustCompile(fmt.Sprintf(`(?m)^%d  %s +%s `, i+1, regexp.QuoteMeta(n.Chord), n.Confidence)).MatchString(text)
	}
	return fault(text, a.Shapes, same), err
}

func samePath(chords []string, tuning, limit string) (string, error) {
	song := strings.Join(chords, " | ")
	text, object, ok := both("-path", "|: "+song+" N.C. :| %", "-tuning", tuning, limit, "-figure", "2 1")
	if !ok {
		return "", nil
	}
	a, err := decoded[pathAnswer](object)
	head, _, _ := strings.Cut(text, "\n\n")
	p, chartErr := picking.ParseProgression(head)
	same := chartErr == nil && p.String() == a.Chart && cmp.Equal(shapesAlong(p), a.inOrder()) && a.countChanges(text)
	return fault(text, a.Shapes, same), err
}

func sameCapo(chords []string, limit string) (string, error) {
	text, object, ok := both("-capo", strings.Join(chords, " "), limit)
	if !ok {
		return "", nil
	}
	a, err := decoded[capoAnswer](object)
	return "", cmpErr(err, a.rows(), rowsIn(text), narrow(text))
}

// fault says where the text differs from the shapes in JSON.
func fault(text string, shapes []held, same bool) string {
	if diff := cmp.Diff(shapesOf(shapes), shapesIn(text)); diff != "" || !same || !narrow(text) {
		return fmt.Sprintf("%s %v %v\n%s", diff, same, narrow(text), text)
	}
	return ""
}

func cmpErr(err error, want, got []string, narrow bool) error {
	if diff := cmp.Diff(want, got); err == nil && (diff != "" || !narrow) {
		return fmt.Errorf("%s %v", diff, narrow)
	}
	return err
}

// inOrder lists the shapes as they are played, one for as long as it is held.
func (a pathAnswer) inOrder() (shapes []string) {
	for _, n := range a.Order {
		if n == 0 {
			shapes = append(shapes, "N.C.")
		} else {
			shapes = append(shapes, a.Shapes[n-1].Chord+"="+a.Shapes[n-1].Shape)
		}
	}
	return shapes
}

// shapesAlong lists the chords with their shapes in a chart as it is played.
func shapesAlong(p picking.Progression) (shapes []string) {
	bars, opened := p.Bars(), 0
	play := func(i int) {
		for bars[i].Again {
			i--
		}
		for _, c := range bars[i].Chords {
			if text := c.String(); len(shapes) == 0 || shapes[len(shapes)-1] != text {
				shapes = append(shapes, text)
			}
		}
	}
	for i, bar := range bars {
		if bar.Opens {
			opened = i
		}
		play(i)
		for w := opened; bar.Closes && w <= i; w++ {
			play(w)
		}
	}
	return shapes
}

// countChanges reports whether the text has the changes, and each its fingers.
func (a pathAnswer) countChanges(text string) bool {
	fingers, most := 0, 0
	for _, c := range a.Changes {
		fingers += len(c.Fingers)
		most = max(most, c.Cost)
		if c.First != a.Shapes[c.To-1].Start.String { // the figure starts on its root
			return false
		}
	}
	motion := regexp.MustCompile(`(?m)^   (index|middle|ring|little) +(stays on|slides|moves [\d.]+ mm|is set down|lifts off)`)
	if a.Hardest > 0 && (a.Changes[a.Hardest-1].Cost != most || strings.Count(text, fmt.Sprintf("; change %d, the hardest\n", most)) > 1) {
		return false
	}
	return len(motion.FindAllString(text, -1)) == fingers && strings.Count(strings.Join(strings.Fields(text), " "), ", the hardest ") == min(a.Hardest, 1)
}

func (a capoAnswer) rows() (rows []string) {
	for _, c := range a.Capos {
		for i, h := range c.Shapes {
			rows = append(rows, c.Sounding[i]+" "+h.Chord+" "+h.Shape)
		}
	}
	return rows
}

func rowsIn(text string) (rows []string) {
	for _, m := range regexp.MustCompile(`(?m)^   sounds +(.*)\n   play +(.*)\n   shape +(.*)$`).FindAllStringSubmatch(text, -1) {
		sounds, plays, shapes := strings.Fields(m[1]), strings.Fields(m[2]), strings.Fields(m[3])
		for i := range sounds {
			rows = append(rows, sounds[i]+" "+plays[i]+" "+shapes[i])
		}
	}
	return rows
}

// The numbers of changes and of shapes have names and words of their own: no
// change is called easy or hard by the measure of shapes.
func TestAChangeHasNoEffort(t *testing.T) {
	var path struct {
		Changes []map[string]any `json:"changes"`
	}
	if err := json.Unmarshal([]byte(played(t, "-path", "C | G", "-format", "json")), &path); err != nil || len(path.Changes) != 2 {
		t.Fatalf("%d changes, %v", len(path.Changes), err)
	}
	for _, name := range []string{"effort", "cost", "hold"} {
		if value, any := path.Changes[0][name]; any {
			t.Errorf("a change has the %s %v", name, value)
		}
	}
	for _, args := range [][]string{{"-path", "C | G"}, {"-path", "F=133211 | Bm=x24432", "-figure", "5 3"}, {"-capo", "Bb Eb F"}} {
		text := played(t, args...)
		if about := regexp.MustCompile(`(?m)^.*\bchange.*effort \d+`).FindString(text); about != "" {
			t.Errorf("%q: %s", args, about)
		}
	}
}

// The hardest change is the one with the most to do, in words too. By hand: the
// three fingers of Am each go to the next string for E; for E7 the ring lifts.
func TestTheHardestChange(t *testing.T) {
	for song, want := range map[string]string{
		"Am=x02210 | E=022100":                              "hardest from Am x02210 to E 022100, in bar 2; change 21: index moves 7.5 mm, middle moves 7.6 mm, ring moves 7.6 mm",
		"Em/A=x00000 | E7=020100":                           "change 20: index and middle are set down 1 Em/A x00000", // from the air, where no hand shifts: 10 each
		"E7=020100 | Em/A=x00000 | E7=020100 | Em/A=x00000": "hardest from Em/A x00000 to E7 020100, in bar 3; change 20",
		"Am=x02210 | Am/E=002210":                           "change 0: no finger moves",
		"Am=x02210":                                         "hardest there is no change; the hand stays",
		"F=133211 | C=x32010":                               "; F is hard to hold",
		// The grip of bar 3 stays in bar 1, and is hard: that is no change.
		"C=x-15-14-12-13-12 | G=320003 | C=x-15-14-12-13-12": "hardest from G 320003 to C x-15-14-12-13-12, in bar 3;",
	} {
		text := strings.Join(strings.Fields(played(t, "-path", song, "-words")), " ")
		if !strings.Contains(text, want) {
			t.Errorf("%s lacks %q:\n%s", song, want, text)
		}
	}
}

// Every field of an answer is named as JSON names are here.
func TestJSONNames(t *testing.T) {
	name := regexp.MustCompile(`^[a-z][A-Za-z]*$`)
	for _, a := range []answer{chordAnswer{}, nameAnswer{}, pathAnswer{}, capoAnswer{}} {
		for _, field := range reflect.VisibleFields(reflect.TypeOf(a)) {
			if field.IsExported() && !name.MatchString(field.Tag.Get("json")) {
				t.Errorf("%T.%s is named %q", a, field.Name, field.Tag.Get("json"))
			}
		}
	}
}
