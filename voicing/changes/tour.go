package changes

import "math"

// A stage holds the grips that one chord may have.
type stage struct{ holds []hold }

// A tour is the choice of one hold at every stage.
type tour struct {
	neck   *neck
	stages []*stage
	steps  []int // of the stages
	loop   bool  // never with fewer than two stages
	links  []*link
}

// A link prices the changes from the holds of a stage to those of the next.
type link struct {
	costs []int32 // of the change from a to b in points, at b*width+a
	width int
	from  []hold
	to    []hold
}

func newLink(from, to *stage) *link {
	l := &link{costs: make([]int32, 0, len(from.holds)*len(to.holds)), width: len(from.holds), from: from.holds, to: to.holds}
	for b := range to.holds {
		for a := range from.holds {
			l.costs = append(l.costs, int32(cost(&from.holds[a], &to.holds[b]).Total()))
		}
	}
	return l
}

// arrivals lists the stages to which a change leads, the first one last.
func (t *tour) arrivals() []int {
	var all []int
	for i := 1; i < len(t.stages); i++ {
		all = append(all, i)
	}
	if t.loop {
		all = append(all, 0)
	}
	return all
}

// choose returns the best hold of each stage.
func (t *tour) choose(aim Aim) []int {
	if len(t.stages) == 0 {
		return nil
	}
	t.connect()
	limit := math.MaxInt
	if aim == LeastWorst {
		limit, _ = t.search(LeastWorst, limit)
	}
	_, chosen := t.search(LeastTotal, limit)
	return chosen
}

// connect prices all changes, those between the same two stages once.
// links[i] leads to stage i.
func (t *tour) connect() {
	known := map[[2]*stage]*link{}
	t.links = make([]*link, len(t.stages))
	for _, to := range t.arrivals() {
		pair := [2]*stage{t.stages[(to+len(t.stages)-1)%len(t.stages)], t.stages[to]}
		if known[pair] == nil {
			known[pair] = newLink(pair[0], pair[1])
		}
		t.links[to] = known[pair]
	}
}

// never stands above every value of a path.
const never = math.MaxInt

// search returns the least value of all tours whose changes take no more
// effort than limit, and a tour that has it. The value is the total, or the
// most effort that a change takes.
func (t *tour) search(aim Aim, limit int) (int, []int) {
	if !t.loop {
		row := make([]int, len(t.stages[0].holds))
		for a := range row {
			if aim == LeastTotal {
				row[a] = t.stages[0].holds[a].price
			}
		}
		w := walk{aim: aim, limit: limit, below: never}
		for i := 1; i < len(t.stages); i++ {
			row = w.step(t.links[i], row)
		}
		end := least(row)
		return row[end], w.back(end)
	}
	return t.searchLoop(aim, limit)
}

// searchLoop tries every hold of the stage with the fewest, from which the walk
// goes round once.
func (t *tour) searchLoop(aim Aim, limit int) (best int, chosen []int) {
	n, first := len(t.stages), 0
	for i := range t.stages {
		if len(t.stages[i].holds) < len(t.stages[first].holds) {
			first = i
		}
	}
	best = never
	for start := range t.stages[first].holds {
		row := make([]int, len(t.stages[first].holds))
		for a := range row {
			row[a] = never
		}
		row[start] = 0
		w := walk{aim: aim, limit: limit, below: best}
		for i := 1; i <= n; i++ {
			row = w.step(t.links[(first+i)%n], row)
		}
		if row[start] < best {
			best = row[start]
			round := w.back(start)[:n]
			chosen = append(append([]int(nil), round[n-first:]...), round[:n-first]...)
		}
	}
	return best, chosen
}

// A walk goes through the stages and remembers from which hold each is best
// reached.
type walk struct {
	aim   Aim
	limit int // of the effort of a change
	below int // values from here on are of no interest
	came  [][]int32
}

// step returns the least value of the walks to each hold of the next stage,
// given those to each hold of this one.
func (w *walk) step(l *link, row []int) []int {
	next := make([]int, len(l.to))
	came := make([]int32, len(l.to))
	for b := range l.to {
		next[b] = w.below
		costs := l.costs[b*l.width : (b+1)*l.width]
		for a, value := range row {
			if value >= next[b] {
				continue
			}
			effort := effort(int(costs[a]), &l.from[a], &l.to[b])
			if effort > w.limit {
				continue
			}
			if w.aim == LeastWorst {
				value = max(value, effort)
			} else {
				value += changeShare*int(costs[a]) + l.to[b].price
			}
			if value < next[b] {
				next[b], came[b] = value, int32(a)
			}
		}
		if next[b] == w.below {
			next[b] = never
		}
	}
	w.came = append(w.came, came)
	return next
}

// back returns the holds of the walk that ends at hold end, that one last.
func (w *walk) back(end int) []int {
	chosen := make([]int, len(w.came)+1)
	chosen[len(w.came)] = end
	for i := len(w.came) - 1; i >= 0; i-- {
		chosen[i] = int(w.came[i][chosen[i+1]])
	}
	return chosen
}

// least returns the index of the least value, the first of several.
func least(row []int) int {
	at := 0
	for i, value := range row {
		if value < row[at] {
			at = i
		}
	}
	return at
}
