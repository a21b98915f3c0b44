// Package geom is the geometry kernel: plane regions on an exact grid of one
// micrometre, solids as stacks of prisms and as extruded profiles, and the
// distances between them.
//
// Axes: x to the right, y away from the viewer towards the back wall, z up;
// right-handed. Lengths are millimetres.
package geom

import (
	"math"

	"slabwright/model/unit"
)

// Vec is a point or a displacement in a plane.
type Vec struct{ X, Y unit.Length }

// V makes a plane point.
func V(x, y unit.Length) Vec { return Vec{x, y} }

// Add, Sub and Mul are the usual vector operations.
func (a Vec) Add(b Vec) Vec     { return Vec{a.X + b.X, a.Y + b.Y} }
func (a Vec) Sub(b Vec) Vec     { return Vec{a.X - b.X, a.Y - b.Y} }
func (a Vec) Mul(k float64) Vec { return Vec{a.X * unit.Length(k), a.Y * unit.Length(k)} }

// Dot and Cross give square millimetres as plain numbers.
func (a Vec) Dot(b Vec) float64   { return float64(a.X)*float64(b.X) + float64(a.Y)*float64(b.Y) }
func (a Vec) Cross(b Vec) float64 { return float64(a.X)*float64(b.Y) - float64(a.Y)*float64(b.X) }

// Len is the length of the vector.
func (a Vec) Len() unit.Length { return unit.Length(math.Hypot(float64(a.X), float64(a.Y))) }

// Unit is the vector scaled to length 1 mm; the zero vector stays zero.
func (a Vec) Unit() Vec {
	if l := float64(a.Len()); l > 0 {
		return a.Mul(1 / l)
	}
	return a
}

// Left is the vector turned a quarter counter-clockwise.
func (a Vec) Left() Vec { return Vec{-a.Y, a.X} }

// Turn rotates the vector counter-clockwise about the origin.
func (a Vec) Turn(t unit.Angle) Vec {
	s, c := math.Sincos(float64(t))
	return Vec{
		unit.Length(float64(a.X)*c - float64(a.Y)*s),
		unit.Length(float64(a.X)*s + float64(a.Y)*c),
	}
}

// Angle is the direction of the vector, counter-clockwise from +x, in (-pi, pi].
func (a Vec) Angle() unit.Angle { return unit.Angle(math.Atan2(float64(a.Y), float64(a.X))) }

// Lerp is the point a fraction t of the way from a to b.
func (a Vec) Lerp(b Vec, t float64) Vec { return a.Add(b.Sub(a).Mul(t)) }

// Up lifts the plane point to height z.
func (a Vec) Up(z unit.Length) Vec3 { return Vec3{a.X, a.Y, z} }

// Vec3 is a point or a displacement in space.
type Vec3 struct{ X, Y, Z unit.Length }

// Flat drops the height.
func (a Vec3) Flat() Vec { return Vec{a.X, a.Y} }

// Add, Sub and Mul are the usual vector operations.
func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec3) Mul(k float64) Vec3 {
	return Vec3{a.X * unit.Length(k), a.Y * unit.Length(k), a.Z * unit.Length(k)}
}

// Dot gives square millimetres as a plain number; Cross the vector product.
func (a Vec3) Dot(b Vec3) float64 {
	return float64(a.X)*float64(b.X) + float64(a.Y)*float64(b.Y) + float64(a.Z)*float64(b.Z)
}
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Len is the length of the vector.
func (a Vec3) Len() unit.Length { return unit.Length(math.Sqrt(a.Dot(a))) }

// Unit is the vector scaled to length 1 mm; the zero vector stays zero.
func (a Vec3) Unit() Vec3 {
	if l := float64(a.Len()); l > 0 {
		return a.Mul(1 / l)
	}
	return a
}

// Pose places a part: its own axes turned counter-clockwise about z, then moved
// so that its own origin comes to At.
type Pose struct {
	At   Vec3
	Turn unit.Angle
}

// Plan takes a plane point from the part's own axes to the room's.
func (p Pose) Plan(v Vec) Vec { return v.Turn(p.Turn).Add(p.At.Flat()) }

// Unplan takes a plane point from the room's axes to the part's own.
func (p Pose) Unplan(v Vec) Vec { return v.Sub(p.At.Flat()).Turn(-p.Turn) }

// Space takes a point from the part's own axes to the room's.
func (p Pose) Space(v Vec3) Vec3 { return p.Plan(v.Flat()).Up(v.Z + p.At.Z) }

// Line is a directed line through P along D (D need not be of unit length).
type Line struct{ P, D Vec }

// Through makes the line from a towards b.
func Through(a, b Vec) Line { return Line{a, b.Sub(a)} }

// Shift moves the line to its left by d (to its right when d is negative).
func (l Line) Shift(d unit.Length) Line {
	return Line{l.P.Add(l.D.Unit().Left().Mul(float64(d))), l.D}
}

// Meet gives the point where two lines cross; false if they are parallel
// within 1e-9 rad.
func (l Line) Meet(m Line) (Vec, bool) {
	den := l.D.Cross(m.D)
	if math.Abs(den) <= 1e-9*float64(l.D.Len())*float64(m.D.Len()) {
		return Vec{}, false
	}
	return l.P.Add(l.D.Mul(m.P.Sub(l.P).Cross(m.D) / den)), true
}

// Side is the signed distance of p from the line, positive on its left.
func (l Line) Side(p Vec) unit.Length { return unit.Length(l.D.Unit().Cross(p.Sub(l.P))) }

// Along is the distance of the foot of p along the line, from P.
func (l Line) Along(p Vec) unit.Length { return unit.Length(l.D.Unit().Dot(p.Sub(l.P))) }
