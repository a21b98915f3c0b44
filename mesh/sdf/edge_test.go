package sdf

import (
	"encoding/binary"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/unixpickle/model3d/model3d"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/judge"
)

// shaped is a worktop with its flat front and with its shaped one, and the body
// behind the latter.
func shaped(t testing.TB, n int, e Edge) (flat, round mesh.Mesh, b *body) {
	t.Helper()
	e.Surface = "front"
	lower, upper := front(n, 2000)
	flat = slab(t, lower, upper)
	round, err := Shape(flat, e)
	if err != nil {
		t.Fatal(err)
	}
	if e.Grain == 0 {
		e.Grain = usualGrain
	}
	if b, err = newBody(e, lower, upper); err != nil {
		t.Fatal(err)
	}
	return flat, round, b
}

func TestShapedSlabIsClosedAndKeepsItsFlatFaces(t *testing.T) {
	for _, c := range []struct {
		corners int
		edge    Edge
	}{
		{200, Edge{Bulge: 6, Tolerance: 0.2}},
		{200, Edge{Bulge: 6, Tolerance: 0.05}},
		{40, Edge{Bulge: 9, Grain: 35, Tolerance: 0.3}},
		{2, Edge{Bulge: 4, Tolerance: 0.5}},
		{60, Edge{Bulge: 0, Tolerance: 0.5}},
	} {
		flat, round, _ := shaped(t, c.corners, c.edge)
		r := mesh.Check(round)
		if err := r.Err(); err != nil || r.Parts != 1 {
			t.Errorf("%d corners, %+v: %d parts, %v", c.corners, c.edge, r.Parts, err)
		}
		if c.edge.Bulge > 0 && !(r.Volume > flat.Volume()) {
			t.Errorf("bulge %g: no wood came on: %g -> %g", float64(c.edge.Bulge), float64(flat.Volume()), float64(r.Volume))
		}
		if q := mesh.Measure(round); q.Slivers != 0 {
			t.Errorf("%d corners: %d slivers, lowest %g mm in %s", c.corners, q.Slivers, float64(q.Lowest), q.Surface)
		}
		for name, want := range areas(flat) {
			if strings.HasPrefix(name, "front") {
				continue
			}
			if got := areas(round)[name]; math.Abs(got/want-1) > 1e-12 {
				t.Errorf("%s has area %.15g, had %.15g", name, got, want)
			}
		}
		for i, tri := range round.Triangles {
			f := round.Facets[round.FacetOf[i]]
			a, b, c := round.Vertices[tri[0]], round.Vertices[tri[1]], round.Vertices[tri[2]]
			n := b.Sub(a).Cross(c.Sub(a)).Unit()
			if f.Surface == "front" && !(n.Y < -0.3) {
				t.Fatalf("triangle %d of the front looks to %v", i, n)
			} else if f.Surface != "front" && f.Normal.Sub(n).Len() > 1e-9 {
				t.Fatalf("triangle %d of %s looks to %v", i, f.Surface, n)
			}
		}
	}
}

// areas sums the triangles of each surface in mm2.
func areas(m mesh.Mesh) map[string]float64 {
	out := make(map[string]float64)
	for i, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		out[m.Facets[m.FacetOf[i]].Surface] += float64(b.Sub(a).Cross(c.Sub(a)).Len()) / 2
	}
	return out
}

// The body lies within the tolerance of a point if its surface passes between
// the points one tolerance before and behind along the normal.
func TestMiddlesLieWithinTheTolerance(t *testing.T) {
	for _, tol := range []unit.Length{0.5, 0.1, 0.03} {
		_, round, b := shaped(t, 120, Edge{Bulge: 7, Tolerance: tol})
		samples := 0
		for i, tri := range round.Triangles {
			if round.Facets[round.FacetOf[i]].Surface != "front" {
				continue
			}
			p, q, r := round.Vertices[tri[0]], round.Vertices[tri[1]], round.Vertices[tri[2]]
			n := q.Sub(p).Cross(r.Sub(p)).Unit().Mul(float64(tol))
			for _, mid := range []geom.Vec3{p.Add(q).Add(r).Mul(1.0 / 3), p.Add(q).Mul(0.5), q.Add(r).Mul(0.5), r.Add(p).Mul(0.5)} {
				before, behind := mid.Add(n), mid.Sub(n)
				if behind.Z < b.low || behind.Z > b.high || before.Z < b.low || before.Z > b.high {
					continue // a straight arris runs through here
				}
				samples++
				if b.Contains(coord(before)) || !b.Contains(coord(behind)) {
					t.Fatalf("tolerance %g: the surface is farther from %v", float64(tol), mid)
				}
			}
		}
		if samples < 100 {
			t.Errorf("only %d samples", samples)
		}
	}
}

