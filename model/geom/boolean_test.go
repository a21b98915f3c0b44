package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"slabwright/model/unit"
)

// TestBooleanIdentities checks set algebra on random pairs of every family:
// |A|+|B| = |A or B| + |A and B|, A xor B = A or B - A and B, A = A-B + A and B,
// and sampled points one by one.
func TestBooleanIdentities(t *testing.T) {
	for _, f := range families {
		t.Run(f.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(1, 2))
			for i := range 700 {
				a, b := f.make(r), f.make(r)
				t.Run(fmt.Sprint(i), func(t *testing.T) { checkPair(t, r, a, b) })
			}
		})
	}
}

// TestBooleanMixed pairs regions of different families.
func TestBooleanMixed(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 1500 {
		a, b := families[r.IntN(len(families))].make(r), families[r.IntN(len(families))].make(r)
		t.Run(fmt.Sprint(i), func(t *testing.T) { checkPair(t, r, a, b) })
	}
}

func checkPair(t *testing.T, r *rand.Rand, a, b Region) {
	t.Helper()
	or, and, not, xor := a.Union(b), a.Intersect(b), a.Minus(b), a.Xor(b)
	for _, x := range []Region{a, b, or, and, not, xor} {
		checkRegion(t, x)
	}
	tol := rounding(a, b)
	near(t, "union", float64(or.Area()+and.Area()), float64(a.Area()+b.Area()), tol)
	near(t, "xor", float64(xor.Area()), float64(or.Area()-and.Area()), tol)
	near(t, "difference", float64(not.Area()+and.Area()), float64(a.Area()), tol)
	if got := b.Union(a); !reflect.DeepEqual(got, or) {
		t.Fatalf("union depends on the order: %v, %v", got.Loops(), or.Loops())
	}
	lo, hi := a.Union(b).Bounds()
	for range 20 {
		p := lo.Add(V(unit.Length(r.Float64())*(hi.X-lo.X), unit.Length(r.Float64())*(hi.Y-lo.Y)))
		if math.Abs(float64(a.DistanceTo(p))) < 0.005 || math.Abs(float64(b.DistanceTo(p))) < 0.005 {
			continue
		}
		ina, inb := a.Contains(p), b.Contains(p)
		for _, c := range []struct {
			name string
			r    Region
			want bool
		}{{"union", or, ina || inb}, {"intersection", and, ina && inb}, {"difference", not, ina && !inb}, {"xor", xor, ina != inb}} {
			if c.r.Contains(p) != c.want {
				t.Fatalf("%s contains %v: %v", c.name, p, !c.want)
			}
		}
	}
}

// TestBooleanSame: a region with itself. Shapes of a few grid steps may be
// rounded once more.
func TestBooleanSame(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for i := range 500 {
		f := families[i%len(families)]
		if f.name == "micro" {
			continue
		}
		a := f.make(r)
		if got := a.Union(a); !reflect.DeepEqual(got, a) {
			t.Fatalf("union with itself: %v, want %v", got.Loops(), a.Loops())
		}
		if got := a.Intersect(a); !reflect.DeepEqual(got, a) {
			t.Fatalf("intersection with itself: %v, want %v", got.Loops(), a.Loops())
		}
		if got := a.Minus(a); !got.Empty() {
			t.Fatalf("difference from itself: %v", got.Loops())
		}
		if got := a.Xor(a); !got.Empty() {
			t.Fatalf("xor with itself: %v", got.Loops())
		}
		if got := UnionAll(a.Pieces()...); !reflect.DeepEqual(got, a) {
			t.Fatalf("union of the pieces: %v, want %v", got.Loops(), a.Loops())
		}
	}
}

// TestBooleanByHand: results that can be read off a sketch.
func TestBooleanByHand(t *testing.T) {
	sq := Rect(V(0, 0), V(10, 10))
	frame := sq.Minus(Rect(V(2, 2), V(8, 8)))
	for _, c := range []struct {
		name                string
		r                   Region
		area                unit.Area
		pieces, loops, pnts int
	}{
		{"shared edge", sq.Union(Rect(V(10, 0), V(20, 10))), 200, 1, 1, 4},
		{"part of an edge", sq.Union(Rect(V(10, 3), V(20, 6))), 130, 1, 1, 8},
		{"corners touch", sq.Union(Rect(V(10, 10), V(20, 20))), 200, 2, 2, 8},
		{"apart", sq.Union(Rect(V(30, 0), V(40, 10))), 200, 2, 2, 8},
		{"frame", frame, 64, 1, 2, 8},
		{"frame filled", frame.Union(Rect(V(2, 2), V(8, 8))), 100, 1, 1, 4},
		{"island", frame.Union(Rect(V(4, 4), V(6, 6))), 68, 2, 3, 12},
		{"hole touches a corner from inside", sq.Minus(Polygon(V(0, 0), V(6, 3), V(3, 6))), 86.5, 1, 2, 7},
		{"hole touches a side", sq.Minus(Polygon(V(5, 0), V(8, 5), V(2, 5))), 85, 1, 2, 8},
		{"holes touch", sq.Minus(Rect(V(2, 2), V(4, 4)), Rect(V(4, 4), V(6, 6))), 92, 1, 3, 12},
		{"holes part it", sq.Minus(Polygon(V(5, 0), V(7, 5), V(3, 5)), Polygon(V(5, 10), V(3, 5), V(7, 5))), 80, 2, 2, 10},
		{"bow tie", Polygon(V(0, 0), V(10, 10), V(10, 0), V(0, 10)), 50, 2, 2, 6},
		{"wound twice", Polygon(V(0, 0), V(10, 0), V(10, 10), V(0, 10), V(0, 0), V(8, 0), V(8, 8), V(0, 8)), 100, 1, 1, 4},
		{"clockwise", Polygon(V(0, 0), V(0, 10), V(10, 10), V(10, 0)), 100, 1, 1, 4},
		{"there and back", Polygon(V(0, 0), V(10, 0), V(5, 0)), 0, 0, 0, 0},
		{"two points", Polygon(V(0, 0), V(10, 0)), 0, 0, 0, 0},
		{"a point", Polygon(V(1, 1)), 0, 0, 0, 0},
		{"nothing", Polygon(), 0, 0, 0, 0},
		{"spike", Polygon(V(0, 0), V(10, 0), V(20, 0), V(10, 0), V(10, 10), V(0, 10)), 100, 1, 1, 4},
		{"with nothing", sq.Union(), 100, 1, 1, 4},
		{"minus nothing", sq.Minus(), 100, 1, 1, 4},
		{"no regions", UnionAll(), 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			checkRegion(t, c.r)
			n := 0
			for _, l := range c.r.Loops() {
				n += len(l)
			}
			got := []any{c.r.Area(), len(c.r.Pieces()), len(c.r.Loops()), n}
			want := []any{c.area, c.pieces, c.loops, c.pnts}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("area, pieces, loops, points: got %v, want %v\n%v", got, want, c.r.Loops())
			}
		})
	}
}

