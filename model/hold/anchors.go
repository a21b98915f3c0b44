package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/anchor"
	"slabwright/model/calc/plate"
	"slabwright/model/calc/steelangle"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// anchorStiffness is that of a stiff anchor, N/mm: plastic ones give way more, and
// spread the load further. Order of approvals, from memory.
const anchorStiffness = 10000

// Shared gives what anchors at some places of an angle take of a run: the strips
// of its seat and its own weight.
func Shared(a *model.AnglePart, at []unit.Length, r Run) []anchor.Reaction {
	section := shapeOf(a.Section).Section()
	bar := barOf(section, section.I)
	loads := lineOf(r)
	const pieces = 10
	weight := gammaG * plate.Gravity * float64(a.Section.Mass.Mass(a.Length)) / pieces
	for k := range pieces {
		loads = append(loads, anchor.Load{Along: a.Length * (unit.Length(k) + 0.5) / pieces, Arm: section.Centroid, Force: weight})
	}
	return anchor.Share(bar, wallLeg(a), at, loads)
}

// shapeOf is the shape of a section of the stock.
func shapeOf(s stock.AngleSection) steelangle.Shape {
	return steelangle.Shape{Leg: s.Leg, Thickness: s.Thickness, Root: s.Root, Toe: s.Toe}
}

// barOf is a bar on its anchors that bends about an axis of some inertia, mm4.
func barOf(s steelangle.Section, inertia float64) anchor.Bar {
	const shear = 81000 // N/mm2, EN 1993-1-1
	return anchor.Bar{Bending: steelModulus * inertia, Twist: shear * s.Torsion, Anchor: anchorStiffness}
}

// lineOf are the strips of a run as loads on its bracket.
func lineOf(r Run) []anchor.Load {
	var out []anchor.Load
	for _, l := range r.Line {
		out = append(out, anchor.Load{Along: l.Along, Arm: l.FromHeel, Force: l.Force})
	}
	return out
}

// sags gives how far an angle of some section sinks at its toe under a run: as a
// bar on its anchors, free to go sideways (weak axis), and by the bending of its
// seat leg under the largest line load.
func sags(a *model.AnglePart, s stock.AngleSection, r Run) (bar, tip unit.Length) {
	shape, section := shapeOf(s), shapeOf(s).Section()
	var at []unit.Length
	for _, h := range a.Holes {
		if h.Leg == model.WallLeg {
			at = append(at, h.X)
		}
	}
	p := r.Peak()
	return anchor.Sag(barOf(section, section.V), wallLeg(a), at, lineOf(r), s.Leg), steelangle.TipSag(shape, p.PerMM(), p.FromHeel)
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
