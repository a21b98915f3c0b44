package motion

import (
	"errors"
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Body is a convex body. Slack is how far at most the true thing stays inside of
// it: it never makes a way, it only keeps "no way" honest.
type Body struct {
	Name    string
	Slack   unit.Length
	points  []vec
	normals []vec        // of its faces
	spans   [][2]float64 // reach along each normal
	edges   []vec        // directions of its edges; none for a section
	box     box
	wide    vec // by which the box of a section is wider than its points
}

// ErrBody tells that points do not make a convex body.
var ErrBody = errors.New("these points make no convex body")

// Between is the body between two faces with the same number of corners, which
// follow each other in the same order.
func Between(name string, bottom, top []geom.Vec3) (Body, error) {
	n := len(bottom)
	if n < 3 || len(top) != n {
		return Body{}, ErrBody
	}
	b := Body{Name: name}
	for i := range n {
		j := (i + 1) % n
		lo, hi := of(bottom[j]).sub(of(bottom[i])), of(top[j]).sub(of(top[i]))
		up := of(top[i]).sub(of(bottom[i]))
		b.edge(lo)
		b.edge(hi)
		b.edge(up)
		side := lo
		if side.len() < hi.len() {
			side = hi
		}
		b.normal(side.cross(up))
	}
	b.normal(facing(bottom))
	b.normal(facing(top))
	for _, p := range append(append([]geom.Vec3{}, bottom...), top...) {
		b.points = append(b.points, of(p))
	}
	return b.done(4)
}

// Prism is an upright body over a convex outline.
func Prism(name string, outline []geom.Vec, z0, z1 unit.Length) (Body, error) {
	return Between(name, level(outline, z0), level(outline, z1))
}

func level(outline []geom.Vec, z unit.Length) []geom.Vec3 {
	out := make([]geom.Vec3, len(outline))
	for i, v := range outline {
		out[i] = v.Up(z)
	}
	return out
}

// SideSection is a body as long as one likes in x, with a convex section in y (X
// of the points) and z (Y of the points). Only ways to move that keep x apart
// make sense with it: y, z and tilt.
func SideSection(name string, outline []geom.Vec) (Body, error) {
	return section(name, outline, func(v geom.Vec) vec { return vec{0, float64(v.X), float64(v.Y)} }, vec{1, 0, 0})
}

// PlanSection is a body of any height with a convex outline in plan.
func PlanSection(name string, outline []geom.Vec) (Body, error) {
	return section(name, outline, func(v geom.Vec) vec { return vec{float64(v.X), float64(v.Y), 0} }, vec{0, 0, 1})
}

func section(name string, outline []geom.Vec, place func(geom.Vec) vec, across vec) (Body, error) {
	b := Body{Name: name, wide: across.mul(1e6)}
	for i, v := range outline {
		p, q := place(v), place(outline[(i+1)%len(outline)])
		b.points = append(b.points, p)
		b.normal(q.sub(p).cross(across))
	}
	return b.done(3)
}

func facing(face []geom.Vec3) vec {
	var n vec
	for i, p := range face { // Newell
		q := face[(i+1)%len(face)]
		n = n.add(of(p).cross(of(q)))
	}
	return n
}

func (b *Body) normal(n vec) { b.normals = withDirection(b.normals, n) }
func (b *Body) edge(e vec)   { b.edges = withDirection(b.edges, e) }

// withDirection adds a direction unless its line is there already.
func withDirection(list []vec, d vec) []vec {
	u, ok := d.unit()
	if !ok {
		return list
	}
	for _, v := range list {
		if u.cross(v).len() < 1e-9 {
			return list
		}
	}
	return append(list, u)
}

func (b Body) done(least int) (Body, error) {
	if len(b.points) < least || len(b.normals) < 2 {
		return Body{}, ErrBody
	}
	for _, p := range b.points {
		if math.IsNaN(p.x+p.y+p.z) || math.IsInf(p.x+p.y+p.z, 0) {
			return Body{}, ErrBody
		}
	}
	b.box = boxOf(b.points).widened(b.wide)
	for _, n := range b.normals {
		lo, hi := span(b.points, n)
		b.spans = append(b.spans, [2]float64{lo, hi})
	}
	return b, nil
}
