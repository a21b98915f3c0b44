package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

var legUpRule = Rule{
	ID: "leg-up", Title: "A wall leg behind the slab", Fit: true,
	Basis: "the profile of the angle: leg, root radius and anchor heads against the slab's edge; plane geometry. A corner of the slab clears a round root when gap and chamfer together are its radius",
	Why:   "With the wall leg up the knees are free, but the slab's lower edge may ride on the round root of the steel, its edge may hit the heads of the wall screws, the leg may stand above the worktop, and nobody tightens a wall screw any more once the slab lies.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Angle == nil || !p.Angle.LegUp {
				continue
			}
			if slab := s.Design.Part(p.Angle.Under); slab != nil {
				out = append(out, s.legUp(p, slab)...)
			}
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "No wall leg stands up behind a slab."})
		}
		return out
	},
}

// legBehind is how much of the gap between a slab and a wall a wall leg takes.
func (s Site) legBehind(slab *model.Part, w *model.Wall) unit.Length {
	var thick unit.Length
	for _, p := range s.Design.Parts {
		if a := p.Angle; a != nil && a.LegUp && a.Under == slab.ID && a.Wall == w {
			thick = max(thick, a.Section.Thickness)
		}
	}
	return thick
}

// roomBehind is the least room between the wall leg of an angle and the slab.
func roomBehind(a *model.AnglePart, slab *model.Part) unit.Length {
	pose := a.Pose()
	least := unit.Length(math.Inf(1))
	over := geom.Rect(geom.V(0, -a.Section.Leg), geom.V(a.Length, a.Section.Leg)).Place(pose)
	for _, loop := range slab.Outline().Intersect(over).Loops() {
		for _, v := range loop {
			least = min(least, -pose.Unplan(v).Y-a.Section.Thickness)
		}
	}
	return least
}

func (s Site) legUp(p, slab *model.Part) []find.Finding {
	a, sl := p.Angle, slab.Slab
	room := roomBehind(a, slab)
	joint, _ := gapTo(slab, a.Wall)
	ease := joint.edge.Ease
	base := find.Finding{Parts: []string{p.ID, slab.ID}, Walls: []string{a.Wall.Name}, At: at(a.Pose().Space(seatPlace(a.Length/2, a.Section.Thickness)))}
	root := base
	root.Title, root.Measured, root.Required = "The slab's lower edge clears the root of the angle", mm(room+ease), limit(find.AtLeast, a.Section.Root)
	root.Why = fmt.Sprintf("Between the wall leg of %s and %s are %.1f mm, and its lower arris is taken off by %.1f mm; the root of %s has a radius of %.0f mm.", p.ID, slab.ID, float64(room), float64(ease), a.Section.Name, float64(a.Section.Root))
	if root = root.Judge(); root.Status == find.Fail {
		root.Fix = []find.Fix{hint("take the lower arris of %s off by %.1f mm there, or leave %.1f mm more gap", slab.ID, float64(upTenth(a.Section.Root-room)), float64(upTenth(a.Section.Root-room-ease)))}
	}
	above := base
	top := sl.Top - (a.Seat - a.Section.Thickness + a.Section.Leg)
	above.Title, above.Measured, above.Required = "The wall leg ends below the top of the slab", mm(top), limit(find.AtLeast, unit.Length(0))
	above.Why = fmt.Sprintf("The wall leg of %s ends %.1f mm %s the top of %s.", p.ID, math.Abs(float64(top)), map[bool]string{true: "below", false: "above"}[top >= 0], slab.ID)
	if above = above.Judge(); above.Status == find.Fail {
		above.Fix = []find.Fix{hint("take a section with legs of at most %.0f mm, or a slab %.1f mm thicker", float64(a.Section.Leg+top), -float64(top)), hint("or turn the wall leg down, below the slab")}
	}
	return append([]find.Finding{root, above}, s.heads(p, slab, room, base)...)
}

// heads judges the anchors behind a slab: room for their heads, and that they
// come before the slab.
func (s Site) heads(p, slab *model.Part, room unit.Length, f find.Finding) []find.Finding {
	a := p.Angle
	n := len(a.In(model.WallLeg))
	if n == 0 {
		return nil
	}
	reach := f
	reach.Status, reach.Title = find.Note, "The wall screws are covered by the slab"
	reach.Why = fmt.Sprintf("None of the %d wall screws of %s can be reached once %s lies: set and tighten them all before, and lift the slab to tighten one later.", n, p.ID, slab.ID)
	for _, h := range a.Holes {
		if h.Leg != model.WallLeg {
			continue
		}
		kind, ok := stock.AnchorThrough(h.Dia)
		if !ok {
			u := unknown(fmt.Sprintf("how far the heads of the wall screws of %s stand out.", p.ID), hint("give its anchors a hole for which an anchor is known"))
			u.Parts, u.Walls = f.Parts, f.Walls
			return []find.Finding{reach, u}
		}
		f.Title, f.Measured, f.Required = "The heads of the wall screws fit behind the slab", mm(room), limit(find.AtLeast, kind.Head)
		f.Why = fmt.Sprintf("Between the wall leg of %s and the edge of %s are %.1f mm; head and washer of %s stand out %.0f mm.", p.ID, slab.ID, float64(room), kind.Name, float64(kind.Head))
		f.Assumed = []find.Assumption{{What: fmt.Sprintf("hexagon heads with washers, %.0f mm together; not countersunk", float64(kind.Head)), Source: kind.Source}}
		if f = f.Judge(); f.Status == find.Fail {
			f.Fix = []find.Fix{hint("leave %.1f mm more gap at the wall %s, or countersink the holes for flat heads", float64(upTenth(kind.Head-room)), a.Wall.Name)}
		}
		break
	}
	return []find.Finding{reach, f}
}
