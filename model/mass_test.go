package model_test

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// TestMassOfASlab by hand: ash of 700 kg/m3, 1594 x 600 x 45 mm, less a hole of
// 60 mm and a groove of 20 x 18 x 600 mm. Chamfers of 2 mm take off 2 mm2 all
// round, twice; at the four corners mitred chamfers share 2 * 2^3 / 3 mm3 each.
func TestMassOfASlab(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	p := d.Add("desk", good(r).Eased(2).
		Hole("cable", model.At{X: 300, Back: 100}, 60).
		Groove("run", model.UnderFace, 20, 18, model.At{X: 400, Back: 200}, model.At{X: 1000, Back: 200}))
	sound(t, d)
	around := 2 * (1594. + 600)
	// Two prisms that meet at a mitre: area times length, less what the corner
	// pyramids count twice.
	eased := 2 * (2*around - 4*2*2*2/3.)
	want := 1594*600*45 - math.Pi*30*30*45 - 20*18*600 - eased
	near(t, "volume", float64(p.Volume()), want, 3)
	near(t, "mass", float64(p.Mass()), want*700e-9, 1e-5)
	near(t, "29.95 kg on the scales", float64(p.Mass()), 29.95, 0.15)
	c := p.Centroid()
	// The middle is at (800, -304); the hole lies at (303, -104), the groove's
	// middle at (703, -204): both draw the centre of mass away from themselves.
	hole, groove := math.Pi*30*30*45, 20*18*600.
	near(t, "centroid x", float64(c.X), 800+(hole*(800-303)+groove*(800-703))/want, 0.01)
	near(t, "centroid y", float64(c.Y), -304-(hole*(304-104)+groove*(304-204))/want, 0.01)
	near(t, "centroid z", float64(c.Z), 750-45/2., 0.2)
}

// TestMassOfAngles against the masses per metre that EN 10056-1 prints, within
// 1 percent, less the holes.
func TestMassOfAngles(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	for _, s := range stock.Angles() {
		d := model.NewDesign("desk", r)
		d.Add("desk", good(r))
		bare := d.Add("bare", model.Angle(s).Along(r.Wall("back")).Under("desk").ShorterBy(600))
		sound(t, d)
		if bare.Angle.Length != 1000 {
			t.Fatalf("%s is %v long", s.Name, bare.Angle.Length)
		}
		near(t, s.Name, float64(bare.Mass()), float64(s.Mass), 0.01*float64(s.Mass))
	}
	// L50x50x6, 1594 long: 6 anchor holes of 11 and 6 slots of 6 x 14.
	d := model.NewDesign("desk", r)
	d.Add("desk", good(r))
	p := d.Add("bar", steel(r).Anchored(anchors).ScrewedUp(screws))
	sound(t, d)
	n := map[model.Leg]float64{}
	for _, h := range p.Angle.Holes {
		n[h.Leg]++
	}
	holes := 6 * (n[model.WallLeg]*math.Pi*5.5*5.5 + n[model.SeatLeg]*(math.Pi*3*3+8*6))
	want := float64(stock.L50x50x6.ShapeArea())*float64(p.Angle.Length) - holes
	near(t, "volume of a drilled bar", float64(p.Volume()), want, want*1e-3)
	if n[model.WallLeg] < 6 || n[model.SeatLeg] < 6 {
		t.Errorf("%v holes", n)
	}
}

// TestMassOfRods: round steel of 16 mm is 1.578 kg/m (d^2 * 0.006165, as printed
// in steel tables).
func TestMassOfRods(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("shelf", r)
	shelf := d.AddShelf("shelf", hung(r).OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 160, Pitch: 450, End: 110}))
	sound(t, d)
	rods := d.Parts[1:]
	if len(rods) != 5 {
		t.Fatalf("%d rods, want 5 at most 450 apart on 1374", len(rods))
	}
	for _, p := range rods {
		near(t, p.ID, float64(p.Mass()), 0.284*16*16*0.006165, 0.002)
		near(t, p.ID+" gap", float64(p.Rod.Gap), 4, 1e-6)
		near(t, p.ID+" hole in the wall", float64(p.Rod.WallHole), 18, 0)
		near(t, p.ID+" height", float64(p.Rod.Height), 1400+22.5, 1e-9)
	}
	// What the rods fill is missing in the shelf.
	want := 1594*250*45 - 5*math.Pi*8*8*160
	near(t, "bored shelf", float64(shelf.Volume()), want, want*1e-4)
	if b := shelf.Slab.Features; len(b) != 5 || b[0].Kind != model.Bore || b[0].Depth != 160 || b[0].For != "shelf rod 1" {
		t.Errorf("bores %v", b)
	}
}

// TestMassOfARollOutTable: oak boards of 27 mm by hand.
func TestMassOfARollOutTable(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	d.Add("desk", good(r))
	p := d.Add("table", model.RollOut(stock.Oak, 600, 400, 500).Parked("desk", 100, 40))
	sound(t, d)
	boards := 600*400*27 + 2*27*400*(500-27-60) + 546*27*120 + 546*400*27.
	castors := 4 * math.Pi * 24 * 24 * 60
	near(t, "mass", float64(p.Mass()), boards*690e-9+castors*2500e-9, 1e-3)
	b := p.Bounds()
	// The slab's front is 604 before the back wall, the table 40 behind it.
	for i, want := range []float64{103, -564, 0, 703, -164, 500} {
		near(t, "box of the table", float64([]unit.Length{b.Min.X, b.Min.Y, b.Min.Z, b.Max.X, b.Max.Y, b.Max.Z}[i]), want, 0.01)
	}
}
