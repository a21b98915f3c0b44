package mesh_test

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/sample"
)

// judgeSolid meshes a solid at a place and compares it with the solid's own
// volume, which comes from the areas of its sections and not from its skin.
func judgeSolid(t *testing.T, name string, s geom.Solid, at geom.Pose) mesh.Mesh {
	t.Helper()
	s = s.Place(at)
	if err := s.Err(); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	m, err := mesh.FromFaces(s.Faces())
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	r := mesh.Check(m)
	if err := r.Err(); err != nil || r.Parts != 1 {
		t.Errorf("%s: %d parts, %v", name, r.Parts, err)
	}
	if got, want := float64(m.Volume()), float64(s.Volume()); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("%s: volume %.13g, want %.13g", name, got, want)
	}
	if q := mesh.Measure(m); q.Slivers > 0 {
		judgeSlivers(t, name, m, s.Faces())
	}
	rounded := m.Single(m.Middle())
	back := mesh.Mesh{Triangles: rounded.Triangles, FacetOf: rounded.FacetOf, Facets: rounded.Facets}
	for i := range rounded.Vertices {
		back.Vertices = append(back.Vertices, rounded.Corner(int32(i)))
	}
	if err := mesh.Check(back).Err(); err != nil {
		t.Errorf("%s, rounded: %v", name, err)
	}
	return m
}

// judgeSlivers allows a sliver only in a face that is itself about as narrow.
func judgeSlivers(t *testing.T, name string, m mesh.Mesh, faces []geom.Face) {
	t.Helper()
	for i, f := range m.FacetOf {
		one := mesh.Mesh{Vertices: m.Vertices, Triangles: m.Triangles[i : i+1], FacetOf: m.FacetOf[i : i+1], Facets: m.Facets}
		if q := mesh.Measure(one); q.Slivers > 0 && narrowest(faces[f]) > 2*mesh.SliverBound {
			t.Errorf("%s: a triangle %g mm high in %s, which is nowhere narrower than %g mm", name, float64(q.Lowest), q.Surface, float64(narrowest(faces[f])))
		}
	}
}

// narrowest is the length of the shortest edge of a face or the shortest
// distance of a corner from an edge that it does not end, whichever is less.
func narrowest(f geom.Face) unit.Length {
	var edges [][2]geom.Vec3
	for _, l := range f.Loops {
		for i := range l {
			edges = append(edges, [2]geom.Vec3{l[i], l[(i+1)%len(l)]})
		}
	}
	best := unit.Length(math.Inf(1))
	for _, e := range edges {
		d := e[1].Sub(e[0])
		best = min(best, d.Len())
		for _, o := range edges {
			if p := o[0]; p != e[0] && p != e[1] {
				k := max(0, min(1, p.Sub(e[0]).Dot(d)/d.Dot(d)))
				best = min(best, p.Sub(e[0].Add(d.Mul(k))).Len())
			}
		}
	}
	return best
}

func TestSolidsOfTheSample(t *testing.T) {
	for i, turn := range []unit.Angle{0, 0.3, 2.7} {
		at := geom.Pose{At: geom.Vec3{X: 1234.567, Y: -987.654, Z: 700}, Turn: turn}
		judgeSolid(t, fmt.Sprintf("slab %d", i), sample.Slab(120, 15, 2300), at)
		judgeSolid(t, fmt.Sprintf("angle %d", i), sample.Angle(1800), at)
		judgeSolid(t, fmt.Sprintf("rod %d", i), geom.Cylinder(geom.V(3, 4), 8, 0, 250, 0.01, "rod"), at)
	}
}

// Blind bores stand square in faces that lie askew to all axes.
func TestBoredSolids(t *testing.T) {
	outline := geom.Polygon(geom.V(0, 0), geom.V(1900, 12), geom.V(1910, 240), geom.V(-7, 251))
	edge := geom.V(-7, 251).Sub(geom.V(1910, 240))
	var bores []geom.Bore
	for i := range 5 {
		at := geom.V(1910, 240).Add(edge.Mul(0.1 + 0.2*float64(i)))
		bores = append(bores, geom.Bore{Name: fmt.Sprintf("rod %d", i+1), At: at.Up(22), Dir: edge.Unit().Left().Up(0), Dia: 14, Depth: 160, Chord: 0.02})
	}
	shelf := geom.Prism(outline, 0, 45, "edge").Bored(bores...)
	for i := range 8 {
		judgeSolid(t, fmt.Sprintf("shelf %d", i), shelf, geom.Pose{At: geom.Vec3{X: 100.1, Y: 4000, Z: 1420}, Turn: unit.Angle(i) * 45.3 * unit.Degree})
	}
}

