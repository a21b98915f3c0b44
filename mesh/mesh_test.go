package mesh

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Volumes are base area times height: plain geometry, no outside source.
func TestPrismsAreClosedWithTheirVolume(t *testing.T) {
	ell := []geom.Vec{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 60, Y: 6}, {X: 6, Y: 6}, {X: 6, Y: 60}, {X: 0, Y: 60}}
	inLine := []geom.Vec{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 250, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 77}, {X: 400, Y: 200}, {X: 0, Y: 200}, {X: 0, Y: 1}}
	for _, c := range []struct {
		name  string
		loops [][]geom.Vec
		high  unit.Length
	}{
		{"cube", [][]geom.Vec{rectangle(0, 0, 10, 10)}, 10},
		{"angle steel", [][]geom.Vec{ell}, 2200},
		{"corners in line", [][]geom.Vec{inLine}, 45},
		{"plate with holes", [][]geom.Vec{rectangle(0, 0, 300, 200), circle(geom.V(60, 60), 20, 64), circle(geom.V(200, 100), 55, 97)}, 12},
		{"slab", slab(500, 40), 45},
	} {
		base := 0.0
		for _, l := range c.loops {
			base += area(l)
		}
		want := base * float64(c.high)
		faces := prism(0, c.high, c.loops...)
		for name, faces := range map[string][]geom.Face{"upright": faces, "tilted": tilted(faces)} {
			m := build(t, faces)
			r := Check(m)
			if err := r.Err(); err != nil {
				t.Errorf("%s, %s: %v", c.name, name, err)
			}
			if r.Parts != 1 || r.InsideOut != 0 {
				t.Errorf("%s, %s: %d parts, %d inside out", c.name, name, r.Parts, r.InsideOut)
			}
			if got := float64(m.Volume()); math.Abs(got/want-1) > 1e-9 {
				t.Errorf("%s, %s: volume %.12g, want %.12g", c.name, name, got, want)
			}
			q := Measure(m)
			if q.Slivers > 0 {
				t.Errorf("%s, %s: %d slivers, lowest %g mm in %s", c.name, name, q.Slivers, float64(q.Lowest), q.Surface)
			}
		}
	}
}

func TestEveryEdgeOfAFlatFaceIsDelaunay(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for range 40 {
		var star []geom.Vec
		for i := range 60 {
			r := unit.Length(300 + 700*rng.Float64())
			p := geom.V(r, 0).Turn(unit.Angle(2 * math.Pi * float64(i) / 60))
			star = append(star, geom.V(unit.Length(math.Round(float64(p.X))), unit.Length(math.Round(float64(p.Y)))))
		}
		faces := tilted(prism(0, 30, star, circle(geom.V(10, 20), 130, 33)))
		m := build(t, faces)
		if err := Check(m).Err(); err != nil {
			t.Fatal(err)
		}
		f := newFan(m.Triangles)
		for i, tri := range m.Triangles {
			for k := range 3 {
				o := f.across[i][k]
				if m.FacetOf[o.tri] != m.FacetOf[i] {
					continue
				}
				p, q := m.Vertices[tri[k]], m.Vertices[tri[(k+1)%3]]
				r, s := m.Vertices[tri[(k+2)%3]], m.Vertices[m.Triangles[o.tri][(o.k+2)%3]]
				convex := orientIn(m, i, r, p, s) && orientIn(m, i, s, q, r)
				if convex && obtuse(r, s, p, q) {
					t.Fatalf("edge %v-%v in %s could be swapped", p, q, m.Facets[m.FacetOf[i]].Surface)
				}
			}
		}
	}
}

func orientIn(m Mesh, i int, a, b, c geom.Vec3) bool {
	flat := projection(m.Facets[m.FacetOf[i]].Normal)
	return orient(flat(a), flat(b), flat(c)) > 0
}

// A corner a hair outside the line of its neighbours asks for a triangle a hair
// high; the swap must find a better one.
func TestNoNeedlessSliver(t *testing.T) {
	bulge := []geom.Vec{{X: 0, Y: 0}, {X: 500, Y: -1e-9}, {X: 1000, Y: 0}, {X: 1000, Y: 600}, {X: 501, Y: 600 + 1e-9}, {X: 0, Y: 600}}
	for _, faces := range [][]geom.Face{prism(0, 45, bulge), tilted(prism(0, 45, bulge))} {
		if q := Measure(build(t, faces)); q.Lowest < 1 {
			t.Errorf("lowest triangle %g mm in %s", float64(q.Lowest), q.Surface)
		}
	}
}

