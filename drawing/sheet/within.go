package sheet

import (
	"math"

	"slabwright/model/unit"
)

// within writes a tolerance in the unit of the job. Inch jobs get thousandths,
// rounded down: a sixteenth would allow more than the millimetres do.
func (m *maker) within(l unit.Length) string {
	if m.style.Unit != "in" {
		return m.length(l)
	}
	return m.style.Fixed(math.Floor(float64(l/unit.Inch)*1000)/1000, 3) + `"`
}
