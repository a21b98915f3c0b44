package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// cornerBars are two angles in an inside corner at the origin: one along x,
// one along the direction theta, with the room between them.
func cornerBars(theta unit.Angle, s1, w1, s2, w2 unit.Length, section AngleBar) (Solid, Solid) {
	one, two := section, section
	one.SeatWidth, two.SeatWidth = w1, w2
	one.RoomLeft = true
	a := one.Solid().Place(Pose{At: Vec3{X: s1}})
	b := two.Solid().Place(Pose{At: V(s2, 0).Turn(theta).Up(0), Turn: theta})
	return a, b
}

// Ten cases of two wall angles in an inside corner, worked out by polygon
// intersection and by separating axes with the same result: corner angle in
// degrees, set-backs and leg widths, and the overlap or clearance of the level
// legs. The box of the overlap has its sides along the first wall.
func TestCornerCases(t *testing.T) {
	for _, c := range []struct {
		id, why        string
		theta          float64
		s1, w1, s2, w2 unit.Length
		free           bool
		area           float64
		box            []float64
		clearance      float64
	}{
		{"C1", "both cut 100 mm short and centred: the classic mistake", 90, 50, 60, 50, 60, false, 100.0, []float64{10.0, 10.0}, 0.0},
		{"C2", "one runs into the corner, the other butts: touching", 90, 60, 60, 0, 60, true, 0.0, nil, 0.0},
		{"C3", "as before with 3 mm", 90, 63, 60, 0, 60, true, 0.0, nil, 3.0},
		{"C4", "both set back 63: diagonal clearance 3*sqrt2", 90, 63, 60, 63, 60, true, 0.0, nil, 4.2426},
		{"C5", "acute corner 80 deg: 65 is not enough (needs 71.51)", 80, 65, 60, 65, 60, false, 35.5089, []float64{6.505, 6.406}, 0.0},
		{"C6", "88 deg instead of 90: 60 overlaps by a sliver", 88, 60, 60, 0, 60, false, 65.0517, []float64{2.132, 60.0}, 0.0},
		{"C7", "obtuse 120 deg: 30 too small (needs 34.64)", 120, 30, 60, 30, 60, false, 37.3067, []float64{6.962, 8.038}, 0.0},
		{"C8", "135 deg, one-sided 45 > 60 sin 135 = 42.43", 135, 45, 60, 0, 60, true, 0.0, nil, 2.5736},
		{"C9", "unequal legs, acute", 70, 100, 50, 20, 80, false, 15.2583, []float64{3.333, 9.157}, 0.0},
		{"C10", "unequal legs, obtuse", 105, 20, 60, 55, 40, true, 0.0, nil, 2.2208},
	} {
		for _, section := range []AngleBar{
			{WallWidth: 60, Thickness: 6, Length: 700},
			{WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 700},
			{WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 700, LegUp: true},
		} {
			t.Run(fmt.Sprintf("%s %v", c.id, section), func(t *testing.T) {
				one, two := cornerBars(unit.Angle(c.theta)*unit.Degree, c.s1, c.w1, c.s2, c.w2, section)
				g := Clearance(one, two)
				if g.Err != nil {
					t.Fatal(g.Err)
				}
				if free := g.Distance >= 0; free != c.free {
					t.Errorf("%s: distance %g", c.why, g.Distance)
				}
				near(t, "overlap area", float64(g.Overlap.Area()), c.area, 0.08) // of slivers 60 mm long, to the grid
				if c.free {
					near(t, "clearance", float64(g.Distance), c.clearance, 2e-3)
					near(t, "distance of the places", float64(g.A.Sub(g.B).Len()), c.clearance, 2e-3)
					return
				}
				lo, hi := g.Overlap.Bounds()
				near(t, "overlap along the wall", float64(hi.X-lo.X), c.box[0], 2e-3)
				near(t, "overlap across the wall", float64(hi.Y-lo.Y), c.box[1], 2e-3)
				near(t, "height", float64(g.Height), 6, 0.1*float64(section.Toe)+1e-9) // less at a round toe
				near(t, "distance", float64(g.Distance), -float64(min(g.Height, g.Plan)), 1e-9)
				if g.Plan > unit.Length(min(c.box[0], c.box[1]))+0.002 || g.A != g.B || !g.Overlap.Contains(g.A.Flat()) {
					t.Errorf("overlap in plan %g at %v", g.Plan, g.A)
				}
			})
		}
	}
}

