package anchor_test

import (
	"math"
	"testing"

	"slabwright/model/calc/anchor"
	"slabwright/model/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tol)
	}
}

// TestPullByHand: L60x60x6, load at its toe, 60 mm from the wall. Moments about
// the edge that presses, by hand: the leg down with its anchor 35 mm from the
// heel turns about its toe, lever 0.9 x 25 = 22.5, pull 60/22.5 = 2.667 times
// the load; at 25 mm lever 31.5, 1.905; leg up at 35 mm it turns about the heel,
// lever 31.5, 1.905.
func TestPullByHand(t *testing.T) {
	for _, c := range []struct {
		leg  anchor.Leg
		z, r float64
	}{
		{anchor.Leg{Width: 60, FromHeel: 35, Below: true}, 22.5, 2.667},
		{anchor.Leg{Width: 60, FromHeel: 25, Below: true}, 31.5, 1.905},
		{anchor.Leg{Width: 60, FromHeel: 35}, 31.5, 1.905},
	} {
		near(t, "lever", float64(c.leg.Lever()), c.z, 1e-9)
		one := anchor.Share(anchor.Bar{Bending: 1e10, Twist: 1e8, Anchor: 1e4}, c.leg, []unit.Length{100}, []anchor.Load{{Along: 100, Arm: 60, Force: 1000}})
		near(t, "pull", one[0].Pull, 1000*c.r, 0.5)
		near(t, "shear", one[0].Shear, 1000, 1e-9)
	}
}

// soft and stiff bars against anchors of 10000 N/mm.
var (
	stiff = anchor.Bar{Bending: 1e15, Twist: 1e13, Anchor: 1e4}
	soft  = anchor.Bar{Bending: 1e6, Twist: 1e3, Anchor: 1e4}
)

// TestShareKeepsBalance: whatever the stiffness, shears sum up to the loads and
// pulls times the lever to their moment.
func TestShareKeepsBalance(t *testing.T) {
	leg := anchor.Leg{Width: 50, FromHeel: 30, Below: true}
	at := []unit.Length{700, 40, 340} // in any order
	loads := []anchor.Load{{Along: 115, Arm: 50, Force: 400}, {Along: 340, Arm: 20, Force: 100}, {Along: 610, Arm: 45, Force: 200}}
	for _, bar := range []anchor.Bar{stiff, soft, {Bending: 2.7e10, Twist: 5.5e8, Anchor: 1e4}} {
		var shear, pull float64
		for _, r := range anchor.Share(bar, leg, at, loads) {
			shear, pull = shear+r.Shear, pull+r.Pull
		}
		near(t, "sum", shear, 700, 1e-3)
		near(t, "moment", pull*18, 400*50+100*20+200*45, 1e-2)
	}
}

// TestShareOfARigidBar: the closed form of a rigid bar on equal springs, F/n +
// F e x / sum x2; its moment goes to all anchors alike.
func TestShareOfARigidBar(t *testing.T) {
	leg := anchor.Leg{Width: 50, FromHeel: 30, Below: true}
	at := []unit.Length{0, 200, 400, 600}
	out := anchor.Share(stiff, leg, at, []anchor.Load{{Along: 450, Arm: 36, Force: 1000}})
	for i, x := range []float64{-300, -100, 100, 300} {
		near(t, "shear", out[i].Shear, 250+1000*150*x/200000, 0.1)
		near(t, "pull", out[i].Pull, 1000*36/18./4, 0.1)
	}
}

// TestShareOfASoftBar: a load at an anchor stays there.
func TestShareOfASoftBar(t *testing.T) {
	leg := anchor.Leg{Width: 50, FromHeel: 30, Below: true}
	out := anchor.Share(soft, leg, []unit.Length{0, 300, 600}, []anchor.Load{{Along: 300, Arm: 36, Force: 1000}})
	near(t, "shear", out[1].Shear, 1000, 1)
	near(t, "pull", out[1].Pull, 2000, 2)
	near(t, "beside", out[0].Shear, 0, 1)
}

