package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Wood that must be left beside, over and between holes, pockets and grooves.
const (
	woodBeside     unit.Length = 20
	woodOverPilot  unit.Length = 10
	woodOverGroove unit.Length = 20
	woodOverBore   unit.Length = 8
	woodBetween    unit.Length = 8
)

var woodEdges = Rule{
	ID: "wood-left", Title: "Enough wood is left round holes and grooves",
	Basis: "20 mm beside, 10 mm over a screw, 20 mm over a groove or pocket, 8 mm over and under a rod and between works one above the other: " + practice,
	Why:   "Short grain breaks out between a hole and an edge; a screw that comes through the top ruins it; a thin web over a groove cracks.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			if len(p.Slab.Features) == 0 {
				out = append(out, find.Finding{Status: find.Pass, Parts: []string{p.ID}, Why: fmt.Sprintf("There is no hole and no groove in %s.", p.ID)})
				continue
			}
			out = append(out,
				leastWood(p, "Wood beside holes and grooves", "No hole or groove in "+p.ID+" comes near an edge or another one.", besides(s.Design, p)),
				leastWood(p, "Wood over and under blind work", "Nothing in "+p.ID+" ends inside the wood.", overs(p)))
		}
		return out
	},
}

// wood is a web of wood that is left: how thick it is and has to be, where, and
// in words.
type wood struct {
	left, need unit.Length
	where      geom.Vec
	why, mend  string
}

// leastWood makes a finding of the web with the least margin.
func leastWood(p *model.Part, title, none string, webs []wood) find.Finding {
	f := find.Finding{Title: title, Parts: []string{p.ID}, Status: find.Pass, Why: none}
	var worst *wood
	for i, w := range webs {
		if worst == nil || w.left-w.need < worst.left-worst.need-0.001 {
			worst = &webs[i]
		}
	}
	if worst == nil {
		return f
	}
	f.Why, f.At = worst.why, at(p.Slab.Pose.Plan(worst.where).Up(p.Slab.Top))
	f.Measured, f.Required = mm(worst.left), limit(find.AtLeast, worst.need)
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{{Text: strings.Replace(worst.mend, "%.0f", fmt.Sprintf("%.0f", float64(up(worst.need-worst.left))), 1)}}
	}
	return f
}

// besides gives the wood between works and the slab's edges, and between two
// works beside each other. Cut-outs and grooves that run out of an edge do so on
// purpose and count against other works only; rods come out of an edge by nature.
func besides(d *model.Design, p *model.Part) []wood {
	sp := p.Slab
	var out []wood
	outline := sp.TopOutline().Intersect(sp.UnderOutline())
	low, high := outline.Bounds()
	air := geom.Rect(low.Sub(geom.V(100, 100)), high.Add(geom.V(100, 100))).Minus(outline)
	for i, f := range sp.Features {
		if f.Kind != model.CutOut && f.Kind != model.Bore {
			gap := air.Gap(f.Mouth())
			if gap.Distance >= 0 || f.Kind != model.Groove {
				out = append(out, wood{gap.Distance, woodBeside, gap.B, fmt.Sprintf("%s leaves %.1f mm of wood to the edge of %s.", workName(f), float64(gap.Distance), p.ID), furtherIn(d, f)})
			}
		}
		for _, g := range sp.Features[i+1:] {
			if w, ok := between(p, f, g); ok {
				out = append(out, w)
			}
		}
	}
	return out
}

// furtherIn says how work comes further in from an edge; screws stand where what they
// come through puts them.
func furtherIn(d *model.Design, f model.Feature) string {
	if p := d.Part(f.For); f.Kind == model.Pilot && p != nil && p.Bracket() != nil {
		return "take a wider section for " + p.ID + ", so that its screws stand %.0f mm further from the wall, or a smaller gap there"
	}
	return "move " + string(f.Kind) + " " + f.Name + " %.0f mm further in"
}

func workName(f model.Feature) string { return capital(fmt.Sprintf("%s %s", f.Kind, f.Name)) }

// between is the wood between two works, nearest beside or above each other.
// Works that serve the same thing may run into each other: a groove into its
// hole.
func between(p *model.Part, f, g model.Feature) (wood, bool) {
	a, b := planOf(p.Slab, f), planOf(p.Slab, g)
	gap := a.Gap(b)
	if gap.Distance > woodBeside+40 {
		return wood{}, false
	}
	f0, f1 := heightsOf(p.Slab, f)
	g0, g1 := heightsOf(p.Slab, g)
	level := max(f0, g0) - min(f1, g1) // wood between them in height
	w := wood{left: gap.Distance, need: woodBeside, where: gap.A, mend: "move " + f.Name + " and " + g.Name + " %.0f mm further apart"}
	switch {
	case gap.Distance <= 0 && f.For != "" && f.For == g.For:
		return wood{}, false
	case level > 0 && gap.Distance <= 0:
		w.left, w.need = level, woodBetween
		w.mend = "make " + f.Name + " or " + g.Name + " %.0f mm shallower, or move one of them"
	case level > 0:
		w.left = unit.Length(math.Hypot(float64(level), float64(gap.Distance)))
	}
	w.why = fmt.Sprintf("%s leaves %.1f mm of wood to %s %s in %s.", workName(f), float64(w.left), g.Kind, g.Name, p.ID)
	if w.left < 0 {
		w.why = fmt.Sprintf("%s runs into %s %s in %s.", workName(f), g.Kind, g.Name, p.ID)
	}
	return w, true
}

// planOf is a work seen from above; a bore runs in from its edge.
func planOf(sp *model.SlabPart, f model.Feature) geom.Region {
	if f.Kind != model.Bore {
		return f.Mouth()
	}
	e := sp.Edges[f.Edge]
	in := e.End.Sub(e.Start).Unit().Left().Mul(-1)
	return geom.Strip([]geom.Vec{f.At, f.At.Add(in.Mul(float64(f.Depth)))}, f.Dia, 0.05)
}

// heightsOf is from where to where a work goes, above the underside.
func heightsOf(sp *model.SlabPart, f model.Feature) (low, high unit.Length) {
	switch {
	case f.Kind == model.Through || f.Kind == model.CutOut:
		return 0, sp.Thickness
	case f.Kind == model.Bore:
		return f.Height - f.Dia/2, f.Height + f.Dia/2
	case f.Face == model.UnderFace:
		return 0, f.Depth
	}
	return sp.Thickness - f.Depth, sp.Thickness
}

// overs gives the wood that blind works leave behind them.
func overs(p *model.Part) []wood {
	sp := p.Slab
	var out []wood
	for _, f := range sp.Features {
		w := wood{need: woodOverGroove, where: f.At, mend: "make " + string(f.Kind) + " " + f.Name + " %.0f mm shallower"}
		low, high := heightsOf(sp, f)
		switch f.Kind {
		case model.Through, model.CutOut:
			continue
		case model.Pilot:
			w.need, w.mend = woodOverPilot, "take screws %.0f mm shorter, or a thicker slab"
		case model.Bore:
			w.need, w.mend = woodOverBore, "bore it %.0f mm further from that face, take a thinner rod or a thicker slab"
		}
		if f.Kind == model.Groove || f.Kind == model.Pocket {
			w.where = f.Outline.Centroid()
		}
		w.left = max(low, sp.Thickness-high)
		if f.Kind == model.Bore {
			w.left = min(low, sp.Thickness-high)
		}
		w.why = fmt.Sprintf("%s leaves %.1f mm of the %.0f mm of %s.", workName(f), float64(w.left), float64(sp.Thickness), p.ID)
		out = append(out, w)
	}
	return out
}
