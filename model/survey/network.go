// Package survey turns readings of a room (lengths, diagonals, widths, angles,
// 3-4-5 marks) into the coordinates of its corners, by weighted least squares,
// and tells how well each coordinate and each reading is known.
//
// The corners are listed as somebody standing in the room sees the walls, left
// to right; seen from above the chain runs clockwise and the room lies to the
// right of every wall. With a base wall the first of its corners is the origin,
// the second lies on +x, and the room is in front of it, at y below 0.
//
// Basis: Gauss-Newton adjustment of a plane network, as in any textbook
// (C. D. Ghilani and P. R. Wolf, Adjustment Computations; E. M. Mikhail and
// F. Ackermann, Observations and Least Squares). Residuals are adjusted less
// observed; statements use the standard deviations put in, never the estimate
// from the few residuals of a room.
package survey

import (
	"fmt"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Point is the name of a corner or of another measured point.
type Point string

// Kind is what a reading measures.
type Kind int

// The kinds of reading, and the points each one names.
const (
	// Distance between two points.
	Distance Kind = iota
	// Angle of three points at the middle one, counter-clockwise from the
	// first to the third. Listed in walking order this is the angle inside the
	// room.
	Angle
	// Interior is the angle inside the room at one corner of the chain.
	Interior
	// SquareOff is a 3-4-5 check of three points at the middle one: marks at A
	// along the wall to the first and at B along the wall to the third; the
	// reading is the distance between the marks.
	SquareOff
	// Width parallel to the wall from the first to the second point, at the
	// depth A into the room (to its right), between two side walls: those that
	// lead to and from the wall, or the lines of the third to the fourth and
	// of the fifth to the sixth point.
	Width
	// Offset of the first point square from the line of the second to the
	// third; positive to its right, on the room's side of a wall.
	Offset
	// Bow of the wall between two neighbouring corners: how far its middle
	// stands off the straight line; positive when it bulges into the room.
	Bow
)

var kindNames = [...]string{"distance", "angle", "interior angle", "square-off", "width", "offset", "bow"}

// String names the kind as a person would.
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kindNames) {
		return fmt.Sprintf("kind %d", int(k))
	}
	return kindNames[k]
}

// angular says whether the kind is read in radians.
func (k Kind) angular() bool { return k == Angle || k == Interior }

// Reading is one thing measured. Length is the reading of every kind but
// angles, which are read as Angle. SD and AngleSD are its standard deviation;
// 0 takes the usual one of the tool (Accuracy).
type Reading struct {
	ID      string // unique; appears in messages
	Kind    Kind
	Points  []Point
	A, B    unit.Length // marks of a square-off; A is the depth of a width
	Length  unit.Length
	Angle   unit.Angle
	SD      unit.Length
	AngleSD unit.Angle
	Where   string // where it stands in the user's file, for messages
}

// Turn tells which way a corner goes.
type Turn int

// The turns. An inside corner is less than 180 degrees wide in the room, an
// outside corner (arris) more.
const (
	NotTold Turn = iota
	Inside
	Outside
)

// String gives "inside", "outside" or "not told".
func (t Turn) String() string { return [...]string{"not told", "inside", "outside"}[t] }

// Coordinate is a point that is known beforehand.
type Coordinate struct {
	Point Point
	At    geom.Vec
}

// Network is a set of readings between points.
//
// What holds it in place: the coordinates in Fixed; or else the Base wall; or
// else nothing, and the network is adjusted free, which leaves it as near to
// the starting coordinates as turning and shifting allows.
type Network struct {
	Chain    []Point // the corners in walking order; may be empty
	Closed   bool    // a wall joins the last corner to the first
	Turns    map[Point]Turn
	Base     [2]Point
	Fixed    []Coordinate
	Readings []Reading
	Accuracy Accuracy           // zero fields are those of Usual
	Start    map[Point]geom.Vec // starting coordinates; needed only if Adjust asks for them
}
