package sdf

import (
	"fmt"
	"math"

	"github.com/unixpickle/model3d/model3d"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// net is the sampled surface: columns along the edge, rows from the lower to
// the upper arris. Its outermost rows and columns lie on the rim of the flat
// edge. from tells for every corner of the arrises which column it is.
type net struct {
	points [][]geom.Vec3 // by column, then by row
	from   []int
}

// mostSamples ends the search for a finer net.
const mostSamples = 200 * 1000

// netFor makes the coarsest net it finds whose sides and triangles are nowhere
// off the body by more than the tolerance at their middles: rows and the
// columns of each segment are added where the last net was too coarse.
func netFor(b *body, tolerance unit.Length) (net, error) {
	// The arch of height s over n rows has a sagitta of s/n2.
	rows := max(2, int(math.Ceil(math.Sqrt(b.bulge/float64(tolerance)))))
	columns := make([]int, len(b.lower)-1)
	for i := range columns {
		columns[i] = 1
	}
	for {
		count := 0
		for _, c := range columns {
			count += c * rows
		}
		if count > mostSamples {
			return net{}, fmt.Errorf("a tolerance of %g mm needs more than %d samples", float64(tolerance), mostSamples)
		}
		n, err := b.trace(columns, rows)
		if err != nil {
			return net{}, err
		}
		tall, wide := b.misfit(n)
		done := true
		if tall > float64(tolerance) {
			rows += rows/2 + 1
			done = false
		}
		for i, w := range wide {
			if w > float64(tolerance) {
				columns[i] *= 2
				done = false
			}
		}
		if done {
			return n, nil
		}
	}
}

// trace samples the surface of the body column by column.
func (b *body) trace(columns []int, rows int) (net, error) {
	var n net
	for i, k := range columns {
		n.from = append(n.from, len(n.points))
		for c := range k {
			column, err := b.column(i, float64(c)/float64(k), rows)
			if err != nil {
				return net{}, err
			}
			n.points = append(n.points, column)
		}
	}
	n.from = append(n.from, len(n.points))
	last, err := b.column(len(columns)-1, 1, rows)
	n.points = append(n.points, last)
	return n, err
}

// column samples the surface from arris to arris on level rays that leave the
// flat edge a fraction u along segment i.
func (b *body) column(i int, u float64, rows int) ([]geom.Vec3, error) {
	surface := model3d.SolidSurfaceEstimator{Solid: b, BisectCount: 32}
	end := i == 0 && u == 0 || i+2 == len(b.lower) && u == 1
	out := make([]geom.Vec3, rows+1)
	for j := range out {
		t := float64(j) / float64(rows)
		p, z := b.point(i, u, t), b.low+unit.Length(t)*(b.high-b.low)
		out[j] = p.Up(z)
		if end || j == 0 || j == rows {
			continue // on the rim
		}
		open, ok := b.before(p, b.outward(i, u, t), z)
		if !ok {
			return nil, fmt.Errorf("it folds near %.0f, %.0f", float64(p.X), float64(p.Y))
		}
		c := surface.Bisect(open, coord(p.Up(z)))
		out[j] = geom.Vec3{X: unit.Length(c.X), Y: unit.Length(c.Y), Z: z}
	}
	out[rows].Z = b.high // not a bit beside it
	return out, nil
}

// before is the first place outside the body that it finds on a ray.
func (b *body) before(p, out geom.Vec, z unit.Length) (model3d.Coord3D, bool) {
	first := b.roomAt(p, b.height(float64(z))) + 0.01
	for way := first; way <= 2*b.bulge+0.01; way *= 1.25 {
		if c := coord(p.Add(out.Mul(way)).Up(z)); !b.Contains(c) {
			return c, true
		}
	}
	return model3d.Coord3D{}, false
}

func coord(v geom.Vec3) model3d.Coord3D {
	return model3d.XYZ(float64(v.X), float64(v.Y), float64(v.Z))
}

// misfit measures how far the middles of sides and triangles are off the body:
// tall is the worst over upright sides, wide the worst over all else of each
// segment. The level distance it measures is never less than the true one, but
// for the slope of the unevenness along the edge (at most a few percent).
func (b *body) misfit(n net) (tall float64, wide []float64) {
	off := func(points ...geom.Vec3) float64 {
		var mid geom.Vec3
		for _, p := range points {
			mid = mid.Add(p)
		}
		mid = mid.Mul(1 / float64(len(points)))
		return math.Abs(b.field(mid.Flat(), b.height(float64(mid.Z)))) * slack
	}
	wide = make([]float64, len(n.from)-1)
	for i := range wide {
		for c := n.from[i]; c < n.from[i+1]; c++ {
			p, q := n.points[c], n.points[c+1]
			for j := range p[1:] {
				tall = max(tall, off(p[j], p[j+1]))
				w := off(p[j], q[j])
				for _, tri := range halves(p[j], q[j], q[j+1], p[j+1]) {
					w = max(w, off(tri[:]...), off(tri[0], tri[2]))
				}
				wide[i] = max(wide[i], w)
			}
		}
	}
	return tall, wide
}

// slack covers the slope of the unevenness.
const slack = 1.1

// halves cuts a quadrilateral, counter-clockwise from its lower left corner,
// along its shorter diagonal, which joins corners 0 and 2 of both halves.
func halves(a, b, c, d geom.Vec3) [2][3]geom.Vec3 {
	if cutsUp(a, b, c, d) {
		return [2][3]geom.Vec3{{a, b, c}, {c, d, a}}
	}
	return [2][3]geom.Vec3{{b, c, d}, {d, a, b}}
}

func cutsUp(a, b, c, d geom.Vec3) bool {
	ac, bd := c.Sub(a), d.Sub(b)
	return ac.Dot(ac) <= bd.Dot(bd)
}
