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

// TestTorsion: torsion constants of rectangles, b t3 times 0.1406, 0.196, 0.229, 0.263
// and 0.281 for sides of 1, 1.5, 2, 3 and 4 to 1 (Timoshenko and Goodier, Theory of
// Elasticity, table of rectangular bars, from memory). Which side stands up is all the
// same.
func TestTorsion(t *testing.T) {
	for _, c := range [][2]float64{{1, 0.1406}, {1.5, 0.196}, {2, 0.229}, {3, 0.263}, {4, 0.281}} {
		long, thin := unit.Length(30*c[0]), unit.Length(30)
		want := c[1] * float64(long) * 27000
		for _, s := range []Section{{long, thin}, {thin, long}} {
			if got := s.Torsion(); math.Abs(got/want-1) > 5e-3 {
				t.Errorf("%v: %.0f mm4, by the table %.0f", s, got, want)
			}
		}
	}
	if got := (Section{45, 60}).Inertia(); math.Abs(got-810000) > 1e-6 {
		t.Errorf("45 x 60 bends with %.0f mm4, by hand 45 x 60^3 / 12 = 810,000", got)
	}
}
