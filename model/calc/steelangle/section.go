// Package steelangle holds what a rolled equal angle takes when it carries a
// slab along a wall: the values of its section from its shape, the seat leg as
// a plate that stands out from the wall leg, the bar as a beam from anchor to
// anchor. Newton, millimetre, N/mm2.
package steelangle

import (
	"math"

	"slabwright/model/unit"
)

// Shape is a rolled equal angle: legs, thickness, fillet in the root, rounding
// of the toes.
type Shape struct{ Leg, Thickness, Root, Toe unit.Length }

// Section are the values of a section. Centroid is how far the centre of area
// lies from the outer faces; I is about an axis through it along a leg, U about
// the strong and V about the weak principal axis, which lie at 45 degrees to
// the legs. Wel is I over the distance to the toe. Torsion is that of thin
// walls, a third of length times thickness cubed.
type Section struct {
	Area     float64 // mm2
	Centroid unit.Length
	I, U, V  float64 // mm4
	Wel      float64 // mm3
	Torsion  float64 // mm4
}

// Section computes the values by Green's formulas over the outline.
func (s Shape) Section() Section {
	pts := s.outline()
	var a, sx, ixx, ixy float64
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		cross := p[0]*q[1] - q[0]*p[1]
		a += cross / 2
		sx += (p[1] + q[1]) * cross / 6
		ixx += (p[1]*p[1] + p[1]*q[1] + q[1]*q[1]) * cross / 12
		ixy += (p[0]*q[1] + 2*p[0]*p[1] + 2*q[0]*q[1] + q[0]*p[1]) * cross / 24
	}
	c := sx / a
	i, product := ixx-a*c*c, ixy-a*c*c
	b, t := float64(s.Leg), float64(s.Thickness)
	return Section{
		Area: a, Centroid: unit.Length(c), I: i, U: i + math.Abs(product), V: i - math.Abs(product),
		Wel: i / (b - c), Torsion: (2*b - t) * t * t * t / 3,
	}
}

// outline runs counter-clockwise from the heel, legs along both axes.
func (s Shape) outline() [][2]float64 {
	b, t, r1, r2 := float64(s.Leg), float64(s.Thickness), float64(s.Root), float64(s.Toe)
	pts := [][2]float64{{0, 0}, {b, 0}}
	arc := func(x, y, r, from, to float64) {
		const n = 40
		for k := 0; k <= n; k++ {
			a := (from + (to-from)*float64(k)/n) * math.Pi / 180
			pts = append(pts, [2]float64{x + r*math.Cos(a), y + r*math.Sin(a)})
		}
	}
	arc(b-r2, t-r2, r2, 0, 90)
	arc(t+r1, t+r1, r1, 270, 180)
	arc(t-r2, b-r2, r2, 0, 90)
	return append(pts, [2]float64{0, b})
}