// The classic mistake in numbers: two 60 mm legs set back by 50 mm overlap by
// 10 x 10 mm, 6 mm high.
func TestClassicMistake(t *testing.T) {
	one, two := cornerBars(90*unit.Degree, 50, 60, 50, 60, bar60())
	g := Clearance(one, two)
	near(t, "plan", float64(g.Plan), 10, 1e-3)
	near(t, "height", float64(g.Height), 6, 1e-9)
	near(t, "distance", float64(g.Distance), -6, 1e-9)
}

// Set-backs of two 60 mm legs for a true clearance of 3 mm: both alike, or the
// first alone with the other leg running into the corner as far as the walls
// let it. By formula: s = w cot(theta/2) + g/(2 sin(theta/2)); and
// (w2 + w1 cos theta + g)/sin theta, from 90 degrees on w2 sin theta + g.
func TestSetBacks(t *testing.T) {
	for _, c := range [][3]float64{{60, 106.92, 107.39}, {65, 96.97, 97.49}, {70, 88.3, 88.88}, {75, 80.66, 81.3},
		{80, 73.84, 74.55}, {85, 67.7, 68.49}, {88, 64.29, 65.13}, {90, 62.12, 63.0}, {92, 60.03, 62.96}, {95, 57.01, 62.77},
		{100, 52.3, 62.09}, {105, 47.93, 60.96}, {110, 43.84, 59.38}, {115, 40.0, 57.38}, {120, 36.37, 54.96},
		{125, 32.93, 52.15}, {130, 29.63, 48.96}, {135, 26.48, 45.43}} {
		theta := unit.Angle(c[0]) * unit.Degree
		alike := unit.Length(c[1])
		one, two := cornerBars(theta, alike, 60, alike, 60, bar60())
		near(t, fmt.Sprint(c[0], " degrees, both"), float64(Clearance(one, two).Distance), 3, 0.01)
		start := unit.Length(max(0, 60/math.Tan(float64(theta))))
		one, two = cornerBars(theta, unit.Length(c[2]), 60, start, 60, bar60())
		near(t, fmt.Sprint(c[0], " degrees, one"), float64(Clearance(one, two).Distance), 3, 0.01)
	}
}

func TestClearanceByHand(t *testing.T) {
	slab := plank(1000, 600, 40)
	slab.Bottom, slab.Top = 700, 740
	top := slab.Solid()
	box := func(x, y, z, l, d, h unit.Length) Solid { return Prism(Rect(V(x, y), V(x+l, y+d)), z, z+h, "box") }
	leaning := plank(1000, 600, 40)
	leaning.Outline[0].Lean = 30 // 3 : 4 over the thickness
	holed := slab
	holed.Cuts = []SlabCut{{Name: "hole", Region: Rect(V(100, 100), V(200, 200)), From: CutThrough}}
	for _, c := range []struct {
		name               string
		a, b               Solid
		want, plan, height float64
		within             float64
	}{
		{"above", top, box(100, 100, 760, 50, 50, 50), 20, 0, 0, 0},
		{"on it", top, box(100, 100, 740, 50, 50, 50), 0, 0, 0, 0},
		{"beside", top, box(1003, 100, 700, 50, 50, 50), 3, 0, 0, 0},
		{"askew", top, box(1003, 100, 744, 50, 50, 50), 5, 0, 0, 0},
		{"corner", top, box(1002, 603, 746, 50, 50, 50), 7, 0, 0, 0}, // 2, 3, 6, 7
		{"through", top, box(100, 100, 600, 20, 50, 300), -20, 20, 40, 0},
		{"into", top, box(100, 100, 735, 50, 80, 300), -5, 50, 5, 0},
		{"in a hole", holed.Solid(), box(110, 110, 600, 85, 20, 500), 5, 0, 0, 0},
		{"grid", top, box(999.998, 100, 600, 50, 50, 500), 0, 0, 0, 0},
		// A level line 20 mm in front of the lower arris is 20 * 4/5 off the slope.
		{"slope", leaning.Solid(), box(0, -50, -10, 1000, 30, 10), 16, 0, 0, 2 * float64(SliceTolerance)},
		{"lying rods", Rod(Vec3{0, 0, 0}, Vec3{500, 0, 0}, 6, 0.01), Rod(Vec3{200, -300, 20}, Vec3{200, 300, 20}, 6, 0.01), 8, 0, 0, 2*float64(SliceTolerance) + 0.02},
		{"upright rods", Rod(Vec3{0, 0, 0}, Vec3{0, 0, 500}, 6, 0.01), Cylinder(V(30, 40), 6, 0, 100, 0.01, "c"), 38, 0, 0, 0.02},
	} {
		for _, swap := range []bool{false, true} {
			a, b := c.a, c.b
			if swap {
				a, b = b, a
			}
			p := Pose{At: Vec3{123, -456, 78}, Turn: 0.7}
			for _, pair := range [][2]Solid{{a, b}, {a.Place(p), b.Place(p)}} {
				g := Clearance(pair[0], pair[1])
				within := c.within + 3e-3
				near(t, c.name, float64(g.Distance), c.want, within)
				near(t, c.name+" plan", float64(g.Plan), c.plan, within)
				near(t, c.name+" height", float64(g.Height), c.height, within)
				if float64(g.Distance) > c.want+0.025 {
					t.Errorf("%s: distance %g is too large", c.name, g.Distance)
				}
				if g.Distance >= 0 {
					near(t, c.name+" places", float64(g.A.Sub(g.B).Len()), float64(g.Distance), 1e-6)
				}
				if low := pair[0].Bounds().Gap(pair[1].Bounds()); low > max(g.Distance, 0)+2*SliceTolerance {
					t.Errorf("%s: boxes %g apart, bodies %g", c.name, low, g.Distance)
				}
			}
		}
	}
}

