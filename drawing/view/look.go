package view

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Look is a way of looking at a scene along parallel rays. A section is a look
// that leaves out everything in front of its cutting plane.
type Look struct {
	name           string
	origin         geom.Vec3
	right, up, out geom.Vec3 // right-handed, of unit length; out points to the viewer
	cuts           bool
}

var (
	east  = geom.Vec3{X: 1}
	west  = geom.Vec3{X: -1}
	north = geom.Vec3{Y: 1}
	south = geom.Vec3{Y: -1}
	above = geom.Vec3{Z: 1}
	below = geom.Vec3{Z: -1}
)

// Plan looks from above; the back wall is at the top. x and y are the room's.
func Plan() Look { return Look{name: "plan", right: east, up: north, out: above} }

// PlanAt is the plan of what lies below height z, cut at that height.
func PlanAt(z unit.Length) Look {
	l := Plan()
	l.name, l.origin.Z, l.cuts = "plan section", z, true
	return l
}

// Below looks at the underside, the scene turned over about the x axis: left
// stays left and the back wall is at the bottom. x is the room's, y is the
// room's -y.
func Below() Look { return Look{name: "from below", right: east, up: south, out: below} }

// Front looks at the back wall. x is the room's x, y its z.
func Front() Look { return Look{name: "front", right: east, up: above, out: south} }

// FromLeft looks from the left to the right; the back wall is on the left.
// x is the room's -y, y its z.
func FromLeft() Look { return Look{name: "from the left", right: south, up: above, out: west} }

// FromRight looks from the right to the left; the back wall is on the right.
// x is the room's y, y its z.
func FromRight() Look { return Look{name: "from the right", right: north, up: above, out: east} }

// Facing looks squarely at a wall from the room, which lies to the right of
// the directed wall line. x runs along the wall from the line's P, y is the
// room's z. Nothing is cut: what stands between the viewer and the wall is
// shown. A line without direction gives an empty view.
func Facing(wall geom.Line) Look {
	d := wall.D.Unit()
	return Look{
		name: "elevation", origin: wall.P.Up(0),
		right: d.Up(0), up: above, out: geom.Vec3{X: d.Y, Y: -d.X},
	}
}

// Section cuts along a vertical plane and looks at what lies to the left of
// the line; the line runs from left to right in the view. x is the distance
// along the line from its P, y is the room's z. A line without direction gives
// an empty view.
func Section(plane geom.Line) Look {
	l := Facing(plane)
	l.name, l.cuts = "section", true
	return l
}

// Axonometric looks at the room's origin from the front, turned about z by
// turn (positive: the viewer goes to the right) and raised by tilt. Lengths are
// foreshortened.
func Axonometric(turn, tilt unit.Angle) Look {
	st, ct := math.Sincos(float64(turn))
	se, ce := math.Sincos(float64(tilt))
	v := func(x, y, z float64) geom.Vec3 {
		return geom.Vec3{X: unit.Length(x), Y: unit.Length(y), Z: unit.Length(z)}
	}
	return Look{name: "axonometric", right: v(ct, st, 0), up: v(-st*se, ct*se, ce), out: v(st*ce, -ct*ce, se)}
}

// Isometric looks from the front, the right and above, equally at all three
// axes: each is foreshortened by the square root of 2/3 (ISO 5456-3).
func Isometric() Look {
	l := Axonometric(math.Pi/4, unit.Angle(math.Atan(1/math.Sqrt2)))
	l.name = "isometric"
	return l
}

// String names the look for titles: "plan", "section" and so on.
func (l Look) String() string { return l.name }

// Cuts tells whether the look is a section.
func (l Look) Cuts() bool { return l.cuts }

// Project takes a point of the room to the view.
func (l Look) Project(p geom.Vec3) geom.Vec {
	q := p.Sub(l.origin)
	return geom.V(unit.Length(q.Dot(l.right)), unit.Length(q.Dot(l.up)))
}

// Depth is how far a point is towards the viewer from the plane through the
// look's origin; for sections that is the cutting plane.
func (l Look) Depth(p geom.Vec3) unit.Length { return unit.Length(p.Sub(l.origin).Dot(l.out)) }
