package model_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

var (
	anchors = model.Anchors{Hole: 11, Pitch: 300, End: 40}
	screws  = model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 65, Pilot: 4, Into: 28}
)

// desk is a worktop between three walls on three angles, back first.
func desk(r *model.Room, s stock.AngleSection, gap unit.Length) *model.Design {
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
		Gaps(3, 4).Depth(700).SurfaceAt(750))
	for _, w := range []string{"back", "left", "right"} {
		d.Add("angle "+w, model.Angle(s).Along(r.Wall(w)).Under("top").ClearOf(gap).Anchored(anchors).ScrewedUp(screws))
	}
	return d
}

// TestAnglesClearEachOtherAndTheWalls measures with the kernel what the corner
// formulas promise, in corners of 60 to 150 degrees between walls that bow and
// lean.
func TestAnglesClearEachOtherAndTheWalls(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 5))
	sections := []stock.AngleSection{stock.L40x40x5, stock.L50x50x6, stock.L60x60x8}
	tight := 0
	for i := range 36 {
		walls := threeWalls()
		for j := range walls {
			walls[j].Bow = unit.Length(-6 + 12*rnd.Float64())
			walls[j].Lean, walls[j].LeanOver = unit.Length(-8+16*rnd.Float64()), 700
		}
		b, c := 60+90*rnd.Float64(), 60+90*rnd.Float64()
		r := roomAt(t, false, alcove(b, c), walls...)
		gap := unit.Length(rnd.IntN(6))
		d := desk(r, sections[i%3], gap)
		sound(t, d)
		back := d.Part("angle back")
		for _, side := range []string{"left", "right"} {
			a := d.Part("angle " + side)
			if back == nil || a == nil {
				t.Fatalf("corners of %.1f and %.1f degrees: no angle %s", b, c, side)
			}
			g := geom.Clearance(back.Bodies[0].Solid, a.Bodies[0].Solid)
			if g.Err != nil || g.Distance < gap-0.05 {
				t.Errorf("corners of %.1f and %.1f degrees: %s is %.3f mm from the back, asked for %v", b, c, side, g.Distance, gap)
			}
			if g.Distance < gap+1.1/unit.Length(math.Sin(60*math.Pi/180)) {
				tight++
			}
		}
		for w, others := range map[string][]string{"back": {"left", "right"}, "left": {"back"}, "right": {"back"}} {
			p := d.Part("angle " + w)
			for _, other := range others {
				low, high := p.Angle.Levels()
				for _, z := range []unit.Length{low, high} {
					got := between(p.Footprint().Loops()[0], r.Wall(other).Face(z), true, false)
					if got < float64(gap)-0.05 {
						t.Errorf("corners of %.1f and %.1f degrees: angle %s is %.3f mm from the wall %s, asked for %v", b, c, w, got, other, gap)
					}
				}
			}
			checkHoles(t, d, p)
		}
		if t.Failed() {
			t.Fatalf("room %d", i)
		}
	}
	// Whole millimetres cost at most one; so most angles must be that close.
	if tight < 42 {
		t.Errorf("only %d of 72 angles are as close as whole millimetres allow", tight)
	}
}

// checkHoles holds the bar of an angle against what its description promises.
func checkHoles(t *testing.T, d *model.Design, p *model.Part) {
	t.Helper()
	a := p.Angle
	if a.Length != unit.Length(math.Floor(float64(a.Length))) {
		t.Errorf("%s is %v mm long: no whole millimetre", p.ID, a.Length)
	}
	last := map[model.Leg]unit.Length{}
	slab := d.Part(a.Under)
	pilots := map[string]model.Feature{}
	for _, f := range slab.Slab.Features {
		pilots[f.Name] = f
	}
	for _, h := range a.Holes {
		half := h.Dia / 2
		along, across := half, half
		if h.Along {
			along += h.Slot / 2
		} else {
			across += h.Slot / 2
		}
		if h.FromHeel-across < a.Section.Thickness+a.Section.Root || h.FromHeel+across > a.Section.Leg-a.Section.Toe {
			t.Errorf("%s: hole %s, %v to %v from the heel, leaves the flat of the leg", p.ID, h.Name, h.FromHeel-across, h.FromHeel+across)
		}
		if h.X-along < 10 || h.X+along > a.Length-10 {
			t.Errorf("%s: hole %s at %v of %v is too near an end", p.ID, h.Name, h.X, a.Length)
		}
		if x, ok := last[h.Leg]; ok && (h.X-x > 300 || h.X <= x) {
			t.Errorf("%s: %v from hole to hole in the %s, 300 asked for", p.ID, h.X-x, h.Leg)
		}
		last[h.Leg] = h.X
		if h.Leg != model.SeatLeg {
			continue
		}
		for _, o := range a.Holes {
			if o.Leg == model.WallLeg && math.Abs(float64(o.X-h.X)) < 25 {
				t.Errorf("%s: screw %s at %v is beside anchor %s at %v", p.ID, h.Name, h.X, o.Name, o.X)
			}
		}
		f, ok := pilots[p.ID+" "+h.Name]
		if !ok {
			t.Errorf("%s: no pilot for %s", p.ID, h.Name)
			continue
		}
		// The heel line in the room, by its own end points.
		low, high := a.Levels()
		heel := a.Wall.Hull(low, high)
		u := heel.D.Unit()
		want := heel.P.Add(u.Mul(float64(a.Start + h.X))).Add(geom.V(u.Y, -u.X).Mul(float64(h.FromHeel)))
		if off := slab.Slab.Pose.Plan(f.At).Sub(want).Len(); off > 1e-6 {
			t.Errorf("%s: pilot of %s is %v mm beside the slot", p.ID, h.Name, off)
		}
		if f.Outline.Minus(slab.Slab.UnderOutline()).Area() > 0 {
			t.Errorf("%s: pilot of %s leaves the slab", p.ID, h.Name)
		}
	}
	if len(last) != 2 {
		t.Errorf("%s has holes in %d legs", p.ID, len(last))
	}
}

