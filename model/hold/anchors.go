package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/anchor"
	"slabwright/model/calc/plate"
	"slabwright/model/calc/steelangle"
	"slabwright/model/unit"
)

// anchorStiffness is that of a stiff anchor, N/mm: plastic ones give way more, and
// spread the load further. Order of approvals, from memory.
const anchorStiffness = 10000

// Shared gives what anchors at some places of an angle take of a run: the strips
// of its seat and its own weight.
func Shared(a *model.AnglePart, at []unit.Length, r Run) []anchor.Reaction {
	section := steelangle.Shape{Leg: a.Section.Leg, Thickness: a.Section.Thickness, Root: a.Section.Root, Toe: a.Section.Toe}.Section()
	const shear = 81000 // N/mm2, EN 1993-1-1
	bar := anchor.Bar{Bending: steelModulus * section.I, Twist: shear * section.Torsion, Anchor: anchorStiffness}
	leg := wallLeg(a)
	var loads []anchor.Load
	for _, l := range r.Line {
		loads = append(loads, anchor.Load{Along: l.Along, Arm: l.FromHeel, Force: l.Force})
	}
	const pieces = 10
	weight := gammaG * plate.Gravity * float64(a.Section.Mass.Mass(a.Length)) / pieces
	for k := range pieces {
		loads = append(loads, anchor.Load{Along: a.Length * (unit.Length(k) + 0.5) / pieces, Arm: section.Centroid, Force: weight})
	}
	return anchor.Share(bar, leg, at, loads)
}

// wallLeg is the wall leg with the line of its anchors.
func wallLeg(a *model.AnglePart) anchor.Leg {
	leg := anchor.Leg{Width: a.Section.Leg, Below: !a.LegUp}
	for _, h := range a.Holes {
		if h.Leg == model.WallLeg {
			leg.FromHeel = h.FromHeel
		}
	}
	return leg
}

// Lever is how far the anchors of an angle pull from where the wall presses: at
// the toe of a leg that hangs down, at the heel of one that stands up.
func Lever(a *model.AnglePart) unit.Length { return wallLeg(a).Lever() }

// AnchorTake is the most that an anchor takes in any design case, N. Pull and
// shear need not come from the same one.
type AnchorTake struct {
	Hole        string
	Pull, Shear float64
}

// Anchors gives what every anchor of an angle takes; nothing where the statics of
// its slab are not known.
func (s *Statics) Anchors(p *model.Part) []AnchorTake {
	slab, ok := s.Of(p.Angle.Under)
	if !ok || slab.Trouble != "" {
		return nil
	}
	var out []AnchorTake
	var at []unit.Length
	for _, h := range p.Angle.Holes {
		if h.Leg == model.WallLeg {
			out, at = append(out, AnchorTake{Hole: h.Name}), append(at, h.X)
		}
	}
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			if r.Carrier != p.ID || !c.Design {
				continue
			}
			for i, x := range Shared(p.Angle, at, r) {
				out[i].Pull, out[i].Shear = math.Max(out[i].Pull, x.Pull), math.Max(out[i].Shear, x.Shear)
			}
		}
	}
	return out
}
