package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// mesh triangulates a skin face by face; corners that faces share are the same
// corner of the mesh.
func mesh(t testing.TB, faces []Face) (pts []Vec3, tris [][3]int) {
	t.Helper()
	ids := map[Vec3]int{}
	for _, f := range faces {
		var loops [][]Vec
		var at []int
		for _, loop := range f.Loops {
			flat := make([]Vec, len(loop))
			for i, v := range loop {
				flat[i] = dropAxis(v, f.Normal)
				n, ok := ids[v]
				if !ok {
					n = len(pts)
					ids[v] = n
					pts = append(pts, v)
				}
				at = append(at, n)
			}
			loops = append(loops, flat)
		}
		cut := TriangulateLoops(loops)
		if len(cut) == 0 {
			t.Fatalf("face %q with %d corners gives no triangle: %v", f.Surface, len(at), f.Loops)
		}
		for _, c := range cut {
			tris = append(tris, [3]int{at[c[0]], at[c[1]], at[c[2]]})
		}
	}
	return pts, tris
}

// dropAxis lays a face flat along its steepest axis, keeping its direction.
func dropAxis(v, n Vec3) Vec {
	x, y, z := math.Abs(float64(n.X)), math.Abs(float64(n.Y)), math.Abs(float64(n.Z))
	switch {
	case z >= x && z >= y:
		if n.Z > 0 {
			return V(v.X, v.Y)
		}
		return V(v.Y, v.X)
	case x >= y:
		if n.X > 0 {
			return V(v.Y, v.Z)
		}
		return V(v.Z, v.Y)
	case n.Y > 0:
		return V(v.Z, v.X)
	}
	return V(v.X, v.Z)
}

// closed makes sure that a solid is one closed skin, looking outwards, around
// the volume and the centroid that it states, with flat faces.
func closed(t testing.TB, s Solid) {
	t.Helper()
	if err := s.Err(); err != nil {
		t.Fatal(err)
	}
	pts, tris := mesh(t, s.Faces())
	seen := map[[2]int]bool{}
	for _, c := range tris {
		for i := range c {
			e := [2]int{c[i], c[(i+1)%3]}
			if e[0] == e[1] || seen[e] {
				t.Fatalf("edge %v to %v twice", pts[e[0]], pts[e[1]])
			}
			seen[e] = true
		}
	}
	for e := range seen {
		if !seen[[2]int{e[1], e[0]}] {
			t.Fatalf("edge %v to %v has one side only", pts[e[0]], pts[e[1]])
		}
	}
	var v float64
	var m Vec3
	o := pts[0]
	for _, c := range tris {
		a, b, d := pts[c[0]].Sub(o), pts[c[1]].Sub(o), pts[c[2]].Sub(o)
		w := a.Dot(b.Cross(d)) / 6
		v += w
		m = m.Add(a.Add(b).Add(d).Mul(w / 4))
	}
	if math.Abs(v-float64(s.Volume())) > 1e-9*v+1e-9 || !(v > 0) {
		t.Fatalf("volume of the skin %.9g, stated %.9g", v, s.Volume())
	}
	if d := m.Mul(1 / v).Add(o).Sub(s.Centroid()).Len(); d > 1e-6 {
		t.Fatalf("centroid %v stated, %g mm off", s.Centroid(), d)
	}
	for _, f := range s.Faces() {
		if math.Abs(float64(f.Normal.Len())-1) > 1e-9 {
			t.Fatalf("face %q: normal %v", f.Surface, f.Normal)
		}
		for _, loop := range f.Loops {
			for _, p := range loop {
				if d := f.Normal.Dot(p.Sub(f.Loops[0][0])); math.Abs(d) > 1e-6 {
					t.Fatalf("face %q: corner %v lies %g mm off its plane", f.Surface, p, d)
				}
			}
		}
	}
}

// pick draws a length between two bounds.
func pick(r *rand.Rand, lo, hi float64) unit.Length { return unit.Length(lo + (hi-lo)*r.Float64()) }