// TestShareOfALongBar: a long bar under a point load on springs set close is the
// beam on an elastic bed: the largest share of the load over a length s is
// s lambda / 2, lambda = (k/4EI)^(1/4) (M. Hetenyi, 1946).
func TestShareOfALongBar(t *testing.T) {
	bar := anchor.Bar{Bending: 2.7e10, Twist: 1e8, Anchor: 50}
	var at []unit.Length
	for i := range 201 {
		at = append(at, unit.Length(20*i))
	}
	out := anchor.Share(bar, anchor.Leg{Width: 50, FromHeel: 30, Below: true}, at, []anchor.Load{{Along: 2000, Arm: 18, Force: 1000}})
	lambda := math.Pow(50/20./(4*2.7e10), 0.25)
	near(t, "peak", out[100].Shear, 1000*20*lambda/2, 0.01*1000*20*lambda/2)
	// The shaft: exp(-mu x) on both sides, peak s mu / 2 of the moment.
	mu := math.Sqrt(50 * 18 * 18 / 20. / 1e8)
	near(t, "peak pull", out[100].Pull, 1000*20*mu/2, 0.02*1000*20*mu/2)
	if out := anchor.Share(bar, anchor.Leg{}, nil, []anchor.Load{{Force: 1}}); len(out) != 0 {
		t.Errorf("without anchors %v", out)
	}
}

func TestUsed(t *testing.T) {
	r := anchor.Resistance{Pull: 1000, Shear: 2000, EdgeFull: 100, SpacingFull: 200}
	near(t, "both", r.Used(anchor.Reaction{Pull: 500, Shear: 500}, 1), 0.75, 1e-9)
	near(t, "far from edges", r.Reduced(300, unit.Length(math.Inf(1))), 1, 1e-9)
	near(t, "half an edge", r.Reduced(50, 400), 0.5, 1e-9)
	near(t, "edge and neighbour", r.Reduced(50, 100), 0.25, 1e-9)
	near(t, "reduced", r.Used(anchor.Reaction{Pull: 500, Shear: 500}, 0.5), 1.5, 1e-9)
	if u := (anchor.Resistance{Shear: 10}).Used(anchor.Reaction{Pull: 1}, 1); !math.IsInf(u, 1) {
		t.Errorf("an anchor without pull resistance is used %v", u)
	}
}

// TestSag against handbook cases: on firm anchors a simple beam of P L3 / 48 E I
// and a shaft held at both ends, turned by T L / 4 G J in its middle; a stiff bar
// on springs sinks by P / 2 k and turns by P e / 2 k z2.
func TestSag(t *testing.T) {
	leg := anchor.Leg{Width: 60, FromHeel: 35, Below: true} // z = 0.9 x 25 = 22.5
	at, load := []unit.Length{0, 300}, []anchor.Load{{Along: 150, Arm: 54, Force: 1000}}
	firm := anchor.Bar{Bending: 210000 * 94400, Twist: 81000 * 8208, Anchor: 1e12}
	want := 1000*math.Pow(300, 3)/48/firm.Bending + 1000*54*300/4/firm.Twist*60
	if got := float64(anchor.Sag(firm, leg, at, load, 60)); math.Abs(got-want) > 1e-6 {
		t.Errorf("firm anchors: %v, want %v", got, want)
	}
	stiff := anchor.Bar{Bending: 1e16, Twist: 1e16, Anchor: 10000}
	want = 1000/2e4 + 1000*54/(2*10000*22.5*22.5)*60
	if got := float64(anchor.Sag(stiff, leg, at, load, 60)); math.Abs(got-want) > 1e-4 {
		t.Errorf("stiff bar: %v, want %v", got, want)
	}
	if got := anchor.Sag(stiff, leg, nil, load, 60); got != 0 {
		t.Errorf("without anchors: %v", got)
	}
}
