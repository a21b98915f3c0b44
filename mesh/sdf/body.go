package sdf

import (
	"fmt"
	"math"

	"github.com/unixpickle/model3d/model3d"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// body is the wood behind a natural edge: every point whose signed distance in
// plan from the flat edge at its own height is at most the swell there. It is
// the field that model3d asks of a Solid.
//
// The outside lies to the right of both arrises.
type body struct {
	lower, upper   []geom.Vec
	low, high      unit.Length
	normal         [2][]geom.Vec // outward unit normals at the corners, below and above
	bulge          float64       // mm
	tight          [][]tight     // by segment, the places without room for the whole bulge
	fade           float64       // distance from both ends within which the bulge rises, mm
	grain          float64       // mm
	reach          float64       // the field is known this far from the edge, mm
	cells          map[[2]int32][]int32
	cell           float64 // size of a cell in plan, mm
	minEnd, maxEnd model3d.Coord3D
}

const (
	uneven = 0.5  // how much of the bulge the unevenness may take away
	gentle = 0.25 // how steeply the bulge may recover from a tight place
	span   = 4    // the field reaches this many bulges, enough to feel every tight place (1/gentle)
)

// newBody makes the body between two arrises of the same number of corners.
func newBody(e Edge, lower, upper []geom.Vec3) (*body, error) {
	b := &body{
		lower: flat(lower), upper: flat(upper),
		low: lower[0].Z, high: upper[0].Z,
		bulge: float64(e.Bulge),
		grain: float64(e.Grain),
		reach: span*float64(e.Bulge) + 1,
	}
	for i := range b.lower[1:] {
		if b.lower[i] == b.lower[i+1] || b.upper[i] == b.upper[i+1] {
			return nil, fmt.Errorf("two corners of an arris fall together at %.3f, %.3f", float64(b.lower[i].X), float64(b.lower[i].Y))
		}
	}
	b.normal = [2][]geom.Vec{normals(b.lower), normals(b.upper)}
	b.fade = min(8*b.bulge, float64(b.lower[len(b.lower)-1].Sub(b.lower[0]).Len())/3)
	b.index()
	b.limit()
	return b, nil
}

func flat(arris []geom.Vec3) []geom.Vec {
	out := make([]geom.Vec, len(arris))
	for i, v := range arris {
		out[i] = v.Flat()
	}
	return out
}

// normals are the outward unit normals at the corners of a line: halfway
// between those of the two segments.
func normals(line []geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(line))
	for i := range line {
		var n geom.Vec
		if i > 0 {
			n = n.Sub(line[i].Sub(line[i-1]).Unit().Left())
		}
		if i+1 < len(line) {
			n = n.Sub(line[i+1].Sub(line[i]).Unit().Left())
		}
		out[i] = n.Unit()
	}
	return out
}

// index sorts the segments into square cells of the plan, each into all cells
// from which it may be in reach.
func (b *body) index() {
	b.cells = make(map[[2]int32][]int32)
	lo, hi := b.box(append(append([]geom.Vec{}, b.lower...), b.upper...)...)
	b.minEnd = model3d.XYZ(lo[0], lo[1], float64(b.low))
	b.maxEnd = model3d.XYZ(hi[0], hi[1], float64(b.high))
	b.cell = max(2*b.reach, (hi[0]-lo[0]+hi[1]-lo[1])/200)
	for i := range b.lower[1:] {
		lo, hi := b.box(b.lower[i], b.lower[i+1], b.upper[i], b.upper[i+1])
		from, to := b.cellOf(lo[0], lo[1]), b.cellOf(hi[0], hi[1])
		for x := from[0]; x <= to[0]; x++ {
			for y := from[1]; y <= to[1]; y++ {
				b.cells[[2]int32{x, y}] = append(b.cells[[2]int32{x, y}], int32(i))
			}
		}
	}
}

// box is the rectangle in plan from which any of the points may be in reach.
func (b *body) box(points ...geom.Vec) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		for k, x := range [2]float64{float64(p.X), float64(p.Y)} {
			lo[k], hi[k] = min(lo[k], x-b.reach), max(hi[k], x+b.reach)
		}
	}
	return lo, hi
}

func (b *body) cellOf(x, y float64) [2]int32 {
	return [2]int32{int32(math.Floor(x / b.cell)), int32(math.Floor(y / b.cell))}
}

// Min, Max and Contains make the body a model3d.Solid. Behind the edge it ends
// where the field does.
func (b *body) Min() model3d.Coord3D { return b.minEnd }
func (b *body) Max() model3d.Coord3D { return b.maxEnd }
func (b *body) Contains(c model3d.Coord3D) bool {
	return model3d.InBounds(b, c) && b.field(geom.V(unit.Length(c.X), unit.Length(c.Y)), b.height(c.Z)) <= 0
}

func (b *body) height(z float64) float64 {
	return (z - float64(b.low)) / float64(b.high-b.low)
}

// field is how far, in millimetres and in plan, the point stands before the
// body at a fraction t of the height: negative inside, infinite out of reach.
// It is continuous: the swell depends on the place alone, not on the segment
// that happens to be nearest.
func (b *body) field(p geom.Vec, t float64) float64 {
	d, i, u := b.nearest(p, t)
	if d > b.reach {
		return math.Inf(1)
	}
	if b.inside(p, t, i, u) {
		d = -d
	}
	return d - b.swellAt(p, t)
}

