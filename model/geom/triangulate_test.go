package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"slabwright/model/unit"
)

// TestTriangles: on every family the triangles have exactly the region's area,
// each is counter-clockwise, their number is 2v-n+2h-2 per piece (n-2+2h when
// no loops touch), and their sides are the region's sides once each and inner
// sides twice.
func TestTriangles(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for i := range 2500 {
		f := families[i%len(families)]
		t.Run(fmt.Sprint(f.name, i), func(t *testing.T) { checkTriangles(t, f.make(r)) })
	}
}

func checkTriangles(t *testing.T, a Region) {
	t.Helper()
	want := 0
	sides := map[[2]Vec]int{}
	for _, pc := range a.Pieces() {
		places := map[Vec]bool{}
		for _, l := range pc.Loops() {
			want += 2 - len(l)
			for j, v := range l {
				places[v] = true
				sides[[2]Vec{l[(j+1)%len(l)], v}]++
			}
		}
		want += 2*len(places) - 4
	}
	tris := a.Triangles()
	if len(tris) != want {
		t.Fatalf("%d triangles, want %d", len(tris), want)
	}
	var sum, total int64
	for _, tri := range tris {
		p, _ := snap(tri[0])
		q, _ := snap(tri[1])
		s, _ := snap(tri[2])
		o := orient(p, q, s)
		if o <= 0 {
			t.Fatalf("triangle %v has area %d", tri, o)
		}
		sum += o
		for k := range 3 {
			sides[[2]Vec{tri[k], tri[(k+1)%3]}]++
		}
	}
	for _, pc := range a.pieces {
		for _, l := range pc {
			total += area2(l)
		}
	}
	if sum != total {
		t.Fatalf("triangles cover %d, region %d", sum, total)
	}
	for e, n := range sides {
		if n != 1 || sides[[2]Vec{e[1], e[0]}] != 1 {
			t.Fatalf("side %v used %d times, other way %d times", e, n, sides[[2]Vec{e[1], e[0]}])
		}
	}
}

// TestTrianglesByHand: few enough to see.
func TestTrianglesByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		r    Region
		n    int
	}{
		{"square", Rect(V(0, 0), V(1, 1)), 2},
		{"frame", Rect(V(0, 0), V(3, 3)).Minus(Rect(V(1, 1), V(2, 2))), 8},
		{"hole touches a corner", Rect(V(0, 0), V(3, 3)).Minus(Polygon(V(0, 0), V(2, 1), V(1, 2))), 5},
		{"nothing", Region{}, 0},
	} {
		if got := len(c.r.Triangles()); got != c.n {
			t.Errorf("%s: %d triangles, want %d", c.name, got, c.n)
		}
	}
}

// checkFacets fails if triangles do not make a closed mesh with the loops: as
// many as they must be and every side of the loops in one of them.
func checkFacets(t *testing.T, loops [][]Vec, tris [][3]int) {
	t.Helper()
	var at []Vec
	first := map[Vec]int{}
	name := func(i int) int { return first[at[i]] }
	sides := map[[2]int]int{}
	for _, l := range loops {
		for _, v := range l {
			if _, seen := first[v]; !seen {
				first[v] = len(at)
			}
			at = append(at, v)
		}
	}
	for _, l := range loops {
		for j, v := range l {
			sides[[2]int{first[l[(j+1)%len(l)]], first[v]}]++
		}
	}
	for _, tri := range tris {
		for k := range 3 {
			sides[[2]int{name(tri[k]), name(tri[(k+1)%3])}]++
		}
	}
	for e, n := range sides {
		if n != sides[[2]int{e[1], e[0]}] {
			t.Fatalf("side %v used %d times, other way %d times", e, n, sides[[2]int{e[1], e[0]}])
		}
	}
}

func facetArea(loops [][]Vec, tris [][3]int) (sum, least float64) {
	var at []Vec
	for _, l := range loops {
		at = append(at, l...)
	}
	least = math.Inf(1)
	for _, tri := range tris {
		a := at[tri[1]].Sub(at[tri[0]]).Cross(at[tri[2]].Sub(at[tri[0]])) / 2
		sum += a
		least = min(least, a)
	}
	return sum, least
}

