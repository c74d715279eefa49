package voicing

import (
	"math"
	"slices"
)

// A found is a shape with its cost.
type found struct {
	cost  int
	shape held
}

// compare orders by cost, then by the thickest string that differs: the lower
// fret first, muted last.
func (a *found) compare(b *found) int {
	if a.cost != b.cost {
		return a.cost - b.cost
	}
	for s := len(a.shape) - 1; s >= 0; s-- {
		if a.shape[s] != b.shape[s] {
			return int(uint8(a.shape[s])) - int(uint8(b.shape[s])) // muted, -1, becomes 255
		}
	}
	return 0
}

// A ranking keeps the cheapest shapes as a heap, the dearest at the top.
type ranking struct {
	most    int
	ceiling int // of the cost
	heap    []found
}

func (r *ranking) full() bool { return len(r.heap) >= r.most }

// worst returns the cost that a shape must not pass to be kept.
func (r *ranking) worst() int {
	if r.full() {
		return r.heap[0].cost
	}
	return r.ceiling
}

func (r *ranking) add(f found) {
	if r.most == math.MaxInt { // nothing is ever dropped, so nothing need be found again
		r.heap = append(r.heap, f)
	} else if !r.full() {
		r.heap = append(r.heap, f)
		r.rise(len(r.heap) - 1)
	} else if f.compare(&r.heap[0]) < 0 {
		r.heap[0] = f
		r.sink(0)
	}
}

func (r *ranking) rise(at int) {
	for at > 0 {
		parent := (at - 1) / 2
		if r.heap[at].compare(&r.heap[parent]) <= 0 {
			return
		}
		r.heap[at], r.heap[parent] = r.heap[parent], r.heap[at]
		at = parent
	}
}

func (r *ranking) sink(at int) {
	for {
		child := 2*at + 1
		if child >= len(r.heap) {
			return
		}
		if child+1 < len(r.heap) && r.heap[child+1].compare(&r.heap[child]) > 0 {
			child++
		}
		if r.heap[child].compare(&r.heap[at]) <= 0 {
			return
		}
		r.heap[at], r.heap[child] = r.heap[child], r.heap[at]
		at = child
	}
}

// sorted returns what is kept by rising cost; r is then done with. Sorting keys
// of cost and place takes half the time of sorting shapes; shapes of one cost
// are then put in order.
func (r *ranking) sorted() []found {
	keys := make([]uint64, len(r.heap))
	for i := range r.heap {
		keys[i] = uint64(r.heap[i].cost)<<32 | uint64(i)
	}
	slices.Sort(keys)
	shapes := make([]found, len(keys))
	for i, from := 0, 0; i < len(keys); i++ {
		shapes[i] = r.heap[uint32(keys[i])]
		if shapes[i].cost != shapes[from].cost {
			from = i
		}
		for at := i; at > from && shapes[at].compare(&shapes[at-1]) < 0; at-- {
			shapes[at], shapes[at-1] = shapes[at-1], shapes[at]
		}
	}
	return shapes
}
