package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// leastSeat is the width of wood that must lie on a seat leg.
const leastSeat unit.Length = 25

var seatRule = Rule{
	ID: "bearing", Title: "The slab lies on its angle",
	Basis: "25 mm of bearing at least: " + practice,
	Why:   "A gap at the wall is taken from the bearing: on a narrow seat the slab slips off or crushes at the arris. A slab with neither angle nor rod is not carried.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			carried := 0
			for _, a := range s.Design.Parts {
				if a.Rod != nil && a.Rod.Shelf == p.ID {
					carried++
				}
				if a.Angle == nil || a.Angle.Under != p.ID {
					continue
				}
				carried++
				out = append(out, seat(p, a))
			}
			if carried == 0 {
				out = append(out, find.Finding{Status: find.Fail, Parts: []string{p.ID}, Why: "Neither an angle nor a rod carries " + p.ID + ".",
					Measured: &find.Quantity{Value: 0, Unit: "supports"}, Required: &find.Limit{Value: 1, Relation: find.AtLeast, Unit: "supports"}, Margin: &find.Quantity{Value: -1, Unit: "supports"},
					Fix: []find.Fix{{Text: "add an angle along one of its walls"}}})
			}
		}
		return out
	},
}

// seat measures the width of wood over the seat leg, square to the wall, at
// the middle and near both ends of the angle.
func seat(slab, angle *model.Part) find.Finding {
	a := angle.Angle
	pose := a.Pose()
	outline := slab.Outline()
	least := a.Section.Leg
	var where geom.Vec
	for _, t := range []float64{0.1, 0.5, 0.9} {
		x := a.Length * unit.Length(t)
		heel, toe := pose.Plan(geom.V(x, 0)), pose.Plan(geom.V(x, -a.Section.Leg))
		var wood unit.Length
		for _, span := range outline.Inside(heel, toe) {
			wood += a.Section.Leg * unit.Length(span[1]-span[0])
		}
		if wood < least {
			least, where = wood, heel
		}
	}
	f := find.Finding{
		Parts: []string{slab.ID, angle.ID}, Walls: []string{a.Wall.Name}, At: at(where.Up(a.Seat)),
		Why:      fmt.Sprintf("%s lies %.1f mm deep on %s (%s).", slab.ID, float64(least), angle.ID, a.Section.Name),
		Measured: find.MM(least), Required: find.LimitMM(find.AtLeast, leastSeat),
		Fix: []find.Fix{{Text: "take a wider angle or a smaller gap at that wall"}},
	}.Judge()
	if f.Status == find.Pass {
		f.Fix = nil
	}
	return f
}
