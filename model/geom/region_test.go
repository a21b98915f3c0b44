package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"slabwright/model/unit"
)

// TestPlace: moving keeps a region exactly, turning keeps its measures, and
// both commute with the set operations.
func TestPlace(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 30))
	for i := range 600 {
		f := families[i%len(families)]
		if f.name == "huge" {
			continue
		}
		a, b := f.make(r), f.make(r)
		t.Run(fmt.Sprint(i, f.name), func(t *testing.T) {
			move := Pose{At: randomVec(r, 1000).Up(3)}
			back := Pose{At: move.At.Mul(-1)}
			if got := a.Place(move).Place(back); !reflect.DeepEqual(got, a) {
				t.Fatalf("there and back: %v, want %v", got.Loops(), a.Loops())
			}
			if got, want := a.Place(move).Minus(b.Place(move)).Area(), a.Minus(b).Area(); got != want {
				t.Fatalf("difference elsewhere: %v, want %v", got, want)
			}
			p := randomPose(r, 1000)
			tol := rounding(a, b)
			x, y := a.Place(p), b.Place(p)
			checkRegion(t, x)
			near(t, "area", float64(x.Area()), float64(a.Area()), tol)
			near(t, "union", float64(x.Union(y).Area()), float64(a.Union(b).Area()), tol)
			near(t, "intersection", float64(x.Intersect(y).Area()), float64(a.Intersect(b).Area()), tol)
			if a.Area() > 1 {
				near(t, "perimeter", float64(x.Perimeter()), float64(a.Perimeter()), tol)
				if d := x.Centroid().Sub(p.Plan(a.Centroid())).Len(); float64(d)*float64(a.Area()) > 200*tol {
					t.Fatalf("centroid %v, want %v", x.Centroid(), p.Plan(a.Centroid()))
				}
			}
			m := a.Mirror()
			checkRegion(t, m)
			if m.Area() != a.Area() || !reflect.DeepEqual(m.Mirror(), a) {
				t.Fatalf("mirrored: %v", m.Loops())
			}
			if q := a.Centroid(); a.Contains(q) != m.Contains(V(-q.X, q.Y)) && math.Abs(float64(a.DistanceTo(q))) > 0.001 {
				t.Fatalf("mirrored: %v", m.Loops())
			}
		})
	}
	quarter := Rect(V(1, 2), V(5, 3)).Place(Pose{At: xyz(10, 0, 0), Turn: 90 * unit.Degree})
	if want := Rect(V(7, 1), V(8, 5)); !reflect.DeepEqual(quarter, want) {
		t.Errorf("quarter turn: %v, want %v", quarter.Loops(), want.Loops())
	}
}

// TestMeasures: figures from elementary geometry.
func TestMeasures(t *testing.T) {
	tri := Polygon(V(0, 0), V(6, 0), V(0, 3))
	frame := Rect(V(0, 0), V(10, 10)).Minus(Rect(V(1, 1), V(5, 5)))
	for _, c := range []struct {
		name            string
		r               Region
		area, perimeter float64
		centroid        Vec
		lo, hi          Vec
	}{
		{"triangle", tri, 9, 9 + math.Sqrt(45), V(2, 1), V(0, 0), V(6, 3)},
		{"frame", frame, 84, 56, V((500.-16*3)/84, (500.-16*3)/84), V(0, 0), V(10, 10)},
		{"two", Rect(V(-3, 0), V(-1, 1)).Union(Rect(V(1, 0), V(3, 1))), 4, 12, V(0, 0.5), V(-3, 0), V(3, 1)},
		{"far out", Rect(V(999999, 999999), V(1e6, 1e6)), 1, 4, V(999999.5, 999999.5), V(999999, 999999), V(1e6, 1e6)},
		{"all", Rect(V(-1e6, -1e6), V(1e6, 1e6)), 4e12, 8e6, V(0, 0), V(-1e6, -1e6), V(1e6, 1e6)},
		{"nothing", Region{}, 0, 0, Vec{}, Vec{}, Vec{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			near(t, "area", float64(c.r.Area()), c.area, 1e-9)
			near(t, "perimeter", float64(c.r.Perimeter()), c.perimeter, 1e-9)
			near(t, "centroid", float64(c.r.Centroid().Sub(c.centroid).Len()), 0, 1e-9)
			if lo, hi := c.r.Bounds(); lo != c.lo || hi != c.hi {
				t.Errorf("bounds %v, %v, want %v, %v", lo, hi, c.lo, c.hi)
			}
		})
	}
}

