package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// wound is the slow truth for Contains: the winding angle of all loops.
func wound(loops [][]Vec, p Vec) bool {
	sum := 0.0
	for _, l := range loops {
		for i, a := range l {
			u, v := a.Sub(p), l[(i+1)%len(l)].Sub(p)
			sum += math.Atan2(u.Cross(v), u.Dot(v))
		}
	}
	return math.Abs(sum) > 1
}

// walked is the slow truth for DistanceTo: the nearest of many points along
// the loops, one every pitch.
func walked(loops [][]Vec, p Vec, pitch float64) float64 {
	best := math.Inf(1)
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			n := math.Ceil(float64(b.Sub(a).Len()) / pitch)
			for k := 0.0; k < n; k++ {
				best = min(best, float64(a.Lerp(b, k/n).Sub(p).Len()))
			}
		}
	}
	return best
}

// TestDistanceTo compares sign and size with brute force on random regions.
func TestDistanceTo(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 18))
	for i := range 400 {
		f := families[i%len(families)]
		a := f.make(r)
		if a.Empty() {
			continue
		}
		lo, hi := a.Bounds()
		size := float64(hi.Sub(lo).Len())
		pitch := size / 500
		for range 5 {
			p := lo.Lerp(hi, 0.5).Add(randomVec(r, size))
			d := float64(a.DistanceTo(p))
			in := wound(a.Loops(), p)
			if in != (d < 0) || math.Abs(d) > 0.001 && in != a.Contains(p) {
				t.Fatalf("%s %d: %v inside is %v, distance %v", f.name, i, p, in, d)
			}
			slow := walked(a.Loops(), p, pitch)
			if math.Abs(d) > slow+1e-9*size || slow > math.Hypot(d, pitch/2)+1e-9*size {
				t.Fatalf("%s %d: distance %v, walked %v", f.name, i, d, slow)
			}
		}
	}
}

// TestDistanceToNothing: no number comes out where there is none.
func TestDistanceToNothing(t *testing.T) {
	if d := (Region{}).DistanceTo(V(1, 1)); !math.IsInf(float64(d), 1) {
		t.Errorf("distance to nothing: %v", d)
	}
	nan := unit.Length(math.NaN())
	for _, p := range []Vec{V(nan, 0), V(0, nan)} {
		if d := Rect(V(0, 0), V(1, 1)).DistanceTo(p); !math.IsNaN(float64(d)) {
			t.Errorf("distance of %v: %v", p, d)
		}
	}
}

// TestPolygonWinding compares Polygon with the winding number of what went in,
// self-crossings and all.
func TestPolygonWinding(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 20))
	for i := range 600 {
		var pts []Vec
		if i%2 == 0 {
			pts = latticePoints(r, 10)
		} else {
			for range 3 + r.IntN(12) {
				pts = append(pts, randomVec(r, 60))
			}
		}
		a := Polygon(pts...)
		checkRegion(t, a)
		for range 20 {
			p := randomVec(r, 70)
			if walked([][]Vec{pts}, p, 1) < 1 {
				continue
			}
			if got, want := a.Contains(p), wound([][]Vec{pts}, p); got != want {
				t.Fatalf("%d: %v contains %v: %v, want %v", i, pts, p, got, want)
			}
		}
	}
}

// TestContainsBoundary: corners and points of the grid on sides count.
func TestContainsBoundary(t *testing.T) {
	a := Rect(V(0, 0), V(10, 10)).Minus(Polygon(V(5, 5), V(8, 8), V(5, 8)))
	for _, p := range []Vec{V(0, 0), V(5, 0), V(10, 3), V(4, 10), V(10, 10), V(5, 5), V(6.5, 6.5), V(5, 7), V(6, 8), V(8, 8), V(2, 2)} {
		if !a.Contains(p) {
			t.Errorf("%v is not contained", p)
		}
	}
	for _, p := range []Vec{V(-0.001, 5), V(5, 10.001), V(6, 7), V(7.998, 7.999), V(10, 10.001), V(unit.Length(math.NaN()), 1), V(1e9, 0)} {
		if a.Contains(p) {
			t.Errorf("%v is contained", p)
		}
	}
}

