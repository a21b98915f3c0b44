package mesh

import (
	"math"
	"math/rand"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// single64 is a rounded mesh with its vertices back in float64.
func single64(s Single) Mesh {
	m := Mesh{Triangles: s.Triangles, FacetOf: s.FacetOf, Facets: s.Facets}
	for i := range s.Vertices {
		m.Vertices = append(m.Vertices, s.Corner(int32(i)).Add(s.Origin))
	}
	return m
}

// float32 has 24 bits: between 1024 and 2048 mm its steps are 2^-13 mm
// (IEEE 754), so no vertex of a four metre part moves by more than 2^-14 mm
// along any axis when counted from the middle.
func TestRoundingFromTheMiddleKeepsATenthOfAMicrometre(t *testing.T) {
	faces := tilted(prism(0, 45, slab(500, 40)...))
	m := build(t, faces)
	s := m.Single(m.Middle())
	if len(s.Vertices) != len(m.Vertices) || len(s.Triangles) != len(m.Triangles) {
		t.Fatalf("rounding lost %d of %d vertices", len(m.Vertices)-len(s.Vertices), len(m.Vertices))
	}
	r := single64(s)
	for i, tri := range m.Triangles {
		for k := range 3 {
			d := m.Vertices[tri[k]].Sub(r.Vertices[r.Triangles[i][k]])
			if off := max(math.Abs(float64(d.X)), math.Abs(float64(d.Y)), math.Abs(float64(d.Z))); off > 1.0/(1<<14) {
				t.Fatalf("vertex %d moved by %g mm", tri[k], off)
			}
		}
	}
	if err := Check(r).Err(); err != nil {
		t.Error(err)
	}
}

// Near 12 m float32 steps by 0.98 um: corners 0.1 um apart fall together.
func TestRoundingCollapsesWhatItCannotTellApart(t *testing.T) {
	at := func(dx, dy unit.Length) geom.Vec { return geom.V(12345+dx, 12001+dy) }
	loop := []geom.Vec{at(0, 0), at(50, 0), at(50.0001, 0.0001), at(50.0002, 0.0002), at(50, 80), at(49.9999, 80.0001), at(0, 80), at(0, 79.9999)}
	hole := []geom.Vec{at(20, 20), at(20, 20.0001), at(20.00005, 20.0002), at(20.0001, 20.0001), at(20.0001, 20)} // a pin hole
	m := build(t, prism(0, 30, loop, hole))
	s := m.Single(geom.Vec3{})
	r := Check(single64(s))
	if err := r.Err(); err != nil {
		t.Fatal(err)
	}
	if distinct(s) != len(s.Vertices) {
		t.Errorf("%d vertices in %d places", len(s.Vertices), distinct(s))
	}
	if math.Abs(float64(r.Volume)/(50*80*30)-1) > 1e-4 {
		t.Errorf("volume %g", float64(r.Volume))
	}
	for _, tri := range s.Triangles {
		if s.Vertices[tri[0]] == s.Vertices[tri[1]] {
			t.Fatal("an edge without length is left")
		}
	}
}

func TestRoundingAtRandomStaysClosed(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for round := range 60 {
		// outlines whose corners lie within a few float32 steps of each other
		span := []unit.Length{0.002, 0.01, 0.5}[round%3]
		var star []geom.Vec
		for i := range 40 {
			r := span * unit.Length(0.2+0.8*rng.Float64())
			star = append(star, geom.V(r, 0).Turn(unit.Angle(2*math.Pi*float64(i)/40)).Add(geom.V(12001, 9003)))
		}
		m := build(t, prism(700, 700+span, star))
		s := m.Single(geom.Vec3{})
		if n := openEdges(s.Triangles, len(s.Vertices)); n != 0 {
			t.Fatalf("round %d: %d open sides", round, n)
		}
		if distinct(s) != len(s.Vertices) {
			t.Fatalf("round %d: %d vertices in %d places", round, len(s.Vertices), distinct(s))
		}
	}
}

func TestNothingRoundsAway(t *testing.T) {
	m := build(t, prism(0, 1e-6, rectangle(9000, 9000, 1e-6, 1e-6)))
	s := m.Single(geom.Vec3{})
	if len(s.Triangles) != 12 || distinct(s) != 8 || openEdges(s.Triangles, 8) != 0 {
		t.Errorf("%d triangles in %d places", len(s.Triangles), distinct(s))
	}
}

func TestNormalOfARoundedTriangle(t *testing.T) {
	m := build(t, prism(0, 10, rectangle(0, 0, 10, 10)))
	s := m.Single(geom.Vec3{})
	for i := range s.Triangles {
		n := m.Facets[m.FacetOf[i]].Normal
		if s.Normal(i) != [3]float32{float32(n.X), float32(n.Y), float32(n.Z)} {
			t.Errorf("triangle %d: %v", i, s.Normal(i))
		}
	}
	loose := Single{Vertices: [][3]float32{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {2, 0, 0}},
		Triangles: [][3]int32{{0, 1, 2}, {0, 1, 3}}, FacetOf: []int32{0, 0}, Facets: []Facet{{Curved: true}}}
	if loose.Normal(0) != [3]float32{0, 0, 1} || loose.Normal(1) != [3]float32{0, 0, 1} {
		t.Errorf("own normals %v %v", loose.Normal(0), loose.Normal(1))
	}
}
