package batten

import (
	"math"
	"testing"

	"slabwright/model/unit"
)

// TestByHand: a batten of 45 x 60. W = 45 x 60^2 / 6 = 27,000 mm3, A = 2700 mm2.
// The formulas are those of EN 1995-1-1, worked by hand with a pocket calculator.
func TestByHand(t *testing.T) {
	s := Section{45, 60}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"bending of 135 kN mm", s.Bending(135000), 5},
		{"shear of 1206 N on two thirds of the width", s.Shear(1206), 1},
		{"splitting, bolt 30 mm below the top: 14 x 45 x sqrt(30 / 0.5)", s.Splitting(30), 4880},
		{"splitting, bolt 15 mm below the top: 14 x 45 x sqrt(15 / 0.75)", s.Splitting(15), 2817.4},
		{"embedding, 8 mm in 475 kg/m3: 0.082 x 0.92 x 475 / 1.02", Embedding(8, 475), 35.13},
		{"embedding, 10 mm in 530 kg/m3: 0.082 x 0.90 x 530 / 1.05", Embedding(10, 530), 37.25},
		{"washer 17 on a hole of 9: 3 x 4.8 x 163.4", Pulled(17, 9, 4.8), 2352.6},
	} {
		if math.Abs(c.got/c.want-1) > 1e-3 {
			t.Errorf("%s: %.4g, by hand %.4g", c.what, c.got, c.want)
		}
	}
}

// TestSplittingGrows: the further the bolt stands below the loaded edge, the more it
// takes to split the batten; at the edges nothing is defined.
func TestSplittingGrows(t *testing.T) {
	s := Section{45, 60}
	before := 0.0
	for up := unit.Length(5); up < 60; up += 5 {
		now := s.Splitting(up)
		if now <= before {
			t.Errorf("%.0f mm below the top: %.0f N, before %.0f", up, now, before)
		}
		before = now
	}
	if s.Splitting(0) != 0 || s.Splitting(60) != 0 {
		t.Error("a bolt in an edge holds something")
	}
}