func TestTouchingBodiesKeepTheirOwnVertices(t *testing.T) {
	// two cubes with one vertical edge in common, as one skin
	touching := append(prism(0, 10, rectangle(0, 0, 10, 10)), prism(0, 10, rectangle(10, 10, 10, 10))...)
	for name, faces := range map[string][]geom.Face{"upright": touching, "tilted": tilted(touching)} {
		m := build(t, faces)
		r := Check(m)
		if err := r.Err(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if r.Parts != 2 || len(m.Vertices) != 16 {
			t.Errorf("%s: %d parts, %d vertices", name, r.Parts, len(m.Vertices))
		}
		if s := m.Single(geom.Vec3{}); distinct(s) != 16 || openEdges(s.Triangles, len(s.Vertices)) != 0 {
			t.Errorf("%s: %d distinct places after rounding", name, distinct(s))
		}
	}
	corner := append(prism(0, 10, rectangle(0, 0, 10, 10)), prism(10, 20, rectangle(10, 10, 10, 10))...)
	if m := build(t, corner); len(m.Vertices) != 16 {
		t.Errorf("bodies touching in a corner: %d vertices", len(m.Vertices))
	}
}

func distinct(s Single) int {
	seen := map[[3]float32]bool{}
	for _, v := range s.Vertices {
		seen[v] = true
	}
	return len(seen)
}

func TestFaultySkinsAreRefused(t *testing.T) {
	cube := func() []geom.Face { return prism(0, 10, rectangle(0, 0, 10, 10)) }
	for _, c := range []struct {
		name, say string
		spoil     func([]geom.Face) []geom.Face
	}{
		{"no faces", "without faces", func([]geom.Face) []geom.Face { return nil }},
		{"missing face", "used 1 times one way and 0", func(f []geom.Face) []geom.Face { return f[:5] }},
		{"face twice", "used 2 times one way and 1", func(f []geom.Face) []geom.Face { return append(f, f[0]) }},
		{"outline backwards", "against the outward normal", func(f []geom.Face) []geom.Face {
			f[4].Normal = geom.Vec3{Z: -1}
			return f
		}},
		{"corner off by a bit", "used 1 times one way and 0", func(f []geom.Face) []geom.Face {
			f[0].Loops[0][2].Z = unit.Length(math.Nextafter(10, 11))
			return f
		}},
		{"not a number", "not a real number", func(f []geom.Face) []geom.Face {
			f[2].Loops[0][1].X = unit.Length(math.NaN())
			return f
		}},
		{"infinite", "not a real number", func(f []geom.Face) []geom.Face {
			f[2].Loops[0][1].X = unit.Length(math.Inf(1))
			return f
		}},
		{"two corners", "a loop of 2 corners", func(f []geom.Face) []geom.Face {
			f[3].Loops[0] = f[3].Loops[0][:2]
			return f
		}},
		{"no outline", "no outline", func(f []geom.Face) []geom.Face {
			f[3].Loops = nil
			return f
		}},
	} {
		_, err := FromFaces(c.spoil(cube()))
		if err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.say)
		}
	}
}

func TestCheckSeesEveryKindOfFault(t *testing.T) {
	cube := func() Mesh { return build(t, prism(0, 10, rectangle(0, 0, 10, 10))) }
	if r := Check(cube()); r != (Report{Parts: 1, Volume: 1000}) {
		t.Errorf("sound cube: %+v", r)
	}
	m := cube()
	m.Triangles, m.FacetOf = m.Triangles[1:], m.FacetOf[1:]
	if r := Check(m); r.OpenEdges != 3 {
		t.Errorf("a missing triangle leaves %d open sides, want 3", r.OpenEdges)
	}
	m = cube()
	m.Triangles[0][0], m.Triangles[0][1] = m.Triangles[0][1], m.Triangles[0][0]
	if r := Check(m); r.OpenEdges != 6 {
		t.Errorf("a flipped triangle gives %d open sides, want 3 of its own and 3 around it", r.OpenEdges)
	}
	m = cube()
	m.Triangles, m.FacetOf = append(m.Triangles, m.Triangles[3]), append(m.FacetOf, m.FacetOf[3])
	if r := Check(m); r.Repeated != 1 || r.Err() == nil {
		t.Errorf("a doubled triangle: %+v", r)
	}
	m = cube()
	for i := range m.Triangles {
		m.Triangles[i][0], m.Triangles[i][1] = m.Triangles[i][1], m.Triangles[i][0]
	}
	if r := Check(m); r.Volume != -1000 || r.Err() == nil {
		t.Errorf("inside out: %+v", r)
	}
	m = cube()
	m.Triangles[5][2] = 99
	if r := Check(m); r.OutOfRange != 1 || r.Err() == nil {
		t.Errorf("loose index: %+v", r)
	}
	m = cube()
	m.Triangles[5][2] = m.Triangles[5][1]
	if r := Check(m); r.Collapsed != 1 || r.Err() == nil {
		t.Errorf("collapsed triangle: %+v", r)
	}
	hollow := cube()
	for i := range hollow.Triangles {
		hollow.Triangles[i][0], hollow.Triangles[i][1] = hollow.Triangles[i][1], hollow.Triangles[i][0]
	}
	for i := range hollow.Vertices {
		hollow.Vertices[i] = hollow.Vertices[i].Mul(0.5).Add(geom.Vec3{X: 2, Y: 2, Z: 2})
	}
	if r := Check(Join(cube(), hollow)); r.Parts != 2 || r.InsideOut != 1 || math.Abs(float64(r.Volume)-875) > 1e-9 || r.Err() != nil {
		t.Errorf("hollow cube: %+v", r)
	}
	if Check(Mesh{}).Err() == nil {
		t.Error("an empty mesh passes")
	}
}

func TestPlacedTurnsVerticesAndNormals(t *testing.T) {
	m := build(t, prism(0, 10, rectangle(0, 0, 10, 20)))
	p := m.Placed(geom.Pose{At: geom.Vec3{X: 100, Y: 200, Z: 300}, Turn: 90 * unit.Degree})
	box := p.Bounds()
	for _, d := range []geom.Vec3{box.Min.Sub(geom.Vec3{X: 80, Y: 200, Z: 300}), box.Max.Sub(geom.Vec3{X: 100, Y: 210, Z: 310})} {
		if d.Len() > 1e-9 {
			t.Errorf("bounds %v", box)
		}
	}
	for i := range p.Triangles {
		a, b, c := p.corners(i)
		if n := b.Sub(a).Cross(c.Sub(a)).Unit(); n.Sub(p.Facets[p.FacetOf[i]].Normal).Len() > 1e-12 {
			t.Errorf("triangle %d: normal %v, facet says %v", i, n, p.Facets[p.FacetOf[i]].Normal)
		}
	}
	if m.Facets[0].Normal != (geom.Vec3{Y: -1}) {
		t.Error("placing a mesh changed the original")
	}
}
