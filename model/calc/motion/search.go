package motion

import (
	"container/heap"
	"math"
)

// search is the work on one problem.
type search struct {
	p       Problem
	part    *posed
	reach   coords
	out     vec
	from    coords
	start   coords // from, once the part has been lifted off what it lies on
	to      *coords
	cells   []cell
	looks   int
	unclear bool      // some boxes were set aside
	best    []float64 // cost of the best way to each leaf so far
	came    []int32
	round   []int32 // in which best and came were set
	turn    int32
}

// smallest is the size of a box that is not cut on: nobody holds a slab that
// still.
const smallest = 0.02

// Search looks for a way. The same problem gives the same answer.
func Search(p Problem) Answer {
	if p.Looks == 0 {
		p.Looks = usualLooks
	}
	s := &search{p: p, part: newPosed(p.Part), reach: reach(p.Part), out: of(p.Out), from: p.From.coords()}
	lo, hi := s.from, s.from
	for _, w := range p.Ways {
		lo[w], hi[w] = p.Low.coords()[w], p.High.coords()[w]
	}
	if p.To != nil {
		to := p.To.coords()
		s.to = &to
	}
	s.add(lo, hi, false)
	if !s.cells[0].holds(s.from) || s.to != nil && !s.cells[0].holds(*s.to) {
		return Answer{Verdict: NoWay, Looks: s.looks}
	}
	s.start = s.loosen()
	for s.looks < p.Looks {
		trail, bounded := s.trail()
		switch {
		case trail == nil && s.unclear:
			return Answer{Verdict: GaveUp, Looks: s.looks}
		case trail == nil:
			return Answer{Verdict: NoWay, Looks: s.looks, Bounded: bounded}
		case !s.refine(trail):
			return Answer{Verdict: Found, Way: s.shorten(s.poses(trail)), Looks: s.looks}
		}
	}
	return Answer{Verdict: GaveUp, Looks: s.looks}
}

// refine cuts the boxes of a trail that are not known to be free, and sets those
// aside that are as small as they get. It does nothing to a trail that is free.
func (s *search) refine(trail []int32) bool {
	done := false
	for k, i := range trail {
		c := &s.cells[i]
		if c.state == free && (k < len(trail)-1 || s.to != nil || c.past >= 0) {
			continue
		}
		done = true
		if c.half < smallest {
			s.setAside(i)
			continue
		}
		s.cut(i)
		for _, kid := range s.cells[i].kids {
			if c := &s.cells[kid]; c.state == open && c.half >= smallest {
				s.cut(kid)
			}
		}
	}
	return done
}

func (s *search) setAside(i int32) {
	for _, n := range s.beside(i) {
		s.cells[n].beside = nil
	}
	s.cells[i].state = unclear
	s.unclear = true
}

// trail is the cheapest chain of leaves from the start to the end that are not
// shut, nil if there is none; bounded tells whether all that can be reached
// then keeps off the bounds.
func (s *search) trail() ([]int32, bool) {
	s.turn++
	for len(s.best) < len(s.cells) {
		s.best, s.came, s.round = append(s.best, 0), append(s.came, 0), append(s.round, 0)
	}
	start := s.at(s.start)
	if s.cells[start].state >= unclear {
		return nil, true
	}
	goal := int32(-1)
	if s.to != nil {
		goal = s.at(*s.to)
		if s.cells[goal].state >= unclear {
			return nil, false
		}
	}
	s.best[start], s.came[start], s.round[start] = 0, -1, s.turn
	open := &queue{{start, s.guess(start)}}
	done := make([]bool, len(s.cells))
	bounded := true
	for open.Len() > 0 {
		i := heap.Pop(open).(entry).cell
		if done[i] {
			continue
		}
		done[i] = true
		c := &s.cells[i]
		if i == goal || s.to == nil && (c.past >= 0 || c.state != free && c.past+c.half >= 0 || c.state == free && c.past+c.half >= 0 && c.half >= smallest) {
			return s.back(i), false
		}
		bounded = bounded && !s.atBound(c)
		for _, n := range s.beside(i) {
			if s.cells[n].state >= unclear || done[n] {
				continue
			}
			cost := s.best[i] + s.cost(i, n)
			if s.round[n] != s.turn || cost < s.best[n] {
				s.best[n], s.came[n], s.round[n] = cost, i, s.turn
				heap.Push(open, entry{n, cost + s.guess(n)})
			}
		}
	}
	return nil, bounded
}

func (s *search) atBound(c *cell) bool {
	for _, w := range s.p.Ways {
		if c.lo[w] == s.cells[0].lo[w] || c.hi[w] == s.cells[0].hi[w] {
			return true
		}
	}
	return false
}

func (s *search) back(i int32) []int32 {
	var out []int32
	for ; i >= 0; i = s.came[i] {
		out = append(out, i)
	}
	for a, b := 0, len(out)-1; a < b; a, b = a+1, b-1 {
		out[a], out[b] = out[b], out[a]
	}
	return out
}

// cost of going on to a neighbour: its distance, more if it may collide.
func (s *search) cost(i, n int32) float64 {
	c := &s.cells[n]
	d := s.reach.move(c.mid().minus(s.cells[i].mid()))
	if c.state == free {
		return d
	}
	w := 1 - min(1, max(0, (c.gap+c.half)/(2*c.half)))
	return d * (1.2 + 10*w*w)
}

// guess is no more than the way that is still to go.
func (s *search) guess(i int32) float64 {
	c := &s.cells[i]
	if s.to == nil {
		return max(0, -c.past-c.half)
	}
	return max(0, s.reach.move(s.to.minus(c.mid()))-c.half)
}

// poses goes through the boxes of a trail, by their common faces.
func (s *search) poses(trail []int32) []coords {
	out := []coords{s.from, s.start}
	if s.from == s.start {
		out = out[:1]
	}
	for k, i := range trail {
		if k > 0 {
			out = append(out, s.door(trail[k-1], i))
		}
		if k > 0 && k < len(trail)-1 {
			out = append(out, s.cells[i].mid())
		}
	}
	if s.to != nil {
		return append(out, *s.to)
	}
	return append(out, s.cells[trail[len(trail)-1]].mid())
}

// door is the middle of the face that two leaves share.
func (s *search) door(a, b int32) coords {
	p, q := &s.cells[a], &s.cells[b]
	out := s.from
	for _, w := range s.p.Ways {
		out[w] = (max(p.lo[w], q.lo[w]) + min(p.hi[w], q.hi[w])) / 2
	}
	return out
}

// entry and queue are the front of the search.
type entry struct {
	cell int32
	cost float64
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

// far stands for "nothing near".
const far = math.MaxFloat64
