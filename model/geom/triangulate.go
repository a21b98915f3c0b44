package geom

import "slices"

// Triangles covers the region exactly with triangles, counter-clockwise, whose
// corners are the corners of its loops. Every corner is used, also those in
// line with their neighbours, and no triangle is without area. A piece with n
// corners in all its loops, at v places, and h holes has 2v-n+2h-2 triangles.
func (r Region) Triangles() [][3]Vec {
	var out [][3]Vec
	for _, pc := range r.pieces {
		pts, tris, ok := cutUp(pc, 0)
		if !ok {
			panic("geom: the loops of a region cross")
		}
		for _, t := range tris {
			out = append(out, [3]Vec{pts[t[0]].vec(), pts[t[1]].vec(), pts[t[2]].vec()})
		}
	}
	return out
}

// band is a side of the loops that the sweep line crosses, with what lies
// between it and the next one above.
type band struct {
	lo, hi int32   // left and right end of the side
	inside bool    // the place above the side is inside
	chain  []int32 // right end of what is cut already, from this side up to the next
}

// sweep triangulates from left to right. Seen from the right, what is cut
// already ends in each band in a chain of vertices that bulges out; a new
// vertex is joined to all of the chain it can see.
// (After S. Hertel, K. Mehlhorn, Fast triangulation of simple polygons, 1983.)
type sweep struct {
	pts   []pt
	ends  []int32 // how many sides end in each vertex
	sides []band  // sides still to come, by left end, from the lowest upwards
	bands []band  // sides under the sweep line, from the lowest upwards
	out   [][3]int32
	slack float64 // vertices this close to the line through two others are in line with them
}

// cutUp triangulates loops that meet in common vertices only, the inside being
// on their left. The triangles count in the sorted points. It is not ok if the
// loops are seen to cross.
func cutUp(loops [][]pt, slack float64) (pts []pt, tris [][3]int32, ok bool) {
	s := sweep{slack: slack}
	for _, loop := range loops {
		s.pts = append(s.pts, loop...)
	}
	slices.SortFunc(s.pts, compare)
	s.pts = slices.Compact(s.pts)
	s.ends = make([]int32, len(s.pts))
	for _, loop := range loops {
		from, _ := slices.BinarySearchFunc(s.pts, loop[len(loop)-1], compare)
		for _, p := range loop {
			to, _ := slices.BinarySearchFunc(s.pts, p, compare)
			e := band{lo: int32(from), hi: int32(to), inside: true}
			if to < from {
				e = band{lo: int32(to), hi: int32(from)}
			}
			if from != to {
				s.sides = append(s.sides, e)
				s.ends[e.hi]++
			}
			from = to
		}
	}
	slices.SortFunc(s.sides, func(e, f band) int {
		if e.lo != f.lo {
			return int(e.lo - f.lo)
		}
		return -signOf(orient(s.pts[e.lo], s.pts[e.hi], s.pts[f.hi]))
	})
	for v := range s.pts {
		if !s.pass(int32(v)) {
			return s.pts, nil, false
		}
	}
	return s.pts, s.out, true
}

func signOf(x int64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// pass moves the sweep line over vertex v; false if the sides around it do not
// fit together.
func (s *sweep) pass(v int32) bool {
	from, to := s.ending(v)
	n := 0
	for n < len(s.sides) && s.sides[n].lo == v {
		s.sides[n].chain = []int32{v}
		n++
	}
	if int32(to-from) != s.ends[v] || n+to-from == 0 {
		return false
	}
	var below, above band
	if from > 0 {
		below = s.bands[from-1]
	}
	if from == to {
		above = below
		if below.inside {
			below.chain, above.chain = s.part(below.chain, v)
		}
	} else {
		above = s.bands[to-1]
		for _, b := range s.bands[from : to-1] {
			if b.inside {
				s.low(b.chain, v)
			}
		}
		if below.inside {
			below.chain = s.high(below.chain, v)
		}
		if above.inside {
			above.chain = s.low(above.chain, v)
		}
	}
	top := below
	if n > 0 {
		top = s.sides[n-1]
	}
	if top.inside != above.inside {
		return false
	}
	if n > 0 {
		s.sides[n-1].chain = above.chain
	} else if below.inside {
		below.chain = append(below.chain, above.chain[1:]...)
	}
	if from > 0 {
		s.bands[from-1] = below
	}
	s.bands = slices.Replace(s.bands, from, to, s.sides[:n]...)
	s.sides = s.sides[n:]
	return true
}

// ending is the range of bands whose sides end in v; if there are none, v lies
// above the band before.
func (s *sweep) ending(v int32) (from, to int) {
	at := func(b band) int { return -signOf(orient(s.pts[b.lo], s.pts[b.hi], s.pts[v])) }
	from, _ = slices.BinarySearchFunc(s.bands, 0, func(b band, _ int) int { return at(b) })
	to = from
	for to < len(s.bands) && s.bands[to].hi == v {
		to++
	}
	return from, to
}

// sees tells whether v, to the right of the chain, sees its piece from a up to b.
func (s *sweep) sees(a, v, b int32) bool {
	p, q, r := s.pts[a], s.pts[v], s.pts[b]
	o := orient(p, q, r)
	if s.slack == 0 || o <= 0 {
		return o > 0
	}
	return float64(o) > s.slack*float64(max(apart(p, q), apart(q, r), apart(r, p)))
}

// low adds v at the lower end of a chain.
func (s *sweep) low(chain []int32, v int32) []int32 {
	i := 0
	for ; i+1 < len(chain) && s.sees(chain[i], v, chain[i+1]); i++ {
		s.out = append(s.out, [3]int32{chain[i], v, chain[i+1]})
	}
	return append([]int32{v}, chain[i:]...)
}

// high adds v at the upper end of a chain.
func (s *sweep) high(chain []int32, v int32) []int32 {
	i := len(chain) - 1
	for ; i > 0 && s.sees(chain[i-1], v, chain[i]); i-- {
		s.out = append(s.out, [3]int32{chain[i-1], v, chain[i]})
	}
	return append(chain[:i+1], v)
}

// part divides a chain at v, which lies to the right of its middle. The
// chain's rightmost vertex is in sight for sure.
func (s *sweep) part(chain []int32, v int32) (lower, upper []int32) {
	m := 0
	for i, c := range chain {
		if c > chain[m] {
			m = i
		}
	}
	upper = s.low(chain[m:], v)
	lower = s.high(slices.Clone(chain[:m+1]), v)
	return lower, upper
}
