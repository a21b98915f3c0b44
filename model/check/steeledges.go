package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Least distances of holes in steel, in hole diameters, from a hole's centre or
// from the centre of a slot's round end.
const (
	endFactor   = 1.2
	slotFactor  = 1.5
	pitchFactor = 2.2
)

var steelEdges = Rule{
	ID: "steel-left", Title: "Enough steel is left round the holes of an angle",
	Basis: "EN 1993-1-8 table 3.3, from memory: 1.2 d0 to ends and edges, 1.5 d0 for slots, 2.2 d0 apart; holes clear of the root fillet",
	Why:   "A hole too near an end or a toe tears out; one in the fillet cannot be drilled clean and the head does not lie flat.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			switch {
			case p.Angle == nil:
			case len(p.Angle.Holes) == 0:
				out = append(out, find.Finding{Status: find.Pass, Parts: []string{p.ID}, Why: "There is no hole in " + p.ID + "."})
			default:
				out = append(out, steelLeft(p))
			}
		}
		return out
	},
}

// steel is the steel that is left on one side of a hole.
type steel struct {
	hole       model.BracketHole
	left, need unit.Length
	to, mend   string
}

// steelLeft finds the place with the least margin.
func steelLeft(p *model.Part) find.Finding {
	a := p.Angle
	var worst *steel
	for i, h := range a.Holes {
		for _, s := range steelRound(a, h, a.Holes[i+1:]) {
			if worst == nil || s.left-s.need < worst.left-worst.need-0.001 {
				worst = &s
			}
		}
	}
	h := worst.hole
	place := geom.Vec3{X: h.X, Y: -h.FromHeel}
	if h.Leg == model.WallLeg {
		place = geom.Vec3{X: h.X, Z: -h.FromHeel}
		if a.LegUp {
			place.Z = h.FromHeel - a.Section.Thickness
		}
	}
	f := find.Finding{
		Parts: []string{p.ID}, At: at(a.Pose().Space(place)),
		Measured: mm(worst.left), Required: limit(find.AtLeast, worst.need),
		Why: fmt.Sprintf("%s %s in the %s of %s is %.1f mm from %s; %.1f mm are needed.", holeOrSlot(h), h.Name, h.Leg, p.ID, float64(worst.left), worst.to, float64(worst.need)),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{hint(worst.mend, h.Name, float64(up(worst.need-worst.left)))}
	}
	return f
}

func holeOrSlot(h model.BracketHole) string {
	if h.Slot > 0 {
		return "Slot"
	}
	return "Hole"
}

// steelRound gives the steel on every side of a hole, and to the holes that
// follow it in the same leg.
func steelRound(a *model.AnglePart, h model.BracketHole, later []model.BracketHole) []steel {
	along, over := h.Slot/2, unit.Length(0) // how far the round ends are from the middle
	factor := unit.Length(endFactor)
	if !h.Along {
		along, over = 0, h.Slot/2
	}
	from := "its middle"
	if h.Slot > 0 {
		factor = slotFactor
		from = "the middle of its round end"
	}
	need := factor * h.Dia
	out := []steel{
		{h, min(h.X, a.Length-h.X) - along, need, "the nearer end, measured from " + from, "move %s %.0f mm away from the end"},
		{h, a.Section.Leg - h.FromHeel - over, need, "the toe, measured from " + from, "move %s %.0f mm towards the heel, or take a wider angle"},
		{h, h.FromHeel - over - h.Dia/2, a.Section.Thickness + a.Section.Root, "the heel, measured from its rim", "move %s %.0f mm towards the toe, clear of the root fillet"},
	}
	for _, g := range later {
		if g.Leg != h.Leg {
			continue
		}
		d := unit.Length(math.Hypot(float64(g.X-h.X), float64(g.FromHeel-h.FromHeel)))
		if h.Along {
			d -= h.Slot / 2
		}
		if g.Along {
			d -= g.Slot / 2
		}
		out = append(out, steel{h, d, pitchFactor * max(h.Dia, g.Dia), "hole " + g.Name + ", from middle to middle", "move %s or its neighbour %.0f mm apart"})
	}
	return out
}
