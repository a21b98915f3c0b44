package drawing

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Projection tells how views are laid out around the front view.
type Projection uint8

// The two methods of ISO 5456-2. In the first the view from above stands below
// the front view; in the third it stands above.
const (
	FirstAngle Projection = iota
	ThirdAngle
)

// String names the method.
func (p Projection) String() string {
	if p == ThirdAngle {
		return "third angle"
	}
	return "first angle"
}

// Symbol draws the sign of the method, about the middle, with a small end of
// diameter d: the side view of a truncated cone and its view from the left,
// where the small end is. The view from the left stands right of the side view
// in first angle and left of it in third angle. The sign is 5 d wide and 2 d
// high, centre lines not counted.
func (p Projection) Symbol(middle geom.Vec, d unit.Length) []Item {
	side, end := middle.X-2.5*d, middle.X+1.5*d // left edge of the cone, middle of the circles
	if p == ThirdAngle {
		side, end = middle.X+0.5*d, middle.X-1.5*d
	}
	y := middle.Y
	cone := []geom.Vec{
		geom.V(side, y-d/2), geom.V(side+2*d, y-d),
		geom.V(side+2*d, y+d), geom.V(side, y+d/2),
	}
	eye := geom.V(end, y)
	over := 0.35 * d
	pen, axis := Dense.Outline(), Dense.Fine()
	axis.Dash = LongDashDot
	return []Item{
		Outline(cone, pen),
		Circle{Centre: eye, Radius: d / 2, Pen: pen},
		Circle{Centre: eye, Radius: d, Pen: pen},
		Line(geom.V(side-over, y), geom.V(side+2*d+over, y), axis),
		Line(geom.V(end-d-over, y), geom.V(end+d+over, y), axis),
		Line(geom.V(end, y-d-over), geom.V(end, y+d+over), axis),
	}
}
