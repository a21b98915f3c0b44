package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Least distances of holes in steel, in hole diameters.
const (
	endFactor   = 1.2
	pitchFactor = 2.2
)

var steelEdges = Rule{
	ID: "steel-left", Title: "Enough steel is left round the holes of an angle",
	Basis: "EN 1993-1-8 table 3.3: end and edge distance 1.2 d0, spacing 2.2 d0 (from memory); holes clear of the root fillet",
	Why:   "A hole too near an end or a toe tears out; one in the fillet cannot be drilled clean and the head does not lie flat.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Angle != nil && len(p.Angle.Holes) > 0 {
				out = append(out, steelLeft(p))
			}
		}
		return out
	},
}

// steelLeft finds the hole with the least distance in proportion to what it
// needs.
func steelLeft(p *model.Part) find.Finding {
	a := p.Angle
	best := find.Finding{Parts: []string{p.ID}}
	margin := unit.Length(1e9)
	note := func(h model.SteelHole, d, need unit.Length, to string) {
		if d-need >= margin {
			return
		}
		margin = d - need
		best.At = at(a.Pose().Space(geom.Vec3{X: h.X}))
		best.Why = fmt.Sprintf("Hole %s in the %s of %s is %.1f mm from %s.", h.Name, h.Leg, p.ID, float64(d), to)
		best.Measured, best.Required = find.MM(d), find.LimitMM(find.AtLeast, need)
	}
	for i, h := range a.Holes {
		across, along := h.Dia/2, h.Dia/2
		if h.Along {
			along += h.Slot / 2
		} else {
			across += h.Slot / 2
		}
		need := h.Dia * endFactor
		note(h, min(h.X, a.Length-h.X)-along+h.Dia/2, need, "the nearer end")
		note(h, a.Section.Leg-h.FromHeel-across+h.Dia/2, need, "the toe")
		note(h, h.FromHeel-across, a.Section.Thickness+a.Section.Root, "the heel to its rim")
		for _, g := range a.Holes[i+1:] {
			if g.Leg == h.Leg {
				note(h, abs(g.X-h.X), h.Dia*pitchFactor, "hole "+g.Name)
			}
		}
	}
	best = best.Judge()
	if best.Status == find.Fail {
		best.Fix = []find.Fix{{Text: fmt.Sprintf("move it by %.0f mm, or take a wider angle", -float64(margin)+0.5)}}
	}
	return best
}
