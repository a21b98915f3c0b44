package view

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

func TestOutline(t *testing.T) {
	cube := boxAt(0, 0, 0, 100, 100, 100).Faces
	ring := geom.Rect(geom.V(0, 0), geom.V(400, 300)).Minus(geom.Rect(geom.V(50, 50), geom.V(90, 90)))
	slab := natural(300, 40)
	for _, c := range []struct {
		name    string
		faces   []geom.Face
		look    Look
		loops   int
		corners int // of all loops; 0: not checked
		area    float64
	}{
		{"cube", cube, Plan(), 1, 4, 1e4},
		// A regular hexagon of side 100*sqrt(2/3): area 3*sqrt(3)/2 * side^2.
		{"cube", cube, Isometric(), 1, 6, 3 * math.Sqrt(3) / 2 * 1e4 * 2 / 3},
		{"frame", geom.Prism(ring, 0, 20, "edge").Faces(), Plan(), 2, 8, float64(ring.Area())},
		{"frame", geom.Prism(ring, 0, 20, "edge").Faces(), Front(), 1, 4, 400 * 20},
		{"frame cut", geom.Prism(ring, 0, 20, "edge").Faces(), Section(geom.Through(geom.V(0, 70), geom.V(1, 70))), 1, 4, 400 * 20},
		{"angle", ell(0, 0, 0, 500).Faces, FromRight(), 1, 6, 60*6 + 54*6},
		{"two apart", append(boxAt(0, 0, 0, 10, 10, 10).Faces, boxAt(20, 0, 0, 30, 10, 10).Faces...), Plan(), 2, 8, 200},
		{"two crossed", append(boxAt(0, 10, 0, 30, 20, 10).Faces, boxAt(10, 0, 20, 20, 30, 30).Faces...), Plan(), 1, 12, 500},
		{"natural edge", slab.Faces(), Plan(), 41, 0, float64(slab.At(700).Area())}, // it leans in everywhere,
	} {
		got := c.look.Outline(c.faces)
		corners := 0
		for _, l := range got {
			corners += len(l)
		}
		if len(got) != c.loops || c.corners > 0 && corners != c.corners {
			t.Errorf("%s, %v: %d loops of %d corners, want %d of %d", c.name, c.look, len(got), corners, c.loops, c.corners)
		}
		if a := area(got); math.Abs(a-c.area) > 1e-5*c.area {
			t.Errorf("%s, %v: area %v, want %v", c.name, c.look, a, c.area)
		}
	}
}

func TestNearest(t *testing.T) {
	v := Of(scene(boxAt(0, 0, 700, 1000, 600, 740), boxAt(200, 100, 640, 260, 500, 700), Item{}), Plan())
	for _, c := range []struct {
		item int
		to   geom.Vec
		want Anchor
		ok   bool
	}{
		{0, geom.V(300, -50), Anchor{geom.V(300, 0), Visible}, true},
		{0, geom.V(-50, -60), Anchor{geom.V(0, 0), Visible}, true},
		{0, geom.V(210, 300), Anchor{geom.V(0, 300), Visible}, true},
		{1, geom.V(-50, 300), Anchor{geom.V(200, 300), Hidden}, true},
		{2, geom.V(0, 0), Anchor{}, false},
	} {
		if got, ok := v.Nearest(c.item, c.to); got != c.want || ok != c.ok {
			t.Errorf("item %d, to %v: %v %v, want %v %v", c.item, c.to, got, ok, c.want, c.ok)
		}
	}
	// A hidden line is nearer, but there is a visible one.
	v = Of(scene(boxAt(0, 0, 700, 1000, 600, 740), boxAt(200, 100, 640, 260, 900, 700)), Plan())
	if got, _ := v.Nearest(1, geom.V(230, 0)); got.Kind != Visible || got.At.Y != 600 {
		t.Errorf("%v", got)
	}
}

