package check

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// TestCleatByHand: a batten of 45 x 60 on two bolts 300 apart. 1000 N in the middle
// bend it by F l/4 = 75,000 N mm and shear it by 500 N; 1000 N at 50 mm beyond a bolt
// by F a = 50,000 N mm and 1000 N (any handbook).
func TestCleatByHand(t *testing.T) {
	c := batten45x60()
	for _, k := range []struct {
		at            unit.Length
		moment, shear float64
	}{{250, 75000, 500}, {50, 50000, 1000}, {175, 1000 * 75 * 225 / 300.0, 750}} {
		r := hold.Run{Line: []hold.LineLoad{{Along: k.at, Width: 40, Force: 1000, FromHeel: 30}}}
		var moment, shear float64
		for _, s := range stretchesOf(&c.Mounted) {
			m, v, _ := s.strain(r)
			moment, shear = math.Max(moment, m), math.Max(shear, v)
		}
		if math.Abs(moment-k.moment) > 1e-6 || math.Abs(shear-k.shear) > 1e-6 {
			t.Errorf("1000 N at %.0f: %.0f N mm and %.0f N, by hand %.0f and %.0f", k.at, moment, shear, k.moment, k.shear)
		}
	}
}

// TestWhatUsesACleatMost: one bolt takes all. 2000 N stand 30 mm off the wall, the
// bolt 0.9 x 28 mm above the lower edge. Its washer of 17 on a hole of 9 pulls
// (2000 x 30 + the batten's own weight x 22.5) / 25.2 N, and the wood under it takes
// 3 x 4.8 x 163.4 x 0.9 / 1.3 N (EN 1995-1-1 8.5.2 with the pressure across the grain
// of D18 in EN 338): by hand, the most of all that is looked at.
func TestWhatUsesACleatMost(t *testing.T) {
	c := batten45x60()
	c.Holes = c.Holes[:1]
	class, err := stock.ClassByName("D18")
	if err != nil {
		t.Fatal(err)
	}
	slab := hold.Slab{Class: class, Cases: []hold.Case{{Design: true, KMod: 0.9, Runs: []hold.Run{{
		Carrier: "cleat", Line: []hold.LineLoad{{Along: 100, Width: 40, Force: 2000, FromHeel: 30}},
	}}}}}
	w := strainOf(c, "cleat", slab)
	weight := 1.35 * 9.80665 * 45 * 60 * 500 * 700e-9
	pull, takes := (2000*30+weight*22.5)/25.2, 3*4.8*math.Pi/4*(17*17-9*9)*0.9/1.3
	if w.what != "the washer of anchor W1" || math.Abs(w.value/pull-1) > 1e-3 || math.Abs(w.takes/takes-1) > 1e-3 {
		t.Errorf("%s: %.1f of %.1f, by hand its washer: %.1f of %.1f", w.what, w.value, w.takes, pull, takes)
	}
}

func batten45x60() *model.CleatPart {
	c := &model.CleatPart{Species: stock.Ash, Wide: 45, High: 60, Mounted: model.Mounted{Length: 500}}
	for i, x := range []unit.Length{100, 400} {
		c.Holes = append(c.Holes, model.BracketHole{Name: []string{"W1", "W2"}[i], Leg: model.WallLeg, X: x, FromHeel: 32, Dia: 9})
	}
	return c
}
