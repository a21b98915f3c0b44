// Package anchor shares the load on a wall bracket among its anchors. The load
// stands off the wall, so that the bracket turns: it presses on an edge and
// pulls at the anchors. Statics of a rigid leg on a firm wall; newton and
// millimetre. What an anchor may carry stands in its approval.
package anchor

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// Leg is the wall leg of a bracket. Below: it hangs down from the seat and turns
// about its toe; else it stands up behind the slab and turns about the heel.
type Leg struct {
	Width    unit.Length // from heel to toe
	FromHeel unit.Length // of the anchor line
	Below    bool
}

// lever is the share of the distance from the anchor to the edge that counts:
// the wall yields over a strip at the edge (engineering judgement, 0.85 to 0.9).
const lever = 0.9

// Lever is how far the anchors pull from where the wall presses.
func (l Leg) Lever() unit.Length {
	if l.Below {
		return lever * (l.Width - l.FromHeel)
	}
	return lever * l.FromHeel
}

// Load is a force down, N, on a bracket: its place along the bracket, and how
// far from the wall's face it acts.
type Load struct {
	Along, Arm unit.Length
	Force      float64
}

// Reaction is what one anchor takes: pull out of the wall and shear down it, N.
type Reaction struct {
	Along       unit.Length
	Pull, Shear float64
}

// Bar is how stiff a bracket is between its anchors, and how stiff one anchor
// is. The stiffer the anchors, the more a load goes to the nearest.
type Bar struct {
	Bending float64 // E I, N mm2
	Twist   float64 // G J, N mm2
	Anchor  float64 // N/mm, the same out of the wall and down it
}

// Share gives what anchors at some places along a bracket take: the bracket is a
// beam on springs for the shear, and a shaft on turning springs for the moment
// that the loads have about the edge where the wall presses. Anchors that would
// be pushed in take nothing. One anchor takes all.
func Share(bar Bar, l Leg, places []unit.Length, loads []Load) []Reaction {
	sorted := slices.Sorted(slices.Values(places))
	out := make([]Reaction, len(sorted))
	for i, x := range sorted {
		out[i].Along = x
	}
	if len(sorted) == 0 || len(loads) == 0 {
		return out
	}
	z := float64(l.Lever())
	down, turned := solve(bar, z, sorted, loads, sorted)
	for i := range out {
		out[i].Shear = math.Max(0, bar.Anchor*down[i])
		out[i].Pull = math.Max(0, bar.Anchor*z*turned[i])
	}
	return out
}

// Sag is how far a bracket sinks at most at the toe of its seat, where its loads
// act: it bends and twists between its anchors, and these give way. The seat's
// own bending is not in it. 0 without anchors.
func Sag(bar Bar, l Leg, places []unit.Length, loads []Load, toe unit.Length) unit.Length {
	if len(places) == 0 {
		return 0
	}
	var ask []unit.Length
	for _, f := range loads {
		ask = append(ask, f.Along)
	}
	down, turned := solve(bar, float64(l.Lever()), slices.Sorted(slices.Values(places)), loads, ask)
	most := 0.0
	for i := range down {
		most = math.Max(most, down[i]+turned[i]*float64(toe))
	}
	return unit.Length(most)
}

// Resistance is what one anchor may take alone, far from edges and from other
// anchors, N: design values against loads times their partial factors. EdgeFull
// and SpacingFull are the distances from which on it takes that.
type Resistance struct {
	Pull, Shear           float64
	EdgeFull, SpacingFull unit.Length
}

// Reduced is the share of the resistance left at a distance from an edge and
// from the next anchor: in proportion, as no approval is at hand. Infinite
// distances leave all of it.
func (r Resistance) Reduced(edge, spacing unit.Length) float64 {
	left := 1.0
	if r.EdgeFull > 0 {
		left = math.Min(left, float64(edge/r.EdgeFull))
	}
	if r.SpacingFull > 0 {
		left *= math.Min(1, float64(spacing/r.SpacingFull))
	}
	return math.Max(0, left)
}

// Used is the share of an anchor's resistance that a reaction takes: pull and
// shear added up, the most careful of all interactions. A missing
// resistance is used up at once.
func (r Resistance) Used(a Reaction, left float64) float64 {
	use := func(load, take float64) float64 {
		if load <= 0 {
			return 0
		}
		return load / (take * left)
	}
	return use(a.Pull, r.Pull) + use(a.Shear, r.Shear)
}
