package motion

import "container/heap"

// tree holds the leaves that can be reached from the start, each with the one
// that it was reached from. It outlives the cuts: only what hung on a leaf that
// is cut is looked at again.
type tree struct {
	from  []int32 // by leaf; none: not reached
	cost  []float64
	kids  [][]int32
	front queue
}

// none is no leaf; root is what the start was reached from.
const (
	none int32 = -2
	root int32 = -1
)

func (t *tree) grow(n int) {
	for len(t.from) < n {
		t.from, t.cost, t.kids = append(t.from, none), append(t.cost, 0), append(t.kids, nil)
	}
}

func (t *tree) in(i int32) bool { return int(i) < len(t.from) && t.from[i] != none }

// trail is a chain of leaves that are not shut, from the start to the end, nil if
// there is none.
func (s *search) trail() []int32 {
	t := &s.tree
	t.grow(len(s.cells))
	if start := s.at(s.start); !t.in(start) {
		if s.cells[start].state >= unclear {
			return nil
		}
		s.visit(start, root, 0)
		if s.to == nil && s.ends(start) {
			return s.back(start)
		}
	}
	goal := none
	if s.to != nil {
		goal = s.at(*s.to)
		if s.cells[goal].state >= unclear {
			return nil
		}
		if t.in(goal) {
			return s.back(goal)
		}
	}
	for t.front.Len() > 0 {
		e := heap.Pop(&t.front).(entry)
		if t.in(e.cell) || !t.in(e.from) || !s.cells[e.cell].leaf() || s.cells[e.cell].state >= unclear {
			continue
		}
		s.visit(e.cell, e.from, t.cost[e.from]+s.cost(e.from, e.cell))
		if e.cell == goal || s.to == nil && s.ends(e.cell) {
			return s.back(e.cell)
		}
	}
	return nil
}

// ends tells whether a leaf may hold a pose in which the part is out.
func (s *search) ends(i int32) bool {
	c := &s.cells[i]
	return c.past >= 0 || c.past+c.half >= 0 && (c.state != free || c.half >= smallest)
}

// visit notes that a leaf can be reached, and what can be reached from it.
func (s *search) visit(i, from int32, cost float64) {
	t := &s.tree
	t.from[i], t.cost[i] = from, cost
	if from >= 0 {
		t.kids[from] = append(t.kids[from], i)
	}
	for _, n := range s.beside(i) {
		if !t.in(n) {
			s.offer(n, i)
		}
	}
}

func (s *search) offer(i, from int32) {
	heap.Push(&s.tree.front, entry{i, from, s.tree.cost[from] + s.cost(from, i) + s.guess(i)})
}

// drop forgets a leaf that is to be cut, and all that was reached through it; what
// can be reached from elsewhere is offered again.
func (s *search) drop(i int32) {
	t := &s.tree
	if !t.in(i) {
		return
	}
	var lost []int32
	for stack := []int32{i}; len(stack) > 0; {
		k := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		t.from[k] = none
		lost = append(lost, k)
		for _, kid := range t.kids[k] {
			if t.from[kid] == k {
				stack = append(stack, kid)
			}
		}
		t.kids[k] = t.kids[k][:0]
	}
	for _, k := range lost[1:] {
		s.offerFromAround(k)
	}
}

func (s *search) offerFromAround(i int32) {
	for _, n := range s.beside(i) {
		if s.tree.in(n) {
			s.offer(i, n)
		}
	}
}

// back is the chain of leaves to one that was reached.
func (s *search) back(i int32) []int32 {
	var out []int32
	for ; i >= 0; i = s.tree.from[i] {
		out = append(out, i)
	}
	for a, b := 0, len(out)-1; a < b; a, b = a+1, b-1 {
		out[a], out[b] = out[b], out[a]
	}
	return out
}

// entry and queue are what can be reached next, the most promising first.
type entry struct {
	cell, from int32
	cost       float64
}
type queue []entry

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	if q[i].cost != q[j].cost {
		return q[i].cost < q[j].cost
	}
	return q[i].cell < q[j].cell
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(entry)) }
func (q *queue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
