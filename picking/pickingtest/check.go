package pickingtest

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"reflect"
	"testing"

	"weft.example/picking"
)

// An Encoder writes a passage, its options chosen.
type Encoder func(w io.Writer, p picking.Passage) error

// byChance is how many passages by chance Check tries beside the list.
const byChance = 30

// Check holds an encoder against what every encoder must survive, on the
// passages of [List] and on some of [Random]. It writes something, without an
// error; the same bytes each time; it leaves the passage as it was; it returns
// the error of a writer that fails, wherever that is; and it does not panic.
func Check(t testing.TB, encode Encoder) {
	t.Helper()
	cases, again := candidates(), candidates()
	for i, c := range cases {
		for _, fault := range faults(encode, c.Passage, again[i].Passage) {
			t.Errorf("%s (%s): %s", c.Name, c.Why, fault)
		}
	}
}

func candidates() []Case {
	cases := List()
	for seed := range uint64(byChance) {
		cases = append(cases, Case{fmt.Sprint("random-", seed), "by chance", Random(rand.New(rand.NewPCG(seed, 0)))})
	}
	return cases
}

// faults lists what an encoder does wrong with p, of which twin is an equal.
func faults(encode Encoder, p, twin picking.Passage) (faults []string) {
	var first bytes.Buffer
	if err := survive(encode, &first, p); err != nil {
		return []string{err.Error()}
	}
	if first.Len() == 0 {
		return []string{"nothing is written"}
	}
	if !reflect.DeepEqual(p, twin) { // before the twin is encoded, which may change it too
		faults = append(faults, "the passage is changed")
	}
	for _, q := range []picking.Passage{p, p, twin} {
		var next bytes.Buffer
		if err := survive(encode, &next, q); err != nil || !bytes.Equal(first.Bytes(), next.Bytes()) {
			faults = append(faults, fmt.Sprintf("the second time it writes %d bytes, other than the first %d (error: %v)", next.Len(), first.Len(), err))
			break
		}
	}
	return append(faults, writeFaults(encode, p, first.Len())...)
}

// writeFaults lists what goes wrong where the writer fails.
func writeFaults(encode Encoder, p picking.Passage, size int) (faults []string) {
	full := errors.New("the disk is full")
	for _, room := range []int{0, 1, size / 3, size - 1} {
		if err := survive(encode, &limited{room, full}, p); !errors.Is(err, full) {
			faults = append(faults, fmt.Sprintf("the writer fails after %d of %d bytes, and the error is %v", room, size, err))
		}
	}
	if err := survive(encode, &limited{size, full}, p); err != nil {
		faults = append(faults, fmt.Sprintf("the writer has room for all %d bytes, and the error is %v", size, err))
	}
	return faults
}

// survive encodes p and turns a panic into an error.
func survive(encode Encoder, w io.Writer, p picking.Passage) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			err = fmt.Errorf("it panics: %v", cause)
		}
	}()
	return encode(w, p)
}

// A limited writer takes so many bytes and then fails for good.
type limited struct {
	left int
	err  error
}

func (w *limited) Write(b []byte) (int, error) {
	if len(b) > w.left {
		n := w.left
		w.left = 0
		return n, w.err
	}
	w.left -= len(b)
	return len(b), nil
}
