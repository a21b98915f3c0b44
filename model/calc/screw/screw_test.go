package screw_test

import (
	"math"
	"testing"

	"slabwright/model/calc/screw"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tol)
	}
}

// TestSix: a screw 6.0, core 3.9, steel 540 N/mm2, 36 mm in wood of 530 kg/m3
// (D30). Worked by hand from the equations; it proves the arithmetic, not the
// standard.
func TestSix(t *testing.T) {
	s := screw.Screw{Thread: 6, Core: 3.9, Steel: 540}
	near(t, "withdrawal", s.Withdrawal(36, 530), 3632.7, 0.1)
	// Thin steel: min(2569.6, 1.15 sqrt(2 x 7143.4 x 41.596 x 4.29) = 1836.3);
	// the rope effect, a quarter of the withdrawal and no more than doubled,
	// would make the second 2744.4.
	near(t, "second mode", s.LateralThin(1000, 530), 2744.4-3632.7/4, 0.1)
	near(t, "thin", s.LateralThin(36, 530), 1836.2, 0.2)
	near(t, "first mode", s.LateralThin(5, 530), 2569.6*5/36, 0.1)
	// Thick steel: 6424.0; 3845.5 and 3504.9 with the rope effect.
	if !s.Covers(36) || s.Covers(35) || (screw.Screw{Thread: 5, Core: 3.4}).Covers(60) {
		t.Error("the bounds of the formula are wrong")
	}
}

// TestWithdrawalGrows: with the length to the power 0.9, with the density 0.8.
func TestWithdrawalGrows(t *testing.T) {
	s := screw.Screw{Thread: 8, Core: 5.6, Steel: 400}
	near(t, "length", s.Withdrawal(80, 400)/s.Withdrawal(40, 400), math.Pow(2, 0.9), 1e-9)
	near(t, "density", s.Withdrawal(40, 600)/s.Withdrawal(40, 300), math.Pow(2, 0.8), 1e-9)
}
