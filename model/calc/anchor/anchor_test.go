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
		one := anchor.Share(c.leg, []unit.Length{100}, []anchor.Load{{Along: 100, Arm: 60, Force: 1000}})
		near(t, "pull", one[0].Pull, 1000*c.r, 0.5)
		near(t, "shear", one[0].Shear, 1000, 1e-9)
	}
}

// TestShare: a beam from anchor to anchor. Loads between two anchors sum up;
// the sum of the pulls times the lever is the moment of the loads.
func TestShare(t *testing.T) {
	leg := anchor.Leg{Width: 50, FromHeel: 30, Below: true}
	at := []unit.Length{700, 40, 340} // in any order
	loads := []anchor.Load{{Along: 115, Arm: 50, Force: 400}, {Along: 340, Arm: 20, Force: 100}, {Along: 610, Arm: 45, Force: 200}}
	out := anchor.Share(leg, at, loads)
	near(t, "first shear", out[0].Shear, 300, 1e-9)
	near(t, "middle shear", out[1].Shear, 100+100+200*90/360., 1e-9)
	near(t, "last shear", out[2].Shear, 200*270/360., 1e-9)
	near(t, "first pull", out[0].Pull, 300*50/18., 1e-9)
	var pull float64
	for _, r := range out {
		pull += r.Pull
	}
	near(t, "moment", pull*18, 400*50+100*20+200*45, 1e-6)
}

// TestBeyondTheLastAnchor: 120 mm beyond it, with 300 mm between the last two,
// it takes 1.4 times the load.
func TestBeyondTheLastAnchor(t *testing.T) {
	leg := anchor.Leg{Width: 50, FromHeel: 30, Below: true}
	out := anchor.Share(leg, []unit.Length{40, 340}, []anchor.Load{{Along: 460, Arm: 36, Force: 100}})
	near(t, "last", out[1].Shear, 140, 1e-9)
	near(t, "last pull", out[1].Pull, 280, 1e-9)
	near(t, "the one before", out[0].Shear, 0, 1e-9)
	if out := anchor.Share(leg, nil, []anchor.Load{{Force: 1}}); len(out) != 0 {
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
