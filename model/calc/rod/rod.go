// Package rod holds what a round bar takes that stands out of a wall and
// carries a shelf in its bore. Newton, millimetre, N/mm2.
package rod

import (
	"math"

	"slabwright/model/unit"
)

// Stress is the bending stress of a round bar where it is held, under a force
// at an arm from there: M over pi d3 / 32.
func Stress(dia unit.Length, force float64, arm unit.Length) float64 {
	return force * float64(arm) / (math.Pi * math.Pow(float64(dia), 3) / 32)
}

// Pressure is the largest pressure of a rigid bar that is held over a length in
// a bore, on its diameter, under a force and a moment at the mouth: the even
// share of the force and the couple of the moment about the middle, which spreads
// in a straight line: F/(d L) + 6 (M + F L/2)/(d L2).
func Pressure(dia, length unit.Length, force, moment float64) float64 {
	d, l := float64(dia), float64(length)
	return force/(d*l) + 6*(moment+force*l/2)/(d*l*l)
}

// Droop is how far a bar sinks at its tip under a force at an arm, both from
// where it is held: a cantilever, straight on beyond the force. The modulus is
// that of steel.
func Droop(dia unit.Length, force float64, arm, tip unit.Length) unit.Length {
	const steel = 210000.0
	a, l := float64(arm), math.Max(float64(tip), float64(arm))
	inertia := math.Pi * math.Pow(float64(dia), 4) / 64
	return unit.Length(force * a * a * (3*l - a) / (6 * steel * inertia))
}