// Judge: admesh, on a bare STL file of the shaped slab.
func TestAdmeshFindsNothingToMend(t *testing.T) {
	_, round, _ := shaped(t, 300, Edge{Bulge: 6, Tolerance: 0.1})
	r := round.Single(geom.Vec3{})
	stl := make([]byte, 80, 84+50*len(r.Triangles))
	stl = binary.LittleEndian.AppendUint32(stl, uint32(len(r.Triangles)))
	for i, tri := range r.Triangles {
		for _, v := range [][3]float32{r.Normal(i), r.Vertices[tri[0]], r.Vertices[tri[1]], r.Vertices[tri[2]]} {
			for _, x := range v {
				stl = binary.LittleEndian.AppendUint32(stl, math.Float32bits(x))
			}
		}
		stl = append(stl, 0, 0)
	}
	path := filepath.Join(t.TempDir(), "x.stl")
	if err := os.WriteFile(path, stl, 0o644); err != nil {
		t.Fatal(err)
	}
	a := judge.ReadAdmesh(t, path)
	if !a.Sound() || a.Parts != 1 || math.Abs(a.Volume/float64(round.Volume())-1) > 1e-5 {
		t.Errorf("%+v, want %g mm3", a, float64(round.Volume()))
	}
}

func TestFinerToleranceTakesMoreTriangles(t *testing.T) {
	last := 0
	for _, tol := range []unit.Length{1, 0.3, 0.1, 0.03} {
		_, round, _ := shaped(t, 100, Edge{Bulge: 7, Tolerance: tol})
		if len(round.Triangles) <= last {
			t.Errorf("tolerance %g: %d triangles, the coarser one had %d", float64(tol), len(round.Triangles), last)
		}
		last = len(round.Triangles)
	}
}

func TestSurfaceStaysBetweenFlatEdgeAndBulge(t *testing.T) {
	_, round, b := shaped(t, 150, Edge{Bulge: 8, Tolerance: 0.2})
	still := *b
	still.bulge = 0 // the field without any bulge
	deepest := 0.0
	for i, tri := range round.Triangles {
		if round.Facets[round.FacetOf[i]].Surface != "front" {
			continue
		}
		for _, v := range tri {
			p := round.Vertices[v]
			d := still.field(p.Flat(), b.height(float64(p.Z)))
			if d < -1e-6 || d > 8 {
				t.Fatalf("%v stands %g mm before the flat edge", p, d)
			}
			deepest = max(deepest, d)
		}
	}
	if deepest < 5 {
		t.Errorf("the edge bulges by %g mm only", deepest)
	}
}

func TestBulgeGivesWayInANotch(t *testing.T) {
	var lower, upper []geom.Vec3
	for _, p := range []geom.Vec{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 202, Y: 60}, {X: 208, Y: 60}, {X: 210, Y: 0}, {X: 400, Y: 0}, {X: 401, Y: 3}, {X: 402, Y: 0}, {X: 700, Y: 5}} {
		lower, upper = append(lower, p.Up(0)), append(upper, p.Up(thick))
	}
	e := Edge{Surface: "front", Bulge: 10, Grain: usualGrain, Tolerance: 0.2}
	m, err := Shape(slab(t, lower, upper), e)
	if err != nil {
		t.Fatal(err)
	}
	if err := mesh.Check(m).Err(); err != nil {
		t.Error(err)
	}
	b, err := newBody(e, lower, upper)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		x, y     unit.Length
		at, most float64
	}{{202, 60, 0, 3}, {201, 30, 0, 5}, {205, 60, 0, 3}, {100, 0, 9.9, 10}} {
		if r := b.roomAt(geom.V(c.x, c.y), 0.5); r < c.at || r > c.most {
			t.Errorf("room for %g mm at %g, %g", r, float64(c.x), float64(c.y))
		}
	}
}

