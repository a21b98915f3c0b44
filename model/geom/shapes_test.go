package geom

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"slabwright/model/unit"
)

// TestCircle: the area is the circle's, the outline never leaves it by more
// than the chord error.
func TestCircle(t *testing.T) {
	for _, r := range []unit.Length{0.5, 3, 17.5, 60, 500, 20000} {
		for _, chord := range []unit.Length{0.01, 0.1, 1, 100} {
			c := Circle(V(12, 34), r, chord)
			checkRegion(t, c)
			loop := c.Loops()[0]
			if len(c.Loops()) != 1 || len(loop)%4 != 0 {
				t.Fatalf("r %v, chord %v: %d corners", r, chord, len(loop))
			}
			near(t, "area", float64(c.Area()), math.Pi*float64(r*r), 0.001*2*math.Pi*float64(r))
			for i, v := range loop {
				out := v.Sub(V(12, 34)).Len() - r
				in := r - v.Lerp(loop[(i+1)%len(loop)], 0.5).Sub(V(12, 34)).Len()
				if len(loop) > 4 && (out < -0.001 || out > chord+0.001 || in > chord+0.001) {
					t.Fatalf("r %v, chord %v: %v outside, %v inside", r, chord, out, in)
				}
			}
		}
	}
	if got := Circle(V(0, 0), 1e-5, 1); !got.Empty() || got.Err() != nil {
		t.Errorf("a circle below the grid: %v, %v", got.Loops(), got.Err())
	}
}

// TestSlot: the slot is what lies within half its width of the segment.
func TestSlot(t *testing.T) {
	const chord, step = 0.02, 0.0015
	r := rand.New(rand.NewPCG(35, 36))
	for range 100 {
		a, b := randomVec(r, 200), randomVec(r, 200)
		w := unit.Length(1 + 30*r.Float64())
		s := Slot(a, b, w, chord)
		checkRegion(t, s)
		want := float64(w)*float64(b.Sub(a).Len()) + math.Pi*float64(w*w)/4
		if got := float64(s.Area()); got < want-step*float64(s.Perimeter()) || got > want+chord*float64(s.Perimeter()) {
			t.Fatalf("area %v, want %v", got, want)
		}
		for _, v := range s.Loops()[0] {
			along := min(max(float64(Through(a, b).Along(v)/b.Sub(a).Len()), 0), 1)
			if d := v.Sub(a.Lerp(b, along)).Len(); d < w/2-step || d > w/2+chord+step {
				t.Fatalf("corner %v is %v from the middle line, want %v", v, d, w/2)
			}
		}
	}
	if got, want := Slot(V(1, 1), V(1, 1), 8, 0.1), Circle(V(1, 1), 4, 0.1); !reflect.DeepEqual(got, want) {
		t.Errorf("slot of no length: %v", got.Loops())
	}
	near(t, "slot out and back", float64(Slot(V(0, 0), V(10, 0), 2, 0.001).Area()), 20+math.Pi, 0.01)
}

// TestStrip: straight and bent grooves, by hand.
func TestStrip(t *testing.T) {
	q := math.Pi * 100 / 4 // a quarter of the round at a bend of a groove 20 wide
	for _, c := range []struct {
		name   string
		path   []Vec
		area   float64
		pieces int
	}{
		{"straight", []Vec{V(0, 0), V(100, 0)}, 2000, 1},
		{"straight in three", []Vec{V(0, 0), V(30, 0), V(30, 0), V(100, 0)}, 2000, 1},
		{"left", []Vec{V(0, 0), V(100, 0), V(100, 100)}, 4000 - 100 + q, 1},
		{"right", []Vec{V(0, 0), V(100, 0), V(100, -100)}, 4000 - 100 + q, 1},
		{"back", []Vec{V(0, 0), V(100, 0), V(50, 0)}, 2000 + 2*q, 1},
		{"across itself", []Vec{V(0, 0), V(100, 0), V(100, 100), V(50, 100), V(50, -50)}, 2000 + 2000 + 1000 + 3000 - 300 + 3*q - 400, 1},
		{"closed", []Vec{V(0, 0), V(100, 0), V(100, 100), V(0, 100), V(0, 0)}, 8000 - 400 + 4*q, 1},
		{"a point", []Vec{V(5, 5)}, 0, 0},
		{"nothing", nil, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Strip(c.path, 20, 0.001)
			checkRegion(t, s)
			near(t, "area", float64(s.Area()), c.area, 0.1)
			if len(s.Pieces()) != c.pieces {
				t.Errorf("%d pieces, want %d", len(s.Pieces()), c.pieces)
			}
		})
	}
	if got, want := Strip([]Vec{V(0, 0), V(100, 0)}, 20, 1), Rect(V(0, -10), V(100, 10)); !reflect.DeepEqual(got, want) {
		t.Errorf("straight strip %v, want %v", got.Loops(), want.Loops())
	}
}

// TestFineness: a chord error below the grid makes no more corners than one of
// half a grid step.
func TestFineness(t *testing.T) {
	a, b := Circle(V(0, 0), 1000, 1e-12), Circle(V(0, 0), 1000, 0.0005)
	if !reflect.DeepEqual(a, b) {
		t.Errorf("%d corners, want %d", len(a.Loops()[0]), len(b.Loops()[0]))
	}
}

// TestSnap: points of the grid survive the way out and in, and crossings are
// rounded as big numbers say.
func TestSnap(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 38))
	for range 2000 {
		p := pt{r.Int64N(2*limit+1) - limit, r.Int64N(2*limit+1) - limit}
		if q, err := snap(p.vec()); err != nil || q != p {
			t.Fatalf("%v became %v, %v", p, q, err)
		}
	}
	for _, c := range []struct {
		d, num, den, want int64
	}{
		{10, 1, 2, 5}, {5, 1, 2, 3}, {-5, 1, 2, -2}, {-5, 3, 10, -1}, {5, 3, 10, 2}, {7, 0, 3, 0}, {7, 3, 3, 7}, {-7, 3, 3, -7},
		{2 * limit, 8e18 - 1, 8e18, 2 * limit}, {-2 * limit, 8e18 - 1, 8e18, -2 * limit}, {2 * limit, 1, 8e18, 0},
		{2 * limit, 4e18, 8e18, limit}, {2*limit - 1, 4e18, 8e18, limit}, {1 - 2*limit, 4e18, 8e18, 1 - limit},
	} {
		if got := scaled(c.d, c.num, c.den); got != c.want {
			t.Errorf("%d * %d / %d: %d, want %d", c.d, c.num, c.den, got, c.want)
		}
	}
}
