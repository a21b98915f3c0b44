package motion

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// vec is a place or a direction on plain numbers, millimetres.
type vec struct{ x, y, z float64 }

func of(v geom.Vec3) vec { return vec{float64(v.X), float64(v.Y), float64(v.Z)} }
func (a vec) out() geom.Vec3 {
	return geom.Vec3{X: unit.Length(a.x), Y: unit.Length(a.y), Z: unit.Length(a.z)}
}
func (a vec) sub(b vec) vec     { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) add(b vec) vec     { return vec{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec) mul(k float64) vec { return vec{a.x * k, a.y * k, a.z * k} }
func (a vec) dot(b vec) float64 { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) len() float64      { return math.Sqrt(a.dot(a)) }
func (a vec) cross(b vec) vec {
	return vec{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// unit gives the direction, and false for a vector too short to have one.
func (a vec) unit() (vec, bool) {
	l := a.len()
	if l < 1e-9 {
		return vec{}, false
	}
	return a.mul(1 / l), true
}

// box is an upright box.
type box struct{ lo, hi vec }

func boxOf(pts []vec) box {
	b := box{pts[0], pts[0]}
	for _, p := range pts[1:] {
		b.lo = vec{min(b.lo.x, p.x), min(b.lo.y, p.y), min(b.lo.z, p.z)}
		b.hi = vec{max(b.hi.x, p.x), max(b.hi.y, p.y), max(b.hi.z, p.z)}
	}
	return b
}

func (b box) widened(by vec) box { return box{b.lo.sub(by), b.hi.add(by)} }

// gap is how far two boxes are apart in the direction in which they are furthest
// apart; negative if they overlap.
func (a box) gap(b box) float64 {
	return max(b.lo.x-a.hi.x, a.lo.x-b.hi.x, b.lo.y-a.hi.y, a.lo.y-b.hi.y, b.lo.z-a.hi.z, a.lo.z-b.hi.z)
}

// span is from where to where points reach in a direction.
func span(pts []vec, n vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range pts {
		d := n.x*p.x + n.y*p.y + n.z*p.z
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}
