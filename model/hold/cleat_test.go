package hold_test

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// onCleats is a board on cleats along some walls.
func onCleats(t testing.TB, depth unit.Length, screwed bool, walls ...string) *model.Design {
	t.Helper()
	r := room(t)
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(5, 5).Depth(depth).SurfaceAt(750))
	for _, w := range walls {
		c := model.Cleat(stock.Ash, 45, 60).Along(r.Wall(w)).Under("top").ClearOf(3).FreeEnd(0).Anchored(model.Anchors{Hole: 9, Pitch: 250, End: 60})
		if screwed {
			c = c.ScrewedUp(model.Screws{Hole: 7, Moving: true, Pitch: 250, End: 35, Pilot: 4, Into: 28})
		}
		d.Add("cleat "+w, c)
	}
	finish(t, d)
	return d
}

// A loose board on two cleats is a beam between their front edges, where it bears:
// 5 q L4/(384 E I), q L2/8 and half the load on each side, any handbook.
func TestBoardOnCleatsIsABeam(t *testing.T) {
	b := top(t, onCleats(t, 300, false, "left", "right"), model.Loads{Grade: "D30", Worktop: 80})
	c, _ := b.Case(hold.Daily)
	const length, width, thick, e = 1590.0, 300.0, 40.0, 11000.0
	q := (700e-9*thick + 80e-6) * 9.81 * width
	span := 1600.0
	for _, r := range c.Runs {
		span -= float64(r.FromHeel) // it bears there, near the front edges
	}
	near(t, "weight", c.Total, q*length, 1e-6)
	near(t, "stress", c.Along.Value, (q*span*span/8-q*32.5*32.5/2)/(width*thick*thick/6), 0.01)
	near(t, "sinking", float64(c.Lowest.Down), 5*q*math.Pow(span, 4)/(384*e*width*math.Pow(thick, 3)/12), 0.03)
	for _, r := range c.Runs {
		near(t, r.Carrier, r.Force, q*length/2, 0.01)
		if r.FromHeel < 33 || r.FromHeel > 37.5+1e-9 {
			t.Errorf("%s is pressed %.1f from the wall: a loose board rests near the front edge, 45", r.Carrier, r.FromHeel)
		}
	}
}

// Screws through cleats hold down what would lift. What the cleats take stays in
// balance with the loads, screws taken off.
func TestScrewedCleatsHold(t *testing.T) {
	loose := top(t, onCleats(t, 600, false, "left", "back", "right"), model.Loads{})
	fast := top(t, onCleats(t, 600, true, "left", "back", "right"), model.Loads{})
	a, _ := loose.Case(hold.PersonLifts)
	b, _ := fast.Case(hold.PersonLifts)
	if !(a.Highest.Down < -0.1 && b.Highest.Down > 0.7*a.Highest.Down) {
		t.Errorf("lift: loose %v, screwed %v", a.Highest.Down, b.Highest.Down)
	}
	pulls := 0
	for _, c := range fast.Cases {
		sum := 0.0
		for _, r := range c.Runs {
			sum += r.Force
			pulls += len(r.Screws)
		}
		near(t, string(c.Kind), sum, c.Total, 1e-4)
	}
	if pulls == 0 {
		t.Error("no screw pulls though a corner would lift")
	}
}

// TestAnchorsOfACleat: moments about the lower edge of the back, by hand. Bolts
// 32 mm below the top of 60 stand 28 mm above that edge, of which 0.9 counts; the
// cleat itself hangs half its width off the wall. Shears sum up to the load.
func TestAnchorsOfACleat(t *testing.T) {
	d := onCleats(t, 300, false, "left", "right")
	b := top(t, d, model.Loads{Worktop: 100})
	c, _ := b.Case(hold.DesignSpread)
	for _, r := range c.Runs {
		cleat := d.Part(r.Carrier).Cleat
		var at []unit.Length
		for _, h := range cleat.In(model.WallLeg) {
			at = append(at, h.X)
		}
		weight := 1.35 * 45 * 60 * float64(cleat.Length) * 700e-9 * plate.Gravity
		pull, shear := 0.0, 0.0
		for _, x := range hold.Shared(cleat, at, r) {
			pull, shear = pull+x.Pull, shear+x.Shear
		}
		near(t, r.Carrier+" shear", shear, r.Push()+weight, 1e-6)
		near(t, r.Carrier+" pull", pull*0.9*28, r.Push()*float64(r.FromHeel)+weight*22.5, 0.01)
	}
	if l := hold.Lever(d.Part("cleat left").Cleat); math.Abs(float64(l)-0.9*28) > 1e-9 {
		t.Errorf("lever %.2f, by hand %.2f", l, 0.9*28)
	}
}
