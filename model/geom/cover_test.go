package geom

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"
)

// TestCover: selections of one cover agree with the set operations, keep to the
// same edges, and complementary selections share their common edges exactly.
func TestCover(t *testing.T) {
	r := rand.New(rand.NewPCG(39, 40))
	for i := range 800 {
		f := families[i%len(families)]
		a, b, c := f.make(r), f.make(r), f.make(r)
		t.Run(fmt.Sprint(i, f.name), func(t *testing.T) {
			cover := Subdivide(a, b, c)
			tol := rounding(a, b, c)
			all := cover.Select(func(m []bool) bool { return m[0] || m[1] || m[2] })
			near(t, "union", float64(all.Region().Area()), float64(UnionAll(a, b, c).Area()), tol)
			near(t, "a less b", float64(cover.Select(func(m []bool) bool { return m[0] && !m[1] }).Region().Area()),
				float64(a.Minus(b).Area()), tol)
			near(t, "a", float64(cover.Select(func(m []bool) bool { return m[0] }).Region().Area()), float64(a.Area()), tol)
			if all := cover.Select(func([]bool) bool { return true }); cover.Err() == nil {
				checkRegion(t, all.Region())
			}

			// Each of the eight kinds of cells on its own: every edge bounds
			// one kind on each side, or one kind and the outside.
			sides := map[[2]Vec]int{}
			for kind := 1; kind < 8; kind++ {
				cells := cover.Select(func(m []bool) bool {
					return m[0] == (kind&1 != 0) && m[1] == (kind&2 != 0) && m[2] == (kind&4 != 0)
				})
				for _, l := range cells.Loops() {
					for j, v := range l {
						sides[[2]Vec{v, l[(j+1)%len(l)]}]++
					}
				}
			}
			for _, l := range all.Loops() {
				for j, v := range l {
					sides[[2]Vec{l[(j+1)%len(l)], v}]++
				}
			}
			for e, n := range sides {
				if n != 1 || sides[[2]Vec{e[1], e[0]}] != 1 {
					t.Fatalf("edge %v bounds %d cells, %d on its other side", e, n, sides[[2]Vec{e[1], e[0]}])
				}
			}
		})
	}
}

// TestCoverKeepsVertices: corners of one region in the sides of another stay in
// all loops, and go in the regions.
func TestCoverKeepsVertices(t *testing.T) {
	c := Subdivide(Rect(V(0, 0), V(10, 10)), Rect(V(3, 0), V(7, 5)))
	whole := c.Select(func(m []bool) bool { return m[0] })
	if got, want := whole.Loops(), [][]Vec{{V(0, 0), V(3, 0), V(7, 0), V(10, 0), V(10, 10), V(0, 10)}}; !reflect.DeepEqual(got, want) {
		t.Errorf("loops %v, want %v", got, want)
	}
	if got, want := whole.Region(), Rect(V(0, 0), V(10, 10)); !reflect.DeepEqual(got, want) {
		t.Errorf("region %v, want %v", got.Loops(), want.Loops())
	}
	if s := Subdivide().Select(func([]bool) bool { return true }); s.Loops() != nil || s.Err() != nil || !s.Region().Empty() {
		t.Errorf("cover of nothing: %v", s)
	}
}
