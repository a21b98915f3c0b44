package hold

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/plate"
)

// EN 1995-1-1 table 7.1 (from memory): slip modulus of dowels and screws of
// density^1.5 d/23, by hand for 700 kg/m3: 18520 x 12/23 = 9663 N/mm, half of it
// for beech; 18520 x 5/23 = 4026 for two screws on each side, one side after the
// other. A plate of 40 x 5 bends over the 60 mm between its inner screws:
// 210000 x 416.7/60 = 1.458e6 N mm.
func TestSlip(t *testing.T) {
	wood := plate.Plate{Thick: 45, Wood: plate.Wood{Density: 700}}
	for _, c := range []struct {
		j           model.Joint
		shear, turn float64
	}{
		{model.Joint{Kind: model.DowelJoint, Dia: 12}, 4831, 0},
		{model.Joint{Kind: model.PlateJoint, Dia: 5}, 4026, 1.4583e6},
	} {
		shear, turn := stiffnessOf(c.j, wood, 0)
		if math.Abs(shear-c.shear) > 1 || math.Abs(turn-c.turn) > 100 {
			t.Errorf("%s: %.0f N/mm and %.0f N mm, want %.0f and %.0f", c.j.Kind, shear, turn, c.shear, c.turn)
		}
	}
}
