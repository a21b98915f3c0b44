package geom

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// ClipHalfPlane keeps what lies to the left of the line. Corners of the region
// within a grid step of the line count as on it. A line without direction
// gives a fault.
func (r Region) ClipHalfPlane(l Line) Region {
	if r.err != nil || r.Empty() {
		return r
	}
	if !(l.D.Len() > 0) || math.IsInf(float64(l.D.Len()), 0) || math.IsNaN(float64(l.P.Len())) {
		return faulty(fmt.Errorf("half plane: line through (%v, %v) along (%v, %v) has no direction",
			l.P.X, l.P.Y, l.D.X, l.D.Y))
	}
	const end = unit.Length(limit) / perMM
	lo, hi := r.lo.vec().Sub(V(1, 1)), r.hi.vec().Add(V(1, 1))
	lo, hi = V(max(lo.X, -end), max(lo.Y, -end)), V(min(hi.X, end), min(hi.Y, end))
	keep := halfBox(lo, hi, l)
	if len(keep) == 0 {
		return Region{}
	}
	return r.Intersect(Polygon(r.throughCorners(keep, l)...))
}

// halfBox is the part of an upright box to the left of a line, as a polygon.
func halfBox(lo, hi Vec, l Line) []Vec {
	box := []Vec{lo, V(hi.X, lo.Y), hi, V(lo.X, hi.Y)}
	var out []Vec
	for i, a := range box {
		b := box[(i+1)%4]
		s, t := float64(l.Side(a)), float64(l.Side(b))
		if s >= 0 {
			out = append(out, a)
		}
		if s > 0 && t < 0 || s < 0 && t > 0 {
			out = append(out, a.Lerp(b, s/(s-t)))
		}
	}
	return out
}

// throughCorners bends the side of the polygon along the line through all
// corners of the region that are on the line but for rounding.
func (r Region) throughCorners(polygon []Vec, l Line) []Vec {
	const near = 0.75 / perMM // rounding moves a point at most 0.71 steps
	var on []Vec
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for _, p := range loop {
				if v := p.vec(); math.Abs(float64(l.Side(v))) < near {
					on = append(on, v)
				}
			}
		}
	}
	slices.SortFunc(on, func(a, b Vec) int {
		switch s := l.Along(a) - l.Along(b); {
		case s < 0:
			return -1
		case s > 0:
			return 1
		}
		return 0
	})
	// The side along the line runs its way, the region being on its left.
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if math.Abs(float64(l.Side(a))) < near && math.Abs(float64(l.Side(b))) < near && l.Along(b) > l.Along(a) {
			return slices.Insert(polygon, i+1, on...)
		}
	}
	return polygon
}

// Inside gives the stretches of the segment from a to b, as fractions of it in
// order, that lie in the region's interior. Stretches along its boundary are
// not inside. The end points are rounded to the grid.
func (r Region) Inside(a, b Vec) [][2]float64 {
	p, err := snap(a)
	if err != nil {
		return nil
	}
	q, err := snap(b)
	if err != nil || p == q {
		return nil
	}
	type event struct {
		t           float64
		left, right bool // crosses the line moved a hair to its left, to its right
	}
	var events []event
	dx, dy := float64(q.x-p.x), float64(q.y-p.y)
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for i, c := range loop {
				d := loop[(i+1)%len(loop)]
				s, t := orient(p, q, c), orient(p, q, d)
				e := event{left: (s > 0) != (t > 0), right: (s < 0) != (t < 0)}
				if !e.left && !e.right {
					continue
				}
				switch {
				case s == 0:
				case t == 0:
					c = d
				default:
					k := float64(s) / (float64(s) - float64(t))
					x := float64(c.x-p.x) + k*float64(d.x-c.x)
					y := float64(c.y-p.y) + k*float64(d.y-c.y)
					e.t = (x*dx + y*dy) / (dx*dx + dy*dy)
					events = append(events, e)
					continue
				}
				e.t = (float64(c.x-p.x)*dx + float64(c.y-p.y)*dy) / (dx*dx + dy*dy)
				events = append(events, e)
			}
		}
	}
	slices.SortStableFunc(events, func(e, f event) int {
		switch {
		case e.t < f.t:
			return -1
		case e.t > f.t:
			return 1
		}
		return 0
	})
	var out [][2]float64
	left, right := false, false
	for i, e := range events {
		left, right = left != e.left, right != e.right
		if !left || !right || i+1 == len(events) {
			continue
		}
		from, to := max(e.t, 0), min(events[i+1].t, 1)
		switch {
		case from >= to:
		case len(out) > 0 && out[len(out)-1][1] == from:
			out[len(out)-1][1] = to
		default:
			out = append(out, [2]float64{from, to})
		}
	}
	return out
}
