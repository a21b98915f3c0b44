package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// family makes random regions of one kind. scale is the size of its smallest
// features in millimetres.
type family struct {
	name string
	make func(r *rand.Rand) Region
}

var families = []family{
	{"lattice", func(r *rand.Rand) Region { return Polygon(latticePoints(r, 10)...) }},
	{"micro", func(r *rand.Rand) Region { return Polygon(latticePoints(r, 0.003)...) }},
	{"squares", squares},
	{"star", func(r *rand.Rand) Region { return star(r, V(0, 0), 3+r.IntN(30), 100) }},
	{"holed", holed},
	{"turned", func(r *rand.Rand) Region {
		return Rect(V(0, 0), V(unit.Length(10+r.IntN(90)), unit.Length(10+r.IntN(90)))).Place(randomPose(r, 60))
	}},
	{"turned alike", func(r *rand.Rand) Region { // common directions: edges that overlap but for rounding
		return Rect(V(unit.Length(r.IntN(5)*10), unit.Length(r.IntN(5)*10)), V(60, 60)).Place(Pose{Turn: 0.3})
	}},
	{"needle", func(r *rand.Rand) Region {
		a, b := randomVec(r, 1000), randomVec(r, 1000)
		return Polygon(a, b, b.Add(randomVec(r, 0.5)), a.Add(randomVec(r, 0.5)))
	}},
	{"disc", func(r *rand.Rand) Region {
		return Circle(V(unit.Length(r.IntN(8)*5), unit.Length(r.IntN(8)*5)), unit.Length(5+5*r.IntN(5)), 0.1)
	}},
	{"huge", func(r *rand.Rand) Region { // spans the whole grid
		return Polygon(randomVec(r, 1e6), randomVec(r, 1e6), randomVec(r, 1e6), randomVec(r, 1e6), randomVec(r, 1e6))
	}},
}

func randomVec(r *rand.Rand, size float64) Vec {
	return V(unit.Length((2*r.Float64()-1)*size), unit.Length((2*r.Float64()-1)*size))
}

func randomPose(r *rand.Rand, size float64) Pose {
	return Pose{At: randomVec(r, size).Up(0), Turn: unit.Angle(r.Float64() * 2 * math.Pi)}
}

func xyz(x, y, z unit.Length) Vec3 { return Vec3{x, y, z} }

// latticePoints are few places many points fall together in.
func latticePoints(r *rand.Rand, spacing unit.Length) []Vec {
	var pts []Vec
	for range 3 + r.IntN(6) {
		pts = append(pts, V(spacing*unit.Length(r.IntN(7)), spacing*unit.Length(r.IntN(7))))
	}
	return pts
}

// squares are fields of a board: shared edges, corners that touch, holes.
func squares(r *rand.Rand) Region {
	var all []Region
	for i := range 5 {
		for j := range 5 {
			if r.IntN(2) == 0 {
				p := V(unit.Length(10*i), unit.Length(10*j))
				all = append(all, Rect(p, p.Add(V(10, 10))))
			}
		}
	}
	return UnionAll(all...)
}

// star is a polygon around c without self-crossings.
func star(r *rand.Rand, c Vec, n int, size float64) Region {
	var pts []Vec
	turn := r.Float64()
	for i := range n {
		d := V(unit.Length(size*(0.3+0.7*r.Float64())), 0)
		pts = append(pts, c.Add(d.Turn(unit.Angle(2*math.Pi*(float64(i)+turn)/float64(n)))))
	}
	return Polygon(pts...)
}

// holed is a star with stars cut out of it, one of which may reach its edge.
func holed(r *rand.Rand) Region {
	s := star(r, V(0, 0), 10+r.IntN(30), 100)
	for range 1 + r.IntN(4) {
		s = s.Minus(star(r, randomVec(r, 30), 3+r.IntN(8), 12))
	}
	return s
}

// checkRegion fails if a region breaks its promises.
func checkRegion(t *testing.T, r Region) {
	t.Helper()
	if r.err != nil {
		t.Fatalf("fault: %v", r.err)
	}
	type edge struct{ a, b pt }
	var edges []edge
	for _, pc := range r.pieces {
		for i, loop := range pc {
			seen := map[pt]bool{}
			for j, p := range loop {
				if seen[p] {
					t.Fatalf("loop passes %v twice", p)
				}
				seen[p] = true
				edges = append(edges, edge{p, loop[(j+1)%len(loop)]})
				if p.before(loop[0]) {
					t.Fatalf("loop does not start at its lowest vertex")
				}
			}
			if a := area2(loop); a == 0 || (a > 0) != (i == 0) {
				t.Fatalf("loop %d of a piece has area %d", i, a)
			}
			if i > 0 && !loopContains(pc[0], loop) {
				t.Fatalf("hole lies outside its outline")
			}
		}
	}
	for i, e := range edges {
		for _, f := range edges[:i] {
			if max(e.a.x, e.b.x) < min(f.a.x, f.b.x) || max(f.a.x, f.b.x) < min(e.a.x, e.b.x) {
				continue
			}
			fa, fb, ea, eb := orient(e.a, e.b, f.a), orient(e.a, e.b, f.b), orient(f.a, f.b, e.a), orient(f.a, f.b, e.b)
			if fa == 0 && between(f.a, e.a, e.b) || fb == 0 && between(f.b, e.a, e.b) ||
				ea == 0 && between(e.a, f.a, f.b) || eb == 0 && between(e.b, f.a, f.b) ||
				signOf(fa)*signOf(fb) < 0 && signOf(ea)*signOf(eb) < 0 {
				t.Fatalf("edges %v and %v meet", e, f)
			}
			if e == f || e.a == f.b && e.b == f.a {
				t.Fatalf("edge %v occurs twice", e)
			}
		}
	}
}

// loopContains tells whether all of the inner loop lies in or on the outer.
func loopContains(outer, inner []pt) bool {
	o := newRegion([]piece{{outer}})
	for _, p := range inner {
		if !o.Contains(p.vec()) {
			return false
		}
	}
	return true
}

// rounding is the area that moving every edge by a few steps can make.
func rounding(rs ...Region) float64 {
	sum := 0.0
	for _, r := range rs {
		sum += float64(r.Perimeter())
	}
	return 0.002*sum + 1e-4
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Fatalf("%s: got %v, want %v within %v", what, got, want, tolerance)
	}
}