// TestBoard: a board of n x n fields joined one by one, all at once and by
// colour.
func TestBoard(t *testing.T) {
	const n = 20
	var white, black []Region
	for i := range n {
		for j := range n {
			p := V(unit.Length(i), unit.Length(j))
			f := Rect(p, p.Add(V(1, 1)))
			if (i+j)%2 == 0 {
				white = append(white, f)
			} else {
				black = append(black, f)
			}
		}
	}
	w, b := UnionAll(white...), UnionAll(black...)
	checkRegion(t, w)
	if len(w.Pieces()) != n*n/2 || w.Area() != n*n/2 {
		t.Errorf("white: %d pieces of %v mm2", len(w.Pieces()), w.Area())
	}
	if got, want := w.Union(b), Rect(V(0, 0), V(n, n)); !reflect.DeepEqual(got, want) {
		t.Errorf("both: %v", got.Loops())
	}
	if got := Rect(V(0, 0), V(n, n)).Minus(white...); !reflect.DeepEqual(got, b) {
		t.Errorf("board minus white is not black")
	}
}

// TestFaults: a fault travels through every operation and user data never panics.
func TestFaults(t *testing.T) {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	good := Rect(V(0, 0), V(1, 1))
	for i, bad := range []Region{
		Polygon(V(0, 0), V(nan, 1), V(1, 1)),
		Polygon(V(0, 0), V(inf, 1), V(1, 1)),
		Polygon(V(0, 0), V(1e6+1, 1), V(1, 1)),
		Rect(V(0, 0), V(1, nan)),
		Circle(V(0, 0), -1, 0.1), Circle(V(0, 0), nan, 0.1), Circle(V(0, 0), inf, 0.1), Circle(V(nan, 0), 1, 0.1),
		Circle(V(0, 0), 1, 0), Circle(V(0, 0), 1, nan), Circle(V(0, 0), 1e6, 0.1),
		Slot(V(0, 0), V(nan, 0), 1, 0.1), Slot(V(0, 0), V(10, 0), 0, 0.1), Slot(V(0, 0), V(10, 0), 1, -1),
		Strip([]Vec{V(0, 0), V(inf, 0)}, 1, 0.1), Strip([]Vec{V(0, 0), V(nan, 0), V(1, 1)}, 1, 0.1), Strip(nil, nan, 0.1),
		good.Grow(1, nan), good.Grow(nan, 0.1), good.Grow(inf, 0.1), good.Grow(2e6, 1), good.Grow(-inf, 1),
		good.Place(Pose{At: xyz(999998, 0, 0)}).Grow(2, 0.1), good.Minus(Rect(V(0.5, 0.5), V(1, 1))).Place(Pose{At: xyz(-999999, 0, 0)}).Grow(2, 0.1),
		good.Place(Pose{At: xyz(nan, 0, 0)}), good.Place(Pose{At: xyz(1e6, 0, 0)}), good.Place(Pose{Turn: unit.Angle(nan)}),
		good.ClipHalfPlane(Line{}), good.ClipHalfPlane(Line{V(nan, 0), V(1, 0)}), good.ClipHalfPlane(Line{V(0, 0), V(inf, 0)}),
	} {
		if bad.Err() == nil {
			t.Errorf("%d: no fault: %v", i, bad.Loops())
			continue
		}
		for _, r := range []Region{
			bad, bad.Union(good), good.Union(bad), good.Intersect(bad), good.Minus(good, bad), good.Xor(bad), UnionAll(bad),
			bad.Grow(1, 0.1), bad.Place(Pose{Turn: 1}), bad.Mirror(), bad.ClipHalfPlane(Through(V(0, 0), V(1, 1))),
			Subdivide(good, bad).Select(func([]bool) bool { return true }).Region(),
		} {
			if r.Err() == nil || !r.Empty() || r.Area() != 0 || r.Loops() != nil {
				t.Errorf("fault %v lost: %v", bad.Err(), r.Loops())
			}
		}
	}
}
