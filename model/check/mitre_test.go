package check

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// TestMitredEndHasLessLeg: by hand for L60x60x6, a strip of 400 N at the toe, 20 mm
// from the left end: it bends twice its lever of 54 mm of leg, of which 74 mm are
// there, 54 to the right and 20 to the left; a mitre of 30 degrees that shortens
// the toe takes 60 tan 30 = 34.64 mm off them, one that lengthens it none.
func TestMitredEndHasLessLeg(t *testing.T) {
	for _, c := range []struct {
		mitre unit.Angle
		width float64
	}{{0, 74}, {-30 * unit.Degree, 74 - 34.641}, {30 * unit.Degree, 74}} {
		a := &model.AnglePart{Section: stock.L60x60x6, Mounted: model.Mounted{Length: 400, Left: model.End{Mitre: c.mitre}}}
		l := legLoads(a, hold.Run{Line: []hold.LineLoad{{Along: 20, Width: 40, Force: 400, FromHeel: 60}}})[0]
		if math.Abs(float64(l.Width)-c.width) > 0.001 {
			t.Errorf("mitre %v: %v mm of leg, want %v", c.mitre, l.Width, c.width)
		}
	}
}
