package corner

import (
	"math"
	"sort"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// strip is a leg in plan: from s along the wall direction, without end, and
// from the wall's face to w across.
type strip struct {
	along, across geom.Vec // unit vectors; across points into the room
	s, w          float64
}

// pair lays the two legs of a corner into the plane.
func pair(theta unit.Angle, leg1, leg2 Leg) (strip, strip) {
	sin, cos := math.Sincos(float64(theta))
	c, s := unit.Length(cos), unit.Length(sin)
	return strip{geom.V(1, 0), geom.V(0, 1), float64(leg1.SetBack), float64(leg1.Width)},
		strip{geom.V(c, s), geom.V(s, -c), float64(leg2.SetBack), float64(leg2.Width)}
}

// ends are the two corners at the leg's end: on the wall, and at the toe.
func (p strip) ends() [2]geom.Vec {
	heel := p.along.Mul(p.s)
	return [2]geom.Vec{heel, heel.Add(p.across.Mul(p.w))}
}

// side is a half-plane, n . x <= c.
type side struct {
	n geom.Vec
	c float64
}

// sides are the three half-planes of the leg: its end, its toe, the wall.
func (p strip) sides() [3]side {
	return [3]side{{p.along.Mul(-1), -p.s}, {p.across, p.w}, {p.across.Mul(-1), 0}}
}

// reach is the largest n . x over the strip; infinite when it runs that way.
func (p strip) reach(n geom.Vec) float64 {
	if p.along.Dot(n) > 1e-12 {
		return math.Inf(1)
	}
	e := p.ends()
	return max(e[0].Dot(n), e[1].Dot(n))
}

// free says whether an edge of one strip keeps the other on its outer side.
// For convex shapes of the plane that is the case whenever they are disjoint
// (separating axis).
func free(p, q strip) bool { return splits(p, q) || splits(q, p) }

func splits(p, q strip) bool {
	for _, s := range p.sides() {
		if q.reach(s.n.Mul(-1)) <= -s.c+touch {
			return true
		}
	}
	return false
}

// distance between two strips that do not overlap: one end of it is at a
// corner of one of them.
func (p strip) distance(q strip) float64 {
	d := math.Inf(1)
	for _, e := range p.ends() {
		d = min(d, q.off(e))
	}
	for _, e := range q.ends() {
		d = min(d, p.off(e))
	}
	return d
}

// off is the distance of a point from the strip.
func (p strip) off(x geom.Vec) float64 {
	a, b := x.Dot(p.along), x.Dot(p.across)
	return math.Hypot(max(p.s-a, 0), max(-b, b-p.w, 0))
}

// overlap is the area common to both strips and its extent in x and y: the
// polygon of all crossings of their sides that lie in both.
func overlap(p, q strip) (unit.Area, [2]unit.Length) {
	a, b := p.sides(), q.sides()
	all := append(a[:], b[:]...)
	var pts []geom.Vec
	for i, s := range all {
		for _, t := range all[i+1:] {
			if x, ok := cross(s, t); ok && within(all, x) {
				pts = append(pts, x)
			}
		}
	}
	if len(pts) == 0 {
		return 0, [2]unit.Length{}
	}
	lo, hi, mid := pts[0], pts[0], geom.Vec{}
	for _, x := range pts {
		lo = geom.V(min(lo.X, x.X), min(lo.Y, x.Y))
		hi = geom.V(max(hi.X, x.X), max(hi.Y, x.Y))
		mid = mid.Add(x.Mul(1 / float64(len(pts))))
	}
	sort.Slice(pts, func(i, j int) bool { return pts[i].Sub(mid).Angle() < pts[j].Sub(mid).Angle() })
	area := 0.0
	for i, x := range pts {
		area += x.Sub(mid).Cross(pts[(i+1)%len(pts)].Sub(mid)) / 2
	}
	return unit.Area(area), [2]unit.Length{hi.X - lo.X, hi.Y - lo.Y}
}

// cross is the point where the edges of two half-planes meet; false when they
// are parallel.
func cross(s, t side) (geom.Vec, bool) {
	det := s.n.Cross(t.n)
	if math.Abs(det) < 1e-12 {
		return geom.Vec{}, false
	}
	x := (s.c*float64(t.n.Y) - t.c*float64(s.n.Y)) / det
	y := (t.c*float64(s.n.X) - s.c*float64(t.n.X)) / det
	return geom.V(unit.Length(x), unit.Length(y)), true
}

func within(all []side, x geom.Vec) bool {
	for _, s := range all {
		if x.Dot(s.n) > s.c+touch {
			return false
		}
	}
	return true
}
