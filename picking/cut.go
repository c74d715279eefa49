package picking

import "math"

// A cutter finds a minimum cut between a source and a sink by augmenting
// blocking flows over level graphs (Dinic 1970): O(nodes^2 * arcs) at worst.
// The source and the sink have no arcs of their own: what a node takes from
// the one or gives to the other is its supply. A cutter keeps its memory from
// one problem to the next.
type cutter struct {
	supply []int64 // left to send out of the node if positive, to take if negative
	first  []int32 // the node's newest arc, or none
	arcs   []arc   // each arc beside its reverse: arc a and arc a^1
	depth  []int32 // distance from the nodes with supply left, or none
	next   []int32 // the arc at which the search goes on
	queue  []int32
}

type arc struct {
	room int64 // what can still flow
	to   int32
	next int32 // the same node's arc before this one, or none
}

const (
	none       = -1
	impossible = math.MaxInt64 / 4 // more than all costs together
)

// reset makes c a graph of n nodes without arcs.
func (c *cutter) reset(n int) {
	c.supply, c.first = resize(c.supply, n), resize(c.first, n)
	c.depth, c.next = resize(c.depth, n), resize(c.next, n)
	clear(c.supply)
	for i := range c.first {
		c.first[i] = none
	}
	c.arcs = c.arcs[:0]
}

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// cost charges w if node lies on the source's side; w may be negative.
func (c *cutter) cost(node int, w int64) { c.supply[node] -= w }

// arc charges w if from lies on the source's side and to does not, and back
// the other way round.
func (c *cutter) arc(from, to int, w, back int64) {
	n := int32(len(c.arcs))
	c.arcs = append(c.arcs,
		arc{w, int32(to), c.first[from]}, arc{back, int32(from), c.first[to]})
	c.first[from], c.first[to] = n, n+1
}

// cut sends as much as it can from the source to the sink.
func (c *cutter) cut() {
	for c.layer() {
		copy(c.next, c.first)
		for node, left := range c.supply {
			if left > 0 {
				c.supply[node] -= c.send(int32(node), left)
			}
		}
	}
}

// layer measures how far each node lies from those with supply left, and
// reports whether any that can still take lies within reach.
func (c *cutter) layer() (reach bool) {
	c.queue = c.queue[:0]
	for node := range c.depth {
		c.depth[node] = none
		if c.supply[node] > 0 {
			c.depth[node] = 0
			c.queue = append(c.queue, int32(node))
		}
	}
	for i := 0; i < len(c.queue); i++ {
		node := c.queue[i]
		reach = reach || c.supply[node] < 0
		for a := c.first[node]; a != none; a = c.arcs[a].next {
			if to := c.arcs[a].to; c.arcs[a].room > 0 && c.depth[to] == none {
				c.depth[to] = c.depth[node] + 1
				c.queue = append(c.queue, to)
			}
		}
	}
	return reach
}

// send pushes up to limit out of node, ever one layer on, to nodes that can
// take, and returns how much arrived. It goes as deep as there are nodes.
func (c *cutter) send(node int32, limit int64) (sent int64) {
	if c.supply[node] < 0 {
		sent = min(limit, -c.supply[node])
		c.supply[node] += sent
	}
	for sent < limit && c.next[node] != none {
		a := c.next[node]
		if to := c.arcs[a].to; c.arcs[a].room > 0 && c.depth[to] == c.depth[node]+1 {
			pushed := c.send(to, min(limit-sent, c.arcs[a].room))
			c.arcs[a].room -= pushed
			c.arcs[a^1].room += pushed
			sent += pushed
		}
		if sent < limit { // else the arc may have room left: stay on it
			c.next[node] = c.arcs[a].next
		}
	}
	return sent
}

// onSource reports whether node lies on the source's side of the minimum cut
// with the smallest such side. It may be asked once cut has returned.
func (c *cutter) onSource(node int) bool { return c.depth[node] != none }
