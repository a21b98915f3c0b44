package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slabwright/model/unit"
)

func TestLevelSections(t *testing.T) {
	s := plank(1000, 600, 40)
	s.Outline[0].Lean = 10
	s.Cuts = []SlabCut{
		{Name: "pocket", Region: Rect(V(100, 100), V(200, 150)), Depth: 15},
		{Name: "sink", Region: Rect(V(300, 100), V(310, 110)), From: CutThrough, Mouth: Bevel{4, 4}},
	}
	solid := s.Solid().Place(Pose{At: Vec3{Z: 700}})
	for _, c := range []struct{ z, area float64 }{
		{699.9, 0},
		{700, 600000 - 100},
		{720, 605000 - 100},
		{725, 606250 - 100 - 5000}, // the floor itself: as just above it
		{738, 609500 - 14*14 - 5000},
		{740, 610000 - 18*18 - 5000}, // the top face: as just below it
		{740.1, 0},
	} {
		near(t, fmt.Sprint("area at ", c.z), float64(solid.At(unit.Length(c.z)).Area()), c.area, 1)
	}
	foot := solid.Footprint()
	near(t, "footprint", float64(foot.Area()), 610000-100, 1)
	lo, hi := foot.Bounds()
	if lo != V(0, -10) || hi != V(1000, 600) {
		t.Errorf("footprint from %v to %v", lo, hi)
	}
}

func TestUprightSections(t *testing.T) {
	slab := plank(1000, 600, 40)
	slab.Outline[0].EaseTop = 4
	slab.Cuts = []SlabCut{{Name: "g", Region: Rect(V(100, 100), V(200, 150)), From: CutFromUnder, Depth: 15}}
	bar := bar60()
	bar.Holes = []BarHole{{Name: "a", X: 500, FromHeel: 30, Dia: 10}, {Name: "b", Leg: WallLeg, X: 500, FromHeel: 40, Dia: 8}}
	section := float64(bar.SectionArea())
	for _, c := range []struct {
		name string
		s    Solid
		l    Line
		area float64
		lo   Vec
		hi   Vec
	}{
		{"slab across", slab.Solid(), Through(V(150, 0), V(150, 1)), 600*40 - 8 - 50*15, V(0, 0), V(600, 40)},
		{"slab along", slab.Solid(), Through(V(0, 120), V(1, 120)), 1000*40 - 100*15, V(0, 0), V(1000, 40)},
		{"slab backwards", slab.Solid(), Through(V(0, 120), V(-1, 120)), 1000*40 - 100*15, V(-1000, 0), V(0, 40)},
		{"beside", slab.Solid(), Through(V(0, 700), V(1, 700)), 0, Vec{}, Vec{}},
		// In the plane of the groove's side: as just to the left of the line.
		{"on a side, inside", slab.Solid(), Through(V(100, 0), V(100, -1)), 600*40 - 8 - 50*15, V(-600, 0), V(0, 40)},
		{"on a side, outside", slab.Solid(), Through(V(100, 0), V(100, 1)), 600*40 - 8, V(0, 0), V(600, 40)},
		{"angle across", bar.Solid(), Through(V(200, 0), V(200, 1)), section, V(-60, -60), V(0, 0)},
		{"angle across its holes", bar.Solid(), Through(V(500, 0), V(500, 1)), section - 10*6 - 8*6, V(-60, -60), V(0, 0)},
		{"angle along", bar.Solid(), Through(V(0, -30), V(1, -30)), 6 * 990, V(0, -6), V(1000, 0)},
		{"rod along", Rod(Vec3{0, 0, 50}, Vec3{100, 0, 50}, 6, 0.01), Through(V(0, 0), V(1, 0)), 1200, V(0, 44), V(100, 56)},
	} {
		for _, p := range []Pose{{}, {At: Vec3{333, -77, 700}, Turn: 0.6}} {
			l := Line{p.Plan(c.l.P), c.l.D.Turn(p.Turn)}
			r := c.s.Place(p).Cut(l)
			near(t, c.name+" area", float64(r.Area()), c.area, 0.002*c.area)
			lo, hi := r.Bounds()
			lo, hi = lo.Sub(V(0, p.At.Z)), hi.Sub(V(0, p.At.Z))
			if c.area > 0 && lo.Sub(c.lo).Len()+hi.Sub(c.hi).Len() > 0.03 {
				t.Errorf("%s: from %v to %v", c.name, lo, hi)
			}
		}
	}
	if slab.Solid().Cut(Line{}).Err() == nil || !(Solid{}).Cut(Through(V(0, 0), V(1, 0))).Empty() || !(Solid{}).At(0).Empty() {
		t.Error("a section that cannot be")
	}
}

