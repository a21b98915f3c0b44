package plate

import (
	"math"

	"slabwright/model/unit"
)

// Wood is the stiffness of a plate whose grain runs in its plane. Along is the
// direction of the grain, Over lies across it in the plane; the third direction
// goes through the thickness. All moduli are N/mm2.
type Wood struct {
	Along, Over  float64 // N/mm2, Young's moduli
	Poisson      float64 // contraction across for strain along, without unit
	Shear        float64 // N/mm2, in the plane
	ShearAlong   float64 // N/mm2, transverse, on sections across the grain
	ShearRolling float64 // N/mm2, transverse, on sections along the grain
	Density      unit.Density
}

// shearFactor spreads transverse shear over a rectangular section; E. Reissner,
// 1945.
const shearFactor = 5.0 / 6

// inPlane gives the plane-stress moduli of (exx, eyy, gxy) in the plate's axes,
// grain turned from x.
func (w Wood) inPlane(grain unit.Angle) [3][3]float64 {
	nuOver := w.Poisson * w.Over / w.Along
	d := 1 - w.Poisson*nuOver
	q11, q22, q12, q66 := w.Along/d, w.Over/d, nuOver*w.Along/d, w.Shear
	s, c := math.Sincos(float64(grain))
	c2, s2, cs := c*c, s*s, c*s
	a, b := q11-q12-2*q66, q12-q22+2*q66
	return [3][3]float64{
		{q11*c2*c2 + 2*(q12+2*q66)*s2*c2 + q22*s2*s2, (q11+q22-4*q66)*s2*c2 + q12*(s2*s2+c2*c2), a*cs*c2 + b*cs*s2},
		{(q11+q22-4*q66)*s2*c2 + q12*(s2*s2+c2*c2), q11*s2*s2 + 2*(q12+2*q66)*s2*c2 + q22*c2*c2, a*cs*s2 + b*cs*c2},
		{a*cs*c2 + b*cs*s2, a*cs*s2 + b*cs*c2, (q11+q22-2*q12-2*q66)*s2*c2 + q66*(s2*s2+c2*c2)},
	}
}

// transverse gives the moduli of (gxz, gyz) in the plate's axes, the shear
// factor in them.
func (w Wood) transverse(grain unit.Angle) [2][2]float64 {
	s, c := math.Sincos(float64(grain))
	l, r := shearFactor*w.ShearAlong, shearFactor*w.ShearRolling
	return [2][2]float64{{l*c*c + r*s*s, (l - r) * c * s}, {(l - r) * c * s, l*s*s + r*c*c}}
}

// toGrain turns the weights of moments (mx, my, mxy) into the axes of the grain.
func toGrain(m [3][12]float64, grain unit.Angle) [3][12]float64 {
	s, c := math.Sincos(float64(grain))
	var out [3][12]float64
	for k := range 12 {
		out[0][k] = m[0][k]*c*c + m[1][k]*s*s + 2*m[2][k]*c*s
		out[1][k] = m[0][k]*s*s + m[1][k]*c*c - 2*m[2][k]*c*s
		out[2][k] = (m[1][k]-m[0][k])*c*s + m[2][k]*(c*c-s*s)
	}
	return out
}