// TestGapBrute: regions apart are as far as the nearest corner of one from the
// other; the nearest points lie on the two and that far apart.
func TestGapBrute(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	apart := 0
	for i := range 1500 {
		f, g := families[r.IntN(len(families))], families[r.IntN(len(families))]
		if f.name == "huge" || g.name == "huge" {
			continue
		}
		a, b := f.make(r), g.make(r).Place(randomPose(r, 300))
		if a.Empty() || b.Empty() {
			continue
		}
		t.Run(fmt.Sprint(i, f.name, g.name), func(t *testing.T) {
			gap, back := a.Gap(b), b.Gap(a)
			near(t, "other way", float64(back.Distance), float64(gap.Distance), 1e-9)
			if gap.Distance <= 0 {
				return
			}
			apart++
			want := math.Inf(1)
			for _, l := range a.Loops() {
				for _, v := range l {
					want = min(want, float64(b.DistanceTo(v)))
				}
			}
			for _, l := range b.Loops() {
				for _, v := range l {
					want = min(want, float64(a.DistanceTo(v)))
				}
			}
			near(t, "distance", float64(gap.Distance), want, 1e-9)
			near(t, "between the points", float64(gap.A.Sub(gap.B).Len()), want, 1e-9)
			near(t, "A from the first", float64(a.DistanceTo(gap.A)), 0, 1e-9)
			near(t, "B from the second", float64(b.DistanceTo(gap.B)), 0, 1e-9)
		})
	}
	if apart < 500 {
		t.Errorf("only %d pairs were apart", apart)
	}
}

// TestGapOverlap: depths that can be read off a sketch, in any position.
func TestGapOverlap(t *testing.T) {
	sq := Rect(V(0, 0), V(100, 100))
	r := rand.New(rand.NewPCG(23, 24))
	for _, c := range []struct {
		name string
		b    Region
		want float64
		at   Vec
	}{
		{"edge", Rect(V(97, 20), V(200, 80)), -3, V(98.5, 50)},
		{"corner", Rect(V(96, 98), V(200, 200)), -2, V(98, 99)},
		{"crossing bars", Rect(V(-10, 40), V(110, 50)), -10, V(50, 45)},
		{"inside", Rect(V(10, 10), V(30, 50)), -20, V(20, 30)},
		{"the worst of two", Rect(V(-50, 0), V(1, 100)).Union(Rect(V(95, 0), V(150, 100))), -5, V(97.5, 50)},
		{"triangle", Polygon(V(90, 50), V(120, 20), V(120, 80)), -10, V(96.666667, 50)},
		{"touching edge", Rect(V(100, 20), V(200, 80)), 0, Vec{}},
		{"touching corner", Rect(V(100, 100), V(200, 200)), 0, Vec{}},
		{"a grid step off", Rect(V(100.001, 20), V(200, 80)), 0.001, Vec{}},
		{"two grid steps in", Rect(V(99.998, 20), V(200, 80)), 0, Vec{}},
		{"three grid steps in", Rect(V(99.997, 20), V(200, 80)), -0.003, Vec{99.9985, 50}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := sq.Gap(c.b)
			near(t, "gap", float64(g.Distance), c.want, 1e-9)
			if c.want < 0 && (g.A != g.B || g.A.Sub(c.at).Len() > 1e-3) {
				t.Errorf("at %v and %v, want %v", g.A, g.B, c.at)
			}
			for range 10 {
				p := randomPose(r, 1000)
				g := sq.Place(p).Gap(c.b.Place(p))
				near(t, "gap elsewhere", float64(g.Distance), c.want, 0.0035)
			}
		})
	}
	if d := sq.Gap(Region{}).Distance; !math.IsInf(float64(d), 1) {
		t.Errorf("gap to nothing: %v", d)
	}
	if d := sq.Gap(Rect(V(10, 10), V(10.002, 50))).Distance; d != 0 {
		t.Errorf("gap to a hair inside: %v", d)
	}
}

// TestGapNeighbours: parts of one turned board that share an edge touch, also
// where rounding lets them overlap a little.
func TestGapNeighbours(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 26))
	for range 300 {
		p := randomPose(r, 2000)
		a := Rect(V(0, 0), V(1000, 500)).Place(p)
		b := Rect(V(unit.Length(r.Float64()*900), 500), V(1500, 800)).Place(p)
		near(t, "gap", float64(a.Gap(b).Distance), 0, 0.0015)
		if a.Gap(b).Distance < 0 {
			t.Fatalf("neighbours overlap by %v", a.Gap(b).Distance)
		}
	}
}

// TestLeastWidth against trying every direction of a side over all corners.
func TestLeastWidth(t *testing.T) {
	r := rand.New(rand.NewPCG(27, 28))
	for range 500 {
		var pts []pt
		for range 3 + r.IntN(20) {
			pts = append(pts, pt{r.Int64N(1000), r.Int64N(1000)})
		}
		hull := convexHull(pts)
		if len(hull) < 3 {
			continue
		}
		want := math.Inf(1)
		for i, a := range hull {
			b := hull[(i+1)%len(hull)]
			w := 0.0
			for _, p := range pts {
				o := float64(orient(a, b, p))
				if o < 0 {
					t.Fatalf("%v lies outside the hull", p)
				}
				w = max(w, o/math.Hypot(float64(b.x-a.x), float64(b.y-a.y)))
			}
			want = min(want, w)
		}
		near(t, "width", leastWidth(pts), want, 1e-9)
	}
}
