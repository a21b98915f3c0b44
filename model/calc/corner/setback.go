package corner

import (
	"math"

	"slabwright/model/unit"
)

// Alike is the least set-back, the same for both legs, that leaves the given
// clearance between them. For legs of the same width w and clearance g
//
//	s = w cot(theta/2) + g / (2 sin(theta/2))   inside corner
//	s = g / (2 sin(theta/2))                    arris
//
// because each leg must stay half the clearance off the bisector. Legs of
// unequal width are brought apart until the clearance is there.
func Alike(theta unit.Angle, width1, width2, gap unit.Length) (unit.Length, error) {
	if err := valid(theta, Leg{0, width1}, Leg{0, width2}, gap); err != nil {
		return 0, err
	}
	sin, cos := math.Sincos(float64(theta) / 2)
	wide := float64(max(width1, width2))
	formula := unit.Length(wide*max(0, cos/sin) + float64(gap)/(2*sin))
	if theta >= 180*unit.Degree || width1 == width2 {
		return formula, nil
	}
	least := max(ownWall(theta, width1), ownWall(theta, width2))
	return nearest(least, formula, gap, func(s unit.Length) unit.Length {
		return apart(theta, Leg{s, width1}, Leg{s, width2})
	}), nil
}

// Butt is the least set-back of a leg of the given width that leaves the
// clearance to another leg which is already placed, as when one angle runs
// through into the corner and the other butts against it. With the through leg
// (index 2) as far in the corner as its wall allows,
//
//	s1 = (w2 + w1 cos theta + g) / sin theta   up to 90 degrees
//	s1 = w2 sin theta + g                      above, to 180
//
// At an arris the leg may run past the edge, at most by the other's width.
func Butt(theta unit.Angle, through Leg, width, gap unit.Length) (unit.Length, error) {
	if err := valid(theta, Leg{0, width}, through, gap); err != nil {
		return 0, err
	}
	sin, cos := math.Sincos(float64(theta))
	formula := through.Width*unit.Length(sin) + gap
	if cos >= 0 {
		formula = (through.Width + width*unit.Length(cos) + gap) / unit.Length(sin)
	}
	least := max(ownWall(theta, width), -through.Width)
	return nearest(least, formula, gap, func(s unit.Length) unit.Length {
		return apart(theta, Leg{s, width}, through)
	}), nil
}

// Start is the least set-back that keeps a leg out of the other leg's wall:
// w cot theta in an acute corner, else 0.
func Start(theta unit.Angle, width unit.Length) (unit.Length, error) {
	if err := valid(theta, Leg{0, width}, Leg{0, width}, 0); err != nil {
		return 0, err
	}
	return max(0, ownWall(theta, width)), nil
}

// apart is the clearance of two legs, -1 mm when they overlap.
func apart(theta unit.Angle, leg1, leg2 Leg) unit.Length {
	p, q := pair(theta, leg1, leg2)
	if !free(p, q) {
		return -1
	}
	return unit.Length(p.distance(q))
}

// nearest is the least set-back from a lower bound that gives the clearance.
// Clearance never falls as a leg is drawn back, for the leg drawn back further
// lies within the other. The formula is taken where it holds exactly.
func nearest(least, formula, gap unit.Length, clear func(unit.Length) unit.Length) unit.Length {
	if clear(least) >= gap-touch {
		return least
	}
	if c := clear(formula); c >= gap-touch && clear(formula-10*touch) < gap-touch {
		return formula
	}
	low, high := least, max(least, 0)+1
	for clear(high) < gap {
		low, high = high, 2*high
	}
	for high-low > touch/10 {
		if mid := (low + high) / 2; clear(mid) < gap {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}