// TestSlotsLieAcrossTheGrain: wood moves across its grain, which runs along the
// back edge. So slots lie across the bar at the back, and along it at the sides.
func TestSlotsLieAcrossTheGrain(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := desk(r, stock.L50x50x6, 3)
	sound(t, d)
	n := 0
	for id, along := range map[string]bool{"angle back": false, "angle left": true, "angle right": true} {
		for _, h := range d.Part(id).Angle.Holes {
			if h.Leg == model.SeatLeg {
				n++
				if h.Along != along {
					t.Errorf("%s: slot %s along the bar: %v", id, h.Name, h.Along)
				}
			}
		}
	}
	if n < 8 {
		t.Errorf("%d slots", n)
	}
}

// TestScrewsKeepTheirPitch although anchors are in their way: where a shift
// would leave two too far apart there is one more.
func TestScrewsKeepTheirPitch(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	d.Add("top", good(r))
	more := 0
	for pitch := unit.Length(120); pitch <= 500; pitch += 10 {
		p := d.Add(fmt.Sprint("angle ", pitch), model.Angle(stock.L50x50x6).Along(r.Wall("back")).Under("top").ShorterBy(2*pitch).
			Anchored(model.Anchors{Hole: 11, Pitch: 170, End: 40}).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: pitch, End: 60, Pilot: 4, Into: 28}))
		var at []unit.Length
		for _, h := range p.Angle.Holes {
			if h.Leg == model.WallLeg {
				continue
			}
			for _, o := range p.Angle.Holes {
				if o.Leg == model.WallLeg && math.Abs(float64(o.X-h.X)) < 25 {
					t.Errorf("pitch %v: screw at %v beside an anchor at %v", pitch, h.X, o.X)
				}
			}
			if k := len(at); k > 0 && h.X-at[k-1] > pitch {
				t.Errorf("pitch %v: %v from screw to screw", pitch, h.X-at[k-1])
			}
			at = append(at, h.X)
		}
		if least := math.Ceil(float64((p.Angle.Length - 120) / pitch)); len(at) > int(least)+1 {
			more++
		}
		if at[0] > 60+50 || at[len(at)-1] < p.Angle.Length-60-50 {
			t.Errorf("pitch %v: screws from %v to %v of %v", pitch, at[0], at[len(at)-1], p.Angle.Length)
		}
	}
	if more == 0 {
		t.Error("no angle needed one more screw: the pitches test nothing")
	}
}

