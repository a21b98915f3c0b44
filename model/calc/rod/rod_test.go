package rod_test

import (
	"math"
	"testing"

	"slabwright/model/calc/rod"
	"slabwright/model/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tol)
	}
}

// TestStress: 16 mm, W = 402.1 mm3; 200 N at 100 mm give 49.7 N/mm2.
func TestStress(t *testing.T) { near(t, "stress", rod.Stress(16, 200, 100), 49.74, 0.01) }

// TestPressure holds the closed form against the sum of a straight line of
// pressure over the bore, which must balance force and moment at its mouth.
func TestPressure(t *testing.T) {
	const d, l, force, moment = 16., 120., 200., 20000.
	most := rod.Pressure(d, l, force, moment)
	// p(x) = a + b x with p(0) = most at the mouth: force = d (a l + b l2/2).
	a := most
	b := (force/d - a*l) * 2 / (l * l)
	var turn float64
	const n = 20000
	for i := range n {
		x := (float64(i) + 0.5) * l / n
		turn += d * (a + b*x) * x * l / n
	}
	near(t, "moment about the mouth", -turn, moment, moment*1e-4)
}

// TestDroop: P L3 / 3 E I at the tip; a force at half the length makes 5/16 of it.
func TestDroop(t *testing.T) {
	i := math.Pi * math.Pow(16, 4) / 64
	whole := 200 * math.Pow(160, 3) / (3 * 210000 * i)
	near(t, "at the tip", float64(rod.Droop(16, 200, 160, 160)), whole, 1e-9)
	near(t, "half way", float64(rod.Droop(16, 200, 80, 160)), whole*5/16, 1e-9)
	near(t, "no tip", float64(rod.Droop(16, 200, 160, unit.Length(0))), whole, 1e-9)
}
