package survey

import "math"

// row is a reading made ready for the computation: points and bows by number.
type row struct {
	kind   Kind
	points []int      // indices of points; a width has all six
	bows   [2]int     // indices of the bows of its two side walls, -1 for straight
	bulge  [2]float64 // +1 or -1: which side of first-to-second point a bow pushes to
	a, b   float64    // marks or depth, mm
	want   float64    // the reading, mm or rad
	sd     float64
}

// slot tells which entry of the coordinate list the i-th variable of the row
// is: coordinates of its points first, bows in the last two slots.
func (r *row) slot(i, points int) int {
	if i < slots-2 {
		if i/2 >= len(r.points) {
			return -1
		}
		return 2*r.points[i/2] + i%2
	}
	if b := r.bows[i-(slots-2)]; b >= 0 {
		return 2*points + b
	}
	return -1
}

// value computes the reading from the coordinates x (x0, y0, x1, y1, ... and
// then the bows), with derivatives.
func (r *row) value(x []float64, points int) dual {
	var p [6]plane
	for i, n := range r.points {
		p[i] = plane{variable(x[2*n], 2*i), variable(x[2*n+1], 2*i+1)}
	}
	var h [2]dual
	for i, b := range r.bows {
		if b >= 0 {
			h[i] = variable(x[2*points+b], slots-2+i)
		}
	}
	switch r.kind {
	case Angle:
		first, third := p[0].sub(p[1]), p[2].sub(p[1])
		return atan2(first.cross(third), first.dot(third))
	case SquareOff:
		m := mark(p[1], p[0], r.a, h[0].times(r.bulge[0]))
		n := mark(p[1], p[2], r.b, h[1].times(r.bulge[1]))
		return m.sub(n).len()
	case Width:
		along := p[1].sub(p[0]).unit()
		from := p[0].add(along.right().scale(number(r.a)))
		left, s := meet(from, along, p[2], p[3])
		right, t := meet(from, along, p[4], p[5])
		return right.sub(left).sub(h[0].mul(parabola(s))).sub(h[1].mul(parabola(t)))
	case Offset:
		return p[2].sub(p[1]).unit().right().dot(p[0].sub(p[1]))
	case Bow:
		return h[0]
	}
	return p[1].sub(p[0]).len()
}

// mark is the point at distance a along a wall from one corner towards
// another, off the straight line by the wall's bow (to the left if positive).
func mark(from, to plane, a float64, bow dual) plane {
	d := to.sub(from)
	u := d.unit()
	off := bow.mul(parabola(number(a).div(d.len())))
	return from.add(u.scale(number(a))).sub(u.right().scale(off))
}

// parabola is the share of a bow at the fraction s of the wall.
func parabola(s dual) dual { return s.mul(number(1).sub(s)).times(4) }

// meet is where the line through from along u crosses the line of two points:
// the distance from from, and the fraction of the way between the two.
func meet(from, u, a, b plane) (t, s dual) {
	w := b.sub(a)
	den := u.cross(w)
	return a.sub(from).cross(w).div(den), a.sub(from).cross(u).div(den)
}

// miss is the reading less the computed value; angles by the short way round.
func (r *row) miss(computed float64) float64 {
	d := r.want - computed
	if r.kind == Angle {
		d = math.Remainder(d, 2*math.Pi)
	}
	return d
}

// onWalls says whether the ends of a width lie on its side walls, with some
// play as a fraction of the walls.
func (r *row) onWalls(x []float64, play float64) bool {
	if r.kind != Width {
		return true
	}
	p := func(i int) plane {
		return plane{number(x[2*r.points[i]]), number(x[2*r.points[i]+1])}
	}
	along := p(1).sub(p(0)).unit()
	from := p(0).add(along.right().scale(number(r.a)))
	_, s := meet(from, along, p(2), p(3))
	_, t := meet(from, along, p(4), p(5))
	return s.v >= -play && s.v <= 1+play && t.v >= -play && t.v <= 1+play
}
