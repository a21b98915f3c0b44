// Package corner answers how far two steel angles on neighbouring walls must
// stay back from the corner so that their horizontal legs do not meet.
//
// In plan, the corner is the origin, wall 1 runs along +x and wall 2 at the
// angle theta counter-clockwise from it; the room lies between them. A leg
// starts at its set-back s from the corner and runs on along its wall, w wide.
// Theta below 180 degrees is an inside corner, above it an arris that sticks
// out into the room; there a set-back below zero means that the leg runs past
// the arris. Set-backs below zero are no use at an inside corner.
//
// For an angle known only within its measuring error, take the bound that asks
// for more: theta less twice its standard deviation.
//
// Basis: plane geometry of two convex strips, own derivation; the tests hold it
// against polygon clipping.
package corner

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Leg is the horizontal leg of one wall angle: where it starts, from the
// corner along its wall, and how wide it is.
type Leg struct{ SetBack, Width unit.Length }

// Clash tells how two legs lie to each other in a corner.
type Clash struct {
	Free      bool           // they overlap nowhere; touching is free
	Clearance unit.Length    // least distance between them, 0 when they touch or overlap
	Overlap   unit.Area      // area that both claim
	Box       [2]unit.Length // extent of the overlap or of the touching edge along wall 1 and square to it
	ClearWall [2]bool        // whether each leg stays out of the other leg's wall
}

// touch is the overlap below which two legs only touch.
const touch = 1e-6 // mm

// Check tells whether two legs in a corner of angle theta are free of each
// other and of the walls. It gives an error for an angle outside 5 to 355
// degrees, for widths that are not positive, and for numbers that are none.
func Check(theta unit.Angle, leg1, leg2 Leg) (Clash, error) {
	if err := valid(theta, leg1, leg2, 0); err != nil {
		return Clash{}, err
	}
	p, q := pair(theta, leg1, leg2)
	c := Clash{Free: free(p, q)}
	c.ClearWall[0] = leg1.SetBack >= ownWall(theta, leg1.Width)-touch
	c.ClearWall[1] = leg2.SetBack >= ownWall(theta, leg2.Width)-touch
	if c.Free {
		c.Clearance = unit.Length(p.distance(q))
	}
	if c.Clearance < touch {
		c.Clearance = 0
		c.Overlap, c.Box = overlap(p, q)
	}
	return c, nil
}

// ownWall is the least set-back at which a leg stays out of the other wall:
// w cot theta in an acute corner, 0 in an obtuse one, none at an arris.
func ownWall(theta unit.Angle, w unit.Length) unit.Length {
	if theta >= 180*unit.Degree {
		return unit.Length(math.Inf(-1))
	}
	return max(0, w*unit.Length(math.Cos(float64(theta))/math.Sin(float64(theta))))
}

func valid(theta unit.Angle, leg1, leg2 Leg, gap unit.Length) error {
	if !(theta >= 5*unit.Degree && theta <= 355*unit.Degree) {
		return fmt.Errorf("corner angle of %.4g degrees is outside 5 to 355", theta.Degrees())
	}
	for _, l := range []Leg{leg1, leg2} {
		if !(l.Width > 0 && l.Width < unit.Length(math.Inf(1))) {
			return fmt.Errorf("leg width of %.4g mm is not a positive length", l.Width)
		}
		if math.IsNaN(float64(l.SetBack)) || math.IsInf(float64(l.SetBack), 0) {
			return fmt.Errorf("set-back of %.4g mm is not a length", l.SetBack)
		}
	}
	if !(gap >= 0 && gap < unit.Length(math.Inf(1))) {
		return fmt.Errorf("clearance of %.4g mm is not a length from 0", gap)
	}
	return nil
}
