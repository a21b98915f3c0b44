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

// Shared gives what anchors at some places of a bracket take of a run: the strips
// of its seat and its own weight.
func Shared(b model.Bracket, at []unit.Length, r Run) []anchor.Reaction {
	bar, mass, middle := stiffOf(b)
	loads, length := lineOf(r), b.On().Length
	const pieces = 10
	weight := gammaG * plate.Gravity * float64(mass) / pieces
	for k := range pieces {
		loads = append(loads, anchor.Load{Along: length * (unit.Length(k) + 0.5) / pieces, Arm: middle, Force: weight})
	}
	return anchor.Share(bar, wallLeg(b), at, loads)
}

// stiffOf is a bracket on its anchors, its mass and how far the middle of it stands
// off the wall.
func stiffOf(b model.Bracket) (bar anchor.Bar, mass unit.Mass, middle unit.Length) {
	if c, ok := b.(*model.CleatPart); ok {
		return battenOf(c), c.Species.Density.Mass(unit.Volume(c.Wide * c.High * c.Length)), c.Wide / 2
	}
	a := b.(*model.AnglePart)
	section := shapeOf(a.Section).Section()
	return barOf(section, section.I), a.Section.Mass.Mass(a.Length), section.Centroid
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

// sunk gives how far a bracket sinks under a run: an angle of some section, or a
// cleat, whose seat does not bend by itself.
func sunk(b model.Bracket, v variant, r Run) (bar, tip unit.Length) {
	if c, ok := b.(*model.CleatPart); ok {
		return anchor.Sag(battenOf(c), wallLeg(c), c.Places(model.WallLeg), lineOf(r), c.Wide), 0
	}
	a := b.(*model.AnglePart)
	return sags(a, v.sectionOf(a), r)
}

// sags gives how far an angle of some section sinks at its toe under a run: as a
// bar on its anchors, free to go sideways (weak axis), and by the bending of its
// seat leg under the largest line load.
func sags(a *model.AnglePart, s stock.AngleSection, r Run) (bar, tip unit.Length) {
	shape, section := shapeOf(s), shapeOf(s).Section()
	p := r.Peak()
	return anchor.Sag(barOf(section, section.V), wallLeg(a), a.Places(model.WallLeg), lineOf(r), s.Leg), steelangle.TipSag(shape, p.PerMM(), p.FromHeel)
}

// wallLeg is the wall leg, or the back of a cleat, with the line of its anchors.
func wallLeg(b model.Bracket) anchor.Leg {
	var leg anchor.Leg
	switch b := b.(type) {
	case *model.AnglePart:
		leg = anchor.Leg{Width: b.Section.Leg, Below: !b.LegUp}
	case *model.CleatPart:
		leg = anchor.Leg{Width: b.High, Below: true}
	}
	for _, h := range b.On().In(model.WallLeg) {
		leg.FromHeel = h.FromHeel
	}
	return leg
}

// Lever is how far the anchors of a bracket pull from where the wall presses: at
// the toe of a leg that hangs down, at the heel of one that stands up, at the lower
// edge of a cleat.
func Lever(b model.Bracket) unit.Length { return wallLeg(b).Lever() }

// AnchorTake is the most that an anchor takes in any design case, N. Pull and
// shear need not come from the same one.
type AnchorTake struct {
	Hole        string
	Pull, Shear float64
}

// Anchors gives what every anchor of a bracket takes; nothing where the statics of
// its slab are not known.
func (s *Statics) Anchors(p *model.Part) []AnchorTake {
	b := p.Bracket()
	slab, ok := s.Of(b.On().Under)
	if !ok || slab.Trouble != "" {
		return nil
	}
	var out []AnchorTake
	at := b.On().Places(model.WallLeg)
	for _, h := range b.On().In(model.WallLeg) {
		out = append(out, AnchorTake{Hole: h.Name})
	}
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			if r.Carrier != p.ID || !c.Design {
				continue
			}
			for i, x := range Shared(b, at, r) {
				out[i].Pull, out[i].Shear = math.Max(out[i].Pull, x.Pull), math.Max(out[i].Shear, x.Shear)
			}
		}
	}
	return out
}
