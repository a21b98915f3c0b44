package model_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// twoTops is a worktop against the back of an alcove, one beside it along the left wall that runs
// up to its front, and an angle under each.
var twoTops = model.NewPreset("two tops", "two worktops", func(s model.Site, _ struct{}) *model.Design {
	r := s.Room
	left, back, right := r.Wall("left"), r.Wall("back"), r.Wall("right")
	d := model.NewDesign("two tops", r)
	natural := model.NaturalEdge(model.NaturalStation{Along: 0, Top: 12, Under: 20}, model.NaturalStation{Along: 700, Top: 3, Under: 9}, model.NaturalStation{Along: 1592, Top: 15, Under: 22})
	d.Add("top", model.Slab(stock.Ash, 40).Between(left, right).Against(back).Gaps(4, 5).Depth(500).SurfaceAt(750).Front(natural).
		Hole("cable", model.At{X: 300, Back: 100}, 60))
	d.Add("side", model.Slab(stock.Ash, 40).Between(left.Mark(200), d.EdgeOf("top", "front").Gap(1)).Against(left).Gaps(4, 5).Depth(300).SurfaceAt(750))
	d.Add("angle", model.Angle(stock.L50x50x5).Along(back).Under("top").ClearOf(3).
		Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 65, Pilot: 4, Into: 25}))
	d.Add("rod table", model.RollOut(stock.Ash, 500, 300, 500).Parked("top", 600, 40))
	return d
})

func cutTops(r *model.Room, cut ...model.CutPart) *model.Design {
	d := twoTops.Build(model.Site{Room: r, Cut: cut}, nil)
	d.Finish()
	return d
}

func asDrawn(t testing.TB, d *model.Design, id string) model.CutPart {
	t.Helper()
	c, ok := d.Part(id).CutAsDrawn("2026-10-02")
	if !ok {
		t.Fatalf("%s cannot be told as cut", id)
	}
	return c
}

// A slab cut as it is drawn is the same slab in the same place, from its edges
// and diagonals alone.
func TestCutAsDrawnIsTheSamePart(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 7))
		room := roomAt(t, false, alcove(80+20*r.Float64(), 80+20*r.Float64()), threeWalls()...)
		plain := cutTops(room)
		d := cutTops(room, asDrawn(t, plain, "top"), asDrawn(t, plain, "side"), asDrawn(t, plain, "angle"))
		if len(d.Faults()) != 0 {
			t.Fatalf("seed %d: %v", seed, d.Faults())
		}
		for _, id := range []string{"top", "side", "angle"} {
			p, q := plain.Part(id), d.Part(id)
			if q.Cut == nil || q.Cut.On != "2026-10-02" {
				t.Fatalf("seed %d: %s is not cut", seed, id)
			}
			if v := float64(p.Volume() - q.Volume()); math.Abs(v) > 500 {
				t.Errorf("seed %d: volume of %s differs by %.1f mm3", seed, id, v)
			}
			a, b := p.Bounds(), q.Bounds()
			if a.Min.Sub(b.Min).Len() > 0.01 || a.Max.Sub(b.Max).Len() > 0.01 {
				t.Errorf("seed %d: %s lies at %v, want %v", seed, id, b, a)
			}
			for _, x := range q.Trims() {
				if math.Abs(float64(x.Most())) > 0.01 || math.Abs(float64(x.Least())) > 0.01 {
					t.Errorf("seed %d: %s edge %s stands over by %.3f to %.3f", seed, id, x.Edge.Name, x.Start, x.End)
				}
			}
		}
	}
}

// The right wall goes back by 6 mm: half of it is left at each end of the cut
// slab, which keeps its sizes, and the design would want it 6 mm longer.
func TestCutSlabInAnotherRoom(t *testing.T) {
	spots := alcove(90, 90)
	old := cutTops(roomAt(t, false, spots, threeWalls()...))
	for i := range spots[2:] {
		spots[2+i].at.X += 6
	}
	room := roomAt(t, false, spots, threeWalls()...)
	d := cutTops(room, asDrawn(t, old, "top"), asDrawn(t, old, "angle"))
	p, q := old.Part("top"), d.Part("top")
	for i := range p.Slab.Edges {
		if got, want := q.Slab.Edges[i].End.Sub(q.Slab.Edges[i].Start).Len(), p.Slab.Edges[i].End.Sub(p.Slab.Edges[i].Start).Len(); math.Abs(float64(got-want)) > 0.01 {
			t.Errorf("edge %s is %.2f long, cut %.2f", p.Slab.Edges[i].Name, got, want)
		}
	}
	for i, want := range []float64{-3, 0, -3, 0} {
		if x := q.Trims()[i]; math.Abs(float64(x.Start)-want) > 0.01 || math.Abs(float64(x.End)-want) > 0.01 {
			t.Errorf("edge %s stands over by %.2f and %.2f, want %.1f", x.Edge.Name, x.Start, x.End, want)
		}
	}
	if l := d.Part("angle"); math.Abs(float64(l.Angle.Length-old.Part("angle").Angle.Length)) > 0 || l.Cut.WantedBar.Length-l.Angle.Length != 6 ||
		math.Abs(float64(l.Angle.Start-old.Part("angle").Angle.Start-3)) > 0.01 {
		t.Errorf("angle of %.1f at %.1f; wanted %.1f", l.Angle.Length, l.Angle.Start, l.Cut.WantedBar.Length)
	}
	if at := d.Part("top").Slab.Features[0].At; at.Sub(geom.V(300, -100)).Len() > 1e-9 {
		t.Errorf("the cable hole moved in the slab: %v", at)
	}
	if len(d.Faults()) != 0 {
		t.Error(d.Faults())
	}
}

