package steelangle

import (
	"math"

	"slabwright/model/unit"
)

// Steel of grade S235 up to 16 mm: EN 10025-2 and EN 1993-1-1 with gamma_M0 1.0.
const (
	Yield   = 235.0    // N/mm2
	Modulus = 210000.0 // N/mm2
)

// LegStress is the bending stress in the seat leg at the face of the wall leg,
// under a line load of so many N/mm that acts at an arm from the heel: the leg
// is a plate that stands out, W = t2/6 for each millimetre; the fillet is left
// out. N/mm2, 0 for a load over the wall leg.
func LegStress(s Shape, load float64, arm unit.Length) float64 {
	return 6 * load * math.Max(0, float64(arm-s.Thickness)) / float64(s.Thickness*s.Thickness)
}

// NetStress is the same on the line of holes at a distance from the heel, of
// which so much of the length is left: 1 less the share that holes take away.
// A countersink counts as a hole of the mean of its diameters.
func NetStress(s Shape, load float64, arm, line unit.Length, left float64) float64 {
	return 6 * load * math.Max(0, float64(arm-line)) / float64(s.Thickness*s.Thickness) / left
}

// TipSag is how far the seat leg sinks at its toe under a line load at an arm,
// both from the heel: a cantilever from the face of the wall leg, straight on
// beyond the load. The anchors' own give is not in it.
func TipSag(s Shape, load float64, arm unit.Length) unit.Length {
	a, l := math.Max(0, float64(arm-s.Thickness)), float64(s.Leg-s.Thickness)
	if a > l {
		a = l
	}
	inertia := math.Pow(float64(s.Thickness), 3) / 12 // for each millimetre
	return unit.Length(load * a * a * (3*l - a) / (6 * Modulus * inertia))
}

// BarStress is the largest stress from bending between anchors: moment, N mm,
// about an axis along the seat leg. The bar is free to go sideways, so that the
// moment splits on both principal axes at 45 degrees (unsymmetric bending); the
// toes and the heel are looked at.
func BarStress(s Shape, moment float64) float64 {
	v := s.Section()
	b, t, c := float64(s.Leg), float64(s.Thickness), float64(v.Centroid)
	m := moment / math.Sqrt2
	worst := 0.0
	for _, p := range [][2]float64{{0, 0}, {b, 0}, {b, t}, {0, b}, {t, b}} {
		x, y := p[0]-c, p[1]-c
		u, w := (x+y)/math.Sqrt2, (y-x)/math.Sqrt2 // along the strong axis' own direction and square to it
		worst = math.Max(worst, math.Abs(m*w/v.U)+math.Abs(m*u/v.V))
	}
	return worst
}

// TwistStress is the shear stress from a twisting moment, N mm, along the bar:
// thin-walled open section.
func TwistStress(s Shape, moment float64) float64 {
	return math.Abs(moment) * float64(s.Thickness) / s.Section().Torsion
}

// Combined is the stress of von Mises of bending across and along the bar, of
// unlike sign, which is the worse, and shear.
func Combined(across, along, shear float64) float64 {
	return math.Sqrt(across*across + along*along + math.Abs(across*along) + 3*shear*shear)
}

// Span is a stretch of the bar between two anchors, loaded by forces at places
// from its left end.
type Span struct {
	Length unit.Length
	Loads  []Force
}

// Force is a force, N, at a place along a span.
type Force struct {
	At    unit.Length
	Value float64
}

// Moment is the largest bending moment of a simple beam, N mm. A bar that runs
// on over its anchors has less.
func (p Span) Moment() float64 {
	l := float64(p.Length)
	left := 0.0
	for _, f := range p.Loads {
		left += f.Value * (l - float64(f.At)) / l
	}
	worst := 0.0
	for _, x := range p.Loads {
		m := left * float64(x.At)
		for _, f := range p.Loads {
			if f.At < x.At {
				m -= f.Value * float64(x.At-f.At)
			}
		}
		worst = math.Max(worst, m)
	}
	return worst
}

// Sag is how far a simple beam of this section sinks at its middle, by the
// influence line of its middle: P (3 L2 x - 4 x3) / (48 E I) for a force at x
// from the nearer end.
func (p Span) Sag(s Shape) unit.Length {
	l, i := float64(p.Length), s.Section().V
	sum := 0.0
	for _, f := range p.Loads {
		x := math.Min(float64(f.At), l-float64(f.At))
		sum += f.Value * (3*l*l*x - 4*x*x*x) / 48 / Modulus / i
	}
	return unit.Length(sum)
}
