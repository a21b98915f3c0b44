package view

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

func TestLooks(t *testing.T) {
	p := geom.Vec3{X: 300, Y: 500, Z: 700}
	wall := geom.Through(geom.V(100, 100), geom.V(100, 900)) // the left wall, walked towards the back
	for _, c := range []struct {
		look  Look
		name  string
		at    geom.Vec
		depth unit.Length
	}{
		{Plan(), "plan", geom.V(300, 500), 700},
		{PlanAt(650), "plan section", geom.V(300, 500), 50},
		{Below(), "from below", geom.V(300, -500), -700},
		{Front(), "front", geom.V(300, 700), -500},
		{FromLeft(), "from the left", geom.V(-500, 700), -300},
		{FromRight(), "from the right", geom.V(500, 700), 300},
		{Facing(wall), "elevation", geom.V(400, 700), 200},
		{Section(wall), "section", geom.V(400, 700), 200},
		{Isometric(), "isometric", geom.V(800/unit.Length(math.Sqrt2), 700*unit.Length(math.Sqrt(2.0/3))+200/unit.Length(math.Sqrt(6))), 500 / unit.Length(math.Sqrt(3))},
		{Axonometric(0, 0), "axonometric", geom.V(300, 700), -500},
		{Axonometric(math.Pi/2, 0), "axonometric", geom.V(500, 700), 300},
		{Axonometric(0, math.Pi/2), "axonometric", geom.V(300, 500), 700},
	} {
		if got := c.look.Project(p); got.Sub(c.at).Len() > 1e-9 {
			t.Errorf("%v: %v, want %v", c.look, got, c.at)
		}
		if got := c.look.Depth(p); math.Abs(float64(got-c.depth)) > 1e-9 {
			t.Errorf("%v: depth %v, want %v", c.look, got, c.depth)
		}
		if c.look.String() != c.name {
			t.Errorf("%q, want %q", c.look, c.name)
		}
		// A look must not mirror the room.
		if hand := c.look.right.Cross(c.look.up).Sub(c.look.out).Len(); hand > 1e-12 {
			t.Errorf("%v is not right-handed", c.look)
		}
	}
	if !PlanAt(0).Cuts() || !Section(wall).Cuts() || Facing(wall).Cuts() || Plan().Cuts() {
		t.Error("wrong looks cut")
	}
}

func TestBadInput(t *testing.T) {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	good := boxAt(0, 0, 0, 10, 10, 10)
	for _, x := range []unit.Length{nan, inf, -inf, 1e200, 1e19, 1e-200} {
		bad := boxAt(0, 0, 0, 10, 10, 10)
		for i := range bad.Faces {
			bad.Faces[i].Loops = append([][]geom.Vec3(nil), bad.Faces[i].Loops...)
			loop := append([]geom.Vec3(nil), bad.Faces[i].Loops[0]...)
			loop[0].Y = x
			bad.Faces[i].Loops[0] = loop
		}
		for _, l := range []Look{Plan(), Front(), Isometric(), PlanAt(5), PlanAt(x), Section(geom.Line{P: geom.V(x, 0), D: geom.V(0, 1)})} {
			for _, seg := range Of(scene(good, bad), l).Segments {
				if seg.Item == 1 && !(math.Abs(float64(seg.A.X)) < farthest) {
					t.Errorf("%v: a line at %v", l, seg)
				}
			}
		}
		if x != 1e-200 {
			wantLines(t, Of(scene(good, bad), Plan()), 0, Visible, 4, 40)
		}
	}
	for _, v := range []View{
		Of(Scene{}, Plan()),
		Of(scene(Item{}), Front()),
		Of(scene(good), Facing(geom.Line{})),
		Of(scene(good), PlanAt(-5)),
		Of(scene(Item{Faces: []geom.Face{{Loops: [][]geom.Vec3{{}, {{X: 1}}, {{X: 1}, {Y: 1}}}}, {}}}), Plan()),
	} {
		if len(v.Segments) != 0 || len(v.Cuts) != 0 || v.Bounds != (View{}).Bounds {
			t.Errorf("not empty: %+v", v)
		}
	}
}
