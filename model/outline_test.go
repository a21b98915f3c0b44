package model_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// niche describes a worktop in front of a niche and the infill in it.
func niche(r *model.Room, side, back, joint, depth unit.Length, front model.FrontEdge) *model.Design {
	d := model.NewDesign("niche", r)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(r.Wall("left"), r.Wall("right")).Against(r.Straight("B", "G")).
		Gaps(side, back).Depth(depth).Front(front).SurfaceAt(755))
	d.Add("infill", model.Slab(stock.Ash, 45).
		Between(r.Wall("niche left"), r.Wall("niche right")).Against(r.Wall("niche back")).
		Gaps(side, back).Meeting("worktop", joint).SurfaceAt(755))
	return d
}

// TestSlabsKeepTheirGaps holds the outlines of slabs in crooked rooms against
// the faces of the walls, by distances of its own.
func TestSlabsKeepTheirGaps(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 4))
	for i := range 150 {
		spots, walls := crooked(rnd)
		r := roomAt(t, false, spots, walls...)
		side, back, joint := unit.Length(1+5*rnd.Float64()), unit.Length(1+7*rnd.Float64()), unit.Length(2*rnd.Float64())
		depth := unit.Length(500 + 400*rnd.Float64())
		d := niche(r, side, back, joint, depth, model.NaturalEdge(randomStations(rnd)...))
		sound(t, d)
		if t.Failed() {
			t.Fatalf("room %d", i)
		}
		for _, id := range []string{"worktop", "infill"} {
			p := d.Part(id)
			sp := p.Slab
			for z, outline := range map[unit.Length]geom.Region{sp.Top: sp.TopOutline(), sp.Top - sp.Thickness: sp.UnderOutline()} {
				loop := outline.Place(sp.Pose).Loops()[0]
				plan := r.Plan(z).Loops()[0]
				if got := between(loop, plan, true, true); got < float64(min(side, back))-0.01 {
					t.Errorf("room %d, %s at %v: %.3f mm from the walls, gaps are %.3f and %.3f", i, id, z, got, side, back)
				}
				for _, v := range loop {
					if !within(v, plan) {
						t.Errorf("room %d, %s at %v: corner %v is outside the room", i, id, z, v)
					}
				}
				for _, e := range sp.Edges {
					if e.Bound != model.ToWall {
						continue
					}
					for _, w := range wallsOf(r, e.To) {
						if got := between(loop, w.Face(z), true, false); got < float64(e.Gap)-0.01 {
							t.Errorf("room %d, %s, edge %s at %v: %.3f mm from %s, gap is %.3f", i, id, e.Name, z, got, w.Name, e.Gap)
						}
					}
				}
			}
		}
		if t.Failed() {
			return
		}
	}
}

// wallsOf gives the walls behind a bound: one, or all along a straight line.
func wallsOf(r *model.Room, to string) []*model.Wall {
	if to == "B-G" {
		return r.Walls[1:6]
	}
	return []*model.Wall{r.Wall(to)}
}

// randomStations is a natural edge over 4 m, up to 40 mm beyond its line.
func randomStations(rnd *rand.Rand) []model.NaturalStation {
	var out []model.NaturalStation
	for x := unit.Length(0); x < 4000; x += unit.Length(150 + 500*rnd.Float64()) {
		out = append(out, model.NaturalStation{Along: x, Top: unit.Length(40 * rnd.Float64()), Under: unit.Length(40 * rnd.Float64())})
	}
	return out
}

// TestInfillLiesInItsNiche looks at where slabs meet: the infill's back corners
// are between the cheeks, and no wood is claimed twice.
func TestInfillLiesInItsNiche(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 4))
	for i := range 150 {
		spots, walls := crooked(rnd)
		r := roomAt(t, false, spots, walls...)
		joint := unit.Length(0.2 + 2*rnd.Float64())
		d := niche(r, 3, 4, joint, 700, model.FrontEdge{})
		sound(t, d)
		top, infill := d.Part("worktop").Outline(), d.Part("infill").Outline()
		if a := top.Intersect(infill).Area(); a > 0 {
			t.Errorf("room %d: worktop and infill share %v mm2", i, a)
		}
		near(t, "joint", between(top.Loops()[0], infill.Loops()[0], true, true), float64(joint), 0.003)
		mouth := []geom.Vec{spots[2].at, spots[3].at, spots[4].at, spots[5].at} // C, D, E, F
		sp := d.Part("infill").Slab
		for _, e := range sp.Edges {
			if e.Name != "back" {
				continue
			}
			for _, v := range []geom.Vec{sp.Pose.Plan(e.Start), sp.Pose.Plan(e.End)} {
				if !within(v, mouth) {
					t.Errorf("room %d: corner %v of the infill is not in the niche %v", i, v, mouth)
				}
			}
		}
		if t.Failed() {
			return
		}
	}
}

// TestFrontIsParallelAtItsDepth holds the front against the straight line over
// the ends of the back edge.
func TestFrontIsParallelAtItsDepth(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		spots, walls := crooked(rnd)
		r := roomAt(t, false, spots, walls...)
		depth := unit.Length(300 + 600*rnd.Float64())
		d := model.NewDesign("desk", r)
		// The back follows five walls, so that it is no straight line.
		p := d.Add("desk", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).
			Against(r.Wall("back left"), r.Wall("niche left"), r.Wall("niche back"), r.Wall("niche right"), r.Wall("back right")).
			Gaps(3, 5).Depth(depth).SurfaceAt(750))
		sound(t, d)
		if t.Failed() {
			return
		}
		front := p.Slab.Front()
		left, right := p.Slab.Edges[0].End, p.Slab.Edges[6].Start
		across := right.Sub(left)
		near(t, "direction", across.Unit().Cross(front.Start.Sub(front.End).Unit()), 0, 1e-9)
		for _, v := range []geom.Vec{front.Start, front.End} {
			near(t, "depth", -across.Unit().Cross(v.Sub(left)), float64(depth), 1e-6)
		}
	}
}

