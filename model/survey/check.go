package survey

import (
	"math"

	"slabwright/model/unit"
)

// huge is the largest length that is taken for a reading.
const huge = 1e9 // mm

// pointsOf is how many points each kind of reading names; a width may name six.
var pointsOf = map[Kind]int{Distance: 2, Angle: 3, Interior: 1, SquareOff: 3, Width: 2, Offset: 3, Bow: 2}

// check refuses readings that make no sense, before anything is computed.
func (n *Network) check() error {
	seen := map[Point]bool{}
	for _, p := range n.Chain {
		if p == "" {
			return badNetwork("a corner has no name")
		}
		if seen[p] {
			return &Problem{Trouble: BadReading, Points: []Point{p}, Why: "corner " + string(p) + " is listed twice"}
		}
		seen[p] = true
	}
	if n.Closed && len(n.Chain) < 3 {
		return badNetwork("a closed room needs three corners or more")
	}
	ids := map[string]bool{}
	for _, r := range n.Readings {
		if err := checkReading(r); err != nil {
			return err
		}
		if r.ID != "" && ids[r.ID] {
			return bad(r, "two readings have this name")
		}
		ids[r.ID] = true
	}
	for _, p := range sortedPoints(n.Turns) {
		if t := n.Turns[p]; !seen[p] || t < NotTold || t > Outside {
			return badNetwork("turn %d is told of %q, which is no corner of the chain or no turn", int(t), p)
		}
	}
	a := n.Accuracy
	for _, l := range []unit.Length{a.Touch, a.Corner, a.SquareOff, a.Offset, a.Bow, unit.Length(a.Protractor)} {
		if !deviation(float64(l), huge) {
			return badNetwork("the accuracy of the tools holds a standard deviation of %g", float64(l))
		}
	}
	for _, f := range n.Fixed {
		if !sane(f.At.X) || !sane(f.At.Y) {
			return badNetwork("the coordinates given for %s are not numbers", f.Point)
		}
	}
	for _, p := range sortedPoints(n.Start) {
		if a := n.Start[p]; !sane(a.X) || !sane(a.Y) {
			return badNetwork("the starting coordinates of %s are not numbers", p)
		}
	}
	return nil
}

func checkReading(r Reading) error {
	want, known := pointsOf[r.Kind]
	switch {
	case !known:
		return bad(r, "unknown kind of reading %d", int(r.Kind))
	case len(r.Points) != want && !(r.Kind == Width && len(r.Points) == 6):
		return bad(r, "a %s names %d points, not %d", r.Kind, want, len(r.Points))
	case repeated(r):
		return bad(r, "a %s needs different points", r.Kind)
	case r.Kind.angular() && !(r.Angle > 0 && r.Angle < 360*unit.Degree):
		return bad(r, "an angle of %g degrees is not between 0 and 360", r.Angle.Degrees())
	case r.Kind != Bow && r.Kind != Offset && !r.Kind.angular() && !(r.Length > 0 && r.Length < huge):
		return bad(r, "a %s of %g mm is not a length", r.Kind, float64(r.Length))
	case !sane(r.Length):
		return bad(r, "a %s of %g mm is not a length", r.Kind, float64(r.Length))
	case r.Kind == SquareOff && !(r.A > 0 && r.A < huge && r.B > 0 && r.B < huge):
		return bad(r, "the marks at %g and %g mm are not lengths", float64(r.A), float64(r.B))
	case r.Kind == SquareOff && !(r.Length < r.A+r.B && r.Length > max(r.A-r.B, r.B-r.A)):
		return bad(r, "marks at %g and %g mm can't be %g mm apart", float64(r.A), float64(r.B), float64(r.Length))
	case r.Kind == Width && !(r.A >= 0 && r.A < huge):
		return bad(r, "the depth of %g mm is not a length", float64(r.A))
	case !deviation(float64(r.SD), huge) || !deviation(float64(r.AngleSD), math.Pi):
		return bad(r, "the standard deviation is not a number from 1e-9")
	}
	return nil
}

// repeated says whether a reading names a point where it needs another. The
// side walls of a width may share points with its wall.
func repeated(r Reading) bool {
	for i, p := range r.Points {
		for j, q := range r.Points[:i] {
			if p == q && (r.Kind != Width || j == i-1 && i%2 == 1) {
				return true
			}
		}
	}
	return false
}

// deviation says whether a standard deviation is left out or usable.
func deviation(v, most float64) bool { return v == 0 || v >= 1e-9 && v < most }

func sane(l unit.Length) bool { return l > -huge && l < huge }