func TestRandomAngleBars(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	between := func(a, b float64) unit.Length { return unit.Length(a + (b-a)*rng.Float64()) }
	angle := func() unit.Angle { return unit.Angle(between(-0.8, 0.8)) }
	for round := range 40 {
		leg := []unit.Length{30, 40, 50, 60}[rng.Intn(4)]
		b := geom.AngleBar{SeatWidth: leg, WallWidth: leg, Thickness: leg / 10, Length: between(300, 4000),
			Start: geom.BarEnd{Plan: angle(), Slope: angle()}, End: geom.BarEnd{Plan: angle(), Slope: angle()},
			LegUp: rng.Intn(2) == 0, RoomLeft: rng.Intn(2) == 0}
		if rng.Intn(3) > 0 {
			b.Root, b.Toe = leg/8, leg/16
		}
		for x := unit.Length(120); x < b.Length-120; x += between(80, 400) {
			h := geom.BarHole{Name: "hole", Leg: geom.BarLeg(rng.Intn(2)), X: x, FromHeel: leg * 0.55, Dia: between(4, 9)}
			switch rng.Intn(3) {
			case 0:
				h.Slot, h.Along = between(2, 6), rng.Intn(2) == 0
			case 1:
				h.SinkDia, h.SinkOuter = h.Dia+between(1, 4), rng.Intn(2) == 0
			}
			b.Holes = append(b.Holes, h)
		}
		judgeSolid(t, fmt.Sprintf("bar %d", round), b.Solid(), geom.Pose{At: geom.Vec3{X: between(-3000, 3000), Y: between(-3000, 3000), Z: 694}, Turn: unit.Angle(between(-3, 3))})
	}
}

// Any polygon, even one that crosses itself, makes a closed mesh of its volume
// or no solid at all.
func FuzzPrism(f *testing.F) {
	f.Add([]byte{0, 0, 200, 0, 200, 100, 0, 100})
	f.Add([]byte{0, 0, 200, 100, 200, 0, 0, 100})                                           // a bow tie
	f.Add([]byte{0, 0, 100, 0, 100, 100, 200, 100, 200, 200, 100, 200, 100, 100, 0, 100})   // touches itself
	f.Add([]byte{0, 0, 50, 0, 100, 0, 150, 0, 200, 0, 200, 1, 150, 1, 100, 1, 50, 1, 0, 1}) // corners in line
	f.Fuzz(func(t *testing.T, data []byte) {
		var pts []geom.Vec
		for i := 0; i+1 < len(data) && i < 60; i += 2 {
			pts = append(pts, geom.V(unit.Length(data[i])*7.001, unit.Length(data[i+1])*3.003))
		}
		solid := geom.Prism(geom.Polygon(pts...), 0, 45, "edge").Place(geom.Pose{At: geom.Vec3{X: 3000, Y: 200, Z: 1}, Turn: 1})
		if solid.Err() != nil {
			return
		}
		m, err := mesh.FromFaces(solid.Faces())
		if err != nil {
			t.Fatal(err)
		}
		if err := mesh.Check(m).Err(); err != nil {
			t.Error(err)
		}
		if got, want := float64(m.Volume()), float64(solid.Volume()); math.Abs(got/want-1) > 1e-9 {
			t.Errorf("volume %g, want %g", got, want)
		}
	})
}

// Random slabs: bent outlines, leaning and eased edges, through holes, pockets
// from both sides with countersinks.
func TestRandomSlabs(t *testing.T) {
	rng := rand.New(rand.NewSource(11))
	between := func(a, b float64) unit.Length { return unit.Length(a + (b-a)*rng.Float64()) }
	built := 0
	for round := range 60 {
		w, d := between(600, 3000), between(300, 900)
		corners := []geom.Vec{geom.V(0, between(-40, 40)), geom.V(w, between(-40, 40)), geom.V(w+between(-60, 60), d), geom.V(w/2, d+between(150, 200)), geom.V(between(-60, 60), d)}
		s := geom.Slab{Top: between(20, 60)}
		for i, a := range corners {
			e := geom.SlabEdge{Name: fmt.Sprintf("edge %d", i+1), Path: []geom.Vec{a, corners[(i+1)%len(corners)]}}
			switch rng.Intn(3) {
			case 0:
				e.Lean = between(-10, 10)
			case 1:
				e.EaseTop, e.EaseUnder = between(0.5, 4), between(0, 3)
			}
			s.Outline = append(s.Outline, e)
		}
		for k := range rng.Intn(9) {
			c := geom.V(between(80, float64(w)-80), between(80, float64(d)-80))
			cut := geom.SlabCut{Name: fmt.Sprintf("hole %d", k), Region: geom.Circle(c, between(3, 30), 0.02), From: geom.CutFrom(rng.Intn(3)), Depth: between(4, 15)}
			if rng.Intn(3) == 0 {
				cut.Region = geom.Rect(c, c.Add(geom.V(between(10, 60), between(10, 60)))).Place(geom.Pose{Turn: 0.001 * unit.Angle(rng.Intn(3))})
			}
			if rng.Intn(2) == 0 {
				cut.Mouth = geom.Bevel{Width: between(0.5, 3), Depth: between(0.5, 3)}
			}
			s.Cuts = append(s.Cuts, cut)
		}
		solid := s.Solid()
		if solid.Err() != nil {
			continue // cuts that meet badly: the solids' own tests judge that
		}
		built++
		judgeSolid(t, fmt.Sprintf("round %d", round), solid, geom.Pose{At: geom.Vec3{X: between(-3000, 3000), Y: between(-3000, 3000), Z: 700}, Turn: unit.Angle(between(-3, 3))})
	}
	if built < 30 {
		t.Errorf("only %d of 60 slabs could be built", built)
	}
}

func BenchmarkFromFaces(b *testing.B) {
	s := sample.Slab(500, 40, 4000)
	if err := s.Err(); err != nil {
		b.Fatal(err)
	}
	faces := s.Faces()
	for b.Loop() {
		if _, err := mesh.FromFaces(faces); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSingle(b *testing.B) {
	m, err := mesh.FromFaces(sample.Slab(500, 40, 4000).Faces())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		m.Single(m.Middle())
	}
}
