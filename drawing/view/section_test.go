package view

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

func TestSection(t *testing.T) {
	s := scene(
		boxAt(0, 0, 0, 300, 100, 40),    // cut
		boxAt(0, 20, 40, 150, 60, 90),   // in front of the plane, touching
		boxAt(150, 40, 40, 300, 80, 70), // behind it, touching
		boxAt(250, 50, -30, 280, 90, 0), // behind it
		ell(100, 0, 100, 200),           // cut
	)
	// Looking to the right: the line runs towards the viewer's right, -y.
	l := Section(geom.Through(geom.V(150, 0), geom.V(150, -10)))
	v := Of(s, l)
	if len(v.Cuts) != 2 || v.Cuts[0].Item != 0 || v.Cuts[1].Item != 4 {
		t.Fatalf("cuts: %+v", v.Cuts)
	}
	if a, b := area(v.Cuts[0].Loops), area(v.Cuts[1].Loops); a != 100*40 || b != 60*6+54*6 {
		t.Errorf("areas %v and %v", a, b)
	}
	if n := len(v.Cuts[1].Loops[0]); n != 6 {
		t.Errorf("the angle's cut has %d corners, want 6", n)
	}
	wantLines(t, v, 0, Cut, 4, 280)
	wantLines(t, v, 0, Visible, 0, 0) // its far end falls together with the cut
	if n := len(pick(v, 1, Visible)) + len(pick(v, 1, Hidden)); n > 0 {
		t.Errorf("%d lines of the part in front of the plane", n)
	}
	wantLines(t, v, 2, Visible, 3, 40+30+30) // it only touches: seen, not cut
	wantLines(t, v, 3, Visible, 3, 40+30+30)
	wantLines(t, v, 4, Cut, 6, 240)
	if v.Bounds.Min != geom.V(-100, -30) || v.Bounds.Max != geom.V(0, 160) {
		t.Errorf("bounds %+v", v.Bounds)
	}
}

// Faces that rounding has put off their plane by next to nothing leave no
// corners in a cut.
func TestSectionOfTurnedAngle(t *testing.T) {
	flange := geom.Layer{Region: geom.Rect(geom.V(0, 0), geom.V(500, 60)), Z0: 54, Z1: 60}
	leg := geom.Layer{Region: geom.Rect(geom.V(0, 54), geom.V(500, 60)), Z0: 0, Z1: 54}
	pose := geom.Pose{At: geom.Vec3{X: 1234.567, Y: 321.123, Z: 640.1}, Turn: 0.3217}
	s := scene(Item{Faces: geom.Stacked("angle", flange, leg).Place(pose).Faces()})
	v := Of(s, Section(geom.Through(pose.Plan(geom.V(250, 100)), pose.Plan(geom.V(250, 0)))))
	if len(v.Cuts) != 1 || len(v.Cuts[0].Loops) != 1 || len(v.Cuts[0].Loops[0]) != 6 {
		t.Errorf("cuts %+v, want one of six corners", v.Cuts)
	}
	wantLines(t, v, 0, Cut, 6, 240)
}

// A part of two bodies, of which one is cut and the other only touches.
func TestSectionOfTwoBodies(t *testing.T) {
	two := Item{Faces: append(boxAt(0, 0, 0, 300, 100, 40).Faces, boxAt(150, 0, 60, 200, 100, 90).Faces...)}
	v := Of(scene(two), Section(geom.Through(geom.V(150, 0), geom.V(150, -10))))
	if len(v.Cuts) != 1 || area(v.Cuts[0].Loops) != 4000 {
		t.Errorf("cuts %+v", v.Cuts)
	}
	wantLines(t, v, 0, Cut, 4, 280)
	wantLines(t, v, 0, Visible, 4, 260)
}

func TestSectionHidesWhatIsBehind(t *testing.T) {
	// A bar within the length of the cut slab's height range, behind the lid.
	s := scene(boxAt(0, 0, 0, 300, 100, 40), boxAt(400, 30, 10, 500, 60, 30))
	v := Of(s, Section(geom.Through(geom.V(100, 0), geom.V(100, -1))))
	wantLines(t, v, 1, Hidden, 4, 100)
	wantLines(t, v, 1, Visible, 0, 0)
}

