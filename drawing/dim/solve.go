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
		if s.price(i, l.now, i, tight) >= tight && l.more != nil {
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
		l.now = -1
	}
}

// price is what place k of label i costs among the first n labels; it stops
// adding up when it comes to limit.
func (s *solver) price(i, k, n int, limit float64) float64 {
	c := &s.labels[i].places[k]
	sum := c.cost + s.f.weigh(c)
	for j, o := range s.labels[:n] {
		if sum >= limit {
			break
		}
		if j != i {
			sum += clash(c, &o.places[o.now])
		}
	}
	return sum
}

// choose gives label i its cheapest place among the first n labels; it tells
// whether that is another place than before.
func (s *solver) choose(i, n int) bool {
	l := s.labels[i]
	best, to := math.Inf(1), -1
	if l.now >= 0 {
		best, to = s.price(i, l.now, n, best), l.now
	}
	for _, k := range l.order {
		if l.places[k].cost >= best {
			break // the rest cannot be cheaper
		}
		if p := s.price(i, k, n, best); p < best {
			best, to = p, k
		}
	}
	moved := to != l.now
	l.now = to
	return moved
}

func (s *solver) sweep() bool {
	moved := false
	for i := range s.labels {
		moved = s.choose(i, len(s.labels)) || moved
	}
	return moved
}

// total is what a set of labels costs, clashes among them counted once.
func (s *solver) total(set []int) float64 {
	sum := 0.0
	for a, i := range set {
		c := &s.labels[i].places[s.labels[i].now]
		sum += c.cost + s.f.weigh(c)
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
		if c := &l.places[l.now]; s.price(i, l.now, n, c.cost+tight) < c.cost+tight {
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
		if s.f.weigh(c) >= tight || k == l.now {
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
		was := make([]int, len(set))
		for a, j := range set {
			was[a] = s.labels[j].now
		}
		l.now = k
		for _, j := range set[1:] {
			s.choose(j, len(s.labels))
		}
		if s.total(set) < before-1e-9 {
			return true
		}
		for a, j := range set {
			s.labels[j].now = was[a]
		}
	}
	return false
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
