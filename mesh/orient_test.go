package mesh

import (
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Points around (0.5, 0.5) on the finest float64 grid, against the line through
// (12, 12) and (24, 24), where the rounded formula is wrong in stripes.
// (L. Kettner et al., Classroom examples of robustness problems in geometric
// computations, Computational Geometry 40, 2008.) On the line y = x the side is
// plain to see.
func TestOrientIsExact(t *testing.T) {
	const ulp = 1.0 / (1 << 53)
	q, r := geom.V(12, 12), geom.V(24, 24)
	wrong := 0
	for i := range 64 {
		for k := range 64 {
			p := geom.V(unit.Length(0.5+float64(i)*ulp), unit.Length(0.5+float64(k)*ulp))
			want := 0
			if p.Y > p.X {
				want = 1
			} else if p.Y < p.X {
				want = -1
			}
			if orient(p, q, r) != want || orient(q, r, p) != want || orient(r, q, p) != -want {
				t.Fatalf("%v: %d %d %d, want %d", p, orient(p, q, r), orient(q, r, p), orient(r, q, p), want)
			}
			if plain := q.Sub(p).Cross(r.Sub(p)); plain > 0 && want != 1 || plain < 0 && want != -1 || plain == 0 && want != 0 {
				wrong++
			}
		}
	}
	if wrong == 0 {
		t.Error("the plain formula is right everywhere: these points test nothing")
	}
}