// The volume is the sum of the level sections: Simpson's rule between the
// heights of the corners, a hair inside.
func TestSectionsSumUpToVolume(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 0))
	for i := range 60 {
		var s Solid
		if i%2 == 0 {
			s = randomSlab(r).Solid()
		} else {
			s = randomBar(r).Solid()
		}
		if s.Err() != nil {
			continue
		}
		var zs []float64
		for _, f := range s.Faces() {
			for _, v := range f.Loops[0] {
				zs = append(zs, float64(v.Z))
			}
		}
		slices.Sort(zs)
		sum := 0.0
		for j := range zs[1:] {
			a, b := zs[j]+1e-5, zs[j+1]-1e-5
			if b > a {
				area := func(z float64) float64 { return float64(s.At(unit.Length(z)).Area()) }
				sum += (b - a + 2e-5) / 6 * (area(a) + 4*area((a+b)/2) + area(b))
			}
		}
		near(t, fmt.Sprint("solid ", i), sum, float64(s.Volume()), 2e-4*float64(s.Volume())) // areas to the grid
	}
}

// Layers hold the whole solid and not much more.
func TestLayersHoldTheSolid(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 0))
	for i := range 40 {
		s := randomSlab(r).Solid()
		if i%2 == 0 {
			b := randomBar(r)
			b.Holes = nil
			s = b.Solid()
		}
		if s.Err() != nil {
			continue
		}
		top := unit.Length(math.Inf(-1))
		volume := 0.0
		for _, l := range s.Layers() {
			if l.Z0 < top-1e-9 || l.Z1 <= l.Z0 {
				t.Fatalf("layers overlap at %g", l.Z0)
			}
			top = l.Z1
			volume += float64(l.Region.Area()) * float64(l.Z1-l.Z0)
			if out := l.Region.Minus(s.Footprint().Grow(0.002, 0.001)); !out.Empty() {
				t.Fatalf("solid %d at %g: %g mm2 of its layer outside the footprint", i, l.Z0, out.Area())
			}
			for k := range 3 {
				z := l.Z0 + (l.Z1-l.Z0)*unit.Length(0.1+0.4*float64(k))
				if out := s.At(z).Minus(l.Region.Grow(0.002, 0.001)); !out.Empty() {
					t.Fatalf("solid %d at %g: %g mm2 outside its layer", i, z, out.Area())
				}
			}
		}
		if v := float64(s.Volume()); volume < v-2e-4*v { // to the grid
			t.Errorf("solid %d: layers hold %g of %g mm3", i, volume, v)
		}
	}
}

func TestStacked(t *testing.T) {
	steps := Stacked("steps",
		Layer{Rect(V(0, 0), V(100, 100)), 0, 20},
		Layer{Rect(V(20, 20), V(80, 150)), 10, 50},
		Layer{Rect(V(30, 30), V(40, 40)), 60, 70},
		Layer{Circle(V(60, 60), 15, 0.05), 50, 70})
	closed(t, steps)
	near(t, "volume", float64(steps.Volume()), 100*100*10+(100*100+60*50)*10+60*130*30+1000+15*15*math.Pi*20, 1)
	near(t, "footprint", float64(steps.Footprint().Area()), 100*100+60*50, 1e-9)
	holed := Prism(Rect(V(0, 0), V(100, 100)).Minus(Circle(V(50, 50), 20, 0.05), Rect(V(5, 5), V(10, 10))), -5, 5, "plate")
	closed(t, holed)
	near(t, "holed", float64(holed.Volume()), 10*(10000-400*math.Pi-25), 0.5)
	closed(t, Cylinder(V(1, 2), 30, 0, 100, 0.01, "column").Place(Pose{Turn: 1}))
	for _, s := range []Solid{Stacked("none"), Stacked("flat", Layer{Rect(V(0, 0), V(1, 1)), 5, 5}),
		Prism(Rect(V(0, 0), V(1, 1)).Union(Rect(V(1, 1), V(2, 2))), 0, 1, "touching"),
		steps.Place(Pose{At: Vec3{X: unit.Length(math.NaN())}})} {
		if s.Err() == nil {
			t.Error("a solid that cannot be made was made")
		}
	}
}

func TestSurfaceNames(t *testing.T) {
	s := plank(1000, 600, 40)
	s.Outline[0].EaseTop = 4
	s.Cuts = []SlabCut{{Name: "hole", Region: Circle(V(100, 100), 10, 0.05), From: CutThrough, Mouth: Bevel{3, 3}},
		{Name: "pocket", Region: Rect(V(300, 100), V(400, 200)), From: CutFromUnder, Depth: 10}}
	got := map[string]bool{}
	for _, f := range s.Solid().Faces() {
		got[f.Surface] = true
		if round := f.Surface == "hole" || f.Surface == "hole arris"; f.Curved != round {
			t.Errorf("%q: curved %v", f.Surface, f.Curved)
		}
	}
	for _, name := range []string{"top", "underside", "front", "front arris", "right", "back", "left",
		"hole", "hole arris", "pocket", "pocket 2", "pocket 3", "pocket 4", "pocket floor"} {
		if !got[name] {
			t.Errorf("no face %q", name)
		}
		delete(got, name)
	}
	if len(got) > 0 {
		t.Errorf("more faces: %v", got)
	}
}
