package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Wood that must be left beside and above a hole, pocket or groove.
const (
	woodBeside     unit.Length = 20
	woodOverPilot  unit.Length = 10
	woodOverGroove unit.Length = 20
)

var woodEdges = Rule{
	ID: "wood-left", Title: "Enough wood is left round holes and grooves",
	Basis: "20 mm beside, 10 mm over a screw, 20 mm over a groove or pocket: " + practice,
	Why:   "Short grain breaks out between a hole and an edge; a screw that comes through the top ruins it; a thin web over a groove cracks.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab != nil && len(p.Slab.Features) > 0 {
				out = append(out, woodBesideAll(p), woodLeftAll(p))
			}
		}
		return out
	},
}

// woodBesideAll finds the feature that is nearest to an edge or to another one.
// Cut-outs and work that runs out of an edge on purpose only count against
// other features.
func woodBesideAll(p *model.Part) find.Finding {
	sp := p.Slab
	outline := sp.TopOutline().Intersect(sp.UnderOutline())
	best := find.Finding{Parts: []string{p.ID}, Status: find.Pass, Why: "No hole or groove is near an edge of " + p.ID + "."}
	least := unit.Length(1e9)
	note := func(d unit.Length, v geom.Vec, why string) {
		if d < least {
			least = d
			best.Why, best.At = why, at(sp.Pose.Plan(v).Up(sp.Top))
		}
	}
	for i, f := range sp.Features {
		if f.Kind == model.Bore || f.Kind == model.CutOut {
			continue
		}
		for _, loop := range f.Outline.Loops() {
			for _, v := range loop {
				d := -outline.DistanceTo(v)
				note(d, v, fmt.Sprintf("%s %s leaves %.1f mm of wood to the edge of %s.", f.Kind, f.Name, float64(d), p.ID))
			}
		}
		for _, g := range sp.Features[i+1:] {
			if g.Kind == model.Bore || opposite(f, g, sp.Thickness) {
				continue
			}
			gap := f.Outline.Gap(g.Outline)
			if gap.Distance <= 0 && f.For != "" && f.For == g.For {
				continue // a groove that runs into the hole it serves
			}
			note(gap.Distance, gap.A, fmt.Sprintf("%s %s leaves %.1f mm of wood to %s %s in %s.", f.Kind, f.Name, float64(gap.Distance), g.Kind, g.Name, p.ID))
		}
	}
	if least > 1e8 {
		return best
	}
	best.Measured, best.Required = find.MM(least), find.LimitMM(find.AtLeast, woodBeside)
	best.Title = "Wood beside holes and grooves"
	best = best.Judge()
	if best.Status == find.Fail {
		best.Fix = []find.Fix{{Text: fmt.Sprintf("move it %.0f mm further in", float64(woodBeside-least)+0.5)}}
	}
	return best
}

// opposite tells whether two blind works from opposite faces leave wood between
// them.
func opposite(f, g model.Feature, t unit.Length) bool {
	blind := func(x model.Feature) bool { return x.Kind != model.Through && x.Kind != model.CutOut }
	return blind(f) && blind(g) && f.Face != g.Face && f.Depth+g.Depth < t
}

// woodLeftAll finds the blind work that leaves least wood behind it.
func woodLeftAll(p *model.Part) find.Finding {
	sp := p.Slab
	best := find.Finding{Parts: []string{p.ID}, Status: find.Pass, Title: "Wood over blind holes and grooves", Why: "No blind hole or groove in " + p.ID + "."}
	margin := unit.Length(1e9)
	for _, f := range sp.Features {
		need := woodOverGroove
		switch f.Kind {
		case model.Through, model.CutOut:
			continue
		case model.Pilot:
			need = woodOverPilot
		}
		left := sp.Thickness - f.Depth
		if f.Kind == model.Bore {
			left, need = min(f.Height, sp.Thickness-f.Height)-f.Dia/2, 8
		}
		if left-need < margin {
			margin = left - need
			best.At = at(sp.Pose.Plan(f.At).Up(sp.Top))
			best.Why = fmt.Sprintf("%s %s leaves %.1f mm of the %.0f mm of %s.", f.Kind, f.Name, float64(left), float64(sp.Thickness), p.ID)
			best.Measured, best.Required = find.MM(left), find.LimitMM(find.AtLeast, need)
		}
	}
	best = best.Judge()
	if best.Status == find.Fail {
		best.Fix = []find.Fix{{Text: fmt.Sprintf("make it %.0f mm shallower", -float64(margin))}}
	}
	return best
}