// nearest is the place of the flat edge nearest to a point, a fraction u along
// segment i, and its distance in millimetres; infinite out of reach.
func (b *body) nearest(p geom.Vec, t float64) (d float64, i int, u float64) {
	d = math.Inf(1)
	for _, s := range b.near(p) {
		a, c := b.corner(s, t), b.corner(s+1, t)
		e := c.Sub(a)
		k := max(0, min(1, p.Sub(a).Dot(e)/e.Dot(e)))
		if far := p.Sub(a.Lerp(c, k)); far.Dot(far) < d {
			d, i, u = far.Dot(far), int(s), k
		}
	}
	return math.Sqrt(d), i, u
}

// near lists the segments that may be in reach of a point.
func (b *body) near(p geom.Vec) []int32 { return b.cells[b.cellOf(float64(p.X), float64(p.Y))] }

// corner is corner i of the flat edge at a fraction t of the height.
func (b *body) corner(i int32, t float64) geom.Vec { return b.lower[i].Lerp(b.upper[i], t) }

// inside tells on which side of the flat edge the point lies whose nearest
// point is a fraction u along segment i: at a corner both segments count.
func (b *body) inside(p geom.Vec, t float64, i int, u float64) bool {
	j := int32(i)
	way := b.corner(j+1, t).Sub(b.corner(j, t))
	if u == 0 && i > 0 {
		way = way.Unit().Add(b.corner(j, t).Sub(b.corner(j-1, t)).Unit())
	}
	if u == 1 && i+2 < len(b.lower) {
		way = way.Unit().Add(b.corner(j+2, t).Sub(b.corner(j+1, t)).Unit())
	}
	return way.Cross(p.Sub(b.point(i, u, t))) > 0
}

// point is the place a fraction u along segment i of the flat edge.
func (b *body) point(i int, u, t float64) geom.Vec {
	return b.lower[i].Lerp(b.lower[i+1], u).Lerp(b.upper[i].Lerp(b.upper[i+1], u), t)
}

// outward is the level direction away from the wood at a place on the flat edge.
func (b *body) outward(i int, u, t float64) geom.Vec {
	below := b.normal[0][i].Lerp(b.normal[0][i+1], u)
	above := b.normal[1][i].Lerp(b.normal[1][i+1], u)
	return below.Lerp(above, t).Unit()
}

// swellAt is how far the body stands out before the flat edge there: an arch
// from arris to arris, less near tight places, nothing at both ends, made
// uneven by the place itself.
func (b *body) swellAt(p geom.Vec, t float64) float64 {
	most := b.roomAt(p, t)
	for _, end := range [...]int32{0, int32(len(b.lower) - 1)} {
		if b.fade > 0 {
			most *= ease(min(1, float64(p.Sub(b.corner(end, t)).Len())/b.fade))
		}
	}
	z := t * float64(b.high-b.low)
	wave := noise(float64(p.X)/b.grain, float64(p.Y)/b.grain, z/b.grain)
	return most * 4 * t * (1 - t) * (1 - uneven*(0.5+0.5*wave))
}

// tight is a place on a segment of the flat edge and the bulge that it has room
// for, in millimetres.
type tight struct{ u, room float64 }

// roomAt is the bulge that the tight places around leave.
func (b *body) roomAt(p geom.Vec, t float64) float64 {
	most := b.bulge
	for _, i := range b.near(p) {
		for _, c := range b.tight[i] {
			most = min(most, c.room+gentle*float64(p.Sub(b.point(int(i), c.u, t)).Len()))
		}
	}
	return most
}

// limit finds the tight places. Going outwards from a place, the flat edge must
// stay away by 0.6 of the way gone; a bulge of 0.55 of the way so found ends in
// the open. It looks at corners and between them once a bulge.
func (b *body) limit() {
	b.tight = make([][]tight, len(b.lower)-1)
	for i := range b.tight {
		length := max(b.lower[i+1].Sub(b.lower[i]).Len(), b.upper[i+1].Sub(b.upper[i]).Len())
		n := 1
		if b.bulge > 0 {
			n = max(1, int(math.Ceil(float64(length)/max(b.bulge, 0.1))))
		}
		for k := range n + 1 {
			u := float64(k) / float64(n)
			if room := b.roomBefore(i, u); room < b.bulge {
				b.tight[i] = append(b.tight[i], tight{u, room})
			}
		}
	}
}

// roomBefore is the bulge that a place on the flat edge has room for.
func (b *body) roomBefore(i int, u float64) float64 {
	const steps = 16
	room := b.bulge
	for _, t := range [...]float64{0, 0.5, 1} {
		p, out, free := b.point(i, u, t), b.outward(i, u, t), 0.0
		for k := 1; k <= steps; k++ {
			way := 2 * b.bulge * float64(k) / steps
			if d, _, _ := b.nearest(p.Add(out.Mul(way)), t); d < 0.6*way {
				break
			}
			free = way
		}
		room = min(room, 0.55*free)
	}
	return room
}