// TestTriangulateLoops takes regions to a tilted plane in space and back, with
// points put in along their sides, so that they come with rounding errors.
func TestTriangulateLoops(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	kinds := []func(*rand.Rand) Region{holed, squares, families[0].make}
	for i := range 900 {
		a := kinds[i%len(kinds)](r)
		tilt := func(v Vec) Vec { return v }
		if i >= 300 {
			tilt = tilted(r)
		}
		for _, pc := range a.Pieces() {
			var loops [][]Vec
			n := 0
			for _, l := range pc.Loops() {
				var out []Vec
				for j, v := range l {
					out = append(out, tilt(v))
					for k := range r.IntN(3) {
						out = append(out, tilt(v.Lerp(l[(j+1)%len(l)], float64(k+1)/3)))
					}
				}
				loops = append(loops, out)
				n += len(out)
			}
			t.Run(fmt.Sprint(i), func(t *testing.T) {
				tris := TriangulateLoops(loops)
				checkFacets(t, loops, tris)
				sum, least := facetArea(loops, tris)
				near(t, "area", sum, float64(pc.Area()), 1e-5)
				// A triangle over points in line would be nothing but rounding.
				if least < 1e-9 {
					t.Fatalf("triangle of %v mm2", least)
				}
			})
		}
	}
}

// tilted takes points into a plane in space and measures them there, the way a
// sloping face of a solid is laid flat.
func tilted(r *rand.Rand) func(Vec) Vec {
	rand3 := func() Vec3 {
		return xyz(unit.Length(r.NormFloat64()), unit.Length(r.NormFloat64()), unit.Length(r.NormFloat64()))
	}
	x := rand3().Unit()
	y := x.Cross(rand3()).Unit()
	o := rand3().Mul(500)
	turn := unit.Angle(r.Float64())
	return func(v Vec) Vec {
		p := o.Add(x.Mul(float64(v.X))).Add(y.Mul(float64(v.Y)))
		return Vec{unit.Length(p.Dot(x)), unit.Length(p.Dot(y))}.Turn(turn)
	}
}

// TestTriangulateBadLoops: loops no honest face has still give a closed mesh.
func TestTriangulateBadLoops(t *testing.T) {
	for _, c := range []struct {
		name  string
		loops [][]Vec
		n     int
	}{
		{"bow tie", [][]Vec{{V(0, 0), V(1, 1), V(1, 0), V(0, 1)}}, 2},
		{"all in line", [][]Vec{{V(0, 0), V(1, 1), V(2, 2), V(3, 3), V(1.5, 1.5)}}, 3},
		{"clockwise", [][]Vec{{V(0, 0), V(0, 1), V(1, 1), V(1, 0)}}, 2},
		{"hole outside", [][]Vec{{V(0, 0), V(1, 0), V(1, 1), V(0, 1)}, {V(5, 5), V(5, 6), V(6, 5)}}, 7},
		{"hole across", [][]Vec{{V(0, 0), V(4, 0), V(4, 4), V(0, 4)}, {V(2, 2), V(2, 3), V(6, 2.5)}}, 7},
		{"points closer than the grid", [][]Vec{{V(0, 0), V(1000, 0), V(1000, 1e-10), V(1000, 1), V(0, 1)}}, 3},
		{"not a number", [][]Vec{{V(0, 0), V(1, 0), V(unit.Length(math.NaN()), 1)}}, 0},
		{"too large", [][]Vec{{V(0, 0), V(1e7, 0), V(0, 1)}}, 0},
		{"nothing", nil, 0},
		{"empty loop", [][]Vec{{}}, 0},
		{"empty hole", [][]Vec{{V(0, 0), V(1, 0), V(0, 1)}, {}}, 1},
		{"two points", [][]Vec{{V(0, 0), V(1, 0)}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			tris := TriangulateLoops(c.loops)
			if len(tris) != c.n {
				t.Errorf("%d triangles, want %d: %v", len(tris), c.n, tris)
			}
			if c.n > 0 {
				checkFacets(t, c.loops, tris)
			}
		})
	}
}

// TestClipEars: the way out gives the same closed cover on honest loops.
func TestClipEars(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for i := range 100 {
		for _, pc := range star(r, V(0, 0), 20, 100).Minus(star(r, V(0, 0), 8, 25)).Pieces() {
			loops := pc.Loops()
			tris := clipEars(loops)
			checkFacets(t, loops, tris)
			sum, least := facetArea(loops, tris)
			near(t, fmt.Sprint("area ", i), sum, float64(pc.Area()), 1e-6)
			if least <= 0 {
				t.Fatalf("%d: triangle of %v mm2", i, least)
			}
		}
	}
}

// TestTriangulateLoopsIndices: the indices count through the loops.
func TestTriangulateLoopsIndices(t *testing.T) {
	got := TriangulateLoops([][]Vec{{V(0, 0), V(4, 0), V(0, 4)}})
	if !reflect.DeepEqual(got, [][3]int{{0, 1, 2}}) && !reflect.DeepEqual(got, [][3]int{{1, 2, 0}}) && !reflect.DeepEqual(got, [][3]int{{2, 0, 1}}) {
		t.Errorf("got %v", got)
	}
}