func TestSectionAgreesWithKernel(t *testing.T) {
	solid := natural(120, 60)
	if err := solid.Err(); err != nil {
		t.Fatal(err)
	}
	s := scene(Item{Faces: solid.Faces()})
	for _, line := range []geom.Line{
		geom.Through(geom.V(77, 800), geom.V(77, -200)),    // through two holes
		geom.Through(geom.V(1234.5, -50), geom.V(1, 900)),  // slanting
		geom.Through(geom.V(-100, 2), geom.V(2500, 2)),     // in and out of the natural edge
		geom.Through(geom.V(-100, 400), geom.V(2500, 400)), // through a row of holes
	} {
		v := Of(s, Section(line))
		cut := solid.Cut(line)
		if len(v.Cuts) != 1 {
			t.Fatalf("%+v: %d cuts", line, len(v.Cuts))
		}
		got, want := area(v.Cuts[0].Loops), float64(cut.Area())
		if math.Abs(got-want) > 1e-5*want {
			t.Errorf("%+v: area %v, the kernel says %v", line, got, want)
		}
		if n, m := len(v.Cuts[0].Loops), len(cut.Loops()); n != m {
			t.Errorf("%+v: %d loops, the kernel says %d", line, n, m)
		}
	}
	for _, z := range []unit.Length{700.5, 722, 744.9} {
		v := Of(s, PlanAt(z))
		got, want := area(v.Cuts[0].Loops), float64(solid.At(z).Area())
		if math.Abs(got-want) > 1e-5*want {
			t.Errorf("at %v: area %v, the kernel says %v", z, got, want)
		}
	}
}

func TestSectionOfOpenSkin(t *testing.T) {
	wall := geom.Face{Loops: [][]geom.Vec3{{{X: 0}, {X: 1000}, {X: 1000, Z: 2500}, {X: 0, Z: 2500}}}, Normal: geom.Vec3{Y: -1}, Surface: "wall"}
	v := Of(scene(Item{Role: Wall, Faces: []geom.Face{wall}}), Section(geom.Through(geom.V(500, -100), geom.V(500, 100))))
	if len(v.Cuts) != 0 {
		t.Errorf("a sheet without thickness gives a cut area: %+v", v.Cuts)
	}
	wantLines(t, v, 0, Cut, 1, 2500)
}

// The parts on both sides of a clip add up to the whole, also where the plane
// runs through corners and along sides.
func TestClipAddsUp(t *testing.T) {
	flat := func(pts ...float64) (l []vertex) {
		for i := 0; i < len(pts); i += 2 {
			l = append(l, vertex{pts[i], pts[i+1], 7})
		}
		return l
	}
	loops := [][]vertex{
		flat(0, 0, 40, 0, 40, 10, 20, 10, 20, 20, 50, 20, 60, 30, 30, 50, 10, 40, 0, 40),
		flat(5, 5, 5, 8, 10, 8, 10, 5),
		flat(20, 25, 15, 30, 20, 35, 25, 30),
	}
	size := func(loops [][]vertex) float64 {
		sum := 0.0
		for _, l := range loops {
			for i, p := range l {
				sum += p.cross(l[(i+1)%len(l)]).w / 2
			}
		}
		return sum
	}
	whole := size(loops)
	for c := -2.5; c <= 65; c += 2.5 {
		for _, x := range []axis{alongU, alongV} {
			low, a := clip(loops, vertex{w: 1}, x, c, false)
			high, b := clip(loops, vertex{w: 1}, x, c, true)
			if got := size(low) + size(high); math.Abs(got-whole) > 1e-9 {
				t.Errorf("axis %d at %v: %v and %v, together not %v", x, c, size(low), size(high), whole)
			}
			for _, p := range low {
				for _, q := range p {
					if x.of(q) > c {
						t.Errorf("axis %d at %v: %v is beyond", x, c, q)
					}
				}
			}
			for i := range a {
				if len(a) != len(b) || a[i].from != b[i].to && a[i].from != b[i].from {
					t.Errorf("axis %d at %v: seams %v and %v", x, c, a, b)
				}
			}
		}
	}
}
