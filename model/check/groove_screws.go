package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// besideScrews is how many diameters of a screw the wood beside it must be
// wide, with holes drilled for it.
const besideScrews = 3

var grooveScrews = Rule{
	ID: "groove-screws", Title: "No groove crosses the screws of a bracket",
	Basis: "three diameters of the screw's hole in the bracket between the row of screws and a groove: EN 1995-1-1 Table 8.2, drilled, unloaded edge, from memory",
	Why:   "A groove over the seat takes the wood that its screws hold in and that lies on it: the screws tear out into the groove, and a cable there is bored through.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			for _, a := range s.Design.BracketsUnder(p.ID) {
				out = append(out, besideRow(p, a)...)
			}
		}
		return orNone(out, "There is no groove under a slab that is screwed to a bracket.")
	},
}

// screwRow is the straight line through the screws of a bracket, from the end of
// the first slot to the end of the last, in the slab's own axes; false without
// screws.
func screwRow(p, a *model.Part) (from, to geom.Vec, dia unit.Length, ok bool) {
	var low, high model.BracketHole
	for _, h := range a.Bracket().On().In(model.SeatLeg) {
		if !ok || h.X < low.X {
			low = h
		}
		if !ok || h.X > high.X {
			high = h
		}
		dia, ok = max(dia, h.Dia), true
	}
	at := func(h model.BracketHole, by unit.Length) geom.Vec {
		if h.Along {
			by *= (h.Slot + h.Dia) / 2
		} else {
			by *= h.Dia / 2
		}
		return p.Slab.Pose.Unplan(a.Bracket().Pose().Plan(geom.V(h.X+by, -h.FromHeel)))
	}
	return at(low, -1), at(high, 1), dia, ok
}

// besideRow judges the groove in the underside that comes nearest to the screws
// of a bracket.
func besideRow(p, a *model.Part) []find.Finding {
	from, to, dia, ok := screwRow(p, a)
	if !ok {
		return nil
	}
	row := geom.Strip([]geom.Vec{from, to}, 0.1, 0.05)
	need := besideScrews * dia
	var out []find.Finding
	for _, f := range p.Slab.Features {
		if f.Kind != model.Groove || f.Face != model.UnderFace {
			continue
		}
		gap := f.Mouth().Gap(row)
		if len(out) > 0 && gap.Distance >= unit.Length(out[0].Measured.Value) {
			continue
		}
		g := find.Finding{
			Title: "Grooves and the screws of " + a.ID, Parts: []string{p.ID, a.ID}, Walls: []string{a.Bracket().On().Wall.Name}, Line: f.Line,
			At:  at(p.Slab.Pose.Plan(gap.A).Up(a.Bracket().On().Seat)),
			Why: fmt.Sprintf("Groove %s stays %.0f mm beside the row of screws of %s.", f.Name, float64(gap.Distance), a.ID), Measured: mm(gap.Distance), Required: limit(find.AtLeast, need),
		}.Judge()
		if g.Status == find.Fail {
			g.Fix = rowFixes(p, f, a, from, to, need)
			if gap.Distance <= 0 {
				g.Measured = mm(unit.Length(0))
				g = g.Judge()
				g.Why = fmt.Sprintf("Groove %s crosses the row of screws of %s.", f.Name, a.ID)
			}
		}
		out = []find.Finding{g}
	}
	return out
}

// rowFixes says where a groove that comes too near to a row of screws may run:
// how far from the edge along that wall its centre line keeps.
func rowFixes(p *model.Part, f model.Feature, a *model.Part, from, to geom.Vec, need unit.Length) []find.Fix {
	half := max(f.Dia, f.Lid.Width) / 2
	far := need + half
	for _, h := range a.Bracket().On().In(model.SeatLeg) {
		far = max(far, h.FromHeel+need+half)
	}
	return []find.Fix{
		hint("keep the middle of groove %s at least %.0f mm away from the wall %s", f.Name, float64(up(far)), a.Bracket().On().Wall.Name),
		hint("or let the cable hang clipped beside the leg there: end the groove before it"),
	}
}
