package geom

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// contact is the overlap that rounding two common edges to the grid can make;
// anything thinner counts as touching. In grid steps.
const contact = 2

// Gap is how far two regions are apart.
type Gap struct {
	// Distance is the least distance if positive, 0 if they touch. Overlap is
	// negative: minus the least width of the thickest common piece, which is
	// how far one must move to come clear of it.
	Distance unit.Length
	// A and B are the nearest points of the first and the second region; for
	// an overlap both are the centroid of the common piece.
	A, B Vec
}

// Gap measures the distance or the overlap between two regions. Overlaps up to
// two micrometres, which rounding can make, count as touching. The distance to
// an empty region is infinite.
func (r Region) Gap(s Region) Gap {
	if r.Empty() || s.Empty() {
		return Gap{Distance: unit.Length(math.Inf(1))}
	}
	g := nearest(r, s)
	if g.Distance > 0 && !r.covers(s) && !s.covers(r) {
		return g
	}
	worst := float64(contact)
	for _, pc := range r.Intersect(s).pieces {
		if w := leastWidth(pc[0]); w > worst {
			c := newRegion([]piece{pc}).Centroid()
			worst, g = w, Gap{unit.Length(-w / perMM), c, c}
		}
	}
	if g.Distance > 0 { // one lies in the other but is too thin to count
		g.Distance = 0
	}
	return g
}

// covers tells whether a piece of s, whose boundary keeps clear of r's, lies
// in r.
func (r Region) covers(s Region) bool {
	for _, pc := range s.pieces {
		if r.Contains(pc[0][0].vec()) {
			return true
		}
	}
	return false
}

// side is an edge with its extent, for looking up near ones.
type side struct {
	a, b           pt
	x0, x1, y0, y1 float64
}

func (r Region) sides() []side {
	var out []side
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				out = append(out, side{a, b,
					float64(min(a.x, b.x)), float64(max(a.x, b.x)),
					float64(min(a.y, b.y)), float64(max(a.y, b.y))})
			}
		}
	}
	return out
}

// clear2 is the squared distance between the extents of two sides.
func (e *side) clear2(f *side) float64 {
	dx := max(e.x0-f.x1, f.x0-e.x1, 0)
	dy := max(e.y0-f.y1, f.y0-e.y1, 0)
	return dx*dx + dy*dy
}

// nearest compares the boundaries of two regions.
func nearest(r, s Region) Gap {
	es, fs := r.sides(), s.sides()
	all := side{x0: float64(s.lo.x), x1: float64(s.hi.x), y0: float64(s.lo.y), y1: float64(s.hi.y)}
	best := math.Inf(1)
	var g Gap
	// Near sides first: then the others are told apart by their extents.
	slices.SortStableFunc(es, func(a, b side) int { return sign(a.clear2(&all) - b.clear2(&all)) })
	for i := range es {
		e := &es[i]
		if e.clear2(&all) >= best {
			break
		}
		for j := range fs {
			f := &fs[j]
			if e.clear2(f) >= best {
				continue
			}
			if d2, a, b := segments(e, f); d2 < best {
				best, g = d2, Gap{unit.Length(math.Sqrt(d2) / perMM), a, b}
			}
		}
	}
	return g
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// segments is the squared distance between two sides with its end points; it
// is exactly zero when they meet.
func segments(e, f *side) (float64, Vec, Vec) {
	fa, fb := orient(e.a, e.b, f.a), orient(e.a, e.b, f.b)
	ea, eb := orient(f.a, f.b, e.a), orient(f.a, f.b, e.b)
	if (fa > 0 && fb < 0 || fa < 0 && fb > 0) && (ea > 0 && eb < 0 || ea < 0 && eb > 0) {
		p := crossing(e.a, e.b, f.a, f.b).vec()
		return 0, p, p
	}
	best, a, b := math.Inf(1), Vec{}, Vec{}
	for _, p := range [2]pt{f.a, f.b} {
		if d2, q := toSegment(p.vec(), e.a, e.b); d2 < best {
			best, a, b = d2, q, p.vec()
		}
	}
	for _, p := range [2]pt{e.a, e.b} {
		if d2, q := toSegment(p.vec(), f.a, f.b); d2 < best {
			best, a, b = d2, p.vec(), q
		}
	}
	return best, a, b
}

// toSegment is the squared distance in grid steps from p to the segment a-b,
// and the nearest point there. It is exactly zero for points of the grid on
// the segment.
func toSegment(p Vec, a, b pt) (float64, Vec) {
	px, py := float64(p.X)*perMM, float64(p.Y)*perMM
	if q, err := snap(p); err == nil && q.vec() == p {
		px, py = float64(q.x), float64(q.y)
	}
	dx, dy := float64(b.x-a.x), float64(b.y-a.y)
	ex, ey := px-float64(a.x), py-float64(a.y)
	t := (ex*dx + ey*dy) / (dx*dx + dy*dy)
	switch {
	case t <= 0:
		return ex*ex + ey*ey, a.vec()
	case t >= 1:
		ex, ey = px-float64(b.x), py-float64(b.y)
		return ex*ex + ey*ey, b.vec()
	}
	c := dx*ey - dy*ex
	foot := Vec{unit.Length((float64(a.x) + t*dx) / perMM), unit.Length((float64(a.y) + t*dy) / perMM)}
	return c * c / (dx*dx + dy*dy), foot
}

// DistanceTo is the distance from the boundary to p, negative inside. It is
// infinite for an empty region and NaN for a point that is not a number.
func (r Region) DistanceTo(p Vec) unit.Length {
	if math.IsNaN(float64(p.X)) || math.IsNaN(float64(p.Y)) {
		return unit.Length(math.NaN())
	}
	best, in := math.Inf(1), false
	x, y := float64(p.X)*perMM, float64(p.Y)*perMM
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				if d2, _ := toSegment(p, a, b); d2 < best {
					best = d2
				}
				ay, by := float64(a.y), float64(b.y)
				if (ay <= y) != (by <= y) {
					c := float64(b.x-a.x)*(y-ay) - (by-ay)*(x-float64(a.x))
					if (c > 0) == (by > ay) {
						in = !in
					}
				}
			}
		}
	}
	d := math.Sqrt(best) / perMM
	if in {
		d = -d
	}
	return unit.Length(d)
}

// leastWidth is the least distance between two parallel lines that hold all
// the points, in grid steps: one of the lines runs along a side of the convex
// hull.
func leastWidth(pts []pt) float64 {
	hull := convexHull(pts)
	least := math.Inf(1)
	far := 1
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		for orient(a, b, hull[(far+1)%len(hull)]) > orient(a, b, hull[far]) {
			far = (far + 1) % len(hull)
		}
		w := float64(orient(a, b, hull[far])) / math.Hypot(float64(b.x-a.x), float64(b.y-a.y))
		least = min(least, w)
	}
	return least
}

// convexHull runs counter-clockwise without points in line (Andrew's monotone
// chain, A. M. Andrew, 1979).
func convexHull(pts []pt) []pt {
	sorted := slices.Clone(pts)
	slices.SortFunc(sorted, compare)
	var hull []pt
	for range 2 {
		base := len(hull)
		for _, p := range sorted {
			for len(hull) >= base+2 && orient(hull[len(hull)-2], hull[len(hull)-1], p) <= 0 {
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
		slices.Reverse(sorted)
	}
	return hull
}