func TestClearanceZone(t *testing.T) {
	top := plank(1000, 600, 40).Solid().Place(Pose{At: Vec3{Z: 700}})
	knees := Zone{"knees", []Layer{{Rect(V(300, -200), V(700, 400)), 0, 640}, {Rect(V(350, -200), V(650, 300)), 600, 690}}}
	near(t, "knees", float64(ClearanceZone(top, knees).Distance), 10, 1e-9)
	knees.Layers[1].Z1 = 712
	g := ClearanceZone(top, knees)
	near(t, "knees under a lower slab", float64(g.Distance), -12, 1e-9)
	near(t, "overlap", float64(g.Overlap.Area()), 300*300, 1e-6)
	for _, g := range []Gap3{
		ClearanceZone(Solid{}, knees),
		ClearanceZone(top, Zone{Name: "empty"}),
		ClearanceZone(top, Zone{"faulty", []Layer{{Circle(V(0, 0), -1, 1), 0, 1}}}),
		ClearanceZone(top, Zone{"upside down", []Layer{{Rect(V(0, 0), V(1, 1)), 1, 0}}}),
		Clearance(top, Rod(Vec3{}, Vec3{}, 1, 1)),
	} {
		if g.Err == nil || !math.IsNaN(float64(g.Distance)) {
			t.Errorf("a gap to nothing: %+v", g)
		}
	}
}

// Lying rods against their axes: the distance of two segments less the radii.
func TestClearanceOfRods(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 0))
	for i := range 40 {
		steep := 8. // nearly level
		if i%8 == 0 {
			steep = 200
		}
		var ends [4]Vec3
		for j := range ends {
			ends[j] = Vec3{pick(r, -200, 200), pick(r, -200, 200), pick(r, -steep, steep)}
		}
		r1, r2 := pick(r, 3, 12), pick(r, 3, 12)
		g := Clearance(Rod(ends[0], ends[1], r1, 0.02), Rod(ends[2], ends[3], r2, 0.02))
		// Flat ends reach less far than round ones, by at most the radius.
		axes := segmentDistance(ends)
		if exact := float64(axes - r1 - r2); exact > 0 && steep < 100 && float64(g.Distance) < exact-2*float64(SliceTolerance)-0.05 {
			t.Errorf("distance %g, at least %g between the rods", g.Distance, exact)
		}
		if float64(g.Distance) > float64(axes) {
			t.Errorf("distance %g, but %g between the axes", g.Distance, axes)
		}
	}
}

// segmentDistance searches the least distance of two segments, which is a
// convex function of the two places.
func segmentDistance(e [4]Vec3) unit.Length {
	at := func(s float64) unit.Length {
		p := e[0].Add(e[1].Sub(e[0]).Mul(s))
		d := e[3].Sub(e[2])
		t := min(max(p.Sub(e[2]).Dot(d)/d.Dot(d), 0), 1)
		return p.Sub(e[2].Add(d.Mul(t))).Len()
	}
	lo, hi := 0., 1.
	for range 100 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if at(a) < at(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return at(lo)
}