// TestLoopsOrder: outlines come before their holes, whatever the operations.
func TestLoopsOrder(t *testing.T) {
	nest := Rect(V(0, 0), V(90, 90)).
		Minus(Rect(V(10, 10), V(80, 80))).
		Union(Rect(V(20, 20), V(70, 70)).Minus(Rect(V(30, 30), V(40, 40)), Rect(V(50, 50), V(60, 60))))
	want := [][]Vec{
		{V(0, 0), V(90, 0), V(90, 90), V(0, 90)},
		{V(10, 10), V(10, 80), V(80, 80), V(80, 10)},
		{V(20, 20), V(70, 20), V(70, 70), V(20, 70)},
		{V(30, 30), V(30, 40), V(40, 40), V(40, 30)},
		{V(50, 50), V(50, 60), V(60, 60), V(60, 50)},
	}
	if got := nest.Loops(); !reflect.DeepEqual(got, want) {
		t.Errorf("loops %v, want %v", got, want)
	}
	if got := nest.Pieces(); len(got) != 2 || got[0].Area() != 90*90-70*70 || got[1].Area() != 50*50-200 {
		t.Errorf("pieces %v", got)
	}
}

// TestClipHalfPlane: both sides of a cut make up the region, every corner is on
// the right side, and a cut through corners goes exactly through them.
func TestClipHalfPlane(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for i := range 600 {
		f := families[i%len(families)]
		a := f.make(r)
		if a.Empty() {
			continue
		}
		lo, hi := a.Bounds()
		size := float64(hi.Sub(lo).Len())
		l := Line{lo.Lerp(hi, r.Float64()), randomVec(r, 1)}
		if i%3 == 0 { // through two of its corners
			loop := a.Loops()[0]
			l = Through(loop[0], loop[len(loop)/2])
		}
		t.Run(fmt.Sprint(i, f.name), func(t *testing.T) {
			left, right := a.ClipHalfPlane(l), a.ClipHalfPlane(Line{l.P, l.D.Mul(-1)})
			checkRegion(t, left)
			near(t, "both sides", float64(left.Area()+right.Area()), float64(a.Area()), rounding(a)+0.002*size)
			for _, loop := range left.Loops() {
				for _, v := range loop {
					if l.Side(v) < -0.002 {
						t.Fatalf("corner %v is %v off", v, l.Side(v))
					}
				}
			}
			if left.Area() > a.Area()/100 {
				near(t, "again", float64(left.ClipHalfPlane(l).Area()), float64(left.Area()), 0.002*size)
			}
		})
	}
	sq := Rect(V(0, 0), V(100, 100)).Place(Pose{Turn: 0.7})
	c := sq.Loops()[0]
	if got, want := sq.ClipHalfPlane(Through(c[0], c[2])), Polygon(c[0], c[2], c[3]); !reflect.DeepEqual(got, want) {
		t.Errorf("cut along the diagonal: %v, want %v", got.Loops(), want.Loops())
	}
	if got := sq.ClipHalfPlane(Through(c[0], c[1])); !reflect.DeepEqual(got, sq) {
		t.Errorf("cut along a side: %v, want %v", got.Loops(), sq.Loops())
	}
	if got := sq.ClipHalfPlane(Through(c[1], c[0])); !got.Empty() {
		t.Errorf("cut along a side: %v", got.Loops())
	}
	if got := Rect(V(-1e6, -1e6), V(1e6, 1e6)).ClipHalfPlane(Through(V(0, 0), V(1, 1))); got.Area() != 2e12 || got.Err() != nil {
		t.Errorf("half of everything: %v, %v", got.Loops(), got.Err())
	}
	if got := sq.ClipHalfPlane(Through(V(-500, -500), V(500, -500))); !reflect.DeepEqual(got, sq) {
		t.Errorf("cut far below: %v", got.Loops())
	}
	if got := sq.ClipHalfPlane(Through(V(500, -500), V(-500, -500))); !got.Empty() {
		t.Errorf("cut far below: %v", got.Loops())
	}
}

