package survey

import (
	"math"

	"slabwright/model/unit"
)

// Station is a reading of a wall's face against a straightedge or string from
// corner to corner: how far the face stands off it into the room, at some
// distance from the left corner. A zero SD takes Accuracy.Bow.
type Station struct {
	Along unit.Length
	Off   unit.Length
	SD    unit.Length
}

// BowFit is the parabola through both corners that fits the stations best.
type BowFit struct {
	Bow       unit.Measured // at the middle of the wall, positive into the room
	Residuals []unit.Length // fitted less read, by station
	Worst     int           // station with the largest residual
	Test      GlobalTest    // disagree: the wall is no parabola; unchecked: one station only
}

// FitBow fits the bow of a wall of some length to its stations. It gives an
// error for stations off the wall and when none tells anything of the bow.
func FitBow(length unit.Length, stations []Station, a Accuracy) (BowFit, error) {
	if !(length > 0 && length < huge) {
		return BowFit{}, badNetwork("a wall of %g mm has no bow", float64(length))
	}
	weight, sum := 0.0, 0.0
	shape := make([]float64, len(stations))
	for i, s := range stations {
		if !(s.Along >= 0 && s.Along <= length) || !sane(s.Off) || !deviation(float64(s.SD), huge) {
			return BowFit{}, badNetwork("station %d at %g mm, %g mm off, does not lie on a wall of %.0f mm", i+1, float64(s.Along), float64(s.Off), float64(length))
		}
		t := float64(s.Along / length)
		shape[i] = 4 * t * (1 - t)
		sd := a.station(s)
		weight += shape[i] * shape[i] / (sd * sd)
		sum += shape[i] * float64(s.Off) / (sd * sd)
	}
	if !(weight > 1e-12) {
		return BowFit{}, badNetwork("no station tells anything of the bow: measure one near the middle of the wall")
	}
	fit := BowFit{Bow: unit.Measured{Value: unit.Length(sum / weight), SD: unit.Length(1 / math.Sqrt(weight))}}
	cost := 0.0
	for i, s := range stations {
		v := unit.Length(shape[i])*fit.Bow.Value - s.Off
		fit.Residuals = append(fit.Residuals, v)
		cost += math.Pow(float64(v)/a.station(s), 2)
		if math.Abs(float64(v)) > math.Abs(float64(fit.Residuals[fit.Worst])) {
			fit.Worst = i
		}
	}
	fit.Test = globalTest(cost, len(stations)-1)
	return fit, nil
}

func (a Accuracy) station(s Station) float64 {
	if s.SD != 0 {
		return float64(s.SD)
	}
	return float64(a.filled().Bow)
}

// Plumb is a reading of a wall against a plumb line: how far it stands back
// from the room at some height. A zero SD takes Accuracy.Bow.
type Plumb struct {
	Height unit.Length
	Back   unit.Length
	SD     unit.Length
}

// LeanFit is the straight line that fits the plumb readings best.
type LeanFit struct {
	PerMetre  unit.Measured // how far the wall goes back per metre upwards
	Residuals []unit.Length // fitted less read
	Test      GlobalTest    // disagree: the wall is bowed upwards; unchecked: two readings only
}

// FitLean fits the lean of a wall. It gives an error unless two readings at
// different heights are there.
func FitLean(list []Plumb, a Accuracy) (LeanFit, error) {
	var n, z, b float64
	sd := func(p Plumb) float64 { return a.station(Station{SD: p.SD}) }
	for i, p := range list {
		if !sane(p.Height) || !sane(p.Back) || !deviation(float64(p.SD), huge) {
			return LeanFit{}, badNetwork("plumb reading %d at %g mm, %g mm back, is not a length", i+1, float64(p.Height), float64(p.Back))
		}
		w := 1 / (sd(p) * sd(p))
		n, z, b = n+w, z+w*float64(p.Height), b+w*float64(p.Back)
	}
	var spread, slope float64
	for _, p := range list {
		w, dz := 1/(sd(p)*sd(p)), float64(p.Height)-z/n
		spread, slope = spread+w*dz*dz, slope+w*dz*(float64(p.Back)-b/n)
	}
	if !(spread > 1e-9) {
		return LeanFit{}, badNetwork("lean needs plumb readings at two heights")
	}
	slope /= spread
	fit := LeanFit{PerMetre: unit.Measured{Value: unit.Length(1000 * slope), SD: unit.Length(1000 / math.Sqrt(spread))}}
	cost := 0.0
	for _, p := range list {
		v := b/n + slope*(float64(p.Height)-z/n) - float64(p.Back)
		fit.Residuals = append(fit.Residuals, unit.Length(v))
		cost += v * v / (sd(p) * sd(p))
	}
	fit.Test = globalTest(cost, len(list)-2)
	return fit, nil
}
