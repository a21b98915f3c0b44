// Package unit gives every quantity of slabwright its type. Lengths are
// millimetres, angles radians, masses kilograms, forces newtons; the set
// N, mm, N/mm2 keeps formulas free of factors. Literals stay bare:
//
//	var thickness unit.Length = 45      // mm
//	wide := 3*unit.M + 20*unit.CM       // 3200 mm
package unit

import "math"

// Length is a length in millimetres.
type Length float64

// Units of length.
const (
	Micrometre Length = 1e-3
	MM         Length = 1
	CM         Length = 10
	M          Length = 1000
	Inch       Length = 25.4
	Foot       Length = 304.8
)

// Angle is an angle in radians, counter-clockwise seen from above.
type Angle float64

// Units of angle.
const (
	Radian Angle = 1
	Degree Angle = math.Pi / 180
)

// Degrees gives the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Area is an area in square millimetres.
type Area float64

// Volume is a volume in cubic millimetres.
type Volume float64

// Mass is a mass in kilograms.
type Mass float64

// Density is a density in kilograms per cubic metre.
type Density float64

// Mass gives the mass of a volume of this density.
func (d Density) Mass(v Volume) Mass { return Mass(float64(d) * float64(v) * 1e-9) }

// LineMass is a mass per length in kilograms per metre.
type LineMass float64

// Mass gives the mass of a length.
func (m LineMass) Mass(l Length) Mass { return Mass(float64(m) * float64(l) / 1000) }

// Measured is a length with its standard deviation, both in millimetres.
type Measured struct{ Value, SD Length }