// TestInside: by hand for what runs along the boundary, else against points
// along the segment.
func TestInside(t *testing.T) {
	a := Rect(V(0, 0), V(10, 10)).Minus(Rect(V(4, 4), V(6, 6)))
	for _, c := range []struct {
		name string
		p, q Vec
		want [][2]float64
	}{
		{"through the hole", V(-5, 5), V(15, 5), [][2]float64{{0.25, 0.45}, {0.55, 0.75}}},
		{"backwards", V(15, 5), V(-5, 5), [][2]float64{{0.25, 0.45}, {0.55, 0.75}}},
		{"along the outline", V(0, 0), V(10, 0), nil},
		{"along the hole", V(0, 4), V(10, 4), [][2]float64{{0, 0.4}, {0.6, 1}}},
		{"through corners", V(-10, -10), V(20, 20), [][2]float64{{1. / 3, 14. / 30}, {16. / 30, 2. / 3}}},
		{"past a corner", V(-5, 5), V(5, -5), nil},
		{"touching the hole's corner", V(3, 5), V(5, 3), [][2]float64{{0, 1}}},
		{"within", V(1, 1), V(2, 3), [][2]float64{{0, 1}}},
		{"ending within", V(-1, 1), V(1, 1), [][2]float64{{0.5, 1}}},
		{"outside", V(20, 20), V(30, 30), nil},
		{"in the hole", V(4.5, 5), V(5.5, 5), nil},
		{"a point", V(1, 1), V(1, 1), nil},
		{"not a number", V(unit.Length(math.NaN()), 1), V(1, 1), nil},
	} {
		got := a.Inside(c.p, c.q)
		ok := len(got) == len(c.want)
		for i := range min(len(got), len(c.want)) {
			ok = ok && math.Abs(got[i][0]-c.want[i][0]) < 1e-12 && math.Abs(got[i][1]-c.want[i][1]) < 1e-12
		}
		if !ok {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	r := rand.New(rand.NewPCG(33, 34))
	for i := range 1200 {
		f := families[i%len(families)]
		if f.name == "micro" || f.name == "huge" {
			continue
		}
		a := f.make(r)
		lo, hi := a.Bounds()
		size := float64(hi.Sub(lo).Len())
		p, q := lo.Lerp(hi, 0.5).Add(randomVec(r, size)), lo.Lerp(hi, 0.5).Add(randomVec(r, size))
		if i%2 == 0 { // on the lattice, for segments along sides and through corners
			p, q = V(unit.Length(r.IntN(8)*10), unit.Length(r.IntN(8)*10)), V(unit.Length(r.IntN(8)*10), unit.Length(r.IntN(8)*10))
		}
		if p == q {
			continue
		}
		t.Run(fmt.Sprint(i, f.name), func(t *testing.T) {
			got := a.Inside(p, q)
			last := -1.0
			for _, g := range got {
				if g[0] <= last || g[1] <= g[0] || g[0] < 0 || g[1] > 1 {
					t.Fatalf("stretches %v", got)
				}
				last = g[1]
			}
			for k := range 101 {
				s := float64(k) / 100
				v := p.Lerp(q, s)
				if d := a.DistanceTo(v); math.Abs(float64(d)) > 0.002 && (d < 0) != covered(got, s) {
					t.Fatalf("at %v, %v from the boundary: %v", s, d, got)
				}
			}
		})
	}
}

func covered(stretches [][2]float64, s float64) bool {
	for _, g := range stretches {
		if g[0] <= s && s <= g[1] {
			return true
		}
	}
	return false
}
