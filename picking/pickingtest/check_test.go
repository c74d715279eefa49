package pickingtest

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"weft.example/picking"
)

// A recorder stands in for a test and keeps what is said against an encoder.
type recorder struct {
	testing.TB
	said []string
}

func (r *recorder) Helper() {}

func (r *recorder) Errorf(format string, values ...any) {
	r.said = append(r.said, fmt.Sprintf(format, values...))
}

// good is an encoder that does nothing wrong.
func good(w io.Writer, p picking.Passage) error {
	b := bufio.NewWriter(w)
	fmt.Fprintln(b, p.Title, p.Meter, p.Tempo)
	for _, pick := range p.Picks() {
		fmt.Fprintln(b, pick.At, pick.String, pick.Fret, pick.Stroke)
	}
	return b.Flush()
}

func TestCheckPassesAGoodEncoder(t *testing.T) { Check(t, good) }

func TestCheckFailsABadEncoder(t *testing.T) {
	runs := 0
	for _, c := range []struct {
		why, want string
		bad       Encoder
	}{
		{"an error on some passage", "no silence, please", func(w io.Writer, p picking.Passage) error {
			for range p.Picks() {
				return good(w, p)
			}
			return errors.New("no silence, please")
		}},
		{"a panic on some passage", "it panics: runtime error: index out of range", func(w io.Writer, p picking.Passage) error {
			_ = p.Bars[0].Picks[0]
			return good(w, p)
		}},
		{"nothing written", "nothing is written", func(io.Writer, picking.Passage) error { return nil }},
		{"other bytes", "the second time", func(w io.Writer, p picking.Passage) error {
			runs++
			fmt.Fprintln(w, runs)
			return good(w, p)
		}},
		{"a pick changed", "the passage is changed", func(w io.Writer, p picking.Passage) error {
			err := good(w, p)
			for _, bar := range p.Bars {
				for i := range bar.Picks {
					bar.Picks[i].Rings = 1
				}
			}
			return err
		}},
		{"an error of the writer not returned", "the writer fails after 0 of", func(w io.Writer, p picking.Passage) error {
			_ = good(w, p)
			return nil
		}},
		{"an error of the last write not returned", "bytes, and the error is <nil>", func(w io.Writer, p picking.Passage) error {
			err := good(w, p)
			fmt.Fprintln(w, "end")
			return err
		}},
		{"an error of its own in place of the writer's", "and the error is no room", func(w io.Writer, p picking.Passage) error {
			if good(w, p) != nil {
				return errors.New("no room")
			}
			return nil
		}},
		{"a panic where the writer fails", "and the error is it panics", func(w io.Writer, p picking.Passage) error {
			if err := good(w, p); err != nil {
				panic(err.Error())
			}
			return nil
		}},
	} {
		r := &recorder{TB: t}
		Check(r, c.bad)
		if said := strings.Join(r.said, "\n"); !strings.Contains(said, c.want) {
			t.Errorf("%s: want %q, got %q", c.why, c.want, said)
		}
	}
}