// TestNaturalEdgeRunsThroughItsStations: the wood is never behind the straight
// line nor, between two stations, beyond both of them.
func TestNaturalEdgeRunsThroughItsStations(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 4))
	for i := range 60 {
		r := roomAt(t, false, alcove(82+16*rnd.Float64(), 82+16*rnd.Float64()), threeWalls()...)
		stations := randomStations(rnd)
		d := model.NewDesign("desk", r)
		p := d.Add("desk", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
			Gaps(3, 5).Depth(600).Front(model.NaturalEdge(stations...)).SurfaceAt(750))
		sound(t, d)
		if t.Failed() {
			return
		}
		front := p.Slab.Front()
		top, under := p.Slab.Course(len(p.Slab.Edges) - 1)
		hit := 0
		for j, s := range stations {
			x := front.End.X + s.Along
			if x > front.Start.X-10 {
				continue
			}
			least := func(course []geom.Vec, beyond unit.Length) (d unit.Length) {
				d = 1e9
				for _, v := range course[1 : len(course)-1] {
					d = min(d, v.Sub(geom.V(x, front.End.Y-beyond)).Len())
				}
				return d
			}
			if j > 0 {
				near(t, "top at a station", float64(least(top, s.Top)), 0, 1e-6)
				near(t, "underside at a station", float64(least(under, s.Under)), 0, 1e-6)
				hit++
			}
		}
		if hit < 2 {
			t.Fatalf("desk %d: only %d stations", i, hit)
		}
		for _, v := range append(top, under...) {
			if v.Y > front.End.Y+1e-6 {
				t.Fatalf("desk %d: the wood is %v behind the straight front", i, v.Y-front.End.Y)
			}
		}
		for _, v := range top[1 : len(top)-1] {
			lo, hi := beside(stations, v.X-front.End.X)
			if y := front.End.Y - v.Y; y < lo-1e-6 || y > hi+1e-6 {
				t.Fatalf("desk %d: at %v the edge is %v beyond its line, stations beside it %v and %v", i, v.X, y, lo, hi)
			}
		}
	}
}

// beside gives the smaller and the larger swell of the stations on both sides.
func beside(list []model.NaturalStation, x unit.Length) (lo, hi unit.Length) {
	for i, s := range list {
		if s.Along >= x {
			a, b := list[max(i-1, 0)].Top, s.Top
			return min(a, b), max(a, b)
		}
	}
	last := list[len(list)-1].Top
	return last, last
}

// TestOutlinesAreThoseOfTheSolid: the faces of the solid are the outlines that
// lists and sheets print.
func TestOutlinesAreThoseOfTheSolid(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 4))
	for i := range 30 {
		spots, walls := crooked(rnd)
		r := roomAt(t, false, spots, walls...)
		front := model.FrontEdge{}
		if i%2 == 0 {
			front = model.NaturalEdge(randomStations(rnd)...)
		}
		d := niche(r, 3, 4, 1, 700, front)
		sound(t, d)
		if t.Failed() {
			return
		}
		for _, id := range []string{"worktop", "infill"} {
			sp := d.Part(id).Slab
			for surface, want := range map[string]geom.Region{"top": sp.TopOutline(), "underside": sp.UnderOutline()} {
				var got geom.Region
				for _, f := range sp.Own.Faces() {
					if f.Surface != surface {
						continue
					}
					var flat []geom.Vec
					for _, v := range f.Loops[0] {
						flat = append(flat, v.Flat())
					}
					got = got.Union(geom.Polygon(flat...))
				}
				// A grid step all round the outline is what rounding may cost.
				near(t, id+" "+surface, float64(got.Xor(want).Area()), 0, 0.002*float64(want.Perimeter()))
			}
			if sp.Own.Volume() < unit.Volume(float64(min(sp.TopOutline().Area(), sp.UnderOutline().Area()))*float64(sp.Thickness)*0.9) {
				t.Errorf("%s has only %v mm3", id, sp.Own.Volume())
			}
		}
	}
}

// TestStraightLineClearsALeaningArris: two walls that make a wedge into the room
// and lean into it push their common arris out further than either of them.
// For walls at 45 degrees to the line that are 8 mm in at the height of the
// slab, the arris is 8 * sqrt 2 mm in.
func TestStraightLineClearsALeaningArris(t *testing.T) {
	spots := []spot{{"A", geom.V(0, -1000), ""}, {"B", geom.V(0, 0), "in"}, {"C", geom.V(800, 0), "in"},
		{"D", geom.V(1000, -200), "out"}, {"E", geom.V(1200, 0), "in"}, {"F", geom.V(2000, 0), "in"}, {"G", geom.V(2000, -1000), ""}}
	lean := func(from, to string) model.WallPlan {
		return model.WallPlan{From: from, To: to, Lean: -8, LeanOver: 250} // 8 mm in at 1000, from readings at 750
	}
	r := roomAt(t, false, spots, lean("C", "D"), lean("D", "E"))
	d := model.NewDesign("wedge", r)
	p := d.Add("shelf", model.Slab(stock.Oak, 40).Between(r.Wall("A-B"), r.Wall("F-G")).Against(r.Straight("B", "F")).
		Gaps(3, 5).Depth(300).SurfaceAt(1000))
	sound(t, d)
	near(t, "back edge", float64(p.Slab.Pose.At.Y), -200-8*math.Sqrt2-5, 0.01)
	near(t, "gap", between(p.Outline().Loops()[0], r.Plan(1000).Loops()[0], true, true), 3, 0.01)
}
