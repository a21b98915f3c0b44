// Package screw holds what wood screws through steel into wood take: EN
// 1995-1-1:2004+A1:2008, clauses 8.2.3, 8.3.1 and 8.7, from memory. Newton,
// millimetre, N/mm2; characteristic values.
package screw

import (
	"math"

	"slabwright/model/unit"
)

// Screw is a wood screw: outer and core diameter of its thread, tensile strength
// of its steel.
type Screw struct {
	Thread, Core unit.Length
	Steel        float64 // N/mm2
}

// Covers tells whether the formula of withdrawal was made for such a screw:
// 6 to 12 mm, core 0.6 to 0.75 of the thread, at least six diameters of thread
// in the wood. It was made for softwood; for dense hardwood it is an
// extrapolation, and the screw's own declaration comes first.
func (s Screw) Covers(into unit.Length) bool {
	ratio := s.Core / s.Thread
	return s.Thread >= 6 && s.Thread <= 12 && ratio >= 0.6 && ratio <= 0.75 && into >= 6*s.Thread
}

// Withdrawal is what pulls one screw out of wood of a characteristic density in
// kg/m3, square to the grain: equations 8.38 and 8.39.
func (s Screw) Withdrawal(into unit.Length, density float64) float64 {
	d, l := float64(s.Thread), float64(into)
	f := 0.52 * math.Pow(d, -0.5) * math.Pow(l, -0.1) * math.Pow(density, 0.8)
	return f * d * l * math.Min(d/8, 1)
}

// effective is the diameter that bends and presses: 1.1 cores where the thread
// reaches to the steel (8.7.1).
func (s Screw) effective() float64 { return 1.1 * float64(s.Core) }

// bearing is the embedment strength of predrilled wood (8.16).
func (s Screw) bearing(density float64) float64 {
	return 0.082 * (1 - 0.01*s.effective()) * density
}

// yield is the yield moment (8.14).
func (s Screw) yield() float64 { return 0.3 * s.Steel * math.Pow(s.effective(), 2.6) }

// LateralThin is what one screw takes across itself in a single shear joint
// with steel no thicker than half a diameter, without the rope effect: (8.9).
func (s Screw) LateralThin(into unit.Length, density float64) float64 {
	d, f := s.effective(), s.bearing(density)
	return math.Min(0.4*f*float64(into)*d, 1.15*math.Sqrt(2*s.yield()*f*d))
}