// A worktop that was cut 8 mm too shallow: the one that meets its front follows.
func TestNeighboursFollowTheCutPart(t *testing.T) {
	room := roomAt(t, false, alcove(90, 90), threeWalls()...)
	old := cutTops(room)
	c := asDrawn(t, old, "top")
	corners := old.Part("top").Slab.TopCorners()
	for i, s := range c.Sizes {
		at := func(name string) geom.Vec {
			k := int(name[0] - '1')
			v := corners[k]
			if k == 0 || k == 3 { // both front corners
				v.Y += 8
			}
			return v
		}
		c.Sizes[i].Length = at(s.To).Sub(at(s.From)).Len()
	}
	d := cutTops(room, c)
	if d.Faults() != nil {
		t.Fatal(d.Faults())
	}
	long := func(d *model.Design) unit.Length { a, b := d.Part("side").Slab.Blank(); return max(a, b) }
	if got := float64(long(d) - long(old)); math.Abs(got-8) > 0.02 {
		t.Errorf("the slab beside it grew by %.2f mm, want 8", got)
	}
}

func TestCutMistakesAreTold(t *testing.T) {
	room := roomAt(t, false, alcove(88, 91), threeWalls()...)
	top := asDrawn(t, cutTops(room), "top")
	bar := asDrawn(t, cutTops(room), "angle")
	change := func(c model.CutPart, f func(*model.CutPart)) model.CutPart {
		c.Sizes = append([]model.CutSize(nil), c.Sizes...)
		f(&c)
		c.Pos = model.Pos{File: "job.yaml", Line: 7, Column: 5}
		return c
	}
	for want, c := range map[string]model.CutPart{
		`names a part "topp", which the design has not (nearest: "top")`:                            change(top, func(c *model.CutPart) { c.Part = "topp" }),
		`there is no edge "bak" (nearest: "back")`:                                                  change(top, func(c *model.CutPart) { c.Sizes[1].Edge = "bak" }),
		`there is no corner "7": its corners are numbered 1, 2, 3, 4`:                               change(top, func(c *model.CutPart) { c.Sizes[4].To = "7" }),
		`from corner 1 to itself`:                                                                   change(top, func(c *model.CutPart) { c.Sizes[4].To = "1" }),
		`the size "1-3" is told twice`:                                                              change(top, func(c *model.CutPart) { c.Sizes[5] = c.Sizes[4] }),
		`its shape is not known from 4 sizes: tell the edges left, back, right, front and one line`: change(top, func(c *model.CutPart) { c.Sizes = c.Sizes[:4] }),
		`its shape is not known from 5 sizes`:                                                       change(top, func(c *model.CutPart) { c.Sizes = c.Sizes[1:] }),
		`its sizes are missing`:                                                                     change(top, func(c *model.CutPart) { c.Sizes = nil }),
		`its sizes contradict each other`:                                                           change(top, func(c *model.CutPart) { c.Sizes[4].Length += 9 }),
		`its sizes make no slab`:                                                                    change(top, func(c *model.CutPart) { c.Sizes = c.Sizes[:5]; c.Sizes[4].Length *= 3 }),
		`a slab has no length`:                                                                      change(top, func(c *model.CutPart) { c.Length = 5 }),
		`an angle or a cleat has no edges`:                                                          change(bar, func(c *model.CutPart) { c.Sizes = top.Sizes }),
		`its length is missing`:                                                                     change(bar, func(c *model.CutPart) { c.Length = 0 }),
		`a hole 2000 mm from its left end is beyond its length`:                                     change(bar, func(c *model.CutPart) { c.WallHoles = []unit.Length{2000} }),
		`only slabs, shelves, angles and cleats can be told as cut`:                                 change(top, func(c *model.CutPart) { c.Part = "rod table" }),
	} {
		d := cutTops(room, c)
		if f := d.Faults(); len(f) != 1 || !strings.Contains(f[0].Why, want) || f[0].Line != "job.yaml:7:5" {
			t.Errorf("want one fault %q, got %v", want, f)
		}
	}
	d := cutTops(room, top, change(top, func(*model.CutPart) {}))
	if f := d.Faults(); len(f) != 1 || !strings.Contains(f[0].Why, "a second time") {
		t.Errorf("a part cut twice: %v", f)
	}
}

// One diagonal makes the shape of four edges, and nothing checks it.
func TestOneDiagonalChecksNothing(t *testing.T) {
	room := roomAt(t, false, alcove(88, 91), threeWalls()...)
	c := asDrawn(t, cutTops(room), "top")
	if !cutTops(room, c).Part("top").Cut.Checked {
		t.Error("two diagonals check each other")
	}
	c.Sizes = c.Sizes[:5]
	d := cutTops(room, c)
	if p := d.Part("top"); d.Faults() != nil || p.Cut == nil || p.Cut.Checked {
		t.Errorf("one diagonal: %v", d.Faults())
	}
}
