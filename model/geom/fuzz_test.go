package geom

import (
	"testing"

	"slabwright/model/unit"
)

// FuzzBoolean reads two polygons out of bytes, two per point on a lattice whose
// spacing the first byte gives, and holds the kernel to its promises. Its seeds
// run with the other tests.
func FuzzBoolean(f *testing.F) {
	for _, seed := range []string{
		"",
		"\x00\x00\x00\x0a\x00\x0a\x0a\x00\x0a\x05\x05\x0f\x05\x0f\x0f\x05\x0f",                 // two squares in grid steps
		"\x01\x00\x00\x0a\x00\x0a\x0a\x00\x0a\x0a\x00\x14\x00\x14\x0a\x0a\x0a",                 // side by side
		"\x02\x00\x00\x0a\x00\x0a\x0a\x00\x0a\x0a\x0a\x14\x0a\x14\x14\x0a\x14",                 // corner to corner
		"\x03\x00\x00\x0a\x0a\x0a\x00\x00\x0a\x00\x00\x0a\x0a\x0a\x00\x00\x0a",                 // a bow tie with itself
		"\x00\x00\x00\xff\x01\xff\x02\x00\x01\x01\x00\x02\xff\x03\xff\x02\x00",                 // needles across
		"\x00\x00\x00\x03\x01\x07\x02\x01\x03\x02\x02\x05\x01\x06\x03\x00\x04",                 // crossings within a step
		"\x81\x00\x00\xff\x00\xff\xff\x00\xff\x80\x00\xff\x80\x80\xff\x00\x80",                 // a square on its corner in a square
		"\x44\x00\x00\x08\x00\x08\x08\x04\x02\x00\x08\x04\x00\x08\x08\x00\x08\x04\x08\x00\x02", // collinear overlaps
		// Bundles of long, almost parallel needles: rounding their crossings one
		// pair at a time would make ever more of them.
		"0270\x15a\x8b0\x00120\f3230120\x00321'00a\x8b0",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) == 0 || len(data) > 100 {
			return
		}
		spacing := min(unit.Length(data[0]&0x7f)*unit.Length(data[0]&0x7f)+unit.Micrometre, 3900)
		if data[0]&0x80 != 0 {
			spacing = 3900 // all over the grid
		}
		var pts []Vec
		for i := 1; i+1 < len(data); i += 2 {
			pts = append(pts, V(spacing*unit.Length(data[i]), spacing*unit.Length(data[i+1])))
		}
		a, b := Polygon(pts[:len(pts)/2]...), Polygon(pts[len(pts)/2:]...)
		or, and, not, xor := a.Union(b), a.Intersect(b), a.Minus(b), a.Xor(b)
		for _, r := range []Region{a, b, or, and, not, xor} {
			checkRegion(t, r)
			checkTriangles(t, r)
		}
		tol := rounding(a, b)
		near(t, "union", float64(or.Area()+and.Area()), float64(a.Area()+b.Area()), tol)
		near(t, "difference", float64(not.Area()+and.Area()), float64(a.Area()), tol)
		near(t, "xor", float64(xor.Area()+and.Area()), float64(or.Area()), tol)
		if g := a.Gap(b); !a.Empty() && !b.Empty() && (g.Distance > 0) && !and.Empty() {
			t.Fatalf("%v apart, yet in common: %v", g, and.Loops())
		}
		if spacing < 1000 {
			checkRegion(t, a.Grow(spacing, spacing/10).Grow(-spacing/2, spacing/10))
		}
	})
}
