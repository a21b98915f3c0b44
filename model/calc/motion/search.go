package motion

import "math"

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
	unclear bool // some boxes were set aside
	tree    tree
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
		trail := s.trail()
		switch {
		case trail == nil && s.unclear:
			return Answer{Verdict: GaveUp, Looks: s.looks}
		case trail == nil:
			return Answer{Verdict: NoWay, Looks: s.looks, Bounded: s.bounded()}
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
		s.drop(i)
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
	s.drop(i)
	s.cells[i].state = unclear
	s.unclear = true
}

// bounded tells whether all that can be reached keeps off the bounds.
func (s *search) bounded() bool {
	for i := range s.cells {
		if s.tree.in(int32(i)) && s.atBound(&s.cells[i]) {
			return false
		}
	}
	return true
}

func (s *search) atBound(c *cell) bool {
	for _, w := range s.p.Ways {
		if c.lo[w] == s.cells[0].lo[w] || c.hi[w] == s.cells[0].hi[w] {
			return true
		}
	}
	return false
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

// far stands for "nothing near".
const far = math.MaxFloat64