func TestLines(t *testing.T) {
	// An isometric cube: the nine visible edges meet by threes in four of
	// their corners, and so make three lines of two and three of one.
	v := Of(scene(boxAt(0, 0, 0, 100, 100, 100)), Isometric())
	count := map[int]int{}
	for _, l := range v.Lines() {
		if l.Kind == Visible {
			count[len(l.Points)]++
		}
		if l.Closed {
			t.Errorf("closed: %v", l)
		}
	}
	if !reflect.DeepEqual(count, map[int]int{2: 3, 3: 3}) {
		t.Errorf("visible lines by number of points: %v", count)
	}
	// The natural edge is one line with all its stations, apart from the
	// straight sides.
	v = Of(scene(Item{Faces: natural(300, 0).Faces()}), Plan())
	long := 0
	for _, l := range v.Lines() {
		if len(l.Points) > 290 && l.Curved && l.Surface == "front" {
			long++
		}
	}
	if long != 2 { // upper and lower arris
		t.Errorf("%d lines along the natural edge, want 2", long)
	}
	// All lines together are all segments.
	v = Of(desk(), Isometric())
	sum := 0.0
	for _, l := range v.Lines() {
		pts := l.Points
		if l.Closed {
			pts = append(pts, pts[0])
		}
		for i := range pts[1:] {
			sum += float64(pts[i+1].Sub(pts[i]).Len())
		}
	}
	if want := total(v.Segments); math.Abs(sum-want) > 1e-6 {
		t.Errorf("lines of %v mm from segments of %v", sum, want)
	}
}

func TestSameSceneSameView(t *testing.T) {
	for _, l := range []Look{Plan(), Isometric(), PlanAt(720)} {
		a, b := Of(desk(), l), Of(desk(), l)
		if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(a.Lines(), b.Lines()) {
			t.Errorf("%v differs from one time to the next", l)
		}
	}
}

func TestSpans(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want []span
	}{
		{"touching", union([]span{{0.5, 0.7}, {0, 0.5}, {0.9, 1}}, 0), []span{{0, 0.7}, {0.9, 1}}},
		{"within", union([]span{{0, 1}, {0.2, 0.3}}, 0), []span{{0, 1}}},
		{"common", common(nil, []span{{0, 0.4}, {0.6, 1}}, []span{{0.2, 0.8}}), []span{{0.2, 0.4}, {0.6, 0.8}}},
		{"minus", minus(nil, whole, []span{{0, 0.2}, {0.4, 0.5}}), []span{{0.2, 0.4}, {0.5, 1}}},
		{"minus over", minus(nil, []span{{0.1, 0.2}, {0.5, 0.6}}, []span{{0, 0.3}, {0.55, 1}}), []span{{0.5, 0.55}}},
		{"minus nothing", minus(nil, whole, nil), whole},
		{"settle crumbs", settle([]span{{0.3, 0.3001}, {0.5, 0.6}}, 0.01), []span{{0.5, 0.6}}},
		{"settle crumbs in a row", settle([]span{{0.1, 0.106}, {0.106, 0.112}}, 0.01), []span{{0.1, 0.112}}},
		{"settle gaps", settle([]span{{0.005, 0.3}, {0.305, 0.995}}, 0.01), []span{{0, 1}}},
		{"settle a short line, little", settle([]span{{0.1, 0.3}}, 5), []span{}},
		{"settle a short line, much", settle([]span{{0.1, 0.8}}, 5), []span{{0, 1}}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestInLine(t *testing.T) {
	a, p := vertex{0, 0, 0}, vertex{10, 0, 0}
	for _, c := range []struct {
		b      vertex
		curved bool
		want   bool
	}{
		{vertex{20, 0, 0}, false, true},
		{vertex{20, 1e-6, 0}, false, true},
		{vertex{20, 1e-6, 0}, true, false}, // curves keep their corners
		{vertex{20, 1, 0}, false, false},
		{vertex{5, 0, 0}, false, false}, // back again
	} {
		if got := inLine(a, p, c.b, c.curved); got != c.want {
			t.Errorf("to %v, curved %v: %v", c.b, c.curved, got)
		}
	}
}

func ExampleOf() {
	box := func(x0, y0, z0, x1, y1, z1 unit.Length) []geom.Face {
		return geom.Prism(geom.Rect(geom.V(x0, y0), geom.V(x1, y1)), z0, z1, "side").Faces()
	}
	s := Scene{Items: []Item{
		{ID: "top", Faces: box(0, 0, 700, 1200, 600, 740)},
		{ID: "bracket", Faces: box(100, 80, 640, 160, 560, 700)},
	}}
	for _, l := range Of(s, Plan()).Lines() {
		fmt.Println(s.Items[l.Item].ID, l.Kind, l.Closed, l.Points)
	}
	// Output:
	// top visible true [{0 0} {1200 0} {1200 600} {0 600}]
	// bracket hidden true [{100 80} {160 80} {160 560} {100 560}]
}
