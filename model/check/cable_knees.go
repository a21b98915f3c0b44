package check

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

var cableKnees = Rule{
	ID: "cable-knees", Title: "No cable hangs where knees and feet go", Fit: true,
	Basis: "the spaces kept free for people; a cable clipped under a slab hangs by its own diameter: " + practice,
	Why:   "A knee finds every cable that is not behind it, and pulls down what hangs on it.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, r := range s.wires.Runs {
			if r.Found && len(s.Design.Zones) > 0 {
				out = append(out, s.judgeKnees(r))
			}
		}
		return orNone(out, "There is no cable near a space that is kept free.")
	},
}

// judgeKnees finds the least distance of a cable from a space kept free, in
// steps of 20 mm. The loop to a table moves with the table and is left out.
func (s Site) judgeKnees(r wire.Run) find.Finding {
	const pace unit.Length = 20
	near := farthest
	f := find.Finding{Title: "Room for knees beside " + r.Cable.Name, Status: find.Pass, Line: r.Cable.Pos.String()}
	f.Why = fmt.Sprintf("%s stays clear of all spaces kept free.", capital(r.Cable.Name))
	for i, p := range r.Pieces {
		if p.Kind != wire.UnderSlab && p.Kind != wire.AlongEdge && p.Kind != wire.OnWall {
			continue
		}
		a, b := r.Points[i], r.Points[i+1]
		steps := int(b.Sub(a).Len()/pace) + 1
		for k := range steps + 1 {
			q := a.Add(b.Sub(a).Mul(float64(k) / float64(steps)))
			q.Z -= r.Cable.Dia
			for _, z := range s.Design.Zones {
				if d := fromZone(z.Plan, z.Floor, z.Floor+z.Height, q); d < near {
					near = d
					f.At = at(q)
					f.Why = fmt.Sprintf("%s keeps %.0f mm from the space for %s.", capital(r.Cable.Name), float64(d), z.Name)
					if d < 0 {
						f.Why = fmt.Sprintf("%s hangs %.0f mm into the space for %s.", capital(r.Cable.Name), float64(-d), z.Name)
					}
				}
			}
		}
	}
	if near < farthest {
		f.Measured, f.Required = mm(near), limit(find.AtLeast, unit.Length(0))
		f = f.Judge()
		if f.Status == find.Fail {
			f.Fix = []find.Fix{hint("lay it into a groove in the underside there"), hint("or lead it along the wall behind the knees: bore the hole nearer to the back")}
		}
	}
	return f
}

// fromZone is how far a point lies from a prism; inside, minus the way out.
func fromZone(plan geom.Region, low, high unit.Length, p geom.Vec3) unit.Length {
	side := plan.DistanceTo(p.Flat())
	over := max(p.Z-high, low-p.Z)
	if side <= 0 && over <= 0 {
		return max(side, over)
	}
	return unit.Length(geom.V(max(side, 0), max(over, 0)).Len())
}
