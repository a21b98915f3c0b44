package survey

import (
	"fmt"
	"math"
)

// Name names a reading by what it measures between which points, such as "A-F"
// or "offset E from B-G": as long as readings have no names of their own.
func (r Reading) Name() string {
	p := r.Points
	switch {
	case r.Kind == Distance && len(p) == 2:
		return fmt.Sprintf("%s-%s", p[0], p[1])
	case r.Kind == Angle && len(p) == 3:
		return fmt.Sprintf("angle %s-%s-%s", p[0], p[1], p[2])
	case r.Kind == SquareOff && len(p) == 3:
		return fmt.Sprintf("square %s-%s-%s", p[0], p[1], p[2])
	case r.Kind == Offset && len(p) == 3:
		return fmt.Sprintf("offset %s from %s-%s", p[0], p[1], p[2])
	case r.Kind == Width && len(p) == 6:
		return fmt.Sprintf("width %s-%s to %s-%s at %.0f mm", p[2], p[3], p[4], p[5], float64(r.A))
	}
	return fmt.Sprintf("%s %v", r.Kind, p)
}

// How tells a person how a reading is taken.
func (r Reading) How() string {
	p := r.Points
	switch {
	case r.Kind == Distance && len(p) == 2:
		return fmt.Sprintf("the straight distance from %s to %s", p[0], p[1])
	case r.Kind == SquareOff && len(p) == 3:
		return fmt.Sprintf("a 3-4-5 in corner %s: marks %.0f mm towards %s and %.0f mm towards %s, and the distance between the marks", p[1], float64(r.A), p[0], float64(r.B), p[2])
	case r.Kind == Offset && len(p) == 3:
		return fmt.Sprintf("how far %s stands off the straight line %s-%s, square to it", p[0], p[1], p[2])
	case r.Kind == Width && len(p) == 6:
		return fmt.Sprintf("the width from wall %s-%s to wall %s-%s, %.0f mm before the line %s-%s and parallel to it", p[2], p[3], p[4], p[5], float64(r.A), p[0], p[1])
	}
	return "the " + r.Name()
}

// Of writes the value that was foretold of a reading: an offset with the side
// on which the point lies.
func (f Foretold) Of(r Reading) string {
	switch {
	case r.Kind.angular():
		return fmt.Sprintf("%.1f deg", f.Angle.Degrees())
	case r.Kind == Offset && f.Length.Value < 0:
		return fmt.Sprintf("%.1f mm behind it", -float64(f.Length.Value))
	case r.Kind == Offset:
		return fmt.Sprintf("%.1f mm before it", float64(f.Length.Value))
	}
	return fmt.Sprintf("%.1f mm", float64(f.Length.Value))
}

// Within is how far a new reading may stray from what was foretold before it
// contradicts: two standard deviations of the difference, in mm or degrees.
func (f Foretold) Within(r Reading) float64 {
	if r.Kind.angular() {
		return 2 * math.Hypot(f.AngleSD.Degrees(), r.AngleSD.Degrees())
	}
	return 2 * math.Hypot(float64(f.Length.SD), float64(r.SD))
}
