package survey

import (
	"math"
	"sort"

	"slabwright/model/geom"
)

// wall is a wall of the chain, or any pair of points whose line may be bowed.
type wall struct{ from, to int }

// system is a network made ready for the computation.
//
// Coordinates are one list x: x0, y0, x1, y1, ... in the order of names, then
// the bows. Unknowns are those of them that nothing holds.
type system struct {
	names   []Point
	number  map[Point]int
	chain   []int
	closed  bool
	turns   []Turn // by point
	bowed   []wall
	rows    []row
	unknown []int // entry of x of each unknown
	column  []int // unknown of each entry of x, -1 when it is held
	free    bool
	base    wall // points of the base, or -1
	fixed   map[int]geom.Vec
	signed  bool // some reading tells left from right
}

// prepare turns a checked network into a system.
func prepare(n *Network) (*system, error) {
	s := &system{number: map[Point]int{}, closed: n.Closed, base: wall{-1, -1}, fixed: map[int]geom.Vec{}}
	for _, p := range n.Chain {
		s.chain = append(s.chain, s.point(p))
	}
	for _, f := range n.Fixed {
		s.fixed[s.point(f.Point)] = f.At
	}
	for _, r := range n.Readings {
		for _, p := range r.Points {
			if _, ok := s.number[p]; len(n.Chain) > 0 && !ok {
				return nil, bad(r, "there is no corner %q", p)
			}
			s.point(p)
		}
	}
	if len(s.names) < 2 {
		return nil, badNetwork("there is nothing to adjust: fewer than two points")
	}
	if err := s.hold(n); err != nil {
		return nil, err
	}
	s.turns = make([]Turn, len(s.names))
	for i, p := range s.names {
		s.turns[i] = n.Turns[p]
	}
	for _, r := range n.Readings {
		if r.Kind == Bow {
			s.addBow(r)
		}
	}
	for _, r := range n.Readings {
		w, err := s.compile(r)
		if err != nil {
			return nil, err
		}
		w.sd = n.Accuracy.of(r)
		s.rows = append(s.rows, w)
		s.signed = s.signed || r.Kind == Angle || r.Kind == Interior || r.Kind == Width || r.Kind == Offset
	}
	s.column = make([]int, 2*len(s.names)+len(s.bowed))
	for i := range s.column {
		s.column[i] = -1
		if !s.held(i) {
			s.column[i] = len(s.unknown)
			s.unknown = append(s.unknown, i)
		}
	}
	if len(s.rows) == 0 || len(s.unknown) == 0 {
		return nil, badNetwork("there is nothing to adjust: no readings, or no unknown coordinates")
	}
	return s, nil
}

func (s *system) point(p Point) int {
	if i, ok := s.number[p]; ok {
		return i
	}
	i := len(s.names)
	s.names, s.number[p] = append(s.names, p), i
	return i
}

// hold settles what keeps the network in place.
func (s *system) hold(n *Network) error {
	if len(n.Fixed) > 0 {
		return nil
	}
	if n.Base == [2]Point{} {
		s.free = true
		return nil
	}
	a, ok := s.number[n.Base[0]]
	b, ok2 := s.number[n.Base[1]]
	if !ok || !ok2 || a == b {
		return badNetwork("the base wall from %q to %q is not between two known corners", n.Base[0], n.Base[1])
	}
	s.base = wall{a, b}
	return nil
}

// held says whether entry i of x is fixed: a given coordinate, the first point
// of the base, or how far its second point is off the x axis.
func (s *system) held(i int) bool {
	p := i / 2
	if i >= 2*len(s.names) {
		return false
	}
	_, given := s.fixed[p]
	return given || p == s.base.from || (p == s.base.to && i%2 == 1)
}

// addBow makes an unknown for the bow of a wall, once.
func (s *system) addBow(r Reading) {
	a, b := s.number[r.Points[0]], s.number[r.Points[1]]
	if i, _ := s.bowOf(a, b); i >= 0 {
		return
	}
	if s.next(b) == a {
		a, b = b, a
	}
	s.bowed = append(s.bowed, wall{a, b})
}

// bowOf finds the bow of the line between two points, -1 for a straight one,
// and the side to which it pushes seen from a to b: +1 is left.
func (s *system) bowOf(a, b int) (int, float64) {
	for i, w := range s.bowed {
		switch w {
		case wall{a, b}:
			return i, -1 // the room, into which it bulges, is on the right
		case wall{b, a}:
			return i, 1
		}
	}
	return -1, 0
}

// next and previous are the neighbours along the chain, -1 if there is none.
func (s *system) next(p int) int     { return s.neighbour(p, 1) }
func (s *system) previous(p int) int { return s.neighbour(p, -1) }

func (s *system) neighbour(p, step int) int {
	for i, q := range s.chain {
		if q != p {
			continue
		}
		j := i + step
		if s.closed {
			j = (j + len(s.chain)) % len(s.chain)
		}
		if j >= 0 && j < len(s.chain) {
			return s.chain[j]
		}
	}
	return -1
}

// compile translates one reading.
func (s *system) compile(r Reading) (row, error) {
	w := row{kind: r.Kind, bows: [2]int{-1, -1}, a: float64(r.A), b: float64(r.B), want: float64(r.Length)}
	for _, p := range r.Points {
		w.points = append(w.points, s.number[p])
	}
	switch r.Kind {
	case Angle, Interior:
		w.want = float64(r.Angle)
		if r.Kind == Interior {
			v := w.points[0]
			w.kind, w.points = Angle, []int{s.previous(v), v, s.next(v)}
			if w.points[0] < 0 || w.points[2] < 0 {
				return row{}, bad(r, "%s is not a corner between two walls", r.Points[0])
			}
		}
	case SquareOff:
		v := w.points[1]
		w.bows[0], w.bulge[0] = s.bowOf(v, w.points[0])
		w.bows[1], w.bulge[1] = s.bowOf(v, w.points[2])
	case Width:
		if len(w.points) == 2 {
			a, b := w.points[0], w.points[1]
			w.points = append(w.points, a, s.previous(a), b, s.next(b))
			if w.points[3] < 0 || w.points[5] < 0 || w.points[3] == b || w.points[5] == a {
				return row{}, bad(r, "there are no walls on both sides of %s to %s; name them", r.Points[0], r.Points[1])
			}
		}
		w.bows[0], _ = s.bowOf(w.points[2], w.points[3])
		w.bows[1], _ = s.bowOf(w.points[4], w.points[5])
	case Bow:
		w.bows[0], _ = s.bowOf(w.points[0], w.points[1])
	}
	return w, nil
}

// size is the extent of a set of coordinates, for judging what is small.
func (s *system) size(x []float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range s.names {
		lo = min(lo, x[2*i], x[2*i+1])
		hi = max(hi, x[2*i], x[2*i+1])
	}
	return hi - lo
}

func sortedPoints[V any](m map[Point]V) []Point {
	var list []Point
	for p := range m {
		list = append(list, p)
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	return list
}