// TestAnchorsGiveWay: keep-outs move anchors or take them away, studs call them.
func TestAnchorsGiveWay(t *testing.T) {
	pipe := func(start, end unit.Length) model.ObstaclePlan {
		return model.ObstaclePlan{Name: "pipe", Kind: "pipe", From: "B", Start: start, End: end, Bottom: 0, Top: 2000, Free: 20}
	}
	back := func(change func(*model.WallPlan)) (*model.AnglePart, []unit.Length) {
		walls := threeWalls()
		change(&walls[1])
		r := roomAt(t, false, alcove(90, 90), walls...)
		d := desk(r, stock.L50x50x6, 3)
		sound(t, d)
		a := d.Part("angle back").Angle
		var at []unit.Length
		for _, h := range a.Holes {
			if h.Leg == model.WallLeg {
				at = append(at, a.Start+h.X)
			}
		}
		return a, at
	}
	plain, free := back(func(*model.WallPlan) {})
	if len(free) != 7 || plain.Moved != nil || plain.Unmatched != nil {
		t.Fatalf("anchors at %v, %v, %v", free, plain.Moved, plain.Unmatched)
	}

	// One pipe right behind the third anchor: it moves just out of 20 mm around.
	a, at := back(func(w *model.WallPlan) { w.Obstacles = []model.ObstaclePlan{pipe(free[2]-10, free[2]+12)} })
	if len(a.Moved) != 1 || len(at) != 7 || at[2] != free[2]-30 {
		t.Errorf("anchors at %v, were %v; moved %v", at, free, a.Moved)
	}
	// A keep-out wider than a pitch: no place within half a pitch for its middle.
	a, at = back(func(w *model.WallPlan) { w.Obstacles = []model.ObstaclePlan{pipe(free[3]-200, free[3]+200)} })
	if len(a.Unmatched) != 1 || len(at) != 6 {
		t.Errorf("anchors at %v, were %v; unmatched %v", at, free, a.Unmatched)
	}
	for _, s := range at {
		if math.Abs(float64(s-free[3])) < 220 {
			t.Errorf("an anchor at %v is in the keep-out", s)
		}
	}
	// Two anchors flee into the same 12 mm between two keep-outs: one is given up.
	a, at = back(func(w *model.WallPlan) {
		w.Obstacles = []model.ObstaclePlan{pipe(free[2]-150, free[2]+100), pipe(free[3]-100, free[3]+150)}
	})
	if len(a.Moved) != 1 || len(a.Unmatched) != 1 || len(at) != 6 {
		t.Errorf("anchors at %v, moved %v, given up %v", at, a.Moved, a.Unmatched)
	}
	// Above or below the bar a keep-out does not matter.
	if a, _ = back(func(w *model.WallPlan) {
		w.Obstacles = []model.ObstaclePlan{{Name: "socket", Kind: "socket", Start: 0, End: 1600, Bottom: 760, Top: 900}}
	}); a.Moved != nil || a.Unmatched != nil {
		t.Errorf("a socket above the bar moved %v, took %v", a.Moved, a.Unmatched)
	}
	// Studs: one anchor each, wherever the bar reaches, and a hidden cable takes one away.
	a, at = back(func(w *model.WallPlan) {
		w.Make, w.Studs, w.StudsFrom = model.Stud, []unit.Length{10, 410, 810, 1210, 1590}, "C"
		w.Obstacles = []model.ObstaclePlan{pipe(780, 800)}
	})
	if len(at) != 2 || math.Abs(float64(at[0]-390)) > 0.5 || math.Abs(float64(at[1]-1190)) > 0.5 || len(a.Unmatched) != 1 {
		t.Errorf("anchors at %v, want 390 and 1190 from B; unmatched %v", at, a.Unmatched)
	}
}

// TestEndsOfAngles: what the describing words for the ends mean, in a square
// room with walls of 1600 and 1200 mm.
func TestEndsOfAngles(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	for _, c := range []struct {
		name        string
		wall        string
		change      func(model.AnglePiece) model.AnglePiece
		start, long unit.Length
	}{
		{"clear of both walls by 3", "back", func(p model.AnglePiece) model.AnglePiece { return p }, 3, 1594},
		{"touching both walls", "back", func(p model.AnglePiece) model.AnglePiece { return p.ClearOf(0) }, 0, 1600},
		{"shorter by a round sum", "back", func(p model.AnglePiece) model.AnglePiece { return p.ShorterBy(100) }, 50, 1500},
		{"fixed set-backs, none at the left", "back", func(p model.AnglePiece) model.AnglePiece { return p.SetBack(0, 80) }, 0, 1520},
		// The slab's front is at 4 + 700 from the back wall, so at 1200 - 704 from A.
		{"free end", "left", func(p model.AnglePiece) model.AnglePiece { return p }, 1200 - 704 + 40, 704 - 40 - 3},
		{"free end told", "left", func(p model.AnglePiece) model.AnglePiece { return p.FreeEnd(100) }, 1200 - 704 + 100, 704 - 100 - 3},
	} {
		d := model.NewDesign("desk", r)
		d.Add("top", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
			Gaps(3, 4).Depth(700).SurfaceAt(750))
		p := d.Add("angle", c.change(model.Angle(stock.L50x50x6).Along(r.Wall(c.wall)).Under("top")))
		sound(t, d)
		near(t, c.name+": start", float64(p.Angle.Start), float64(c.start), 0.02)
		near(t, c.name+": length", float64(p.Angle.Length), float64(c.long), 0)
	}
}

// TestLegUp: the seat stays where the slab lies, the wall leg stands behind it.
func TestLegUp(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
		Gaps(3, 10).Depth(700).SurfaceAt(750))
	down := d.Add("down", model.Angle(stock.L50x50x6).Along(r.Wall("left")).Under("top"))
	up := d.Add("up", model.Angle(stock.L50x50x6).Along(r.Wall("back")).Under("top").LegUp().Anchored(anchors))
	sound(t, d)
	for _, c := range []struct {
		p         *model.Part
		low, high float64
	}{{down, 655, 705}, {up, 699, 749}} {
		b := c.p.Bounds()
		near(t, c.p.ID+" bottom", float64(b.Min.Z), c.low, 1e-6)
		near(t, c.p.ID+" top", float64(b.Max.Z), c.high, 1e-6)
	}
	if g := geom.Clearance(up.Bodies[0].Solid, down.Bodies[0].Solid); g.Distance < 3-0.05 {
		t.Errorf("leg up and leg down are %v apart where they share 6 mm of height", g.Distance)
	}
}
