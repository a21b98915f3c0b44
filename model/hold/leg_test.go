package hold

import (
	"math"
	"testing"
)

// 1 N/mm at 54 mm from the wall on a leg of 6 mm: 0.00975 mm; at 40 mm 0.00347
// (own arithmetic, clamped at the face of the wall leg).
func TestCantilever(t *testing.T) {
	ei := steelModulus * 6. * 6 * 6 / 12
	for arm, want := range map[float64]float64{48: 0.00975, 34: 0.00347} {
		k := cantilever([]float64{arm}, ei)
		if math.Abs(1/k[0][0]-want) > 0.00001 {
			t.Errorf("arm %v: %v, want %v", arm, 1/k[0][0], want)
		}
	}
	// With all points free but one loaded, the others follow the beam.
	k := cantilever([]float64{10, 20, 30}, ei)
	f := inverse(k)
	if got, want := f[0][2], 10.*10*(3*30-10)/(6*ei); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("flexibility %v, want %v", got, want)
	}
}