func TestSameInputSameMesh(t *testing.T) {
	_, a, _ := shaped(t, 80, Edge{Bulge: 6, Tolerance: 0.2})
	_, b, _ := shaped(t, 80, Edge{Bulge: 6, Tolerance: 0.2})
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs differ")
	}
}

func TestUnfitEdgesAreRefused(t *testing.T) {
	lower, upper := front(30, 1000)
	nan := unit.Length(math.NaN())
	for say, spoil := range map[string]func(*mesh.Mesh, *Edge){
		"no face of the mesh": func(_ *mesh.Mesh, e *Edge) { e.Surface = "bark" },
		"bulge NaN":           func(_ *mesh.Mesh, e *Edge) { e.Bulge = nan },
		"bulge -1":            func(_ *mesh.Mesh, e *Edge) { e.Bulge = -1 },
		"grain 1 mm":          func(_ *mesh.Mesh, e *Edge) { e.Grain = 1 },
		"tolerance 0 mm":      func(_ *mesh.Mesh, e *Edge) { e.Tolerance = 0 },
		"more than 200000":    func(_ *mesh.Mesh, e *Edge) { e.Tolerance, e.Bulge, e.Grain = 0.01, 90, 5 },
		"not one strip": func(m *mesh.Mesh, _ *Edge) {
			for i := range m.Facets {
				m.Facets[i].Surface = strings.Replace(m.Facets[i].Surface, "back", "front 99", 1)
			}
		},
		"level arrises": func(m *mesh.Mesh, _ *Edge) {
			for i := range m.Vertices {
				if v := &m.Vertices[i]; *v == upper[7] {
					v.Z--
				}
			}
		},
		"less than 1 mm high": func(m *mesh.Mesh, e *Edge) {
			for i := range m.Vertices {
				m.Vertices[i].Z *= 0.01
			}
		},
		"fall together": func(m *mesh.Mesh, e *Edge) {
			for i := range m.Vertices {
				if v := &m.Vertices[i]; *v == lower[8] {
					*v = lower[7]
				}
			}
		},
	} {
		m, e := slab(t, lower, upper), Edge{Surface: "front", Bulge: 6, Tolerance: 0.2}
		spoil(&m, &e)
		if _, err := Shape(m, e); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("want %q, got %v", say, err)
		}
	}
}

func TestOnlyTheNamedFacesAreTaken(t *testing.T) {
	e := Edge{Surface: "front"}
	for name, want := range map[string]bool{"front": true, "front 2": true, "front 12": true, "front arris": false, "front 2 arris": false, "front panel": false, "front ": false, "frontal": false, "back": false} {
		if e.owns(mesh.Facet{Surface: name}) != want {
			t.Errorf("%q: want %v", name, want)
		}
	}
}

func TestNoiseIsSmoothAndBounded(t *testing.T) {
	low, high := 0.0, 0.0
	for i := range 20000 {
		x, y, z := float64(i)*0.037-300, float64(i%97)*0.11-5, float64(i%31)*0.3
		v := noise(x, y, z)
		low, high = min(low, v), max(high, v)
		if d := math.Abs(noise(x+1e-4, y, z) - v); d > 5e-4 {
			t.Fatalf("jumps by %g at %g %g %g", d, x, y, z)
		}
	}
	if low < -1 || high > 1 || low > -0.5 || high < 0.5 {
		t.Errorf("runs from %g to %g", low, high)
	}
}

// The body must be a sound Solid in model3d's own eyes.
func TestBodyIsAModel3dSolid(t *testing.T) {
	_, _, b := shaped(t, 50, Edge{Bulge: 6, Tolerance: 0.5})
	if !model3d.BoundsValid(b) {
		t.Errorf("bounds %v %v", b.Min(), b.Max())
	}
	if b.Contains(b.Min().Sub(model3d.XYZ(1, 1, 1))) || b.Contains(b.Max().Add(model3d.XYZ(0, 0, 1))) {
		t.Error("it holds points outside its bounds")
	}
}

func BenchmarkShape(b *testing.B) {
	lower, upper := front(500, 4000)
	flat := slab(b, lower, upper)
	e := Edge{Surface: "front", Bulge: 6, Tolerance: 0.1}
	for b.Loop() {
		if _, err := Shape(flat, e); err != nil {
			b.Fatal(err)
		}
	}
}
