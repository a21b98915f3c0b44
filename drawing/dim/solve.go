package dim

import (
	"math"
	"slices"
)

// solver chooses a place for each label so that the sum of all prices is low:
// one after the other, then each again among the others until nothing
// improves, then by moving pairs that clash. There is no chance in it.
type solver struct {
	f      *field
	labels []*label
	near   []int // labels within reach of the one that is choosing
}

// Bounds on the work.
const (
	sweeps     = 8
	rescues    = 3  // rounds that move others out of the way
	rescueTry  = 12 // cheapest places tried for a label that clashes
	chainLimit = 3  // labels moved out of the way for one
)

func (s *solver) run() {
	for i, l := range s.labels {
		l.sort()
		l.now = -1
		s.choose(i, i)
		if s.price(i, l.now, s.among(l, i), tight) >= tight && l.more != nil {
			s.widen(l)
			s.choose(i, i)
		}
	}
	for range sweeps {
		if !s.sweep() {
			break
		}
	}
	for range rescues {
		if !s.rescue() {
			break
		}
		s.sweep()
	}
}

func (s *solver) widen(l *label) {
	if more := l.more; more != nil {
		l.more = nil
		l.places = append(l.places, more()...)
		l.sort()
		s.moved(l, l.now)
		l.now = -1
	}
}

// among gives those of the first n labels that stand within reach of a label.
// The slice is good until the next call.
func (s *solver) among(l *label, n int) []int {
	s.near = s.near[:0]
	for j, o := range s.labels[:n] {
		if o == l {
			continue
		}
		if c := &o.places[o.now]; !apart(l.min, l.max, c.min, c.max) {
			s.near = append(s.near, j)
		}
	}
	return s.near
}

// price is what place k of label i costs among others; it stops adding up when
// it comes to limit.
func (s *solver) price(i, k int, others []int, limit float64) float64 {
	c := &s.labels[i].places[k]
	sum := c.cost + s.f.weigh(c, limit)
	for _, j := range others {
		if sum >= limit {
			break
		}
		o := s.labels[j]
		sum += clash(c, &o.places[o.now])
	}
	return sum
}

// moved tells the others within reach that label l has left place k.
func (s *solver) moved(l *label, k int) {
	l.rest = false
	for _, o := range s.labels {
		for _, p := range [...]int{k, l.now} {
			if p >= 0 && o != l && o.rest {
				c := &l.places[p]
				o.rest = apart(o.min, o.max, c.min, c.max)
			}
		}
	}
}

// choose gives label i its cheapest place among the first n labels; it tells
// whether that is another place than before.
func (s *solver) choose(i, n int) bool {
	l := s.labels[i]
	best, to := math.Inf(1), -1
	others := s.among(l, n)
	if l.now >= 0 {
		best, to = s.price(i, l.now, others, best), l.now
	}
	for _, k := range l.order {
		if l.places[k].cost >= best {
			break // the rest cannot be cheaper
		}
		if p := s.price(i, k, others, best); p < best {
			best, to = p, k
		}
	}
	was := l.now
	l.now = to
	if to != was {
		s.moved(l, was)
	}
	return to != was
}

func (s *solver) sweep() bool {
	moved := false
	for i, l := range s.labels {
		if !l.rest {
			moved = s.choose(i, len(s.labels)) || moved
			l.rest = true
		}
	}
	return moved
}

// total is what a set of labels costs, clashes among them counted once.
func (s *solver) total(set []int) float64 {
	sum := 0.0
	for a, i := range set {
		c := &s.labels[i].places[s.labels[i].now]
		sum += c.cost + s.f.weigh(c, math.Inf(1))
		for j, o := range s.labels {
			if j != i && !slices.Contains(set[:a], j) {
				sum += clash(c, &o.places[o.now])
			}
		}
	}
	return sum
}

// rescue moves labels that stand in the way of one that has no place; it tells
// whether anything improved.
func (s *solver) rescue() bool {
	better := false
	n := len(s.labels)
	for i, l := range s.labels {
		if c := &l.places[l.now]; s.price(i, l.now, s.among(l, n), c.cost+tight) < c.cost+tight {
			continue
		}
		if l.more != nil {
			s.widen(l)
			s.choose(i, n)
			better = true
			continue
		}
		better = s.shove(i) || better
	}
	return better
}

// shove tries places of label i that only others make impossible, and moves
// those others.
func (s *solver) shove(i int) bool {
	l := s.labels[i]
	tried := 0
	for _, k := range l.order {
		c := &l.places[k]
		if s.f.weigh(c, c.cost+tight) >= tight || k == l.now {
			continue
		}
		if tried++; tried > rescueTry {
			return false
		}
		set := []int{i}
		for j, o := range s.labels {
			if j != i && clash(c, &o.places[o.now]) >= tight {
				set = append(set, j)
			}
		}
		if len(set) > chainLimit+1 {
			continue
		}
		before := s.total(set)
		rest := s.resting()
		was := make([]int, len(set))
		for a, j := range set {
			was[a] = s.labels[j].now
		}
		from := l.now
		l.now = k
		s.moved(l, from)
		for _, j := range set[1:] {
			s.choose(j, len(s.labels))
		}
		if s.total(set) < before-1e-9 {
			return true
		}
		for a, j := range set {
			s.labels[j].now = was[a]
		}
		for j, o := range s.labels {
			o.rest = rest[j]
		}
	}
	return false
}

func (s *solver) resting() []bool {
	out := make([]bool, len(s.labels))
	for j, l := range s.labels {
		out[j] = l.rest
	}
	return out
}

// unreadable tells whether label i came to stand under or over something.
func (s *solver) unreadable(i int) bool {
	c := &s.labels[i].places[s.labels[i].now]
	if s.f.covered(c) || c.strikesItself() {
		return true
	}
	for j, o := range s.labels {
		if j != i && c.spoils(&o.places[o.now]) {
			return true
		}
	}
	return false
}
