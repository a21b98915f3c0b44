// Package batten judges a wooden batten that is bolted flat to a wall and loaded
// on its top: what it bears between two bolts and what wood bears round one.
// Newton and millimetre; EN 1995-1-1, the clauses named, from memory.
package batten

import (
	"math"

	"slabwright/model/unit"
)

// Section is the section of a batten: out from the wall, and high.
type Section struct{ Wide, High unit.Length }

// Inertia is that of bending up and down, mm4.
func (s Section) Inertia() float64 { return float64(s.Wide) * math.Pow(float64(s.High), 3) / 12 }

// Torsion is its torsion constant, mm4 (Roark's Formulas for Stress and Strain, solid
// rectangle, from memory).
func (s Section) Torsion() float64 {
	a, b := float64(max(s.Wide, s.High))/2, float64(min(s.Wide, s.High))/2
	return a * math.Pow(b, 3) * (16.0/3 - 3.36*b/a*(1-math.Pow(b/a, 4)/12))
}

// Bending is the stress at its edges under a moment up and down, N mm (6.1.6).
func (s Section) Bending(moment float64) float64 {
	return 6 * moment / (float64(s.Wide) * float64(s.High) * float64(s.High))
}

// Shear is the largest shear stress under a shear force, N. Cracks leave two thirds
// of the width (6.1.7, k_cr 0.67).
func (s Section) Shear(force float64) float64 {
	return 1.5 * force / (cracked * float64(s.Wide) * float64(s.High))
}

const cracked = 0.67

// Splitting is the characteristic shear force, N, on one side of a bolt at which the
// wood splits along its row: up is how far the bolt stands below the loaded edge, the
// top (8.1.4; made for softwood, of hardwood it is taken as well).
func (s Section) Splitting(up unit.Length) float64 {
	h, he := float64(s.High), float64(up)
	if he <= 0 || he >= h {
		return 0
	}
	return 14 * float64(s.Wide) * math.Sqrt(he/(1-he/h))
}

// Embedding is the characteristic pressure, N/mm2, of a bolt across the grain of
// hardwood of some characteristic density, kg/m3 (8.31 to 8.33, k90 = 0.90 + 0.015 d).
func Embedding(bolt unit.Length, density float64) float64 {
	d := float64(bolt)
	return 0.082 * (1 - 0.01*d) * density / (0.90 + 0.015*d)
}

// Pulled is the force, N, at which a washer is drawn into wood of some strength
// across the grain: three times that under the washer's ring (8.5.2).
func Pulled(washer, hole unit.Length, over float64) float64 {
	ring := math.Pi / 4 * float64(washer*washer-hole*hole)
	return 3 * over * math.Max(0, ring)
}
